package control

import (
	"slices"

	"dustbook/plan/shop"
)

// Way is the way of the air from one port to its collector, as a trigger
// leaves it: every gate on it, and what opens each.
type Way struct {
	Port      *shop.Port
	Collector *shop.Collector // where the duct leads; nil where none serves the port
	Gates     []*shop.Gate    // in the order in which the air meets them

	Opened    []*shop.Gate // by the trigger
	Forgotten []*shop.Gate // powered, and not opened by the trigger
	ByHand    []*shop.Gate
	Unknown   []*shop.Gate // drive not given, and not opened by the trigger
}

// Whole reports whether nothing on the way stays shut that a person does not
// open.
func (w *Way) Whole() bool {
	return w.Collector != nil && len(w.Forgotten) == 0 && len(w.Unknown) == 0
}

// Answer is the answer to the question of one trigger's paths.
type Answer struct {
	Trigger *shop.Trigger
	Ways    []*Way // of each port of its machine; without a machine, of each port that a gate it opens lies before

	Astray    []*shop.Collector // started, though no duct of its machine leads there
	Unstarted []*shop.Collector // its ducts lead there, and it starts another
	More      []*shop.Gate      // opened, and needed by none of its ways and no relief
	CannotGo  []*shop.Gate      // opened, though a person moves it
	Relief    []*shop.Gate      // powered gates that the machine wants opened as well, and the trigger does not open
	Blocked   []*shop.Gate      // gates that stay shut between a relief gate and the collector
}

// answer follows the ways of a trigger.
func (k *Reckoning) answer(t *shop.Trigger) *Answer {
	a := &Answer{Trigger: t}
	ports := k.portsBefore(t)
	if t.Machine != nil {
		ports = t.Machine.Ports
	}
	for _, p := range ports {
		a.Ways = append(a.Ways, k.way(p, t))
	}
	for _, g := range t.Opens {
		if k.Drive(g) == ByHand {
			a.CannotGo = append(a.CannotGo, g)
		}
	}
	if t.Machine == nil {
		return a
	}
	k.collectors(a)
	k.relief(a)
	needed := k.needed(a)
	for _, g := range t.Opens {
		if !slices.Contains(needed, g) {
			a.More = append(a.More, g)
		}
	}
	return a
}

// way is the way of a port with what a trigger opens.
func (k *Reckoning) way(p *shop.Port, t *shop.Trigger) *Way {
	w := &Way{Port: p, Gates: gatesOn(p)}
	if p.Duct != nil {
		w.Collector = p.Duct.Collector
	}
	for _, g := range w.Gates {
		switch drive := k.Drive(g); {
		case drive == ByHand:
			w.ByHand = append(w.ByHand, g)
		case slices.Contains(t.Opens, g):
			w.Opened = append(w.Opened, g)
		case drive == Powered:
			w.Forgotten = append(w.Forgotten, g)
		default:
			w.Unknown = append(w.Unknown, g)
		}
	}
	return w
}

// portsBefore are the ports whose way a trigger opens at least a part of.
func (k *Reckoning) portsBefore(t *shop.Trigger) []*shop.Port {
	var list []*shop.Port
	for _, m := range k.shop.Machines {
		for _, p := range m.Ports {
			if slices.ContainsFunc(gatesOn(p), func(g *shop.Gate) bool { return slices.Contains(t.Opens, g) }) {
				list = append(list, p)
			}
		}
	}
	return list
}

// collectors compares where the ways lead with what the trigger starts.
func (k *Reckoning) collectors(a *Answer) {
	var led []*shop.Collector
	for _, w := range a.Ways {
		if w.Collector != nil && !slices.Contains(led, w.Collector) {
			led = append(led, w.Collector)
		}
	}
	for _, c := range a.Trigger.Starts {
		if !slices.Contains(led, c) {
			a.Astray = append(a.Astray, c)
		}
	}
	for _, c := range led {
		if len(a.Trigger.Starts) > 0 && !slices.Contains(a.Trigger.Starts, c) {
			a.Unstarted = append(a.Unstarted, c)
		}
	}
}

// relief compares the gates that the machine wants opened as well with what
// the trigger opens, and looks what else stands in the way of their air.
func (k *Reckoning) relief(a *Answer) {
	open := map[*shop.Gate]bool{}
	for _, g := range a.Trigger.Opens {
		open[g] = true
	}
	for _, w := range a.Ways {
		for _, g := range w.Gates {
			open[g] = true // or a finding of its own
		}
	}
	for _, g := range a.Trigger.Machine.AlsoOpen {
		if k.Drive(g) == Powered && !slices.Contains(a.Trigger.Opens, g) {
			a.Relief = append(a.Relief, g)
		}
		open[g] = true
	}
	for _, g := range a.Trigger.Machine.AlsoOpen {
		for _, below := range After(g) {
			if !open[below] && !slices.Contains(a.Blocked, below) {
				a.Blocked = append(a.Blocked, below)
			}
		}
	}
}

// After are the gates between a gate and the collector.
func After(g *shop.Gate) []*shop.Gate {
	var list []*shop.Gate
	passed := false
	for _, other := range g.Stretch.Gates {
		if passed {
			list = append(list, other)
		}
		passed = passed || other == g
	}
	for s := g.Stretch.Below(); s != nil; s = s.Below() {
		list = append(list, s.Gates...)
	}
	return list
}

// needed are the gates that belong to a trigger: those on the ways of its
// machine, the relief gates, and what lies between these and the collector.
func (k *Reckoning) needed(a *Answer) []*shop.Gate {
	var list []*shop.Gate
	for _, w := range a.Ways {
		list = append(list, w.Gates...)
	}
	for _, g := range a.Trigger.Machine.AlsoOpen {
		list = append(append(list, g), After(g)...)
	}
	return list
}
