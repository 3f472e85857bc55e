package air

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// Source: Colebrook's law as the open fluid-mechanics library solves it.
func TestFactorAgainstColebrook(t *testing.T) {
	for _, r := range reference(t, "friction_turbulent.csv", 33) {
		nearly(t, r["id"], Factor(r.number(t, "Re"), r.number(t, "eD")), r.number(t, "Colebrook"), 1e-9)
	}
}

// Source: 64/Re as the open fluid-mechanics library has it. Its own limit to
// turbulence lies elsewhere, so only rows up to 2000 compare.
func TestFactorAgainstLaminar(t *testing.T) {
	compared := 0
	for _, r := range reference(t, "friction_laminar_transition.csv", 16) {
		re, rough := r.number(t, "Re"), r.number(t, "eD")
		laminar, got := r.number(t, "laminar_64_over_Re"), Factor(re, rough)
		if re <= 2000 {
			compared++
			nearly(t, r["id"], got, laminar, 1e-11)
			continue
		}
		if turbulent := Factor(4000, rough); !(got > laminar && got < turbulent) {
			t.Errorf("%s: %v does not lie between laminar %v and that at 4000, %v", r["id"], got, laminar, turbulent)
		}
	}
	if compared != 7 {
		t.Errorf("%d laminar rows compared, want 7", compared)
	}
}

// Source: straight ducts as the open fluid-mechanics library reckons them.
func TestStraightAgainstLibrary(t *testing.T) {
	for _, r := range reference(t, "straight_duct_dp.csv", 30) {
		s := State{Density: unit.Density(r.number(t, "rho")), Viscosity: unit.Viscosity(r.number(t, "mu"))}
		d, v := unit.Length(r.number(t, "D_m")), unit.Velocity(r.number(t, "V_m_s"))
		nearly(t, r["id"]+" Reynolds", Reynolds(s, v, d), r.number(t, "Re"), 1e-11)
		got := Straight(s, d, unit.Length(r.number(t, "roughness_m")), 1, FlowIn(v, d))
		nearly(t, r["id"], got, r.number(t, "dp_Pa_per_m"), 1e-9)
	}
}

// Source: public engineering reference, friction chart, 20 in duct and 4000
// cfm: about 0.23 in wg in 100 ft and 1850 fpm, read from a chart, so 10 %.
func TestStraightAgainstChart(t *testing.T) {
	d, q := unit.Length(20*inch), unit.Flow(4000*cfm)
	nearly(t, "speed, fpm", SpeedIn(q, d)/fpm, 1850, .1)
	nearly(t, "loss, in wg", Straight(Standard(), d, .0005*foot, 100*foot, q)/inwg, .23, .1)
}

var roughnesses = []float64{0, 1e-6, 1e-4, 1e-3, 1e-2, 5e-2}

func TestFactorIsContinuous(t *testing.T) {
	for _, rough := range roughnesses {
		for _, re := range []float64{2000, 4000} {
			below, above := Factor(math.Nextafter(re, 0), rough), Factor(math.Nextafter(re, 1e9), rough)
			near(t, "just below", below, Factor(re, rough), 1e-12)
			near(t, "just above", above, Factor(re, rough), 1e-12)
		}
		near(t, "half way", Factor(3000, rough), (Factor(2000, rough)+Factor(4000, rough))/2, 1e-15)
	}
}

// The factor solves Colebrook's law itself, over more than the range in use.
func TestFactorSolvesColebrook(t *testing.T) {
	for _, rough := range roughnesses {
		for re := 4000.0; re < 1e8; re *= 1.07 {
			x := 1 / math.Sqrt(Factor(re, rough))
			near(t, "Colebrook's law", x, -2*math.Log10(rough/3.7+2.51*x/re), 1e-10)
		}
	}
}

func TestFactorSlopeAgainstDifferences(t *testing.T) {
	for _, rough := range roughnesses {
		for _, re := range []float64{10, 500, 1900, 2100, 3000, 3900, 4100, 1e4, 1e5, 1e6, 1e7} {
			f, slope := FactorSlope(re, rough)
			if f != Factor(re, rough) {
				t.Errorf("Re %v: FactorSlope gives %v, Factor %v", re, f, Factor(re, rough))
			}
			h := re * 1e-4
			difference := (Factor(re+h, rough) - Factor(re-h, rough)) / (2 * h)
			near(t, "slope", slope, difference, 1e-6*f/re+1e-6*math.Abs(slope))
		}
	}
}

func TestFactorFallsWithReynoldsAndRisesWithRoughness(t *testing.T) {
	for re := 4000.0; re < 1e8; re *= 1.3 {
		for i, rough := range roughnesses {
			if Factor(re*1.3, rough) >= Factor(re, rough) {
				t.Errorf("factor does not fall at Re %v, roughness %v", re, rough)
			}
			if i > 0 && Factor(re, rough) <= Factor(re, roughnesses[i-1]) {
				t.Errorf("factor does not rise with roughness %v at Re %v", rough, re)
			}
		}
	}
}

func TestStraightSlopeAgainstDifferences(t *testing.T) {
	s, d, rough, length := Standard(), unit.Length(.1), unit.Length(.00015), unit.Length(3)
	flowAt := func(re float64) float64 { return float64(FlowIn(unit.Velocity(re*s.Kinematic()/float64(d)), d)) }
	for _, re := range []float64{-5e5, -3000, -100, 100, 1900, 3000, 4500, 1e5, 5e5} {
		q := flowAt(re)
		loss, slope := StraightSlope(s, d, rough, length, unit.Flow(q))
		if back, same := StraightSlope(s, d, rough, length, unit.Flow(-q)); back != -loss || same != slope {
			t.Errorf("Re %v: the loss is not the same the other way", re)
		}
		h := math.Abs(q) * 1e-5
		up, down := Straight(s, d, rough, length, unit.Flow(q+h)), Straight(s, d, rough, length, unit.Flow(q-h))
		nearly(t, "slope", slope, float64(up-down)/(2*h), 1e-6)
	}
	loss, slope := StraightSlope(s, d, rough, length, 0)
	if loss != 0 || !(slope > 0) {
		t.Errorf("no flow: loss %v, slope %v", loss, slope)
	}
}

func TestStraightRisesWithFlow(t *testing.T) {
	s, d := Standard(), unit.Length(.125)
	before := unit.Pressure(0)
	for q := unit.Flow(1e-5); q < 1; q *= 1.05 {
		loss, slope := StraightSlope(s, d, .0015, 10, q)
		if !(loss > before && slope > 0) {
			t.Fatalf("at %v m³/s: loss %v after %v, slope %v", q, loss, before, slope)
		}
		nearly(t, "twice as long", Straight(s, d, .0015, 20, q), 2*float64(loss), 1e-14)
		before = loss
	}
}

func TestFrictionAllocatesNothing(t *testing.T) {
	total := 0.0
	allocations := testing.AllocsPerRun(100, func() {
		_, slope := StraightSlope(Standard(), .1, .00015, 1, .2)
		total += slope + Factor(3000, 1e-3)
	})
	if allocations != 0 {
		t.Errorf("%v allocations", allocations)
	}
}

var kept float64

func BenchmarkFactorCold(b *testing.B) {
	re := 2e4
	for b.Loop() {
		kept += Factor(re, 1.5e-3)
		if re *= 1.01; re > 5e5 {
			re = 2e4
		}
	}
}

func BenchmarkFactorBetween(b *testing.B) {
	for b.Loop() {
		kept += Factor(3000, 1.5e-3)
	}
}

func BenchmarkStraightSlope(b *testing.B) {
	s := Standard()
	for b.Loop() {
		loss, slope := StraightSlope(s, .15, .00015, 3, .35)
		kept += float64(loss) + slope
	}
}
