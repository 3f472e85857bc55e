package unit

import (
	"math"
	"testing"
)

func TestGrid(t *testing.T) {
	for _, c := range []struct{ size, x, want float64 }{
		{0.326196, 0.0135379234, 0.013538},
		{0.326196, 0.3261964999, 0.326196},
		{2632.76, 2546.6812, 2546.68},
		{2632.76, -0.001, 0},
		{1, 0.123456789, 0.12346},
		{0.999999, 0.123456789, 0.123457},
		{1e7, 1234567.8, 1234600},
		{123456, 7.6, 8},
		{-2632.76, 1.2345, 1.23},
		{0, 5, 0},
		{math.NaN(), 5, 0},
	} {
		if got := Grid(c.size)(c.x); got != c.want || math.Signbit(got) {
			t.Errorf("Grid(%v)(%v) = %v, want %v", c.size, c.x, got, c.want)
		}
	}
	// what is rounded by one grid adds up as it stands
	round := Grid(0.31)
	a, b := round(0.1234565432), round(0.1865434568)
	if Six(a+b) != round(a+b) {
		t.Errorf("%v + %v = %v does not stand on the grid", a, b, a+b)
	}
}
