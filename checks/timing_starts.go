package checks

import (
	"dustbook/plan"
	"dustbook/plan/control/timing"
	"dustbook/plan/unit"
)

var startsPerHour = &Check{
	ID:    "starts-per-hour",
	Name:  say("check.starts-per-hour.name"),
	Title: say("check.starts-per-hour.title"),
	Needs: "collector.starts_per_hour, collector.wheel_inertia, motor.power, motor.phase, motor.poles, machine.starts, machine.hours, trigger.run_on, shop.people_at_machines",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, of := range p.Times.Collectors {
			if of.Starts.Verdict != timing.ByHand {
				report(startsOften(p, of))
			}
		}
	},
}

// startsOften holds what a day asks of a fan against what its motor may do.
func startsOften(p *plan.Plan, of *timing.OfCollector) Finding {
	x, c, units := of.Starts, of.Collector, p.Shop.Units
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByGiven, Weight: Know, Basis: ownFile(say("finding-starts-per-hour.given"))}
	asked, limit := unit.Fixed(x.Asked, 1), unit.Fixed(x.Limit.PerHour, 2)
	if x.Limit.Known() {
		f.Basis = append(f.Basis, x.Limit.Basis)
		most := x.Limit.PerHour
		f.Figures = []Figure{{Name: say("finding-starts-per-hour.figure"), Value: x.Asked, Unit: "1/h", Limit: &most, Basis: x.Limit.Basis}}
	}
	if x.Limit.By == timing.ByTable {
		f.By = ByRule
	}
	switch {
	case x.Verdict == timing.Over:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-starts-per-hour.over.says", asked, limit)
		f.Do = say("finding-starts-per-hour.leave-on.do")
		if x.HoldKnown {
			f.Do = say("finding-starts-per-hour.hold.do", unit.Minutes.Print(units, x.Hold), unit.Minutes.Print(units, x.Sure))
		}
	case !x.Limit.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = noLimit(x.Limit)
	case x.Verdict == timing.Within:
		f.State = Met
		f.Says = say("finding-starts-per-hour.met.says", asked, limit)
		f.Do = say("finding-starts-per-hour.met.do")
	default:
		f.State = NotGiven
		names := lacking(x.Missing)
		f.Says = sayOf(len(names), "finding-starts-per-hour.no-starts.says", limit, listed(firstFew(names)))
		f.Do = say("finding-starts-per-hour.no-starts.do", unit.Minutes.Print(units, x.Sure))
	}
	return f
}

// noLimit says why a limit of starts is not known, and who knows it.
func noLimit(l timing.Limit) (says, do string) {
	switch l.By {
	case timing.SinglePhase:
		least, most := timing.UsualSinglePhase()
		return say("finding-starts-per-hour.single.says", unit.Short(least), unit.Short(most)), say("finding-starts-per-hour.ask-maker.do")
	case timing.OffTable:
		return say("finding-starts-per-hour.off-table.says"), say("finding-starts-per-hour.ask-maker.do")
	case timing.NoMotor:
		return say("finding-starts-per-hour.no-motor.says"), say("finding-starts-per-hour.no-motor.do")
	}
	var fields []string
	for _, m := range l.Missing {
		fields = append(fields, m.Field)
	}
	return sayOf(len(fields), "finding-starts-per-hour.no-field.says", listed(fields)), say("finding-starts-per-hour.no-field.do")
}
