package unit

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// anyScale is a scale of any quantity, for tests over all of them.
type anyScale struct {
	name   string
	kind   Kind
	unit   func(System) string
	figure func(System, float64) string
	print  func(System, float64) string
	pair   func(System, float64, float64) (string, string)
	in     func(System, float64) float64
}

func scaleOf[Q Measure](name string, s Scale[Q]) anyScale {
	return anyScale{
		name, Q(0).Kind(), s.Unit,
		func(sys System, x float64) string { return s.Figure(sys, Q(x)) },
		func(sys System, x float64) string { return s.Print(sys, Q(x)) },
		func(sys System, x, y float64) (string, string) { return s.Pair(sys, Q(x), Q(y)) },
		func(sys System, x float64) float64 { return s.In(sys, Q(x)) },
	}
}

var allScales = []anyScale{
	scaleOf("Size", Size), scaleOf("Run", Run), scaleOf("Thin", Thin), scaleOf("Depth", Depth), scaleOf("Floor", Floor),
	scaleOf("Bin", Bin), scaleOf("Room", Room), scaleOf("Air", Air), scaleOf("Speed", Speed), scaleOf("Feed", Feed),
	scaleOf("Press", Press), scaleOf("Weight", Weight), scaleOf("Trace", Trace), scaleOf("Grain", Grain), scaleOf("Viscous", Viscous), scaleOf("Heat", Heat),
	scaleOf("Shaft", Shaft), scaleOf("Amps", Amps), scaleOf("Volts", Volts), scaleOf("Ohms", Ohms),
	scaleOf("Seconds", Seconds), scaleOf("Minutes", Minutes), scaleOf("Hours", Hours),
	scaleOf("Degrees", Degrees), scaleOf("Loud", Loud), scaleOf("Wheel", Wheel), scaleOf("Conductor", Conductor),
}

var systems = []System{US, Metric}

func TestScales(t *testing.T) {
	for _, c := range []struct {
		scale      anyScale
		text       string
		us, metric string
	}{
		{scaleOf("", Size), "4 in", "4 in", "101.6 mm"},
		{scaleOf("", Size), "4.5 in", "4.5 in", "114.3 mm"},
		{scaleOf("", Size), "1-1/2 in", "1.5 in", "38.1 mm"},
		{scaleOf("", Size), "1/16 in", "0.06 in", "1.6 mm"},
		{scaleOf("", Size), "100 mm", "3.94 in", "100 mm"},
		{scaleOf("", Run), "12' 6\"", "12.5 ft", "3.81 m"},
		{scaleOf("", Run), "40 ft", "40 ft", "12.19 m"},
		{scaleOf("", Run), "3 m", "9.8 ft", "3 m"},
		{scaleOf("", Thin), "0.15 mm", "0.15 mm", "0.15 mm"},
		{scaleOf("", Thin), "0.0015 mm", "0.0015 mm", "0.0015 mm"},
		{scaleOf("", Depth), "1/16 in", "0.0625 in", "1.59 mm"},
		{scaleOf("", Depth), "1.5 mm", "0.0591 in", "1.5 mm"},
		{scaleOf("", Feed), "20 ft/min", "20 ft/min", "6.1 m/min"},
		{scaleOf("", Feed), "6 m/min", "19.7 ft/min", "6 m/min"},
		{scaleOf("", Floor), "260 sq ft", "260 sq ft", "24.15 m²"},
		{scaleOf("", Bin), "55 gal", "55 gal", "208 L"},
		{scaleOf("", Room), "12320 cu ft", "12320 cu ft", "348.9 m³"},
		{scaleOf("", Air), "350 cfm", "350 cfm", "595 m³/h"},
		{scaleOf("", Air), "1037.2 cfm", "1040 cfm", "1760 m³/h"},
		{scaleOf("", Air), "15.4 cfm", "15 cfm", "26 m³/h"},
		{scaleOf("", Air), "0 cfm", "0 cfm", "0 m³/h"},
		{scaleOf("", Speed), "4005 fpm", "4010 fpm", "20.3 m/s"},
		{scaleOf("", Speed), "20 m/s", "3940 fpm", "20.0 m/s"},
		{scaleOf("", Press), "11.5 inwg", "11.50 in wg", "2860 Pa"},
		{scaleOf("", Press), "-5 Pa", "-0.02 in wg", "-5 Pa"},
		{scaleOf("", Press), "-1 Pa", "0.00 in wg", "-1 Pa"},
		{scaleOf("", Weight), "1.2014 kg/m3", "0.0750 lb/ft³", "1.201 kg/m³"},
		{scaleOf("", Trace), "0.1 mg/m3", "0.1 mg/m³", "0.1 mg/m³"},
		{scaleOf("", Grain), "10 um", "10 µm", "10 µm"},
		{scaleOf("", Grain), "0.3 um", "0.3 µm", "0.3 µm"},
		{scaleOf("", Viscous), "1.8e-5 Pa s", "0.0180 cP", "0.0180 cP"},
		{scaleOf("", Heat), "65 F", "65 °F", "18 °C"},
		{scaleOf("", Heat), "-40 C", "-40 °F", "-40 °C"},
		{scaleOf("", Heat), "0 C", "32 °F", "0 °C"},
		{scaleOf("", Shaft), "3 hp", "3 hp", "2.24 kW"},
		{scaleOf("", Shaft), "1/4 hp", "0.25 hp", "0.19 kW"},
		{scaleOf("", Amps), "17 A", "17 A", "17 A"},
		{scaleOf("", Amps), "40 mA", "0.04 A", "0.04 A"},
		{scaleOf("", Amps), "14.2857 A", "14.3 A", "14.3 A"},
		{scaleOf("", Volts), "23.8643 V", "23.86 V", "23.86 V"},
		{scaleOf("", Volts), "230 V", "230 V", "230 V"},
		{scaleOf("", Ohms), "0.62844 ohm", "0.628 ohm", "0.628 ohm"},
		{scaleOf("", Seconds), "0.8 s", "0.8 s", "0.8 s"},
		{scaleOf("", Minutes), "14 min", "14 min", "14 min"},
		{scaleOf("", Hours), "90 min", "1.5 h", "1.5 h"},
		{scaleOf("", Degrees), "45 deg", "45°", "45°"},
		{scaleOf("", Loud), "92 dB", "92 dBA", "92 dBA"},
		{scaleOf("", Wheel), "4 lb ft2", "4 lb·ft²", "0.1686 kg·m²"},
		{scaleOf("", Conductor), "18 AWG", "0.823 mm²", "0.823 mm²"},
	} {
		x, err := ReadKind(c.scale.kind, c.text)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := c.scale.print(US, x); got != c.us {
			t.Errorf("%s prints %q in US units, want %q", c.text, got, c.us)
		}
		if got := c.scale.print(Metric, x); got != c.metric {
			t.Errorf("%s prints %q in metric, want %q", c.text, got, c.metric)
		}
	}
}

// A resistance stands in the largest unit that its printed figure fills; the
// figure alone and a pair stay in the scale's own unit.
func TestLargeResistances(t *testing.T) {
	for _, c := range []struct {
		ohms float64
		want string
	}{
		{0, "0 ohm"}, {0.05, "0.05 ohm"}, {3, "3 ohm"}, {999, "999 ohm"}, {999.4, "999 ohm"},
		{999.5, "1 kohm"}, {1000, "1 kohm"}, {1500, "1.5 kohm"}, {47000, "47 kohm"}, {999000, "999 kohm"},
		{999499, "999 kohm"}, {999500, "1 Mohm"}, {1e6, "1 Mohm"}, {5e7, "50 Mohm"}, {2.5e9, "2500 Mohm"},
		{math.NaN(), "— ohm"}, {math.Inf(1), "— ohm"},
	} {
		if got := Ohms.Print(US, Resistance(c.ohms)); got != c.want {
			t.Errorf("%v ohm prints %q, want %q", c.ohms, got, c.want)
		}
		if got := Ohms.Print(Metric, Resistance(c.ohms)); got != c.want {
			t.Errorf("%v ohm prints %q in metric, want %q", c.ohms, got, c.want)
		}
		if y, err := Read[Resistance](c.want); err == nil && math.Abs(float64(y)-c.ohms) > 0.0051*c.ohms {
			t.Errorf("%q reads as %v, far from %v", c.want, y, c.ohms)
		} else if err != nil && !math.IsNaN(c.ohms) && !math.IsInf(c.ohms, 0) {
			t.Error(err)
		}
	}
	if got := Ohms.Figure(US, 5e7) + " " + Ohms.Unit(US); got != "50000000 ohm" {
		t.Errorf("figure and unit apart: %q", got)
	}
	if a, b := Ohms.Pair(US, 999999, 1e6); a != "999999" || b != "1000000" {
		t.Errorf("a pair: %q, %q", a, b)
	}
	if got := Volts.Print(US, 5e7); got != "50000000 V" {
		t.Errorf("a scale without larger units prints %q", got)
	}
}

// Two values that are one after Six print as one, even where the unit's own
// digits would part them: here both decide as 20.3454 m/s.
func TestFigureGoesThroughSix(t *testing.T) {
	a, b := Must[Velocity]("4004.992 fpm"), Must[Velocity]("4005 fpm")
	if Compare(float64(a), float64(b)) != 0 || Speed.Figure(US, a) != "4010" || Speed.Figure(US, b) != "4010" {
		t.Errorf("%v prints %s, %v prints %s", a, Speed.Figure(US, a), b, Speed.Figure(US, b))
	}
}

func TestScaleParts(t *testing.T) {
	q := Must[Flow]("1037.2 cfm")
	if Air.Unit(US) != "cfm" || Air.Unit(Metric) != "m³/h" {
		t.Errorf("units %q, %q", Air.Unit(US), Air.Unit(Metric))
	}
	if Air.Figure(US, q) != "1040" || Air.Figure(Metric, q) != "1760" {
		t.Errorf("figures %q, %q", Air.Figure(US, q), Air.Figure(Metric, q))
	}
	if x := Air.In(US, q); math.Abs(x-1037.2) > 1e-9 {
		t.Errorf("%v in cfm", x)
	}
	if x := Heat.In(US, Must[Temperature]("65 F")); math.Abs(x-65) > 1e-9 {
		t.Errorf("%v in °F", x)
	}
	if US.String() != "us" || Metric.String() != "metric" {
		t.Errorf("systems %q, %q", US, Metric)
	}
	if got := Press.Print(US, Pressure(math.NaN())); got != "— in wg" {
		t.Errorf("a value that is no number prints %q", got)
	}
	if got := (Scale[Length]{}).Figure(US, 1); got != "—" {
		t.Errorf("an empty scale prints %q", got)
	}
}

// Whatever a scale prints is read again: as the same kind, near the value,
// and printing the same. Six digits in SI are what decides, so figures of
// six digits and more may move in the last one.
func TestPrintThenRead(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for _, s := range allScales {
		for _, sys := range systems {
			for range 2000 {
				checkPrintThenRead(t, s, sys, someValue(r, s.kind))
			}
		}
	}
}

// someValue is a value such as a shop may have, and some far beyond.
func someValue(r *rand.Rand, k Kind) float64 {
	switch k {
	case KindTemperature:
		return 200 + 200*r.Float64()
	case KindWire:
		return math.Pow(10, -8+5*r.Float64())
	}
	return math.Pow(10, -6+10*r.Float64())
}

func checkPrintThenRead(t *testing.T, s anyScale, sys System, x float64) {
	t.Helper()
	text := s.print(sys, x)
	y, err := ReadKind(s.kind, text)
	if err != nil {
		t.Fatalf("%s prints %v as %q: %v", s.name, x, text, err)
	}
	figure := s.figure(sys, x)
	digits := strings.TrimLeft(strings.NewReplacer(".", "", "-", "").Replace(figure), "0")
	if len(digits) <= 5 {
		if again := s.print(sys, y); again != text {
			t.Fatalf("%s prints %v as %q, which reads as %v and prints %q", s.name, x, text, y, again)
		}
	}
	in, back := s.in(sys, x), s.in(sys, y)
	if limit := halfPlace(figure) + 1.1e-5*(math.Abs(in)+absolute(s.kind)); math.Abs(in-back) > limit {
		t.Fatalf("%s: %v is %v in the unit, printed %q and read as %v", s.name, x, in, text, back)
	}
}

// absolute is how far nought on a scale may lie from nought in SI.
func absolute(k Kind) float64 {
	if k == KindTemperature {
		return 460
	}
	return 0
}

// halfPlace is the most that rounding to a figure can move: half of its last
// place, where noughts before the point may be rounded too.
func halfPlace(figure string) float64 {
	if _, decimals, found := strings.Cut(figure, "."); found {
		return 0.5 * math.Pow(10, -float64(len(decimals)))
	}
	x, _ := strconv.ParseFloat(figure, 64)
	return max(0.5, math.Abs(x)*0.005)
}

// Of two values printed side by side, unlike after Six print unlike and in
// order; alike after Six print alike.
func TestPair(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	alike, unlike := 0, 0
	for _, s := range allScales {
		for _, sys := range systems {
			for range 2000 {
				x := someValue(r, s.kind)
				y := x * (1 + (r.Float64()-0.5)*math.Pow(10, -float64(r.IntN(9))))
				a, b := s.pair(sys, x, y)
				if Compare(x, y) == 0 {
					alike++
					if a != b {
						t.Fatalf("%s: %v and %v decide alike and print %q, %q", s.name, x, y, a, b)
					}
					continue
				}
				unlike++
				p, errP := strconv.ParseFloat(a, 64)
				q, errQ := strconv.ParseFloat(b, 64)
				if errP != nil || errQ != nil || (p < q) != (x < y) || p == q {
					t.Fatalf("%s: %v and %v print %q, %q", s.name, x, y, a, b)
				}
			}
		}
	}
	if alike < 1000 || unlike < 1000 {
		t.Errorf("%d alike, %d unlike: the test says little", alike, unlike)
	}
}

func TestPairFigures(t *testing.T) {
	for _, c := range []struct {
		scale      anyScale
		a, b       string
		wantA      string
		wantB      string
		wantPlainA string
	}{
		{scaleOf("", Air), "320 cfm", "350 cfm", "320", "350", "320"},
		{scaleOf("", Air), "350 cfm", "350.4 cfm", "350.0", "350.4", "350"},
		{scaleOf("", Air), "1037 cfm", "1040.4 cfm", "1037", "1040", "1040"},
		{scaleOf("", Air), "350 cfm", "350.0001 cfm", "350", "350", "350"},
		{scaleOf("", Air), "350 cfm", "595 m3/h", "350.0", "350.2", "350"},
		{scaleOf("", Press), "2.501 inwg", "2.499 inwg", "2.501", "2.499", "2.50"},
		{scaleOf("", Press), "-0.001 inwg", "0.001 inwg", "-0.001", "0.001", "0.00"},
		{scaleOf("", Size), "4 in", "101.7 mm", "4", "4.004", "4"},
		{scaleOf("", Heat), "65 F", "65.2 F", "65.0", "65.2", "65"},
	} {
		x, errX := ReadKind(c.scale.kind, c.a)
		y, errY := ReadKind(c.scale.kind, c.b)
		if errX != nil || errY != nil {
			t.Fatal(errX, errY)
		}
		a, b := c.scale.pair(US, x, y)
		if a != c.wantA || b != c.wantB {
			t.Errorf("%s beside %s: %q, %q, want %q, %q", c.a, c.b, a, b, c.wantA, c.wantB)
		}
		if plain := c.scale.figure(US, x); plain != c.wantPlainA {
			t.Errorf("%s alone: %q, want %q", c.a, plain, c.wantPlainA)
		}
	}
	if a, b := Air.Pair(US, Flow(math.NaN()), 1); a != "—" || b != "2120" {
		t.Errorf("no number beside one prints %q, %q", a, b)
	}
}

func TestEveryKindHasAScale(t *testing.T) {
	for _, k := range Kinds() {
		if !slices.ContainsFunc(allScales, func(s anyScale) bool { return s.kind == k }) {
			t.Errorf("nothing prints %s", k.phrase())
		}
	}
}
