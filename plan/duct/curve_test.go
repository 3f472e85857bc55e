package duct

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"testing"
)

// Values and slopes of a library's monotone cubic (testdata/cubic.json names
// it): falling and humped curves, a level piece, ends that are turned or
// limited.
func TestCubicAgainstLibrary(t *testing.T) {
	data, err := os.ReadFile("testdata/cubic.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Curves []struct {
			Name   string
			X, Y   []float64
			Values [][3]float64
		}
	}
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, c := range file.Curves {
		curve := NewCubic(c.X, c.Y)
		for _, v := range c.Values {
			checked++
			p, slope := curve.At(v[0])
			if math.Abs(p-v[1]) > 1e-12*3000 || math.Abs(slope-v[2]) > 1e-12*10000 {
				t.Errorf("%s at %g: %.15g with slope %.15g, want %.15g and %.15g", c.Name, v[0], p, slope, v[1], v[2])
			}
		}
	}
	if checked < 86 {
		t.Errorf("checked %d values, want 86", checked)
	}
}

// Slopes by hand, from the formula of Fritsch and Butland (1984): at an inner
// point (w1 + w2)/(w1/s1 + w2/s2) with w1 = 2 h2 + h1 and w2 = h2 + 2 h1; at an
// end ((2 h1 + h2) s1 − h1 s2)/(h1 + h2).
func TestCubicByHand(t *testing.T) {
	tests := []struct {
		name string
		x, y []float64
		want []float64
	}{
		// secants 2 and 1 over 1 and 3: w1 = 7, w2 = 5
		{"uneven", []float64{0, 1, 4}, []float64{0, 2, 5}, []float64{9.0 / 4, 12 / (7/2.0 + 5), 1.0 / 4}},
		// secants −1 and −3 over 1 and 1: harmonic mean
		{"even", []float64{0, 1, 2}, []float64{8, 7, 4}, []float64{0, -2 / (1 + 1/3.0), -4}},
		{"turns", []float64{0, 1, 2}, []float64{0, 1, 0}, []float64{2, 0, -2}},
		// the end would be ((3)(1) + 1·9)/2 = 6: limited to three secants
		{"limited", []float64{0, 1, 2}, []float64{0, 1, -8}, []float64{3, 0, -14}},
		{"level", []float64{0, 1, 2}, []float64{5, 5, 1}, []float64{0, 0, -6}},
		{"two points", []float64{1, 3}, []float64{5, 1}, []float64{-2, -2}},
	}
	for _, test := range tests {
		c := NewCubic(test.x, test.y)
		for i, want := range test.want {
			if math.Abs(c.slope[i]-want) > 1e-14 {
				t.Errorf("%s: slope %d is %.16g, want %.16g", test.name, i, c.slope[i], want)
			}
		}
	}
}

func TestCubicNeverOvershoots(t *testing.T) {
	draw := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		n := 2 + draw.IntN(9)
		x, y := make([]float64, n), make([]float64, n)
		at := 0.0
		for i := range x {
			x[i], y[i] = at, math.Round(20*draw.Float64())*100
			at += 0.001 + draw.Float64()
		}
		c := NewCubic(x, y)
		for i := range x {
			if p, _ := c.At(x[i]); math.Abs(p-y[i]) > 1e-9 {
				t.Fatalf("%v %v: %g at point %d", x, y, p, i)
			}
		}
		for i := 1; i < n; i++ {
			checkPiece(t, c, x[i-1], x[i], y[i-1], y[i])
		}
	}
}

// checkPiece checks that a piece runs from end to end without turning, and
// that its slope is that of its values.
func checkPiece(t *testing.T, c *Cubic, x0, x1, y0, y1 float64) {
	t.Helper()
	const steps = 40
	h := (x1 - x0) / steps
	last := y0
	for k := 1; k <= steps; k++ {
		q := x0 + h*float64(k)
		p, slope := c.At(q)
		if (p-last)*(y1-y0) < -1e-9*math.Abs(y1-y0) || p < min(y0, y1)-1e-9 || p > max(y0, y1)+1e-9 {
			t.Fatalf("between (%g, %g) and (%g, %g): %g after %g", x0, y0, x1, y1, p, last)
		}
		last = p
		if k == steps {
			continue
		}
		left, _ := c.At(q - h/100)
		right, _ := c.At(q + h/100)
		if byHand := (right - left) / (h / 50); math.Abs(byHand-slope) > 1e-5*math.Max(math.Abs(slope), math.Abs(y1-y0)/(x1-x0))+1e-6 {
			t.Fatalf("slope %g at %g, differences say %g", slope, q, byHand)
		}
	}
}

func TestCubicBeyondItsPoints(t *testing.T) {
	c := NewCubic([]float64{1, 2, 4}, []float64{10, 8, 0})
	for _, q := range []float64{-5, 0.5, 4.5, 90} {
		end, y, slope := 1.0, 10.0, c.slope[0]
		if q > 4 {
			end, y, slope = 4, 0, c.slope[2]
		}
		if p, s := c.At(q); math.Abs(p-(y+slope*(q-end))) > 1e-12 || s != slope {
			t.Errorf("at %g: %g with slope %g, want the end's straight line", q, p, s)
		}
	}
	if low, high := c.Range(); low != 1 || high != 4 {
		t.Errorf("range %g to %g, want 1 to 4", low, high)
	}
}

func TestFalls(t *testing.T) {
	x := []float64{0, 1, 2, 3}
	for _, test := range []struct {
		y    []float64
		want bool
	}{
		{[]float64{9, 8, 7, 0}, true},
		{[]float64{9, 9, 7, 7}, true},
		{[]float64{9, 9.1, 7, 0}, false},
		{[]float64{9, 8, 7, 7.1}, false},
	} {
		if got := NewCubic(x, test.y).falls(); got != test.want {
			t.Errorf("%v falls: %v, want %v", test.y, got, test.want)
		}
	}
}

// The parabola of two claims: p = S (1 − (q/Q)²).
func TestParabola(t *testing.T) {
	c := Parabola{Flow: 0.8, Suction: 2400}
	for _, test := range [][3]float64{{0, 2400, 0}, {0.4, 1800, -3000}, {0.8, 0, -6000}, {-1, 2400, 0}, {1.6, -7200, -12000}} {
		if p, slope := c.At(test[0]); math.Abs(p-test[1]) > 1e-9 || math.Abs(slope-test[2]) > 1e-9 {
			t.Errorf("at %g: %g with slope %g, want %g and %g", test[0], p, slope, test[1], test[2])
		}
	}
	if low, high := c.Range(); low != 0 || high != 0.8 {
		t.Errorf("range %g to %g, want 0 to 0.8", low, high)
	}
}
