package air

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

func sizes(t *testing.T, id string) (from, to unit.Length) {
	t.Helper()
	for _, part := range strings.Split(id, "-") {
		var a, b float64
		if n, _ := fmt.Sscanf(part, "%gto%g", &a, &b); n == 2 {
			return unit.Length(a * mm), unit.Length(b * mm)
		}
	}
	t.Fatalf("%s names no sizes", id)
	return 0, 0
}

// each calls check for the library's rows whose id starts with prefix and ends
// with suffix, and wants n of them.
func each(t *testing.T, prefix, suffix string, n int, check func(id string, from, to unit.Length, want float64)) {
	t.Helper()
	found := 0
	for id, want := range fittings(t) {
		if strings.HasPrefix(id, prefix) && strings.HasSuffix(id, suffix) {
			found++
			from, to := sizes(t, id)
			check(id, from, to, want)
		}
	}
	if found != n {
		t.Errorf("%d rows %s…%s, want %d", found, prefix, suffix, n)
	}
}

func cone(t *testing.T, id string) unit.Angle {
	t.Helper()
	for _, part := range strings.Split(id, "-") {
		var angle float64
		if n, _ := fmt.Sscanf(part, "%gdeg", &angle); n == 1 && strings.HasSuffix(part, "deg") {
			return unit.Angle(angle)
		}
	}
	t.Fatalf("%s names no angle", id)
	return 0
}

// Source: Borda and Carnot, as the open fluid-mechanics library computes it.
func TestWideningStepAgainstLibrary(t *testing.T) {
	each(t, "expan-sharp", "", 4, func(id string, from, to unit.Length, want float64) {
		nearly(t, id, Widening(from, to, Abrupt), want, 1e-11)
	})
}

// Source: Crane TP 410 (2009) as the open fluid-mechanics library computes it.
func TestWideningConeAgainstLibrary(t *testing.T) {
	each(t, "diffuser", "-Crane", 2, func(id string, from, to unit.Length, want float64) {
		nearly(t, id, WideningCone(from, to, cone(t, id)), want, 1e-11)
	})
	from, to := unit.Length(.1), unit.Length(.15)
	near(t, "a stock reducer", Widening(from, to, Taper), WideningCone(from, to, StockCone()), 0)
	each(t, "diffuser", "30deg-Crane", 1, func(id string, from, to unit.Length, want float64) {
		nearly(t, "a stock reducer, "+id, Widening(from, to, Taper), want, 1e-11)
	})
}

// Source: Crane TP 410 (2009) as the open fluid-mechanics library carries it:
// 2.6 sin(θ/2) of a step up to 45°, a whole step beyond.
func TestWideningConeEndsAt45(t *testing.T) {
	step := Widening(.1, .2, Abrupt)
	near(t, "45°", WideningCone(.1, .2, 45), step*2.6*math.Sin(math.Pi/8), 1e-12)
	near(t, "over 45°", WideningCone(.1, .2, 45.1), step, 0)
	near(t, "no angle", WideningCone(.1, .2, 0), 0, 0)
}

// Source: a second published correlation for cones (Hooper), as the open
// fluid-mechanics library computes it: within 2 %.
func TestWideningConeAgainstSecondCorrelation(t *testing.T) {
	each(t, "diffuser", "-Hooper", 3, func(id string, from, to unit.Length, want float64) {
		nearly(t, id, WideningCone(from, to, cone(t, id)), want, .02)
	})
}

// Source: two published correlations for steps (Hooper, Rennels), as the open
// fluid-mechanics library computes them. The table in use, from memory, lies
// within 8 % of one and 15 % of the other.
func TestNarrowingStepAgainstLibrary(t *testing.T) {
	each(t, "contr-sharp", "-Hooper", 3, func(id string, from, to unit.Length, want float64) {
		nearly(t, id, Narrowing(from, to, Abrupt), want, .08)
	})
	each(t, "contr-sharp", "-Rennels", 4, func(id string, from, to unit.Length, want float64) {
		nearly(t, id, Narrowing(from, to, Abrupt), want, .15)
	})
	near(t, "out of a room", Narrowing(1e6, .1, Abrupt), fittings(t)["entr-sharp-Idelchik"], 1e-6)
}

// Source: contraction tables of the ventilation manual, from memory: typed a
// second time, so that a slip in the data row shows.
func TestNarrowingTables(t *testing.T) {
	for _, c := range []struct{ ratio, k float64 }{
		{.1, .48}, {.2, .46}, {.3, .42}, {.4, .37}, {.5, .32}, {.6, .26}, {.7, .20}, {.55, .29}, {.85, .10},
	} {
		near(t, "step", Narrowing(Diameter(1), Diameter(unit.Area(c.ratio)), Abrupt), c.k, 1e-12)
	}
	for _, c := range []struct{ angle, share float64 }{
		{5, .05}, {10, .06}, {15, .08}, {20, .10}, {25, .11}, {30, .13}, {45, .20}, {60, .30}, {2, .05}, {52.5, .25},
	} {
		rise := 1 - .5*.5 // of the velocity pressure, at half the area
		near(t, "taper", NarrowingCone(Diameter(1), Diameter(.5), unit.Angle(c.angle)), c.share*rise, 1e-12)
	}
	near(t, "over 60°", NarrowingCone(Diameter(1), Diameter(.5), 61), .32, 1e-12)
	near(t, "a stock reducer", Narrowing(.2, .1, Taper), NarrowingCone(.2, .1, StockCone()), 0)
}

// Source: published correlation for conical contractions (Rennels), as the
// open fluid-mechanics library computes it. The manual's figures, from memory,
// charge more: never less than the library's.
func TestNarrowingConeAgainstLibrary(t *testing.T) {
	each(t, "cone-contr", "", 3, func(id string, from, to unit.Length, want float64) {
		if got := NarrowingCone(from, to, cone(t, id)); got < want {
			t.Errorf("%s: %v charges less than the library's %v", id, got, want)
		}
	})
}

func TestNoChangeCostsNothing(t *testing.T) {
	for _, how := range []Change{None, Abrupt, Taper} {
		near(t, "same size, widening", Widening(.15, .15, how), 0, 0)
		near(t, "same size, narrowing", Narrowing(.15, .15, how), 0, 0)
		near(t, "no widening", Widening(.2, .15, how), 0, 0)
		near(t, "no narrowing", Narrowing(.15, .2, how), 0, 0)
	}
	near(t, "none, widening", Widening(.1, .2, None), 0, 0)
	near(t, "none, narrowing", Narrowing(.2, .1, None), 0, 0)
}

func TestChangesGrowWithTheStep(t *testing.T) {
	for _, how := range []Change{Abrupt, Taper} {
		wide, narrow := 0.0, 0.0
		for size := unit.Length(.101); size < 1; size += .01 {
			w, n := Widening(.1, size, how), Narrowing(size, .1, how)
			if !(w > wide && n > narrow && w < 1 && n < 1) {
				t.Fatalf("%v to %v: widening %v after %v, narrowing %v after %v", how, size, w, wide, n, narrow)
			}
			if how == Taper && (w >= Widening(.1, size, Abrupt) || n >= Narrowing(size, .1, Abrupt)) {
				t.Errorf("to %v: a taper costs as much as a step", size)
			}
			wide, narrow = w, n
		}
	}
}

func TestReadChange(t *testing.T) {
	for _, how := range []Change{None, Abrupt, Taper} {
		if got, ok := ReadChange(how.String()); !ok || got != how {
			t.Errorf("%v reads back as %v, %v", how, got, ok)
		}
	}
	if _, ok := ReadChange("sudden"); ok {
		t.Error("an unknown change was read")
	}
}
