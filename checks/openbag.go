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
	Name:  "Open bag indoors",
	Title: "Does an open-bag collector indoors keep the distance and the size that texts give",
	Needs: "collector.enclosure, collector.at, collector.room, collector.claims, machine.at, room.exits, shop.rules",
	Confirms: []Confirm{
		{ID: "open-bag-distance", Means: "the distance that an open bag indoors keeps from work places and exits", Kind: unit.KindLength},
		{ID: "open-bag-flow", Means: "the greatest air flow of an open-bag collector indoors", Kind: unit.KindFlow},
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
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Know, Basis: ownFile("enclosure and room")}
	notGiven := func(says, do string) Finding {
		f.State, f.Says, f.Do = NotGiven, says, do
		return f
	}
	switch {
	case !c.Enclosure.Known():
		return notGiven("Whether it has a rigid housing or an open bag is not given.", `Add enclosure = "rigid housing" or "open bag". A cartridge over a plastic bag is a question for the authority.`)
	case c.Enclosure.V != "open bag":
		f.State = Met
		f.Says = "By the file it has a rigid housing, so the figures for open bags are not held against it."
		f.Do = "Ask the authority where it may stand: other figures speak of closed collectors."
		return f
	case c.Room == nil && !c.Place.Known():
		return notGiven("It has an open bag, and where it stands is not given.", "Add at and room.")
	case c.Room == nil && len(p.Shop.Rooms) == 0:
		return notGiven("It has an open bag, and whether it stands indoors is not given.", "Add the rooms with their outlines, or room to the collector.")
	case c.Room == nil:
		f.State = Met
		f.Says = "By the file its open bag stands outside every room that is drawn."
		f.Do = "Draw every room. Keep the bag away from doors, windows and air intakes."
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

	near    []nearness // what the distance is kept from
	missing []string   // what cannot be measured
	fields  []string
	flow    unit.Flow
	fed     []string // machines with mechanical feed
}

// nearness is how near the bag stands to the nearest of a kind of thing.
type nearness struct {
	what string
	far  unit.Length
}

// measure measures the distances on the plan and gathers the rest.
func (b *bag) measure() {
	s := b.p.Shop
	space := airSpace([]*shop.Room{b.c.Room})
	if b.flow = greatest(b.p, b.c); b.c.Claims != nil {
		b.flow = b.c.Claims.Flow
	}
	for _, m := range served(b.p, b.c) {
		if slices.Contains(words("open bag fed sanders"), m.Kind) {
			b.fed = append(b.fed, m.Name)
		}
	}
	if !b.c.Place.Known() {
		b.missing, b.fields = []string{"where in the room it stands"}, []string{"at to the collector"}
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
			exits = append(exits, place{"the exit of " + r.Name, at})
		}
	}
	for _, other := range s.Collectors {
		if other != b.c && other.Enclosure.V == "open bag" && other.Place.Known() && slices.Contains(space, other.Room) {
			bags = append(bags, place{other.Name, other.Place.V})
		}
	}
	b.nearest(machines, "where the machines of its room stand", "at to the machines")
	b.nearest(exits, "where its room's exits are", "exits to the room")
	b.nearest(bags, "", "")
}

// place is a thing with its place on the plan.
type place struct {
	name string
	at   shop.Point
}

// nearest notes the nearest of some places; the first of equals.
func (b *bag) nearest(places []place, missing, field string) {
	if len(places) == 0 {
		if missing != "" {
			b.missing, b.fields = append(b.missing, missing), append(b.fields, field)
		}
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
		f.Figures = append(f.Figures, Figure{Name: "distance to " + n.what, Value: float64(n.far), Unit: "m", Limit: &limit, Basis: l.distanceBasis})
		if !unit.AtLeast(float64(n.far), float64(l.distance)) {
			got, want := unit.Run.Pair(units, n.far, l.distance)
			tooNear, least = append(tooNear, got+" "+unit.Run.Unit(units)+" from "+n.what), want
		}
	}
	if len(tooNear) > 0 {
		short = []string{"it stands " + listed(tooNear) + ", where the figure is " + least + " " + unit.Run.Unit(units)}
	}
	limit := float64(l.flow)
	f.Figures = append(f.Figures, Figure{Name: "air flow", Value: float64(b.flow), Unit: "m3/s", Limit: &limit, Basis: l.flowBasis})
	var large, fed []string
	if unit.Compare(float64(b.flow), float64(l.flow)) > 0 {
		got, want := unit.Air.Pair(units, b.flow, l.flow)
		large = []string{"it moves up to " + got + " " + unit.Air.Unit(units) + ", where the figure is " + want}
	}
	if len(b.fed) > 0 {
		fed = []string{"it serves " + listed(b.fed) + ", and a text that was read bars open bags from sanders with mechanical feed"}
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
	screen := "Move it outdoors or farther away, give it a closed housing, or ask whether a screen of sheet steel settles it."
	f.Asks = "May " + b.c.Name + ", an open-bag collector, stand in " + b.c.Room.Name + ", at what distance from work places and exits, and with what screen?"
	figures := "The figures here are " + unit.Run.Print(b.p.Shop.Units, l.distance) + " and " + unit.Air.Print(b.p.Shop.Units, l.flow) + " (" + l.distanceBasis.String() + ")."
	switch {
	case len(broken) > 0:
		f.State, f.Weight, f.Do = NotMet, Mend, screen
		f.Says = "Its open bag stands indoors: " + strings.Join(append(broken, asked...), "; ") + "."
	case len(b.missing) > 0 && l.distanceDecides:
		f.State, f.Says, f.Do = NotGiven, "Its open bag stands indoors, and "+listed(b.missing)+" is not given.", "Add "+listed(b.fields)+"."
	case len(asked) > 0 || !l.distanceDecides:
		f.State, f.Do = Ask, "Ask before you build on; the answer goes into the file as [[confirmed]]. Empty the bag every day it is used, and keep it away from the way out."
		f.Says = "Its open bag stands indoors"
		if len(asked) > 0 {
			f.Weight = Mend
			f.Says += ": " + strings.Join(asked, "; ")
		}
		f.Says += "."
		if len(b.missing) > 0 {
			f.Says += " " + capital(listed(b.missing)) + " is not given."
		}
		if !l.distanceDecides {
			f.Says += " " + figures
		}
	default:
		f.State = Met
		f.Says = "Its open bag stands indoors and keeps the distance and size of the figures it is held against. " + figures
		f.Do = "Whether it may stand there at all is for the authority. Empty it every day it is used."
	}
}
