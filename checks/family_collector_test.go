package checks_test

import (
	"testing"

	"dustbook/checks"
)

// Changes of the whole shop that the cases of collectors share.
var (
	asEU     = change{`rules = "us"`, `rules = "eu"`}
	nowhereC = change{"at = [2, 10]\n", ""}
	returned = change{`exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}
)

// outside stands the cyclone outdoors, so far from what burns or opens; empty
// leaves that out.
func outside(far string) change {
	if far != "" {
		far = "to_combustible = \"" + far + "\"\n"
	}
	return change{"at = [2, 10]\n", "at = [-40, 10]\n" + far}
}

// dirty gives the cyclone another volume on its dusty side.
func dirty(volume string) change {
	return change{`dirty_volume = "6 cu ft"`, `dirty_volume = "` + volume + `"`}
}

// claimed gives the cyclone a claim of air.
func claimed(flow string) change {
	return change{`inlet = "5 in"`, "inlet = \"5 in\"\nclaims = { flow = \"" + flow + "\", suction = \"13 inwg\" }"}
}

// filterSays is what the maker says of the cyclone's filter.
func filterSays(what string) change {
	return change{`filter = { clean`, "filter = { " + what + "clean"}
}

// collectorStates are shops and what the checks of this family find in them. The
// place outdoors: IMC of 2018, 511.1.1. The volume on the dusty side: NFPA 654
// of 2006, 7.13.1.1, as reported. Extractors indoors and the dust in their air:
// EN 16770 of 2018, as reported. The filter of returned air: IMC of 2018,
// 511.1.3, as reported.
var collectorStates = []stateCase{
	{"place asked: indoors", nil, "collector-place", "Cyclone", checks.Ask, checks.ByTopology, checks.Know, "It stands in Hall"},
	{"place met: at the figure itself", []change{outside("10 ft")}, "collector-place", "Cyclone", checks.Met, checks.ByRule, checks.Know, "10 ft from the nearest"},
	{"place not met", []change{outside("9.9 ft")}, "collector-place", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "9.9 ft from the nearest"},
	{"place asked: no rules", []change{outside("9 ft"), noRules}, "collector-place", "Cyclone", checks.Ask, checks.ByRule, checks.Mend, "a text of another place"},
	{"place asked: an edition that was not read", []change{outside("12 ft"), editions(`{ "IMC" = "2021" }`)}, "collector-place", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "another edition"},
	{"place missing: distance", []change{outside("")}, "collector-place", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "how far it is"},
	{"place missing", []change{nowhereC}, "collector-place", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "indoors or out, is not given"},

	{"protection asked: small", nil, "explosion-protection", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "6 cu ft"},
	{"protection asked: just below", []change{dirty("7.99 cu ft")}, "explosion-protection", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "less than 8"},
	{"protection in play: at the volume itself", []change{dirty("8 cu ft")}, "explosion-protection", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "from 8 on"},
	{"protection asked: outdoors", []change{dirty("80 cu ft"), outside("12 ft")}, "explosion-protection", "Cyclone", checks.Ask, checks.ByTopology, checks.Know, "run back through the duct"},
	{"protection asked: no rules", []change{dirty("80 cu ft"), noRules}, "explosion-protection", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "a text of another place"},
	{"protection asked: an edition that was not read", []change{dirty("80 cu ft"), editions(`{ "NFPA 654" = "2013" }`)}, "explosion-protection", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "another edition"},
	{"protection missing", []change{{"dirty_volume = \"6 cu ft\"\n", ""}}, "explosion-protection", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "dusty side is not given"},

	{"extractor in play: type A", []change{asEU, dirty("0.8 m3")}, "extractor-type", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "type A"},
	{"extractor in play: type B", []change{asEU, dirty("0.81 m3")}, "extractor-type", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "type B"},
	{"extractor in play: type B at its volume", []change{asEU, dirty("1.2 m3")}, "extractor-type", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "type B"},
	{"extractor in play: type C", []change{asEU, dirty("1.21 m3")}, "extractor-type", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "type C"},
	{"extractor in play: type D", []change{asEU, dirty("3.5 m3")}, "extractor-type", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "type D"},
	{"extractor asked: too large", []change{asEU, dirty("3.51 m3")}, "extractor-type", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "too large for that text"},
	{"extractor in play: at the flow itself", []change{asEU, claimed("8000 m3/h")}, "extractor-type", "Cyclone", checks.InPlay, checks.ByRule, checks.Know, "type A"},
	{"extractor asked: too much air", []change{asEU, claimed("8001 m3/h")}, "extractor-type", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "too large for that text"},
	{"extractor missing: volume", []change{asEU, {"dirty_volume = \"6 cu ft\"\n", ""}}, "extractor-type", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "nobody can tell its type"},

	{"filter met", []change{returned, filterSays(`removes = 0.999, removes_at = "10 um", `)}, "returned-air-filter", "Cyclone", checks.Met, checks.ByRule, checks.Know, "99.9 % of particles of 10 µm"},
	{"filter not met: share", []change{returned, filterSays(`removes = 0.998, removes_at = "10 um", `)}, "returned-air-filter", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "99.8 %"},
	{"filter met: finer", []change{returned, filterSays(`removes = 0.9997, removes_at = "0.3 um", `)}, "returned-air-filter", "Cyclone", checks.Met, checks.ByRule, checks.Know, "99.97 %"},
	{"filter not met: said of coarse dust", []change{returned, filterSays(`removes = 0.9999, removes_at = "11 um", `)}, "returned-air-filter", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "11 µm"},
	{"filter asked: no rules", []change{returned, noRules, filterSays(`removes = 0.999, removes_at = "10 um", `)}, "returned-air-filter", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "a text of another place"},
	{"filter missing: what it holds back", []change{returned}, "returned-air-filter", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},
	{"filter missing: the size", []change{returned, filterSays(`removes = 0.999, `)}, "returned-air-filter", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},

	{"residue met", []change{asEU, returned, filterSays(`residual = "0.1 mg/m3", `)}, "returned-air-residue", "Cyclone", checks.Met, checks.ByRule, checks.Know, "it leaves 0.1 mg/m³"},
	{"residue not met", []change{asEU, returned, filterSays(`residual = "0.101 mg/m3", `)}, "returned-air-residue", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "it leaves 0.101 mg/m³"},
	{"residue asked: other rules", []change{returned, filterSays(`residual = "0.1 mg/m3", `)}, "returned-air-residue", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "a text of another place"},
	{"residue missing", []change{asEU, returned}, "returned-air-residue", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "how much dust its filter leaves"},
}

// Only where it can matter: no type under rules that have none, nothing of
// returned air where none returns, one check of it where one figure decides.
func TestNoFindingOfCollectors(t *testing.T) {
	for _, c := range []struct {
		changes []change
		check   string
	}{
		{nil, "extractor-type"},
		{[]change{asEU, outside("12 ft")}, "extractor-type"},
		{nil, "returned-air-filter"},
		{[]change{asEU}, "returned-air-residue"},
		{[]change{returned}, "returned-air-residue"},
		{[]change{asEU, returned}, "returned-air-filter"},
	} {
		if found := pick(checks.Run(planOf(t, c.changes...)), c.check, ""); len(found) != 0 {
			t.Errorf("%s with %v: %+v", c.check, c.changes, found)
		}
	}
}

// openBag stands the cyclone's bag in the hall, as far as the rules of Quebec
// want from machines and exits, and no farther than those of memory.
var (
	openBagOn  = change{"at = [2, 10]\n", "at = [15, 50]\nroom = \"Hall\"\n"}
	openBagBag = change{`enclosure = "rigid housing"`, `enclosure = "open bag"`}
)

// collectorRules are the figures that the checks of this family compare with.
var collectorRules = []ruleCase{
	{figure: "open-bag-distance", check: "open-bag-indoors", about: "Cyclone", kept: []change{openBagOn, openBagBag, confirmedOf("open-bag-flow", "6000 cfm")},
		broken: []change{{"at = [2, 10]\n", "at = [15, 12]\nroom = \"Hall\"\n"}, openBagBag}, loose: "10 ft", tight: "100 ft"},
	{figure: "open-bag-flow", check: "open-bag-indoors", about: "Cyclone", kept: []change{openBagOn, openBagBag, confirmedOf("open-bag-distance", "20 ft")},
		broken: []change{openBagOn, openBagBag, claimed("6000 cfm")}, loose: "5000 cfm", tight: "100 cfm"},
	{figure: "open-bag-fed-sanders", check: "open-bag-indoors", about: "Cyclone",
		kept:   []change{openBagOn, openBagBag, {`kind = "lathe"` + "\nat = [20, 5]\nmakes = \"wood\"", `kind = "disc sander"` + "\nat = [20, 5]"}, confirmedOf("open-bag-flow", "6000 cfm", "open-bag-distance", "20 ft")},
		broken: []change{openBagOn, openBagBag, {`kind = "lathe"`, `kind = "drum sander"`}}},
	{figure: "filter-load", check: "filter-load", about: "Cyclone", kept: filterOf("400 sq ft"), broken: filterOf("40 sq ft"), loose: "50 ft/min", tight: "0.1 ft/min"},
	{figure: "collector-outdoors", check: "collector-place", about: "Cyclone", kept: []change{outside("12 ft")}, broken: []change{outside("8 ft")}, loose: "10 ft", tight: "20 ft"},
	{figure: "dirty-volume", check: "explosion-protection", about: "Cyclone", broken: []change{dirty("9 cu ft")}, threshold: true, loose: "8 cu ft", tight: "5 cu ft"},
	{figure: "extractor-volume", check: "extractor-type", about: "Cyclone", kept: []change{dirty("1 m3"), confirmedOf("extractor-flow", "8000 m3/h")}, broken: []change{dirty("4 m3")}, loose: "3.5 m3", tight: "0.5 m3", best: checks.InPlay, worst: checks.Ask},
	{figure: "extractor-flow", check: "extractor-type", about: "Cyclone", kept: []change{confirmedOf("extractor-volume", "3.5 m3")}, broken: []change{claimed("9000 m3/h")}, loose: "8000 m3/h", tight: "100 m3/h", best: checks.InPlay, worst: checks.Ask},
	{figure: "returned-air-filter", check: "returned-air-filter", about: "Cyclone", kept: []change{returned, filterSays(`removes = 0.999, removes_at = "10 um", `)}, broken: []change{returned, filterSays(`removes = 0.9, removes_at = "10 um", `)}},
	{figure: "returned-air-residue", check: "returned-air-residue", about: "Cyclone", kept: []change{returned, filterSays(`residual = "0.1 mg/m3", `)}, broken: []change{returned, filterSays(`residual = "0.2 mg/m3", `)}, loose: "0.1 mg/m3", tight: "0.05 mg/m3"},
}

// filterOf gives the whole shop a filter of some area whose air comes back.
func filterOf(area string) []change {
	return []change{filterSays(`area = "` + area + `", `), returned}
}
