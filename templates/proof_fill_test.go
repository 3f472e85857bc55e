package templates

import (
	"html"
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/record"
)

// fillSheets are the sheets with blanks to fill in on the page.
var fillSheets = []string{"commissioning.html", "commissioning-readings.html", "commissioning-controls.html", traversePath}

var (
	rowsOf    = regexp.MustCompile(`(?s)<tr[ >].*?</tr>`)
	cellsOf   = regexp.MustCompile(`(?s)<td([^>]*)></td>`)
	rowStart  = regexp.MustCompile(`^<tr([^>]*)>`)
	attribute = regexp.MustCompile(`data-([a-z]+)(?:="([^"]*)")?`)
	tables    = regexp.MustCompile(`(?s)<table class="writing[^"]*"[^>]*>.*?</table>`)
)

// blankSays is what the data attributes of a blank say, those of its cell before
// those of its row.
func blankSays(row, cell string) map[string]string {
	said := map[string]string{}
	from := row
	if strings.Contains(cell, "data-of=") || strings.Contains(cell, "data-note") {
		from = cell
	}
	for _, text := range []string{from, cell} {
		for _, m := range attribute.FindAllStringSubmatch(text, -1) {
			said[m[1]] = html.UnescapeString(m[2])
		}
	}
	return said
}

// blanksOf are the blanks of a sheet that the script turns into fields.
func blanksOf(body string) []map[string]string {
	var list []map[string]string
	for _, table := range tables.FindAllString(body, -1) {
		if strings.HasPrefix(table, `<table class="writing sign"`) {
			continue
		}
		for _, row := range rowsOf.FindAllString(table, -1) {
			for _, cell := range cellsOf.FindAllStringSubmatch(row, -1) {
				if !strings.Contains(cell[1], "data-mirror") && !strings.Contains(cell[1], "data-hand") {
					list = append(list, blankSays(rowStart.FindStringSubmatch(row)[1], cell[1]))
				}
			}
		}
	}
	return list
}

// Every blank says what the record needs: what is measured, at a thing of the
// shop that it can be measured at, in one of its uses; and what is expected
// can be read as that and is what the plan expects. A blank that is no reading
// says what the note calls it.
func TestBlanksFitTheRecord(t *testing.T) {
	for name, b := range map[string]*Book{"proof": proofBook(t, nil), "school": upkeepBook(t, content.Example(), day(2026, 11, 24)), "small": upkeepBook(t, content.Small(), day(2026, 11, 24))} {
		names := plan.Names(b.Plan.Shop)
		readings, notes := 0, 0
		for _, path := range fillSheets {
			body, _ := b.sheet(t, path)
			for _, blank := range blanksOf(body) {
				if _, is := blank["of"]; !is {
					if _, noted := blank["note"]; !noted {
						t.Errorf("%s: %s: a blank that says nothing: %v", name, path, blank)
					}
					notes++
					continue
				}
				readings++
				checkBlank(t, name+": "+path, b, names, blank)
			}
		}
		if readings < 20 || notes < 20 {
			t.Errorf("%s: %d blanks for readings, %d for the note", name, readings, notes)
		}
	}
}

func checkBlank(t *testing.T, where string, b *Book, names record.Names, blank map[string]string) {
	t.Helper()
	m, known := record.FindMeasure(blank["of"])
	if !known || !names.Has(blank["at"], m.At) {
		t.Errorf("%s: nothing of the shop for %v", where, blank)
		return
	}
	if blank["unit"] != m.Unit(b.units) || m.Unit(b.units) != "" && !canRead(m, "1 "+blank["unit"]) {
		t.Errorf("%s: the unit of %v", where, blank)
	}
	if use := blank["use"]; use != "" && !names.Has(use, []string{"use"}) {
		t.Errorf("%s: no use %q", where, use)
	}
	if state := blank["filter"]; state != "" && !slices.ContainsFunc(record.Words("filter state"), func(w record.Word) bool { return w.Word == state }) {
		t.Errorf("%s: no state of a filter %q", where, state)
	}
	if value, given := blank["value"]; given && !canRead(m, value) {
		t.Errorf("%s: the value of a tick: %v", where, blank)
	}
	expected := blank["expected"]
	if expected == "" {
		return
	}
	e := b.Plan.Expect(record.Reading{Of: m.Word, At: blank["at"], Use: blank["use"], Filter: blank["filter"]})
	if !canRead(m, expected+" "+blank["unit"]) || !e.Known() || m.Figure(b.units, e.Low) != expected {
		t.Errorf("%s: the plan expects %+v, not %v", where, e, blank)
	}
}

func canRead(m record.Measure, text string) bool {
	_, err := m.Read(text)
	return err == nil
}

// The far side: what would not fit is seen, and a cell with a text is no
// blank.
func TestBlanksOf(t *testing.T) {
	list := blanksOf(`<table class="writing"><tr data-of="flow" data-at="Saw/hood" data-unit="cfm"><th>a</th><td>1</td><td></td><td data-of="time" data-at="Gate &amp; door"></td><td data-unit="V"></td></tr><tr data-note><td></td><td data-hand></td></tr></table><table class="writing sign"><tr><td></td></tr></table>`)
	if len(list) != 4 || list[0]["of"] != "flow" || list[1]["of"] != "time" || list[1]["unit"] != "" || list[1]["at"] != "Gate & door" || list[2]["unit"] != "V" || list[2]["of"] != "flow" {
		t.Errorf("%v", list)
	}
	if _, noted := list[3]["note"]; !noted {
		t.Errorf("%v", list[3])
	}
}

// Every sheet with blanks names the script, its parts stay hidden without it,
// and every instrument that a row names has a field.
func TestFillParts(t *testing.T) {
	b := proofBook(t, nil)
	for _, path := range fillSheets {
		body, _ := b.sheet(t, path)
		if !strings.Contains(body, `<section id="fill" class="fill" hidden`) || !strings.Contains(body, `<section id="fill-end" class="fill" hidden`) || !strings.Contains(body, `data-key="dustbook/`+b.Plan.Shop.Name+`/`+path+`"`) {
			t.Errorf("%s lacks a hidden part", path)
		}
		for _, m := range regexp.MustCompile(`data-with="([a-z]+)"`).FindAllStringSubmatch(body, -1) {
			if !strings.Contains(body, `id="fill-with-`+m[1]+`"`) {
				t.Errorf("%s asks for no instrument for %s", path, m[1])
			}
		}
	}
	i := slices.IndexFunc(b.Sheets, func(s *Sheet) bool { return s.Path == fillSheets[1] })
	if i < 0 || b.Sheets[i].Script != fillScript {
		t.Error("the sheet of readings has no script")
	}
	if body, _ := b.sheet(t, fillSheets[1]); !strings.Contains(body, `data-taken="2026-11-25-commissioning-1.toml`) {
		t.Error("the sheet does not know the records that there are")
	}
}

// The script has nothing that speaks to another place.
func TestFillAsksForNothing(t *testing.T) {
	reach := regexp.MustCompile(`fetch|XMLHttp|sendBeacon|WebSocket|EventSource|import\(|Worker|https?:|new Image|\.src\b|\.submit|window\.open|innerHTML|postMessage`)
	if m := reach.Find(fillCode); m != nil {
		t.Errorf("the script has %q", m)
	}
	if m := reach.Find(fillLook); m != nil {
		t.Errorf("the style has %q", m)
	}
	if reach.FindString("await fetch(x)") == "" {
		t.Error("the test sees nothing")
	}
}
