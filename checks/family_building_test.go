package checks_test

import "dustbook/checks"

// Pieces of the whole shop that the cases below change.
const (
	houseDoor = `door = { thick = "1 3/8 in", closes = true, into_bedroom = false }`
	hallFloor = `outline = [[0, 0], [30, 0], [30, 20], [0, 20]]`
	hangs     = "[[extinguisher]]\nat = [1, 7]\nrating = \"4-A:80-B:C\"\nserviced = 2026-03-02\n"
	outletOut = `outlet = { to_property = "40 ft", to_opening = "15 ft", above_ground = "12 ft" }`
	latheDrop = `route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]`
)

func door(text string) change { return change{houseDoor, text} }
func way(wide string) change  { return change{`way_out = "48 in"`, "way_out = \"" + wide + "\""} }
func high(feet string) change { return change{`height = "10 ft"`, "height = \"" + feet + "\""} }
func board(is string) change  { return change{`board = "5/8 in"`, is} }
func floor(x, y string) change {
	return change{hallFloor, "outline = [[0, 0], [" + x + ", 0], [" + x + ", " + y + "], [0, " + y + "]]"}
}
func outlet(text string) change { return change{outletOut, text} }

// hung is the extinguisher of the whole shop at another place, with another
// rating.
func hung(at, rating string) change {
	return change{hangs, "[[extinguisher]]\nat = [" + at + "]\nrating = \"" + rating + "\"\nserviced = 2026-03-02\n"}
}

// tagged is its last service on another day.
func tagged(day string) change { return change{"serviced = 2026-03-02\n", day} }

// lathe makes something else than wood.
func lathe(makes string) change {
	return change{"kind = \"lathe\"\nat = [20, 5]\nmakes = \"wood\"", "kind = \"lathe\"\nat = [20, 5]\nmakes = \"" + makes + "\""}
}

// lost stands the lathe in no room.
var lost = change{"kind = \"lathe\"\nat = [20, 5]\n", "kind = \"lathe\"\nat = [20, 25]\n"}

// divided is the wall of the whole shop as something else.
func divided(text string) change { return change{`divides = "garage from dwelling"`, text} }

// overWay is a drop of the lathe that runs at some height across the straight
// way from the saw to the exit, and aside one that runs where no such way is.
func overWay(feet string) change {
	return change{latheDrop, "route = [[20, 5, 2], [20, 5, " + feet + "], [5, 5, " + feet + "], [5, 3, " + feet + "], [5, 8, " + feet + "], [5, 8, 8], [8, 10, 8]]"}
}

func aside(feet string) change {
	return change{latheDrop, "route = [[20, 5, 2], [20, 5, " + feet + "], [25, 5, " + feet + "], [25, 5, 8], [20, 10, 8]]"}
}

// buildingStates are shops and what the checks of this family find in them.
var buildingStates = []stateCase{
	{"separation asked: the thinner of two gauges is told of the thicker", []change{through, drop("gauge = \"26 ga\"\n")}, "garage-separation", "Lathe drop", checks.Ask, checks.ByRule, checks.Stop, "Another page that was read wants 25 ga"},
	{"separation asked: a plastic pipe where the file names another edition", []change{through, drop(""), {"material = \"spiral steel\"\nroute = [[20, 5, 2]", "material = \"smooth plastic\"\nroute = [[20, 5, 2]"}, {`rules = "us"`, "rules = \"us\"\neditions = { \"IRC\" = \"2003\" }"}}, "garage-separation", "Lathe drop", checks.NotMet, checks.ByRule, checks.Stop, "is smooth plastic"},

	{"door met by its leaf", nil, "garage-door", "", checks.Met, checks.ByRule, checks.Know, "at least 1 3/8 in"},
	{"door met by its label", []change{door(`door = { rating = "20 min", closes = true, into_bedroom = false }`)}, "garage-door", "", checks.Met, checks.ByRule, checks.Know, "rated 20 min"},
	{"door met by its label, though thin", []change{door(`door = { thick = "1 in", rating = "20 min", closes = true, into_bedroom = false }`)}, "garage-door", "", checks.Met, checks.ByRule, checks.Know, "rated 20 min"},
	{"door not met: thin", []change{door(`door = { thick = "1 1/4 in", closes = true, into_bedroom = false }`)}, "garage-door", "", checks.NotMet, checks.ByRule, checks.Mend, "has a leaf thinner"},
	{"door not met: it stays open", []change{door(`door = { thick = "1 3/8 in", closes = false, into_bedroom = false }`)}, "garage-door", "", checks.NotMet, checks.ByRule, checks.Mend, "does not shut by itself"},
	{"door not met: a bedroom, and the rest is not given", []change{door(`door = { into_bedroom = true }`)}, "garage-door", "", checks.NotMet, checks.ByRule, checks.Mend, "where someone sleeps"},
	{"door asked: no rules", []change{noRules, door(`door = { thick = "1 in", closes = true, into_bedroom = false }`)}, "garage-door", "", checks.Ask, checks.ByRule, checks.Mend, "another place"},
	{"door asked: a shop", []change{divided(`divides = "shop from dwelling"`)}, "garage-door", "", checks.Ask, checks.ByRule, checks.Mend, "whether your shop counts as one"},
	{"door met: there is none", []change{door(`no_door = true`)}, "garage-door", "", checks.Met, checks.ByGiven, checks.Know, "no door, window or hatch"},
	{"door met: there is none, a shop", []change{divided(`divides = "shop from dwelling"`), door(`no_door = true`)}, "garage-door", "", checks.Met, checks.ByGiven, checks.Know, "no door, window or hatch"},
	{"door missing", []change{door("")}, "garage-door", "", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},
	{"door missing: the leaf", []change{door(`door = { closes = true, into_bedroom = false }`)}, "garage-door", "", checks.NotGiven, checks.ByGiven, checks.Know, "how thick"},

	{"board met", nil, "garage-board", "", checks.Met, checks.ByRule, checks.Know, "0.625 in"},
	{"board asked: enough for a wall", []change{board(`board = "1/2 in"`)}, "garage-board", "", checks.Ask, checks.ByRule, checks.Know, "rooms that people live in"},
	{"board not met", []change{board(`board = "3/8 in"`)}, "garage-board", "", checks.NotMet, checks.ByRule, checks.Mend, "is 0.375 in"},
	{"board asked: no rules", []change{noRules}, "garage-board", "", checks.Ask, checks.ByRule, checks.Know, "another place"},
	{"board missing", []change{board("")}, "garage-board", "", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},

	{"rated wall met", []change{divided(`rating = "1 h"`)}, "rated-wall", "", checks.Met, checks.ByTopology, checks.Know, "no duct crosses"},
	{"rated wall asked", []change{through, divided(`rating = "1 h"`)}, "rated-wall", "Lathe drop", checks.Ask, checks.ByTopology, checks.Mend, "a wall rated 1 h"},
	{"rated wall asked: tenants", []change{through, divided(`divides = "tenant from tenant"`)}, "rated-wall", "Lathe drop", checks.Ask, checks.ByTopology, checks.Mend, "between two tenants"},
	{"rated wall asked: shop and dwelling", []change{through, divided("rating = \"45 min\"\ndivides = \"shop from dwelling\"")}, "rated-wall", "Lathe drop", checks.Ask, checks.ByTopology, checks.Mend, "rated 45 min between workshop and dwelling"},
	{"rated wall missing: route", []change{divided(`rating = "1 h"`), {latheDrop, `length = "12 ft"`}}, "rated-wall", "", checks.NotGiven, checks.ByTopology, checks.Know, "Lathe drop has no route"},

	{"way out met", nil, "way-out", "Hall", checks.Met, checks.ByRule, checks.Know, "48 in wide where the figure is 28"},
	{"way out met at the figures", []change{way("28 in"), high("7 ft 6 in")}, "way-out", "Hall", checks.Met, checks.ByRule, checks.Know, "7.5 ft high where the figure is 7.5"},
	{"way out not met: narrow", []change{way("27.9 in")}, "way-out", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "27.9 in wide where the figure is 28"},
	{"way out not met: low", []change{high("7 ft 5 in")}, "way-out", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "7.4 ft high where the figure is 7.5"},
	{"way out not met: narrow, and the height is not given", []change{way("20 in"), {"height = \"10 ft\"\n", ""}}, "way-out", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "20 in wide where the figure is 28"},
	{"way out asked: no rules", []change{noRules}, "way-out", "Hall", checks.Ask, checks.ByRule, checks.Know, "another place"},
	{"way out missing", []change{{"way_out = \"48 in\"\n", ""}}, "way-out", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "its narrowest place"},

	{"aisle advice: wide", nil, "aisle-width", "", checks.Advice, checks.ByRule, checks.Know, "from memory"},
	{"aisle asked: between", []change{way("40 in")}, "aisle-width", "", checks.Ask, checks.ByRule, checks.Know, "44 in where many"},
	{"aisle asked: narrow", []change{way("30 in")}, "aisle-width", "", checks.Ask, checks.ByRule, checks.Know, "30 in, is that of Hall"},
	{"aisle missing", []change{{"way_out = \"48 in\"\n", ""}}, "aisle-width", "", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},

	{"headroom met: a drop is no passage", nil, "duct-headroom", "", checks.Met, checks.ByRule, checks.Know, "leaves 80 in"},
	{"headroom met: at the figure", []change{overWay("6.875")}, "duct-headroom", "", checks.Met, checks.ByRule, checks.Know, "leaves 80 in"},
	{"headroom not met", []change{overWay("6.8")}, "duct-headroom", "", checks.NotMet, checks.ByRule, checks.Mend, "between Saw and the nearest exit"},
	{"headroom asked: aside", []change{aside("6")}, "duct-headroom", "", checks.Ask, checks.ByRule, checks.Know, "Lathe drop at 69.5 in"},
	{"headroom met: aside, shorter than a way is wide", []change{{latheDrop, `route = [[20, 5, 2], [20, 5, 6], [22, 5, 6], [22, 5, 8], [20, 10, 8]]`}}, "duct-headroom", "", checks.Met, checks.ByRule, checks.Know, "leaves 80 in"},
	{"headroom asked: no rules", []change{noRules, overWay("6")}, "duct-headroom", "", checks.Ask, checks.ByRule, checks.Know, "another place"},
	{"headroom missing: route", []change{{latheDrop, `length = "12 ft"`}}, "duct-headroom", "", checks.NotGiven, checks.ByGiven, checks.Know, "Lathe drop has no route"},

	{"reach met", nil, "extinguisher-reach", "Hall", checks.Met, checks.ByRule, checks.Know, "straight line"},
	{"reach thin: along the walls it is too far", []change{floor("70", "20")}, "extinguisher-reach", "Hall", checks.Thin, checks.ByRule, checks.Know, "Along square walls it would be 82 ft"},
	{"reach not met", []change{floor("80", "20")}, "extinguisher-reach", "Hall", checks.NotMet, checks.ByRule, checks.Mend, "80.1 ft"},
	{"reach met by a second one", []change{floor("80", "20"), {hangs, hangs + "[[extinguisher]]\nat = [79, 10]\nrating = \"4-A:80-B:C\"\nserviced = 2026-03-02\n"}}, "extinguisher-reach", "Hall", checks.Met, checks.ByRule, checks.Know, "straight line"},
	{"reach met: on the wall itself", []change{hung("30, 10", "4-A")}, "extinguisher-reach", "Hall", checks.Met, checks.ByRule, checks.Know, "straight line"},
	{"reach asked: it hangs behind a wall", []change{hung("40, 7", "4-A")}, "extinguisher-reach", "Hall", checks.Ask, checks.ByTopology, checks.Mend, "through walls"},
	{"reach met: through an open doorway", []change{hung("40, 7", "4-A"), {"name = \"House\"\n", "name = \"House\"\nopen_to = [\"Hall\"]\n"}}, "extinguisher-reach", "Hall", checks.Met, checks.ByRule, checks.Know, "straight line"},
	{"reach advice: at home", []change{atHome}, "extinguisher-reach", "Hall", checks.Advice, checks.ByRule, checks.Know, "other places than a home"},
	{"reach missing: none", []change{{hangs, ""}}, "extinguisher-reach", "Hall", checks.NotGiven, checks.ByGiven, checks.Mend, "No extinguisher is listed"},
	{"reach missing: its place", []change{{"at = [1, 7]\n", ""}}, "extinguisher-reach", "Hall", checks.NotGiven, checks.ByGiven, checks.Know, "Where an extinguisher hangs"},

	{"rating missing: the room of a machine", []change{lost}, "extinguisher-rating", "", checks.NotGiven, checks.ByGiven, checks.Know, "Which room Lathe stands in"},
	{"rating met", nil, "extinguisher-rating", "", checks.Met, checks.ByRule, checks.Know, "with 4 units of class A, for 600 sq ft"},
	{"rating not met: one unit of A", []change{hung("1, 7", "1-A:10-B:C")}, "extinguisher-rating", "", checks.NotMet, checks.ByRule, checks.Mend, "even for the lightest hazard"},
	{"rating asked: the hazard", []change{hung("1, 7", "2-A:10-B:C")}, "extinguisher-rating", "", checks.Ask, checks.ByRule, checks.Know, "goes by the hazard"},
	{"rating missing", []change{{"rating = \"4-A:80-B:C\"\n", ""}}, "extinguisher-rating", "", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},
	{"rating missing: a label of another place", []change{hung("1, 7", "21A 144B C")}, "extinguisher-rating", "", checks.NotGiven, checks.ByGiven, checks.Know, "21A 144B C"},

	{"finish met", []change{lathe("finish overspray")}, "extinguisher-finish", "Lathe", checks.Met, checks.ByRule, checks.Know, "large enough"},
	{"finish not met: far", []change{lathe("finish overspray"), hung("1, 55.1", "4-A:80-B:C")}, "extinguisher-finish", "Lathe", checks.NotMet, checks.ByRule, checks.Mend, "within 50 ft"},
	{"finish not met: water alone", []change{lathe("finish overspray"), hung("1, 7", "4-A")}, "extinguisher-finish", "Lathe", checks.NotMet, checks.ByRule, checks.Mend, "no extinguisher for liquids"},
	{"finish not met: small", []change{lathe("finish overspray"), hung("1, 7", "2-A:4-B:C")}, "extinguisher-finish", "Lathe", checks.NotMet, checks.ByRule, checks.Mend, "too small"},
	{"finish asked: the hazard", []change{lathe("finish overspray"), hung("1, 7", "2-A:10-B:C")}, "extinguisher-finish", "Lathe", checks.Ask, checks.ByRule, checks.Know, "goes by the hazard"},
	{"finish missing: none", []change{lathe("finish overspray"), {hangs, ""}}, "extinguisher-finish", "Lathe", checks.NotGiven, checks.ByGiven, checks.Know, "No extinguisher is listed"},

	{"metal fire met", []change{lathe("metal"), hung("1, 7", "D")}, "extinguisher-metal", "Lathe", checks.Met, checks.ByRule, checks.Know, "19.1 ft away"},
	{"metal fire not met: far", []change{lathe("metal"), hung("95.1, 5", "D")}, "extinguisher-metal", "Lathe", checks.NotMet, checks.ByRule, checks.Mend, "75.1 ft away"},
	{"metal fire met at the figure", []change{lathe("metal"), hung("95, 5", "D")}, "extinguisher-metal", "Lathe", checks.Met, checks.ByRule, checks.Know, "75 ft away"},
	{"metal fire asked: none of that kind", []change{lathe("metal")}, "extinguisher-metal", "Lathe", checks.Ask, checks.ByRule, checks.Know, "no extinguisher is marked"},
	{"metal fire missing: the rating", []change{lathe("metal"), hung("1, 7", "yellow")}, "extinguisher-metal", "Lathe", checks.NotGiven, checks.ByGiven, checks.Know, "yellow"},

	{"service met", nil, "extinguisher-service", "", checks.Met, checks.ByRule, checks.Know, "2026-03-02"},
	{"service met to the day", []change{tagged("serviced = 2025-09-07\n")}, "extinguisher-service", "", checks.Met, checks.ByRule, checks.Know, "2025-09-07"},
	{"service not met by a day", []change{tagged("serviced = 2025-09-06\n")}, "extinguisher-service", "", checks.NotMet, checks.ByRule, checks.Mend, "is over: the oldest was on 2025-09-06"},
	{"service advice: at home", []change{atHome, tagged("serviced = 2020-10-04\n")}, "extinguisher-service", "", checks.Advice, checks.ByRule, checks.Mend, "2020-10-04"},
	{"service missing", []change{tagged("")}, "extinguisher-service", "", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},

	{"sprinklers asked: small", nil, "sprinkler-area", "", checks.Ask, checks.ByRule, checks.Know, "settles nothing"},
	{"sprinklers asked: at the figure", []change{floor("125", "20")}, "sprinkler-area", "", checks.Ask, checks.ByRule, checks.Know, "2500 sq ft, and the figure of the building code"},
	{"sprinklers in play", []change{floor("125.1", "20")}, "sprinkler-area", "", checks.InPlay, checks.ByRule, checks.Mend, "Whether there are any in Hall is not given"},
	{"sprinklers in play: there are some", []change{floor("130", "20"), {"name = \"Hall\"\n", "name = \"Hall\"\nsprinklers = true\n"}}, "sprinkler-area", "", checks.InPlay, checks.ByRule, checks.Know, "in all of them"},
	{"sprinklers in play: there are none", []change{floor("130", "20"), {"name = \"Hall\"\n", "name = \"Hall\"\nsprinklers = false\n"}}, "sprinkler-area", "", checks.InPlay, checks.ByRule, checks.Mend, "none in Hall"},

	{"rating asked: labels of another place under its rules", []change{underRules("uk"), hung("1, 7", "13A")}, "extinguisher-rating", "", checks.Ask, checks.ByRule, checks.Know, "A rating could not be read: 13A"},
	{"rating missing: a label of another place", []change{hung("1, 7", "13A")}, "extinguisher-rating", "", checks.NotGiven, checks.ByGiven, checks.Know, "A rating could not be read: 13A"},
	{"rating missing: none, under other rules", []change{underRules("uk"), {"rating = \"4-A:80-B:C\"\n", ""}}, "extinguisher-rating", "", checks.NotGiven, checks.ByGiven, checks.Know, "The rating of an extinguisher is not given"},
	{"sprinklers missing: a machine in no room", []change{lost}, "sprinkler-area", "", checks.NotGiven, checks.ByGiven, checks.Know, "Which room Lathe stands in is not given"},
	{"sprinklers in play: with a machine in no room as well", []change{lost, floor("130", "20")}, "sprinkler-area", "", checks.InPlay, checks.ByRule, checks.Mend, ""},
	{"openings asked: another edition of a text that is known from memory", []change{editions(`{ "IMC" = "2021" }`), {`to_opening = "15 ft"`, `to_opening = "9 ft"`}}, "outlet-openings", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "The figure is from memory"},
	{"openings asked: a text of another place that is known from memory", []change{underRules("uk"), {`to_opening = "15 ft"`, `to_opening = "9 ft"`}}, "outlet-openings", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "names. The figure is from memory"},
	{"neighbours met", nil, "outlet-property", "Cyclone", checks.Met, checks.ByRule, checks.Know, "40 ft"},
	{"neighbours met at the figure", []change{{`to_property = "40 ft"`, `to_property = "30 ft"`}}, "outlet-property", "Cyclone", checks.Met, checks.ByRule, checks.Know, "30 ft"},
	{"neighbours not met", []change{{`to_property = "40 ft"`, `to_property = "29.9 ft"`}}, "outlet-property", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "29.9 ft"},
	{"neighbours advice: at home", []change{atHome, {`to_property = "40 ft"`, `to_property = "10 ft"`}}, "outlet-property", "Cyclone", checks.Advice, checks.ByRule, checks.Mend, "10 ft"},
	{"neighbours missing", []change{outlet("")}, "outlet-property", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},
	{"openings advice: far", nil, "outlet-openings", "Cyclone", checks.Advice, checks.ByRule, checks.Know, "15 ft from the nearest opening"},
	{"openings asked: near", []change{{`to_opening = "15 ft"`, `to_opening = "9.9 ft"`}}, "outlet-openings", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "9.9 ft from the nearest opening"},
	{"openings missing: the height", []change{{`, above_ground = "12 ft"`, ""}}, "outlet-openings", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "how high above the ground"},
}

// buildingRules are the figures that the checks of this family compare with.
var buildingRules = []ruleCase{
	{figure: "garage-duct-gauge", check: "garage-separation", about: "Lathe drop", kept: []change{through}, broken: []change{through, drop("gauge = \"28 ga\"\n")}, best: checks.Ask},
	{figure: "garage-duct-thickness", check: "garage-separation", about: "Lathe drop", kept: []change{through, drop("wall = \"0.5 mm\"\n")}, broken: []change{through, drop("wall = \"0.4 mm\"\n")}, best: checks.Ask,
		loose: "0.5 mm", tight: "0.6 mm"},
	{figure: "garage-door-thickness", check: "garage-door", broken: []change{door(`door = { thick = "1 1/4 in", closes = true, into_bedroom = false }`)}, loose: "1 3/8 in", tight: "1 3/4 in"},
	{figure: "garage-door-rating", check: "garage-door", kept: []change{door(`door = { rating = "20 min", closes = true, into_bedroom = false }`)},
		broken: []change{door(`door = { rating = "19 min", closes = true, into_bedroom = false }`)}, loose: "20 min", tight: "45 min"},
	{figure: "garage-door-closes", check: "garage-door", broken: []change{door(`door = { thick = "1 3/8 in", closes = false, into_bedroom = false }`)}},
	{figure: "garage-door-bedroom", check: "garage-door", broken: []change{door(`door = { thick = "1 3/8 in", closes = true, into_bedroom = true }`)}},
	{figure: "garage-board", check: "garage-board", broken: []change{board(`board = "3/8 in"`)}, loose: "1/2 in", tight: "3/4 in"},
	{figure: "garage-board-below", check: "garage-board", broken: []change{board(`board = "1/2 in"`)}, worst: checks.Ask},
	{figure: "way-out-width", check: "way-out", about: "Hall", broken: []change{way("27 in")}, loose: "48 in", tight: "49 in"},
	{figure: "way-out-ceiling", check: "way-out", about: "Hall", broken: []change{high("7 ft")}, loose: "10 ft", tight: "10.1 ft"},
	{figure: "way-out-headroom", check: "duct-headroom", kept: []change{overWay("7")}, broken: []change{overWay("6")}, loose: "6.7 ft", tight: "7 ft"},
	{figure: "aisle-few", check: "aisle-width", broken: []change{way("35 in")}, loose: "48 in", tight: "49 in"},
	{figure: "aisle-many", check: "aisle-width", broken: []change{way("43 in")}, loose: "48 in", tight: "49 in"},
	{figure: "sprinkler-area", check: "sprinkler-area", broken: []change{floor("130", "20")}, threshold: true, loose: "600 sq ft", tight: "599 sq ft"},
	{figure: "outlet-property", check: "outlet-property", about: "Cyclone", broken: []change{{`to_property = "40 ft"`, `to_property = "29 ft"`}}, loose: "40 ft", tight: "41 ft"},
	{figure: "outlet-openings", check: "outlet-openings", about: "Cyclone", broken: []change{{`to_opening = "15 ft"`, `to_opening = "9 ft"`}}, loose: "15 ft", tight: "16 ft"},
	{figure: "outlet-ground", check: "outlet-openings", about: "Cyclone", broken: []change{{`above_ground = "12 ft"`, `above_ground = "9 ft"`}}, loose: "12 ft", tight: "13 ft"},
	{figure: "extinguisher-reach", check: "extinguisher-reach", about: "Hall", broken: []change{floor("90", "20")}, loose: "50 ft", tight: "20 ft"},
	{figure: "extinguisher-least", check: "extinguisher-rating", broken: []change{hung("1, 7", "1-A")}},
	{figure: "extinguisher-least-extra", check: "extinguisher-rating", broken: []change{hung("1, 7", "3-A")}, worst: checks.Ask},
	{figure: "extinguisher-area", check: "extinguisher-rating", broken: []change{hung("1, 7", "2-A"), floor("80", "80")}, loose: "150 sq ft", tight: "149 sq ft"},
	{figure: "extinguisher-area-ordinary", check: "extinguisher-rating", broken: []change{floor("80", "80")}, worst: checks.Ask},
	{figure: "extinguisher-area-extra", check: "extinguisher-rating", broken: []change{floor("70", "70")}, worst: checks.Ask},
	{figure: "extinguisher-area-most", check: "extinguisher-rating", broken: []change{hung("1, 7", "40-A"), floor("120", "100")}, loose: "600 sq ft", tight: "599 sq ft"},
	{figure: "extinguisher-b-reach", check: "extinguisher-finish", about: "Lathe", kept: []change{lathe("finish overspray")}, broken: []change{lathe("finish overspray"), hung("1, 60", "4-A:80-B:C")}, loose: "50 ft", tight: "10 ft"},
	{figure: "extinguisher-b-near-reach", check: "extinguisher-finish", about: "Lathe", kept: []change{lathe("finish overspray"), hung("1, 7", "40-B")}, broken: []change{lathe("finish overspray"), hung("1, 35", "40-B")}, worst: checks.Ask},
	{figure: "extinguisher-b-near", check: "extinguisher-finish", about: "Lathe", kept: []change{lathe("finish overspray"), hung("1, 7", "40-B")}, broken: []change{lathe("finish overspray"), hung("1, 7", "4-B")}},
	{figure: "extinguisher-b-far", check: "extinguisher-finish", about: "Lathe", kept: []change{lathe("finish overspray"), hung("20, 45", "80-B")}, broken: []change{lathe("finish overspray"), hung("20, 45", "9-B")}},
	{figure: "extinguisher-d-reach", check: "extinguisher-metal", about: "Lathe", kept: []change{lathe("metal"), hung("1, 7", "D")}, broken: []change{lathe("metal"), hung("96, 5", "D")}, loose: "20 ft", tight: "19 ft"},
	{figure: "extinguisher-service", check: "extinguisher-service", broken: []change{tagged("serviced = 2025-01-02\n")}},
}

// drop gives the lathe's drop another gauge or wall.
func drop(sheet string) change {
	return change{"gauge = \"24 ga\"\nroute = [[20, 5, 2]", sheet + "route = [[20, 5, 2]"}
}
