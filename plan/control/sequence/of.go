package sequence

import (
	"math"
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/control/timing"
	"dustbook/plan/control/trace"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Of makes the works of a shop, with the times that its triggers and
// collectors are to be worked with. Numbers are places in the shop's own lists;
// the purges come after the triggers. The error says what there is too much of.
func Of(s *shop.Shop, k *control.Reckoning, times *timing.Reckoning) (*Works, error) {
	b := &builder{shop: s, control: k, times: times, head: &trace.Head{Moves: 1}}
	if s.Control.MovesTogether.Known() {
		b.head.Moves = s.Control.MovesTogether.V
	}
	for _, g := range s.Gates {
		b.gate(g)
	}
	for _, c := range s.Collectors {
		b.collector(c)
	}
	for _, a := range k.Ways {
		b.trigger(a)
	}
	for _, m := range s.Machines {
		b.machine(m)
	}
	for _, d := range s.Ducts {
		b.duct(d)
	}
	for _, x := range s.Stops {
		b.head.Stops = append(b.head.Stops, trace.Stop{Name: x.Name, Collectors: places(s.Collectors, x.Collectors)})
	}
	b.purges()
	return Prepare(b.head)
}

type builder struct {
	shop    *shop.Shop
	control *control.Reckoning
	times   *timing.Reckoning
	head    *trace.Head
}

// places are the places of some things in a list.
func places[T comparable](list, some []T) []int {
	var at []int
	for _, one := range some {
		if i := slices.Index(list, one); i >= 0 && !slices.Contains(at, i) {
			at = append(at, i)
		}
	}
	return at
}

func (b *builder) gate(g *shop.Gate) {
	v := trace.Gate{Name: g.Name, Collector: slices.Index(b.shop.Collectors, g.On.Collector), ByHand: b.control.Drive(g) != control.Powered, Zone: b.control.Zone(g)}
	var zones []*shop.Gate
	for _, below := range control.After(g) {
		if b.control.Zone(below) && b.control.Drive(below) == control.Powered {
			zones = append(zones, below)
		}
	}
	v.Zones = places(b.shop.Gates, zones)
	switch g.Proves.V {
	case "switch":
		v.Proof = trace.BySwitch
	case "person":
		v.Proof = trace.ByPerson
	}
	if !v.ByHand {
		v.Travel = usual("travel")
		if g.Travel.Known() {
			v.Travel = max(1, whole(g.Travel.V))
		}
		v.Margin = margin(v.Travel)
	}
	b.head.Gates = append(b.head.Gates, v)
}

// collector notes a fan with the limit of its starts. A limit of 1.4 an hour is
// one start in each 1/1.4 of an hour.
func (b *builder) collector(c *shop.Collector) {
	v := trace.Collector{Name: c.Name, Started: b.control.Started(c), Coast: usual("coast")}
	if of := b.times.On(c); of != nil {
		if of.Fan.Stands > 0 {
			v.Coast = whole(of.Fan.Stands)
		}
		if limit := of.Starts.Limit; limit.Known() && limit.PerHour > 0 {
			v.Starts = max(1, int(math.Floor(unit.Six(limit.PerHour))))
			v.Within = whole(unit.Time(float64(hour) * float64(v.Starts) / limit.PerHour))
			v.Rest = whole(limit.Rest)
		}
	}
	b.head.Collectors = append(b.head.Collectors, v)
}

func (b *builder) trigger(a *control.Answer) {
	t := a.Trigger
	v := trace.Trigger{Name: t.Name, Machine: trace.None, Latched: control.Pressed(t), Starts: places(b.shop.Collectors, t.Starts)}
	if t.Machine != nil {
		v.Machine = slices.Index(b.shop.Machines, t.Machine)
	}
	v.Opens = places(b.shop.Gates, b.control.OpensWith(t))
	onWay := map[int]bool{}
	for _, w := range a.Ways {
		way := b.way(w.Port)
		way.Whole = w.Whole()
		v.Ways = append(v.Ways, way)
		for _, g := range way.Gates {
			onWay[g] = true
		}
	}
	if t.Machine != nil {
		for _, g := range places(b.shop.Gates, b.control.Order(t.Machine.AlsoOpen)) {
			if !onWay[g] {
				v.Relief = append(v.Relief, g)
			}
		}
	}
	if of := b.times.Of(t); of != nil {
		v.StartDelay, v.RunOn = whole(of.Delay.Used), whole(of.RunOn.Used)
	}
	b.head.Triggers = append(b.head.Triggers, v)
}

// way is the way of a port's air; nowhere where no duct serves it.
func (b *builder) way(p *shop.Port) trace.Way {
	w := trace.Way{Port: p.Name, Collector: trace.None}
	if p.Duct == nil {
		return w
	}
	w.Collector = slices.Index(b.shop.Collectors, p.Duct.Collector)
	var gates []*shop.Gate
	for _, s := range p.Path() {
		gates = append(gates, s.Gates...)
	}
	w.Gates = places(b.shop.Gates, gates)
	return w
}

// machine notes a machine; a way of it is whole where it is so for one of its
// triggers.
func (b *builder) machine(m *shop.Machine) {
	v := trace.Machine{Name: m.Name}
	for _, p := range m.Ports {
		if p.Duct == nil {
			continue
		}
		way := b.way(p)
		for _, a := range b.control.Ways {
			for _, w := range a.Ways {
				way.Whole = way.Whole || w.Port == p && w.Whole()
			}
		}
		v.Ways = append(v.Ways, way)
	}
	b.head.Machines = append(b.head.Machines, v)
}

// duct notes the stretches of a duct, and its machines where its end is moved.
func (b *builder) duct(d *shop.Duct) {
	for _, s := range d.Stretches {
		b.head.Stretches = append(b.head.Stretches, s.Name())
	}
	if !d.Movable() {
		return
	}
	var end []*shop.Machine
	for _, p := range d.Serves {
		end = append(end, p.Machine)
	}
	if at := places(b.shop.Machines, end); len(at) > 1 {
		b.head.Ends = append(b.head.Ends, at)
	}
}

// purges adds a purge for each collector that a trigger starts: its turns are
// the triggers that need no person, each set of gates once.
func (b *builder) purges() {
	triggers := b.head.Triggers
	for c := range b.head.Collectors {
		v := trace.Trigger{Name: b.head.Collectors[c].Name, Machine: trace.None, Latched: true, Purge: true, Starts: []int{c}, RunOn: usual("turn")}
		for t := range triggers {
			same := func(other int) bool { return slices.Equal(triggers[other].Opens, triggers[t].Opens) }
			if slices.Equal(triggers[t].Starts, v.Starts) && b.unattended(&triggers[t], c) && !slices.ContainsFunc(v.Turns, same) {
				v.Turns = append(v.Turns, t)
			}
		}
		if len(v.Turns) > 0 {
			b.head.Triggers = append(b.head.Triggers, v)
		}
	}
}

// unattended reports whether a trigger has a whole way to a collector and no
// gate on its ways that a person moves or looks at.
func (b *builder) unattended(t *trace.Trigger, collector int) bool {
	whole := false
	for _, w := range t.Ways {
		if !w.Whole || w.Collector != collector {
			continue
		}
		whole = true
		for _, g := range w.Gates {
			if b.head.Gates[g].ByHand || b.head.Gates[g].Proof == trace.ByPerson {
				return false
			}
		}
	}
	return whole && len(t.Opens) > 0
}
