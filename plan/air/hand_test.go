package air

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// Source: help page of an open statistics package for industrial hygiene: VP
// 0.20 in wg gives 1791.09 fpm.
func TestHandSpeedOfPackage(t *testing.T) {
	near(t, "fpm", HandSpeed(HandInch, .20*inwg, 1)/fpm, 1791.09, .005)
}

// Source: question bank on industrial ventilation, questions 7, 8, 13, 14.
func TestHandSpeedOfQuestionBank(t *testing.T) {
	near(t, "4 in wg, fpm", HandSpeed(HandInch, 4*inwg, 1)/fpm, 8010, .5)
	near(t, "900 Pa, m/s", HandSpeed(HandMetric, 900, 1), 38.7, .05)
	near(t, "12.9 m/s, Pa", HandPressure(HandMetric, 12.9, 1), 100, .5)
	near(t, "4005 fpm, in wg", HandPressure(HandInch, 4005*fpm, 1)/inwg, 1, 1e-9)
}

// Source: published calculation on velocity pressure, VP 3.15 in wg gives
// 7108.20 fpm; recomputed 7108.17, the answer has a rounded root.
func TestHandSpeedOfCalculation(t *testing.T) {
	got := HandSpeed(HandInch, 3.15*inwg, 1) / fpm
	near(t, "recomputed, fpm", got, 7108.17, .005)
	near(t, "published, fpm", got, 7108.20, .05)
}

// Source: V = 4005 √(VP/df) of the study notes: thinner air moves faster at
// the same velocity pressure.
func TestHandFormulasWithDensity(t *testing.T) {
	for _, h := range []Hand{HandInch, HandMetric} {
		nearly(t, "a quarter of the density", HandSpeed(h, 100, .25), 2*float64(HandSpeed(h, 100, 1)), 1e-14)
		for _, df := range []float64{.7, 1, 1.1} {
			nearly(t, "there and back", HandPressure(h, HandSpeed(h, 250, df), df), 250, 1e-13)
		}
	}
}

// Source: the exact constants of the trade's formula at 0.075 lb/ft³, 4004.6
// and 1.2902, recomputed from the study notes. The first rests on an inch of
// water at room temperature, 0.2 % lighter than the one at 4 °C used here, and
// speed goes by its root: 0.1 %.
func TestHandConstantsAgainstExact(t *testing.T) {
	s := State{Density: .075 * pound / (foot * foot * foot)}
	nearly(t, "exact, fpm", s.Speed(inwg)/fpm, 4004.6, .001)
	near(t, "exact, m/s", State{Density: 1.2014}.Speed(1), 1.2902, .00005)
	nearly(t, "hand, inch", HandSpeed(HandInch, 300, 1), float64(s.Speed(300)), 1e-3)
	nearly(t, "hand, metric", HandSpeed(HandMetric, 300, 1), float64(s.Speed(300)), 2e-4)
}

// Source: a filled calculation sheet prints Hf 0.0302 for galvanised sheet at
// 4297 fpm and 1500 cfm; the other values are the fit's own, recomputed, and
// must not drift.
func TestHandFriction(t *testing.T) {
	near(t, "sheet", HandFriction(Galvanised, 4297*fpm, 1500*cfm, foot), .0302, .00005)
	for _, c := range []struct{ fpm, cfm, galvanised, smooth, flexible float64 }{
		{4000, 349.1, .0709, .0592, .1105},
		{4000, 785.4, .0432, .0363, .0658},
		{4297, 1499.9, .0302, .0255, .0455},
	} {
		v, q := unit.Velocity(c.fpm*fpm), unit.Flow(c.cfm*cfm)
		near(t, "galvanised", HandFriction(Galvanised, v, q, foot), c.galvanised, .00005)
		near(t, "smooth", HandFriction(Smooth, v, q, foot), c.smooth, .00005)
		near(t, "flexible", HandFriction(Flexible, v, q, foot), c.flexible, .00005)
	}
	nearly(t, "ten feet", HandFriction(Flexible, 20, .2, 10*foot), 10*HandFriction(Flexible, 20, .2, foot), 1e-14)
}

// The hand fit and Colebrook's law agree at the roughness the fit was made
// for: galvanised 0.0005 ft within 4 %, black iron 0.000175 ft and flexible
// 0.003 ft within 3 % (our own comparison).
func TestHandFrictionAgainstColebrook(t *testing.T) {
	for _, c := range []struct {
		wall          Wall
		roughness, by float64
	}{{Galvanised, .0005, .04}, {Smooth, .000175, .03}, {Flexible, .003, .03}} {
		for _, inches := range []float64{4, 6, 8, 10} {
			d, v := unit.Length(inches*inch), unit.Velocity(4000*fpm)
			q := FlowIn(v, d)
			exact := Straight(Standard(), d, unit.Length(c.roughness*foot), foot, q) / Standard().VelocityPressure(v)
			nearly(t, c.wall.String(), HandFriction(c.wall, v, q, foot), float64(exact), c.by)
		}
	}
}

// Source: chart formula of the study notes, 2.74 (V/1000)^1.9/D^1.22 in wg in
// 100 ft of galvanised duct; recomputed values.
func TestHandFrictionAgainstChartFormula(t *testing.T) {
	for _, c := range []struct{ fpm, inches, inwg float64 }{
		{4000, 4, 7.033}, {4000, 6, 4.289}, {4297, 8, 3.459}, {4500, 5, 6.701}, {4000, 10, 2.300}, {4000, 14, 1.525},
	} {
		v, d := unit.Velocity(c.fpm*fpm), unit.Length(c.inches*inch)
		loss := HandFriction(Galvanised, v, FlowIn(v, d), 100*foot) * float64(HandPressure(HandInch, v, 1)) / inwg
		nearly(t, "chart formula", loss, c.inwg, .01)
	}
}

func TestReadWall(t *testing.T) {
	for _, w := range []Wall{Galvanised, Smooth, Flexible} {
		if got, ok := ReadWall(w.String()); !ok || got != w {
			t.Errorf("%v reads back as %v, %v", w, got, ok)
		}
	}
	if _, ok := ReadWall("copper"); ok {
		t.Error("an unknown wall was read")
	}
}

// What is shown of the formulas is what they reckon with.
func TestHandFormulasShown(t *testing.T) {
	for _, w := range []Wall{Galvanised, Smooth, Flexible} {
		a, b, c := w.Fit()
		nearly(t, w.String(), HandFriction(w, 4000*fpm, 785*cfm, foot), a*math.Pow(4000, b)/math.Pow(785, c), 1e-12)
	}
	near(t, "inch", HandSpeed(HandInch, inchWater, 1)/fpm, HandInch.Number(), 1e-9)
	near(t, "metric", HandSpeed(HandMetric, 1, 1), HandMetric.Number(), 1e-12)
}
