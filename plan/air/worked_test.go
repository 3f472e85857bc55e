package air

import (
	"testing"

	"dustbook/plan/unit"
)

// Source: published exercise and question bank, question 11: 1000 fpm in an 8
// in duct narrowed to 6 in; 200 fpm in a 6 in duct widened to 12 in.
func TestWorkedSizeChanges(t *testing.T) {
	v := SpeedIn(FlowIn(1000*fpm, 8*inch), 6*inch)
	near(t, "fpm", v/fpm, 1778, .5)
	near(t, "VP, in wg", HandPressure(HandInch, v, 1)/inwg, .197, .0005)
	near(t, "fpm", SpeedIn(FlowIn(200*fpm, 6*inch), 12*inch)/fpm, 50, 1e-9)
}

// Source: published worked example on a rectangular duct: 500 L/s in 350 × 200
// mm, roughness 0.09 mm, 1.2 kg/m³. Its friction factor 0.0191 is by an
// explicit formula; Colebrook's, recomputed, is 0.01919.
func TestWorkedRectangularDuct(t *testing.T) {
	a, b := unit.Length(.350), unit.Length(.200)
	dh := Hydraulic(a, b)
	near(t, "Dh, mm", dh/mm, 254.5, .05)
	v := unit.Velocity(.5 / float64(a*b))
	near(t, "V, m/s", v, 7.14, .005)
	s := State{Density: 1.2, Viscosity: 1.2 / 66400} // the example's Re = 66.4 D[mm] V[m/s]
	re := Reynolds(s, v, dh)
	near(t, "Re", re, 120727, .5)
	f := Factor(re, .09*mm/float64(dh))
	near(t, "f, Colebrook", f, .01919, .000005)
	nearly(t, "f as printed", f, .0191, .005)
	near(t, "VP, Pa", s.VelocityPressure(v), 31, .5)
	near(t, "VP recomputed, Pa", s.VelocityPressure(v), 30.6, .05)
	near(t, "loss, Pa/m", Straight(s, dh, .09*mm, 1, FlowIn(v, dh)), 2.3, .05)
	near(t, "De, mm", Equivalent(a, b)/mm, 286.4, .05)
}

// Source: a filled calculation sheet: one run of 1500 cfm kept at 4000 fpm or
// more, flanged hood, 35 ft of 8 in galvanised duct with one elbow of 0.13,
// then a fan and 10 ft with one elbow. The sheet rounds on its way, so 1 %; beside
// it stands the value recomputed without rounding, to its last digit. The fan
// static pressure is our own sum: those lines of the sheet were not visible.
func TestWorkedSingleRun(t *testing.T) {
	const elbow, hoodLoss = .13, .49
	q, d := unit.Flow(1500*cfm), unit.Length(8*inch)
	check := func(name string, got, sheet, recomputed, digit float64) {
		t.Helper()
		nearly(t, name+", sheet", got, sheet, .01)
		near(t, name+", recomputed", got, recomputed, digit)
	}
	check("largest diameter, in", float64(LargestBore(q, 4000*fpm)/inch), 8.29, 8.292, .0005)
	check("area, ft²", float64(Bore(d))/sqft, .3500, .3491, .00005)
	v := SpeedIn(q, d)
	check("velocity, fpm", float64(v)/fpm, 4297, 4297.2, .05)
	vp := HandPressure(HandInch, v, 1)
	check("VP, in wg", float64(vp)/inwg, 1.15, 1.1512, .00005)
	hood := HoodPressure(hoodLoss, vp)
	check("SPh, in wg", float64(hood)/inwg, 1.714, 1.7153, .0005)
	check("Hf", HandFriction(Galvanised, v, q, foot), .0302, .03019, .000005)
	friction := HandFriction(Galvanised, v, q, 35*foot)
	check("friction, VP", friction, 1.0640, 1.0566, .00005)
	duct := friction + Elbow(elbow, 90)
	check("duct, VP", duct, 1.194, 1.1866, .00005)
	check("duct, in wg", duct*float64(vp)/inwg, 1.3731, 1.3661, .00005)
	suction := hood + unit.Pressure(duct)*vp
	check("SP at the fan, in wg", float64(suction)/inwg, 3.087, 3.081, .0005)
	outlet := HandFriction(Galvanised, v, q, 10*foot)
	check("outlet friction, VP", outlet, .3019, .3019, .00005)
	outlet += Elbow(elbow, 90)
	check("outlet, VP", outlet, .4319, .4319, .00005)
	pushed := unit.Pressure(outlet) * vp
	check("SP out, in wg", float64(pushed)/inwg, .499, .4972, .00005)
	check("FSP, in wg", float64(StaticOfFan(pushed, -suction, vp))/inwg, 2.436, 2.427, .0005)
}

// Source: filled calculation sheets, two copies: 390 cfm kept at 4000 fpm in a
// 4 in duct with a hood of 0.65, then at 3000 fpm in 4.5 in. The copies round
// areas on the way, so 0.5 % of what they print; recomputed values to their
// last digit.
func TestWorkedSmallRun(t *testing.T) {
	q := unit.Flow(390 * cfm)
	check := func(name string, got, sheet, recomputed, digit float64) {
		t.Helper()
		nearly(t, name+", sheet", got, sheet, .005)
		near(t, name+", recomputed", got, recomputed, digit)
	}
	check("largest at 4000 fpm, in", float64(LargestBore(q, 4000*fpm)/inch), 4.22, 4.228, .0005)
	v := SpeedIn(q, 4*inch)
	check("velocity, fpm", float64(v)/fpm, 4467, 4469.1, .05)
	vp := HandPressure(HandInch, v, 1)
	check("VP, in wg", float64(vp)/inwg, 1.24, 1.245, .0005)
	check("hood, in wg", float64(HoodPressure(.65, vp))/inwg, 2.046, 2.0545, .0005)
	check("hood, other copy, in wg", float64(HoodPressure(.65, vp))/inwg, 2.057, 2.0545, .0005)
	check("largest at 3000 fpm, in", float64(LargestBore(q, 3000*fpm)/inch), 4.88, 4.882, .0005)
	check("area, ft²", float64(Bore(4.5*inch))/sqft, .1104, .11045, .000005)
	v = SpeedIn(q, 4.5*inch)
	check("velocity, fpm", float64(v)/fpm, 3532.9, 3531.1, .05)
	check("VP, in wg", float64(HandPressure(HandInch, v, 1))/inwg, .7781, .7774, .00005)
}

// The bore functions undo each other.
func TestBores(t *testing.T) {
	for _, d := range []unit.Length{.05, .1, .2} {
		nearly(t, "diameter", Diameter(Bore(d)), float64(d), 1e-15)
		nearly(t, "flow", FlowIn(SpeedIn(.3, d), d), .3, 1e-15)
		nearly(t, "largest", LargestBore(FlowIn(20, d), 20), float64(d), 1e-14)
	}
	nearly(t, "square duct", Hydraulic(.2, .2), .2, 1e-15)
}
