package circuit

import (
	"math"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Drop is what a circuit loses on its way, by resistance alone, copper at
// 75 °C.
type Drop struct {
	Volts unit.Voltage // at full load
	Share float64      // of the supply, at full load
	Start float64      // of the supply, while the motor starts
	Basis source.Basis // of the resistance
}

// TooMuch reports whether more is lost than the code advises at full load.
func (d Drop) TooMuch() bool { return unit.Compare(d.Share, figureTable.Figure("drop")) > 0 }

// StartsPoorly reports whether a contactor may let go while the motor starts.
func (d Drop) StartsPoorly() bool {
	return unit.Compare(d.Start, figureTable.Figure("start drop")) > 0
}

// MostDrop is the share of its volts that a circuit may lose at full load, by
// the code's advice.
func MostDrop() float64 { return figureTable.Figure("drop") }

// thousandFeet is the length that the resistances are stated for.
var thousandFeet = unit.Must[unit.Length]("1000 ft")

// Lost reckons the drop of a current on a circuit of some length one way:
// there and back on a single phase, root three times one way on three. False
// for a conductor that the table of resistances does not have.
func Lost(i unit.Current, supply unit.Voltage, phase int, w unit.Wire, oneWay unit.Length) (Drop, bool) {
	for _, r := range resistanceTable.Rows {
		if unit.Compare(float64(cell[unit.Wire](r, "size")), float64(w)) != 0 {
			continue
		}
		ways := 2.0
		if phase == 3 {
			ways = math.Sqrt(3)
		}
		volts := ways * float64(i) * r.Number("value") * float64(oneWay) / float64(thousandFeet)
		share := volts / float64(supply)
		return Drop{unit.SixOf(unit.Voltage(volts)), unit.Six(share), unit.Six(figureTable.Figure("start") * share), r.Basis}, true
	}
	return Drop{}, false
}

// drop reckons what the circuit loses, where the file gives enough.
func (o *Of) drop() {
	if c := o.Circuit; o.Told && c.Wire.Known() && c.Length.Known() {
		o.Drop, o.DropKnown = Lost(o.Table.Current, o.Motor.Volts.V, o.Motor.Phase.V, c.Wire.V, c.Length.V)
	}
}
