package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/shop"
)

// Case C10: air that comes back through a grille wants its flow by 500 to 300
// fpm, 0.8 to 1.3 square feet for 400 cfm, by common practice, no source. The
// whole shop moves 1330 cfm at the most: 2.7 to 4.4 square feet. A way that is
// left out is to be mended.
func TestReturnPath(t *testing.T) {
	back := func(more string) change {
		return change{`exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"House\"" + more}
	}
	for _, e := range []expected{
		{"met: the air comes back where it is drawn", []change{{`exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}}, "return-path", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "into the air that it is drawn from"},
		{"met: through an open doorway", []change{back(""), {"name = \"Hall\"\noutline", "name = \"Hall\"\nopen_to = [\"House\"]\noutline"}}, "return-path", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "into the air that it is drawn from"},
		{"missing: the opening", []change{back("")}, "return-path", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Mend, "Practice gives such a way 2.7 to 4.4 sq ft"},
		{"thin: wide enough", []change{back("\nreturn_opening = \"2.7 sq ft\"")}, "return-path", "Cyclone", checks.Thin, checks.ByTopology, checks.Know, "The way has 2.7 sq ft"},
		{"advice: a little narrower", []change{back("\nreturn_opening = \"2.6 sq ft\"")}, "return-path", "Cyclone", checks.Advice, checks.ByTopology, checks.Mend, "That is narrow"},
		{"not met: no way", []change{back("\nreturn_opening = \"0 sq ft\"")}, "return-path", "Cyclone", checks.NotMet, checks.ByTopology, checks.Mend, "chokes on its own air"},
		{"missing: where its air goes", []change{{"exhaust = \"outside\"\n", ""}}, "return-path", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "collector.exhaust of Cyclone"},
		{"missing: which room", []change{{`exhaust = "outside"`, `exhaust = "returns to room"`}}, "return-path", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "collector.returns_to of Cyclone"},
		{"missing: a machine's room", []change{{`exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}, {"at = [20, 5]\nmakes", "at = [20, 45]\nmakes"}}, "return-path", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "machine.room of Lathe"},
		{"missing: a flow", []change{back(""), {`["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]`, `["1900 cfm", "9 inwg"], ["2000 cfm", "8 inwg"]`}}, "return-path", "Cyclone", checks.NotGiven, checks.ByTopology, checks.Know, "cannot be told"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t)), "return-path", ""); len(found) != 0 {
		t.Errorf("its air goes outdoors: %+v", found)
	}
}

func TestMakeUpAir(t *testing.T) {
	opening := func(area string) change { return change{`opening = "3 sq ft"`, area} }
	burns := func(kind string) change { return change{`kind = "electric"`, `kind = "` + kind + `"`} }
	for _, e := range []expected{
		{"thin: enough for practice", []change{opening(`opening = "2 sq ft"`)}, "make-up-air", "Hall", checks.Thin, checks.ByModel, checks.Know, "Through 2 sq ft of opening"},
		{"advice: a little less", []change{opening(`opening = "1.9 sq ft"`)}, "make-up-air", "Hall", checks.Advice, checks.ByModel, checks.Mend, "Practice gives it 2 sq ft"},
		{"advice: no opening", []change{opening(`opening = "0 sq ft"`)}, "make-up-air", "Hall", checks.Advice, checks.ByModel, checks.Mend, "no opening lets air in"},
		{"missing: the opening", []change{opening("")}, "make-up-air", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "Practice gives it 2 sq ft"},
		{"asked: a stove, by a figure of practice", []change{burns("wood stove")}, "make-up-air", "Hall", checks.Ask, checks.ByModel, checks.Mend, "common practice without a source"},
		{"not met: the owner's own figure", []change{opening("opening = \"3 sq ft\"\ndepressurisation = \"0.1 Pa\"")}, "make-up-air", "Hall", checks.NotMet, checks.ByGiven, checks.Mend, "where you chose 0.1 Pa at the most"},
		{"thin: within the owner's own figure", []change{opening("opening = \"3 sq ft\"\ndepressurisation = \"60 Pa\"")}, "make-up-air", "Hall", checks.Thin, checks.ByModel, checks.Know, "Through 3 sq ft of opening"},
		{"asked: an open flue and the owner's own figure", []change{burns("sealed-combustion gas"), opening("opening = \"3 sq ft\"\ndepressurisation = \"0.1 Pa\"")}, "make-up-air", "Hall", checks.Ask, checks.ByModel, checks.Mend, "where you chose 0.1 Pa at the most"},
		{"missing: what burns", []change{{"[[appliance]]\nkind = \"electric\"\nroom = \"Hall\"", ""}}, "make-up-air", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "No appliance is listed"},
		{"asked: a stove in no room may stand in any", []change{{"kind = \"electric\"\nroom = \"Hall\"", `kind = "wood stove"`}}, "make-up-air", "Hall", checks.Ask, checks.ByModel, checks.Mend, "wood stove"},
		{"met: the air comes back", []change{{`exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}}, "make-up-air", "Hall", checks.Met, checks.ByModel, checks.Know, "comes back into it"},
		{"missing: a machine's room", []change{{"at = [20, 5]\nmakes", "at = [20, 45]\nmakes"}, {"at = [10, 5]\nmakes", "at = [10, 45]\nmakes"}}, "make-up-air", "Hall", checks.NotGiven, checks.ByModel, checks.Know, "machine.room of Saw"},
		{"asked: an open flue, small opening", []change{burns("open-flue gas")}, "make-up-air", "Hall", checks.Ask, checks.ByModel, checks.Mend, "it is passed"},
		{"asked: an open flue, however large the opening", []change{burns("open-flue gas"), opening(`opening = "60 sq ft"`)}, "make-up-air", "Hall", checks.Ask, checks.ByModel, checks.Know, "does not say that a flue draws"},
		{"asked: sealed combustion", []change{burns("sealed-combustion gas")}, "make-up-air", "Hall", checks.Ask, checks.ByModel, checks.Know, "is 25 Pa"},
		{"missing: the opening beside a flue", []change{burns("open-flue gas"), opening("")}, "make-up-air", "Hall", checks.NotGiven, checks.ByGiven, checks.Mend, "To stay within 2 Pa below the outdoors takes"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	list := checks.Run(planOf(t, burns("open-flue gas")))
	if n := checks.Standing(list); n != 1 {
		t.Errorf("%d stops stand beside an open flue, want that of its own check alone", n)
	}
	if f := only(t, list, "make-up-air", "Hall"); !strings.Contains(f.Asks, "open-flue gas") || !strings.HasSuffix(f.Asks, "?") {
		t.Errorf("asks %q", f.Asks)
	}
}

// Whatever burns has a figure to be held against, and is asked about, whether
// its opening is given or not.
func TestWhateverBurnsIsAsked(t *testing.T) {
	burning := 0
	for _, w := range shop.Words("appliance") {
		if w.Word == "electric" {
			continue
		}
		burning++
		for area, state := range map[string]checks.State{`opening = "3 sq ft"`: checks.Ask, "": checks.NotGiven} {
			f := only(t, checks.Run(planOf(t, change{`kind = "electric"`, `kind = "` + w.Word + `"`}, change{`opening = "3 sq ft"`, area})), "make-up-air", "Hall")
			if f.State != state || f.Asks == "" || !strings.Contains(f.Says, w.Word) {
				t.Errorf("%s: %s: %s %s", w.Word, f.State, f.Says, f.Asks)
			}
		}
	}
	if burning < 5 {
		t.Errorf("%d kinds burn", burning)
	}
}
