package chain

import (
	"math"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Everything given: every device holds, at volts worked out by hand.
func TestHolds(t *testing.T) {
	_, r := row(t)
	a := r.Chains[0]
	if a.Verdict != Holds || len(a.Missing)+len(a.Assumed)+len(a.Mends) > 0 || a.NoSolution || !a.Exact || a.Guessed {
		t.Fatalf("%v, %v, %v, %+v", a.Verdict, a.Missing, a.Assumed, a.Mends)
	}
	// Movers Two and Three: 2 × 1 A, 20 mA + 10 mA + 30 mA at rest; each run
	// of 3 m has 0.12569 ohm of copper and 0.04 ohm of contacts.
	const r1 = 2*3*0.0209480 + 0.04
	last := 24 - r1*(2.06+2.03+2.01+2+1)
	if n := a.Nodes[a.Worst]; n.Device.Name != "Three" || !near(float64(n.Volts), last, 1e-4) || names(n.Movers) != "Two, Three" || !n.Own || n.Need != 20 || !near(float64(n.Margin), last-20, 1e-4) {
		t.Errorf("worst: %s at %v V by %s, want %v", n.Device.Name, n.Volts, names(n.Movers), last)
	}
	if n := a.Nodes[0]; n.Own || n.Need != 18 || n.Device.Name != "Gauge" || n.Verdict != Holds {
		t.Errorf("%s needs %v V, its own %v", n.Device.Name, n.Need, n.Own)
	}
	for _, n := range a.Nodes {
		if !n.Solved || n.AtRest <= n.Volts || math.IsNaN(float64(n.Volts)) || n.Share <= 0 || a.Loss() != MuchLoss {
			t.Errorf("%s: %+v, loss %v", n.Device.Name, n, a.Loss())
		}
	}
	if f := a.Fuse; f.Least != a.Most || !near(float64(f.Least), 2.06, 1e-9) || f.Most != 7 || f.Heat || f.Bound != ByVolts {
		t.Errorf("fuse %+v", f)
	}
	if got := r.Of(a.Chain); got != a || r.Of(nil) != nil || len(r.NoSolution()) > 0 {
		t.Error("the answer of a chain is another")
	}
}

// Both sides of every verdict, and what is missing.
func TestVerdicts(t *testing.T) {
	three := gateOf("Three", "6 ft")
	for _, c := range []struct {
		what    string
		changes []string
		want    Verdict
		missing string
		assumed int
	}{
		{"the lowest volts fits with a margin just wide", []string{three, strings.Replace(three, "20 V", "21.29 V", 1)}, Holds, "", 0},
		{"the margin is just too narrow", []string{three, strings.Replace(three, "20 V", "21.3 V", 1)}, Thin, "", 0},
		{"no margin is left", []string{three, strings.Replace(three, "20 V", "22.492 V", 1)}, Thin, "", 0},
		{"short by a hundredth", []string{three, strings.Replace(three, "20 V", "22.5 V", 1)}, Short, "", 0},
		{"no supply", []string{"supply = \"24 V\"\n", ""}, Unknown, "control.supply", 0},
		{"no lowest of a sensor and a trigger", []string{"lowest = \"18 V\"\n", ""}, Unknown, "gate.lowest Gauge; gate.lowest Switch", 0},
		{"a stall assumed, held all the same", []string{"cable = \"18 AWG\"", "cable = \"10 AWG\"", three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Thin, "", 1},
		{"a stall assumed, too much by it", []string{three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Unknown, "gate.stall Three", 1},
		{"a stall assumed, short whatever it is", []string{"cable = \"18 AWG\"", "cable = \"26 AWG\"", three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Short, "gate.stall Three", 1}, // the others wait for it
		{"holding assumed", []string{three, strings.Replace(three, "holding = \"20 mA\"\n", "", 1)}, Thin, "", 1},
		{"a switch's current assumed", []string{"draws = \"10 mA\"\n", ""}, Thin, "", 1},
		{"a gauge's current assumed", []string{"draws = \"30 mA\"\n", ""}, Thin, "", 1},
		{"how many move is assumed", []string{"moves_together = 2\n", ""}, Thin, "", 0},
		{"no generic row for such volts", []string{"supply = \"24 V\"", "supply = \"72 V\"", three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Unknown, "gate.stall Three", 0},
	} {
		_, r := row(t, c.changes...)
		a := r.Chains[0]
		if a.Verdict != c.want || gaps(a.Missing) != c.missing || len(a.Assumed) != c.assumed {
			t.Errorf("%s: %v, missing %q, %d assumed; want %v, %q, %d", c.what, a.Verdict, gaps(a.Missing), len(a.Assumed), c.want, c.missing, c.assumed)
		}
		for _, n := range a.Nodes {
			if math.IsNaN(float64(n.Volts)) || math.IsNaN(n.Share) || math.IsNaN(float64(n.Margin)) {
				t.Errorf("%s: %+v", c.what, n)
			}
		}
	}
}

// One gate alone on the chain needs no word on how many move together.
func TestGuessedOnlyWhereItMatters(t *testing.T) {
	one := "stops = [\n  { device = \"Gauge\", cable = \"3 m\" },\n  { device = \"One\", cable = \"3 m\" },\n  { device = \"Switch\", cable = \"3 m\" },\n  { device = \"Two\", cable = \"3 m\" },\n  { device = \"Three\", cable = \"3 m\" },\n]"
	_, r := row(t, "moves_together = 2\n", "", one, `stops = [{ device = "Three", cable = "3 m" }]`)
	if a := r.Chains[0]; a.Guessed || a.Verdict != Holds {
		t.Errorf("guessed %v, %v", a.Guessed, a.Verdict)
	}
	if names(r.Loose) != "One, Two, Switch, Gauge" || !r.Supply.Guessed {
		t.Errorf("loose: %s; supply guessed %v", names(r.Loose), r.Supply.Guessed)
	}
}

// The generic rows by the volts of the supply.
func TestStallRows(t *testing.T) {
	for volts, want := range map[string]unit.Current{"5 V": 3, "6 V": 3, "8 V": 3, "8.1 V": 10, "12 V": 10, "16 V": 10, "24 V": 5, "60 V": 5, "61 V": 0} {
		got, found := stallAt(shop.Field[unit.Voltage]{V: unit.Must[unit.Voltage](volts), How: shop.Stated})
		if found != (want > 0) || found && unit.Current(got.Number("value")) != want {
			t.Errorf("%s: %v, want %v", volts, got, want)
		}
	}
	if _, found := stallAt(shop.Field[unit.Voltage]{}); found {
		t.Error("a row for no volts")
	}
}

// servo is the account of a gate's servo that twitched on a long lead: 2.5 A
// stalled, a supply of 6 V and 2.5 A. That it works down to 4.8 V is assumed.
func servo(t *testing.T, gauge, feet string) *Reckoning {
	three := gateOf("Three", "6 ft")
	held := strings.NewReplacer(`stall = "1 A"`, `stall = "2.5 A"`, `lowest = "20 V"`, `lowest = "4.8 V"`).Replace(three)
	chain := "cable = \"18 AWG\"\ntemperature = \"20 C\"\nstops = [\n  { device = \"Gauge\", cable = \"3 m\" },\n  { device = \"One\", cable = \"3 m\" },\n  { device = \"Switch\", cable = \"3 m\" },\n  { device = \"Two\", cable = \"3 m\" },\n  { device = \"Three\", cable = \"3 m\" },\n]"
	_, r := row(t, three, held, `supply = "24 V"`, `supply = "6 V"`, `supply_power = "96 W"`, `supply_power = "15 W"`, `draws = "10 mA"`, `draws = "0 A"`, `draws = "30 mA"`, `draws = "0 A"`,
		`"One", "Two", "Three"`, `"Three"`, gateOf("One", "2 ft"), strings.Replace(gateOf("One", "2 ft"), "powered", "hand", 1), gateOf("Two", "4 ft"), strings.Replace(gateOf("Two", "4 ft"), "powered", "hand", 1),
		chain, "cable = \""+gauge+" AWG\"\ntemperature = \"20 C\"\nstops = [{ device = \"Three\", cable = \""+feet+" ft\" }]")
	return r
}

// A published account: a lead of 15 ft, 24 AWG leaves about 4 V and 20 AWG
// 5.24 V; the others were worked out beforehand, copper alone.
func TestServoLead(t *testing.T) {
	for _, c := range []struct {
		gauge, feet string
		volts       float64
		want        Verdict
		loss        Loss
	}{
		{"24", "15", 4.07, Short, GreatLoss},
		{"22", "15", 4.79, Short, GreatLoss},
		{"20", "15", 5.24, Holds, MuchLoss},
		{"18", "15", 5.52, Holds, MuchLoss},
		{"24", "6", 5.23, Holds, MuchLoss},
	} {
		r := servo(t, c.gauge, c.feet)
		a := r.Chains[0]
		n := a.Nodes[0]
		copper := float64(n.Volts) + 2.5*float64(Contacts())
		if !near(copper, c.volts, 0.0051) || a.Verdict != c.want || a.Loss() != c.loss {
			t.Errorf("%s AWG, %s ft: %.3f V of copper alone, %v, %v; want %v, %v, %v", c.gauge, c.feet, copper, a.Verdict, a.Loss(), c.volts, c.want, c.loss)
		}
		// The supply gives just what the servo takes stalled, and no more.
		if r.Supply.Verdict != Thin || !near(float64(r.Supply.Has), 2.5, 1e-9) {
			t.Errorf("supply: %v with %v A", r.Supply.Verdict, r.Supply.Has)
		}
	}
	mends := servo(t, "24", "15").Chains[0].Mends
	if len(mends) != 2 || mends[0].Conductor != "20 AWG" || mends[1].Feed == nil || !mends[1].Last {
		t.Errorf("mends %+v", mends)
	}
}

// A converter at a gate: more power than the cable carries has no solution.
func TestConverter(t *testing.T) {
	three := gateOf("Three", "6 ft")
	watts := func(w string) *Answer {
		_, r := row(t, three, strings.Replace(three, "holding", "takes = \""+w+"\"\nholding", 1))
		return r.Chains[0]
	}
	fine := watts("24 W")
	amps := 24 / float64(fine.Nodes[4].Volts)
	const r1 = 2*3*0.0209480 + 0.04
	if want := 24 - r1*(5*amps+4*1+0.03+3*0.01+2*0.02); fine.Verdict != Holds || !near(float64(fine.Nodes[4].Volts), want, 2e-3) || !fine.Exact {
		t.Errorf("24 W: %v, %v V, want %v", fine.Verdict, fine.Nodes[4].Volts, want)
	}
	much := watts("400 W")
	if much.Verdict != Short || !much.NoSolution || much.Asks != 400 || !(much.Limit > 0 && much.Limit < 400) || much.Nodes[4].Solved {
		t.Errorf("400 W: %v, no solution %v, limit %v of %v", much.Verdict, much.NoSolution, much.Limit, much.Asks)
	}
	// One gate's limit is near Vs² / 4R.
	if rough := 24 * 24 / (4 * 5 * r1); math.Abs(float64(much.Limit)/rough-1) > 0.05 {
		t.Errorf("limit %v, near %v", much.Limit, rough)
	}
	_, r := row(t, three, strings.Replace(three, "holding", "takes = \"400 W\"\nholding", 1))
	if list := r.NoSolution(); len(list) != 1 || list[0].Chain.Name != "Row" {
		t.Errorf("%v", list)
	}
}

// A gate that moves by hand takes nothing and is not judged.
func TestByHand(t *testing.T) {
	_, r := row(t, gateOf("Three", "6 ft"), strings.Replace(gateOf("Three", "6 ft"), "powered", "hand", 1), `"One", "Two", "Three"`, `"One", "Two"`)
	a := r.Chains[0]
	if n := a.Nodes[4]; n.Judged || a.Worst == 4 || a.Nodes[3].Volts != n.Volts || names(a.Nodes[4].Movers) != "One, Two" {
		t.Errorf("%+v", n)
	}
	if a.Verdict != Holds {
		t.Error(a.Verdict)
	}
}

// A device on a chain twice takes its current at both places, and is a fact.
func TestTwice(t *testing.T) {
	_, r := row(t, `{ device = "Two", cable`, `{ device = "One", cable`)
	if names(r.Twice) != "One" || names(r.Loose) != "Two" {
		t.Errorf("twice %s, loose %s", names(r.Twice), names(r.Loose))
	}
	_, r = row(t)
	if len(r.Twice)+len(r.Loose) > 0 {
		t.Errorf("twice %s, loose %s", names(r.Twice), names(r.Loose))
	}
}

// Runs of no length still have their contacts.
func TestNoLength(t *testing.T) {
	_, r := row(t, "{ device = \"Gauge\", cable = \"3 m\" }", "{ device = \"Gauge\", cable = \"0 m\" }")
	if n := r.Chains[0].Nodes[0]; n.Run != 0 || n.Loop != Contacts() || !near(float64(n.Volts), 24-2.06*0.04, 1e-9) {
		t.Errorf("%+v", n)
	}
}

// A shop without anything to feed has no supply to reckon.
func TestNothingToFeed(t *testing.T) {
	if r := Reckon(&shop.Shop{}, emptyControl()); r.Supply != nil || len(r.Chains) > 0 {
		t.Errorf("%+v", r)
	}
}

// Two converters, one at a time: the limit is that of the one that lacks most.
func TestLimitOfTheWorst(t *testing.T) {
	one, three := gateOf("One", "2 ft"), gateOf("Three", "6 ft")
	takes := func(gate, watts string) string {
		return strings.Replace(gate, "holding", "takes = \""+watts+"\"\nholding", 1)
	}
	_, r := row(t, "moves_together = 2", "moves_together = 1", one, takes(one, "400 W"), three, takes(three, "300 W"))
	if a := r.Chains[0]; !a.NoSolution || a.Asks != 300 || !(a.Limit < 180) {
		t.Errorf("no solution %v, %v of %v", a.NoSolution, a.Limit, a.Asks)
	}
}

// What a gate draws while it moves is no more than what it draws stalled: it
// counts for certain, and what is assumed is no less.
func TestMovingCounts(t *testing.T) {
	three := gateOf("Three", "6 ft")
	moving := func(amps string) []string {
		return []string{three, strings.NewReplacer("stall = \"1 A\"\n", "", `moving = "0.5 A"`, `moving = "`+amps+`"`).Replace(three)}
	}
	_, r := row(t, moving("6 A")...)
	if a := r.Chains[0]; len(a.Assumed) != 1 || a.Assumed[0].Current != 6 || a.Verdict != Short {
		t.Errorf("%v, %+v", a.Verdict, a.Assumed)
	}
	_, r = row(t, moving("1 A")...)
	if a := r.Chains[0]; a.Assumed[0].Current != 5 || a.Verdict != Unknown {
		t.Errorf("%v, %+v", a.Verdict, a.Assumed)
	}
}
