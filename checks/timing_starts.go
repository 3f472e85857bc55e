package checks

import (
	"math"
	"strconv"

	"dustbook/plan"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
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
	runs, sure := unit.Seconds.Print(units, x.RunOn), minutesUp(units, x.Sure)
	switch {
	case x.Verdict == timing.Over:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-starts-per-hour.over.says", unit.Fixed(x.WorstAsks, 1), limit, listed(firstFew(machineNames(x.Worst))), runs, strconv.Itoa(x.Counted))
		switch {
		case !x.HoldKnown:
			f.Do = say("finding-starts-per-hour.leave-on.do")
		case x.Hold < x.Sure:
			f.Do = say("finding-starts-per-hour.hold.do", minutesUp(units, x.Hold), sure)
		default:
			f.Do = say("finding-starts-per-hour.hold-sure.do", sure)
		}
	case !x.Limit.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = noLimit(x.Limit)
	case x.Verdict == timing.Within && unit.Compare(x.Asked, x.Limit.PerHour) <= 0 && len(x.Missing) == 0:
		f.State = Met
		f.Says = say("finding-starts-per-hour.met.says", asked, limit)
		f.Do = say("finding-starts-per-hour.met.do")
	case x.Verdict == timing.Within && x.IsSure():
		f.State = Met
		f.Says = say("finding-starts-per-hour.met-sure.says", runs, limit)
		f.Do = say("finding-starts-per-hour.met-run-on.do", runs)
	case x.Verdict == timing.Within:
		f.State = Met
		f.Says = say("finding-starts-per-hour.met-run-on.says", asked, limit, runs, sure)
		f.Do = say("finding-starts-per-hour.met-run-on.do", runs)
	case x.Verdict == timing.OnlyBusiest:
		f.State = Thin
		f.Says = say("finding-starts-per-hour.only-busiest.says", asked, limit, runs, strconv.Itoa(x.Counted))
		f.Do = say("finding-starts-per-hour.hold-sure.do", sure)
	default:
		f.State = NotGiven
		names := lacking(x.Missing)
		f.Says = sayOf(len(names), "finding-starts-per-hour.no-starts.says", limit, listed(firstFew(names)))
		f.Do = say("finding-starts-per-hour.no-starts.do", sure)
	}
	return f
}

// minutesUp prints a time that has to be reached, rounded up to what is
// printed: the tenth of a minute, or the minute from 100 min on.
func minutesUp(units unit.System, t unit.Time) string {
	step := 6.0
	if unit.Compare(float64(t), 100*60) >= 0 {
		step = 60
	}
	return unit.Minutes.Print(units, unit.SixOf(unit.Time(step*math.Ceil(unit.Six(float64(t)/step)))))
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

func machineNames(machines []*shop.Machine) []string {
	var names []string
	for _, m := range machines {
		names = append(names, m.Name)
	}
	return names
}
