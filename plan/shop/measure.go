package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// measure reads a quantity.
func measure[Q unit.Measure](s *scope, field string) Field[Q] { return measureOr[Q](s, field, "") }

// measureOr reads a quantity of a field that may hold something else as well,
// which or names.
func measureOr[Q unit.Measure](s *scope, field, or string) Field[Q] {
	parse := func(text string) Q { return unit.Must[Q](text) }
	node := s.node(field)
	if node == nil {
		return defaulted(s, field, parse)
	}
	v, ok := quantity[Q](s, field, node, or)
	if !ok || !s.inBounds(field, float64(v), node, func(text string) float64 { return float64(parse(text)) }) {
		return Field[Q]{}
	}
	return Field[Q]{v, Stated, node.At}
}

// orWord reads a quantity or the one word that may stand in its place, which
// counts as zero.
func orWord[Q unit.Measure](s *scope, field, word string) Field[Q] {
	node := s.t.Get(field)
	if node != nil && node.Value == word {
		s.seen[field] = true
		return Field[Q]{0, Stated, node.At}
	}
	or := ", or " + entry.Quote(word)
	if text, isText := nodeText(node); isText && len(s.r.search.near(word, text, []string{word})) > 0 {
		s.seen[field] = true
		var zero Q
		s.wrong(node, article(zero.Kind().String())+or, "write "+entry.Quote(word))
		return Field[Q]{}
	}
	return measureOr[Q](s, field, or)
}

// nodeText is the text a node holds, if it holds one.
func nodeText(node *entry.Node) (string, bool) {
	if node == nil {
		return "", false
	}
	text, isText := node.Value.(string)
	return text, isText
}

// quantity reads one quantity of a field from a node.
func quantity[Q unit.Measure](s *scope, field string, node *entry.Node, or string) (Q, bool) {
	var zero Q
	text, ok := node.Value.(string)
	if n, isNumber := plain(node); isNumber {
		text, ok = unit.Short(n), true // a bare number: the unit package has the hint
	}
	if !ok {
		s.wrong(node, article(zero.Kind().String())+" in quotes, such as "+zero.Kind().Example()+or, "put number and unit in quotes")
		return zero, false
	}
	v, err := unit.Read[Q](text)
	if err == nil {
		return v, true
	}
	if number, bare := numberIn(node); bare {
		with := unit.Short(number) + " " + s.likelyUnit(field, zero.Kind())
		if _, fault := unit.Read[Q](with); fault == nil {
			s.wrong(node, err.(*unit.Error).Expected+or, "write the unit: "+entry.Quote(with))
			return zero, false
		}
	}
	s.unitProblem(node, err, or)
	return zero, false
}

// likelyUnits are the units that a bare number is likely to be meant in, for
// shops in either system of units.
var likelyUnits = map[unit.Kind][2]string{
	unit.KindLength: {"in", "mm"}, unit.KindArea: {"sq ft", "m2"}, unit.KindVolume: {"gal", "L"}, unit.KindFlow: {"cfm", "m3/h"},
	unit.KindVelocity: {"fpm", "m/s"}, unit.KindPressure: {"inwg", "Pa"}, unit.KindTemperature: {"F", "C"}, unit.KindPower: {"hp", "kW"},
	unit.KindDensity: {"lb/ft3", "kg/m3"}, unit.KindInertia: {"lb ft2", "kg m2"}, unit.KindWire: {"AWG", "mm2"},
}

// likelyUnit is the unit that a bare number of a field is likely to be meant
// in; empty where there is one for all.
func (s *scope) likelyUnit(field string, kind unit.Kind) string {
	list := likelyUnits[kind]
	if kind == unit.KindLength && s.row(field).Of == "run" {
		list = [2]string{"ft", "m"}
	}
	if s.r.shop.Units == unit.Metric {
		return list[1]
	}
	return list[0]
}

// unitProblem turns what the unit package says into a problem of the file.
func (s *scope) unitProblem(node *entry.Node, err error, or string) {
	if e, ok := err.(*unit.Error); ok {
		s.wrong(node, e.Expected+or, lower(e.Do))
		return
	}
	s.wrong(node, "a quantity"+or, err.Error())
}

// two reads two quantities in one text, such as a flow at a pressure.
func two[Q, R unit.Measure](s *scope, node *entry.Node, or string, read func(string) (Q, R, error)) (first Q, second R, ok bool) {
	text, isText := node.Value.(string)
	if n, isNumber := plain(node); isNumber {
		text, isText = unit.Short(n), true
	}
	if !isText {
		_, _, err := read("")
		s.unitProblem(node, err, or)
		return 0, 0, false
	}
	first, second, err := read(text)
	if err != nil {
		s.unitProblem(node, err, or)
		return 0, 0, false
	}
	return first, second, true
}

// gauge reads a sheet gauge.
func (s *scope) gauge(field string) Field[unit.Gauge] {
	node := s.node(field)
	if node == nil {
		return Field[unit.Gauge]{}
	}
	text, ok := node.Value.(string)
	if n, isNumber := plain(node); isNumber {
		text, ok = unit.Short(n), true
	}
	if !ok {
		s.wrong(node, `a sheet gauge in quotes, such as "26 ga"`, `write "26 ga"`)
		return Field[unit.Gauge]{}
	}
	g, err := unit.ReadGauge(text)
	if err != nil {
		s.unitProblem(node, err, "")
		return Field[unit.Gauge]{}
	}
	inGauges := func(text string) float64 {
		bound, err := unit.ReadGauge(text)
		if err != nil {
			panic("shop: fields.csv: no gauge: " + text)
		}
		return float64(bound)
	}
	if !s.inBounds(field, float64(g), node, inGauges) {
		return Field[unit.Gauge]{}
	}
	return Field[unit.Gauge]{g, Stated, node.At}
}

// assume lists an assumption. What has no mark is a convention of the file,
// not a statement about the shop.
func (s *scope) assume(field, value string, basis source.Basis) {
	if basis.Mark == 0 {
		return
	}
	s.r.shop.Assumed = append(s.r.shop.Assumed, Assumption{Thing: s.thing(), Field: s.table + "." + field, Value: value, Basis: basis, At: s.t.At})
}

// Whole is what an assumption is about where it is about no one thing.
const Whole = "the shop"

// thing is what an assumption is about.
func (s *scope) thing() string {
	if s.about == "" {
		return Whole
	}
	return s.about
}
