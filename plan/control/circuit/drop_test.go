package circuit

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// A published example: 16 AWG of 4.99 ohm a thousand feet, 100 ft, 4 A at 24 V
// lose 4.0 V, 16.7 % with the rounded volts, too much. The others are own arithmetic with the same
// formula.
func TestLost(t *testing.T) {
	for _, c := range []struct {
		name, amps, volts string
		phase             int
		wire, oneWay      string
		want, share       float64
		tooMuch, poorly   bool
	}{
		{"published", "4 A", "24 V", 1, "16 AWG", "100 ft", 4.0, 0.1663, true, true},
		{"3 hp, 230 V", "17 A", "230 V", 1, "12 AWG", "100 ft", 6.73, 0.0293, false, true},
		{"5 hp, 230 V", "28 A", "230 V", 1, "10 AWG", "60 ft", 4.17, 0.0181, false, false},
		{"three-phase", "28 A", "230 V", 3, "10 AWG", "60 ft", 3.61, 0.0157, false, false},
		{"just over", "17 A", "230 V", 1, "12 AWG", "103 ft", 6.93, 0.0301, true, true},
		{"starts just well", "17 A", "230 V", 1, "12 AWG", "85 ft", 5.72, 0.0249, false, false},
		{"starts just poorly", "17 A", "230 V", 1, "12 AWG", "86 ft", 5.79, 0.0252, false, true},
	} {
		d, ok := Lost(amps(c.amps), volts(c.volts), c.phase, wire(c.wire), unit.Must[unit.Length](c.oneWay))
		if !ok || math.Abs(float64(d.Volts)-c.want) > 0.01 || math.Abs(d.Share-c.share) > 0.0007 || d.TooMuch() != c.tooMuch || d.StartsPoorly() != c.poorly {
			t.Errorf("%s: %+v %v, want %v V, %v", c.name, d, ok, c.want, c.share)
		}
	}
	for _, size := range []string{"18 AWG", "1/0 AWG", "4 mm2"} {
		if d, ok := Lost(amps("4 A"), volts("24 V"), 1, wire(size), thousandFeet); ok {
			t.Errorf("%s: %+v", size, d)
		}
	}
}

// Without a length, a wire of the table or a motor there is no drop.
func TestDropOfACircuit(t *testing.T) {
	long := unit.Must[unit.Length]("100 ft")
	for name, c := range map[string]struct {
		fed   fed
		given bool
		want  bool
	}{
		"all":    {fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "75 C", ""}, true, true},
		"length": {fed{"3 hp", "230 V", 1, "", "20 A", "12 AWG", "75 C", ""}, false, false},
		"wire":   {fed{"3 hp", "230 V", 1, "", "20 A", "", "75 C", ""}, true, false},
		"motor":  {fed{"", "", 0, "", "20 A", "12 AWG", "75 C", ""}, true, false},
	} {
		o := c.fed.reckon()
		if c.given {
			o.Circuit.Length = given(long)
		}
		if o.drop(); o.DropKnown != c.want {
			t.Errorf("%s: %+v", name, o.Drop)
		}
	}
}
