package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

var binFilling = &Check{
	ID:    "bin-filling",
	Name:  say("check.bin-filling.name"),
	Title: say("check.bin-filling.title"),
	Needs: "collector.bin, machine.cut, machine.hours, sensor.senses",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, at := range p.Takeoff.Bins {
			report(fills(p, at))
		}
	},
}

// fills says how soon one bin has to be emptied. It is advice: nothing says
// how often is often enough.
func fills(p *plan.Plan, at *takeoff.Filling) Finding {
	c, units := at.Collector, p.Shop.Units
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByModel, Weight: Know}
	fastest := at.Fastest
	if fastest == nil {
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = unfilled(at)
		return f
	}
	_, mark := takeoff.FillMark()
	f.State = Advice
	f.Basis = []source.Basis{fastest.Residue.Basis, fastest.Residue.MostBasis, mark}
	f.Figures = []Figure{{Name: say("finding-bin-filling.until", fastest.Machine.Name), Value: float64(fastest.Until), Unit: "s"}}
	least, usual := unit.Minutes.Pair(units, fastest.Least, fastest.Until)
	f.Says = say("finding-bin-filling.soon.says", fastest.Machine.Name, c.Bin.Called, usual, least, unit.Minutes.Unit(units))
	if at.Known() {
		key := "finding-bin-filling.days.says"
		if len(at.Open) > 0 {
			key = "finding-bin-filling.days-at-most.says"
		}
		f.Says = join(f.Says, say(key, unit.Significant(at.Days, 2)))
	}
	if len(at.Open) > 0 {
		f.Says = join(f.Says, say("finding-bin-filling.left-out.says", fieldsOf(at.Open)))
	}
	f.Do = say("finding-bin-filling.no-eye.do", least, unit.Minutes.Unit(units), fastest.Machine.Name)
	if watched(p.Shop) {
		f.Do = say("finding-bin-filling.eye.do", least, unit.Minutes.Unit(units), fastest.Machine.Name)
	}
	return f
}

// unfilled says what a bin's filling waits for.
func unfilled(at *takeoff.Filling) (says, do string) {
	if at.Collector.Bin == nil {
		return say("finding-bin-filling.no-bin.says"), say("finding-bin-filling.no-bin.do")
	}
	var names []string
	for _, m := range at.Machines {
		names = append(names, m.Machine.Name)
	}
	return sayOf(len(names), "finding-bin-filling.no-cut.says", listed(firstFew(names)), at.Collector.Bin.Called), say("finding-bin-filling.no-cut.do")
}

// fieldsOf names fields that are not given, with what they belong to.
func fieldsOf(list []takeoff.Missing) string {
	var names []string
	for _, m := range list {
		names = append(names, say("finding-common.field", m.Field, m.Thing))
	}
	return listed(firstFew(unique(names)))
}

// watched reports whether a sensor looks into a bin.
func watched(s *shop.Shop) bool {
	return slices.ContainsFunc(s.Sensors, func(at *shop.Sensor) bool { return at.Senses == "bin level" })
}
