package circuit

import (
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Reckoning is what the package knows of one shop.
type Reckoning struct {
	Circuits []*Of // of collectors, then machines, in file order, where the file gives a circuit
	Without  []*Of // motors whose volts the file gives and whose circuit it does not
}

// Of is the circuit of one motor.
type Of struct {
	Collector *shop.Collector // one of the two is nil
	Machine   *shop.Machine
	Motor     *shop.Motor // nil where the file gives none
	Circuit   *shop.Circuit
	Nameplate shop.Field[unit.Current]

	Table FullLoad
	Why   Why  // where the table has no such motor
	Told  bool // the table has it

	// The current that conductors and breaker are held against lies between
	// these two; they differ where the power is between two rows, or the
	// nameplate is over the table.
	Low, High unit.Current

	Carry    unit.Current // what conductors have to carry, with High
	On       Terminals
	OnGiven  bool
	OnTooLow bool // rated below the first column of the table
	Factor   float64
	AirKnown bool // false where the air is hotter than the table goes

	Least   unit.Wire // nought where no size of the table carries it
	Largest Device    // breaker, with Low
	Raised  bool      // the breaker is over Largest, and within what a motor may have that cannot start on it
	Carries Carries   // what the conductors carry, with On
	Metric  bool
	Alone   unit.Current // largest breaker that protects the conductors without an overload

	Drop      Drop // on the way to the motor
	DropKnown bool

	Missing []string
	Faults  []Fault
	Doubts  []Doubt
	Verdict Verdict
}

// Name is the name of the machine or collector.
func (o *Of) Name() string {
	if o.Machine != nil {
		return o.Machine.Name
	}
	return o.Collector.Name
}

// shown reports whether the tables are of use to a shop: they compare under
// the rules of the US, and are shown where the file names no rules.
func shown(s *shop.Shop) bool { return s.Rules == "us" || s.Rules == "none" }

// Has reports whether a fault is found.
func (o *Of) Has(f Fault) bool { return slices.Contains(o.Faults, f) }

// Running is the current that the motor draws at full load, the least that it
// can be: by its nameplate where the file gives that, else by the table.
// Nought where neither is known.
func (o *Of) Running() unit.Current {
	if o.Nameplate.Known() {
		return o.Nameplate.V
	}
	return o.Low
}

// Reckon judges every circuit that a shop file gives.
func Reckon(s *shop.Shop) *Reckoning {
	k := &Reckoning{}
	take := func(o *Of) {
		switch {
		case o.Circuit != nil:
			o.judge(s)
			k.Circuits = append(k.Circuits, o)
		case o.Motor != nil && o.Motor.Volts.Known():
			k.Without = append(k.Without, o)
		}
	}
	for _, c := range s.Collectors {
		take(&Of{Collector: c, Motor: c.Motor, Circuit: c.Circuit})
	}
	for _, m := range s.Machines {
		take(&Of{Machine: m, Motor: m.Motor, Circuit: m.Circuit, Nameplate: m.Amps})
	}
	return k
}
