package checks_test

import "dustbook/checks"

// bondingStates are shops and what the checks of this family find in them.
var bondingStates = []stateCase{
	{"collector's bond met at the figure for metal", []change{{`bonded = "3 ohm"`, `bonded = "10 ohm"`}}, "bonded-duct", "Cyclone", checks.Met, checks.ByRule, checks.Know, "10 ohm, within the 10 ohm"},
	{"collector's bond thin over it", []change{{`bonded = "3 ohm"`, `bonded = "10.1 ohm"`}}, "bonded-duct", "Cyclone", checks.Thin, checks.ByRule, checks.Know, "a joint is in doubt"},
	{"collector's bond not met at the figure for charge", []change{{`bonded = "3 ohm"`, `bonded = "1 Mohm"`}}, "bonded-duct", "Cyclone", checks.NotMet, checks.ByRule, checks.Mend, "charge stays on it"},
	{"collector's bond missing", []change{{"bonded = \"3 ohm\"\n", ""}}, "bonded-duct", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "of the collector itself to earth is not given"},
	{"collector's bond advice: a home", []change{{`bonded = "3 ohm"`, `bonded = "2 Mohm"`}, {`setting = "school"`, `setting = "home"`}}, "bonded-duct", "Cyclone", checks.Advice, checks.ByRule, checks.Mend, "charge stays on it"},
	{"bond not met in a home that had the figure confirmed", []change{{`bonded = "2 ohm"`, `bonded = "2 Mohm"`}, {`setting = "school"`, `setting = "home"`}, confirmFigure("bond-drains", "1 Mohm")}, "bonded-duct", "Main", checks.NotMet, checks.ByRule, checks.Mend, "charge stays on it"},
	{"bond asked: no rules", []change{{`bonded = "2 ohm"`, `bonded = "2 Mohm"`}, {`rules = "us"`, `rules = "none"`}}, "bonded-duct", "Main", checks.Ask, checks.ByRule, checks.Mend, "texts that were read elsewhere"},
	{"conducting not met: another text is named that nothing was read of", []change{plasticMain, {`rules = "us"`, "rules = \"us\"\neditions = { \"NFPA 664\" = \"2012\" }"}}, "conductive-duct", "Main", checks.NotMet, checks.ByRule, checks.Mend, "NFPA 91"},
	{"conducting asked: another edition is named", []change{plasticMain, {`rules = "us"`, "rules = \"us\"\neditions = { \"NFPA 91\" = \"2020\" }"}}, "conductive-duct", "Main", checks.Ask, checks.ByRule, checks.Mend, "names another edition"},
	{"conducting advice: the text that counts was not read", []change{{`rules = "us"`, "rules = \"us\"\neditions = { \"NFPA 91\" = \"2020\" }"}}, "conductive-duct", "Main", checks.Advice, checks.ByRule, checks.Know, "names another edition"},
}

// confirmFigure is a figure that the owner has had confirmed.
func confirmFigure(figure, value string) change {
	return change{"[[stop]]", "[[confirmed]]\nfigure = \"" + figure + "\"\nvalue = \"" + value + "\"\nby = \"building official\"\n[[stop]]"}
}

// bondingRules are the figures that the checks of this family compare with.
var bondingRules = []ruleCase{
	{figure: "bond-drains", check: "bonded-duct", about: "Main", broken: []change{{`bonded = "2 ohm"`, `bonded = "2 Mohm"`}}, loose: "3 ohm", tight: "1.9 ohm"},
	{figure: "bond-joint", check: "bonded-duct", about: "Main", broken: []change{{`bonded = "2 ohm"`, `bonded = "20 ohm"`}}, loose: "3 ohm", tight: "1.9 ohm", worst: checks.Thin},
	{figure: "conducting-duct", check: "conductive-duct", about: "Main", broken: []change{plasticMain}},
}
