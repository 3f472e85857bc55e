package templates

import (
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// proofFolder is a shop with records, beside the program that reads such.
const proofFolder = "../cmd/dustbook/testdata/proof"

// proofBook is the book of that shop, with more records where they are given,
// and lines of its file changed.
func proofBook(t testing.TB, more []*record.Record, changes ...string) *Book {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(proofFolder, "shop.toml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the shop file does not hold %q", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	records := more
	if records == nil {
		if records, problems = record.ReadFolder(os.DirFS(filepath.Join(proofFolder, "records"))); len(problems) > 0 {
			t.Fatal(problems)
		}
	}
	p := plan.Make(s, records, entry.Date{})
	b, err := New(p, checks.Run(p))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// sheet renders a sheet of a book: its markup, and its words.
func (b *Book) sheet(t testing.TB, path string) (body, words string) {
	t.Helper()
	for _, s := range b.Sheets {
		if s.Path == path {
			page, err := b.Render(s)
			if err != nil {
				t.Fatal(err)
			}
			text := html.UnescapeString(markup.ReplaceAllString(string(page), " "))
			return string(page), strings.Join(strings.Fields(text), " ")
		}
	}
	t.Fatalf("no sheet %s", path)
	return "", ""
}

// inOrder asks that texts stand one behind the other.
func inOrder(t *testing.T, sheet, words string, texts ...string) {
	t.Helper()
	at := 0
	for _, text := range texts {
		i := strings.Index(words[at:], text)
		if i < 0 {
			t.Errorf("%s: no %q behind what comes before it", sheet, text)
			continue
		}
		at += i + len(text)
	}
}

func TestRecordsSheet(t *testing.T) {
	b := proofBook(t, nil)
	body, words := b.sheet(t, "records.html")
	inOrder(t, "records", words, "3 records with 6 readings", "1 point of a letter is open",
		"2026-11-25: service", "Drum emptied before the first lesson.",
		"2026-11-25: commissioning", "role: steward", "records/2026-11-25-commissioning-1.toml", "hood pressure at Planer/hood", "Planer , filter clean", "3.9 inwg", "in the record: 4.2 inwg", "U-tube 1", "calibrated 2026-09-01",
		"tap pressure at Main tap", "1100 Pa", "in wg", "velocity at Main 2", "3900 fpm", "current at Cyclone", "13.2 A", "the plan has no figure for it", "room pressure at Hall", "-3 Pa",
		"2026-11-20: letter", "insurer's surveyor", "Show how often the drum is emptied", "answered", "2026-11-24", "State how the duct passes the wall", "open", "not sealed", "closed", "by telephone",
		"A tap over its mark", "A tap under its mark", "A second reading decides", "dustbook measure")
	for _, id := range []string{"record-2026-11-25-service-1-toml", "record-2026-11-25-commissioning-1-toml", "record-2026-11-20-letter-1-toml"} {
		if strings.Count(body, `id="`+id+`"`) != 1 {
			t.Errorf("the id %s", id)
		}
	}
	if again, _ := b.sheet(t, "records.html"); again != body {
		t.Error("rendered twice it differs")
	}
	if strings.Index(body, "record-2026-11-25-service-1") > strings.Index(body, "record-2026-11-25-commissioning-1") {
		t.Error("within a day the newest file does not come first")
	}
}

// What is expected, and how far off a reading is, is what the plan says.
func TestRecordsSayWhatThePlanExpects(t *testing.T) {
	b := proofBook(t, nil)
	for _, r := range b.Plan.Records {
		for _, reading := range r.Readings {
			m, _ := record.FindMeasure(reading.Of)
			e := b.Plan.Expect(reading)
			row := b.measuredRow(r, reading)
			if !e.Known() {
				if row.Expected != e.Why.String() || row.State.Class != "" || row.Off != "" {
					t.Errorf("%s: %+v", reading.Of, row)
				}
				continue
			}
			if row.Expected != m.Print(unit.US, e.Low) {
				t.Errorf("%s: expected %s, the plan says %s", reading.Of, row.Expected, m.Print(unit.US, e.Low))
			}
			if agrees := e.Agrees(reading.Value.SI); agrees != (row.State.Text == "agrees") && row.State.Text != "too low" {
				t.Errorf("%s: %s, within the share: %v", reading.Of, row.State.Text, agrees)
			}
		}
	}
}

// A reading stands on the sheets that it concerns, and on no other of their
// kind.
func TestReadingsOnTheirSheets(t *testing.T) {
	b := proofBook(t, nil)
	for path, c := range map[string]struct{ has, hasNot []string }{
		"use-planer.html":                        {[]string{"hood pressure at Planer/hood", "filter pressure at Filter gauge"}, []string{"tap pressure at", "velocity at", "current at"}},
		"use-table-saw.html":                     {[]string{"tap pressure at Main tap", "1100 Pa"}, []string{"hood pressure at", "velocity at", "filter pressure at"}},
		"use-ripping-while-the-planer-runs.html": {[]string{"velocity at Main 2", "pitot tube"}, []string{"hood pressure at", "tap pressure at"}},
		"collector-cyclone.html":                 {[]string{"filter pressure at Filter gauge", "current at Cyclone", "13.2 A"}, []string{"hood pressure at", "room pressure at"}},
	} {
		body, words := b.sheet(t, path)
		for _, want := range append(c.has, "Expected", "Difference", "2026-11-25") {
			if !strings.Contains(words, want) {
				t.Errorf("%s does not say %q", path, want)
			}
		}
		for _, not := range c.hasNot {
			if strings.Contains(words, not) {
				t.Errorf("%s says %q", path, not)
			}
		}
		if !strings.Contains(body, `href="records.html#record-2026-11-25-commissioning-1-toml"`) {
			t.Errorf("%s has no way to the record", path)
		}
	}
	if _, words := proofBook(t, []*record.Record{}).sheet(t, "use-planer.html"); strings.Contains(words, "Measured") {
		t.Error("a sheet without readings has a place for them")
	}
}

func TestNoRecords(t *testing.T) {
	b := proofBook(t, []*record.Record{})
	_, words := b.sheet(t, "records.html")
	inOrder(t, "records", words, "nothing recorded", "has not been held against a gauge", "How to keep what you measure")
	if _, words := b.sheet(t, "commissioning.html"); !strings.Contains(words, "0 of 2 hoods have been measured") {
		t.Error("the order does not count the hoods")
	}
}

// Many records are parted among sheets: each stands once, the newest first,
// and every sheet leads to its neighbours.
func TestManyRecords(t *testing.T) {
	var records []*record.Record
	for i := range 400 {
		day := entry.Date{Year: 2026 + i/28, Month: 1 + i/28%12, Day: 1 + i%28}
		r := &record.Record{File: fmt.Sprintf("%s-service-1.toml", day), Kind: "service", Date: day, Note: fmt.Sprintf("note %03d of the log", i)}
		m, _ := record.FindMeasure("hood pressure")
		q, _ := m.Read("4 inwg")
		r.Readings = []record.Reading{{Of: "hood pressure", At: "Planer/hood", Value: q}}
		records = append(records, r)
	}
	b := proofBook(t, records)
	var paths []string
	for _, s := range b.Sheets {
		if strings.HasPrefix(s.Path, "records") {
			paths = append(paths, s.Path)
		}
	}
	if len(paths) != 6 || paths[0] != "records.html" || paths[5] != "records-6.html" {
		t.Fatalf("%v", paths)
	}
	all := ""
	for i, path := range paths {
		body, words := b.sheet(t, path)
		all += words
		for _, next := range []int{i - 1, i + 1} {
			if next >= 0 && next < len(paths) && !strings.Contains(body, `<a href="`+paths[next]+`">`) {
				t.Errorf("%s does not lead to %s", path, paths[next])
			}
		}
		if len(body) > 150_000 {
			t.Errorf("%s has %d bytes", path, len(body))
		}
	}
	notes := regexp.MustCompile(`note ([0-9]{3}) of the log`).FindAllStringSubmatch(all, -1)
	if len(notes) != len(records) {
		t.Fatalf("%d notes", len(notes))
	}
	for i, n := range notes {
		if n[1] != fmt.Sprintf("%03d", len(records)-1-i) {
			t.Fatalf("at %d stands note %s", i, n[1])
		}
	}
	_, words := b.sheet(t, "use-planer.html")
	if got := strings.Count(words, "hood pressure at Planer/hood"); got != mostMeasured {
		t.Errorf("the sheet of the use shows %d readings", got)
	}
	if want := fmt.Sprintf("%d older", len(records)-mostMeasured); !strings.Contains(words, want) {
		t.Errorf("it does not say %q", want)
	}
}
