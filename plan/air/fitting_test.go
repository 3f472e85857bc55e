package air

import (
	"testing"

	"dustbook/plan/unit"
)

// Source: text of a calculation sheet: 60° two thirds, 45° one half, 30° one
// third of the 90° coefficient.
func TestElbow(t *testing.T) {
	for _, c := range []struct {
		turn  unit.Angle
		share float64
	}{{0, 0}, {15, 1. / 6}, {30, 1. / 3}, {37.5, 5. / 12}, {45, .5}, {60, 2. / 3}, {75, 5. / 6}, {90, 1}, {135, 1.5}, {180, 2}} {
		near(t, "elbow", Elbow(.24, c.turn), .24*c.share, 1e-15)
	}
	if Elbow(0, 60) != 0 {
		t.Error("an elbow without loss costs something")
	}
}

// Source: one published correlation for smooth bends of R/D 1.5, as the open
// fluid-mechanics library carries it, wall friction included: the shares lie
// within a fifth.
func TestElbowAgainstLibrary(t *testing.T) {
	rows := fittings(t)
	full := rows["bend90-rD1.5-Miller"]
	nearly(t, "45°", Elbow(full, 45), rows["bend45-rD1.5-Miller"], .2)
	nearly(t, "60°", Elbow(full, 60), rows["bend60-rD1.5-Miller"], .2)
}

// Source: branch entry table of the ventilation manual, from memory: typed a
// second time, so that a slip in the data row shows.
func TestEntry(t *testing.T) {
	for _, c := range []struct {
		angle unit.Angle
		k     float64
	}{{0, 0}, {10, .06}, {15, .09}, {20, .12}, {25, .15}, {30, .18}, {35, .21}, {40, .25}, {45, .28}, {50, .32}, {60, .44}, {90, 1}} {
		near(t, "entry", Entry(c.angle), c.k, 1e-15)
	}
	near(t, "between", Entry(55), .38, 1e-15)
	near(t, "under the first", Entry(5), .03, 1e-15)
	near(t, "against the flow, no figure", Entry(135), 1, 0)
	for x := unit.Angle(1); x <= 90; x++ {
		if Entry(x) <= Entry(x-1) {
			t.Errorf("entry does not rise at %v°", x)
		}
	}
}

// fittings are the rows of the open fluid-mechanics library by id.
func fittings(t *testing.T) map[string]float64 {
	t.Helper()
	byID := map[string]float64{}
	for _, r := range reference(t, "fitting_losses.csv", 36) {
		byID[r["id"]] = r.number(t, "value")
	}
	return byID
}
