package checks

import (
	"math"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var openBag = &Check{
	ID:    "open-bag-indoors",
	Name:  say("check.open-bag-indoors.name"),
	Title: say("check.open-bag-indoors.title"),
	Needs: "collector.enclosure, collector.at, collector.room, collector.claims, machine.at, room.exits, shop.rules",
	Confirms: []Confirm{
		{ID: "open-bag-distance", Means: say("check.open-bag-indoors.distance"), Kind: unit.KindLength},
		{ID: "open-bag-flow", Means: say("check.open-bag-indoors.flow"), Kind: unit.KindFlow},
	},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			report(bagIndoors(p, c))
		}
	},
}

// bagLimits are the figures an open bag is held against, with what each may
// decide here.
type bagLimits struct {
	distance        unit.Length
	distanceBasis   source.Basis
	distanceDecides bool
	flow            unit.Flow
	flowBasis       source.Basis
	flowDecides     bool
	fedDecides      bool // no sanders with mechanical feed
	fedBasis        source.Basis
}

// limitsFor are the figures of the shop's rules, or those the owner has had
// confirmed. Where the rules name no text that was read, figures are shown
// and asked.
func limitsFor(s *shop.Shop) bagLimits {
	distance, flow := figure("open bag distance, Quebec"), figure("open bag flow, Quebec")
	fed := figure("open bag fed sanders")
	if s.Rules == "us" {
		distance, flow = figure("open bag distance, US"), figure("open bag flow, US")
	}
	read := s.Rules == "quebec"
	l := bagLimits{
		distance: unit.Must[unit.Length](distance.Text("value")), distanceBasis: distance.Basis, distanceDecides: read && distance.Basis.Mark.Decides(),
		flow: unit.Must[unit.Flow](flow.Text("value")), flowBasis: flow.Basis, flowDecides: read && flow.Basis.Mark.Decides(),
		fedBasis: fed.Basis, fedDecides: read && fed.Basis.Mark.Decides(),
	}
	if value, basis, known := confirmed[unit.Length](s, "open-bag-distance"); known {
		l.distance, l.distanceBasis, l.distanceDecides = value, basis, true
	}
	if value, basis, known := confirmed[unit.Flow](s, "open-bag-flow"); known {
		l.flow, l.flowBasis, l.flowDecides = value, basis, true
	}
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

	near []nearness // what the distance is kept from
	flow unit.Flow
	fed  []string // machines with mechanical feed

	missing, add string // what cannot be measured, and what to add; empty where all can
}

// nearness is how near the bag stands to the nearest of a kind of thing.
type nearness struct {
	what string
	far  unit.Length
}

// measure measures the distances on the plan and gathers the rest.
func (b *bag) measure() {
	s := b.p.Shop
	space := airSpace(s, []*shop.Room{b.c.Room})
	if b.flow = greatest(b.p, b.c); b.c.Claims != nil {
		b.flow = b.c.Claims.Flow
	} else if curve := b.c.Curve; b.flow == 0 && len(curve) > 0 { // no use is known: at most what the curve holds
		b.flow = curve[len(curve)-1].Flow
	}
	for _, m := range served(b.p, b.c) {
		if slices.Contains(words("open bag fed sanders"), m.Kind) {
			b.fed = append(b.fed, m.Name)
		}
	}
	if !b.c.Place.Known() {
		b.missing, b.add = say("finding-open-bag-indoors.no-place.says"), say("finding-open-bag-indoors.no-place.do")
		return
	}
	var machines, exits, bags []place
	for _, m := range s.Machines {
		if m.Place.Known() && slices.Contains(space, m.Room) {
			machines = append(machines, place{m.Name, m.Place.V})
		}
	}
	for _, r := range space {
		for _, at := range r.Exits {
			exits = append(exits, place{say("finding-open-bag-indoors.exit", r.Name), at})
		}
	}
	for _, other := range s.Collectors {
		if other != b.c && other.Enclosure.V == "open bag" && other.Place.Known() && slices.Contains(space, other.Room) {
			bags = append(bags, place{other.Name, other.Place.V})
		}
	}
	switch {
	case len(machines)+len(exits) == 0:
		b.missing, b.add = say("finding-open-bag-indoors.no-machines-exits.says"), say("finding-open-bag-indoors.no-machines-exits.do")
	case len(machines) == 0:
		b.missing, b.add = say("finding-open-bag-indoors.no-machines.says"), say("finding-open-bag-indoors.no-machines.do")
	case len(exits) == 0:
		b.missing, b.add = say("finding-open-bag-indoors.no-exits.says"), say("finding-open-bag-indoors.no-exits.do")
	}
	for _, kind := range [][]place{machines, exits, bags} {
		b.nearest(kind)
	}
}

// place is a thing with its place on the plan.
type place struct {
	name string
	at   shop.Point
}

// nearest notes the nearest of some places; the first of equals.
func (b *bag) nearest(places []place) {
	if len(places) == 0 {
		return
	}
	best := nearness{far: unit.Length(math.Inf(1))}
	for _, o := range places {
		far := unit.Length(unit.Six(math.Hypot(o.at.X-b.c.Place.V.X, o.at.Y-b.c.Place.V.Y)))
		if far < best.far {
			best = nearness{o.name, far}
		}
	}
	b.near = append(b.near, best)
}

// judge says what the figures make of it.
func (b *bag) judge(f *Finding) {
	units, l := b.p.Shop.Units, b.limits
	f.By = ByRule
	f.Basis = []source.Basis{l.distanceBasis, l.flowBasis, l.fedBasis}
	var tooNear, short []string
	least := ""
	for _, n := range b.near {
		limit := float64(l.distance)
		f.Figures = append(f.Figures, Figure{Name: say("finding-open-bag-indoors.distance", n.what), Value: float64(n.far), Unit: "m", Limit: &limit, Basis: l.distanceBasis})
		if !unit.AtLeast(float64(n.far), float64(l.distance)) {
			got, want := unit.Run.Pair(units, n.far, l.distance)
			tooNear, least = append(tooNear, say("finding-open-bag-indoors.from", got+" "+unit.Run.Unit(units), n.what)), want
		}
	}
	if len(tooNear) > 0 {
		short = []string{say("finding-open-bag-indoors.near", listed(tooNear), least+" "+unit.Run.Unit(units))}
	}
	limit := float64(l.flow)
	f.Figures = append(f.Figures, Figure{Name: say("finding-open-bag-indoors.flow"), Value: float64(b.flow), Unit: "m3/s", Limit: &limit, Basis: l.flowBasis})
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

// decide settles the state: a figure that may decide and is not kept, then
// what is missing, then what has to be asked.
func (b *bag) decide(f *Finding, short, large, fed []string) {
	l := b.limits
	var broken, asked []string
	into := func(decides bool, faults []string) {
		if decides {
			broken = append(broken, faults...)
		} else {
			asked = append(asked, faults...)
		}
	}
	into(l.distanceDecides, short)
	into(l.flowDecides, large)
	into(l.fedDecides, fed)
	f.Asks = say("finding-open-bag-indoors.stand.asks", b.c.Name, b.c.Room.Name)
	figures := say("finding-open-bag-indoors.figures", unit.Run.Print(b.p.Shop.Units, l.distance), unit.Air.Print(b.p.Shop.Units, l.flow), l.distanceBasis.In(english.Mark))
	switch {
	case len(broken) > 0:
		f.State, f.Weight, f.Do = NotMet, Mend, say("finding-open-bag-indoors.broken.do")
		f.Says = say("finding-open-bag-indoors.faults.says", strings.Join(append(broken, asked...), "; "))
	case b.missing != "" && l.distanceDecides:
		f.State, f.Do = NotGiven, b.add
		f.Says = join(say("finding-open-bag-indoors.indoors.says"), b.missing)
	case len(asked) > 0 || !l.distanceDecides:
		f.State, f.Do = Ask, say("finding-open-bag-indoors.ask.do")
		indoors := say("finding-open-bag-indoors.indoors.says")
		if len(asked) > 0 {
			f.Weight = Mend
			indoors = say("finding-open-bag-indoors.faults.says", strings.Join(asked, "; "))
		}
		if l.distanceDecides {
			figures = ""
		}
		f.Says = join(indoors, b.missing, figures)
	default:
		f.State = Met
		f.Says = join(say("finding-open-bag-indoors.keeps.says"), figures)
		f.Do = say("finding-open-bag-indoors.keeps.do")
	}
}
