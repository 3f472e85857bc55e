package duct

import (
	"math"
	"sort"
)

// Curve is a fan curve as a function: pressure at a flow, and its slope.
type Curve interface {
	At(q float64) (p, slope float64)
	Range() (low, high float64)
}

// Cubic is a smooth line through points that never overshoots between them:
// a monotone cubic. Slopes are zero where neighbouring secants change sign,
// else their weighted harmonic mean; the slopes at the ends come from three
// points and are limited to three secants.
// (Fritsch and Butland 1984, in the weighted form common in libraries.)
type Cubic struct{ x, y, slope []float64 }

// NewCubic takes at least two points in rising order of x.
func NewCubic(x, y []float64) *Cubic {
	n := len(x)
	c := &Cubic{x: x, y: y, slope: make([]float64, n)}
	if n == 2 {
		c.slope[0] = (y[1] - y[0]) / (x[1] - x[0])
		c.slope[1] = c.slope[0]
		return c
	}
	h, secant := make([]float64, n-1), make([]float64, n-1)
	for i := range h {
		h[i] = x[i+1] - x[i]
		secant[i] = (y[i+1] - y[i]) / h[i]
	}
	for i := 1; i < n-1; i++ {
		if secant[i-1]*secant[i] <= 0 {
			continue
		}
		w1, w2 := 2*h[i]+h[i-1], h[i]+2*h[i-1]
		c.slope[i] = (w1 + w2) / (w1/secant[i-1] + w2/secant[i])
	}
	c.slope[0] = endSlope(h[0], h[1], secant[0], secant[1])
	c.slope[n-1] = endSlope(h[n-2], h[n-3], secant[n-2], secant[n-3])
	return c
}

// endSlope is the three-point slope at an end, kept to the sign of the first
// secant and to three times its size.
func endSlope(h0, h1, s0, s1 float64) float64 {
	slope := ((2*h0+h1)*s0 - h0*s1) / (h0 + h1)
	switch {
	case slope*s0 <= 0:
		return 0
	case s0*s1 <= 0 && math.Abs(slope) > 3*math.Abs(s0):
		return 3 * s0
	}
	return slope
}

// At is the value and slope at q; outside the points the end's straight line.
func (c *Cubic) At(q float64) (p, slope float64) {
	n := len(c.x)
	if !(q > c.x[0]) { // nor is no number inside
		return c.y[0] + c.slope[0]*(q-c.x[0]), c.slope[0]
	}
	if q >= c.x[n-1] {
		return c.y[n-1] + c.slope[n-1]*(q-c.x[n-1]), c.slope[n-1]
	}
	i := sort.SearchFloat64s(c.x, q)
	if c.x[i] > q {
		i--
	}
	h := c.x[i+1] - c.x[i]
	t := (q - c.x[i]) / h
	u := 1 - t
	y0, y1, m0, m1 := c.y[i], c.y[i+1], c.slope[i], c.slope[i+1]
	p = y0*u*u*(1+2*t) + y1*t*t*(3-2*t) + h*t*u*(m0*u-m1*t)
	slope = 6*t*u*(y1-y0)/h + m0*u*(1-3*t) + m1*t*(3*t-2)
	return p, slope
}

// Range is where the curve is known.
func (c *Cubic) Range() (low, high float64) { return c.x[0], c.x[len(c.x)-1] }

// Points are the curve's own points.
func (c *Cubic) Points() (x, y []float64) { return c.x, c.y }

// falls reports whether the points never rise.
func (c *Cubic) falls() bool {
	for i := 1; i < len(c.y); i++ {
		if c.y[i] > c.y[i-1] {
			return false
		}
	}
	return true
}

// Parabola is the stand-in for a curve where only the two printed claims are
// known: full suction at no flow, no suction at full flow.
type Parabola struct{ Flow, Suction float64 }

// At is the pressure at q and its slope.
func (c Parabola) At(q float64) (p, slope float64) {
	if q <= 0 {
		return c.Suction, 0
	}
	r := q / c.Flow
	return c.Suction * (1 - r*r), -2 * c.Suction * r / c.Flow
}

// Range is from rest to the claimed flow.
func (c Parabola) Range() (low, high float64) { return 0, c.Flow }
