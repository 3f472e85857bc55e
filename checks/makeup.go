package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/room"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var makeUpAir = &Check{
	Whom:  Technician,
	ID:    "make-up-air",
	Name:  say("check.make-up-air.name"),
	Title: say("check.make-up-air.title"),
	Needs: "room.opening, room.open_to, machine.room, room.depressurisation, collector.exhaust, collector.returns_to, appliance.kind, shop.envelope",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, s := range p.Rooms.Spaces {
			if f, look := madeUp(p, s); look {
				report(f)
			}
		}
	},
}

// makeUpBasis is where the speed through a passive opening comes from.
var makeUpBasis = []source.Basis{room.BasisOf("inlet speed most")}

// madeUp judges the air of one space in the use that takes most out of it.
func madeUp(p *plan.Plan, s *room.Space) (f Finding, look bool) {
	f = Finding{About: s.Rooms[0].Name, Kind: "room", At: s.Rooms[0].At, By: ByModel, Weight: Know}
	var missing []room.Missing
	for _, b := range p.Rooms.Of(s) {
		if b.Runs {
			missing = append(missing, b.Missing...)
		}
	}
	worst := p.Rooms.Worst(s)
	switch drawn := worst != nil && worst.Net > 0; {
	case !drawn && len(missing) > 0:
		f.State = NotGiven
		f.Says, f.Do = say("finding-make-up-air.unknown.says", s.Name(), waits(missing)), addIt(p, &f, missing)
	case worst == nil:
		return f, false // nothing draws from it
	case !drawn:
		f.State = Met
		f.Says, f.Do = say("finding-make-up-air.met.says", s.Name()), say("finding-make-up-air.met.do")
	default:
		f.Says = say("finding-make-up-air.drawn.says", unit.Air.Print(p.Shop.Units, worst.Net), s.Name(), worst.Use)
		if len(s.Appliances) > 0 {
			burning(p, &f, worst)
		} else {
			throughOpenings(p, &f, worst)
		}
		if len(missing) > 0 {
			f.Says = join(f.Says, say("finding-make-up-air.more.says", waits(missing)))
		}
	}
	return f, true
}

// burning judges a space in which something burns. The estimate is held
// against the strictest figure for what burns there; whatever comes out, it is
// asked: no arithmetic says that a flue draws.
func burning(p *plan.Plan, f *Finding, b *room.Balance) {
	units, s := p.Shop.Units, b.Space
	f.State, f.Weight = Ask, Mend
	f.Do = say("finding-make-up-air.burns.do")
	var kinds []string
	for _, a := range s.Appliances {
		kinds = append(kinds, a.Kind)
	}
	what := listed(unique(kinds))
	f.Asks = say("finding-make-up-air.burns.asks", s.Name(), unit.Air.Print(units, b.Net), what)
	f.Says = join(f.Says, say("finding-make-up-air.burns.says", what))
	limit := s.Limit // every kind that burns has one
	f.Basis = []source.Basis{limit.Basis}
	switch e := b.Pressure; {
	case !s.Openings.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Do = join(say("finding-make-up-air.no-opening.do"), f.Do)
		f.Says = join(f.Says, say("finding-make-up-air.no-opening.says"), say("finding-make-up-air.area.says", unit.Draft.Print(units, limit.Press), unit.Floor.Print(units, wanted(b))))
	case !e.Known():
		f.Says = join(f.Says, say("finding-make-up-air.no-way.says"))
	default:
		most := float64(limit.Press)
		f.Figures = []Figure{{Name: say("finding-make-up-air.below"), Value: float64(e.High), Unit: "Pa", Limit: &most, Basis: limit.Basis}}
		below, mark := unit.Draft.Pair(units, e.High, limit.Press)
		key := "finding-make-up-air.over.says"
		if unit.AtLeast(most, float64(e.High)) {
			key, f.Weight = "finding-make-up-air.under.says", Know
		}
		f.Says = join(f.Says, say(key, below, mark, unit.Draft.Unit(units)))
		if !limit.Basis.Mark.Decides() {
			f.Says = join(f.Says, ruled{Rule: Rule{Basis: limit.Basis}}.remark())
		}
	}
	overChosen(p, f, b)
}

// overChosen holds the estimate against how far below the outdoors the owner would
// have the space at the most, and reports whether it is passed: then it is to be
// mended, whatever else is said of the space.
func overChosen(p *plan.Plan, f *Finding, b *room.Balance) (over bool) {
	chosen, units := b.Space.Chosen, p.Shop.Units
	if chosen == 0 || !b.Pressure.Known() || unit.AtLeast(float64(chosen), float64(b.Pressure.High)) {
		return false
	}
	most := float64(chosen)
	f.Weight = Mend
	f.Figures = append(f.Figures, Figure{Name: say("finding-make-up-air.below"), Value: float64(b.Pressure.High), Unit: "Pa", Limit: &most, Basis: chosenBasis[0]})
	f.Basis = append(f.Basis, chosenBasis...)
	below, mark := unit.Draft.Pair(units, b.Pressure.High, chosen)
	f.Says = join(f.Says, say("finding-make-up-air.chosen.says", below, mark, unit.Draft.Unit(units)))
	return true
}

// chosenBasis is where the owner's own figure stands.
var chosenBasis = ownFile(say("finding-make-up-air.chosen"))

// wanted is the opening that keeps a space within the strictest figure for what
// burns in it.
func wanted(b *room.Balance) unit.Area {
	at := slices.IndexFunc(b.MakeUp, func(o room.Opening) bool { return o.Limit.Name == b.Space.Limit.Name })
	return b.MakeUp[at].Area
}

// throughOpenings judges a space in which nothing burns, by the speed through its
// openings. The figure is practice: enough is thin, too little is advice.
func throughOpenings(p *plan.Plan, f *Finding, b *room.Balance) {
	units := p.Shop.Units
	f.Basis = makeUpBasis
	want := say("finding-make-up-air.passive.says", unit.Floor.Print(units, b.Passive.V), unit.Speed.Print(units, room.InletSpeed()))
	switch {
	case !b.Space.Openings.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = join(f.Says, say("finding-make-up-air.no-opening.says"), want), say("finding-make-up-air.no-opening.do")
		return
	case b.Space.Openings.V == 0:
		f.State, f.Weight = Advice, Mend
		f.Says, f.Do = join(f.Says, say("finding-make-up-air.no-way.says"), want), say("finding-make-up-air.wider.do")
		return
	}
	limit := float64(room.InletSpeed())
	f.Figures = []Figure{{Name: say("finding-make-up-air.speed"), Value: float64(b.Speed.V), Unit: "m/s", Limit: &limit, Basis: makeUpBasis[0]}}
	speed, most := unit.Speed.Pair(units, b.Speed.V, room.InletSpeed())
	f.Says = join(f.Says, say("finding-make-up-air.speed.says", unit.Floor.Print(units, b.Space.Openings.V), speed, most, unit.Speed.Unit(units)))
	switch over := overChosen(p, f, b); {
	case over:
		f.State, f.By, f.Do = NotMet, ByGiven, say("finding-make-up-air.wider.do")
	case !unit.AtLeast(limit, float64(b.Speed.V)):
		f.State, f.Weight = Advice, Mend
		f.Says, f.Do = join(f.Says, want), say("finding-make-up-air.wider.do")
	case len(p.Shop.Appliances) == 0:
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = join(f.Says, say("finding-open-flue.no-appliance.says")), say("finding-open-flue.no-appliance.do")
	default:
		f.State, f.Do = Thin, say("finding-make-up-air.enough.do")
	}
}
