package timing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Caution is something to look at where a current is read or sensed.
type Caution uint8

const (
	OneConductor  Caution = iota // the sensor and the meter go around one conductor; two in one cancel
	AtTheMachine                 // sense at the machine: on a shared circuit two answer for each other
	BothInClamp                  // idling far below the nameplate, as with two conductors in one clamp
	BothLegs                     // fed by two legs: take the one without the lamp or control
	LineSide                     // its speed can be set: sense on the line side of the drive
	WeakReading                  // a clamp meter reads poorly so low: wind several turns through it and divide
	NameplateOnly                // only the nameplate's current is given, and an idling motor draws less
)

// cautionsOf lists the cautions of a current trigger.
func cautionsOf(t *shop.Trigger, s Sensed) []Caution {
	list := []Caution{OneConductor, AtTheMachine}
	amps := shop.Field[unit.Current]{}
	if t.Machine != nil {
		amps = t.Machine.Amps
	}
	if s.OnKnown && amps.Known() && unit.Compare(float64(s.On), share("idle share least")*float64(amps.V)) < 0 {
		list = append(list, BothInClamp)
	}
	if t.Machine != nil && onBothLegs(t.Machine.Motor) {
		list = append(list, BothLegs)
	}
	if s.Slowly {
		list = append(list, LineSide)
	}
	if s.Known() && (weak(s.Off) || weak(s.On)) {
		list = append(list, WeakReading)
	}
	if !s.OnKnown && amps.Known() {
		list = append(list, NameplateOnly)
	}
	return list
}

// onBothLegs reports whether a motor is a single-phase one of the voltage
// between two legs.
func onBothLegs(m *shop.Motor) bool {
	legs := unit.Must[unit.Voltage](figureTable.Measure("both legs from"))
	return m != nil && m.Phase.Known() && m.Phase.V == 1 && m.Volts.Known() && unit.AtLeast(float64(m.Volts.V), float64(legs))
}

// weak reports whether a clamp meter reads a current poorly.
func weak(i unit.Current) bool {
	poor := unit.Must[unit.Current](figureTable.Measure("clamp poor below"))
	return i > 0 && unit.Compare(float64(i), float64(poor)) < 0
}
