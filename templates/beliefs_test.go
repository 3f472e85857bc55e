package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/record"
	"dustbook/plan/unit"
)

// Every belief is answered with figures of the shop; a shop that gives none
// says so, and no answer promises what this book may not.
func TestBeliefsHaveFigures(t *testing.T) {
	b := newBook(t, string(content.Example()))
	missing := b.words.Text("beliefs.no-figure")
	v := b.beliefsView()
	if len(v.Beliefs) != 8 {
		t.Fatalf("%d beliefs", len(v.Beliefs))
	}
	for _, one := range v.Beliefs {
		if one.Says == "" || one.Answer == "" || slices.Contains(one.Figures, missing) {
			t.Errorf("%+v", one)
		}
		if !strings.ContainsAny(strings.Join(one.Figures, " "), "0123456789") {
			t.Errorf("%s: no number in %v", one.ID, one.Figures)
		}
	}
	_, words := b.sheet(t, "beliefs.html")
	e := b.Plan.Expect(record.Reading{Of: "flow", At: "Cyclone", Use: "Table saw", Filter: "clean"})
	for _, text := range []string{"motor 5 hp; flow claimed on its label: 2600 cfm; expected with Table saw alone: " + unit.Air.Print(b.units, unit.Flow(e.Low)), "East main 40 ohm", "Does not conduct, by the shop file: Edge drop.", "stops 2, extinguishers"} {
		if !strings.Contains(words, text) {
			t.Errorf("%q is not on the sheet", text)
		}
	}
	for _, never := range []string{"exempt", "compliant", " is safe"} {
		if strings.Contains(strings.ToLower(words), never) {
			t.Errorf("the sheet says %q", never)
		}
	}
	bare := newBook(t, "[shop]\nname = \"Bare\"\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"1000 cfm\", suction = \"8 inwg\" }\n")
	said := 0
	for _, one := range bare.beliefsView().Beliefs {
		if slices.Contains(one.Figures, missing) {
			said++
		}
	}
	if said != 7 { // all but what the plan counts: stops and extinguishers
		t.Errorf("%d beliefs say that the figures are not given", said)
	}
}

// The table of words shows both planers.
func TestWordsShowBothPlaners(t *testing.T) {
	b := newBook(t, "[shop]\nname = \"Nothing\"\n")
	rows := map[string]wordRow{}
	for _, g := range b.tradeWords().Groups {
		for _, row := range g.Rows {
			if row.Thing == "" || row.US == "" || row.UK == "" || row.Here == "" {
				t.Errorf("%+v", row)
			}
			rows[row.Here] = row
		}
	}
	if !strings.Contains(rows["jointer"].UK, "planer") || rows["planer"].UK != "thicknesser" || !strings.Contains(rows["planer"].US, "planer") {
		t.Errorf("jointer %+v, planer %+v", rows["jointer"], rows["planer"])
	}
	if len(rows) < 30 {
		t.Errorf("only %d words", len(rows))
	}
}
