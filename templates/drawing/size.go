package drawing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// drawSizes draws the overall width and depth of the rooms outside
// everything, and the scale bar under it. Where nothing has a place there is
// nothing to measure.
func (s *sheet) drawSizes() {
	if !s.placed {
		return
	}
	all := s.extent
	if low, high, ok := roomsReach(s.shop); ok {
		a, c := s.scale.at(low), s.scale.at(high)
		corners := boxOf(a, c)
		wide, deep := unit.Length(unit.Six(high.X-low.X)), unit.Length(unit.Six(high.Y-low.Y))
		if s.scale.turned {
			wide, deep = deep, wide
		}
		y, x := all.top-190, all.left-190
		s.drawDimension(spot{corners.left, y}, spot{corners.right, y}, wide)
		s.drawDimension(spot{x, corners.bottom}, spot{x, corners.top}, deep)
	}
	s.drawScaleBar(spot{all.left + 120, all.bottom + 260})
}

// roomsReach are the corners of the least upright rectangle around all rooms.
func roomsReach(s *shop.Shop) (low, high shop.Point, ok bool) {
	for _, r := range s.Rooms {
		for _, p := range r.Outline {
			if !ok {
				low, high, ok = p, p, true
			}
			low.X, low.Y = math.Min(low.X, p.X), math.Min(low.Y, p.Y)
			high.X, high.Y = math.Max(high.X, p.X), math.Max(high.Y, p.Y)
		}
	}
	return low, high, ok
}

// drawDimension draws a dimension line with a stroke across each end and its
// figure in a break.
func (s *sheet) drawDimension(a, c spot, long unit.Length) {
	w := towards(a, c)
	b := writing(unit.Run.Print(s.sys, long), false, smallText, 3000, 1)
	b.ink = soft
	thin := look{line: soft, weight: 9}
	s.line(thin, "", a, c)
	across := func(at spot) path { return path{at.step(w, 0, 60), at.step(w, 0, -60)} }
	stroke := func(at spot) path { return path{at.step(w, -40, -40), at.step(w, 40, 40)} }
	s.lines(thin, "", across(a), across(c))
	s.lines(look{line: dark, weight: 14}, "", stroke(a), stroke(c))
	in := around(boxOf(a, c).centre(), b.width()/2+50, b.height()/2)
	s.rect(look{fill: paper}, "", in)
	s.write(&b, in, centred)
}

// drawScaleBar draws a bar of a round length, filled by turns.
func (s *sheet) drawScaleBar(at spot) {
	per := 1.0
	if s.sys == unit.US {
		per = float64(unit.Must[unit.Length]("1 ft"))
	}
	count := roundLength(240 / (s.scale.units * per))
	long := s.scale.long(count * per)
	s.scaleBar(at, long)
	s.note(unit.Run.Print(s.sys, unit.Length(count*per)), spot{at.x + long + 60, at.y + 22}, fromStart)
	s.note("0", spot{at.x - 60, at.y + 22}, fromEnd)
}

// scaleBar draws the bar alone.
func (p *pen) scaleBar(at spot, long int) {
	for i := range 4 {
		b := box{at.x + long*i/4, at.y, at.x + long*(i+1)/4, at.y + 45}
		l := look{fill: paper, line: dark, weight: 9}
		if i%2 == 0 {
			l.fill = dark
		}
		p.rect(l, "", b)
	}
}

// note writes a short text beside a spot, at its height, and returns the box
// around it.
func (p *pen) note(text string, at spot, h hang) box {
	b := writing(text, false, smallText, 30000, 1)
	w := b.width()
	in := box{at.x, at.y - b.height()/2, at.x + w, at.y + b.height()/2}
	if h == fromEnd {
		in.left, in.right = at.x-w, at.x
	}
	p.write(&b, in, h)
	return in
}

// roundLength is the largest 1, 2 or 5 times a power of ten that is no more
// than a number.
func roundLength(most float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(most)))
	for _, step := range [3]float64{5, 2, 1} {
		if unit.AtLeast(most, step*power) {
			return unit.Six(step * power)
		}
	}
	return unit.Six(power)
}
