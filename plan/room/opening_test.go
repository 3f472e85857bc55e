package room

import (
	"fmt"
	"testing"

	"dustbook/plan/unit"
)

const squareFoot = 0.09290304

// The openings for 1000 cfm at Cd 0.65 and 1.2 kg/m3: table computed with an
// open building-airflow library.
func TestOpeningForAPressure(t *testing.T) {
	for _, c := range []struct {
		pascals unit.Pressure
		area    string
	}{{2, "4.28"}, {3, "3.50"}, {5, "2.71"}, {15, "1.56"}} {
		area := Face(flow("1000 cfm"), standard.face(c.pascals))
		if got := fmt.Sprintf("%.2f", float64(area)/squareFoot); got != c.area {
			t.Errorf("%g Pa: %s ft2, want %s", float64(c.pascals), got, c.area)
		}
		if back := standard.pressureOf(flow("1000 cfm"), area); !near(float64(back), float64(c.pascals), 1e-12) {
			t.Errorf("%g Pa: the area gives %g Pa back", float64(c.pascals), float64(back))
		}
	}
}

// The power law of an envelope, three worked values (the exponent is from
// memory): 600 cfm against 2000 at 50 Pa give 7.8 Pa, 400 against 3000 2.3,
// 1000 against 2000 17.
func TestEnvelope(t *testing.T) {
	for _, c := range []struct{ through, at50, pascals string }{
		{"600 cfm", "2000 cfm", "7.8"}, {"400 cfm", "3000 cfm", "2.3"}, {"1000 cfm", "2000 cfm", "17.2"},
	} {
		holes := crackOf(flow(c.at50), 50, exponent)
		dp := holes.pressureOf(flow(c.through))
		if got := fmt.Sprintf("%.1f", float64(dp)); got != c.pascals {
			t.Errorf("%s of %s: %s Pa, want %s", c.through, c.at50, got, c.pascals)
		}
		if back := holes.flow(dp); !near(float64(back), float64(flow(c.through)), 1e-12) {
			t.Errorf("%s of %s: %g back", c.through, c.at50, float64(back))
		}
	}
}

// A hall of 100,000 ft3 blown out at 1300 cfm: 0.78 air changes an hour by its
// people's own formula, 70,200 Btu/h or 20.6 kW at a difference of 50 F (a
// published account, recomputed).
func TestHallInWinter(t *testing.T) {
	q := flow("1300 cfm")
	const fifty = 50 / 1.8
	if got := fmt.Sprintf("%.1f", float64(TradeWarming(q, fifty))/1000); got != "20.6" {
		t.Errorf("by the trade's factor: %s kW", got)
	}
	exact := Warming(unit.Must[unit.Density]("0.075 lb/ft3"), q, fifty)
	if trade := TradeWarming(q, fifty); !near(float64(exact), float64(trade), 0.01) {
		t.Errorf("%g W, by the trade's factor %g", float64(exact), float64(trade))
	}
	s := mustRead(t, hall)
	if got := fmt.Sprintf("%.2f", Spaces(s)[0].Changes(q, 1).V); got != "0.78" {
		t.Errorf("%s changes an hour", got)
	}
	if got := Spaces(s)[0].Changes(q, 0.5).V; !near(got, 0.39, 1e-5) {
		t.Errorf("%g changes an hour half of the time", got)
	}
}

const hall = `[shop]
name = "Hall"
[[room]]
name = "Hall"
outline = [[0,0],[50,0],[50,100],[0,100]]
height = "20 ft"
`

// A small shop whose air comes in by one opening: 700 cfm through 6 in is
// 3565 fpm and 0.8 inwg; a passive opening wants 1.4 ft2; 700 cfm are 17.6
// changes an hour of 2392 ft3 (a published account, recomputed; the speed of a
// passive opening is common practice, no source).
func TestSmallShopInTheHeat(t *testing.T) {
	q := flow("700 cfm")
	inlet := unit.Area(0.1963 * squareFoot)
	v := SpeedThrough(q, inlet)
	if got := fmt.Sprintf("%.0f", float64(v)/0.00508); got != "3566" && got != "3565" {
		t.Errorf("%s fpm", got)
	}
	if got := fmt.Sprintf("%.1f", float64(standard.dynamic(v))/249.089); got != "0.8" {
		t.Errorf("%s inwg", got)
	}
	if got := fmt.Sprintf("%.1f", float64(Face(q, inletSpeed))/squareFoot); got != "1.4" {
		t.Errorf("%s ft2", got)
	}
	s := mustRead(t, `[shop]
name = "Small"
[[room]]
name = "Shop"
outline = [[0,0],[13,0],[13,23],[0,23]]
height = "8 ft"
`)
	if got := fmt.Sprintf("%.1f", Spaces(s)[0].Changes(q, 1).V); got != "17.6" {
		t.Errorf("%s changes an hour", got)
	}
}

// The way back behind a pipe of 20 in: 471 to 628 in2 (a published account:
// one and a half to twice the pipe's area; common practice, no source).
func TestBaffle(t *testing.T) {
	s := mustRead(t, `[shop]
name = "Small"
[[collector]]
name = "Cyclone"
inlet = "8 in"
claims = { flow = "6000 cfm", suction = "12 inwg" }
outlet = { size = "20 in", length = "2 ft" }
`)
	area := baffle(s.Collectors[0])
	const squareInch = squareFoot / 144
	if low, high := float64(area[0].V)/squareInch, float64(area[1].V)/squareInch; !near(low, 471, 0.001) || !near(high, 628, 0.001) {
		t.Errorf("%.0f to %.0f in2", low, high)
	}
}

// A basement of 9450 ft3 wants 945 to 1575 cfm for 6 to 10 changes an hour;
// 1000 cfm for a quarter of the time make 1.6 (a published account,
// recomputed; the changes are common practice, no source).
func TestCleanerOfABasement(t *testing.T) {
	s := Spaces(mustRead(t, `[shop]
name = "Basement"
[[room]]
name = "Shop"
outline = [[0,0],[45,0],[45,30],[0,30]]
height = "7 ft"
`))[0]
	const cfm = 0.00047194745
	if low, high := float64(s.CleanerLeast.V)/cfm, float64(s.CleanerMost.V)/cfm; !near(low, 945, 1e-3) || !near(high, 1575, 1e-3) {
		t.Errorf("%.0f to %.0f cfm", low, high)
	}
	if got := fmt.Sprintf("%.1f", s.Changes(flow("1000 cfm"), 0.25).V); got != "1.6" {
		t.Errorf("%s changes an hour", got)
	}
}

// 400 cfm want 0.8 to 1.3 ft2 of grille on their way back (a published
// account, recomputed; the speeds are common practice, no source).
func TestWayBackOfASideRoom(t *testing.T) {
	low, high := float64(Face(flow("400 cfm"), returnFast))/squareFoot, float64(Face(flow("400 cfm"), returnSlow))/squareFoot
	if got := fmt.Sprintf("%.1f %.1f", low, high); got != "0.8 1.3" {
		t.Errorf("%s ft2", got)
	}
}
