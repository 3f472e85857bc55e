package chain

import (
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Input is a figure that an answer about a chain rests on.
type Input uint8

// The inputs.
const (
	SupplyVolts    Input = iota // of the control supply
	SupplyPower                 // of the control supply
	SupplyListing               // of the control supply
	LowestVolts                 // that a device works with
	StallCurrent                // of a gate
	HoldingCurrent              // of a gate
	DrawnCurrent                // of a trigger or sensor
	MovesTogether               // of the control
)

// inputs are the fields of the shop file.
var inputs = [...]string{"control.supply", "control.supply_power", "control.supply_listed", "gate.lowest", "gate.stall", "gate.holding", "draws", "control.moves_together"}

// String is the field of the shop file.
func (i Input) String() string { return inputs[i] }

// Gap is an input that the file does not give; of a device, or of the whole
// control where Device is nil.
type Gap struct {
	Input  Input
	Device *control.Device
}

// Assumed is a current that stands in for one the file does not give.
type Assumed struct {
	Gap
	Current unit.Current
	Basis   source.Basis
}

// taker is what one stop of a chain takes: at rest, and when it is stalled.
type taker struct {
	device  *control.Device
	moves   bool // a gate that power moves
	judged  bool // a device that has to have its volts
	rest    Load
	hard    Load
	least   Load // what it takes at rest for certain
	mostly  Load // what it takes stalled for certain
	unknown bool // its current stalled is not known at any volts
	assumed []Assumed
}

// takerOf is what a stop takes. A gate moved by hand takes nothing.
func takerOf(s *shop.Shop, k *control.Reckoning, stop shop.ChainStop) taker {
	t := taker{device: k.OnStop(stop)}
	if g := stop.Gate; g != nil {
		if k.Drive(g) == control.Powered {
			t.moves, t.judged = true, true
			t.gate(g, s.Control.Supply)
		}
		return t
	}
	t.judged = true
	draws := shop.Field[unit.Current]{}
	if stop.Trigger != nil {
		draws = stop.Trigger.Draws
	} else if stop.Sensor != nil {
		draws = stop.Sensor.Draws
	}
	if draws.Known() {
		t.least.Current = draws.V
	}
	t.rest.Current = t.or(draws, DrawnCurrent, figures.draws, BasisOf("draws"))
	t.hard, t.mostly = t.rest, t.least
	return t
}

// gate reads what a powered gate takes.
func (t *taker) gate(g *shop.Gate, supply shop.Field[unit.Voltage]) {
	if g.Holding.Known() {
		t.least.Current = g.Holding.V
	}
	t.rest.Current = t.or(g.Holding, HoldingCurrent, figures.holding, BasisOf("holding"))
	if g.Takes.Known() {
		t.hard = Load{Power: g.Takes.V}
		t.mostly = t.hard
		return
	}
	if g.Stall.Known() {
		t.hard.Current = g.Stall.V
		t.mostly = t.hard
		return
	}
	t.mostly.Current = t.least.Current
	if g.Moving.Known() {
		t.mostly.Current = g.Moving.V
	}
	if row, found := stallAt(supply); found {
		t.hard.Current = t.or(shop.Field[unit.Current]{}, StallCurrent, max(unit.Current(row.Number("value")), g.Moving.V), row.Basis)
		return
	}
	t.unknown = true
}

// or is a current that the file gives, or what stands in for it.
func (t *taker) or(given shop.Field[unit.Current], input Input, instead unit.Current, basis source.Basis) unit.Current {
	if given.Known() {
		return given.V
	}
	t.assumed = append(t.assumed, Assumed{Gap{input, t.device}, instead, basis})
	return instead
}

// stallAt is the row of stall.csv for the volts of a supply.
func stallAt(supply shop.Field[unit.Voltage]) (source.Row, bool) {
	if supply.Known() {
		for _, r := range stallTable.Rows {
			if unit.AtLeast(float64(unit.Must[unit.Voltage](r.Text("up_to"))), float64(supply.V)) {
				return r, true
			}
		}
	}
	return source.Row{}, false
}
