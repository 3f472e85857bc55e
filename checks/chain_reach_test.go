package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// volts is the change of the supply's volts.
func volts(text string) change { return change{"supply = \"24 V\"", "supply = \"" + text + "\""} }

// National Electrical Code, chapter 9, table 11(B): rows up to 30 V as
// reported, up to 60 V from memory. Both sides of both edges.
func TestSupplyReach(t *testing.T) {
	for _, c := range []struct {
		name, says string
		changes    []change
		weight     checks.Weight
	}{
		{"at 30 V", "", []change{volts("30 V")}, ""},
		{"above 30 V", "Above 30 V no text that was read calls its power limited", []change{volts("30.1 V")}, checks.Mend},
		{"at 60 V", "Above 30 V no text", []change{volts("60 V")}, checks.Mend},
		{"above 60 V", "This is not low-voltage work: the control supply gives 60.1 V", []change{volts("60.1 V")}, checks.Stop},
		{"listed all the same", "gives 120 V, and by a figure from memory a class of limited power ends at 60 V", []change{volts("120 V")}, checks.Stop},
		{"with no power", "gives 230 V", []change{volts("230 V"), {supplyPower, "supply_power = \"0 W\"\n"}}, checks.Stop},
		{"not listed", "gives 230 V", []change{volts("230 V"), {listedSupply, ""}}, checks.Stop},
	} {
		t.Run(c.name, func(t *testing.T) {
			var found []checks.Finding
			list := checks.Run(drivenPlan(t, c.changes...))
			for _, f := range pick(list, "supply-margin", "") {
				if strings.Contains(f.Says, "no text that was read") || strings.Contains(f.Says, "not low-voltage work") {
					found = append(found, f)
				}
			}
			if c.says == "" {
				if len(found) > 0 {
					t.Errorf("%+v", found)
				}
				return
			}
			if len(found) != 1 || found[0].State != checks.Ask || found[0].Weight != c.weight || !strings.Contains(found[0].Says, c.says) || !strings.HasSuffix(found[0].Asks, "?") {
				t.Fatalf("%+v", found)
			}
			if c.weight != checks.Stop {
				return
			}
			if !strings.Contains(found[0].Do, "licensed electrician") || !strings.Contains(found[0].Do, "authority having jurisdiction") {
				t.Error(found[0].Do)
			}
			for _, f := range list {
				if (f.Check == "supply-margin" || f.Check == "chain-volts") && (f.State == checks.Met || f.State == checks.Thin || strings.Contains(f.Do, "Fit a supply") || strings.Contains(f.Says, "power is limited")) {
					t.Errorf("reads as harmless: %+v", f)
				}
			}
		})
	}
}

// The stop of the supply is one that a licensed electrician settles, not the
// owner.
func TestSupplyReachSettled(t *testing.T) {
	stops := func(more string) (count int) {
		for _, f := range pick(checks.Run(drivenPlan(t, volts("120 V"), change{"[control]\n", more + "[control]\n"})), "supply-margin", "") {
			if f.Weight == checks.Stop {
				count++
			}
		}
		return count
	}
	if stops("") != 1 || stops("[[confirmed]]\nfigure = \"supply-margin\"\nvalue = \"wired as a power circuit\"\nby = \"licensed electrician, note of 2026-03-01\"\n") != 0 {
		t.Error("the stop stands or falls wrongly")
	}
}

// A supply above low voltage asks even where no device has to be fed; one of
// low voltage says nothing there.
func TestSupplyReachNothingFed(t *testing.T) {
	for text, want := range map[string]int{"24 V": 0, "230 V": 1} {
		list := pick(checks.Run(planOf(t, change{"[shop]\n", "[control]\nsupply = \"" + text + "\"\n[shop]\n"})), "supply-margin", "")
		if len(list) != want {
			t.Errorf("%s: %+v", text, list)
		}
	}
}

// Devices that ask for all of the supply's volts: no change of the chain is
// advised.
func TestMendAboveSupply(t *testing.T) {
	for lowest, want := range map[string]bool{"30 V": true, "24 V": true, "23.9 V": false} {
		f := only(t, checks.Run(drivenPlan(t, change{`lowest = "18 V"`, `lowest = "` + lowest + `"`})), "chain-volts", "Chain")
		if f.State != checks.NotMet || strings.Contains(f.Do, "no cable, feed point or split mends that") != want || strings.Contains(f.Do, "Split the chain") {
			t.Errorf("%s: %v %s", lowest, f.State, f.Do)
		}
	}
}

// What mends the volts is not said to be all where the supply falls short too.
func TestMendSupplyToo(t *testing.T) {
	for power, want := range map[string]bool{"20 W": true, "96 W": false} {
		f := only(t, checks.Run(drivenPlan(t, change{chainCable, `cable = "26 AWG"`}, change{supplyPower, "supply_power = \"" + power + "\"\n"})), "chain-volts", "Chain")
		if !strings.Contains(f.Do, "Use 24 AWG all along.") || strings.HasSuffix(f.Do, "The supply gives too little current as well: mend that too.") != want {
			t.Errorf("%s: %s", power, f.Do)
		}
	}
}

// A chain that nothing stands on is said; one with devices is not.
func TestEmptyChain(t *testing.T) {
	list := pick(checks.Run(drivenPlan(t, change{"[[chain]]\n", "[[chain]]\nname = \"Bare\"\ncable = \"18 AWG\"\nstops = []\n[[chain]]\n"})), "chain-devices", "")
	if len(list) != 1 || list[0].About != "Bare" || list[0].State != checks.NotGiven || list[0].At.Line == 0 {
		t.Errorf("%+v", list)
	}
	if f := only(t, checks.Run(drivenPlan(t)), "chain-devices", ""); f.State != checks.Met {
		t.Errorf("%+v", f)
	}
}
