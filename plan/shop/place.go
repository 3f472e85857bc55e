package shop

import (
	"math"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

var foot = float64(unit.Must[unit.Length]("1 ft"))

// metres turns a plain number of the file, in feet or metres as the shop's
// units say, into metres.
func (r *reader) metres(x float64) float64 {
	if r.shop.Units == unit.Metric {
		return x
	}
	return x * foot
}

func (r *reader) lengthWord() string {
	if r.shop.Units == unit.Metric {
		return "metres"
	}
	return "feet"
}

// farthest a point of a plan may lie from its origin, in metres.
const farthest = 2000

// coordinates reads a list of n plain numbers in metres.
func (s *scope) coordinates(node *entry.Node, n int) ([3]float64, bool) {
	shape := "[x, y]"
	if n == 3 {
		shape = "[x, y, height]"
	}
	var out [3]float64
	expected := "a point " + shape + " in " + s.r.lengthWord()
	items, ok := node.Value.([]*entry.Node)
	if !ok || len(items) != n {
		s.wrong(node, expected, "write "+shape+", plain numbers")
		return out, false
	}
	for i, item := range items {
		v, ok := plain(item)
		if !ok {
			s.wrong(item, expected, "write plain numbers: points are in "+s.r.lengthWord()+", as [shop] units says")
			return out, false
		}
		out[i] = s.r.metres(v)
		if math.Abs(out[i]) > farthest {
			s.wrong(item, "a point within 2000 m of the origin", "check the figure: points are in "+s.r.lengthWord())
			return out, false
		}
	}
	return out, true
}

// point reads one place on the plan.
func (s *scope) point(field string) Field[Point] {
	node := s.node(field)
	if node == nil {
		return Field[Point]{}
	}
	c, ok := s.coordinates(node, 2)
	if !ok {
		return Field[Point]{}
	}
	return Field[Point]{Point{c[0], c[1]}, Stated, node.At}
}

// points reads a list of places on the plan. It is nil where one of them is
// wrong.
func (s *scope) points(field string) []Point {
	list, sound := []Point{}, true
	items := s.pointItems(field, "a list of points [[x, y], …]", "write each point in square brackets of its own")
	for _, item := range items {
		c, ok := s.coordinates(item, 2)
		list, sound = append(list, Point{c[0], c[1]}), sound && ok
	}
	if len(list) > mostPoints {
		s.wrong(s.t.Get(field), "at most 1000 points", "leave out points")
	}
	if items == nil || !sound {
		return nil
	}
	return list
}

// pointItems takes the elements of a list of points. A list that starts with
// anything but a list is a point that stands alone.
func (s *scope) pointItems(field, expected, do string) []*entry.Node {
	items := s.items(field, expected, do)
	if len(items) > 0 {
		if _, isList := items[0].Value.([]*entry.Node); !isList {
			s.wrong(s.t.Get(field), expected, do)
			return nil
		}
	}
	return items
}

// mostSpots a route may have.
const mostSpots = 200

// route reads a run of pipe: at least two spots, no two neighbours alike.
func (s *scope) route(field string) []Spot {
	items := s.pointItems(field, "a route [[x, y, height], …]", "write the points in square brackets, from the hood end to the collector end")
	list, sound := []Spot{}, true
	for _, item := range items {
		c, ok := s.coordinates(item, 3)
		spot := Spot{c[0], c[1], c[2]}
		switch {
		case !ok:
			sound = false
		case len(list) > 0 && distance(list[len(list)-1], spot) < samePlace:
			s.wrong(item, "a point away from the one before", "leave out one of the two")
			sound = false
		default:
			list = append(list, spot)
		}
	}
	switch {
	case items == nil || !sound:
	case len(list) < 2:
		s.wrong(s.t.Get(field), "a route of at least two points", "give the hood end and the collector end")
	case len(list) > mostSpots:
		s.wrong(s.t.Get(field), "a route of at most 200 points", "leave out points on straight runs")
	default:
		return list
	}
	return nil
}
