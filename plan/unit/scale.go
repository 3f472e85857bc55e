package unit

import "math"

// System is the system of units a sheet is printed in.
type System uint8

// The two systems. US is the zero value.
const (
	US System = iota
	Metric
)

// String is the system's word in the shop file: "us" or "metric".
func (s System) String() string {
	if s == Metric {
		return "metric"
	}
	return "us"
}

// Scale is how a column or a sentence prints a quantity: one unit and one
// count of figures for each system.
type Scale[Q Measure] struct{ us, metric column }

// column prints a value in one unit.
type column struct {
	unit        string
	per, offset float64 // value in SI = (number + offset) × per
	format      format
	larger      []column // the units it prints large values in, the largest first
}

// in is a column of a unit of the table. It panics on a unit the table does
// not know, which is a fault of the program.
func in(name string, f format) column {
	d := units.find(name)
	if d == nil || d.factor == nil {
		panic("unit: no unit to print in: " + name)
	}
	per, _ := d.factor.Float64()
	offset, _ := d.offset.Float64()
	return column{unit: name, per: per, offset: offset, format: f}
}

// upward prints a value that fills one of the larger units in that unit, the
// largest first.
func (c column) upward(names ...string) column {
	for _, name := range names {
		c.larger = append(c.larger, in(name, c.format))
	}
	return c
}

// fit is the column a value is printed in where its unit stands beside it.
func (c column) fit(si float64) column {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return c
	}
	for _, l := range c.larger {
		if n := l.format.rounded(l.number(Six(si)), sixDigits); n.figs != "" && n.size() > 0 {
			return l
		}
	}
	return c
}

// both prints in the same unit in either system.
func both[Q Measure](c column) Scale[Q] { return Scale[Q]{c, c} }

func (c column) number(si float64) float64 { return si/c.per - c.offset }

func (c column) figure(si float64) string { return printed(c.number(Six(si)), sixDigits, c.format) }

func (s Scale[Q]) column(sys System) column {
	if sys == Metric {
		return s.metric
	}
	return s.us
}

// Unit is the unit's name: "cfm", "m³/h".
func (s Scale[Q]) Unit(sys System) string { return s.column(sys).unit }

// Figure is the number alone: "1040".
func (s Scale[Q]) Figure(sys System, q Q) string { return s.column(sys).figure(float64(q)) }

// Print is the number with its unit: "1040 cfm". Where the scale has larger
// units, a large value stands in one of them: "50 Mohm".
func (s Scale[Q]) Print(sys System, q Q) string {
	c := s.column(sys).fit(float64(q))
	if c.unit == "°" {
		return c.figure(float64(q)) + c.unit
	}
	return c.figure(float64(q)) + " " + c.unit
}

// In is the number in the unit, not rounded, for the axis of a chart.
func (s Scale[Q]) In(sys System, q Q) float64 { return s.column(sys).number(float64(q)) }

// The digits that decide between two values of a pair, and the most that are
// added to tell them apart.
const (
	pairDigits = 12
	mostExtra  = 320
)

// Pair is the figures of a value and of what it is compared with. Two that
// differ after Six get as many more figures as it takes to print unlike; two
// that are equal after Six print alike.
func (s Scale[Q]) Pair(sys System, a, b Q) (string, string) {
	c := s.column(sys)
	x, y := Six(float64(a)), Six(float64(b))
	first, second := c.figure(x), c.figure(y)
	if x == y || math.IsNaN(x) || math.IsNaN(y) {
		return first, second
	}
	for extra := 1; first == second && extra <= mostExtra; extra++ {
		f := c.format.finer(extra)
		first, second = printed(c.number(x), pairDigits, f), printed(c.number(y), pairDigits, f)
	}
	return first, second
}

// finer is the format with this many more figures.
func (f format) finer(extra int) format {
	if f.digits > 0 {
		f.digits += extra
	}
	f.decimals += extra
	return f
}
