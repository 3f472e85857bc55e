package drawing

import (
	"math"
	"strconv"

	"dustbook/plan/unit"
)

// Size of a chart's plot, in tenths.
const (
	plotWide = 7200
	plotDeep = 4000
)

// axis is one axis of a chart: from nought to a round end, in printed units.
type axis struct {
	end, step float64
	decimals  int
	long      int // tenths
}

// newAxis is an axis that reaches at least to a value, with about so many
// ticks at 1, 2 or 5 times a power of ten.
func newAxis(reaches float64, ticks float64, long int) axis {
	if !(reaches > 0) {
		reaches = 1
	}
	step := roundLength(reaches / ticks)
	if unit.Compare(reaches/step, ticks*1.6) > 0 {
		step = nextRound(step)
	}
	a := axis{step: step, long: long}
	a.end = unit.Six(math.Ceil(unit.Six(reaches/step)) * step)
	for d := 0; d < 9 && unit.Compare(math.Round(step*math.Pow10(d)), step*math.Pow10(d)) != 0; d++ {
		a.decimals = d + 1
	}
	return a
}

// nextRound is the next larger of 1, 2, 5, 10 …
func nextRound(step float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(unit.Six(step*1.0001))))
	switch lead := math.Round(step / power); lead {
	case 1:
		return unit.Six(2 * power)
	case 2:
		return unit.Six(5 * power)
	}
	return unit.Six(10 * power)
}

// at is how far along the axis a value lies, in tenths.
func (a axis) at(value float64) int { return tenths(value / a.end * float64(a.long) / 10) }

// ticks are the values at which the axis is marked.
func (a axis) ticks() []float64 {
	var list []float64
	for i := 0; unit.Compare(float64(i)*a.step, a.end) <= 0; i++ {
		list = append(list, unit.Six(float64(i)*a.step))
	}
	return list
}

// gridCost is little: what is written on the grid breaks it.
const gridCost = 10

// chart is a plot with two axes; its origin is the lower left corner.
type chart struct {
	pen
	field
	sys   unit.System
	x, y  axis
	lines []*label
}

// point is the place of a pair of values in printed units.
func (c *chart) point(x, y float64) spot { return spot{c.x.at(x), -c.y.at(y)} }

// drawAxes draws the grid, the axes, their figures and what they measure.
func (c *chart) drawAxes(xSays, ySays string) {
	for _, v := range c.x.ticks() {
		at := c.x.at(v)
		c.curve(gridLook, gridCost, path{{at, 0}, {at, -plotDeep}})
		c.line(look{line: dark, weight: 10}, "", spot{at, 0}, spot{at, 60})
		b := writing(strconv.FormatFloat(v, 'f', c.x.decimals, 64), false, smallText, 3000, 1)
		in := around(spot{at, 160}, b.width()/2, b.height()/2)
		c.write(&b, in, centred)
		c.keep(in)
	}
	for _, v := range c.y.ticks() {
		at := -c.y.at(v)
		c.curve(gridLook, gridCost, path{{0, at}, {plotWide, at}})
		c.line(look{line: dark, weight: 10}, "", spot{-60, at}, spot{0, at})
		c.keep(c.note(strconv.FormatFloat(v, 'f', c.y.decimals, 64), spot{-110, at}, fromEnd))
	}
	c.line(axisLook, "", spot{0, -plotDeep}, spot{0, 0}, spot{plotWide, 0})
	c.keep(c.note(xSays, spot{plotWide, 380}, fromEnd))
	c.keep(c.note(ySays, spot{-300, -plotDeep - 240}, fromStart))
}

// keep keeps labels off a box.
func (c *chart) keep(b box) { c.solids = append(c.solids, b) }

// mostChords is about how many straight strips stand in for a curve.
const mostChords = 24

// curve draws a run of points and makes it cost labels that lie on it.
func (c *chart) curve(l look, cost int, points path) {
	c.line(l, "", points...)
	apart := 1 + (len(points)-2)/mostChords // a smooth curve hardly leaves the chord of a few points
	for i := 0; i+1 < len(points); i += apart {
		c.strips = append(c.strips, strip{a: points[i], c: points[min(i+apart, len(points)-1)], half: l.weight, cost: cost})
	}
}

// finish places and draws the labels and the key, and frames the chart.
func (c *chart) finish(id, title, desc string, key []sign, notes []string) SVG {
	c.settle(c.lines, 2)
	c.drawLabels(&c.pen, c.lines)
	c.foot(key, notes)
	return c.frame(id, title, desc, margin)
}
