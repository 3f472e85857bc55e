package checks_test

import (
	"os"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// Cases from public accounts of small shops, as shop files; a number such as
// C18 names the case and its file. Each file gives what the case gives; what
// it leaves open is marked "assumed" there.

// readCase reads a case with pieces replaced; each must stand there once.
func readCase(t *testing.T, name string, changes ...change) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile("testdata/cases/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for _, c := range changes {
		if strings.Count(text, c.old) != 1 {
			t.Fatalf("%q stands %d times in %s, want once", c.old, strings.Count(text, c.old), name)
		}
		text = strings.Replace(text, c.old, c.new, 1)
	}
	s, problems := shop.Read(name+".toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(s, nil, entry.Date{})
}

func TestCases(t *testing.T) {
	for _, c := range []struct {
		file    string
		changes []change
		expected
	}{
		// C18: fine dust, plastic bin, no bond: warned, whatever foil is added
		{"c18-plastic-pail", nil, expected{check: "fine-dust-in-bin", about: "Vac and cyclone", state: checks.Thin, by: checks.ByTopology, weight: checks.Mend, says: "a pail of plastic"}},
		{"c18-plastic-pail", []change{{`material = "plastic" }`, "material = \"steel\" }\nbonded = \"2 ohm\""}}, expected{check: "fine-dust-in-bin", about: "Vac and cyclone", state: checks.Advice, by: checks.ByRule, weight: checks.Know, says: "2 ohm, within the 10 ohm"}},
		// C20: metal on a wood main is never run
		{"c20-iron-on-the-sander", nil, expected{check: "metal-on-wood-main", about: "Collector", state: checks.NotMet, by: checks.ByTopology, weight: checks.Stop, says: "Belt sander makes metal or sparks"}},
		{"c20-iron-on-the-sander", []change{{`makes = "mixed"`, `makes = "fine wood"`}}, expected{check: "metal-on-wood-main", about: "Collector", state: checks.Met, by: checks.ByTopology, weight: checks.Know, says: "same sort of dust"}},
		// C21: a stop on the way out has to be placed
		{"c21-basement-bandsaw", nil, expected{check: "stop-on-way-out", about: "Bag collector", state: checks.NotGiven, by: checks.ByTopology, weight: checks.Mend, says: "No stop for it is placed"}},
		{"c21-basement-bandsaw", []change{{"[[machine]]", "[[stop]]\nname = \"Stair stop\"\nat = [22, 8]\nstops = [\"Bag collector\"]\n[[machine]]"}}, expected{check: "stop-on-way-out", about: "Bag collector", state: checks.Met, by: checks.ByTopology, weight: checks.Know, says: "placed by an exit"}},
		// at the far end beside the collector it is not on the way out
		{"c21-basement-bandsaw", []change{{"[[machine]]", "[[stop]]\nname = \"Switch\"\nat = [6, 11]\nstops = [\"Bag collector\"]\n[[machine]]"}}, expected{check: "stop-on-way-out", about: "Bag collector", state: checks.Advice, by: checks.ByTopology, weight: checks.Mend, says: "Switch is 18.2 ft from the nearest exit"}},
		// C29: the threshold comes from the measured idle; one set from the
		// nameplate's 1.1 A misses the machine
		{"c29-measured-idle", nil, expected{check: "threshold", about: "Sander runs", state: checks.Met, by: checks.ByGiven, weight: checks.Know, says: "0.55 A idling"}},
		{"c29-measured-idle", []change{{`threshold = "0.25 A"`, `threshold = "0.66 A"`}}, expected{check: "threshold", about: "Sander runs", state: checks.NotMet, by: checks.ByGiven, weight: checks.Mend, says: "not under the 0.55 A"}},
		{"c29-measured-idle", []change{{"no_load = \"0.55 A\"                     # measured\n", ""}}, expected{check: "threshold", about: "Sander runs", state: checks.NotGiven, by: checks.ByGiven, weight: checks.Know, says: "nameplate's amps do not stand in"}},
		// C33: with people employed a home is a workplace; without them it is not
		{"c33-basement-of-three", nil, expected{check: "dust-exposure", about: "", state: checks.Ask, by: checks.ByRule, weight: checks.Know, says: "only sampling at the person tells it"}},
		{"c33-basement-of-three", nil, expected{check: "training-record", about: "", state: checks.NotGiven, by: checks.ByGiven, weight: checks.Know, says: "No list of who is trained"}},
		{"c33-basement-of-three", nil, expected{check: "last-test", about: "", state: checks.NotGiven, by: checks.ByGiven, weight: checks.Know, says: "No test is on record"}},
		// C38: a dust duct is a duct: plastic through the separation is no
		{"c38-garage-wall", nil, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "is plastic schedule 40"}},
		// steel of the gauge the code names is still asked: a dust duct has openings
		{"c38-garage-wall", []change{{`material = "plastic schedule 40"`, "material = \"spiral steel\"\ngauge = \"26 ga\""}}, expected{check: "garage-separation", about: "Pipe", state: checks.Ask, by: checks.ByRule, weight: checks.Stop, says: "no openings into the garage"}},
	} {
		t.Run(c.file, func(t *testing.T) { c.hold(t, checks.Run(readCase(t, c.file, c.changes...))) })
	}
}

// C13: six gates; what all shut and all open do to suction and flow are two
// quantities. The file is also the one whose switch sign the templates test.
func TestCaseSixGates(t *testing.T) {
	p := readCase(t, "c13-six-gates")
	if len(p.Shop.Gates) != 6 {
		t.Fatalf("%d gates", len(p.Shop.Gates))
	}
	results := map[string]struct{ suction, flow float64 }{}
	for _, u := range p.Air.Uses {
		r := u.Results[0]
		if !r.OnCurve {
			t.Fatalf("%s is off the curve: %s", u.Name, r.Why)
		}
		results[u.Name] = struct{ suction, flow float64 }{float64(r.Inlet), float64(r.Flow)}
	}
	shut, one, open := results["Everything shut"], results["Planer"], results["Everything open"]
	if !(shut.suction > one.suction && one.suction > open.suction) || !(shut.flow < one.flow && one.flow < open.flow) {
		t.Errorf("all shut %v, one open %v, all open %v: suction must fall and air must grow", shut, one, open)
	}
	// nothing here follows a trigger, so nothing is said of triggers
	for _, f := range checks.Run(p) {
		if strings.HasPrefix(f.Check, "trigger") || f.Check == "threshold" || f.Check == "chain-devices" {
			t.Errorf("%s about %s in a shop without triggers", f.Check, f.About)
		}
	}
}
