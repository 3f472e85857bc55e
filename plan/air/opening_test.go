package air

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// Source: public page on air leakage: 0.05 in wg across 2 ft² without a
// coefficient, 895 fpm and 1800 cfm; recomputed 895.5 and 1791, reckoned with
// 4005.
func TestOpeningWithoutCoefficient(t *testing.T) {
	v := HandSpeed(HandInch, .05*inwg, 1)
	near(t, "fpm", v/fpm, 895, 1)
	near(t, "recomputed, fpm", v/fpm, 895.5, .05)
	near(t, "recomputed, cfm", float64(v)*2*sqft/cfm, 1791, .5)
	nearly(t, "exact, cfm", Orifice(2*sqft, 1, .05*inwg, Standard())/cfm, 1800, .006)
	nearly(t, "exact against recomputed, cfm", Orifice(2*sqft, 1, .05*inwg, Standard())/cfm, 1791, .002)
}

// Source: orifice equation of the open building-airflow library; recomputed
// openings for 1000 cfm at 1.2 kg/m³.
func TestMakeUpOpening(t *testing.T) {
	s := State{Density: 1.2}
	for pascals, squareFeet := range map[float64]float64{2: 4.28, 3: 3.50, 5: 2.71, 15: 1.56} {
		area := 1000 * cfm / float64(Orifice(1, Discharge(), unit.Pressure(pascals), s)) / sqft
		near(t, "opening, ft²", area, squareFeet, .005)
	}
}

func TestOrificeTurnsRound(t *testing.T) {
	s := Standard()
	if Orifice(.1, .65, -20, s) != -Orifice(.1, .65, 20, s) || Orifice(.1, .65, 0, s) != 0 {
		t.Error("the flow does not follow the sign of the pressure")
	}
	nearly(t, "four times the pressure", Orifice(.1, .65, 80, s), 2*float64(Orifice(.1, .65, 20, s)), 1e-14)
}

// Source: BS EN 1751 closed dampers as reported by a public reference page, in
// m³/s for a square metre at 100 Pa; recomputed as a share of the flow at 20
// m/s, at 1000 and 2000 Pa. The coefficient at the class's own point must give
// those shares.
func TestFlowCoefficientOfShutDampers(t *testing.T) {
	s, bore := State{Density: 1.2}, unit.Length(.1)
	for _, c := range []struct{ speed, at1000, at2000, digit float64 }{
		{.2, 3.2, 4.5, .05}, {.04, .63, .89, .005}, {.008, .13, .18, .005},
	} {
		k := FlowCoefficient(unit.Flow(c.speed*float64(Bore(bore))), 100, bore, s)
		share := func(p unit.Pressure) float64 {
			return 100 * float64(s.Speed(unit.Pressure(float64(p)/k))) / 20
		}
		near(t, "at 1000 Pa, %", share(1000), c.at1000, c.digit)
		near(t, "at 2000 Pa, %", share(2000), c.at2000, c.digit)
	}
}

func TestLeakCoefficient(t *testing.T) {
	s, bore := Standard(), unit.Length(.1)
	open := FlowIn(20, bore)
	for _, share := range []float64{.03, .1, 1} {
		nearly(t, "leak", LeakCoefficient(share), FlowCoefficient(unit.Flow(share*float64(open)), s.VelocityPressure(20), bore, s), 1e-13)
	}
	if !math.IsInf(LeakCoefficient(0), 1) {
		t.Error("a gate that does not leak has a finite coefficient")
	}
}
