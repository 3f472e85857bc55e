package checks_test

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
)

// While the pressure of a filter is not given nothing is met by its air: thin,
// with why and what to add. Air that goes outside has no filter to ask for, and
// what falls short does so all the same.
func TestOpenFilterIsThin(t *testing.T) {
	given := "filter = { clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"outside\""
	inside, outside := change{given, "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}, change{given, `exhaust = "outside"`}
	greedy := change{"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]", "makes = \"wood\"\nport = { size = \"4 in\", flow = \"2000 cfm\" }\n[[machine]]"}
	for name, c := range map[string]struct {
		changes      []change
		check, about string
		state        checks.State
		open         bool
	}{
		"air, not given":       {[]change{inside}, "air-captured", "Saw", checks.Thin, true},
		"air, outside":         {[]change{outside}, "air-captured", "Saw", checks.Met, false},
		"air, given":           {nil, "air-captured", "Saw", checks.Met, false},
		"air, not given, less": {[]change{inside, greedy}, "air-captured", "Saw", checks.NotMet, false},
		"dust, not given":      {[]change{inside}, "dust-carried", "Lathe", checks.Thin, true},
		"dust, outside":        {[]change{outside}, "dust-carried", "Lathe", checks.Met, false},
	} {
		f := only(t, checks.Run(planOf(t, c.changes...)), c.check, c.about)
		if f.State != c.state || strings.Contains(f.Says, "The filter's pressure is not given") != c.open || strings.Contains(f.Do, "Add filter = ") != c.open {
			t.Errorf("%s: %+v", name, f)
		}
	}
}

// A need from memory and a filter not given are told together; where the air
// falls short the missing filter explains nothing, and only the need is told.
func TestReasonsStandTogether(t *testing.T) {
	given := "filter = { clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"outside\""
	changes := []change{{given, "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}, {"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]", "makes = \"wood\"\n[[machine]]"}}
	weak := change{`[["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]]`, `[["0 cfm", "0.3 inwg"], ["1800 cfm", "0.1 inwg"]]`}
	for name, c := range map[string]struct {
		changes []change
		filter  bool
	}{"enough": {changes, true}, "too little": {append(slices.Clone(changes), weak), false}} {
		f := only(t, checks.Run(planOf(t, c.changes...)), "air-captured", "Saw")
		if f.State != checks.Thin || !strings.Contains(f.Says, "from memory") || strings.Contains(f.Says, "The filter's pressure is not given") != c.filter || strings.Contains(f.Do, "Add filter = ") != c.filter {
			t.Errorf("%s: %+v", name, f)
		}
	}
}

// Several crossings are told of also where another use leaves the curve.
func TestCrossingsBesideOffCurve(t *testing.T) {
	p := planOf(t, change{`["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]`, `["0 cfm", "10 inwg"], ["500 cfm", "4 inwg"], ["560 cfm", "9 inwg"], ["900 cfm", "8.8 inwg"]`})
	several, off := false, false
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			several, off = several || len(r.Crossings) > 1, off || !r.OnCurve
		}
	}
	says := only(t, checks.Run(p), "fan-on-curve", "Cyclone").Says
	if !several || !off || !strings.Contains(says, "leaves its curve") || !strings.Contains(says, "settle at several flows") {
		t.Errorf("several %v, off %v: %q", several, off, says)
	}
}
