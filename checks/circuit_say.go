package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/control/circuit"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

func amperes(p *plan.Plan, i unit.Current) string { return unit.Amps.Print(p.Shop.Units, i) }

// conductor is a conductor by its gauge, else by its area.
func conductor(p *plan.Plan, w unit.Wire) string {
	if number, ok := w.Number(); ok {
		return say("finding-motor-circuit.gauge", number)
	}
	return unit.Conductor.Print(p.Shop.Units, w)
}

// circuitAsks says the motor's current and what it asks for.
func circuitAsks(p *plan.Plan, o *circuit.Of) string {
	return join(say("finding-motor-circuit.current.says", amperes(p, o.Table.Current)), circuitNeeds(p, o))
}

// circuitNeeds says the least conductor and the greatest breaker, where the
// tables tell them.
func circuitNeeds(p *plan.Plan, o *circuit.Of) string {
	var wire, breaker string
	if o.Least > 0 {
		wire = say("finding-motor-circuit.least.says", conductor(p, o.Least), amperes(p, o.Carry))
	}
	if o.Told && o.Largest.Known {
		breaker = say("finding-motor-circuit.largest.says", amperes(p, o.Largest.Size))
	}
	return join(wire, breaker)
}

// overloadTrip says what the overload may be set to, where the nameplate is
// known.
func overloadTrip(p *plan.Plan, o *circuit.Of) string {
	if !o.Nameplate.Known() || o.Motor == nil {
		return ""
	}
	return say("finding-motor-circuit.trip.says", amperes(p, circuit.Overload(o.Nameplate.V, o.Motor.ServiceFactor.V)), amperes(p, o.Nameplate.V))
}

// circuitQuestion is the question to a licensed electrician, with all that the
// file says of the circuit.
func circuitQuestion(p *plan.Plan, o *circuit.Of) string {
	unknown := say("finding-motor-circuit.unknown")
	motor, volts, phase := unknown, unknown, unknown
	if m := o.Motor; m != nil {
		motor = unit.Shaft.Print(p.Shop.Units, m.Power)
		if m.Volts.Known() {
			volts = unit.Volts.Print(p.Shop.Units, m.Volts.V)
		}
		switch m.Phase.V {
		case 1:
			phase = say("finding-motor-circuit.one-phase")
		case 3:
			phase = say("finding-motor-circuit.three-phase")
		}
	}
	nameplate, breaker, wire, terminals := unknown, unknown, unknown, unknown
	if o.Nameplate.Known() {
		nameplate = amperes(p, o.Nameplate.V)
	}
	if o.Circuit.Breaker.Known() {
		breaker = amperes(p, o.Circuit.Breaker.V)
	}
	if o.Circuit.Wire.Known() {
		wire = conductor(p, o.Circuit.Wire.V)
	}
	if o.Circuit.Terminals.Known() {
		terminals = unit.Heat.Print(unit.Metric, o.Circuit.Terminals.V) // as they are marked
	}
	return say("finding-motor-circuit.asks", o.Name(), motor, volts, phase, nameplate, breaker, wire, terminals)
}

// circuitFigures are what the circuit has beside what it should.
func circuitFigures(o *circuit.Of) []Figure {
	var list []Figure
	if !o.Told {
		return nil
	}
	if o.Circuit.Breaker.Known() && o.Largest.Known {
		most := float64(o.Largest.Size)
		list = append(list, Figure{Name: say("finding-motor-circuit.breaker-figure"), Value: float64(o.Circuit.Breaker.V), Unit: "A", Limit: &most, Basis: circuit.BasisOf("breaker")})
	}
	if o.Carries.Current > 0 {
		least := float64(o.Carry)
		list = append(list, Figure{Name: say("finding-motor-circuit.wire-figure"), Value: float64(o.Carries.Current), Unit: "A", Limit: &least, Basis: circuit.BasisOf("conductor")})
	}
	return list
}

// circuitDrop says that much is lost on the way to a motor: the code advises,
// and practice knows when a motor starts poorly.
func circuitDrop(p *plan.Plan, o *circuit.Of) Finding {
	units, most := p.Shop.Units, circuit.MostDrop()
	f := Finding{About: o.Name(), Kind: circuitKind(o), At: circuitAt(o), State: Advice, By: ByModel, Weight: Know,
		Basis: []source.Basis{circuit.BasisOf("drop"), o.Drop.Basis, circuit.BasisOf("start drop")}}
	f.Figures = []Figure{{Name: say("finding-motor-circuit.drop-figure"), Value: o.Drop.Share, Unit: "1", Limit: &most, Basis: f.Basis[0]}}
	f.Says = say("finding-motor-circuit.drop.says", unit.Run.Print(units, o.Circuit.Length.V), unit.Volts.Print(units, o.Drop.Volts), unit.Fixed(100*o.Drop.Share, 1), unit.Percent(most))
	if o.Drop.StartsPoorly() {
		f.Says = join(f.Says, say("finding-motor-circuit.start-drop.says", unit.Percent(o.Drop.Start)))
	}
	f.Do = say("finding-motor-circuit.drop.do")
	return f
}

// merged puts the clauses of one document and mark behind each other.
func merged(list []source.Basis) []source.Basis {
	var out []source.Basis
	for _, b := range list {
		at := slices.IndexFunc(out, func(o source.Basis) bool { return o.Document == b.Document && o.Mark == b.Mark })
		if at < 0 {
			out = append(out, b)
			continue
		}
		out[at].Clause += ", " + b.Clause
	}
	return out
}
