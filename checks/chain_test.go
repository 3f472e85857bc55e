package checks_test

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/checks"
)

const (
	listedSupply = "supply_listed = \"class 2\"\n"
	supplyPower  = "supply_power = \"96 W\"\n"
	zoneStall    = "travel = \"1.5 s\"\nstall = \"1.6 A\"\n"
	together     = "moves_together = 1\n"
	chainCable   = `cable = "18 AWG"`
)

func TestChainVolts(t *testing.T) {
	for _, e := range []expected{
		{"met", nil, "chain-volts", "Chain", checks.Met, checks.ByGiven, checks.Know, "At the worst Drum eye gets "},
		{"not met: a thin cable", []change{{chainCable, `cable = "26 AWG"`}}, "chain-volts", "Chain", checks.NotMet, checks.ByGiven, checks.Mend, "works down to 18 V. That is while Lathe gate is stalled, everything else at rest."},
		{"not met: nothing is left", []change{{chainCable, `cable = "20 AWG"`}, {zoneStall, "travel = \"1.5 s\"\nstall = \"50 A\"\n"}}, "chain-volts", "Chain", checks.NotMet, checks.ByGiven, checks.Mend, "no volts are left at its end"},
		{"not met: a converter", []change{{zoneStall, "travel = \"1.5 s\"\ntakes = \"600 W\"\n"}}, "chain-volts", "Chain", checks.NotMet, checks.ByGiven, checks.Mend, "the gates with converters ask 600 W together"},
		{"thin: little margin", []change{{`lowest = "18 V"`, `lowest = "22 V"`}}, "chain-volts", "Chain", checks.Thin, checks.ByGiven, checks.Know, "Common practice leaves 1.2 V for a warm cable"},
		{"thin: a current assumed", []change{{zoneStall, "travel = \"1.5 s\"\n"}}, "chain-volts", "Chain", checks.Thin, checks.ByGiven, checks.Know, "A current of Zone gate is assumed."},
		{"thin: two assumed", []change{{"draws = \"40 mA\"\n", ""}, {zoneStall, "travel = \"1.5 s\"\n"}}, "chain-volts", "Chain", checks.Thin, checks.ByGiven, checks.Know, "Currents of Zone gate and Drum eye are assumed."},
		{"thin: how many move is assumed", []change{{together, ""}}, "chain-volts", "Chain", checks.Thin, checks.ByGiven, checks.Know, "How many gates move at once is assumed."},
		{"missing: volts", []change{{"supply = \"24 V\"\n", ""}}, "chain-volts", "Chain", checks.NotGiven, checks.ByGiven, checks.Know, "The volts of the control supply are not given."},
		{"missing: lowest", []change{{"lowest = \"18 V\"\n", ""}}, "chain-volts", "Chain", checks.NotGiven, checks.ByGiven, checks.Know, "The lowest volts that Saw runs, Saw gate, Zone gate and 3 more work with are not given. 5 % of the supply's volts are lost on the way: by common practice worth a second look."},
		{"missing: lowest, and much is lost", []change{{"lowest = \"18 V\"\n", ""}, {chainCable, `cable = "24 AWG"`}}, "chain-volts", "Chain", checks.NotGiven, checks.ByGiven, checks.Know, "by common practice too much for any device"},
		{"missing: what it draws decides", []change{{zoneStall, "travel = \"1.5 s\"\n"}, {chainCable, `cable = "22 AWG"`}, {`lowest = "18 V"`, `lowest = "19 V"`}}, "chain-volts", "Chain", checks.NotGiven, checks.ByGiven, checks.Know, "What Zone gate draws when it is stalled is not given. With what is assumed instead the volts would not be enough."},
		{"asked: the conductor", []change{{"supply = \"24 V\"", "supply = \"60 V\""}, {zoneStall, "travel = \"1.5 s\"\nstall = \"9 A\"\n"}}, "chain-volts", "Chain", checks.Ask, checks.ByGiven, checks.Know, "and 18 AWG carries 7 A by a figure from memory"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t)), "chain-volts", ""); len(found) != 0 {
		t.Errorf("no chain: %+v", found)
	}
}

// Forty gates with converters, eight at once: more sets than are tried.
func TestChainTooManySets(t *testing.T) {
	crowd := func(watts string) checks.Finding {
		gates, stops := "", ""
		for i := range 40 {
			name := fmt.Sprintf("Gate %02d", i+1)
			gates += "[[gate]]\nname = \"" + name + "\"\non = \"Saw drop\"\nat = \"1 ft\"\ndrive = \"powered\"\nholding = \"1 mA\"\ntakes = \"" + watts + "\"\n"
			stops += "  { device = \"" + name + "\", cable = \"1 ft\" },\n"
		}
		list := checks.Run(drivenPlan(t, change{"[[sensor]]\nname = \"Drum eye\"", gates + "[[sensor]]\nname = \"Drum eye\""},
			change{"  { device = \"Drum eye\", cable", stops + "  { device = \"Drum eye\", cable"}, change{"moves_together = 1", "moves_together = 8"}))
		return only(t, list, "chain-volts", "Chain")
	}
	if f := crowd("40 W"); f.State != checks.Ask || !strings.HasPrefix(f.Says, "There are too many sets") || f.Asks == "" {
		t.Errorf("%+v", f)
	}
	if f := crowd("0.1 W"); f.State != checks.Thin || !strings.Contains(f.Says, "so that is a floor") {
		t.Errorf("%+v", f)
	}
}

// What is said to mend a chain is named with its figures.
func TestChainMends(t *testing.T) {
	f := only(t, checks.Run(drivenPlan(t, change{chainCable, `cable = "26 AWG"`})), "chain-volts", "Chain")
	if !strings.Contains(f.Do, "Any one of these is enough. Use 24 AWG all along. Connect the supply at Zone gate instead, between the two ends.") {
		t.Error(f.Do)
	}
	f = only(t, checks.Run(drivenPlan(t, change{`lowest = "18 V"`, `lowest = "23.9 V"`})), "chain-volts", "Chain")
	if f.State != checks.NotMet || !strings.HasPrefix(f.Do, "No single change of cable, feed point or gates at once is enough, and a chain cut in parts is not either") {
		t.Errorf("%v: %s", f.State, f.Do)
	}
}

func TestSupplyMargin(t *testing.T) {
	for _, e := range []expected{
		{"met", nil, "supply-margin", "", checks.Met, checks.ByGiven, checks.Know, "The supply gives 4 A."},
		{"not met", []change{{supplyPower, "supply_power = \"36 W\"\n"}}, "supply-margin", "", checks.NotMet, checks.ByGiven, checks.Mend, "The supply gives 1.5 A."},
		{"thin: no margin", []change{{supplyPower, "supply_power = \"52 W\"\n"}}, "supply-margin", "", checks.Thin, checks.ByGiven, checks.Know, "Common practice asks "},
		{"thin: a current assumed", []change{{"draws = \"40 mA\"\n", ""}}, "supply-margin", "", checks.Thin, checks.ByGiven, checks.Know, "A current of Drum eye is assumed."},
		{"thin: how many move is assumed", []change{{together, ""}}, "supply-margin", "", checks.Thin, checks.ByGiven, checks.Know, "How many gates move at once is assumed."},
		{"missing: power", []change{{supplyPower, ""}}, "supply-margin", "", checks.NotGiven, checks.ByGiven, checks.Know, "The power of the control supply is not given."},
		{"missing: volts", []change{{"supply = \"24 V\"\n", ""}}, "supply-margin", "", checks.NotGiven, checks.ByGiven, checks.Know, "The volts of the control supply are not given."},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(drivenPlan(t, e.changes...))) })
	}
	if found := pick(checks.Run(planOf(t)), "supply-margin", ""); len(found) != 0 {
		t.Errorf("nothing to feed: %+v", found)
	}
	f := only(t, checks.Run(drivenPlan(t, change{supplyPower, "supply_power = \"52 W\"\n"})), "supply-margin", "")
	if !strings.HasPrefix(f.Do, "Fit a supply of ") {
		t.Error(f.Do)
	}
	f = only(t, checks.Run(drivenPlan(t, change{zoneStall, "travel = \"1.5 s\"\nstall = \"6 A\"\n"})), "supply-margin", "")
	if !strings.HasPrefix(f.Do, "One supply whose power is limited gives 100 W at most") || f.State != checks.NotMet {
		t.Errorf("%v: %s", f.State, f.Do)
	}
}

// The listing of the supply: nothing is said where it stands within its class.
func TestSupplyListing(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []change
		state   checks.State
		says    string
	}{
		{"within", nil, "", ""},
		{"not given", []change{{listedSupply, ""}}, checks.Ask, "Whether its power is limited is not given"},
		{"unknown", []change{{listedSupply, "supply_listed = \"unknown\"\n"}}, checks.Ask, "Whether its power is limited is not given"},
		{"none", []change{{listedSupply, "supply_listed = \"none\"\n"}}, checks.Ask, "nothing says that its power is limited"},
		{"beyond", []change{{supplyPower, "supply_power = \"120 W\"\n"}}, checks.NotMet, "Its power is 120 W, and the class that its listing names ends at 100 W."},
		{"beyond a figure from memory", []change{{"supply = \"24 V\"", "supply = \"12 V\""}}, checks.Ask, "ends at 60 W, by a figure from memory"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var found []checks.Finding
			for _, f := range pick(checks.Run(drivenPlan(t, c.changes...)), "supply-margin", "") {
				if strings.Contains(f.Says, "limited") || strings.Contains(f.Says, "listing") {
					found = append(found, f)
				}
			}
			if c.state == "" {
				if len(found) > 0 {
					t.Errorf("%+v", found)
				}
				return
			}
			if len(found) != 1 || found[0].State != c.state || !strings.Contains(found[0].Says, c.says) || !strings.HasSuffix(found[0].Asks, "?") {
				t.Errorf("%+v", found)
			}
		})
	}
}
