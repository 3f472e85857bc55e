package duct

import (
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Galvanised sheet of 26 and 24 gauge, what it is sold as and the least that it
// may be: from memory, as the table says.
func TestSheetOf(t *testing.T) {
	for _, c := range []struct {
		gauge          unit.Gauge
		nominal, least string
	}{{26, "0.0217 in", "0.0187 in"}, {24, "0.0276 in", "0.0236 in"}} {
		d := &shop.Duct{Gauge: shop.Field[unit.Gauge]{V: c.gauge, How: shop.Stated}}
		s, known := SheetOf(d)
		if !known || s.Nominal != unit.Must[unit.Length](c.nominal) || s.Least != unit.Must[unit.Length](c.least) || s.Basis.Mark != source.Memory {
			t.Errorf("%s: %+v %v", c.gauge, s, known)
		}
	}
	wall := unit.Must[unit.Length]("1 mm")
	d := &shop.Duct{Gauge: shop.Field[unit.Gauge]{V: 24, How: shop.Stated}, Wall: shop.Field[unit.Length]{V: wall, How: shop.Stated}}
	if s, known := SheetOf(d); !known || s.Nominal != wall || s.Least != wall || s.Basis.Mark != source.Given {
		t.Errorf("a measured wall comes before its gauge: %+v %v", s, known)
	}
	for name, d := range map[string]*shop.Duct{"neither": {}, "a gauge that the table lacks": {Gauge: shop.Field[unit.Gauge]{V: 11, How: shop.Stated}}} {
		if s, known := SheetOf(d); known {
			t.Errorf("%s: %+v", name, s)
		}
	}
}
