package shop

import (
	"regexp"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// pairs reads a list of two-quantity points in rising order of the first.
func pairs[A, B unit.Measure](s *scope, field string) ([]A, []B) {
	var first []A
	var second []B
	var zeroA A
	var zeroB B
	expected := "a list of pairs [[" + zeroA.Kind().Example() + ", " + zeroB.Kind().Example() + "], …]"
	node := s.node(field)
	items := s.items(field, expected)
	for _, item := range items {
		two, ok := item.Value.([]*entry.Node)
		if !ok || len(two) != 2 {
			s.r.problem(item.At, item.Source, "a pair of "+zeroA.Kind().String()+" and "+zeroB.Kind().String(), `write ["…", "…"]`)
			return nil, nil
		}
		a, okA := quantity[A](s, two[0])
		b, okB := quantity[B](s, two[1])
		if !okA || !okB {
			return nil, nil
		}
		if a < 0 || b < 0 {
			s.r.problem(item.At, item.Source, "figures of zero or more", "check the signs")
			return nil, nil
		}
		if len(first) > 0 && unit.Compare(float64(a), float64(first[len(first)-1])) <= 0 {
			s.r.problem(item.At, item.Source, "more "+zeroA.Kind().String()+" than in the point before", "put the points in rising order, each once")
			return nil, nil
		}
		first, second = append(first, a), append(second, b)
	}
	if items != nil && len(first) < 2 {
		s.wrong(node, expected+" with at least two points", "give the curve's two ends at least")
		return nil, nil
	}
	if len(first) > 1000 {
		s.wrong(node, "at most 1000 points", "leave out points")
		return nil, nil
	}
	return first, second
}

// lengths reads a list of lengths.
func (s *scope) lengths(field string) []unit.Length {
	var list []unit.Length
	for _, item := range s.items(field, `a list of lengths ["0 ft", …]`) {
		if v, ok := quantity[unit.Length](s, item); ok {
			list = append(list, v)
		}
	}
	return list
}

var elbowWords = regexp.MustCompile(`^elbow ([0-9]+(\.[0-9]+)?)( ?deg| ?°)?$`)

// fittings reads a list of elbows in words: "elbow 90".
func (s *scope) fittings(field string) []unit.Angle {
	var list []unit.Angle
	for _, item := range s.strings(field) {
		m := elbowWords.FindStringSubmatch(item.Name)
		if m == nil {
			s.r.problem(item.At, entry.Quote(item.Name), `an elbow with its angle, as "elbow 90"; wyes come from what joins, reducers from sizes`, `write "elbow 90" or "elbow 45", or put a coefficient into loss`)
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

// date reads a date.
func (s *scope) date(field string) entry.Date {
	node := s.node(field)
	if node == nil {
		return entry.Date{}
	}
	v, ok := node.Value.(entry.Date)
	if !ok {
		s.wrong(node, "a date such as 2026-11-24, without quotes", "write year-month-day")
	}
	return v
}

// inline opens a field that holds a table of its own.
func (s *scope) inline(field string) *scope {
	node := s.node(field)
	if node == nil {
		return nil
	}
	t, ok := node.Value.(*entry.Table)
	if !ok {
		s.wrong(node, "a table in braces: "+lower(s.row(field).Means), "write "+field+" = { … }")
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
	return s.tables(node, s.row(field).Of, s.about)
}
