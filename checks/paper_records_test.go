package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/entry"
	"dustbook/plan/record"
)

// recordOf reads a record as its file would hold it.
func recordOf(t *testing.T, name, text string) *record.Record {
	t.Helper()
	r, problems := record.Read("records/"+name, []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return r
}

const proof = `kind = "commissioning"
date = 2026-09-20
[[reading]]
of = "smoke"
at = "Saw/cabinet"
value = "all drawn in"
[[reading]]
of = "smoke"
at = "Lathe/scoop"
value = "all drawn in"
[[reading]]
of = "hood pressure"
at = "Saw/cabinet"
value = "4.1 inwg"
with = "meter 2"
calibrated = 2026-03-01
[[reading]]
of = "velocity"
at = "Lathe/scoop"
value = "4000 fpm"
with = "meter 2"
calibrated = 2026-03-01
`

// C34: investigators let smoke go at the hoods of a school's shop before they
// measured. Smoke and air at every hood, and no change since.
func TestCommissioningOnRecord(t *testing.T) {
	change := func(day string) *record.Record {
		return recordOf(t, day+"-change-1.toml", "kind = \"change\"\ndate = "+day+"\n")
	}
	for _, c := range []struct {
		name     string
		old, new string
		more     []*record.Record
		state    checks.State
		weight   checks.Weight
		says     string
	}{
		{"met", "", "", nil, checks.Met, checks.Know, "the last of 2026-09-20"},
		{"no smoke at a hood", "of = \"smoke\"\nat = \"Lathe/scoop\"", "of = \"smoke\"\nat = \"Hall\"", nil, checks.NotMet, checks.Mend, "No smoke is on record at Lathe/scoop"},
		{"no air at a hood", "of = \"velocity\"\nat = \"Lathe/scoop\"\nvalue = \"4000 fpm\"", "of = \"resistance\"\nat = \"Lathe/scoop\"\nvalue = \"3 ohm\"", nil, checks.NotMet, checks.Mend, "No reading of pressure or flow is on record at Lathe/scoop"},
		{"changed since", "", "", []*record.Record{change("2026-09-21")}, checks.NotMet, checks.Mend, "The record of 2026-09-21 tells of a change, and the last readings are of 2026-09-20"},
		{"changed that day, and measured after it", "", "", []*record.Record{change("2026-09-20")}, checks.Met, checks.Know, "no change since"},
		{"a service proves nothing", `kind = "commissioning"`, `kind = "service"`, nil, checks.NotGiven, checks.Know, "No commissioning is on record"},
		{"an inspection counts", `kind = "commissioning"`, `kind = "inspection"`, nil, checks.Met, checks.Know, "2026-09-20"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(proof, c.old, c.new, 1)
			kind := strings.Split(text, `"`)[1]
			p := recorded(t, append([]*record.Record{recordOf(t, "2026-09-20-"+kind+"-1.toml", text)}, c.more...), without("commissioning report"))
			f := only(t, checks.Run(p), "commissioning-record", "Cyclone")
			if f.State != c.state || f.Weight != c.weight || f.By != checks.ByTopology || !strings.Contains(f.Says, c.says) || f.Do == "" {
				t.Errorf("%+v", f)
			}
		})
	}
}

// A test on record counts as one by a report does.
func TestLastTestOnRecord(t *testing.T) {
	old := recordOf(t, "2024-09-20-commissioning-1.toml", strings.NewReplacer("2026-09-20", "2024-09-20", "2026-03-01", "2024-03-01").Replace(proof))
	gone := change{"kind = \"thorough examination\"", "kind = \"thorough cleaning\""}
	f := only(t, checks.Run(recorded(t, []*record.Record{old}, gone, californian)), "last-test", "")
	if f.State != checks.NotMet || !strings.Contains(f.Says, "last tested on 2024-09-20") {
		t.Errorf("a record of two years ago: %+v", f)
	}
	f = only(t, checks.Run(recorded(t, []*record.Record{old}, californian)), "last-test", "")
	if f.State != checks.Met || !strings.Contains(f.Says, "last tested on 2026-08-20") {
		t.Errorf("the later report counts: %+v", f)
	}
}

func TestInstruments(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		state          checks.State
		line           int
		says           string
	}{
		{"met", "", "", checks.Met, 11, "Every reading of 2026-09-20"},
		{"no instrument", "with = \"meter 2\"\ncalibrated = 2026-03-01\n[[reading]]", "[[reading]]", checks.NotGiven, 11, "with what hood pressure of Saw/cabinet was read"},
		{"no calibration", "with = \"meter 2\"\ncalibrated = 2026-03-01\n[[reading]]", "with = \"U-tube\"\n[[reading]]", checks.Advice, 11, "when U-tube was calibrated"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := recordOf(t, "2026-09-20-commissioning-1.toml", strings.Replace(proof, c.old, c.new, 1))
			f := only(t, checks.Run(recorded(t, []*record.Record{r})), "calibrated-instruments", "")
			if f.State != c.state || f.At.Line != c.line || f.File != "records/2026-09-20-commissioning-1.toml" || !strings.Contains(f.Says, c.says) || f.Weight != checks.Know {
				t.Errorf("%+v", f)
			}
		})
	}
	smoke := recordOf(t, "2026-09-21-inspection-1.toml", "kind = \"inspection\"\ndate = 2026-09-21\n[[reading]]\nof = \"smoke\"\nat = \"Hall\"\nvalue = \"stays\"\n")
	older := recordOf(t, "2026-09-20-commissioning-1.toml", proof)
	if f := only(t, checks.Run(recorded(t, []*record.Record{older, smoke})), "calibrated-instruments", ""); f.File != "records/2026-09-20-commissioning-1.toml" {
		t.Errorf("smoke needs no instrument: %+v", f)
	}
	if found := pick(checks.Run(recorded(t, []*record.Record{smoke})), "calibrated-instruments", ""); len(found) != 0 {
		t.Errorf("nothing was read: %+v", found)
	}
}

// Each point of a letter is a finding at its own line of the letter's file.
func TestLetters(t *testing.T) {
	for _, c := range []struct {
		name, item string
		state      checks.State
		weight     checks.Weight
		says       string
	}{
		{"open", ``, checks.NotMet, checks.Mend, "The letter of 2026-09-20 asks: “Show the ducts”. It is not answered yet."},
		{"answered", "state = \"answered\"", checks.Met, checks.Know, "It is answered."},
		{"answered by its day", "answered = 2026-09-21", checks.Met, checks.Know, "It is answered."},
		{"answered with a gap", "state = \"answered\"\ngap = \"two are missing\"", checks.NotMet, checks.Mend, "What is missing: “two are missing”."},
		{"open with a gap", "gap = \"two are missing\"", checks.NotMet, checks.Mend, "What is missing: “two are missing”."},
		{"settled, the gap still noted", "state = \"closed\"\ngap = \"two were missing\"", checks.Met, checks.Know, "It is settled"},
		{"opened again", "state = \"open\"\nanswered = 2026-09-21", checks.NotMet, checks.Mend, "It is not answered yet."},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := recordOf(t, "2026-09-20-letter-1.toml", "kind = \"letter\"\ndate = 2026-09-20\n\n[[item]]\nasks = \"\"\"Show\n  the ducts.\"\"\"\n"+c.item+"\n")
			f := only(t, checks.Run(recorded(t, []*record.Record{r})), "letters-answered", "2026-09-20-letter-1, point 1")
			if f.State != c.state || f.Weight != c.weight || f.By != checks.ByGiven || !strings.Contains(f.Says, c.says) || f.Do == "" {
				t.Errorf("%+v", f)
			}
			if f.File != "records/2026-09-20-letter-1.toml" || f.At.Line != 4 {
				t.Errorf("it stands in %s:%d", f.File, f.At.Line)
			}
		})
	}
	empty := recordOf(t, "2026-09-20-letter-1.toml", "kind = \"letter\"\ndate = 2026-09-20\n")
	if f := only(t, checks.Run(recorded(t, []*record.Record{empty})), "letters-answered", "2026-09-20-letter-1"); f.State != checks.NotGiven || f.Weight != checks.Mend || f.About != "2026-09-20-letter-1" || f.At.Line != 1 {
		t.Errorf("a letter without points: %+v", f)
	}
	two := recordOf(t, "2026-09-20-letter-1.toml", "kind = \"letter\"\ndate = 2026-09-20\n[[item]]\nasks = \"A\"\n[[item]]\nasks = \"B\"\n")
	if found := pick(checks.Run(recorded(t, []*record.Record{two})), "letters-answered", ""); len(found) != 2 || found[0].About != "2026-09-20-letter-1, point 1" || found[1].About != "2026-09-20-letter-1, point 2" {
		t.Errorf("two points: %+v", found)
	}
	long := recordOf(t, "2026-09-20-letter-1.toml", "kind = \"letter\"\ndate = 2026-09-20\n[[item]]\nasks = \""+strings.Repeat("é", 300)+"\"\n")
	if says := only(t, checks.Run(recorded(t, []*record.Record{long})), "letters-answered", "2026-09-20-letter-1, point 1").Says; strings.Count(says, "é") != 200 || !strings.Contains(says, "…") {
		t.Errorf("a long point: %q", says)
	}
	if found := pick(checks.Run(recorded(t, []*record.Record{{Kind: "service", Date: entry.Date{Year: 2026, Month: 9, Day: 20}}})), "letters-answered", ""); len(found) != 0 {
		t.Errorf("no letter: %+v", found)
	}
}

// An item that does not say what it asks is an error with the line of its table.
func TestItemWithoutWhatItAsks(t *testing.T) {
	_, problems := record.Read("records/2026-09-20-letter-1.toml", []byte("kind = \"letter\"\ndate = 2026-09-20\n[[item]]\nrule = \"a text\"\n"))
	if len(problems) != 1 || problems[0].Place.Line != 3 || problems[0].File != "records/2026-09-20-letter-1.toml" {
		t.Errorf("%+v", problems)
	}
}
