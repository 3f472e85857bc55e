package circuit

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Why says why a motor has no current in the tables.
type Why uint8

const (
	Told     Why = iota
	OffVolts     // no column holds for its voltage
	OffPhase     // neither one phase nor three
	TooSmall     // less power than the first row of its column
	TooLarge     // more power than the last row of its column
)

// FullLoad is the full-load current of a motor by the table.
type FullLoad struct {
	Current unit.Current // of the row of its power, else of the next larger
	Smaller unit.Current // of the next smaller row where no row has its power, else the same
	Column  unit.Voltage // of the table
	Basis   source.Basis
	System  source.Basis // of the voltages that the column holds for
}

// Between reports whether the motor's power is between two rows.
func (f FullLoad) Between() bool { return f.Smaller != f.Current }

// phases are the names of the two tables.
var phases = map[int]string{1: "single phase", 3: "three-phase"}

// Table finds the current of a motor: in the column whose range of supply
// voltages holds its own, in the row of its power or, between two rows, the
// next larger one.
func Table(power unit.Power, volts unit.Voltage, phase int) (FullLoad, Why) {
	var f FullLoad
	name, ok := phases[phase]
	if !ok {
		return f, OffPhase
	}
	for _, r := range systemTable.Rows {
		if unit.AtLeast(float64(volts), float64(cell[unit.Voltage](r, "least"))) && unit.AtLeast(float64(cell[unit.Voltage](r, "most")), float64(volts)) {
			f.Column, f.System = cell[unit.Voltage](r, "volts"), r.Basis
		}
	}
	rows := column(name, f.Column)
	if len(rows) == 0 {
		return FullLoad{}, OffVolts
	}
	for i, r := range rows {
		row := cell[unit.Power](r, "power")
		if !shop.SameRating(power, row) && power > row {
			continue
		}
		f.Current, f.Basis = value[unit.Current](r), r.Basis
		f.Smaller = f.Current
		if !shop.SameRating(power, row) {
			if i == 0 {
				return FullLoad{}, TooSmall
			}
			f.Smaller = value[unit.Current](rows[i-1])
		}
		return f, Told
	}
	return FullLoad{}, TooLarge
}

// column are the rows of one table and voltage, the least power first.
func column(phase string, volts unit.Voltage) []source.Row {
	var list []source.Row
	for _, r := range currentTable.Rows {
		if r.Text("phase") == phase && cell[unit.Voltage](r, "volts") == volts {
			list = append(list, r)
		}
	}
	return list
}
