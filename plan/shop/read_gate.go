package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readGates reads [[gate]] and [[leak]].
func (r *reader) readGates(top *scope) {
	for _, s := range top.several("gate") {
		g := &Gate{At: s.t.At}
		g.Name = s.name("gate").Name
		at := measure[unit.Length](s, "at")
		r.refer(s, "on", "duct", func(thing any) {
			g.On = thing.(*Duct)
			g.Where = s.along(g.On, at)
			g.On.Gates = append(g.On.Gates, g)
		})
		g.Drive = s.word("drive")
		g.Travel = measure[unit.Time](s, "travel")
		g.Moving, g.Stall, g.Holding = measure[unit.Current](s, "moving"), measure[unit.Current](s, "stall"), measure[unit.Current](s, "holding")
		g.Lowest = measure[unit.Voltage](s, "lowest")
		g.Proves = s.word("proves")
		g.OpenStop, g.ShutStop = s.text("open_stop"), s.text("shut_stop")
		g.Leak = s.gateLeak("leak")
		r.shop.Gates = append(r.shop.Gates, g)
		s.close()
	}
	for _, s := range top.several("leak") {
		l := &Leak{At: s.t.At}
		at := measure[unit.Length](s, "at")
		r.refer(s, "on", "duct", func(thing any) {
			l.On = thing.(*Duct)
			l.Where = s.along(l.On, at)
			l.On.Leaks = append(l.On.Leaks, l)
		})
		l.Hole = measure[unit.Length](s, "hole").V
		r.shop.Leaks = append(r.shop.Leaks, l)
		s.close()
	}
}

// along is a place on a duct; left out, its downstream end.
func (s *scope) along(d *Duct, at Field[unit.Length]) unit.Length {
	if !at.Known() {
		return d.Length
	}
	if unit.Compare(float64(at.V), float64(d.Length)) > 0 {
		s.r.problem(at.At, "at = "+entry.Quote(unit.Run.Print(s.r.shop.Units, at.V)), "a place on "+entry.Quote(d.Name)+", which is "+unit.Run.Print(s.r.shop.Units, d.Length)+" long", "measure from its upstream end")
	}
	return at.V
}

// gateLeak reads what a shut gate lets through.
func (s *scope) gateLeak(field string) GateLeak {
	node := s.node(field)
	expected := `a share of the bore such as 0.015, "none", or a flow at a pressure such as "15 cfm at 8 inwg"`
	if node == nil {
		f := defaulted(s, field, parseNumber)
		return GateLeak{Share: f.V, Basis: s.row(field).Basis}
	}
	given := source.Basis{Mark: source.Given}
	if share, ok := plain(node); ok {
		if share <= 0 || share > 1 {
			s.wrong(node, expected, `write a share of one, or "none"`)
			return GateLeak{None: true}
		}
		return GateLeak{Share: share, Basis: given}
	}
	text, ok := s.str(node, expected)
	if !ok || text == "none" {
		return GateLeak{None: true, Basis: given}
	}
	flow, press, err := unit.ReadAt[unit.Flow, unit.Pressure](text)
	if err != nil || flow <= 0 || press <= 0 {
		s.wrong(node, expected, `write "15 cfm at 8 inwg"`)
		return GateLeak{None: true}
	}
	return GateLeak{Flow: flow, Press: press, Basis: given}
}

// readUses reads [[use]].
func (r *reader) readUses(top *scope) {
	for _, s := range top.several("use") {
		u := &Use{At: s.t.At}
		u.Name = s.name("use").Name
		refs := s.strings("machines")
		if node := s.t.Get("machines"); node != nil && len(refs) == 0 {
			s.wrong(node, "the names of the machines that run together", `write ["…", "…"]`)
		}
		for _, ref := range refs {
			r.later(ref, "machine", func(thing any) {
				m := thing.(*Machine)
				for _, other := range u.Machines {
					if other == m {
						r.problem(ref.At, entry.Quote(ref.Name)+" twice", "each machine once", "leave one out")
						return
					}
				}
				u.Machines = append(u.Machines, m)
			})
		}
		for _, ref := range s.strings("also_open") {
			r.later(ref, "gate", func(thing any) { u.AlsoOpen = append(u.AlsoOpen, thing.(*Gate)) })
		}
		u.Hours = s.number("hours")
		r.shop.Uses = append(r.shop.Uses, u)
		s.close()
	}
}
