package checks_test

import (
	"testing"

	"dustbook/checks"
)

// Pieces of the whole shop that belong to its ducts.
const (
	mainHangers   = `hangers = "8 ft"`
	mainCleanOuts = `clean_outs = ["0 ft", "9 ft", "18 ft"]`
	mainWall      = "size = \"5 in\"\nmaterial = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[20, 10, 8]"
	sawWall       = "material = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[10, 5, 2]"
	latheWall     = "material = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[20, 5, 2]"
)

// mainOf makes the main of another size and sheet.
func mainOf(size, sheet string) change {
	return change{mainWall, "size = \"" + size + "\"\nmaterial = \"spiral steel\"\n" + sheet + "\nroute = [[20, 10, 8]"}
}

// sheetOf gives both drops another sheet.
func sheetOf(sheet string) []change {
	return []change{
		{sawWall, "material = \"spiral steel\"\n" + sheet + "\nroute = [[10, 5, 2]"},
		{latheWall, "material = \"spiral steel\"\n" + sheet + "\nroute = [[20, 5, 2]"},
	}
}

// onlyMain makes both drops of plastic, so that the sheet of the main is looked
// at alone.
func onlyMain(size, sheet string) []change {
	return []change{mainOf(size, sheet),
		{sawWall, "material = \"smooth plastic\"\nroute = [[10, 5, 2]"},
		{latheWall, "material = \"smooth plastic\"\nroute = [[20, 5, 2]"},
	}
}

// allOf gives every duct the same wall.
func allOf(wall string) []change { return append(sheetOf(wall), mainOf("5 in", wall)) }

// longRiser lets the lathe's drop come down 22 ft.
var longRiser = change{"[[20, 5, 2], [20, 5, 8], [20, 10, 8]]", "[[20, 5, 30], [20, 5, 8], [20, 10, 8]]"}

// before sets a level duct of 12 ft in line before the main, with these
// clean-outs.
func before(cleanOuts string) change { return from("32", cleanOuts) }

// from is the same with a start of its own, in feet to the east.
func from(east, cleanOuts string) change {
	return change{"[[duct]]\nname = \"Saw drop\"", "[[duct]]\nname = \"East\"\nto = \"Main\"\nsize = \"5 in\"\nclean_outs = [" + cleanOuts + "]\n" +
		"material = \"spiral steel\"\ngauge = \"24 ga\"\nbonded = \"2 ohm\"\nroute = [[" + east + ", 10, 8], [20, 10, 8]]\n[[duct]]\nname = \"Saw drop\""}
}

// ductStates are shops and what the checks of this family find in them.
var ductStates = []stateCase{
	{"supports met", nil, "duct-supports", "Cyclone", checks.Met, checks.ByRule, checks.Know, "within the 10 ft of IMC: Main (8 ft)"},
	{"supports met: a riser has none", []change{longRiser}, "duct-supports", "Cyclone", checks.Met, checks.ByRule, checks.Know, "IMC: Main (8 ft)."},
	{"supports met at the figure", []change{{mainHangers, `hangers = "3048 mm"`}}, "duct-supports", "Cyclone", checks.Met, checks.ByRule, checks.Know, "Main (10 ft)"},
	{"supports not met just over it", []change{{mainHangers, `hangers = "10.1 ft"`}}, "duct-supports", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "farther apart than the 10 ft"},
	{"supports missing", []change{{mainHangers + "\n", ""}}, "duct-supports", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "supports of Main stand is not given"},
	{"supports asked: another edition", []change{{mainHangers, `hangers = "12 ft"`}, {`rules = "us"`, "rules = \"us\"\neditions = { \"IMC\" = \"2024\" }"}}, "duct-supports", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "names another edition"},
	{"supports asked: other rules", []change{{mainHangers, `hangers = "12 ft"`}, {`rules = "us"`, `rules = "uk"`}}, "duct-supports", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "another place"},

	{"clean-outs met", []change{californian}, "duct-clean-outs", "Cyclone", checks.Met, checks.ByRule, checks.Know, "Main (9 ft)"},
	{"clean-outs met: a riser has none", []change{californian, longRiser}, "duct-clean-outs", "Cyclone", checks.Met, checks.ByRule, checks.Know, "Main (9 ft)"},
	{"clean-outs met at the figure", []change{californian, {mainCleanOuts, `clean_outs = ["6 ft"]`}}, "duct-clean-outs", "Cyclone", checks.Met, checks.ByRule, checks.Know, "Main (12 ft)"},
	{"clean-outs not met just over it", []change{californian, {mainCleanOuts, `clean_outs = ["5.9 ft"]`}}, "duct-clean-outs", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main (12.1 ft)"},
	{"clean-outs not met: none", []change{californian, {mainCleanOuts, `clean_outs = []`}}, "duct-clean-outs", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main (23 ft)"},
	{"clean-outs advice: a text of a state that the file does not name", nil, "duct-clean-outs", "Cyclone", checks.Advice, checks.ByRule, checks.Know, "That is a text of California."},
	{"clean-outs asked: a text of a state that the file does not name", []change{{mainCleanOuts, `clean_outs = []`}}, "duct-clean-outs", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "only where the file names it under editions"},
	{"clean-outs met by the code that the file names", []change{editions(`{ "UMC" = "as reported" }`), {mainCleanOuts, `clean_outs = ["4 ft", "13 ft"]`}}, "duct-clean-outs", "Cyclone", checks.Met, checks.ByRule, checks.Know, "10 ft of UMC"},
	{"clean-outs not met by the code that the file names", []change{editions(`{ "UMC" = "as reported" }`), {mainCleanOuts, `clean_outs = ["6 ft"]`}}, "duct-clean-outs", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "10 ft of UMC"},
	{"clean-outs missing", []change{{mainCleanOuts + "\n", ""}}, "duct-clean-outs", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "where its clean-outs are is not given: Main (23 ft)"},
	{"clean-outs asked: no rules", []change{{mainCleanOuts, `clean_outs = []`}, {`rules = "us"`, `rules = "none"`}}, "duct-clean-outs", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "another place"},
	{"clean-outs not met through a joint in line", []change{californian, {mainCleanOuts, `clean_outs = ["6 ft"]`}, before("")}, "duct-clean-outs", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main (18 ft)"},
	{"clean-outs not met before the joint", []change{californian, {mainCleanOuts, `clean_outs = ["0 ft", "9 ft"]`}, from("33", "")}, "duct-clean-outs", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "California T8 5143: East (13 ft)."},
	{"clean-outs met where the joint has one", []change{californian, {mainCleanOuts, `clean_outs = ["6 ft"]`}, before(`"12 ft"`)}, "duct-clean-outs", "Cyclone", checks.Met, checks.ByRule, checks.Know, "Main (12 ft)"},

	{"clearance advice: the figure is from memory", nil, "duct-clearance", "", checks.Advice, checks.ByRule, checks.Know, "at least the 1 in"},
	{"clearance asked", []change{{`clearance = "4 in"`, `clearance = "0.9 in"`}}, "duct-clearance", "", checks.Ask, checks.ByRule, checks.Know, "Lathe drop (0.9 in)"},
	{"clearance met at a figure that was confirmed", []change{confirmFigure("duct-clearance", "4 in")}, "duct-clearance", "", checks.Met, checks.ByRule, checks.Know, "at least the 4 in of the shop file (building official) to what burns: Main (8 in), Saw drop (6 in) and Lathe drop (4 in)"},
	{"clearance not met by a figure that was confirmed", []change{confirmFigure("duct-clearance", "4.1 in")}, "duct-clearance", "", checks.NotMet, checks.ByRule, checks.Mend, "Lathe drop (4 in)"},
	{"clearance missing", []change{{"clearance = \"4 in\"\n", ""}}, "duct-clearance", "", checks.NotGiven, checks.ByGiven, checks.Know, "How near Lathe drop comes"},

	{"sheet thin: the gauge straddles the figure", nil, "duct-thickness", "Cyclone", checks.Thin, checks.ByRule, checks.Know, "Main, 5 in: 24 ga, sold as 0.0276 in, at least 0.028 in"},
	{"sheet met by its gauge", append(sheetOf(`gauge = "22 ga"`), mainOf("5 in", `gauge = "22 ga"`)), "duct-thickness", "Cyclone", checks.Met, checks.ByRule, checks.Know, "22 ga"},
	{"sheet met at the figure", allOf(`wall = "0.028 in"`), "duct-thickness", "Cyclone", checks.Met, checks.ByRule, checks.Know, "0.028 in"},
	{"sheet not met just under it", allOf(`wall = "0.0274 in"`), "duct-thickness", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main, 5 in: 0.0274 in, at least 0.028 in"},
	{"sheet not met by its gauge", []change{mainOf("5 in", `gauge = "26 ga"`)}, "duct-thickness", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main, 5 in: 26 ga"},
	{"sheet asked: the row for 8.1 in is from memory", []change{mainOf("8.1 in", `gauge = "24 ga"`)}, "duct-thickness", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "at least 0.034 in"},
	{"sheet read for 8 in", []change{mainOf("8 in", `gauge = "26 ga"`)}, "duct-thickness", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main, 8 in"},
	{"sheet asked: metal wears it", append(allOf(`wall = "0.03 in"`), change{"at = [20, 5]\nmakes = \"wood\"", "at = [20, 5]\nmakes = \"mixed\""}), "duct-thickness", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "metal wears the pipe"},
	{"sheet missing", append(sheetOf(`gauge = "22 ga"`), change{mainWall, "size = \"5 in\"\nmaterial = \"spiral steel\"\nroute = [[20, 10, 8]"}), "duct-thickness", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "sheet of Main"},

	{"material met", nil, "duct-material", "Cyclone", checks.Met, checks.ByRule, checks.Know, "No duct is of plastic"},
	{"material not met", []change{plasticMain}, "duct-material", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main (smooth plastic)"},
	{"material not met though it conducts", []change{{plasticMain.old, "conductive = true\n" + plasticMain.new}}, "duct-material", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "Main (smooth plastic)"},
	{"material asked: no rules", []change{plasticMain, {`rules = "us"`, `rules = "none"`}}, "duct-material", "Cyclone", checks.Ask, checks.ByRule, checks.Know, "another place"},
	{"material missing", []change{{mainWall, "size = \"5 in\"\ngauge = \"24 ga\"\nroute = [[20, 10, 8]"}}, "duct-material", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "What Main is made of"},
	{"material missing: setting", []change{plasticMain, {`setting = "school"`, ""}}, "duct-material", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "Whether people are employed"},

	{"hose pulled out", sawHose("stretched = true"), "hose-slack", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "Every hose is pulled out"},
	{"hose pushed together", sawHose("stretched = false"), "hose-slack", "Cyclone", checks.Advice, checks.ByModel, checks.Know, "Saw drop (3 ft)"},
	{"hose missing", sawHose(`material = "conductive ribbed hose"`), "hose-slack", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "hose on Saw drop is pulled out is not given"},
}

// sawHose hangs a hose on the saw's drop.
func sawHose(more string) []change {
	return []change{{`serves = ["Saw"]`, "serves = [\"Saw\"]\nhose = { length = \"3 ft\", " + more + " }"}}
}

// ductRules are the figures that the checks of this family compare with.
var ductRules = []ruleCase{
	{figure: "duct-supports", check: "duct-supports", about: "Cyclone", broken: []change{{mainHangers, `hangers = "12 ft"`}}, loose: "8 ft", tight: "7.9 ft"},
	{figure: "duct-clean-outs", check: "duct-clean-outs", about: "Cyclone", broken: []change{{mainCleanOuts, `clean_outs = []`}}, loose: "9 ft", tight: "8.9 ft"},
	{figure: "duct-clearance", check: "duct-clearance", broken: []change{{`clearance = "4 in"`, `clearance = "0.5 in"`}}, loose: "4 in", tight: "4.1 in"},
	{figure: "duct-material", check: "duct-material", about: "Cyclone", broken: []change{plasticMain}},
	{figure: "duct-thickness-8", check: "duct-thickness", about: "Cyclone", kept: onlyMain("5 in", `gauge = "22 ga"`), broken: onlyMain("5 in", `gauge = "26 ga"`), loose: "0.0296 in", tight: "0.035 in"},
	{figure: "duct-thickness-18", check: "duct-thickness", about: "Cyclone", kept: onlyMain("12 in", `wall = "0.04 in"`), broken: onlyMain("12 in", `wall = "0.03 in"`), loose: "0.04 in", tight: "0.041 in"},
	{figure: "duct-thickness-30", check: "duct-thickness", about: "Cyclone", kept: onlyMain("20 in", `wall = "0.05 in"`), broken: onlyMain("20 in", `wall = "0.03 in"`), loose: "0.05 in", tight: "0.051 in"},
	{figure: "duct-thickness-more", check: "duct-thickness", about: "Cyclone", kept: onlyMain("32 in", `wall = "0.06 in"`), broken: onlyMain("32 in", `wall = "0.03 in"`), loose: "0.06 in", tight: "0.061 in"},
}

// Nothing is said where it cannot matter: clean-outs of a duct over 12 in, for
// which the figure is not; what the file has none of.
func TestDuctsThatAreNotAsked(t *testing.T) {
	none := change{mainCleanOuts, `clean_outs = []`}
	for _, c := range []struct {
		name, check string
		changes     []change
		findings    int
	}{
		{"12 in", "duct-clean-outs", []change{none, mainOf("12 in", `gauge = "24 ga"`)}, 1},
		{"12.1 in", "duct-clean-outs", []change{none, mainOf("12.1 in", `gauge = "24 ga"`)}, 0},
		{"level", "duct-supports", nil, 1},
		{"no hose", "hose-slack", nil, 0},
		{"a home, plastic", "duct-material", []change{plasticMain, {`setting = "school"`, `setting = "home"`}}, 0},
		{"no control half, no circuit", "panel-space", nil, 0},
		{"no control half", "control-box", nil, 0},
	} {
		if found := pick(checks.Run(planOf(t, c.changes...)), c.check, ""); len(found) != c.findings {
			t.Errorf("%s, %s: %d findings, want %d: %+v", c.name, c.check, len(found), c.findings, found)
		}
	}
}
