package checks

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var openBag = &Check{
	ID:       "open-bag-indoors",
	Name:     say("check.open-bag-indoors.name"),
	Title:    say("check.open-bag-indoors.title"),
	Needs:    "collector.enclosure, collector.at, collector.room, collector.claims, machine.at, room.exits, shop.rules",
	Whom:     Authority,
	Compares: []string{"open-bag-distance", "open-bag-flow", "open-bag-fed-sanders"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			report(bagIndoors(p, c))
		}
	},
}

// bagLimits are the figures an open bag is held against, with what each may
// decide here.
type bagLimits struct {
	distance              unit.Length
	flow                  unit.Flow
	farRule, airRule, fed ruled // fed: no sanders with mechanical feed
}

func limitsFor(s *shop.Shop) bagLimits {
	l := bagLimits{farRule: rulesOn(s, "open-bag-distance"), airRule: rulesOn(s, "open-bag-flow"), fed: rulesOn(s, "open-bag-fed-sanders")}
	l.distance, l.flow = measureOf[unit.Length](l.farRule), measureOf[unit.Flow](l.airRule)
	return l
}

// bagIndoors judges one collector.
func bagIndoors(p *plan.Plan, c *shop.Collector) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Know, Basis: ownFile(say("finding-open-bag-indoors.given"))}
	notGiven := func(says, do string) Finding {
		f.State, f.Says, f.Do = NotGiven, says, do
		return f
	}
	switch {
	case !c.Enclosure.Known():
		return notGiven(say("finding-open-bag-indoors.no-enclosure.says"), say("finding-open-bag-indoors.no-enclosure.do"))
	case c.Enclosure.V != "open bag":
		f.State = Met
		f.Says = say("finding-open-bag-indoors.housing.says")
		f.Do = say("finding-open-bag-indoors.housing.do")
		return f
	case c.Room == nil && !c.Place.Known():
		return notGiven(say("finding-open-bag-indoors.nowhere.says"), say("finding-open-bag-indoors.nowhere.do"))
	case c.Room == nil && len(p.Shop.Rooms) == 0:
		return notGiven(say("finding-open-bag-indoors.no-rooms.says"), say("finding-open-bag-indoors.no-rooms.do"))
	case c.Room == nil:
		f.State = Met
		f.Says = say("finding-open-bag-indoors.outside.says")
		f.Do = say("finding-open-bag-indoors.outside.do")
		return f
	}
	b := &bag{p: p, c: c, limits: limitsFor(p.Shop)}
	b.measure()
	b.judge(&f)
	return f
}

// bag is an open bag indoors while it is judged.
type bag struct {
	p      *plan.Plan
	c      *shop.Collector
	limits bagLimits

	near  []nearness // what the distance is kept from
	flow  unit.Flow
	fed   []string // sanders with mechanical feed
	sands bool     // something that makes fine dust, as a sander does, is on it

	missing, add string // what cannot be measured, and what to add; empty where all can
}

// judge says what the figures make of it.
func (b *bag) judge(f *Finding) {
	units, l := b.p.Shop.Units, b.limits
	f.By = ByRule
	f.Basis = []source.Basis{l.farRule.Basis, l.airRule.Basis, l.fed.Basis}
	var tooNear, short []string
	least := ""
	for _, n := range b.near {
		limit := float64(l.distance)
		f.Figures = append(f.Figures, Figure{Name: say("finding-open-bag-indoors.distance", n.what), Value: float64(n.far), Unit: "m", Limit: &limit, Basis: l.farRule.Basis})
		if !unit.AtLeast(float64(n.far), float64(l.distance)) {
			got, want := unit.Run.Pair(units, n.far, l.distance)
			tooNear, least = append(tooNear, say("finding-open-bag-indoors.from", got+" "+unit.Run.Unit(units), n.what)), want
		}
	}
	if len(tooNear) > 0 {
		short = []string{say("finding-open-bag-indoors.near", listed(tooNear), least+" "+unit.Run.Unit(units))}
	}
	limit := float64(l.flow)
	f.Figures = append(f.Figures, Figure{Name: say("finding-open-bag-indoors.flow"), Value: float64(b.flow), Unit: "m3/s", Limit: &limit, Basis: l.airRule.Basis})
	var large, fed []string
	if unit.Compare(float64(b.flow), float64(l.flow)) > 0 {
		got, want := unit.Air.Pair(units, b.flow, l.flow)
		large = []string{say("finding-open-bag-indoors.large", got, unit.Air.Unit(units), want)}
	}
	if len(b.fed) > 0 {
		fed = []string{say("finding-open-bag-indoors.fed", listed(b.fed))}
	}
	b.decide(f, short, large, fed)
}

// open is a figure that touches this bag and may not decide, where there is one.
// Which sanders are barred touches only a bag that has a sander on it.
func (b *bag) open() (rule ruled, open bool) {
	l := b.limits
	for _, r := range []ruled{l.farRule, l.airRule} {
		if !r.Decides {
			return r, true
		}
	}
	return l.fed, b.sands && !l.fed.Decides
}

// decide settles the state: a figure that may decide and is not kept, then
// what is missing, then what has to be asked. It is met only where every figure
// decides.
func (b *bag) decide(f *Finding, short, large, fed []string) {
	l := b.limits
	undecided, open := b.open()
	var broken, asked []string
	into := func(decides bool, faults []string) {
		if decides {
			broken = append(broken, faults...)
		} else {
			asked = append(asked, faults...)
		}
	}
	into(l.farRule.Decides, short)
	into(l.airRule.Decides, large)
	into(l.fed.Decides, fed)
	f.Asks = say("finding-open-bag-indoors.stand.asks", b.c.Name, b.c.Room.Name)
	figures := say("finding-open-bag-indoors.figures", unit.Run.Print(b.p.Shop.Units, l.distance), unit.Air.Print(b.p.Shop.Units, l.flow), textsOf(l.farRule, l.airRule))
	switch {
	case len(broken) > 0:
		f.State, f.Weight, f.Do = NotMet, Mend, say("finding-open-bag-indoors.broken.do")
		f.Says = say("finding-open-bag-indoors.faults.says", strings.Join(append(broken, asked...), "; "))
	case b.missing != "" && l.farRule.Decides:
		f.State, f.Do = NotGiven, b.add
		f.Says = join(say("finding-open-bag-indoors.indoors.says"), b.missing)
	case len(asked) > 0 || open:
		f.State, f.Do = Ask, say("finding-open-bag-indoors.ask.do")
		indoors := say("finding-open-bag-indoors.indoors.says")
		if len(asked) > 0 {
			f.Weight = Mend
			indoors = say("finding-open-bag-indoors.faults.says", strings.Join(asked, "; "))
		}
		if open {
			figures = join(figures, undecided.remark())
		} else {
			figures = ""
		}
		f.Says = join(indoors, b.missing, figures)
	default:
		f.State = Met
		f.Says = join(say("finding-open-bag-indoors.keeps.says"), figures)
		f.Do = say("finding-open-bag-indoors.keeps.do")
	}
}
