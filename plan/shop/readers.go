package shop

import "dustbook/plan/unit"

// readers read a field by the kind its row names, for tables whose values
// are checked for form only.
var readers map[string]func(*scope, string)

func init() {
	readers = map[string]func(*scope, string){
		"name":        func(s *scope, f string) { s.name(s.table) },
		"text":        func(s *scope, f string) { s.text(f) },
		"word":        func(s *scope, f string) { s.word(f) },
		"words":       func(s *scope, f string) { s.words(f) },
		"yes":         func(s *scope, f string) { s.yes(f) },
		"count":       func(s *scope, f string) { s.count(f) },
		"number":      func(s *scope, f string) { s.number(f) },
		"point":       func(s *scope, f string) { s.point(f) },
		"points":      func(s *scope, f string) { s.points(f) },
		"date":        func(s *scope, f string) { s.date(f) },
		"names":       refers,
		"name of":     refers,
		"texts list":  func(s *scope, f string) { s.strings(f) },
		"length":      form[unit.Length],
		"current":     form[unit.Current],
		"voltage":     form[unit.Voltage],
		"power":       form[unit.Power],
		"time":        form[unit.Time],
		"temperature": form[unit.Temperature],
		"wire":        form[unit.Wire],
		"tables": func(s *scope, f string) {
			for _, t := range s.inlines(f) {
				t.checkForm()
			}
		},
	}
}

func form[Q unit.Measure](s *scope, field string) { measure[Q](s, field) }
