package shop

import (
	"fmt"
	"math"
	"strings"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// text reads a string field.
func (s *scope) text(field string) Field[string] {
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, func(text string) string { return text })
	}
	v, ok := s.str(node, "text in quotes")
	if !ok {
		return Field[string]{}
	}
	if len([]rune(v)) > 1000 {
		s.r.problem(node.At, entry.Quote(v), "at most 1000 characters", "shorten it")
		return Field[string]{}
	}
	return Field[string]{v, Stated, node.At}
}

// str takes a node's string.
func (s *scope) str(node *entry.Node, expected string) (string, bool) {
	v, ok := node.Value.(string)
	if !ok {
		s.wrong(node, expected, "put it in quotes")
	}
	return v, ok
}

// wrong reports a value of the wrong shape.
func (s *scope) wrong(node *entry.Node, expected, do string) {
	s.r.problem(node.At, node.Name+" = "+node.Source, expected, do)
}

// word reads a field that holds one of a group of words.
func (s *scope) word(field string) Field[string] {
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, func(text string) string { return text })
	}
	v, ok := s.str(node, s.expectedWords(field))
	if !ok {
		return Field[string]{}
	}
	v, ok = s.oneOf(field, v, node)
	if !ok {
		return Field[string]{}
	}
	return Field[string]{v, Stated, node.At}
}

func (s *scope) oneOf(field, v string, node *entry.Node) (string, bool) {
	group := s.row(field).Of
	if group == "kind" {
		if k := findKind(v); k != nil {
			return k.Name, true
		}
	}
	known := wordNames(group)
	for _, w := range known {
		if w == v {
			return v, true
		}
	}
	do := nearest(v, known)
	if group == "kind" && !strings.HasPrefix(do, "write") {
		do = `write "other" and give the port's size and flow`
	}
	s.r.problem(node.At, node.Name+" = "+entry.Quote(v), s.expectedWords(field), do)
	return "", false
}

func (s *scope) expectedWords(field string) string {
	known := wordNames(s.row(field).Of)
	if len(known) > 8 {
		return article(strings.TrimSuffix(s.row(field).Of, "s")) + " the contract knows"
	}
	return orList(quoteAll(known))
}

// words reads a list of words of a group; one string is a list of one.
func (s *scope) words(field string) []string {
	var list []string
	for _, item := range s.strings(field) {
		if w, ok := s.oneOf(field, item.Name, &entry.Node{Name: field, At: item.At}); ok {
			list = append(list, w)
		}
	}
	return list
}

// strings reads a list of strings; one string is a list of one.
func (s *scope) strings(field string) []Ref {
	node := s.node(field)
	if node == nil {
		return nil
	}
	if v, ok := node.Value.(string); ok {
		return []Ref{{v, node.At}}
	}
	items, ok := node.Value.([]*entry.Node)
	if !ok {
		s.wrong(node, "a list of texts in quotes", `write ["…", "…"]`)
		return nil
	}
	var list []Ref
	for _, item := range items {
		if v, ok := item.Value.(string); ok {
			list = append(list, Ref{v, item.At})
			continue
		}
		s.r.problem(item.At, item.Source, "a text in quotes", "put it in quotes")
	}
	return list
}

// yes reads true or false.
func (s *scope) yes(field string) Field[bool] {
	node := s.node(field)
	if node == nil {
		return Field[bool]{}
	}
	v, ok := node.Value.(bool)
	if !ok {
		s.wrong(node, "true or false, without quotes", "write true or false")
		return Field[bool]{}
	}
	return Field[bool]{v, Stated, node.At}
}

// count reads a whole number.
func (s *scope) count(field string) Field[int] {
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, func(text string) int { return int(parseNumber(text)) })
	}
	v, ok := node.Value.(int64)
	if !ok {
		s.wrong(node, "a whole number, without quotes", "write a number such as 2")
		return Field[int]{}
	}
	if !s.inBounds(field, float64(v), node, parseNumber) {
		return Field[int]{}
	}
	return Field[int]{int(v), Stated, node.At}
}

// number reads a plain number.
func (s *scope) number(field string) Field[float64] {
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, parseNumber)
	}
	v, ok := plain(node)
	if !ok {
		s.wrong(node, "a plain number, without quotes and without a unit", "write a number such as 0.5")
		return Field[float64]{}
	}
	if !s.inBounds(field, v, node, parseNumber) {
		return Field[float64]{}
	}
	return Field[float64]{v, Stated, node.At}
}

func plain(node *entry.Node) (float64, bool) {
	switch v := node.Value.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, true
	}
	return 0, false
}

// measure reads a quantity.
func measure[Q unit.Measure](s *scope, field string) Field[Q] {
	parse := func(text string) Q { return unit.Must[Q](text) }
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, parse)
	}
	v, ok := quantity[Q](s, node)
	if !ok || !s.inBounds(field, float64(v), node, func(text string) float64 { return float64(parse(text)) }) {
		return Field[Q]{}
	}
	return Field[Q]{v, Stated, node.At}
}

// quantity reads one quantity from a node.
func quantity[Q unit.Measure](s *scope, node *entry.Node) (Q, bool) {
	var zero Q
	text, ok := node.Value.(string)
	if !ok {
		if n, isNumber := plain(node); isNumber {
			_, err := unit.Read[Q](unit.Short(n)) // a bare number: unit has the hint
			s.unitProblem(node, err)
			return zero, false
		}
		s.wrong(node, "a "+zero.Kind().String()+" in quotes, such as "+zero.Kind().Example(), "put number and unit in quotes")
		return zero, false
	}
	v, err := unit.Read[Q](text)
	if err != nil {
		s.unitProblem(node, err)
		return zero, false
	}
	return v, true
}

// unitProblem turns what the unit package says into a problem of the file.
func (s *scope) unitProblem(node *entry.Node, err error) {
	if e, ok := err.(*unit.Error); ok {
		read := e.Read
		if node.Name != "" {
			read = node.Name + " = " + node.Source
		}
		s.r.problem(node.At, read, e.Expected, lower(e.Do))
		return
	}
	s.r.problem(node.At, node.Source, "a quantity", err.Error())
}

// inBounds checks a value against the row's least and most.
func (s *scope) inBounds(field string, v float64, node *entry.Node, parse func(string) float64) bool {
	row := s.row(field)
	low, high := row.Least != "" && unit.Compare(v, parse(row.Least)) < 0, row.Most != "" && unit.Compare(v, parse(row.Most)) > 0
	if !low && !high {
		return true
	}
	expected := "at least " + row.Least
	switch {
	case row.Least != "" && row.Most != "":
		expected = "from " + row.Least + " to " + row.Most
	case row.Most != "":
		expected = "at most " + row.Most
	}
	s.r.problem(node.At, node.Name+" = "+node.Source, expected, "check the figure and its unit")
	return false
}

// defaulted takes the row's default for a field the file leaves out, and
// lists it as an assumption when the row says where it comes from.
func defaulted[T any](s *scope, field string, parse func(string) T) Field[T] {
	row := s.row(field)
	if row.Default == "" {
		return Field[T]{}
	}
	s.assume(field, row.Default, row)
	return Field[T]{parse(row.Default), Defaulted, s.t.At}
}

// assume lists an assumption.
func (s *scope) assume(field, value string, row *Row) {
	if row.Basis.Mark == 0 {
		return // a convention of the file, not a statement about the shop
	}
	s.r.shop.Assumed = append(s.r.shop.Assumed, Assumption{Thing: s.thing(), Field: s.table + "." + field, Value: value, Basis: row.Basis, At: s.t.At})
}

func (s *scope) thing() string {
	if s.about == "" {
		return "the shop"
	}
	return s.about
}

func parseNumber(text string) float64 {
	var v float64
	if _, err := fmt.Sscanf(text, "%g", &v); err != nil || math.IsNaN(v) {
		panic("shop: fields.csv: no number: " + text)
	}
	return v
}
