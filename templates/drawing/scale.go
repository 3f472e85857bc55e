package drawing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// The size of a plan at growth one, in drawing units: what the building and
// its ducts fill of a landscape sheet, and the most units for a metre, so
// that a small shop is not blown up.
const (
	sheetWidth  = 960
	sheetDepth  = 560
	mostUnits   = 105
	turnedAbove = 1.3 // depth over width from which the plan is turned
)

// scale turns metres into places on the drawing.
type scale struct {
	units  float64 // drawing units in a metre
	left   float64 // metres: what lies at nought
	top    float64
	turned bool // a quarter to the left: the file's x runs up the sheet
}

// at is the place of a point.
func (k scale) at(p shop.Point) spot {
	x, y := p.X-k.left, p.Y-k.top
	if k.turned {
		x, y = p.Y-k.top, -(p.X - k.left)
	}
	return spot{tenths(x * k.units), tenths(y * k.units)}
}

// spot is the place of a point of a route, seen from above.
func (k scale) spot(s shop.Spot) spot { return k.at(shop.Point{X: s.X, Y: s.Y}) }

// long is a length in tenths of a unit.
func (k scale) long(metres float64) int { return tenths(metres * k.units) }

// scaleFor fits everything that has coordinates to the sheet; growth makes
// the drawing larger.
func scaleFor(s *shop.Shop, growth float64) (k scale, any bool) {
	points := everyPoint(s)
	if len(points) == 0 {
		return scale{units: 1}, false
	}
	low, high := points[0], points[0]
	for _, p := range points[1:] {
		low = shop.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
		high = shop.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
	}
	wide, deep := math.Max(high.X-low.X, 1), math.Max(high.Y-low.Y, 1)
	k = scale{left: low.X, top: low.Y, turned: unit.Compare(deep, wide*turnedAbove) > 0}
	if k.turned {
		wide, deep = deep, wide
		k.left = high.X
	}
	k.units = unit.Six(math.Min(mostUnits, math.Min(sheetWidth/wide, sheetDepth/deep)) * growth)
	return k, true
}

// everyPoint is every place that the shop file names, in file order.
func everyPoint(s *shop.Shop) []shop.Point {
	var list []shop.Point
	for _, r := range s.Rooms {
		list = append(append(list, r.Outline...), r.Exits...)
	}
	for _, w := range s.Walls {
		list = append(list, w.From, w.To)
	}
	for _, m := range s.Machines {
		if m.Place.Known() {
			list = append(list, m.Place.V)
		}
	}
	for _, c := range s.Collectors {
		if c.Place.Known() {
			list = append(list, c.Place.V)
		}
	}
	for _, e := range s.Extinguishers {
		if e.Place.Known() {
			list = append(list, e.Place.V)
		}
	}
	for _, b := range s.Stops {
		if b.Place.Known() {
			list = append(list, b.Place.V)
		}
	}
	for _, d := range s.Ducts {
		for _, at := range d.Route {
			list = append(list, shop.Point{X: at.X, Y: at.Y})
		}
	}
	return list
}
