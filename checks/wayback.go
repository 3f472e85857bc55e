package checks

import (
	"dustbook/plan"
	"dustbook/plan/room"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var returnPath = &Check{
	ID:    "return-path",
	Name:  say("check.return-path.name"),
	Title: say("check.return-path.title"),
	Needs: "collector.exhaust, collector.returns_to, collector.return_opening, collector.room, machine.room, room.open_to",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, r := range p.Rooms.Returns {
			report(wayBack(p, r))
		}
	},
}

// returnBasis is where the speeds through a return path come from.
var returnBasis = []source.Basis{room.BasisOf("return speed least")}

// wayBack judges the way that one collector's air takes back. The speeds it is
// held against are practice: enough is thin, too little is advice.
func wayBack(p *plan.Plan, r *room.Return) Finding {
	c, units := r.Collector, p.Shop.Units
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Know}
	switch {
	case !r.Needed && len(r.Missing) > 0:
		f.State = NotGiven
		f.Says, f.Do = say("finding-return-path.unknown.says", waits(r.Missing)), addIt(p, &f, r.Missing)
		return f
	case !r.Needed:
		f.State = Met
		f.Says, f.Do = say("finding-return-path.met.says"), say("finding-return-path.met.do")
		return f
	case !r.Flow.Known():
		f.State = NotGiven
		f.Says = say("finding-return-path.no-flow.says", spaceNames(r.From), r.To.Name())
		f.Do = say("finding-air-captured.off-curve.do", say("check.fan-on-curve.name"))
		return f
	}
	least, most := unit.Floor.Pair(units, r.Least, r.Most)
	from := say("finding-return-path.back.says", unit.Air.Print(units, r.Flow.V), r.To.Name(), spaceNames(r.From))
	want := say("finding-return-path.want.says", least, most, unit.Floor.Unit(units))
	limit := float64(r.Least)
	f.Basis = returnBasis
	f.Figures = []Figure{{Name: say("finding-return-path.area"), Value: float64(r.Given.V), Unit: "m2", Limit: &limit, Basis: returnBasis[0]}}
	switch {
	case !r.Given.Known():
		f.State, f.By, f.Weight, f.Figures = NotGiven, ByGiven, Mend, nil
		f.Says = join(from, say("finding-return-path.not-given.says"), want)
		f.Do = say("finding-return-path.not-given.do")
	case r.Given.V == 0:
		f.State, f.Weight = NotMet, Mend
		f.Says = join(from, say("finding-return-path.none.says"), want)
		f.Do = say("finding-return-path.wider.do")
	case unit.AtLeast(float64(r.Given.V), limit):
		f.State = Thin
		f.Says = join(from, passes(p, r), want)
		f.Do = say("finding-return-path.enough.do")
	default:
		f.State, f.Weight = Advice, Mend
		f.Says = join(from, passes(p, r), say("finding-return-path.narrow.says"), want)
		f.Do = say("finding-return-path.wider.do")
	}
	if len(r.Off) > 0 {
		f.Says = join(f.Says, sayOf(len(r.Off), "finding-return-path.off.says", listed(firstFew(r.Off))))
	}
	return f
}

// passes says how fast the air passes the way that is there.
func passes(p *plan.Plan, r *room.Return) string {
	return say("finding-return-path.passes.says", unit.Floor.Print(p.Shop.Units, r.Given.V), unit.Speed.Print(p.Shop.Units, r.Speed.V))
}

// spaceNames are the names of some airs in a sentence.
func spaceNames(list []*room.Space) string {
	var names []string
	for _, s := range list {
		names = append(names, s.Name())
	}
	return listed(names)
}

// waits says what a figure of the rooms waits for.
func waits(list []room.Missing) string {
	var names []string
	for _, m := range list {
		names = append(names, english.Missing(m.Thing, m.Field, m.Why))
	}
	return listed(firstFew(unique(names)))
}
