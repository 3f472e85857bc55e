package circuit

import (
	"testing"

	"dustbook/plan/unit"
)

// Worked examples of motor circuits as public pages print them: electricians'
// forums, a trade journal's answers, a training site. E3 chooses 12 AWG, which
// is the least on terminals of 60 °C; its breaker and that of E4 are our own
// arithmetic.
func TestPublishedCircuits(t *testing.T) {
	for _, c := range []struct {
		name, power, volts     string
		phase                  int
		on                     Terminals
		table, carry           string
		least, breaker, source string
	}{
		{"E1", "5 hp", "230 V", 1, Warm, "28 A", "35 A", "10 AWG", "70 A", "a site of exercises for electricians"},
		{"E2", "7.5 hp", "230 V", 3, Cool, "22 A", "27.5 A", "10 AWG", "60 A", "an electricians' forum: 55 A, next size 60 A"},
		{"E3", "10 hp", "480 V", 3, Cool, "14 A", "17.5 A", "12 AWG", "35 A", "a training site"},
		{"E3 on terminals of 75 °C", "10 hp", "480 V", 3, Warm, "14 A", "17.5 A", "14 AWG", "35 A", "own arithmetic"},
		{"E4", "1 hp", "115 V", 1, Warm, "16 A", "20 A", "14 AWG", "40 A", "a do-it-yourself forum"},
		{"E5", "7.5 hp", "230 V", 1, Warm, "40 A", "50 A", "8 AWG", "100 A", "a public question page"},
		{"E6", "7.5 hp", "230 V", 3, Warm, "22 A", "27.5 A", "10 AWG", "60 A", "a trade journal's answer"},
		{"E7", "2 hp", "230 V", 1, Warm, "12 A", "15 A", "14 AWG", "30 A", "a trade journal's question; the answer is own arithmetic"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, why := Table(power(c.power), volts(c.volts), c.phase)
			if why != Told || f.Current != amps(c.table) {
				t.Fatalf("%v %v, want %s (%s)", f.Current, why, c.table, c.source)
			}
			if got := Conductors(f.Current); got != amps(c.carry) {
				t.Errorf("conductors %v, want %s", got, c.carry)
			}
			if w, _, ok := Least(Conductors(f.Current), c.on, 1); !ok || w != wire(c.least) {
				t.Errorf("conductor %v, want %s", w, c.least)
			}
			if b := Breaker(f.Current); !b.Known || b.Size != amps(c.breaker) {
				t.Errorf("breaker %v, want %s", b.Size, c.breaker)
			}
		})
	}
}

// A size that comes out even stands; just over it the next one counts, and
// past the last there is none.
func TestNextSize(t *testing.T) {
	for need, want := range map[string]string{"15 A": "15 A", "15.01 A": "20 A", "3 A": "15 A", "70 A": "70 A", "70.1 A": "80 A", "125.5 A": "150 A", "200 A": "200 A", "201 A": "225 A"} {
		if d := next(amps(need)); !d.Known || d.Size != amps(want) {
			t.Errorf("%s: %+v", need, d)
		}
	}
	if d := next(amps("401 A")); d.Known {
		t.Errorf("past the list: %+v", d)
	}
	if d := next(amps("200 A")); !d.Basis.Mark.Decides() {
		t.Error("a size that was read does not decide")
	}
	if d := next(amps("225 A")); d.Basis.Mark.Decides() {
		t.Error("a size from memory decides")
	}
}

// The breaker of a motor of 28 A that cannot start on the usual one, by NEC
// 430.52, and the overload by 430.32.
func TestOtherDevices(t *testing.T) {
	i := amps("28 A")
	for name, c := range map[string][2]unit.Current{
		"breaker where it will not start":     {RaisedBreaker(i), amps("112 A")}, // not rounded up
		"overload, service factor 1":          {Overload(amps("20 A"), 1), amps("23 A")},
		"overload, service factor just under": {Overload(amps("20 A"), 1.14), amps("23 A")},
		"overload, service factor 1.15":       {Overload(amps("20 A"), 1.15), amps("25 A")},
	} {
		if c[0] != c[1] {
			t.Errorf("%s: %v, want %v", name, c[0], c[1])
		}
	}
	for _, name := range []string{"service factor", "terminals up to"} {
		if BasisOf(name).Mark.Decides() {
			t.Errorf("%s is from memory and decides", name)
		}
	}
}

// Terminals choose the column, air takes from it.
func TestAmpacity(t *testing.T) {
	for _, c := range []struct {
		size string
		on   Terminals
		air  string
		want string
	}{
		{"10 AWG", Cool, "30 C", "30 A"}, {"10 AWG", Warm, "30 C", "35 A"},
		{"10 AWG", Warm, "20 C", "35 A"},   // cooler air gives no more
		{"10 AWG", Warm, "31 C", "32.9 A"}, // 0.94
		{"10 AWG", Warm, "35 C", "32.9 A"},
		{"10 AWG", Warm, "36 C", "30.8 A"},  // 0.88
		{"10 AWG", Warm, "42 C", "28.7 A"},  // 0.82
		{"10 AWG", Warm, "50 C", "26.25 A"}, // 0.75
		{"10 AWG", Cool, "35 C", "30 A"},    // the column of the terminals is still less
		{"10 AWG", Cool, "45 C", "28.7 A"},  // now the air is
		{"5 AWG", Warm, "30 C", "65 A"},     // not in the table: as 6 AWG
		{"4/0 AWG", Warm, "30 C", "230 A"},
	} {
		factor, told := Ambient(heat(c.air))
		if got, ok := Ampacity(wire(c.size), c.on, factor); !ok || !told || got.Current != amps(c.want) {
			t.Errorf("%s at %s: %v, want %s", c.size, c.air, got.Current, c.want)
		}
	}
	if factor, told := Ambient(heat("50.1 C")); told || factor != 0.75 {
		t.Errorf("hotter than the table: %v %v", factor, told)
	}
	for _, size := range []string{"16 AWG", "6 mm2", "2.08 mm2"} {
		if got, ok := Ampacity(wire(size), Warm, 1); ok {
			t.Errorf("%s: %v", size, got)
		}
	}
	if _, _, ok := Least(amps("230 A"), Warm, 1); !ok {
		t.Error("4/0 AWG does not carry what it carries")
	}
	if w, _, ok := Least(amps("230.1 A"), Warm, 1); ok {
		t.Errorf("past the table: %v", w)
	}
}

func TestTerminals(t *testing.T) {
	for _, c := range []struct {
		rated string
		on    Terminals
		ok    bool
	}{{"59 C", 0, false}, {"60 C", Cool, true}, {"74 C", Cool, true}, {"75 C", Warm, true}, {"90 C", Warm, true}} {
		if on, ok := Rated(heat(c.rated)); on != c.on || ok != c.ok {
			t.Errorf("%s: %v %v", c.rated, on, ok)
		}
	}
	if Unrated(amps("100 A")) != Cool || Unrated(amps("100.1 A")) != Warm {
		t.Error("terminals that are not marked change column at 100 A, from memory")
	}
}
