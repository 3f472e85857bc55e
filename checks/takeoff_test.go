package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

func TestFilterLoad(t *testing.T) {
	filter := func(area string) change {
		return change{"filter = { clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"outside\"",
			"filter = { " + area + "clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"returns to room\"\nreturns_to = \"Hall\""}
	}
	eu := change{`rules = "us"`, "rules = \"eu\"\neditions = { \"TRGS 553\" = \"current\" }"}
	confirm := change{"[[room]]\nname = \"Hall\"", "[[confirmed]]\nfigure = \"filter-load\"\nvalue = \"9 ft/min\"\nby = \"insurer's letter of 2026-10-02\"\n[[room]]\nname = \"Hall\""}
	for _, e := range []expected{
		{"met", []change{eu, filter(`area = "125 sq ft", `)}, "filter-load", "Cyclone", checks.Met, checks.ByRule, checks.Know, "within the 8.2"},
		{"not met: a little less filter", []change{eu, filter(`area = "118 sq ft", `)}, "filter-load", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "over the 8.2"},
		{"asked: a text of one country that the file does not name", []change{asEU, filter(`area = "118 sq ft", `)}, "filter-load", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "That is a text of Germany."},
		{"advice: other rules, within", []change{filter(`area = "125 sq ft", `)}, "filter-load", "Cyclone", checks.Advice, checks.ByRule, checks.Know, "a text of another place"},
		{"asked: other rules, over", []change{filter(`area = "118 sq ft", `)}, "filter-load", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "a text of another place"},
		{"met: a figure confirmed", []change{confirm, filter(`area = "118 sq ft", `)}, "filter-load", "Cyclone", checks.Met, checks.ByRule, checks.Know, "within the 9"},
		{"not met: a figure confirmed", []change{confirm, filter(`area = "100 sq ft", `)}, "filter-load", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "over the 9"},
		{"missing: the area", []change{filter("")}, "filter-load", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "the area of its filter is not given"},
		{"missing: the filter", []change{{"filter = { clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"outside\"", "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}}, "filter-load", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "its filter is not given"},
		{"missing: where its air goes", []change{{"exhaust = \"outside\"\n", ""}}, "filter-load", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "Where its air goes is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t)), "filter-load", ""); len(found) != 0 {
		t.Errorf("its air goes outdoors: %+v", found)
	}
}

// Case C31: a planer that takes 1/16 in off 12 in at 20 ft/min fills eight
// tenths of a drum of 55 gal in 14 min, of half the depth in 28 min.
func TestBinFilling(t *testing.T) {
	cut := `cut = { width = "1/8 in", depth = "2 in", feed = "12 ft/min" }`
	drum := change{`bin = { size = "30 gal", material = "steel" }`, `bin = { size = "55 gal", called = "drum", material = "steel" }`}
	planer := func(depth string) []change {
		return []change{drum, {"hours = 2\n" + cut + "\nkind = \"table saw\"", "hours = 0.5\ncut = { width = \"12 in\", depth = \"" + depth + "\", feed = \"20 ft/min\" }\nkind = \"planer\""}}
	}
	for _, e := range []expected{
		{"advice: C31", planer("1/16 in"), "bin-filling", "Cyclone", checks.Advice, checks.ByModel, checks.Know, "Saw fills the drum to its mark in 14.1 min"},
		{"advice: C31, half the cut", planer("1/32 in"), "bin-filling", "Cyclone", checks.Advice, checks.ByModel, checks.Know, "in 28.2 min"},
		{"advice: the days", planer("1/16 in"), "bin-filling", "Cyclone", checks.Advice, checks.ByModel, checks.Know, "0.47 days of work at the most"},
		{"advice: what is left out", planer("1/16 in"), "bin-filling", "Cyclone", checks.Advice, checks.ByModel, checks.Know, "machine.cut of Lathe"},
		{"missing: the cut", []change{{cut + "\n", ""}}, "bin-filling", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "the cuts of Saw and Lathe are not given"},
		{"missing: the bin", []change{{"bin = { size = \"30 gal\", material = \"steel\" }\n", ""}}, "bin-filling", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "What the bin holds is not given"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	if f := only(t, checks.Run(planOf(t)), "bin-filling", "Cyclone"); !strings.Contains(f.Do, "A sensor or a window") {
		t.Errorf("without a sensor: %s", f.Do)
	}
	if f := only(t, checks.Run(drivenPlan(t)), "bin-filling", "Cyclone"); !strings.Contains(f.Do, "Prove the sensor") {
		t.Errorf("with a sensor: %s", f.Do)
	}
}

func TestBondedDuct(t *testing.T) {
	bonded := func(ohms string) change { return change{`bonded = "2 ohm"`, ohms} }
	for _, e := range []expected{
		{"met", nil, "bonded-duct", "Main", checks.Met, checks.ByRule, checks.Know, "is 2 ohm, within the 10 ohm"},
		{"thin", []change{bonded(`bonded = "12 ohm"`)}, "bonded-duct", "Main", checks.Thin, checks.ByRule, checks.Know, "a joint is in doubt"},
		{"not met", []change{bonded(`bonded = "1 Mohm"`)}, "bonded-duct", "Main", checks.NotMet, checks.ByRule, checks.Mend, "charge stays on it"},
		{"thin, just below it", []change{bonded(`bonded = "0.999 Mohm"`)}, "bonded-duct", "Main", checks.Thin, checks.ByRule, checks.Know, "charge drains"},
		{"asked: no rules", []change{bonded(`bonded = "2 Mohm"`), {`rules = "us"`, `rules = "none"`}}, "bonded-duct", "Main", checks.Ask, checks.ByRule, checks.Mend, "charge stays on it"},
		{"advice: a home", []change{bonded(`bonded = "2 Mohm"`), {`setting = "school"`, `setting = "home"`}}, "bonded-duct", "Main", checks.Advice, checks.ByRule, checks.Mend, "charge stays on it"},
		{"missing", []change{bonded("")}, "bonded-duct", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "Main conducts, and its resistance"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	plastic := change{"material = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[20, 10, 8]", "material = \"smooth plastic\"\nroute = [[20, 10, 8]"}
	if found := pick(checks.Run(planOf(t, plastic)), "bonded-duct", "Main"); len(found) != 0 {
		t.Errorf("plastic does not conduct, whatever is measured on it: %+v", found)
	}
}
