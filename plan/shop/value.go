package shop

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// said is a node as the file says it, for messages: key = value, a header, or
// the value alone in a list.
func said(node *entry.Node) string {
	if node.Key.Known() && node.At == node.Key && !strings.HasSuffix(node.Path, "]") {
		return "[" + node.Name + "]" // a table that only a longer name implies
	}
	header := node.Key.Known() && node.At.Line == node.Key.Line && node.At.Column < node.Key.Column
	if header || strings.HasSuffix(node.Path, "]") {
		return node.Source
	}
	return node.Name + " = " + node.Source
}

// wrong reports a value of the wrong shape.
func (s *scope) wrong(node *entry.Node, expected, do string) {
	s.r.problem(node.At, said(node), expected, do)
}

// str takes a node's string.
func (s *scope) str(node *entry.Node, expected string) (string, bool) {
	do := "write one text in quotes"
	switch node.Value.(type) {
	case *entry.Table, []*entry.Node:
	default:
		do = "write " + entry.Quote(node.Source)
	}
	return s.strOr(node, expected, do)
}

// strOr takes a node's string, with advice for where there is none.
func (s *scope) strOr(node *entry.Node, expected, do string) (string, bool) {
	v, ok := node.Value.(string)
	if !ok {
		s.wrong(node, expected, do)
	}
	return v, ok
}

// longestText a field of free text may hold, in characters.
const longestText = 1000

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
	if count := len([]rune(v)); count > longestText {
		s.wrong(node, fmt.Sprintf("at most %d characters, not %d", longestText, count), "shorten it")
		return Field[string]{}
	}
	if row := s.row(field); row.Need == "must" && strings.TrimSpace(v) == "" {
		s.wrong(node, lower(row.Means), "write it between the quotes")
		return Field[string]{}
	}
	return Field[string]{v, Stated, node.At}
}

// yes reads true or false.
func (s *scope) yes(field string) Field[bool] {
	node := s.node(field)
	if node == nil {
		return Field[bool]{}
	}
	v, ok := node.Value.(bool)
	if ok {
		return Field[bool]{v, Stated, node.At}
	}
	do := "write true or false"
	if text, isText := node.Value.(string); isText {
		switch strings.ToLower(strings.TrimSpace(text)) {
		case "true", "yes":
			do = "write true"
		case "false", "no":
			do = "write false"
		}
	}
	s.wrong(node, "true or false, without quotes", do)
	return Field[bool]{}
}

// count reads a whole number.
func (s *scope) count(field string) Field[int] {
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, func(text string) int { return int(parseNumber(text)) })
	}
	v, ok := node.Value.(int64)
	if !ok {
		do := "write a number such as 2"
		if x, isNumber := numberIn(node); isNumber && x == math.Trunc(x) {
			do = "write " + unit.Short(x)
		}
		s.wrong(node, "a whole number, without quotes", do)
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
		do := "write the number alone, such as 0.5"
		if x, isNumber := numberIn(node); isNumber {
			do = "write " + unit.Short(x)
		}
		s.wrong(node, "a plain number, without quotes and without a unit", do)
		return Field[float64]{}
	}
	if !s.inBounds(field, v, node, parseNumber) {
		return Field[float64]{}
	}
	return Field[float64]{v, Stated, node.At}
}

// plain takes a node's number.
func plain(node *entry.Node) (float64, bool) {
	switch v := node.Value.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, true
	}
	return 0, false
}

// numberIn is a number written as one, or in quotes.
func numberIn(node *entry.Node) (float64, bool) {
	if x, ok := plain(node); ok {
		return x, true
	}
	text, ok := node.Value.(string)
	if !ok {
		return 0, false
	}
	var x float64
	rest := ""
	if n, _ := fmt.Sscanf(strings.TrimSpace(text), "%g%s", &x, &rest); n != 1 || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}

// parseNumber reads a number of the data.
func parseNumber(text string) float64 {
	var v float64
	if _, err := fmt.Sscanf(text, "%g", &v); err != nil || math.IsNaN(v) {
		panic("shop: no number in the data: " + text)
	}
	return v
}

var dateIn = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}`)

// date reads a date.
func (s *scope) date(field string) entry.Date {
	node := s.node(field)
	if node == nil {
		return entry.Date{}
	}
	v, ok := node.Value.(entry.Date)
	if !ok {
		do := "write year-month-day"
		if found := dateIn.FindString(fmt.Sprint(node.Value)); found != "" {
			do = "write " + found
		}
		s.wrong(node, "a date such as 2026-11-24, without quotes", do)
	}
	return v
}

// inBounds checks a value against the row's least and most.
func (s *scope) inBounds(field string, v float64, node *entry.Node, parse func(string) float64) bool {
	row := s.row(field)
	low, high := row.Least != "" && unit.Compare(v, parse(row.Least)) < 0, row.Most != "" && unit.Compare(v, parse(row.Most)) > 0
	if !low && !high {
		return true
	}
	s.wrong(node, row.Bounds(), "check the figure")
	return false
}

// defaulted takes the row's default for a field the file leaves out, and
// lists it as an assumption when the row says where it comes from.
func defaulted[T any](s *scope, field string, parse func(string) T) Field[T] {
	row := s.row(field)
	if row.Default == "" {
		return Field[T]{}
	}
	s.assume(field, row.Default, row.Basis)
	return Field[T]{parse(row.Default), Defaulted, s.t.At}
}
