package chain

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Reach says how the volts of a supply stand to those of the class of supplies
// whose power is limited.
type Reach uint8

// How far the class reaches.
const (
	Reached    Reach = iota // within what a cited text says, or the volts are not known
	HalfWay                 // above that, within the rows known from memory
	OutOfReach              // above every row: not low-voltage work
)

// Edge is where rows of the class end.
type Edge struct {
	Volts unit.Voltage
	Basis source.Basis
}

// ReachOf says how the volts of a supply stand to the class, and the edge they
// lie above; none where they lie above none.
func ReachOf(volts unit.Voltage) (Reach, Edge) {
	cited, last := edges()
	switch {
	case unit.Compare(float64(volts), float64(last.Volts)) > 0:
		return OutOfReach, last
	case unit.Compare(float64(volts), float64(cited.Volts)) > 0:
		return HalfWay, cited
	}
	return Reached, Edge{}
}

// edges are the highest volts of the rows whose mark decides, and of all rows.
func edges() (cited, last Edge) {
	for _, r := range class2Table.Rows {
		e := Edge{unit.Must[unit.Voltage](r.Text("up_to")), r.Basis}
		if e.Volts > last.Volts {
			last = e
		}
		if r.Basis.Mark.Decides() && e.Volts > cited.Volts {
			cited = e
		}
	}
	return cited, last
}
