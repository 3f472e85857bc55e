package shop

import (
	"regexp"
	"strings"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// mostPoints a curve or an outline may have.
const mostPoints = 1000

// items takes the elements of an array field.
func (s *scope) items(field, expected, do string) []*entry.Node {
	node := s.node(field)
	if node == nil {
		return nil
	}
	items, ok := node.Value.([]*entry.Node)
	if !ok {
		s.wrong(node, expected, do)
	}
	return items
}

// listIn is the list a field holds, if it holds one.
func (s *scope) listIn(field string) ([]*entry.Node, bool) {
	node := s.t.Get(field)
	if node == nil {
		return nil, false
	}
	items, isList := node.Value.([]*entry.Node)
	return items, isList
}

// pairs reads a curve: a list of two-quantity points in rising order of the
// first.
func pairs[A, B unit.Measure](s *scope, field string) (first []A, second []B) {
	var a A
	var b B
	sample := "[" + example(a.Kind()) + ", " + example(b.Kind()) + "]"
	items := s.pointItems(field, "a list of points, such as ["+sample+", …]", "write the points in square brackets, and each of them as well")
	sound := true
	for _, item := range items {
		if a, b, ok := pair[A, B](s, field, item, sample); !ok {
			sound = false
		} else if len(first) > 0 && unit.Compare(float64(a), float64(first[len(first)-1])) <= 0 {
			s.wrong(item, "more "+a.Kind().String()+" than in the point before", "put the points in rising order, each once")
			sound = false
		} else {
			first, second = append(first, a), append(second, b)
		}
	}
	switch {
	case items == nil || !sound:
	case len(first) < 2:
		s.wrong(s.t.Get(field), "at least two points", "give the curve's two ends at least")
	case len(first) > mostPoints:
		s.wrong(s.t.Get(field), "at most 1000 points", "leave out points")
	default:
		return first, second
	}
	return nil, nil
}

// example is a quantity of a kind, in quotes.
func example(kind unit.Kind) string {
	first, _, _ := strings.Cut(kind.Example(), " or ")
	return first
}

// pair reads one point of a curve.
func pair[A, B unit.Measure](s *scope, field string, item *entry.Node, sample string) (a A, b B, ok bool) {
	two, isList := item.Value.([]*entry.Node)
	if !isList || len(two) != 2 {
		s.wrong(item, "a point of "+a.Kind().String()+" and "+b.Kind().String(), "write "+sample)
		return a, b, false
	}
	a, okA := quantity[A](s, field, two[0], "")
	b, okB := quantity[B](s, field, two[1], "")
	if !okA || !okB {
		return a, b, false
	}
	if a < 0 || b < 0 {
		s.wrong(item, "figures of zero or more", "take the minus away")
		return a, b, false
	}
	return a, b, true
}

var elbowWords = regexp.MustCompile(`^elbow ([0-9]{1,3}(\.[0-9]{1,6})?)( ?deg| ?°)?$`)

// fittings reads a list of elbows in words: "elbow 90".
func (s *scope) fittings(field string) []unit.Angle {
	var list []unit.Angle
	for _, item := range s.strings(field) {
		m := elbowWords.FindStringSubmatch(item.Name)
		if m == nil {
			s.r.problem(item.At, entry.Quote(item.Name), `an elbow with its angle, such as "elbow 90"`, `write "elbow 90", and put what is no elbow into loss (branches and reducers come from the ducts themselves)`)
			continue
		}
		angle := unit.Angle(parseNumber(m[1]))
		if angle <= 0 || angle > 180 {
			s.r.problem(item.At, entry.Quote(item.Name), "an angle of more than 0 and at most 180 degrees", `write "elbow 90"`)
			continue
		}
		list = append(list, angle)
	}
	return list
}

// inline opens a field that holds a table of its own.
func (s *scope) inline(field string) *scope {
	node := s.node(field)
	if node == nil {
		return nil
	}
	t, ok := node.Value.(*entry.Table)
	if !ok {
		s.wrong(node, "a table in braces: "+lower(s.row(field).Means), "write "+field+" = { "+insides(s.row(field).Of)+" }")
		return nil
	}
	return s.r.open(t, s.row(field).Of, s.about)
}

// inlines opens a field that holds several tables, or one.
func (s *scope) inlines(field string) []*scope {
	node := s.node(field)
	if node == nil {
		return nil
	}
	return s.tables(node, s.row(field).Of, s.about, "write "+field+" = { "+insides(s.row(field).Of)+" }, or a list of such tables")
}
