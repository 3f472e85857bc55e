package checks

import (
	"dustbook/plan"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var startDelay = &Check{
	ID:    "start-delay",
	Name:  say("check.start-delay.name"),
	Title: say("check.start-delay.title"),
	Needs: "trigger.start_delay, trigger.opens, gate.travel, gate.proves, control.moves_together",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, of := range p.Times.Triggers {
			if of.Delay.Verdict != timing.NoFan {
				report(delayed(p, of))
			}
		}
	},
}

// delayed judges the start delay of one trigger: what gates need is the file's
// own figure, what is less than practice asks is advice.
func delayed(p *plan.Plan, of *timing.OfTrigger) Finding {
	d, units := of.Delay, p.Shop.Units
	f := aboutTrigger(of.Trigger)
	f.By, f.Basis = ByGiven, ownFile(say("finding-start-delay.given"))
	set, least := unit.Seconds.Print(units, d.Set.V), unit.Seconds.Print(units, d.Least)
	waits := say("finding-start-delay.no-gate.says")
	if d.Slowest != nil {
		waits = say("finding-start-delay.gate.says", d.Slowest.Name, unit.Seconds.Print(units, d.Open))
	}
	switch {
	case d.Verdict == timing.Short && unit.Compare(float64(d.Set.V), float64(d.Open)) < 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = join(say("finding-start-delay.short.says", set), waits)
		f.Do = say("finding-start-delay.set.do", least)
	case d.Verdict == timing.Short:
		f.State, f.Basis = Advice, []source.Basis{timing.BasisOf("start delay least")}
		f.Says = say("finding-start-delay.floor.says", set, least)
		f.Do = say("finding-start-delay.set.do", least)
	case d.Verdict == timing.Unknown:
		f.State = NotGiven
		names := lacking(d.Missing)
		f.Says = sayOf(len(names), "finding-start-delay.travel.says", listed(names))
		f.Do = say("finding-start-delay.travel.do")
	case d.Verdict == timing.NotSet:
		f.State = NotGiven
		f.Says = join(say("finding-start-delay.not-set.says", least), waits)
		f.Do = say("finding-start-delay.not-set.do", least)
	default:
		f.State = Met
		f.Says = join(say("finding-start-delay.met.says", set), waits)
		f.Do = say("finding-start-delay.met.do")
	}
	if d.Set.Known() {
		f.Figures = []Figure{atLeast(say("finding-start-delay.figure"), d.Set.V, d.Least, f.Basis[0])}
	}
	if names := gateNames(d.Unproved); len(names) > 0 && d.Verdict != timing.Unknown {
		f.Says = join(f.Says, sayOf(len(names), "finding-start-delay.unproved.says", listed(names)))
	}
	return f
}

// atLeast is a time beside the least it should be.
func atLeast(name string, set, least unit.Time, basis source.Basis) Figure {
	limit := float64(least)
	return Figure{Name: name, Value: float64(set), Unit: "s", Limit: &limit, Basis: basis}
}

// lacking are the names of what a field is missing of.
func lacking(list []timing.Missing) []string {
	var names []string
	for _, m := range list {
		names = append(names, m.Of)
	}
	return unique(names)
}

var runOn = &Check{
	ID:    "run-on",
	Name:  say("check.run-on.name"),
	Title: say("check.run-on.title"),
	Needs: "trigger.run_on, machine.coast, duct.route, duct.length, collector.fan_curve",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, of := range p.Times.Triggers {
			if of.RunOn.Verdict != timing.NoFan {
				report(runsOn(p, of))
			}
		}
	},
}

// runsOn judges the run-on of one trigger. The coast of the machine is the
// file's own figure and the air's own time on the way is the model's; how much
// slower chips are, and how often they have to pass, is practice.
func runsOn(p *plan.Plan, of *timing.OfTrigger) Finding {
	r, units := of.RunOn, p.Shop.Units
	f := aboutTrigger(of.Trigger)
	f.By, f.Basis = ByModel, []source.Basis{timing.BasisOf("chip speed fair"), timing.BasisOf("transits of run-on")}
	seconds := func(t unit.Time) string { return unit.Seconds.Print(units, t) }
	set, least := seconds(r.Set.V), seconds(r.Least)
	switch r.Verdict {
	case timing.Short:
		f.Do = say("finding-run-on.set.do", least)
		switch {
		case unit.Compare(float64(r.Set.V), float64(r.Coast.V)) < 0:
			f.State, f.Weight, f.By, f.Basis = NotMet, Mend, ByGiven, ownFile(say("finding-run-on.coast.given"))
			f.Says = say("finding-run-on.coast.says", set, of.Trigger.Machine.Name, seconds(r.Coast.V))
		case r.Transit != nil && unit.Compare(float64(r.Set.V), float64(r.Transit.Air)) < 0:
			f.State, f.Weight = NotMet, Mend
			f.Says = say("finding-run-on.air.says", set, seconds(r.Transit.Air), r.Transit.Path.Port.Full())
		default:
			f.State = Advice
			f.Says = join(say("finding-run-on.short.says", set, least), longest(r, seconds))
		}
	case timing.Unknown:
		f.State, f.By, f.Basis = NotGiven, ByGiven, ownFile(say("finding-run-on.coast.given"))
		f.Says, f.Do = runOnMissing(r)
	case timing.NotSet:
		f.State, f.By = NotGiven, ByGiven
		usual := timing.UsualRunOn()
		f.Says = join(say("finding-run-on.not-set.says", least), longest(r, seconds), say("finding-run-on.usual.says", unit.Seconds.Figure(units, usual.Least), seconds(usual.Most)))
		f.Do = say("finding-run-on.not-set.do", least)
	case timing.Between:
		f.State = Thin
		f.Says = say("finding-run-on.between.says", set, least, seconds(r.Cautious))
		f.Do = say("finding-run-on.between.do", seconds(r.Cautious))
	default:
		f.State = Met
		f.Says = join(say("finding-run-on.met.says", set, least), longest(r, seconds))
		f.Do = say("finding-run-on.met.do")
	}
	if r.Set.Known() {
		f.Figures = []Figure{atLeast(say("finding-run-on.figure"), r.Set.V, r.Least, f.Basis[0])}
	}
	return f
}

// longest says which of the three decides the least run-on.
func longest(r timing.RunOn, seconds func(unit.Time) string) string {
	switch r.Least {
	case r.Coast.V:
		return say("finding-run-on.by-coast.says")
	case r.Clear.Least:
		return say("finding-run-on.by-way.says", r.Transit.Path.Port.Full(), seconds(r.Transit.Fair))
	}
	return say("finding-run-on.by-floor.says")
}

// runOnMissing says what the least run-on waits for.
func runOnMissing(r timing.RunOn) (says, do string) {
	if len(r.Missing) > 0 {
		says, do = say("finding-run-on.no-coast.says", listed(lacking(r.Missing))), say("finding-run-on.no-coast.do")
	}
	if len(r.Unsolved) > 0 {
		says, do = join(says, say("finding-run-on.unsolved.says", listed(portNames(r.Unsolved)))), join(do, say("finding-run-on.unsolved.do"))
	}
	return says, do
}

func portNames(ports []*shop.Port) []string {
	var names []string
	for _, p := range ports {
		names = append(names, p.Full())
	}
	return unique(names)
}
