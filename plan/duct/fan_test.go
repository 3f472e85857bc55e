package duct

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// rig is a shop of one machine, one duct of a given loss and one collector.
// Air is standard: 1.2014 kg/m³, the density a curve holds for where it does
// not say.
func rig(about, collector, duct string) string {
	return fmt.Sprintf(`
[shop]
name = "Rig"
%s
[method]
junctions = "none"
size_changes = "none"
[[machine]]
name = "Saw"
kind = "other"
port = { size = "100 mm", flow = "0.1 m3/s", hood_loss = 0 }
[[collector]]
name = "Fan"
inlet = "100 mm"
%s
[[duct]]
name = "Pipe"
to = "Fan"
serves = ["Saw"]
material = "smooth plastic"
%s
`, about, collector, duct)
}

const (
	standardAir = `air = { density = "1.2014 kg/m3", viscosity = "1.8e-5 Pa s" }`
	thinAir     = `air = { density = "0.96112 kg/m3", viscosity = "1.8e-5 Pa s" }` // 0.8 of it
	easyPipe    = "size = \"100 mm\"\nlength = \"0 m\"\nloss = 2"
	hardPipe    = "size = \"100 mm\"\nlength = \"0 m\"\nloss = 500"
	openPipe    = "size = \"1 m\"\nlength = \"0 m\""
)

func fanOf(t *testing.T, about, collector, filter string) *Fan {
	t.Helper()
	s := mustRead(t, rig(about, collector, easyPipe))
	return NewFan(s.Collectors[0], StateOf(s), filter)
}

func solved(t *testing.T, about, collector, duct, filter string) *Result {
	t.Helper()
	return theResult(t, Reckon(mustRead(t, rig(about, collector, duct))), "Saw", filter)
}

func TestClaimsAreAParabola(t *testing.T) {
	f := fanOf(t, standardAir, `claims = { flow = "0.8 m3/s", suction = "2400 Pa" }`, NoFilter)
	for _, p := range [][2]float64{{0, 2400}, {0.2, 2250}, {0.4, 1800}, {0.8, 0}} {
		if got := f.Static(p[0]); !near(got, p[1], 1e-12) {
			t.Errorf("at %g m³/s %g Pa, want %g", p[0], got, p[1])
		}
	}
	if !f.Claimed || !f.Falls() || f.Peak() != 0 {
		t.Errorf("claimed %v, falls %v, peak at %g", f.Claimed, f.Falls(), f.Peak())
	}
	curved := fanOf(t, standardAir, `claims = { flow = "0.8 m3/s", suction = "2400 Pa" }
fan_curve = [["0 m3/s", "2000 Pa"], ["0.6 m3/s", "0 Pa"]]`, NoFilter)
	if got := curved.Static(0.3); curved.Claimed || !near(got, 1000, 1e-12) {
		t.Errorf("a curve stands beside the claims and counts: %g Pa, claimed %v", got, curved.Claimed)
	}
}

const parts = `
fan_curve = [["0 m3/s", "2000 Pa"], ["0.8 m3/s", "0 Pa"]]
separator = { loss = "400 Pa", at = "0.5 m3/s" }
filter = { clean = "100 Pa", change = "500 Pa", at = "0.5 m3/s" }
outlet = { size = "200 mm", length = "0 m", fittings = ["elbow 90", "elbow 45"], loss = 0.7 }
`

func TestCharges(t *testing.T) {
	elbow := shop.DefaultElbow().K90
	v := 0.25 / (math.Pi * 0.2 * 0.2 / 4)
	outlet := (elbow*1.5 + 0.7) * 1.2014 / 2 * v * v // an elbow of 45° is half of one of 90°
	// a separator's loss is given for standard air, that of 70 °F at sea level
	ratio := 1.2014 / float64(air.Standard().Density)
	tests := []struct {
		name, about, include, state string
		separator, filter, outlet   float64 // at 0.25 m³/s
	}{
		{"clean", standardAir, "", Clean, 100 * ratio, 50, outlet},
		{"change-out", standardAir, "", ChangeOut, 100 * ratio, 250, outlet},
		{"thin air, clean", thinAir, "", Clean, 80 * ratio, 50, 0.8 * outlet},
		{"thin air, change-out", thinAir, "", ChangeOut, 80 * ratio, 250, 0.8 * outlet},
		{"with its separator", standardAir, `curve_includes = ["separator"]`, Clean, 0, 50, outlet},
		{"with a clean filter", standardAir, `curve_includes = ["clean filter"]`, Clean, 100 * ratio, 0, outlet},
		{"with a clean filter, change-out", standardAir, `curve_includes = ["clean filter"]`, ChangeOut, 100 * ratio, 200, outlet},
		{"with both", standardAir, `curve_includes = ["separator", "clean filter"]`, Clean, 0, 0, outlet},
	}
	for _, test := range tests {
		f := fanOf(t, test.about, parts+test.include, test.state)
		separator, filter, outlet := f.Charges(0.25)
		for _, v := range [][2]float64{{separator, test.separator}, {filter, test.filter}, {outlet, test.outlet}} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Errorf("%s: separator %g, filter %g, outlet %g Pa; want %g, %g, %g", test.name, separator, filter, outlet, test.separator, test.filter, test.outlet)
				break
			}
		}
		more, linear, _ := f.Charges(0.5)
		if !near(more, 4*separator, 1e-12) || !near(linear, 2*filter, 1e-12) {
			t.Errorf("%s: twice the flow costs %g Pa in the separator and %g Pa in the filter", test.name, more, linear)
		}
		rest, _ := f.Suction(0.25)
		if want := f.Static(0.25) - separator - filter - outlet; !near(rest, want, 1e-12) {
			t.Errorf("%s: %g Pa left at the inlet, want %g", test.name, rest, want)
		}
	}
}

func TestSuctionSlope(t *testing.T) {
	long := strings.Replace(parts, `length = "0 m"`, `length = "9 m"`, 1)
	f := fanOf(t, thinAir, long, ChangeOut)
	for _, q := range []float64{0.02, 0.1, 0.3, 0.6, 0.79} {
		left, _ := f.Suction(q - 1e-6)
		right, _ := f.Suction(q + 1e-6)
		if _, slope := f.Suction(q); !near(slope, (right-left)/2e-6, 1e-5) {
			t.Errorf("slope %g at %g m³/s, differences say %g", slope, q, (right-left)/2e-6)
		}
	}
}

// Off the curve there is no number and no verdict but no.
func TestOffTheCurve(t *testing.T) {
	const late, early, humpLate = `fan_curve = [["0.2 m3/s", "1500 Pa"], ["0.8 m3/s", "0 Pa"]]`, `fan_curve = [["0 m3/s", "1500 Pa"], ["0.1 m3/s", "1400 Pa"]]`,
		`fan_curve = [["0.2 m3/s", "1500 Pa"], ["0.3 m3/s", "1600 Pa"], ["0.4 m3/s", "1500 Pa"]]`
	tests := []struct {
		name, curve, pipe string
		why               source.Reason
	}{
		{"on it", late, easyPipe, source.Reason{}},
		{"left of it", late, hardPipe, beforeStart},
		{"right of it", early, easyPipe, pastEnd},
		{"on one that rises first", humpLate, easyPipe, source.Reason{}},
		{"left of one that rises first", humpLate, hardPipe, beforeStart},
		{"right of one that rises first", humpLate, openPipe, pastEnd},
	}
	for _, test := range tests {
		r := solved(t, standardAir, test.curve+"\nfan_power = [[\"0 m3/s\", \"1 kW\"], [\"1 m3/s\", \"2 kW\"]]", test.pipe, NoFilter)
		if r.Why != test.why || r.OnCurve == test.why.Is() {
			t.Errorf("%s: on the curve %v, because %q", test.name, r.OnCurve, r.Why)
		}
		if !r.OnCurve {
			if r.Captured || r.Carried || r.Flow != 0 || r.Static != 0 || r.PowerKnown || r.Ports[0].Captured || r.Ports[0].Flow != 0 || r.Stretches[0].Carries || r.Stretches[0].Loss != 0 {
				t.Errorf("%s: figures or verdicts stand: %+v", test.name, r)
			}
		}
	}
}

func TestLeftOfThePeak(t *testing.T) {
	const hill = `fan_curve = [["0 m3/s", "1500 Pa"], ["0.2 m3/s", "2000 Pa"], ["0.8 m3/s", "0 Pa"]]`
	if r := solved(t, standardAir, hill, "size = \"100 mm\"\nlength = \"0 m\"\nloss = 20", NoFilter); !r.LeftOfPeak || r.Flow >= 0.2 {
		t.Errorf("%g m³/s: left of the peak %v", r.Flow, r.LeftOfPeak)
	}
	if r := solved(t, standardAir, hill, easyPipe, NoFilter); r.LeftOfPeak || r.Flow <= 0.2 {
		t.Errorf("%g m³/s: left of the peak %v", r.Flow, r.LeftOfPeak)
	}
	// a curve that falls from its first point has nothing left of its peak,
	// and of two points alike the first is the peak
	level := fanOf(t, standardAir, `fan_curve = [["0 m3/s", "1500 Pa"], ["0.2 m3/s", "1500 Pa"], ["0.8 m3/s", "0 Pa"]]`, NoFilter)
	if level.Peak() != 0 {
		t.Errorf("peak at %g m³/s", level.Peak())
	}
}

// A dip before the hill: the ducts meet the curve three times. The stable
// point of least flow counts, and all are told.
func TestSeveralCrossings(t *testing.T) {
	const dip = `fan_curve = [["0 m3/s", "1000 Pa"], ["0.1 m3/s", "100 Pa"], ["0.3 m3/s", "2000 Pa"], ["0.5 m3/s", "0 Pa"]]`
	// 20,000 Pa at 1 m³/s: loss × density/2 / area²
	area := math.Pi * 0.1 * 0.1 / 4
	pipe := fmt.Sprintf("size = \"100 mm\"\nlength = \"0 m\"\nloss = %.12g", 20000*area*area*2/1.2014)
	r := solved(t, standardAir, dip, pipe, NoFilter)
	if len(r.Crossings) != 3 || !r.Crossings[0].Stable || r.Crossings[1].Stable || !r.Crossings[2].Stable {
		t.Fatalf("crossings %+v, want stable, unstable, stable", r.Crossings)
	}
	f := fanOf(t, standardAir, dip, NoFilter)
	for _, c := range r.Crossings {
		q := float64(c.Flow)
		if want := 20000 * q * q; !near(float64(c.Static), want, 1e-4) || !near(f.Static(q), want, 1e-4) {
			t.Errorf("crossing at %g m³/s, %g Pa: the ducts ask for %g", q, c.Static, want)
		}
	}
	if r.Flow != r.Crossings[0].Flow || !r.OnCurve || !(r.Crossings[0].Flow < r.Crossings[1].Flow && r.Crossings[1].Flow < r.Crossings[2].Flow) {
		t.Errorf("flow %g of the crossings %+v, want the least", r.Flow, r.Crossings)
	}
	easier := "size = \"100 mm\"\nlength = \"0 m\"\nloss = 0.5"
	if one := solved(t, standardAir, dip, easier, NoFilter); len(one.Crossings) != 0 || !one.OnCurve || one.Flow < 0.3 {
		t.Errorf("an easier pipe meets it once, on the right: %g m³/s, %v", one.Flow, one.Crossings)
	}
}

// A curve that starts below what the ducts ask for, and rises past it: the
// first crossing is unstable, the second counts.
func TestFirstCrossingUnstable(t *testing.T) {
	const rising = `fan_curve = [["0.2 m3/s", "100 Pa"], ["0.3 m3/s", "3000 Pa"], ["0.5 m3/s", "0 Pa"]]`
	area := math.Pi * 0.1 * 0.1 / 4
	pipe := fmt.Sprintf("size = \"100 mm\"\nlength = \"0 m\"\nloss = %.12g", 20000*area*area*2/1.2014)
	r := solved(t, standardAir, rising, pipe, NoFilter)
	if len(r.Crossings) != 2 || r.Crossings[0].Stable || !r.Crossings[1].Stable || r.Flow != r.Crossings[1].Flow {
		t.Errorf("flow %g of the crossings %+v", r.Flow, r.Crossings)
	}
}

func TestPower(t *testing.T) {
	const curve = `fan_curve = [["0 m3/s", "2000 Pa"], ["0.8 m3/s", "0 Pa"]]` + "\n"
	const drawn = curve + `fan_power = [["0.1 m3/s", "1 kW"], ["0.5 m3/s", "2 kW"]]`
	tests := []struct {
		name, about, collector string
		at, want               float64
		known                  bool
	}{
		{"on its curve", standardAir, drawn, 0.3, 1500, true},
		{"in thin air", thinAir, drawn, 0.3, 1200, true},
		{"left of its curve", standardAir, drawn, 0.05, 0, false},
		{"right of its curve", standardAir, drawn, 0.6, 0, false},
		{"by efficiency", standardAir, curve + "efficiency = 0.5", 0.4, 0.4 * 1000 / 0.5, true},
		{"by efficiency in thin air", thinAir, curve + "efficiency = 0.5", 0.4, 0.8 * 0.4 * 1000 / 0.5, true},
		{"a curve for thin air, in thin air", thinAir, drawn + "\ncurve_density = \"0.96112 kg/m3\"", 0.3, 1500, true},
		{"neither", standardAir, curve, 0.3, 0, false},
	}
	for _, test := range tests {
		if watts, known := fanOf(t, test.about, test.collector, NoFilter).Power(test.at); known != test.known || !near(watts, test.want, 1e-12) {
			t.Errorf("%s: %g W, known %v; want %g W, %v", test.name, watts, known, test.want, test.known)
		}
	}
}

// The motor is loaded most by the coldest air: power goes with density.
func TestColdestAir(t *testing.T) {
	const fan = `fan_curve = [["0 m3/s", "2000 Pa"], ["0.8 m3/s", "0 Pa"]]
fan_power = [["0 m3/s", "1 kW"], ["0.5 m3/s", "2 kW"], ["0.8 m3/s", "1.8 kW"]]
motor = { power = "2 kW", service_factor = 1.15 }`
	weigh := func(about string) Load {
		return Reckon(mustRead(t, rig(about, fan, easyPipe))).Loads[0]
	}
	warm := weigh(`air_temperature = "20 C"`)
	cold := weigh("air_temperature = \"20 C\"\ncoldest = \"-20 C\"")
	warmer := weigh("air_temperature = \"20 C\"\ncoldest = \"30 C\"")
	// the gas law: density goes with 1/T
	if got, want := float64(cold.Greatest)/float64(warm.Greatest), 293.15/253.15; !near(got, want, 1e-5) {
		t.Errorf("cold air takes %.6g of the power, want %.6g", got, want)
	}
	if warmer.Greatest != warm.Greatest {
		t.Errorf("a coldest above the air in the ducts: %g W, want %g", warmer.Greatest, warm.Greatest)
	}
	if !near(float64(warm.At), 0.5, 1e-2) || warm.Rated != 2300 || !warm.Known {
		t.Errorf("greatest at %g m³/s of %g W rated, known %v; want 0.5 and 2300", warm.At, warm.Rated, warm.Known)
	}
	if !warm.DuctOffKnown || !near(float64(warm.DuctOffFlow), 0.8, 1e-6) || !near(float64(warm.DuctOff), 1800*float64(warm.State.Density)/1.2014, 1e-5) {
		t.Errorf("duct off: %g m³/s, %g W, known %v", warm.DuctOffFlow, warm.DuctOff, warm.DuctOffKnown)
	}
	fixed := weigh(standardAir + "\ncoldest = \"-20 C\"")
	if float64(fixed.State.Density) != float64(unit.Must[unit.Density]("1.2014 kg/m3")) {
		t.Errorf("air given by its density stays that: %g kg/m³", fixed.State.Density)
	}
}
