package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Sheet is how thick the wall of a steel duct is: what its gauge is sold as and
// the least that it allows, in metres. Where the file states the wall, both are
// that.
type Sheet struct {
	Nominal, Least unit.Length
	Basis          source.Basis // of both: the file, else the table of gauges, from memory
}

// SheetOf is the wall of a duct; known is false where neither wall nor gauge is
// given, or the table does not have the gauge.
func SheetOf(d *shop.Duct) (s Sheet, known bool) {
	if s.Least, s.Basis, known = wallOf(d); !known || d.Wall.Known() {
		s.Nominal = s.Least
		return s, known
	}
	row := sheetTable.Row(d.Gauge.V.String())
	s.Nominal = unit.Must[unit.Length](row.Text("nominal") + " " + row.Text("unit"))
	return s, true
}
