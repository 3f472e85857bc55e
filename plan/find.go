package plan

import (
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// The finders find a thing of the shop by the name that readings use; nil
// where there is none.

func (p *Plan) port(name string) *shop.Port {
	for _, m := range p.Shop.Machines {
		for _, port := range m.Ports {
			if port.Full() == name {
				return port
			}
		}
	}
	return nil
}

// duct finds a duct with its only stretch, or the stretch that is named; of a
// duct cut into several the stretch is nil.
func (p *Plan) duct(name string) (*shop.Duct, *shop.Stretch) {
	for _, d := range p.Shop.Ducts {
		if d.Name == name {
			if len(d.Stretches) == 1 {
				return d, d.Stretches[0]
			}
			return d, nil
		}
	}
	for _, d := range p.Shop.Ducts {
		for _, s := range d.Stretches {
			if s.Name() == name {
				return d, s
			}
		}
	}
	return nil, nil
}

func (p *Plan) tap(name string) *shop.Tap {
	return find(p.Shop.Taps, name, func(t *shop.Tap) string { return t.Name })
}

func (p *Plan) collector(name string) *shop.Collector {
	return find(p.Shop.Collectors, name, func(c *shop.Collector) string { return c.Name })
}

func (p *Plan) gate(name string) *shop.Gate {
	return find(p.Shop.Gates, name, func(g *shop.Gate) string { return g.Name })
}

func (p *Plan) machine(name string) *shop.Machine {
	return find(p.Shop.Machines, name, func(m *shop.Machine) string { return m.Name })
}

func (p *Plan) trigger(name string) *shop.Trigger {
	return find(p.Shop.Triggers, name, func(t *shop.Trigger) string { return t.Name })
}

// watched is the collector whose filter a sensor watches: the only one that
// has a filter.
func (p *Plan) watched(name string) *shop.Collector {
	s := find(p.Shop.Sensors, name, func(s *shop.Sensor) string { return s.Name })
	if s == nil || s.Senses != "filter pressure" {
		return nil
	}
	var only *shop.Collector
	for _, c := range p.Shop.Collectors {
		if c.Filter == nil {
			continue
		}
		if only != nil {
			return nil
		}
		only = c
	}
	return only
}

func find[T any](list []*T, name string, of func(*T) string) *T {
	for _, thing := range list {
		if of(thing) == name {
			return thing
		}
	}
	return nil
}

// given is the shop file's own figure for what was measured.
func (p *Plan) given(r record.Reading) Expected {
	switch r.Of {
	case "time":
		return p.givenTime(r.At)
	case "threshold", "start delay", "run-on":
		return p.ofTrigger(r.Of, p.trigger(r.At))
	case "resistance":
		if d, _ := p.duct(r.At); d != nil {
			return stated(d.Bonded)
		}
		if c := p.collector(r.At); c != nil {
			return stated(c.Bonded)
		}
	case "sound level":
		if m := p.machine(r.At); m != nil {
			return stated(m.Noise)
		}
	case "stop", "open stop", "shut stop":
		return ofGate(r.Of, p.gate(r.At))
	}
	return Expected{Why: noFigure}
}

// givenTime is how long a gate travels, a machine coasts or a fan runs up.
func (p *Plan) givenTime(name string) Expected {
	if g := p.gate(name); g != nil {
		return stated(g.Travel)
	}
	if m := p.machine(name); m != nil {
		return stated(m.Coast)
	}
	if c := p.collector(name); c != nil {
		return stated(c.RunUp)
	}
	return Expected{Why: noFigure}
}

func (p *Plan) ofTrigger(of string, t *shop.Trigger) Expected {
	switch {
	case t == nil:
		return Expected{Why: noFigure}
	case of == "threshold":
		return stated(t.Threshold)
	case of == "run-on":
		return stated(t.RunOn)
	}
	return stated(t.StartDelay)
}

func ofGate(of string, g *shop.Gate) Expected {
	if g == nil {
		return Expected{Why: noFigure}
	}
	at := g.OpenStop
	if of == "shut stop" {
		at = g.ShutStop
	}
	if !at.Known() {
		return Expected{Why: noFigure}
	}
	return Expected{Text: at.V, Given: true}
}

// stated is a figure of the shop file, where it gives one.
func stated[Q unit.Measure](f shop.Field[Q]) Expected {
	if !f.Known() {
		return Expected{Why: noFigure}
	}
	x := unit.Six(float64(f.V))
	e := Expected{Given: true}
	e.Low, e.High = x, x
	return e
}
