package record

import (
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode/utf8"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// text reads a field of free text.
func (s *scope) text(field string) string {
	node := s.node(field)
	if node == nil {
		return ""
	}
	v, ok := node.Value.(string)
	if !ok {
		s.wrong(node, "text in quotes", "write one text in quotes")
		return ""
	}
	if !s.fits(field, node, v) {
		return ""
	}
	return v
}

// fits checks a text against what its row says of it.
func (s *scope) fits(field string, node *entry.Node, v string) bool {
	row := s.row(field)
	if row.Need == "must" && strings.TrimSpace(v) == "" {
		s.wrong(node, clause(row.Means), "write it, or take the whole [["+s.table+"]] out")
		return false
	}
	if count := utf8.RuneCountInString(v); count > row.Longest {
		s.wrong(node, fmt.Sprintf("at most %d characters, not %d", row.Longest, count), "shorten it")
		return false
	}
	return true
}

// dateLike is a date as it stands in quotes where it should not.
var dateLike = regexp.MustCompile(`^\s*([0-9]{4}-[0-9]{2}-[0-9]{2})\s*$`)

// dateIn is the date that a text in quotes holds and nothing else.
func dateIn(text string) (string, bool) {
	m := dateLike.FindStringSubmatch(text)
	if m == nil {
		return "", false
	}
	_, err := time.Parse(time.DateOnly, m[1])
	return m[1], err == nil
}

// date reads a day.
func (s *scope) date(field string) entry.Date {
	node := s.node(field)
	if node == nil {
		return entry.Date{}
	}
	day, ok := node.Value.(entry.Date)
	if !ok {
		s.wrong(node, "a date such as 2026-11-24, without quotes", dateAdvice(node))
	}
	return day
}

// dateAdvice says how to write the date that a node may mean.
func dateAdvice(node *entry.Node) string {
	switch v := node.Value.(type) {
	case string:
		if day, ok := dateIn(v); ok {
			return "write " + node.Name + " = " + day
		}
	case entry.Moment:
		return "write " + node.Name + " = " + string(v[:len(time.DateOnly)])
	case time.Time:
		return "write " + node.Name + " = " + v.Format(time.DateOnly)
	}
	return "write year-month-day, with two digits for month and day"
}

// answer reads a day or a text.
func (s *scope) answer(field string) Answer {
	node := s.node(field)
	if node == nil {
		return Answer{}
	}
	switch v := node.Value.(type) {
	case entry.Date:
		return Answer{Date: v}
	case string:
		if day, ok := dateIn(v); ok {
			s.wrong(node, "a date without quotes, or a text that says more", "write "+field+" = "+day)
			return Answer{}
		}
		if !s.fits(field, node, v) {
			return Answer{}
		}
		return Answer{Text: v}
	}
	s.wrong(node, "a date such as 2026-11-24, or a text in quotes", dateAdvice(node))
	return Answer{}
}

// quantity reads what was measured; nothing where it is not known what that
// is, which has a message of its own.
func (s *scope) quantity(field string, m Measure) Quantity {
	node := s.node(field)
	if node == nil || m.Word == "" {
		return Quantity{}
	}
	text, ok := node.Value.(string)
	if !ok {
		text, ok = bare(node)
	}
	var q Quantity
	var p *entry.Problem
	switch {
	case !ok:
		p = &entry.Problem{Expected: m.wants(), Do: "write it in quotes"}
	case m.Kind == 0 && node.Value != text:
		p = &entry.Problem{Expected: m.wants(), Do: "write it in quotes, with its unit"}
	default:
		q, p = m.read(text)
	}
	if p != nil {
		s.wrong(node, p.Expected, p.Do)
	}
	return q
}

// bare is a number without quotes as a text, for the hint about its unit.
func bare(node *entry.Node) (string, bool) {
	switch v := node.Value.(type) {
	case int64:
		return unit.Short(float64(v)), true
	case float64:
		return unit.Short(v), true
	}
	return "", false
}
