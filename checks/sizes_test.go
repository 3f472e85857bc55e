package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// open leaves the size of the saw's drop to be chosen.
var open = change{"bonded = \"4 ohm\"\nsize = \"5 in\"\nmaterial = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[10, 5, 2]", "bonded = \"4 ohm\"\nsize = \"choose\"\nmaterial = \"spiral steel\"\ngauge = \"24 ga\"\nroute = [[10, 5, 2]"}

const chooseThem = "Run dustbook size --choose and write the sizes into the shop file."

// Where a size is still to be chosen the findings say so, once to mend and
// plainly, and say nothing of a curve. With the size written in they do not.
func TestSizesStillToBeChosen(t *testing.T) {
	list := checks.Run(planOf(t, open))
	f := only(t, list, "fan-on-curve", "Cyclone")
	if f.State != checks.NotGiven || f.Weight != checks.Mend || !f.Sizes || f.Do != chooseThem || !strings.Contains(f.Says, "still to be chosen") || !strings.Contains(f.Says, "Saw drop") || strings.Contains(f.Says, "Lathe drop") {
		t.Errorf("%+v", f)
	}
	for _, machine := range []string{"Saw", "Lathe"} {
		if f := only(t, list, "air-captured", machine); f.State != checks.NotGiven || f.Weight != checks.Know || !f.Sizes || f.Do != chooseThem || !strings.Contains(f.Says, "sizes are still to be chosen") {
			t.Errorf("%+v", f)
		}
	}
	for _, f := range list {
		if f.Check != "fan-on-curve" && f.Check != "air-captured" && f.Sizes && f.Check != "make-up-air" {
			t.Errorf("%s waits for sizes", f.Check)
		}
		if strings.Contains(f.Says, "leaves its curve") || strings.Contains(f.Do, "more of the curve") || strings.Contains(f.Says, " 0 cfm") {
			t.Errorf("%s, %s: %s %s", f.Check, f.About, f.Says, f.Do)
		}
	}
	for _, f := range checks.Run(planOf(t)) {
		if f.Sizes || strings.Contains(f.Says+f.Do, "chosen") || strings.Contains(f.Do, "--choose") {
			t.Errorf("with every size: %+v", f)
		}
	}
}

// A filter whose pressure is not given is asked for in the same breath.
func TestSizesAndFilter(t *testing.T) {
	noFilter := change{"filter = { clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"outside\"", "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}
	f := only(t, checks.Run(planOf(t, open, noFilter)), "fan-on-curve", "Cyclone")
	if !strings.Contains(f.Do, "Add filter") || !strings.HasSuffix(f.Do, chooseThem) {
		t.Errorf("%+v", f)
	}
	if f := only(t, checks.Run(planOf(t, noFilter)), "fan-on-curve", "Cyclone"); f.Sizes || strings.Contains(f.Do, "--choose") {
		t.Errorf("%+v", f)
	}
}

// A flue is a stop whatever the sizes are, and no flow of nought stands there.
func TestFlueWithoutSizes(t *testing.T) {
	gas := change{`kind = "electric"`, `kind = "open-flue gas"`}
	f := only(t, checks.Run(planOf(t, open, gas)), "open-flue", "Cyclone")
	if f.Weight != checks.Stop || len(f.Figures) != 0 || !strings.Contains(f.Says, "how much is not known yet") || !strings.Contains(f.Asks, "how much is not known yet") || strings.Contains(f.Says+f.Asks, "cfm") {
		t.Errorf("%+v", f)
	}
	if f := only(t, checks.Run(planOf(t, gas)), "open-flue", "Cyclone"); len(f.Figures) != 1 || f.Figures[0].Value <= 0 || !strings.Contains(f.Says, "cfm") || strings.Contains(f.Says, "not known yet") {
		t.Errorf("with every size: %+v", f)
	}
}

// The air of a room that waits for sizes says what to do about it; one that
// waits for a field asks for that.
func TestMakeUpWithoutSizes(t *testing.T) {
	f := only(t, checks.Run(planOf(t, open)), "make-up-air", "Hall")
	if !f.Sizes || f.Do != chooseThem || !strings.Contains(f.Says, "Cyclone: ") {
		t.Errorf("%+v", f)
	}
	f = only(t, checks.Run(planOf(t, change{"exhaust = \"outside\"\n", ""})), "make-up-air", "Hall")
	if f.Sizes || f.Do != "Add what is named to the shop file." {
		t.Errorf("with every size: %+v", f)
	}
}

// An acceptance whose finding is gone while a size is to be chosen is left
// alone; it is a fault of the file with every size, and where it names what the
// shop does not have, an unknown check or a stop.
func TestAcceptedWhileSizesAreOpen(t *testing.T) {
	for _, c := range []struct {
		check, about string
		without      bool // a fault while a size is open
		changes      []change
	}{
		{"dust-carried", "Saw", false, nil},
		{"duct-collapse", "Saw drop", false, nil},
		{"dust-carried", "Sew", true, nil},
		{"dust-carreid", "Saw", true, nil},
		{"open-flue", "Cyclone", true, []change{{`kind = "electric"`, `kind = "open-flue gas"`}}},
	} {
		p := planOf(t, append(c.changes, open, accepted(c.check, c.about, ""))...)
		if problems := checks.Problems(p); (len(problems) > 0) != c.without {
			t.Errorf("%s about %s: %v", c.check, c.about, problems)
		}
	}
	if problems := checks.Problems(planOf(t, accepted("metal-on-wood-main", "Saw", ""))); len(problems) != 1 {
		t.Errorf("with every size: %v", problems)
	}
	if problems := checks.Problems(planOf(t, accepted("dust-carried", "Saw", ""))); len(problems) != 0 {
		t.Errorf("with every size and its finding: %v", problems)
	}
}

// An open bag is held against all that the curve moves while no use is known,
// never against nought.
func TestOpenBagWithoutSizes(t *testing.T) {
	bag := change{`enclosure = "rigid housing"`, `enclosure = "open bag"`}
	for _, sized := range []bool{true, false} {
		changes := []change{bag}
		if !sized {
			changes = append(changes, open)
		}
		p, seen := planOf(t, changes...), 0
		for _, figure := range only(t, checks.Run(p), "open-bag-indoors", "Cyclone").Figures {
			if figure.Unit != "m3/s" {
				continue
			}
			seen++
			curve := p.Shop.Collectors[0].Curve
			if most := float64(curve[len(curve)-1].Flow); figure.Value <= 0 || !sized && figure.Value != most || sized && figure.Value >= most {
				t.Errorf("sized %v: %+v, curve to %g", sized, figure, most)
			}
		}
		if seen != 1 {
			t.Errorf("sized %v: %d figures of flow", sized, seen)
		}
	}
}
