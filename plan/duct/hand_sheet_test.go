package duct

import (
	"fmt"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// oneRun is a single run of galvanised sheet in standard air: its flow, size,
// length and hood, an elbow of 0.13 before the fan where it has one, and an
// outlet of the same size with one.
func oneRun(cfm, inches, feet, hood float64, elbows string) string {
	return fmt.Sprintf(`
[shop]
name = "One run"
altitude = "0 ft"
air_temperature = "70 F"
[[collector]]
name = "Fan"
inlet = "%[2]g in"
fan_curve = [["0 cfm", "12 inwg"], ["1000 cfm", "9 inwg"], ["2500 cfm", "1 inwg"]]
outlet = { size = "%[2]g in", length = "10 ft", loss = 0.13 }
[[machine]]
name = "Grinder"
kind = "other"
port = { size = "%[2]g in", flow = "%[1]g cfm", hood_loss = %[4]g }
[[duct]]
name = "Run"
to = "Fan"
size = "%[2]g in"
length = "%[3]g ft"
elbows = "stamped R/D 2.0"
fittings = [%[5]s]
serves = ["Grinder"]
`, cfm, inches, feet, hood, elbows)
}

// runByHand is the hand sheet of a single run at the flow it needs.
func runByHand(t *testing.T, file string) (*HandSheet, HandRow) {
	t.Helper()
	s := mustRead(t, file)
	start := HandStart{Ends: map[*shop.Duct]unit.Flow{s.Ducts[0]: s.Machines[0].Ports[0].Flow}}
	x := Grow(s, s.Collectors[0], StateOf(s)).ByHand(Uses(s)[0], NoFilter, start, unit.US)
	if len(x.Rows) != 1 {
		t.Fatalf("%d rows", len(x.Rows))
	}
	return x, x.Rows[0]
}

// Source: a filled calculation sheet, 1500 cfm at 4000 fpm or more, flanged
// hood, 35 ft of 8 in galvanised duct with one elbow of 0.13, a fan, 10 ft with
// one elbow. The sheet rounds on its way: 1 %. The fan static pressure is our
// own sum; those lines of the sheet could not be seen.
func TestHandSingleRunOfSheet(t *testing.T) {
	x, r := runByHand(t, oneRun(1500, 8, 35, .49, `"elbow 90"`))
	inwg := func(p unit.Pressure) float64 { return float64(p) / handInwg }
	for _, c := range []struct {
		name       string
		got, sheet float64
	}{
		{"largest diameter, in", float64(air.LargestBore(r.Flow, 4000*handFpm)) / handInches, 8.29},
		{"velocity, fpm", float64(r.Velocity) / handFpm, 4297}, {"VP", inwg(r.Dynamic), 1.15}, {"SPh", inwg(r.Hood), 1.714},
		{"Hf", r.Friction / 35, .0302}, {"friction, VP", r.Friction, 1.0640}, {"duct, VP", r.Friction + r.Fittings, 1.194}, {"duct", inwg(r.Loss), 1.3731},
		{"SP at the fan", inwg(r.Static), 3.087}, {"SP behind it", inwg(x.Outlet), .499}, {"FSP", inwg(x.Fan), 2.436},
	} {
		agrees(t, c.name, c.got, c.sheet, .01)
	}
	if r.Meets || r.Added != 0 || x.Static != r.Static {
		t.Errorf("a single run meets nothing: %+v, %+v", r, x)
	}
}

// Source: filled calculation sheets, two copies, 390 cfm in a 4 in duct with a
// hood of 0.65 kept at 4000 fpm, then in 4.5 in at 3000 fpm. The copies round
// areas on the way and print 2.046 and 2.057 for the hood: 0.5 %.
func TestHandSmallRunOfSheets(t *testing.T) {
	_, r := runByHand(t, oneRun(390, 4, 10, .65, ""))
	agrees(t, "largest at 4000 fpm, in", float64(air.LargestBore(r.Flow, 4000*handFpm))/handInches, 4.22, .005)
	agrees(t, "velocity, fpm", float64(r.Velocity)/handFpm, 4467, .005)
	agrees(t, "VP", float64(r.Dynamic)/handInwg, 1.24, .005)
	agrees(t, "SPh", float64(r.Hood)/handInwg, 2.046, .005)
	agrees(t, "SPh, other copy", float64(r.Hood)/handInwg, 2.057, .005)
	_, r = runByHand(t, oneRun(390, 4.5, 10, .65, ""))
	agrees(t, "largest at 3000 fpm, in", float64(air.LargestBore(r.Flow, 3000*handFpm))/handInches, 4.88, .005)
	agrees(t, "velocity in 4.5 in, fpm", float64(r.Velocity)/handFpm, 3532.9, .005)
	agrees(t, "VP in 4.5 in", float64(r.Dynamic)/handInwg, .7781, .005)
}

// A hood with a hose: the losses of port, hose and changes of size, each at
// its own size, and the speed in the duct.
func TestHandHoodWithHose(t *testing.T) {
	s := mustRead(t, twig)
	tree := Grow(s, s.Collectors[0], StateOf(s))
	const q = unit.Flow(.05)
	x := tree.ByHand(Uses(s)[0], NoFilter, HandStart{Ends: map[*shop.Duct]unit.Flow{s.Ducts[1]: q}}, unit.Metric)
	vp := func(size unit.Length) unit.Pressure {
		return air.HandPressure(air.HandMetric, air.SpeedIn(q, size), StateOf(s).Ratio())
	}
	hose := unit.Pressure(air.HandFriction(air.Flexible, air.SpeedIn(q, .1), q, 2)*s.Ducts[1].Hose.Times) * vp(.1)
	lost := hose + .9*vp(.08) + unit.Pressure(air.Widening(.08, .1, air.Abrupt))*vp(.08) + unit.Pressure(air.Widening(.1, .15, air.Abrupt))*vp(.1)
	r := x.Rows[0]
	agrees(t, "hose", float64(r.Hose), float64(hose), 1e-9)
	agrees(t, "hood", float64(r.Hood), float64(lost+vp(.15)), 1e-9)
	if s.Ducts[1].Hose.Times <= 1 {
		t.Errorf("a hose not pulled out rubs %g times", s.Ducts[1].Hose.Times)
	}
	// it joins by a fitting, and slows down in the wider main: nothing is won back
	agrees(t, "fittings", r.Fittings, 1.5*s.Ducts[1].ElbowLoss+air.Entry(30), 1e-9)
	if len(x.Rows) != 2 || x.Rows[1].Added != 0 || x.Rows[1].Start != r.Static || r.Meets {
		t.Errorf("%+v", x.Rows)
	}
}

// A duct in line with the next pays the change of size and gets back the speed
// that is left over.
func TestHandInLine(t *testing.T) {
	apart := replaced(t, replaced(t, twoBranches, "name = \"A duct\"\nto = \"Main\"\njoins = \"0 ft\"", "name = \"A duct\"\nto = \"Main\"\njoins = \"5 ft\""), `size_changes = "none"`, `size_changes = "taper"`)
	s := mustRead(t, apart)
	var b, main *shop.Duct
	for _, d := range s.Ducts {
		switch d.Name {
		case "B duct":
			b = d
		case "Main":
			main = d
		}
	}
	x := Grow(s, s.Collectors[0], StateOf(s)).ByHand(Uses(s)[1], ChangeOut, HandStart{Ends: map[*shop.Duct]unit.Flow{b: 785 * handCfm}}, unit.US)
	if b.Wye || len(x.Rows) != 3 || x.Rows[1].Stretch != main.Stretches[0] {
		t.Fatalf("%v, %+v", b.Wye, x.Rows)
	}
	six, seven := x.Rows[0].Dynamic, x.Rows[1].Dynamic
	k := air.Widening(6*handInches, 7*handInches, air.Taper)
	agrees(t, "added", float64(x.Rows[1].Added), float64(seven-six+unit.Pressure(k)*six), 1e-9)
	if k <= 0 || x.Rows[1].Added >= 0 {
		t.Errorf("K %g adds %g", k, x.Rows[1].Added)
	}
}
