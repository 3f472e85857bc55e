package shop

import (
	"fmt"

	"dustbook/plan/unit"
)

// readers read a field by the kind its row names, for tables whose values
// are checked for form only.
var readers map[string]func(*scope, string)

func init() {
	readers = map[string]func(*scope, string){
		"name":        func(s *scope, f string) { s.name(s.table) },
		"text":        func(s *scope, f string) { s.text(f) },
		"word":        func(s *scope, f string) { s.word(f) },
		"yes":         func(s *scope, f string) { s.yes(f) },
		"count":       func(s *scope, f string) { s.count(f) },
		"point":       func(s *scope, f string) { s.point(f) },
		"date":        func(s *scope, f string) { s.date(f) },
		"names":       refers,
		"name of":     func(s *scope, f string) { s.r.refer(s, f, func(any) {}) },
		"length":      form[unit.Length],
		"current":     form[unit.Current],
		"voltage":     form[unit.Voltage],
		"power":       form[unit.Power],
		"time":        form[unit.Time],
		"temperature": form[unit.Temperature],
		"wire":        form[unit.Wire],
		"current range": func(s *scope, f string) {
			if node := s.node(f); node != nil {
				two(s, node, "", func(text string) (low, high unit.Current, err error) { return unit.ReadRange[unit.Current](text) })
			}
		},
		"place": placeOn,
		"level": level,
		"tables": func(s *scope, f string) {
			for _, t := range s.inlines(f) {
				t.checkForm()
			}
		},
	}
}

// form reads a quantity for its form.
func form[Q unit.Measure](s *scope, field string) { measure[Q](s, field) }

// refers resolves names only to find the ones that mean nothing.
func refers(s *scope, field string) {
	for _, ref := range s.strings(field) {
		s.r.later(ref, s.row(field).Of, func(any) {})
	}
}

// placeOn reads a place on the duct that the table's on names.
func placeOn(s *scope, field string) {
	at := measure[unit.Length](s, field)
	on := s.t.Get("on")
	if on == nil {
		return
	}
	s.r.pending = append(s.r.pending, func() {
		if d, ok := s.r.things()["duct"][fmt.Sprint(on.Value)].(*Duct); ok {
			s.along(d, at)
		}
	})
}

// level reads a level of what a sensor senses: a pressure across the filter,
// and free text for what has no unit of its own.
func level(s *scope, field string) {
	if senses := s.t.Get("senses"); senses == nil || senses.Value != "filter pressure" {
		s.text(field)
		return
	}
	v := measure[unit.Pressure](s, field)
	if high := s.t.Get("high"); field == "very_high" && v.Known() && high != nil {
		text, _ := high.Value.(string)
		if below, err := unit.Read[unit.Pressure](text); err == nil && !unit.AtLeast(float64(v.V), float64(below)) {
			s.wrong(s.t.Get(field), "a pressure no lower than high", "check the two figures")
		}
	}
}
