package chain

import (
	"strings"
	"testing"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// The supply's sum: two gates stalled, one at rest, switch, gauge, controller,
// one relay, over four fifths.
func TestSupplySum(t *testing.T) {
	_, r := row(t)
	a := r.Supply
	sum := 2*1 + 0.02 + 0.01 + 0.03 + 0.25 + 0.1
	if a.Verdict != Holds || !near(float64(a.Sum), sum, 1e-9) || !near(float64(a.Asked), sum/0.8, 1e-9) || !near(float64(a.Has), 4, 1e-9) || names(a.Movers) != "One, Two" {
		t.Errorf("%v: %v A, asked %v, has %v, movers %s", a.Verdict, a.Sum, a.Asked, a.Has, names(a.Movers))
	}
	if got := float64(a.AskedPower()); !near(got, 24*sum/0.8, 1e-9) {
		t.Errorf("asked %v W", got)
	}
}

// Both sides of the supply's verdicts: asked is 3.0125 A, what flows for
// certain 2.06 A.
func TestSupplyVerdicts(t *testing.T) {
	three := gateOf("Three", "6 ft")
	for _, c := range []struct {
		what, power string
		changes     []string
		want        Verdict
		missing     string
	}{
		{"just enough", "72.3 W", nil, Holds, ""},
		{"just too little for the margin", "72.2 W", nil, Thin, ""},
		{"no more than flows for certain", "49.44 W", nil, Thin, ""},
		{"less", "49.4 W", nil, Short, ""},
		{"no power given", "", nil, Unknown, "control.supply_power"},
		{"no volts given", "96 W", []string{"supply = \"24 V\"\n", ""}, Unknown, "control.supply"},
		{"a stall assumed, enough all the same", "300 W", []string{three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Thin, ""},
		{"a stall assumed, too little by it", "96 W", []string{three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Unknown, "gate.stall Three"},
		{"a stall assumed, too little for certain", "40 W", []string{three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, Short, ""},
		{"how many move is assumed", "96 W", []string{"moves_together = 2\n", ""}, Thin, ""},
	} {
		power := "supply_power = \"" + c.power + "\"\n"
		if c.power == "" {
			power = ""
		}
		_, r := row(t, append(c.changes, "supply_power = \"96 W\"\n", power)...)
		if a := r.Supply; a.Verdict != c.want || gaps(a.Missing) != c.missing {
			t.Errorf("%s: %v, missing %q; want %v, %q", c.what, a.Verdict, gaps(a.Missing), c.want, c.missing)
		}
	}
}

// National Electrical Code, article 725, as a trade page reports it: a class 2
// supply up to 30 V is limited to 100 VA. Table 11(B) for direct current is
// from memory: 5 VA a volt up to 20 V, 8 A; at 24 V no more than 100 VA.
func TestClass2(t *testing.T) {
	for _, c := range []struct {
		volts      unit.Voltage
		reported   unit.Power
		memory     unit.Power
		memoryAmps unit.Current
	}{
		{5, 100, 25, 8}, {12, 100, 60, 8}, {20, 100, 100, 8}, {24, 100, 100, 8}, {30, 100, 100, 8}, {30.1, 0, 100, 150.0 / 30.1}, {48, 0, 100, 150.0 / 48}, {60, 0, 100, 2.5}, {61, 0, 0, 0},
	} {
		var reported, memory Limit
		for _, l := range LimitsAt(c.volts) {
			into := &memory
			if l.Basis.Mark == source.Reported {
				into = &reported
			}
			into.Power, into.Amps = into.Power+l.Power, into.Amps+l.Amps
		}
		if reported.Power != c.reported || memory.Power != c.memory || !near(float64(memory.Amps), float64(c.memoryAmps), 1e-9) {
			t.Errorf("%v V: %v W reported, %v W and %v A from memory; want %+v", c.volts, reported.Power, memory.Power, memory.Amps, c)
		}
	}
	// At 24 V a supply of 100 VA gives 4.17 A; four fifths of it 3.33 A.
	if amps := 100 / 24.0; !near(amps, 4.17, 0.005) || !near(figures.share*amps, 3.33, 0.005) {
		t.Error(amps)
	}
}

func TestListed(t *testing.T) {
	const listed, power = "supply_listed = \"class 2\"\n", "supply_power = \"96 W\"\n"
	for _, c := range []struct {
		what    string
		changes []string
		want    Listed
		serves  bool
	}{
		{"class 2 within", nil, ListedWithin, true},
		{"at the limit", []string{power, "supply_power = \"100 W\"\n"}, ListedWithin, true},
		{"beyond", []string{power, "supply_power = \"101 W\"\n"}, ListedBeyond, true},
		{"beyond a figure from memory", []string{"supply = \"24 V\"", "supply = \"12 V\"", power, "supply_power = \"90 W\"\n"}, ListedDoubted, true},
		{"none", []string{listed, "supply_listed = \"none\"\n"}, NotListed, true},
		{"unknown", []string{listed, "supply_listed = \"unknown\"\n"}, ListingAsked, true},
		{"not given", []string{listed, ""}, ListingAsked, true},
		{"power not given", []string{power, ""}, ListedWithin, true},
		{"more asked than one gives", []string{gateOf("One", "2 ft"), strings.Replace(gateOf("One", "2 ft"), `stall = "1 A"`, `stall = "4 A"`, 1)}, ListedWithin, false},
	} {
		_, r := row(t, c.changes...)
		if got := r.Supply.Limited; got.Listed != c.want || got.OneServes != c.serves {
			t.Errorf("%s: %v, one serves %v", c.what, got.Listed, got.OneServes)
		}
	}
	_, r := row(t, "supply = \"24 V\"", "supply = \"12 V\"")
	if got := r.Supply.Limited.Tight; got.Power != 60 || got.Basis.Mark != source.Memory {
		t.Errorf("the tight limit at 12 V is %+v", got)
	}
}

// Without volts or a current there is no sum.
func TestSummed(t *testing.T) {
	three := gateOf("Three", "6 ft")
	for _, c := range []struct {
		changes []string
		want    bool
	}{
		{nil, true},
		{[]string{three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, true},
		{[]string{"supply = \"24 V\"\n", ""}, false},
		{[]string{"supply = \"24 V\"", "supply = \"72 V\"", three, strings.Replace(three, "stall = \"1 A\"\n", "", 1)}, false},
	} {
		if _, r := row(t, c.changes...); r.Supply.Summed != c.want {
			t.Errorf("%q: summed %v", c.changes, r.Supply.Summed)
		}
	}
}

// A gate that draws less stalled than at rest is no mover that adds.
func TestSupplyMovers(t *testing.T) {
	one := gateOf("One", "2 ft")
	_, r := row(t, "moves_together = 2", "moves_together = 3", one, strings.Replace(one, `holding = "20 mA"`, `holding = "1.5 A"`, 1))
	if a := r.Supply; names(a.Movers) != "Two, Three" || !near(float64(a.Moving), 2*0.98, 1e-9) || !near(float64(a.Rest), 1.5+2*0.02+0.04, 1e-9) {
		t.Errorf("%s add %v to %v", names(a.Movers), a.Moving, a.Rest)
	}
}

// A converter draws by the volts that reach it.
func TestSupplyConverter(t *testing.T) {
	three := gateOf("Three", "6 ft")
	_, r := row(t, "moves_together = 2", "moves_together = 1", three, strings.Replace(three, "holding", "takes = \"36 W\"\nholding", 1))
	volts := r.Chains[0].Nodes[4].Volts
	if a := r.Supply; names(a.Movers) != "Three" || !near(float64(a.Moving), 36/float64(volts)-0.02, 1e-9) || volts > 23 {
		t.Errorf("%s add %v A at %v V", names(a.Movers), a.Moving, volts)
	}
}
