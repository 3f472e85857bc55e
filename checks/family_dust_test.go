package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// Pieces of the whole shop that the cases of dust change.
const (
	layerOfWhole = `layer = { depth = "0.01 in", area = "40 sq ft", density = "20 lb/ft3" }`
	hallOutline  = `outline = [[0, 0], [30, 0], [30, 20], [0, 20]]`
	classLetter  = "kind = \"area classification letter\"\nheld = true\ndate = 2026-10-02\nby = \"electrical inspector\"\n"
	analysis     = "kind = \"dust hazard analysis\"\nheld = true\ndate = 2026-09-14\nby = \"fire protection engineer\"\n"
)

// layer gives the hall another layer.
func layer(depth, area string) change {
	return change{layerOfWhole, `layer = { depth = "` + depth + `", area = "` + area + `", density = "20 lb/ft3" }`}
}

// hall gives the hall another outline.
func hall(outline string) change { return change{hallOutline, "outline = " + outline} }

// sawNeeds gives the saw's port another need; empty leaves the need to its kind.
func sawNeeds(flow string) change {
	port := "makes = \"wood\"\nport = { size = \"4 in\"" + flow + " }\n[[machine]]"
	return change{"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]", port}
}

// latheNeeds gives the lathe's port another need.
func latheNeeds(flow string) change {
	return change{"port = { size = \"4 in\", flow = \"400 cfm\" }\n[[collector]]", "port = { size = \"4 in\", flow = \"" + flow + "\" }\n[[collector]]"}
}

// confirmedOf has figures confirmed: a figure and its value by turns.
func confirmedOf(pairs ...string) change {
	var text strings.Builder
	for i := 0; i < len(pairs); i += 2 {
		text.WriteString("[[confirmed]]\nfigure = \"" + pairs[i] + "\"\nvalue = \"" + pairs[i+1] + "\"\nby = \"fire marshal\"\n")
	}
	return change{"[[appliance]]", text.String() + "[[appliance]]"}
}

var (
	noRules     = change{`rules = "us"`, `rules = "none"`}
	largeHall   = hall(`[[-20, -81], [30, -81], [30, 20], [-20, 20]]`) // 5,050 sq ft
	hugeHall    = hall(`[[-180, -80], [30, -80], [30, 20], [-180, 20]]`)
	blown       = change{`cleaned = "vacuum"`, `cleaned = "blowing"`}
	swept       = change{`cleaned = "vacuum"`, `cleaned = "sweeping"`}
	stove       = change{`kind = "electric"`, `kind = "wood stove"`}
	latheSprays = change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"lathe\"\nat = [20, 5]\nmakes = \"finish overspray\""}
	latheGrind  = change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"bench grinder\"\nat = [20, 5]"}
)

// dustStates are shops and what the checks of this family find in them. The
// size of a shop: NFPA 664 of 2012, 1.1.2, as reported. Settled dust: OSHA
// memorandum of 21 April 2015, 1/32 in of dust of 75 lb/ft3; for 20 lb/ft3 the
// sum 2.344/BD, known from memory, gives 0.1172 in. Cleaning and flames: IFC of
// 2018, 2203.4 and 2203.3.
var dustStates = []stateCase{
	{"overspray not met: with wood", []change{latheSprays}, "metal-on-wood-main", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "Lathe throws finish or solvent"},
	{"overspray met: alone", []change{latheSprays, {`serves = ["Saw"]`, ``}}, "metal-on-wood-main", "Cyclone", checks.Met, checks.ByTopology, checks.Know, "same sort of dust"},
	{"overspray not met: with metal", []change{latheSprays, {"kind = \"table saw\"\nat = [10, 5]\nmakes = \"wood\"", "kind = \"metal saw\"\nat = [10, 5]"}}, "metal-on-wood-main", "Cyclone", checks.NotMet, checks.ByTopology, checks.Stop, "also carries dust (Saw)"},

	{"size asked: below both", nil, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "Neither is passed"},
	{"size asked: at the area itself", []change{hall(`[[-20, -80], [30, -80], [30, 20], [-20, 20]]`)}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "Neither is passed"},
	{"size in play: above the area", []change{largeHall}, "dust-scope", "", checks.InPlay, checks.ByRule, checks.Know, "5050 sq ft"},
	{"size asked: the flow is passed, no rules, and a machine in no room", []change{noRules, sawNeeds(`, flow = "2000 cfm"`), {"at = [20, 5]\nmakes", "at = [20, 25]\nmakes"}}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "At least one of the two is passed"},
	{"size asked: the newer text is named", []change{editions(`{ "NFPA 660" = "2025" }`)}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "more than 1500 cfm (NFPA 660, from memory, confirm). Neither"},
	{"flames missing: a grinder in no room", []change{{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"bench grinder\"\nat = [20, 25]"}}, "flame-near-dust", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "Which room Lathe stands in is not given"},
	{"size asked: at the flow itself", []change{sawNeeds(`, flow = "1100 cfm"`)}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "Neither is passed"},
	{"size in play: above the flow", []change{sawNeeds(`, flow = "1101 cfm"`)}, "dust-scope", "", checks.InPlay, checks.ByRule, checks.Know, "So that text is in play"},
	{"size thin: above the flow by a need of its kind", []change{sawNeeds(""), latheNeeds("1490 cfm")}, "dust-scope", "", checks.Thin, checks.ByRule, checks.Know, "Only 1490 cfm of it is given"},
	{"size asked: the floor of two rooms", []change{{"at = [20, 5]\nmakes", "at = [40, 5]\nmakes"}}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "Wood is worked on 1000 sq ft"},
	{"size asked: mixed and wet wood count", []change{{"kind = \"table saw\"\nat = [10, 5]\nmakes = \"wood\"", "kind = \"table saw\"\nat = [10, 5]\nmakes = \"mixed\""}, {"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"lathe\"\nat = [20, 5]\nmakes = \"wet wood\""}}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "together need 800 cfm"},
	{"size missing: a machine in no room", []change{{"at = [20, 5]\nmakes", "at = [20, 25]\nmakes"}}, "dust-scope", "", checks.NotGiven, checks.ByGiven, checks.Know, "Which room Lathe stands in"},
	{"size asked: no rules", []change{largeHall, noRules}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "a text of another place"},
	{"size asked: the text that took it in", []change{largeHall, editions(`{ "NFPA 660" = "2025" }`)}, "dust-scope", "", checks.Ask, checks.ByRule, checks.Know, "from memory"},

	{"layer met", nil, "settled-dust", "Hall", checks.Met, checks.ByRule, checks.Know, "less than that"},
	{"layer met at the depth for dense dust", []change{layer("1/32 in", "30 sq ft")}, "settled-dust", "Hall", checks.Met, checks.ByRule, checks.Know, "less than that"},
	{"layer thin just above it", []change{layer("1/32 in", "31 sq ft")}, "settled-dust", "Hall", checks.Thin, checks.ByRule, checks.Mend, "from memory"},
	{"layer thin at the depth for this dust", []change{layer("0.1171875 in", "30 sq ft")}, "settled-dust", "Hall", checks.Thin, checks.ByRule, checks.Mend, "from memory"},
	{"layer not met just above that", []change{layer("0.118 in", "31 sq ft")}, "settled-dust", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "more than the inspection criterion"},
	{"layer not met: as much in one place", []change{layer("2 in", "2 sq ft")}, "settled-dust", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "more than the inspection criterion"},
	{"layer thin: less in one place", []change{layer("2 in", "1 sq ft")}, "settled-dust", "Hall", checks.Thin, checks.ByRule, checks.Mend, "from memory"},
	{"layer not met: a patch of a huge hall", []change{hugeHall, layer("0.118 in", "1001 sq ft")}, "settled-dust", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "more than 1000 sq ft"},
	{"layer thin: a patch of just the size", []change{hugeHall, layer("0.118 in", "1000 sq ft")}, "settled-dust", "Hall", checks.Thin, checks.ByRule, checks.Mend, "from memory"},
	{"layer asked: no rules", []change{layer("1 in", "60 sq ft"), noRules}, "settled-dust", "Hall", checks.Ask, checks.ByRule, checks.Mend, "a text of another place"},
	{"layer met at a depth that was confirmed", []change{layer("1/8 in", "30 sq ft"), confirmedOf("layer-depth", "1/8 in")}, "settled-dust", "Hall", checks.Met, checks.ByRule, checks.Know, "less than that"},
	{"layer not met above it, whatever the density", []change{layer("0.126 in", "31 sq ft"), confirmedOf("layer-depth", "1/8 in")}, "settled-dust", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "more than the inspection criterion"},
	{"layer missing", []change{{layerOfWhole, ""}}, "settled-dust", "", checks.NotGiven, checks.ByGiven, checks.Know, "in Hall is not given"},
	{"layer missing: area", []change{{layerOfWhole, `layer = { depth = "1 in", density = "20 lb/ft3" }`}}, "settled-dust", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "How much floor"},
	{"layer missing: density", []change{{layerOfWhole, `layer = { depth = "1 in", area = "60 sq ft" }`}}, "settled-dust", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "How heavy"},

	{"cleaning met", nil, "dust-cleaning", "Hall", checks.Met, checks.ByRule, checks.Know, "vacuum cleaner"},
	{"cleaning not met", []change{blown}, "dust-cleaning", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "15 psi"},
	{"cleaning asked: a broom", []change{swept}, "dust-cleaning", "Hall", checks.Ask, checks.ByRule, checks.Know, "a broom stirs some"},
	{"cleaning not met: a broom where that is barred", []change{swept, {`rules = "us"`, `rules = "uk"`}}, "dust-cleaning", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "a vacuum cleaner is wanted instead"},
	{"cleaning asked: no rules", []change{noRules}, "dust-cleaning", "Hall", checks.Ask, checks.ByRule, checks.Know, "The text is of another place"},
	{"cleaning asked: an edition that was not read", []change{blown, editions(`{ "IFC" = "2021" }`)}, "dust-cleaning", "Hall", checks.Ask, checks.ByRule, checks.Mend, "another edition"},
	{"cleaning missing", []change{{"cleaned = \"vacuum\"\n", ""}}, "dust-cleaning", "", checks.NotGiven, checks.ByGiven, checks.Know, "How settled dust is taken up in Hall"},

	{"flames met", nil, "flame-near-dust", "Hall", checks.Met, checks.ByRule, checks.Know, "nothing with a flame"},
	{"flames not met", []change{stove}, "flame-near-dust", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "the wood stove"},
	{"flames met: the stove is in another room", []change{stove, {"room = \"Hall\"\n[[machine]]", "room = \"House\"\n[[machine]]"}}, "flame-near-dust", "Hall", checks.Met, checks.ByRule, checks.Know, "nothing with a flame"},
	{"flames asked: a gas heater", []change{{`kind = "electric"`, `kind = "power-vented gas"`}}, "flame-near-dust", "Hall", checks.Ask, checks.ByRule, checks.Know, "the power-vented gas heater"},
	{"flames met: a heater that takes its air from outside", []change{{`kind = "electric"`, `kind = "sealed-combustion gas"`}}, "flame-near-dust", "Hall", checks.Met, checks.ByRule, checks.Know, "nothing with a flame"},
	{"flames asked: a grinder", []change{latheGrind}, "flame-near-dust", "Hall", checks.Ask, checks.ByRule, checks.Know, "In it stands Lathe"},
	{"flames asked: no rules", []change{stove, noRules}, "flame-near-dust", "Hall", checks.Ask, checks.ByRule, checks.Mend, "The text is of another place"},
	{"flames missing", []change{{"[[appliance]]\nkind = \"electric\"\nroom = \"Hall\"", ""}}, "flame-near-dust", "", checks.NotGiven, checks.ByGiven, checks.Know, "No appliance is listed"},

	{"classification met", nil, "area-classification", "", checks.Met, checks.ByGiven, checks.Know, "By electrical inspector, letter dated 2026-10-02"},
	{"classification asked", []change{{"[[document]]\n" + classLetter, ""}}, "area-classification", "", checks.Ask, checks.ByGiven, checks.Know, "an open item"},
	{"classification asked: not in hand", []change{{classLetter, strings.Replace(classLetter, "true", "false", 1)}}, "area-classification", "", checks.Ask, checks.ByGiven, checks.Know, "an open item"},
	{"classification missing: by whom", []change{{classLetter, strings.Replace(classLetter, "by = \"electrical inspector\"\n", "", 1)}}, "area-classification", "", checks.NotGiven, checks.ByGiven, checks.Know, "not who wrote it and when"},
	{"classification missing: date", []change{{classLetter, strings.Replace(classLetter, "date = 2026-10-02\n", "", 1)}}, "area-classification", "", checks.NotGiven, checks.ByGiven, checks.Know, "not who wrote it and when"},
	{"analysis met", nil, "dust-hazard-analysis", "", checks.Met, checks.ByGiven, checks.Know, "By fire protection engineer, dated 2026-09-14"},
	{"analysis asked", []change{{"[[document]]\n" + analysis, ""}}, "dust-hazard-analysis", "", checks.Ask, checks.ByGiven, checks.Know, "this book is none"},
	{"analysis missing: date", []change{{analysis, strings.Replace(analysis, "date = 2026-09-14\n", "", 1)}}, "dust-hazard-analysis", "", checks.NotGiven, checks.ByGiven, checks.Know, "not who wrote it and when"},
}

// dustRules are the figures that the checks of this family compare with.
var dustRules = []ruleCase{
	{figure: "dust-scope-area", check: "dust-scope", kept: nil, broken: []change{largeHall}, threshold: true, loose: "5000 sq ft", tight: "500 sq ft"},
	{figure: "dust-scope-flow", check: "dust-scope", kept: nil, broken: []change{sawNeeds(`, flow = "1400 cfm"`)}, threshold: true, loose: "1500 cfm", tight: "700 cfm"},
	{figure: "layer-depth", check: "settled-dust", about: "Hall", kept: []change{confirmedOf("layer-patch", "1000 sq ft")},
		broken: []change{layer("1/2 in", "40 sq ft")}, loose: "1/32 in", tight: "0.001 in"},
	{figure: "layer-density", check: "settled-dust", about: "Hall", kept: []change{layer("0.05 in", "40 sq ft")},
		broken: []change{layer("1/2 in", "40 sq ft")}, best: checks.Thin},
	{figure: "layer-share", check: "settled-dust", about: "Hall", broken: []change{layer("1/2 in", "40 sq ft")}},
	{figure: "layer-patch", check: "settled-dust", about: "Hall", kept: []change{{layerOfWhole, `layer = { depth = "0.04 in", area = "20 sq ft", density = "60 lb/ft3" }`}, confirmedOf("layer-depth", "0.0391 in")},
		broken: []change{hugeHall, layer("1/2 in", "1040 sq ft")}, loose: "1000 sq ft", tight: "10 sq ft"},
	{figure: "barred-cleaning", check: "dust-cleaning", about: "Hall", broken: []change{blown}},
	{figure: "barred-flames", check: "flame-near-dust", about: "Hall", broken: []change{stove}},
}

// At home, where nobody is employed or taught, no paper is asked for; a shop
// without wood has no finding of wood dust at all.
func TestNoFindingOfDust(t *testing.T) {
	home := checks.Run(planOf(t, change{`setting = "school"`, `setting = "home"`}))
	for _, check := range []string{"area-classification", "dust-hazard-analysis"} {
		if found := pick(home, check, ""); len(found) != 0 {
			t.Errorf("at home: %+v", found)
		}
	}
	if len(pick(home, "dust-scope", "")) != 1 || len(pick(home, "settled-dust", "")) != 1 {
		t.Error("a home shop has its size and its dust")
	}
	metal := []change{{"kind = \"table saw\"\nat = [10, 5]\nmakes = \"wood\"", "kind = \"metal saw\"\nat = [10, 5]"}, latheGrind, {layerOfWhole, ""}}
	for _, f := range checks.Run(planOf(t, metal...)) {
		switch f.Check {
		case "dust-scope", "settled-dust", "dust-cleaning", "flame-near-dust", "area-classification", "dust-hazard-analysis", "explosion-protection":
			t.Errorf("a shop of metal: %+v", f)
		}
	}
}
