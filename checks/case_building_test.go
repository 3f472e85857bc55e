package checks_test

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
)

// C38 and C20, for what the checks of fire separation and building find there.

// plasticPipe is the pipe of C38, and pipeOf the same pipe of something else.
const plasticPipe = `material = "plastic schedule 40"`

func pipeOf(text string) change { return change{plasticPipe, text} }

// edition names an edition of the residential code in C38.
func edition(is string) change {
	return change{`rules = "us"`, "rules = \"us\"\neditions = { \"IRC\" = \"" + is + "\" }"}
}

func TestCasesOfTheBuilding(t *testing.T) {
	garage, dwelling := `divides = "garage from dwelling"`, func(text string) change { return change{`divides = "garage from dwelling"`, text} }
	confirmed := func(thick string) change {
		return change{"[[machine]]", "[[confirmed]]\nfigure = \"garage-duct-thickness\"\nvalue = \"" + thick + "\"\nby = \"building official\"\n[[machine]]"}
	}
	noText := change{`rules = "us"`, `rules = "none"`}
	for _, c := range []struct {
		file    string
		changes []change
		expected
	}{
		// C38: plastic through the separation is no, whatever covers it or fills the gap
		{"c38-garage-wall", nil, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "is plastic schedule 40"}},
		{"c38-garage-wall", []change{dwelling(garage + "\nboard = \"5/8 in\"")}, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "at least 26 ga (0.48 mm)"}},
		{"c38-garage-wall", []change{edition("2003")}, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "is plastic schedule 40"}},
		// steel of either gauge that pages give still has openings; the thinner is told of the thicker
		{"c38-garage-wall", []change{pipeOf("material = \"spiral steel\"\ngauge = \"26 ga\"")}, expected{check: "garage-separation", about: "Pipe", state: checks.Ask, by: checks.ByRule, weight: checks.Stop, says: "Another page that was read wants 25 ga"}},
		{"c38-garage-wall", []change{pipeOf("material = \"spiral steel\"\ngauge = \"25 ga\"")}, expected{check: "garage-separation", about: "Pipe", state: checks.Ask, by: checks.ByRule, weight: checks.Stop, says: "a dust duct has openings."}},
		{"c38-garage-wall", []change{pipeOf("material = \"spiral steel\"\ngauge = \"27 ga\"")}, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "thinner steel"}},
		// without a text plastic is asked; with a thickness that the official gave it is no again
		{"c38-garage-wall", []change{noText}, expected{check: "garage-separation", about: "Pipe", state: checks.Ask, by: checks.ByRule, weight: checks.Stop, says: "No text on that was read"}},
		{"c38-garage-wall", []change{noText, confirmed("0.48 mm")}, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "is plastic schedule 40"}},
		{"c38-garage-wall", []change{noText, confirmed("0.48 mm"), pipeOf("material = \"spiral steel\"\nwall = \"0.4 mm\"")}, expected{check: "garage-separation", about: "Pipe", state: checks.NotMet, by: checks.ByRule, weight: checks.Stop, says: "thinner steel"}},
		// the rest of that wall is not told of
		{"c38-garage-wall", nil, expected{check: "garage-door", state: checks.NotGiven, by: checks.ByGiven, weight: checks.Know, says: "Whether a door leads through the wall"}},
		{"c38-garage-wall", nil, expected{check: "garage-board", state: checks.NotGiven, by: checks.ByGiven, weight: checks.Know, says: "is not given"}},
		// as a rated wall of two fire areas it is asked
		{"c38-garage-wall", []change{dwelling("rating = \"1 h\"\ndivides = \"fire area from fire area\"")}, expected{check: "rated-wall", about: "Pipe", state: checks.Ask, by: checks.ByTopology, weight: checks.Mend, says: "a wall rated 1 h between two fire areas"}},
		// C20: both extinguishers are out of date; at home that is advice, where people are employed it is not met
		{"c20-iron-on-the-sander", nil, expected{check: "extinguisher-service", state: checks.Advice, by: checks.ByRule, weight: checks.Mend, says: "The service of 2 extinguishers is over: the oldest was on 2024-05-14"}},
		{"c20-iron-on-the-sander", []change{{"setting = \"home\" ", "rules = \"us\"\nsetting = \"business\" "}}, expected{check: "extinguisher-service", state: checks.NotMet, by: checks.ByRule, weight: checks.Mend, says: "more than 12 months"}},
		{"c20-iron-on-the-sander", []change{{"serviced = 2024-05-14", "serviced = 2026-08-01"}, {"serviced = 2025-02-03", "serviced = 2026-08-01"}, {"setting = \"home\" ", "rules = \"us\"\nsetting = \"business\" "}}, expected{check: "extinguisher-service", state: checks.Met, by: checks.ByRule, weight: checks.Know, says: "The oldest service was on 2026-08-01"}},
	} {
		t.Run(c.file, func(t *testing.T) { c.hold(t, checks.Run(readCase(t, c.file, c.changes...))) })
	}
}

// The edition that the file names is the one that is cited.
func TestEditionOfTheSeparation(t *testing.T) {
	for is, clause := range map[string]string{"2018": "R302.5.2", "2003": "R309.1.1"} {
		f := only(t, checks.Run(readCase(t, "c38-garage-wall", edition(is))), "garage-separation", "Pipe")
		if len(f.Basis) != 1 || f.Basis[0].Clause != clause || f.Basis[0].Edition() != is {
			t.Errorf("%s: cites %v", is, f.Basis)
		}
	}
}

// Nothing that the checks say tells anybody to put a fire damper into a dust
// duct: wherever one is named, it is not to be fitted.
func TestNoFireDamper(t *testing.T) {
	p := readCase(t, "c38-garage-wall", change{`divides = "garage from dwelling"`, `rating = "1 h"`})
	f := only(t, checks.Run(p), "rated-wall", "Pipe")
	if !strings.Contains(f.Do, "Fit no fire damper") || !strings.Contains(f.Asks, "without a fire damper") {
		t.Errorf("%s %s", f.Do, f.Asks)
	}
	if slices.ContainsFunc(pick(checks.Run(p), "garage-separation", ""), func(f checks.Finding) bool { return f.About == "Pipe" }) {
		t.Error("a wall that divides nothing is taken for the one to the dwelling")
	}
}
