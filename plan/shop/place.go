package shop

import (
	"math"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// metres turns a plain number of the file, in feet or metres as the shop's
// units say, into metres.
func (r *reader) metres(x float64) float64 {
	if r.shop.Units == unit.Metric {
		return x
	}
	return x * float64(unit.Must[unit.Length]("1 ft"))
}

// farthest a point of a plan may lie from its origin, in metres.
const farthest = 2000

// coordinates reads a list of n plain numbers in metres.
func (s *scope) coordinates(node *entry.Node, n int) ([]float64, bool) {
	shape := "[x, y]"
	if n == 3 {
		shape = "[x, y, height]"
	}
	expected := "a point " + shape + " in " + s.r.lengthWord()
	items, ok := node.Value.([]*entry.Node)
	if !ok || len(items) != n {
		s.r.problem(node.At, entry.Quote(node.Source), expected, "write "+shape+", plain numbers")
		return nil, false
	}
	out := make([]float64, n)
	for i, item := range items {
		v, ok := plain(item)
		if !ok {
			s.r.problem(item.At, item.Source, expected, "write plain numbers: points are in "+s.r.lengthWord()+", as [shop] units says")
			return nil, false
		}
		out[i] = s.r.metres(v)
		if math.Abs(out[i]) > farthest {
			s.r.problem(item.At, item.Source, "a point within 2000 m of the origin", "check the point; the plan is in "+s.r.lengthWord())
			return nil, false
		}
	}
	return out, true
}

func (r *reader) lengthWord() string {
	if r.shop.Units == unit.Metric {
		return "metres"
	}
	return "feet"
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

// points reads a list of places on the plan.
func (s *scope) points(field string) []Point {
	var list []Point
	for _, item := range s.items(field, "a list of points [[x, y], …]") {
		if c, ok := s.coordinates(item, 2); ok {
			list = append(list, Point{c[0], c[1]})
		}
	}
	return list
}

// items takes the elements of an array field.
func (s *scope) items(field, expected string) []*entry.Node {
	node := s.node(field)
	if node == nil {
		return nil
	}
	items, ok := node.Value.([]*entry.Node)
	if !ok {
		s.wrong(node, expected, "write it in square brackets")
		return nil
	}
	return items
}

// route reads a run of pipe: at least two spots, no two neighbours alike.
func (s *scope) route(field string) []Spot {
	node := s.node(field)
	items := s.items(field, "a route [[x, y, height], …]")
	var list []Spot
	for i, item := range items {
		c, ok := s.coordinates(item, 3)
		if !ok {
			return nil
		}
		spot := Spot{c[0], c[1], c[2]}
		if i > 0 && distance(list[len(list)-1], spot) < 1e-3 {
			s.r.problem(item.At, item.Source, "a point away from the one before", "leave out one of the two")
			return nil
		}
		list = append(list, spot)
	}
	if node != nil && items != nil && len(list) < 2 {
		s.wrong(node, "a route of at least two points", "give the hood end and the collector end")
		return nil
	}
	if len(list) > 200 {
		s.wrong(node, "a route of at most 200 points", "leave out points on straight runs")
		return nil
	}
	return list
}
