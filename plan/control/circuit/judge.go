package circuit

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// judge holds a circuit against what its motor asks for.
func (o *Of) judge(s *shop.Shop) {
	if !shown(s) {
		o.breaker()
		o.settle()
		if o.Verdict != Fails {
			o.Verdict = Elsewhere
		}
		return
	}
	o.load()
	o.terminals()
	o.Factor, o.AirKnown = Ambient(s.AirTemperature.V)
	if o.Told {
		o.Least, _, _ = Least(o.Carry, o.On, o.Factor)
		o.Largest = Breaker(o.Low)
	}
	o.breaker()
	o.wire()
	o.drop()
	o.settle()
}

// load finds the motor's current.
func (o *Of) load() {
	m := o.Motor
	if m == nil {
		o.Missing = append(o.Missing, NeedsMotor)
		return
	}
	if !m.Volts.Known() {
		o.Missing = append(o.Missing, NeedsVolts)
	}
	if !m.Phase.Known() {
		o.Missing = append(o.Missing, NeedsPhase)
	}
	if len(o.Missing) > 0 {
		return
	}
	o.Table, o.Why = Table(m.Power, m.Volts.V, m.Phase.V)
	if o.Told = o.Why == Told; !o.Told {
		return
	}
	o.Low, o.High = o.Table.Smaller, o.Table.Current
	if o.Nameplate.Known() && unit.Compare(float64(o.Nameplate.V), float64(o.High)) > 0 {
		o.High = o.Nameplate.V
	}
	o.Carry = Conductors(o.High)
}

// terminals finds the column of the ampacity table.
func (o *Of) terminals() {
	if t := o.Circuit.Terminals; t.Known() {
		on, ok := Rated(t.V)
		o.On, o.OnGiven, o.OnTooLow = on, true, !ok
		return
	}
	o.On = Unrated(o.Carry)
}

// breaker holds the breaker against the motor's current.
func (o *Of) breaker() {
	b := o.Circuit.Breaker
	if !b.Known() {
		o.Missing = append(o.Missing, NeedsBreaker)
		return
	}
	if unit.Compare(float64(b.V), float64(o.Running())) < 0 {
		o.Faults = append(o.Faults, BreakerSmall)
	}
	switch {
	case !o.Told || within(b.V, Breaker(o.Low)):
	case within(b.V, Breaker(o.Table.Current)):
		o.Doubts = append(o.Doubts, ByPower)
	case within(b.V, Breaker(o.High)):
		o.Doubts = append(o.Doubts, ByNameplate)
	default:
		o.Faults = append(o.Faults, BreakerLarge)
		o.Raised = unit.AtLeast(float64(RaisedBreaker(o.Low)), float64(b.V))
	}
}

// within reports whether a breaker is no larger than the greatest.
func within(b unit.Current, most Device) bool {
	return !most.Known || unit.AtLeast(float64(most.Size), float64(b))
}

// wire holds the conductors against what they have to carry.
func (o *Of) wire() {
	w := o.Circuit.Wire
	if !w.Known() {
		o.Missing = append(o.Missing, NeedsWire)
		return
	}
	_, gauge := w.V.Number()
	if o.Metric = !gauge; o.Metric {
		return
	}
	o.Carries, _ = Ampacity(w.V, o.On, o.Factor)
	best, _ := Ampacity(w.V, o.warmest(), o.Factor)
	o.Alone = Small(w.V, o.Carries)
	if running := o.Running(); running > 0 && unit.Compare(float64(best.Current), float64(running)) < 0 {
		o.Faults = append(o.Faults, WireBelowMotor)
	}
	if !o.Told {
		return
	}
	carries := func(i unit.Current, by Carries) bool {
		return unit.AtLeast(float64(by.Current), float64(Conductors(i)))
	}
	switch {
	case !carries(o.Low, best):
		o.Faults = append(o.Faults, WireSmall)
	case !carries(o.Low, o.Carries):
		o.Doubts = append(o.Doubts, ByTerminals)
	case !carries(o.Table.Current, o.Carries):
		o.Doubts = append(o.Doubts, ByPower)
	case !carries(o.High, o.Carries):
		o.Doubts = append(o.Doubts, ByNameplate)
	case !o.AirKnown:
		o.Doubts = append(o.Doubts, ByAir)
	}
}

// warmest is the best column that the terminals can have.
func (o *Of) warmest() Terminals {
	if o.OnGiven && !o.OnTooLow {
		return o.On
	}
	if o.OnTooLow {
		return Cool
	}
	return Warm
}

// settle makes one verdict of what was found.
func (o *Of) settle() {
	switch {
	case len(o.Faults) > 0:
		o.Verdict = Fails
	case o.Motor != nil && o.Why != Told:
		o.Verdict = OffTable
	case len(o.Missing) > 0:
		o.Verdict = Unknown
	case o.Metric:
		o.Verdict = NotComparable
	case len(o.Doubts) > 0:
		o.Verdict = Doubtful
	case unit.Compare(float64(o.Circuit.Breaker.V), float64(o.Alone)) > 0:
		o.Verdict = WithOverload
	default:
		o.Verdict = Holds
	}
}
