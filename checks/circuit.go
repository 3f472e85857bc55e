package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/control/circuit"
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var motorCircuit = &Check{
	Whom:     Electrician,
	Compares: []string{"motor-circuit"},
	Stops:    true,
	ID:       "motor-circuit",
	Name:     say("check.motor-circuit.name"),
	Title:    say("check.motor-circuit.title"),
	Needs:    "machine.circuit, collector.circuit, circuit.breaker, circuit.wire, circuit.terminals, circuit.length, motor.power, motor.volts, motor.phase, machine.amps, shop.rules, shop.air_temperature",
	Answers:  settledBy("motor-circuit", say("check.motor-circuit.settles")),
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, o := range p.Circuits.Circuits {
			report(circuitOf(p, o))
			if o.DropKnown && (o.Drop.TooMuch() || o.Drop.StartsPoorly()) {
				report(circuitDrop(p, o))
			}
		}
		if f, told := circuitsNotGiven(p); told {
			report(f)
		}
	},
}

// circuitTables are the tables that motor circuits go by.
var circuitTables = basesOf("motor-circuit")

// circuitTexts are the texts on motor circuits: the clauses of the rules, and what
// a circuit was reckoned with, else all tables.
func circuitTexts(p *plan.Plan, reckoned []source.Basis) []source.Basis {
	if len(reckoned) == 0 {
		reckoned = circuitTables
	}
	return append([]source.Basis{rulesOn(p.Shop, "motor-circuit").Basis}, reckoned...)
}

// circuitOf words the verdict on one circuit. The tables decide under the
// rules of the US where all of them were read; else they are shown and asked.
// A breaker under the nameplate's current is the file's own figure.
func circuitOf(p *plan.Plan, o *circuit.Of) Finding {
	f := Finding{About: o.Name(), Kind: circuitKind(o), At: circuitAt(o), By: ByRule, Weight: Know, Basis: circuitTexts(p, merged(o.Bases()))}
	f.Figures = circuitFigures(o)
	switch o.Verdict {
	case circuit.Unknown:
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = sayOf(len(o.Missing), "finding-motor-circuit.missing.says", listed(o.Missing)), say("finding-motor-circuit.missing.do")
	case circuit.Fails:
		circuitFails(p, o, &f)
	case circuit.Doubtful:
		circuitDoubts(p, o, &f)
	case circuit.WithOverload:
		f.State = Ask
		f.Says = join(circuitAsks(p, o), say("finding-motor-circuit.overload.says", amperes(p, o.Circuit.Breaker.V), amperes(p, o.Alone)))
		f.Do = join(say("finding-motor-circuit.overload.do"), overloadTrip(p, o))
	case circuit.Holds:
		f.State = Ask
		if circuitDecides(p, o) {
			f.State = Met
		}
		f.Says, f.Do = circuitAsks(p, o), join(say("finding-motor-circuit.holds.do"), overloadTrip(p, o))
	default:
		f.State, f.Do = Ask, say("finding-motor-circuit.ask.do")
		f.Says = circuitUntold(p, o)
	}
	if f.State == Ask || f.State == NotMet {
		f.Asks = circuitQuestion(p, o)
	}
	if rulesOn(p.Shop, "motor-circuit").Elsewhere && f.By == ByRule && o.Told {
		f.Says = join(f.Says, say("finding-motor-circuit.no-rules.says"))
	}
	return f
}

func circuitKind(o *circuit.Of) string {
	if o.Machine != nil {
		return "machine"
	}
	return "collector"
}

func circuitAt(o *circuit.Of) entry.Place {
	if o.Machine != nil {
		return o.Machine.At
	}
	return o.Collector.At
}

// circuitDecides reports whether the tables decide about a circuit.
func circuitDecides(p *plan.Plan, o *circuit.Of) bool {
	for _, b := range o.Bases() {
		if !b.Mark.Decides() {
			return false
		}
	}
	return rulesOn(p.Shop, "motor-circuit").Decides
}

// circuitFails says each thing that does not hold.
func circuitFails(p *plan.Plan, o *circuit.Of, f *Finding) {
	f.State, f.Weight = NotMet, Mend
	own := o.Has(circuit.BreakerSmall) && o.Nameplate.Known()
	switch {
	case own && len(o.Faults) == 1:
		f.By, f.Basis = ByGiven, ownFile(say("finding-motor-circuit.given"))
	case circuitDecides(p, o):
		if o.Has(circuit.WireBelowMotor) {
			f.Weight = Stop
		}
	case own:
		f.By, f.Basis = ByGiven, append(ownFile(say("finding-motor-circuit.given")), f.Basis...)
	default:
		f.State = Ask
	}
	for _, fault := range o.Faults {
		f.Says = join(f.Says, circuitFault(p, o, fault))
	}
	if o.Raised {
		f.Says = join(f.Says, say("finding-motor-circuit.raised.says", amperes(p, circuit.RaisedBreaker(o.Low))))
	}
	for _, d := range o.Doubts {
		f.Says = join(f.Says, say(doubtSays[d]))
	}
	if o.Metric {
		f.Says = join(f.Says, say("finding-motor-circuit.metric.says", conductor(p, o.Circuit.Wire.V)))
	}
	if n := len(o.Missing); n > 0 {
		f.Says = join(f.Says, sayOf(n, "finding-motor-circuit.rest.says", listed(o.Missing)))
	}
	if f.Do = say("finding-motor-circuit.fails.do"); f.Weight == Stop {
		f.Do = say("finding-motor-circuit.stop.do")
	}
	f.Do = join(f.Do, circuitNeeds(p, o))
}

// circuitFault says one thing that does not hold.
func circuitFault(p *plan.Plan, o *circuit.Of, fault circuit.Fault) string {
	breaker, running := amperes(p, o.Circuit.Breaker.V), amperes(p, o.Running())
	switch fault {
	case circuit.BreakerLarge:
		return say("finding-motor-circuit.large.says", breaker, amperes(p, o.Largest.Size))
	case circuit.BreakerSmall:
		return say("finding-motor-circuit.small.says", breaker, running)
	case circuit.WireBelowMotor:
		return say("finding-motor-circuit.below.says", conductor(p, o.Circuit.Wire.V), running)
	}
	return say("finding-motor-circuit.wire.says", conductor(p, o.Circuit.Wire.V), amperes(p, circuit.Conductors(o.Low)))
}

// doubtSays are the rows of the doubts.
var doubtSays = map[circuit.Doubt]string{
	circuit.ByTerminals: "finding-motor-circuit.terminals.says", circuit.ByPower: "finding-motor-circuit.power.says",
	circuit.ByNameplate: "finding-motor-circuit.nameplate.says", circuit.ByAir: "finding-motor-circuit.air.says",
}

// circuitDoubts says why a circuit may fail.
func circuitDoubts(p *plan.Plan, o *circuit.Of, f *Finding) {
	for _, d := range o.Doubts {
		f.Says = join(f.Says, say(doubtSays[d]))
	}
	f.State, f.Do = Ask, say("finding-motor-circuit.ask.do")
	if slices.Equal(o.Doubts, []circuit.Doubt{circuit.ByTerminals}) && !o.OnTooLow {
		f.State, f.By, f.Do = NotGiven, ByGiven, say("finding-motor-circuit.terminals.do")
		f.Says = join(say("finding-motor-circuit.wire-has.says", conductor(p, o.Circuit.Wire.V), amperes(p, o.Carries.Current), amperes(p, o.Carry)), f.Says)
	}
	f.Says = join(f.Says, circuitNeeds(p, o))
}

// circuitUntold says why the tables say nothing.
func circuitUntold(p *plan.Plan, o *circuit.Of) string {
	switch {
	case o.Verdict == circuit.Elsewhere:
		return say("finding-motor-circuit.elsewhere.says")
	case o.Verdict == circuit.NotComparable:
		return join(say("finding-motor-circuit.metric.says", conductor(p, o.Circuit.Wire.V)), circuitAsks(p, o))
	case o.Why == circuit.OffVolts:
		return say("finding-motor-circuit.off-volts.says", unit.Volts.Print(p.Shop.Units, o.Motor.Volts.V))
	}
	return say("finding-motor-circuit.off-power.says", unit.Shaft.Print(p.Shop.Units, o.Motor.Power))
}

// circuitsNotGiven is one finding for all motors whose circuit is left out.
func circuitsNotGiven(p *plan.Plan) (f Finding, told bool) {
	var names []string
	for _, o := range p.Circuits.Without {
		if names = append(names, o.Name()); !f.At.Known() {
			f.At = circuitAt(o)
		}
	}
	f.State, f.By, f.Weight, f.Basis = NotGiven, ByGiven, Know, circuitTexts(p, nil)
	f.Says, f.Do = sayOf(len(names), "finding-motor-circuit.without.says", listed(firstFew(names))), say("finding-motor-circuit.without.do")
	return f, len(names) > 0
}
