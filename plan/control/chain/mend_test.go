package chain

import (
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// What would mend a chain holds when it is done, and what is one step less
// does not.
func TestMends(t *testing.T) {
	thin := []string{`cable = "18 AWG"`, `cable = "24 AWG"`}
	_, r := row(t, thin...)
	a := r.Chains[0]
	if a.Verdict != Short {
		t.Fatal(a.Verdict)
	}
	said := map[string]bool{}
	for _, m := range a.Mends {
		switch {
		case m.Conductor != "":
			said["conductor"] = true
			_, after := row(t, `cable = "18 AWG"`, `cable = "`+m.Conductor+`"`)
			if got := after.Chains[0]; got.Verdict != Holds || !near(float64(leastMargin(got)), float64(m.Margin), 1e-9) {
				t.Errorf("%s: %v, margin %v, want %v", m.Conductor, got.Verdict, leastMargin(got), m.Margin)
			}
			if m.Conductor != "20 AWG" {
				t.Errorf("the next conductor is %s", m.Conductor)
			}
			_, before := row(t, `cable = "18 AWG"`, `cable = "22 AWG"`)
			if before.Chains[0].Verdict == Holds {
				t.Error("the size before holds already")
			}
		case m.Feed != nil:
			said["feed"] = true
			if m.Feed.Name != "Two" || m.Last {
				t.Errorf("feed at %s, last %v", m.Feed.Name, m.Last)
			}
		case m.Together > 0:
			t.Errorf("one at a time holds: %+v", m)
		}
	}
	if !said["conductor"] || !said["feed"] {
		t.Errorf("mends %+v", a.Mends)
	}
	_, one := row(t, append(thin, "moves_together = 2", "moves_together = 1")...)
	if one.Chains[0].Verdict == Holds {
		t.Error("one at a time holds, and is not said")
	}
}

// Fewer together is named where it holds, and only then.
func TestFewerTogether(t *testing.T) {
	_, r := row(t, `cable = "18 AWG"`, `cable = "21 AWG"`, "moves_together = 2", "moves_together = 3")
	a := r.Chains[0]
	fewer := 0
	for _, m := range a.Mends {
		fewer += m.Together
	}
	_, two := row(t, `cable = "18 AWG"`, `cable = "21 AWG"`)
	if a.Verdict == Holds || fewer != 2 || two.Chains[0].Verdict != Holds {
		t.Errorf("%v, mends %+v; two together: %v", a.Verdict, a.Mends, two.Chains[0].Verdict)
	}
}

// Where nothing mends a chain, nothing is named.
func TestNothingMends(t *testing.T) {
	one := gateOf("One", "2 ft")
	_, r := row(t, one, strings.Replace(one, "20 V", "23.9 V", 1))
	if a := r.Chains[0]; a.Verdict != Short || len(a.Mends) > 0 {
		t.Errorf("%v: %+v", a.Verdict, a.Mends)
	}
	_, r = row(t, "lowest = \"18 V\"\n", "", one, strings.Replace(one, "lowest = \"20 V\"\n", "", 1), gateOf("Two", "4 ft"), strings.Replace(gateOf("Two", "4 ft"), "lowest = \"20 V\"\n", "", 1),
		gateOf("Three", "6 ft"), strings.Replace(gateOf("Three", "6 ft"), "lowest = \"20 V\"\n", "", 1))
	if a := r.Chains[0]; a.Verdict != Unknown || len(a.Mends) > 0 {
		t.Errorf("with no needs: %v: %+v", a.Verdict, a.Mends)
	}
}

func leastMargin(a *Answer) unit.Voltage { return a.Nodes[a.Worst].Margin }

// Heat governs where a short run takes more than its conductor carries.
func TestHeat(t *testing.T) {
	one := gateOf("One", "2 ft")
	_, r := row(t, one, strings.Replace(one, `stall = "1 A"`, `stall = "6.5 A"`, 1))
	if f := r.Chains[0].Fuse; !f.Heat || f.Most != 7 {
		t.Errorf("%+v", f)
	}
	_, r = row(t, one, strings.NewReplacer(`stall = "1 A"`, `stall = "5 A"`).Replace(one))
	if f := r.Chains[0].Fuse; f.Heat {
		t.Errorf("%+v", f)
	}
	for _, c := range []struct {
		volts, need unit.Voltage
		want        Bound
	}{{23, 12, ByHeat}, {12.1, 12, ByVolts}} {
		a := &Answer{Supply: 24, Most: 6.9, Nodes: []Node{{Judged: true, Solved: true, Volts: c.volts, Need: c.need}}}
		if f := a.fuse(trial{area: awg("18")}, 0); f.Bound != c.want || f.Heat {
			t.Errorf("%v V of %v: %+v", c.volts, c.need, f)
		}
	}
	a := &Answer{Supply: 24, Worst: -1}
	if f := a.fuse(trial{area: awg("30")}, 0); f.Known || f.Bound != NoBound {
		t.Errorf("%+v", f)
	}
}

// The wires of a chain: from, to, what to cut and what to write on the labels.
func TestWires(t *testing.T) {
	_, r := row(t)
	list := r.Chains[0].Wires
	if len(list) != 5 {
		t.Fatalf("%d wires", len(list))
	}
	first, last := list[0], list[4]
	if first.From.Tag != "P1" || first.To.Tag != "S1" || first.Poles[0] != (Pole{"+", "P1:+ / S1:+"}) || first.Poles[1] != (Pole{"−", "P1:− / S1:−"}) {
		t.Errorf("first %+v", first)
	}
	if last.From.Tag != "G2" || last.To.Tag != "G3" || last.Number != 5 || last.Conductors != 2 || last.Size != "18 AWG" || last.Contacts != 4 {
		t.Errorf("last %+v", last)
	}
	if unit.Compare(float64(last.Cut()), 3.6) != 0 || unit.Compare(float64(last.StripLeast), 0.006) != 0 || unit.Compare(float64(last.StripMost), 0.010) != 0 {
		t.Errorf("cut %v, strip %v to %v", last.Cut(), last.StripLeast, last.StripMost)
	}
	if !last.PullKnown || last.Pull != (Force{89, "20 lbf"}) || last.PullBasis.Document != "crimp-sheets" {
		t.Errorf("pull %+v by %v", last.Pull, last.PullBasis)
	}
	seen := map[string]bool{}
	for _, w := range list {
		for _, p := range w.Poles {
			if seen[p.Label] {
				t.Errorf("the label %q stands twice", p.Label)
			}
			seen[p.Label] = true
		}
	}
}

// The order of the file decides the order of the answers, whatever runs first.
func TestSameEveryTime(t *testing.T) {
	_, first := row(t, `cable = "18 AWG"`, `cable = "24 AWG"`)
	for range 20 {
		_, again := row(t, `cable = "18 AWG"`, `cable = "24 AWG"`)
		for i, n := range again.Chains[0].Nodes {
			if n.Volts != first.Chains[0].Nodes[i].Volts || names(n.Movers) != names(first.Chains[0].Nodes[i].Movers) {
				t.Fatalf("%s: %v by %s", n.Device.Name, n.Volts, names(n.Movers))
			}
		}
	}
}

// A chain cut in parts is advised only where each device holds alone on its
// cable.
func TestSplits(t *testing.T) {
	one := gateOf("One", "2 ft")
	for lowest, want := range map[string]bool{"20 V": true, "22.4 V": true, "22.9 V": false, "23.9 V": false} {
		_, r := row(t, one, strings.Replace(one, "20 V", lowest, 1))
		if a := r.Chains[0]; a.Splits != want || len(a.Above()) > 0 {
			t.Errorf("%s: splits %v, above %v", lowest, a.Splits, a.Above())
		}
	}
	for lowest, want := range map[string]int{"23.9 V": 0, "24 V": 1, "30 V": 1} {
		_, r := row(t, one, strings.Replace(one, "20 V", lowest, 1))
		if got := r.Chains[0].Above(); len(got) != want || want == 1 && got[0].Device.Name != "One" {
			t.Errorf("%s: above %+v", lowest, got)
		}
	}
}

// No more gates move at once than the chain has; a mend is one that lets fewer
// move than do.
func TestTogetherAtMost(t *testing.T) {
	for given, want := range map[string]int{"1": 1, "3": 3, "50": 3} {
		_, r := row(t, `cable = "18 AWG"`, `cable = "21 AWG"`, "moves_together = 2", "moves_together = "+given)
		a := r.Chains[0]
		if a.Together != want {
			t.Errorf("%s: %d together", given, a.Together)
		}
		for _, m := range a.Mends {
			if m.Together >= want {
				t.Errorf("%s: %+v", given, m)
			}
		}
	}
}

// What the runs end in: one connector at the supply, two on the way, one at
// the end, a pole for each conductor.
func TestJoints(t *testing.T) {
	_, r := row(t)
	list, runs, ends := r.Chains[0].Joints, r.Chains[0].Wires, 0
	if len(list) != len(runs)+1 {
		t.Fatalf("%d joints of %d runs", len(list), len(runs))
	}
	for i, j := range list {
		want := 2
		if i == 0 || i == len(list)-1 {
			want = 1
		}
		if j.Runs != want || j.Poles != 2 {
			t.Errorf("%+v", j)
		}
		ends += j.Runs
	}
	if ends != 2*len(runs) || list[0].Device.Tag != "P1" || list[len(list)-1].Device.Tag != "G3" {
		t.Errorf("%d ends: %+v", ends, list)
	}
	if got := joints(nil); len(got) > 0 {
		t.Errorf("%+v", got)
	}
}

// A fuse as large as what the supply gives may never blow; a smaller one may.
func TestIdle(t *testing.T) {
	for power, want := range map[string]bool{"96 W": true, "168 W": true, "169 W": false} {
		_, r := row(t, `supply_power = "96 W"`, `supply_power = "`+power+`"`)
		if f := r.Chains[0].Fuse; f.Idle != want {
			t.Errorf("%s: %+v", power, f)
		}
	}
	_, r := row(t, "supply_power = \"96 W\"\n", "")
	if r.Chains[0].Fuse.Idle {
		t.Error("a power not given counts")
	}
}

// A conductor is named only where it carries what the chain may draw, even
// where a thinner one would keep the volts.
func TestMendCarries(t *testing.T) {
	one := gateOf("One", "2 ft")
	for stall, want := range map[string]string{"6.5 A": "18 AWG", "7.2 A": "16 AWG"} {
		_, r := row(t, `cable = "18 AWG"`, `cable = "24 AWG"`, one, strings.NewReplacer(`stall = "1 A"`, `stall = "`+stall+`"`, `lowest = "20 V"`, `lowest = "10 V"`).Replace(one), "moves_together = 2", "moves_together = 1")
		a, got := r.Chains[0], ""
		for _, m := range a.Mends {
			got += m.Conductor
		}
		if got != want {
			t.Errorf("%s: %q, may draw %v A", stall, got, a.Most)
		}
		_, thinner := row(t, one, strings.NewReplacer(`stall = "1 A"`, `stall = "`+stall+`"`, `lowest = "20 V"`, `lowest = "10 V"`).Replace(one), "moves_together = 2", "moves_together = 1")
		if b := thinner.Chains[0]; b.Verdict != Holds || b.Fuse.Heat != (want != "18 AWG") {
			t.Errorf("%s on 18 AWG: %v, heat %v", stall, b.Verdict, b.Fuse.Heat)
		}
	}
}
