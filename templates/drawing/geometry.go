package drawing

import (
	"math"

	"dustbook/plan/unit"
)

// tenths turns drawing units into whole tenths: the one rounding of a
// position.
func tenths(units float64) int { return int(math.Round(unit.Six(units) * 10)) }

// spot is a place on the drawing, in tenths of a unit; y runs down.
type spot struct{ x, y int }

// way is a direction of length one.
type way struct{ x, y float64 }

// distance between two spots, in tenths, not rounded.
func distance(a, b spot) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	return math.Sqrt(float64(dx*dx + dy*dy))
}

// span is the distance between two spots in whole tenths.
func span(a, b spot) int { return int(math.Round(distance(a, b))) }

// closer reports whether two spots are less than a distance of whole tenths
// apart: span(a, b) < least, without the root.
func closer(a, b spot, least int) bool {
	dx, dy, twice := b.x-a.x, b.y-a.y, 2*least-1
	return least > 0 && 4*(dx*dx+dy*dy) < twice*twice
}

// towards is the direction from one spot to another; to the right where they
// are the same.
func towards(a, b spot) way {
	l := distance(a, b)
	if l == 0 {
		return way{1, 0}
	}
	return way{float64(b.x-a.x) / l, float64(b.y-a.y) / l}
}

// dot is how far two directions agree: 1 the same, -1 opposite.
func (w way) dot(o way) float64 { return unit.Six(float64(w.x*o.x) + float64(w.y*o.y)) }

// back is the opposite direction.
func (w way) back() way { return way{-w.x, -w.y} }

// step is the spot this far ahead and this far to the left of the direction.
func (s spot) step(w way, ahead, left int) spot {
	part := func(c float64, n int) int {
		switch c { // along x or y, as most ducts run, there is nothing to round
		case 0:
			return 0
		case 1:
			return n
		case -1:
			return -n
		}
		return int(math.Round(unit.Six(c * float64(n))))
	}
	return spot{s.x + part(w.x, ahead) + part(w.y, left), s.y + part(w.y, ahead) - part(w.x, left)}
}

// moved is the spot shifted.
func (s spot) moved(dx, dy int) spot { return spot{s.x + dx, s.y + dy} }

// box is an upright rectangle, in tenths.
type box struct{ left, top, right, bottom int }

func around(s spot, halfWidth, halfHeight int) box {
	return box{s.x - halfWidth, s.y - halfHeight, s.x + halfWidth, s.y + halfHeight}
}

func (b box) width() int      { return b.right - b.left }
func (b box) height() int     { return b.bottom - b.top }
func (b box) centre() spot    { return spot{(b.left + b.right) / 2, (b.top + b.bottom) / 2} }
func (b box) grown(n int) box { return box{b.left - n, b.top - n, b.right + n, b.bottom + n} }

// meets reports whether two boxes share more than an edge.
func (b box) meets(o box) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

// holds reports whether a spot lies in the box.
func (b box) holds(s spot) bool {
	return s.x >= b.left && s.x <= b.right && s.y >= b.top && s.y <= b.bottom
}

// within reports whether the box lies in another.
func (b box) within(o box) bool {
	return b.left >= o.left && b.right <= o.right && b.top >= o.top && b.bottom <= o.bottom
}

// with is the least box that holds both.
func (b box) with(o box) box {
	return box{min(b.left, o.left), min(b.top, o.top), max(b.right, o.right), max(b.bottom, o.bottom)}
}

// nearest is the spot of the box nearest to another spot.
func (b box) nearest(s spot) spot {
	return spot{min(max(s.x, b.left), b.right), min(max(s.y, b.top), b.bottom)}
}

// side of the line from a to c on which a spot lies: negative, nought, positive.
func side(a, c, s spot) int { return (c.x-a.x)*(s.y-a.y) - (c.y-a.y)*(s.x-a.x) }

// crossed reports whether the line from a to c passes through the inside of
// the box.
func (b box) crossed(a, c spot) bool {
	if max(a.x, c.x) <= b.left || min(a.x, c.x) >= b.right || max(a.y, c.y) <= b.top || min(a.y, c.y) >= b.bottom {
		return false
	}
	if (a.x == c.x) != (a.y == c.y) {
		return true // upright or level: no corner can lie in its way
	}
	low, high := false, false
	for _, corner := range [4]spot{{b.left, b.top}, {b.right, b.top}, {b.right, b.bottom}, {b.left, b.bottom}} {
		if at := side(a, c, corner); at < 0 {
			low = true
		} else if at > 0 {
			high = true
		}
	}
	return low && high
}

// cross reports whether two lines cross between their ends.
func cross(a, b, c, d spot) bool {
	if max(a.x, b.x) < min(c.x, d.x) || max(c.x, d.x) < min(a.x, b.x) || max(a.y, b.y) < min(c.y, d.y) || max(c.y, d.y) < min(a.y, b.y) {
		return false
	}
	opposite := func(p, q int) bool { return p < 0 && q > 0 || p > 0 && q < 0 }
	return opposite(side(a, b, c), side(a, b, d)) && opposite(side(c, d, a), side(c, d, b))
}

// crossing is where two lines cross that do.
func crossing(a, b, c, d spot) spot {
	p, q := side(c, d, a), side(c, d, b)
	share := float64(p) / float64(p-q)
	return a.step(towards(a, b), int(math.Round(unit.Six(distance(a, b)*share))), 0)
}

// boxOf is the least box around some spots.
func boxOf(spots ...spot) box {
	b := box{spots[0].x, spots[0].y, spots[0].x, spots[0].y}
	for _, s := range spots[1:] {
		b = b.with(box{s.x, s.y, s.x, s.y})
	}
	return b
}

// sineOf is the sine that belongs to a cosine of an angle up to 180 degrees.
func sineOf(cos float64) float64 { return unit.Six(math.Sqrt(math.Max(0, 1-float64(cos*cos)))) }
