package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// What moves by itself has a switch that holds it, and where people work a
// written procedure.
func TestUnexpectedStart(t *testing.T) {
	bare := without("lockout procedure")
	noSwitch := change{"lockout = \"key switch by the door\"\n", ""}
	byHand := change{"starts = \"Cyclone\"\nstart_delay = \"4 s\"", "start_delay = \"4 s\""}
	for _, e := range []expected{
		{"met", nil, "unexpected-start", "", checks.Met, checks.ByTopology, checks.Know, "key switch by the door"},
		{"met: a home without the paper", []change{bare, atHome}, "unexpected-start", "", checks.Met, checks.ByTopology, checks.Know, "key switch by the door"},
		{"asked: no procedure in hand", []change{bare}, "unexpected-start", "", checks.Ask, checks.ByRule, checks.Know, "No written lockout procedure"},
		{"asked: no setting", []change{bare, noSetting}, "unexpected-start", "", checks.Ask, checks.ByRule, checks.Know, "No written lockout procedure"},
		{"missing: the switch", []change{noSwitch}, "unexpected-start", "", checks.NotGiven, checks.ByTopology, checks.Mend, "names no switch"},
		{"missing: the switch of a home", []change{noSwitch, atHome}, "unexpected-start", "", checks.NotGiven, checks.ByTopology, checks.Mend, "Cyclone, Saw gate, Lathe gate and 1 more move by themselves"},
		{"one trigger fewer starts it", []change{byHand}, "unexpected-start", "", checks.Met, checks.ByTopology, checks.Know, "move by themselves"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t, bare)), "unexpected-start", ""); len(found) != 0 {
		t.Errorf("nothing moves by itself: %+v", found)
	}
}

// Nothing is said of training, breath and noise where nobody is employed or
// taught and nothing is loud; nor of breath where no wood is worked.
func TestPeopleAtHome(t *testing.T) {
	for name, c := range map[string]struct {
		check   string
		changes []change
	}{
		"training": {"training-record", []change{atHome, without("training list")}},
		"breath":   {"dust-exposure", []change{atHome}},
		"noise":    {"noise-dose", []change{atHome}},
		"unknown":  {"noise-dose", []change{atHome, {"noise = \"76 dBA\"\n", ""}}},
		"metal":    {"dust-exposure", []change{{"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]", "makes = \"metal\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]"}, {"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[collector]]", "makes = \"metal\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[collector]]"}}},
	} {
		if found := pick(checks.Run(planOf(t, c.changes...)), c.check, ""); len(found) != 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

// The day of three levels that 29 CFR 1910.95, appendix A, gives a dose of 87.5 %
// from its limit of 90 dBA up: an average of 89.04. By energy the same day comes to
// 91.09, worked by hand: 10 log10 of 2/8 of 10^9.5, 3/8 of 10^9 and 3/8 of 10^8.5.
func TestNoiseByTheRateOfEachPack(t *testing.T) {
	day := []change{{"noise = \"76 dBA\"\nhours = 2", "noise = \"95 dBA\"\nhours = 2"}, {"noise = \"74 dBA\"\nhours = 2", "noise = \"90 dBA\"\nhours = 3"},
		{"[[collector]]", "[[machine]]\nname = \"Sander\"\nkind = \"other\"\nmakes = \"wood\"\nnoise = \"85 dBA\"\nhours = 3\nat = [25, 5]\n[[collector]]"}}
	for rules, want := range map[string][]string{
		"us":     {"90.4 where the figure is 85 dBA", "89 where the figure is 90 dBA"},
		"uk":     {"91.1 where the figure is 80 dBA", "91.1 where the figure is 85 dBA", "91.1 where the figure is 87 dBA"},
		"quebec": {"91.1 where the figure is 80 dBA", "91.1 where the figure is 85 dBA", "91.1 where the figure is 87 dBA"},
	} {
		f := only(t, checks.Run(planOf(t, append(day, change{`rules = "us"`, `rules = "` + rules + `"`})...)), "noise-dose", "")
		for _, part := range want {
			if !strings.Contains(f.Says, part) || len(f.Figures) != len(want) {
				t.Errorf("%s: %q does not hold %q", rules, f.Says, part)
			}
		}
	}
}
