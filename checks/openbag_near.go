package checks

import (
	"math"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// nearness is how near the bag stands to the nearest of a kind of thing.
type nearness struct {
	what string
	far  unit.Length
}

// measure measures the distances on the plan and gathers the rest.
func (b *bag) measure() {
	s := b.p.Shop
	space := airSpace(s, []*shop.Room{b.c.Room})
	b.flow = mostAir(b.p, b.c)
	for _, m := range served(b.p, b.c) {
		b.sands = b.sands || m.Makes == "fine wood"
		if slices.Contains(strings.Split(b.limits.fed.Value, ", "), m.Kind) {
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

// mostAir is the most air that a collector may move: what its maker claims, else
// the largest flow of a use, else what its curve holds.
func mostAir(p *plan.Plan, c *shop.Collector) unit.Flow {
	if c.Claims != nil {
		return c.Claims.Flow
	}
	if most := greatest(p, c); most > 0 || len(c.Curve) == 0 {
		return most
	}
	return c.Curve[len(c.Curve)-1].Flow
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
		far := unit.Length(unit.Six(straight(o.at, b.c.Place.V)))
		if far < best.far {
			best = nearness{o.name, far}
		}
	}
	b.near = append(b.near, best)
}
