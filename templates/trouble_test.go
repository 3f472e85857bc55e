package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/unit"
)

// The marks on the sheet are what the plan expects, use for use: a tap, its
// filter gauge, and the hoods of the use.
func TestMarksAreWhatThePlanExpects(t *testing.T) {
	b := newBook(t, string(content.Example()))
	tables := b.tapTables(b.findersOf())
	if len(tables) != 3 || tables[0].Head != "Trunk tap" {
		t.Fatalf("tables %+v", tables)
	}
	seen := 0
	for _, v := range tables {
		for _, row := range v.Rows {
			e := b.Plan.Expect(record.Reading{Of: "tap pressure", At: v.Head, Use: row.Use, Filter: duct.Clean})
			f := b.Plan.Expect(record.Reading{Of: "filter pressure", At: "Cyclone", Use: row.Use, Filter: duct.Clean})
			if want := unit.Press.Figure(b.units, unit.Pressure(e.Low)); !e.Known() || row.Mark != want {
				t.Errorf("%s, %s: %s, want %s", v.Head, row.Use, row.Mark, want)
			}
			if want := unit.Press.Figure(b.units, unit.Pressure(f.Low)); row.Second != want {
				t.Errorf("%s, %s: filter %s, want %s", v.Head, row.Use, row.Second, want)
			}
			if len(row.Hoods) == 0 || len(row.Gates) == 0 {
				t.Errorf("%s, %s: %+v", v.Head, row.Use, row)
			}
			seen++
		}
	}
	if seen < 20 {
		t.Errorf("only %d marks", seen)
	}
}

// Every row names what decides: a reading under the mark of a tap leaves both
// sides and names a second gauge; what two readings leave is part of what one
// left.
func TestASecondReadingDecides(t *testing.T) {
	b := newBook(t, string(content.Example()))
	upstream, fan := b.words.Text("trouble.side.open.upstream"), b.words.Text("trouble.fault.fan-weak")
	over := b.words.Text("trouble.over")
	rows := 0
	for _, v := range append(b.tapTables(b.findersOf()), b.filterTables(b.findersOf())...) {
		named := map[string]int{}
		for _, m := range v.Meanings {
			rows++
			if m.Next == "" {
				t.Errorf("%s %s: no second gauge", v.Head, m.Reads)
			}
			for _, left := range []gaugeLeft{m.IfOver, m.IfUnder} {
				for _, text := range left.Means {
					if !slices.Contains(m.Means, text) {
						t.Errorf("%s %s: %q came with the second reading", v.Head, m.Reads, text)
					}
				}
				if len(left.Means) >= len(m.Means) && left.Then == "" {
					t.Errorf("%s %s: %v is left, and nothing more is read", v.Head, m.Reads, left.Means)
				}
			}
			tap := strings.HasPrefix(v.ID, "tap-")
			if m.Reads != over && tap && (!slices.Contains(m.Means, upstream) || !slices.Contains(m.Means, fan)) {
				t.Errorf("%s under its mark: %v", v.Head, m.Means)
			}
			if m.Reads == over && tap && slices.Contains(m.Means, fan) {
				t.Errorf("%s over its mark: %v", v.Head, m.Means)
			}
			uses := m.Uses
			if uses == nil {
				uses = namesIn(v.Rows, func(r gaugeMark) string { return r.Use })
			}
			for _, use := range uses {
				named[use]++
			}
		}
		for _, row := range v.Rows {
			if named[row.Use] != 2 {
				t.Errorf("%s: %s has %d meanings, want over and under", v.Head, row.Use, named[row.Use])
			}
		}
	}
	if rows < 10 {
		t.Errorf("only %d rows", rows)
	}
}

// Eight symptoms, each with causes, and the shop's own things in them; what
// the shop has not got is not named.
func TestSymptomsOfTheShop(t *testing.T) {
	b := newBook(t, string(content.Example()))
	_, words := b.sheet(t, troublePath)
	for _, text := range []string{"Planer drop: 2 ft of 6 in", "Trunk : from the collector outward: South main, Saw drop", "East zone gate: for", "Cyclone: Gauge across the filter: 0.50 in wg clean", "14.1 min"} {
		if !strings.Contains(strings.ReplaceAll(words, " :", ":"), strings.ReplaceAll(text, " :", ":")) {
			t.Errorf("%q is not on the sheet", text)
		}
	}
	bare := newBook(t, "[shop]\nname = \"Bare\"\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"1000 cfm\", suction = \"8 inwg\" }\n")
	list := bare.symptoms()
	if len(list) != 8 || len(list) != len(b.symptoms()) {
		t.Fatalf("%d symptoms", len(list))
	}
	for _, s := range list {
		if len(s.Steps) == 0 {
			t.Errorf("%s has no cause", s.Name)
		}
		for _, step := range s.Steps {
			if step.Cause == "" || step.Look == "" || step.Do == "" {
				t.Errorf("%s: %+v", s.Name, step)
			}
		}
	}
	if _, words := bare.sheet(t, troublePath); strings.Contains(words, "Across the filter") || !strings.Contains(words, "The shop file has no tap") {
		t.Error("a shop without filter and tap")
	}
	if none := newBook(t, "[shop]\nname = \"Nothing\"\n"); none.has(troublePath) || none.has("beliefs.html") || none.has("training.html") || !none.has("trade-words.html") {
		t.Error("sheets of a shop without anything")
	}
}
