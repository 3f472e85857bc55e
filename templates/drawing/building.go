package drawing

import (
	"strings"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Thickness of walls and size of doors.
const (
	wallThick = 70  // tenths
	doorWide  = 0.9 // metres
	leastDoor = 180 // tenths
	wallCost  = 900 // of writing on a wall
	hatchStep = 75  // tenths between two strokes of a hatch
)

// door is an exit as drawn: the two sides of the opening and the leaf.
type door struct {
	hinge, jamb, tip spot
	outward          way
}

// outline is a room's corners on the drawing.
func (s *sheet) outline(r *shop.Room) path {
	var list []spot
	for _, p := range r.Outline {
		list = append(list, s.scale.at(p))
	}
	list = tidy(list)
	if len(list) > 1 && list[0] == list[len(list)-1] {
		list = list[:len(list)-1]
	}
	return list
}

// drawWalls draws the rooms, then the walls that keep apart, then the doors.
func (s *sheet) drawWalls() {
	for _, r := range s.shop.Rooms {
		if o := s.outline(r); len(o) > 2 {
			s.area(look{line: dark, weight: wallThick}, r.Name, o...)
		}
	}
	for _, w := range s.shop.Walls {
		s.drawBand(w)
	}
	for _, d := range s.doors {
		w := towards(d.hinge, d.jamb)
		s.line(look{line: paper, weight: wallThick + 20}, "", d.hinge, d.jamb)
		across := func(at spot) path { return path{at.step(w, 0, wallThick/2), at.step(w, 0, -wallThick/2)} }
		s.lines(look{line: dark, weight: 14}, "", across(d.hinge), across(d.jamb))
		s.line(look{line: dark, weight: 16}, "", d.hinge, d.tip)
		s.arc(look{line: dark, weight: 9}, "", d.tip, d.jamb, span(d.hinge, d.jamb), side(d.tip, d.jamb, d.hinge) > 0)
	}
}

// band is the run of a wall that keeps apart, between the corners of rooms.
func (s *sheet) band(w *shop.Wall) (a, c spot) {
	a, c = s.scale.at(w.From), s.scale.at(w.To)
	along := towards(a, c)
	trim := func(at spot, in int) spot {
		for _, r := range s.shop.Rooms {
			for _, corner := range s.outline(r) {
				if span(corner, at) < wallThick/2 {
					return corner.step(along, in, 0)
				}
			}
		}
		return at
	}
	if span(a, c) > 3*wallThick {
		a, c = trim(a, wallThick/2), trim(c, -wallThick/2)
	}
	return a, c
}

// drawBand draws a wall that keeps apart: hatched in the wall's thickness.
func (s *sheet) drawBand(w *shop.Wall) {
	a, c := s.band(w)
	along, half, long := towards(a, c), wallThick/2, span(a, c)
	says := wording.Text("drawing.wall")
	if w.Divides.Known() {
		says = wording.Text("drawing.wall-keeps", w.Divides.V)
		if one, other, two := strings.Cut(w.Divides.V, " from "); two {
			says = wording.Text("drawing.wall-apart", one, other)
		}
	}
	if w.Rating.Known() {
		says += ", " + w.Rating.V
	}
	s.area(look{fill: paper, line: dark, weight: 16}, says,
		a.step(along, 0, half), c.step(along, 0, half), c.step(along, 0, -half), a.step(along, 0, -half))
	var hatch []path
	for at := hatchStep / 2; at+wallThick < long; at += hatchStep {
		hatch = append(hatch, path{a.step(along, at, half), a.step(along, at+wallThick, -half)})
	}
	s.lines(look{line: dark, weight: 9}, "", hatch...)
}

// findDoors puts an opening where each exit is, on the nearest wall of its
// room.
func (s *sheet) findDoors() {
	for _, r := range s.shop.Rooms {
		o := s.outline(r)
		if len(o) < 3 {
			continue
		}
		for _, exit := range r.Exits {
			s.doors = append(s.doors, s.doorAt(o, s.scale.at(exit)))
		}
	}
}

func (s *sheet) doorAt(o path, at spot) door {
	best, from, to := 0, o[0], o[1]
	for i, a := range o {
		c := o[(i+1)%len(o)]
		if off := span(onLine(a, c, at), at); i == 0 || off < best {
			best, from, to = off, a, c
		}
	}
	long := span(from, to)
	wide := min(max(s.scale.long(doorWide), leastDoor), long*8/10)
	along := towards(from, to)
	middle := min(max(span(from, onLine(from, to, at)), wide/2+wallThick/2), long-wide/2-wallThick/2)
	d := door{hinge: from.step(along, middle-wide/2, 0), jamb: from.step(along, middle+wide/2, 0)}
	d.outward = way{along.y, -along.x} // to the left of the wall's direction
	if inside(o, from.step(along, middle, 30)) {
		d.outward = d.outward.back()
	}
	d.tip = d.hinge.step(d.outward, wide, 0)
	return d
}

// onLine is the spot of a line nearest to another spot.
func onLine(a, c, at spot) spot {
	w, long := towards(a, c), span(a, c)
	ahead := float64(float64(at.x-a.x)*w.x) + float64(float64(at.y-a.y)*w.y)
	return a.step(w, min(max(tenths(ahead/10), 0), long), 0)
}

// inside reports whether a spot lies in an outline.
func inside(o path, at spot) bool {
	in := false
	for i, a := range o {
		c := o[(i+1)%len(o)]
		if a.y > c.y {
			a, c = c, a
		}
		if at.y >= a.y && at.y < c.y && side(a, c, at) > 0 {
			in = !in
		}
	}
	return in
}

// roomSays is a room's name, its size and its height.
func (s *sheet) roomSays(r *shop.Room) block {
	b := writing(strings.ToUpper(r.Name), false, smallText, 1900, 3)
	size := unit.Floor.Print(s.sys, r.Area())
	if o := r.Outline; len(o) == 4 && rightAngled(o) {
		first, second := unit.Length(extentAlong(o, !s.scale.turned)), unit.Length(extentAlong(o, s.scale.turned))
		size = unit.Run.Figure(s.sys, first) + " × " + unit.Run.Print(s.sys, second)
	}
	if r.Height.Known() {
		size += ", " + wording.Text("drawing.high", unit.Run.Print(s.sys, r.Height.V))
	}
	b.under(size, false)
	return b
}

// rightAngled reports whether every side runs along x or y.
func rightAngled(o []shop.Point) bool {
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if unit.Compare(p.X, q.X) != 0 && unit.Compare(p.Y, q.Y) != 0 {
			return false
		}
	}
	return true
}

// extentAlong is how far an outline reaches along x, or along y.
func extentAlong(o []shop.Point, alongX bool) float64 {
	of := func(p shop.Point) float64 {
		if alongX {
			return p.X
		}
		return p.Y
	}
	low, high := of(o[0]), of(o[0])
	for _, p := range o {
		low, high = min(low, of(p)), max(high, of(p))
	}
	return unit.Six(high - low)
}
