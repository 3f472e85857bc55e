package air

import (
	"math"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// Source: U.S. Standard Atmosphere 1976, as the open fluid-mechanics library
// computes it.
func TestStandardAtmosphere(t *testing.T) {
	for _, r := range reference(t, "atmosphere_1976.csv", 9) {
		metres := strings.TrimSuffix(strings.TrimPrefix(r["id"], "atm-"), "m")
		z := record{"id": r["id"], "z": metres}.number(t, "z")
		got := At(unit.Length(z), unit.Temperature(r.number(t, "T_K")))
		nearly(t, r["id"]+" pressure", Pressure(unit.Length(z)), r.number(t, "P_Pa"), 1e-8)
		nearly(t, r["id"]+" density", got.Density, r.number(t, "rho_kg_m3"), 1e-8)
		nearly(t, r["id"]+" viscosity", got.Viscosity, r.number(t, "mu_Pa_s"), 1e-8)
		nearly(t, r["id"]+" kinematic", got.Kinematic(), r.number(t, "nu_m2_s"), 1e-8)
	}
}

// Source: gas law and Sutherland's formula of the U.S. Standard Atmosphere
// 1976, as the open fluid-mechanics library computes them.
func TestAirBySeaTemperature(t *testing.T) {
	for _, r := range reference(t, "air_dry_101325.csv", 7) {
		got := At(0, unit.Temperature(r.number(t, "t_C")+273.15))
		nearly(t, r["id"]+" density", got.Density, r.number(t, "rho_kg_m3"), 1e-8)
		nearly(t, r["id"]+" viscosity", got.Viscosity, r.number(t, "mu_Pa_s"), 1e-8)
		nearly(t, r["id"]+" kinematic", got.Kinematic(), r.number(t, "nu_m2_s"), 1e-8)
	}
}

// Source: study notes on industrial ventilation: standard air 0.075 lb/ft³ at
// 70 °F, printed to three decimals.
func TestStandardAir(t *testing.T) {
	near(t, "standard density, lb/ft³", float64(Standard().Density)*foot*foot*foot/pound, 0.075, 0.0005)
	near(t, "ratio of standard air", Standard().Ratio(), 1, 0)
	nearly(t, "density at sea level and 70 °F", At(0, fahrenheit(70)).Density, float64(Standard().Density), 1e-14)
	nearly(t, "viscosity at sea level and 70 °F", At(0, fahrenheit(70)).Viscosity, float64(Standard().Viscosity), 1e-14)
}

// Source: the trade's altitude factor (1 − 6.8754e-6 z[ft])^5.2559, from
// memory, printed to four decimals, and its temperature factor 530/(460 + °F),
// study notes, to three.
func TestDensityFactors(t *testing.T) {
	for _, c := range []struct{ feet, factor float64 }{
		{0, 1}, {1000, .9644}, {2000, .9298}, {3000, .8962}, {4000, .8637}, {5000, .8321}, {6000, .8014}, {8000, .7428}, {10000, .6877},
	} {
		near(t, "altitude factor", At(unit.Length(c.feet*foot), fahrenheit(70)).Ratio(), c.factor, 2e-4)
	}
	for _, c := range []struct{ fahrenheit, factor float64 }{
		{0, 1.152}, {32, 1.077}, {50, 1.039}, {70, 1}, {100, .946}, {150, .869}, {200, .803},
	} {
		near(t, "temperature factor", At(0, fahrenheit(c.fahrenheit)).Ratio(), c.factor, 6e-4)
	}
}

func TestVelocityPressureAndSpeedUndoEachOther(t *testing.T) {
	s := At(1500, 280)
	for _, v := range []unit.Velocity{0, .1, 5, 20, 40} {
		near(t, "speed", s.Speed(s.VelocityPressure(v)), float64(v), 1e-12)
		if v > 0 && s.VelocityPressure(-v) != s.VelocityPressure(v) {
			t.Errorf("velocity pressure of %v depends on its direction", v)
		}
	}
	if s.Speed(-100) != -s.Speed(100) {
		t.Error("a negative pressure does not turn the speed round")
	}
	nearly(t, "ρ V²/2", State{Density: 1.2}.VelocityPressure(20), 240, 1e-15)
}

func TestCarryRaise(t *testing.T) {
	if got := CarryRaise(Standard()); got != 1 {
		t.Errorf("standard air raises by %v", got)
	}
	if got := CarryRaise(At(0, 260)); got != 1 {
		t.Errorf("cold, thick air raises by %v", got)
	}
	thin := At(2000, 293.15)
	nearly(t, "thin air", CarryRaise(thin), 1/math.Sqrt(thin.Ratio()), 1e-15)
	nearly(t, "same velocity pressure", thin.VelocityPressure(unit.Velocity(20*CarryRaise(thin))), float64(Standard().VelocityPressure(20)), 1e-12)
	if CarryRaise(thin) <= CarryRaise(At(1000, 293.15)) {
		t.Error("thinner air does not raise more")
	}
}

func TestPressureFallsWithAltitude(t *testing.T) {
	lowest, highest := Altitudes()
	near(t, "lowest, as the open fluid-mechanics library states its range", lowest, -610, 0)
	near(t, "highest, top of the first layer of the 1976 atmosphere", highest, 11000, 0)
	before := unit.Pressure(math.Inf(1))
	for z := lowest; z <= highest; z += 90 {
		if p := Pressure(z); !(p < before && p > 0) {
			t.Fatalf("pressure at %v m is %v, lower down %v", z, p, before)
		} else {
			before = p
		}
	}
}
