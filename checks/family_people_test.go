package checks_test

import "dustbook/checks"

// Changes of the whole shop's people, noise and labels.
var (
	atHome     = change{`setting = "school"`, `setting = "home"`}
	noSetting  = change{"setting = \"school\"\n", ""}
	underUK    = change{`rules = "us"`, `rules = "uk"`}
	sawAllDay  = change{"noise = \"76 dBA\"\nhours = 2", "noise = \"76 dBA\"\nhours = 8"}
	latheQuiet = change{`noise = "74 dBA"`, `noise = "40 dBA"`}
	trained    = instead("training list", "kind = \"training list\"\nheld = false")
)

// sawAllDayAt has the saw run for eight hours at a level, and nothing else that
// counts: its level is that of the day.
func sawAllDayAt(level string) []change {
	return []change{{sawAllDay.old, "noise = \"" + level + "\"\nhours = 8"}, latheQuiet}
}

// peopleStates are shops and what the checks of this family find in them.
var peopleStates = []stateCase{
	{"noise asked: nothing counts", nil, "noise-dose", "", checks.Ask, checks.ByRule, checks.Know, "Nothing is loud enough to count towards 85 dBA (1910.95"},
	{"noise asked: the limit itself is not passed", sawAllDayAt("90 dBA"), "noise-dose", "", checks.Ask, checks.ByRule, checks.Mend, "It stays under 90 where the figure is 90"},
	{"noise asked: a figure from memory is reached", sawAllDayAt("85 dBA"), "noise-dose", "", checks.Ask, checks.ByRule, checks.Mend, "85 where the figure is 85 dBA (1910.95"},
	{"noise asked: just below it", sawAllDayAt("84.9 dBA"), "noise-dose", "", checks.Ask, checks.ByRule, checks.Know, "84.9 where the figure is 85"},
	{"noise in play: the lower value of Great Britain", append(sawAllDayAt("80 dBA"), underUK), "noise-dose", "", checks.InPlay, checks.ByRule, checks.Mend, "It has come to 80 where the figure is 80 dBA"},
	{"noise asked in Great Britain: just below it", append(sawAllDayAt("79.9 dBA"), underUK), "noise-dose", "", checks.Ask, checks.ByRule, checks.Know, "79.9 where the figure is 80"},
	{"noise in play: the limit", append(sawAllDayAt("87 dBA"), underUK), "noise-dose", "", checks.InPlay, checks.ByRule, checks.Mend, "87 where the figure is 87"},
	{"noise: the upper value and not the limit", append(sawAllDayAt("86.9 dBA"), underUK), "noise-dose", "", checks.InPlay, checks.ByRule, checks.Mend, "It stays under 86.9 where the figure is 87"},
	{"noise asked: no rules", append(sawAllDayAt("95 dBA"), change{`rules = "us"`, `rules = "none"`}), "noise-dose", "", checks.Ask, checks.ByRule, checks.Mend, "text of another place"},
	{"noise advice: a loud home", append(sawAllDayAt("95 dBA"), atHome), "noise-dose", "", checks.Advice, checks.ByRule, checks.Know, "It has come to"},
	{"noise missing: a level", []change{{"noise = \"76 dBA\"\n", ""}}, "noise-dose", "", checks.NotGiven, checks.ByGiven, checks.Know, "Saw"},
	{"noise missing: hours", []change{{"noise = \"76 dBA\"\nhours = 2\n", "noise = \"76 dBA\"\n"}}, "noise-dose", "", checks.NotGiven, checks.ByGiven, checks.Know, "Saw"},

	{"exposure asked", nil, "dust-exposure", "", checks.Ask, checks.ByRule, checks.Know, "15 mg/m3 for total dust (1910.1000"},
	{"exposure asked: Great Britain", []change{underUK}, "dust-exposure", "", checks.Ask, checks.ByRule, checks.Know, "3 mg/m3 for hardwood"},
	{"exposure asked: the Union", []change{{`rules = "us"`, `rules = "eu"`}}, "dust-exposure", "", checks.Ask, checks.ByRule, checks.Know, "2 mg/m3 for inhalable dust of hardwood"},
	{"exposure asked: no limit was read", []change{{`rules = "us"`, `rules = "quebec"`}}, "dust-exposure", "", checks.Ask, checks.ByRule, checks.Know, "No limit of the rules"},
	{"exposure missing: setting", []change{noSetting}, "dust-exposure", "", checks.NotGiven, checks.ByGiven, checks.Know, "Whether people are employed"},

	{"labels met", nil, "hood-labels", "Cyclone", checks.Met, checks.ByGiven, checks.Know, "(Saw and Lathe) say what may go in"},
	{"labels not met", []change{{"labelled = true", "labelled = false"}}, "hood-labels", "Cyclone", checks.NotMet, checks.ByGiven, checks.Mend, "do not say what may go in"},
	{"labels missing", []change{{"labelled = true\n", ""}}, "hood-labels", "Cyclone", checks.NotGiven, checks.ByGiven, checks.Know, "is not given"},

	{"training met", nil, "training-record", "", checks.Met, checks.ByGiven, checks.Know, "in hand: training list"},
	{"training not met", []change{trained}, "training-record", "", checks.NotMet, checks.ByGiven, checks.Mend, "not in hand: training list"},
	{"training missing: nothing is told", []change{without("training list")}, "training-record", "", checks.NotGiven, checks.ByGiven, checks.Know, "No list"},
	{"training missing: whether it is in hand", []change{instead("training list", `kind = "training list"`)}, "training-record", "", checks.NotGiven, checks.ByGiven, checks.Know, "No list"},
	{"training missing: setting", []change{noSetting, without("training list")}, "training-record", "", checks.NotGiven, checks.ByGiven, checks.Know, "Whether people are employed"},
	{"training at a home with somebody employed", []change{atHome, trained, {`name = "Whole"`, "name = \"Whole\"\nemployees = 1"}}, "training-record", "", checks.NotMet, checks.ByGiven, checks.Mend, "not in hand"},
}

// peopleRules are the figures that the checks of this family compare with.
var peopleRules = []ruleCase{
	{figure: "noise-first", check: "noise-dose", broken: sawAllDayAt("95 dBA"), threshold: true, loose: "100 dBA", tight: "60 dBA"},
	{figure: "noise-second", check: "noise-dose", broken: sawAllDayAt("95 dBA"), threshold: true, loose: "100 dBA", tight: "60 dBA"},
	{figure: "noise-most", check: "noise-dose", broken: sawAllDayAt("95 dBA"), threshold: true, loose: "100 dBA", tight: "60 dBA"},
}
