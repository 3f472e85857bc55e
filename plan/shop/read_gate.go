package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readGates reads [[gate]].
func (r *reader) readGates(top *scope) {
	for _, s := range top.several("gate") {
		g := &Gate{At: s.t.At}
		g.Name, g.Tag = s.name("gate").Name, s.tag("tag")
		at := measure[unit.Length](s, "at")
		r.refer(s, "on", func(thing any) {
			g.On = thing.(*Duct)
			g.Where = s.along(g.On, at)
			g.On.Gates = append(g.On.Gates, g)
		})
		g.Drive = s.word("drive")
		g.Travel = measure[unit.Time](s, "travel")
		g.Moving, g.Stall, g.Holding = measure[unit.Current](s, "moving"), measure[unit.Current](s, "stall"), measure[unit.Current](s, "holding")
		g.Takes, g.Lowest = measure[unit.Power](s, "takes"), measure[unit.Voltage](s, "lowest")
		g.Proves = s.word("proves")
		g.OpenStop, g.ShutStop = s.text("open_stop"), s.text("shut_stop")
		g.Leak = s.gateLeak("leak")
		r.shop.Gates = append(r.shop.Gates, g)
		s.close()
	}
}

// readLeaks reads [[leak]]. A leak without a place or a size draws nothing
// that could be reckoned, and is listed as an assumption.
func (r *reader) readLeaks(top *scope) {
	for _, s := range top.several("leak") {
		l := &Leak{At: s.t.At}
		at := measure[unit.Length](s, "at")
		l.Hole = measure[unit.Length](s, "hole").V
		r.refer(s, "on", func(thing any) {
			l.On = thing.(*Duct)
			l.Where = s.along(l.On, at)
			if l.Hole > 0 {
				l.On.Leaks = append(l.On.Leaks, l)
			}
		})
		s.close()
		if on := s.t.Get("on"); on == nil || s.t.Get("hole") == nil {
			if on != nil {
				s.about, _ = on.Value.(string)
			}
			s.assume("hole", phrase("no hole"), source.Basis{Mark: source.Practice})
			continue
		}
		r.shop.Leaks = append(r.shop.Leaks, l)
	}
}

// along is a place on a duct; left out, its downstream end.
func (s *scope) along(d *Duct, at Field[unit.Length]) unit.Length {
	if !at.Known() {
		return d.Length
	}
	if d.run && unit.Compare(float64(at.V), float64(d.Length)) > 0 {
		s.wrong(s.t.Get("at"), "a place on "+entry.Quote(d.Name)+", which is "+unit.Run.Print(s.r.shop.Units, d.Length)+" long", "measure from its upstream end")
	}
	return min(at.V, d.Length)
}

// placesOn reads a list of places on a duct.
func (s *scope) placesOn(d *Duct, field string) []unit.Length {
	var list []unit.Length
	if _, given := s.listIn(field); given {
		list = []unit.Length{}
	}
	for _, item := range s.items(field, `a list of lengths ["0 ft", …]`, "write the places in square brackets") {
		v, ok := quantity[unit.Length](s, field, item, "")
		switch {
		case !ok:
		case v < 0 || d.run && unit.Compare(float64(v), float64(d.Length)) > 0:
			s.wrong(item, "a place on the duct, which is "+unit.Run.Print(s.r.shop.Units, d.Length)+" long", "measure from its upstream end")
		default:
			list = append(list, v)
		}
	}
	return list
}

// gateLeak reads what a shut gate lets through.
func (s *scope) gateLeak(field string) GateLeak {
	node := s.node(field)
	if node == nil {
		f := defaulted(s, field, parseNumber)
		return GateLeak{Share: f.V, Basis: s.row(field).Basis}
	}
	given := source.Basis{Mark: source.Given}
	if node.Value == "none" {
		return GateLeak{None: true, Basis: given}
	}
	const or = `, or "none", or a share of the bore such as 0.015`
	if share, ok := plain(node); ok {
		if share <= 0 || share > 1 {
			s.wrong(node, "a share of the bore above 0 and at most 1", `write a share such as 0.015, or "none"`)
			return GateLeak{None: true}
		}
		return GateLeak{Share: share, Basis: given}
	}
	if share, ok := numberIn(node); ok {
		s.wrong(node, `a share of the bore without quotes, or "none"`, "write "+unit.Short(share))
		return GateLeak{None: true}
	}
	flow, press, ok := two(s, node, or, unit.ReadAt[unit.Flow, unit.Pressure])
	if !ok {
		return GateLeak{None: true}
	}
	if flow <= 0 || press <= 0 {
		s.wrong(node, "a flow and a pressure above zero", `check the figures, or write "none"`)
		return GateLeak{None: true}
	}
	return GateLeak{Flow: flow, Press: press, Basis: given}
}

// readUses reads [[use]].
func (r *reader) readUses(top *scope) {
	for _, s := range top.several("use") {
		u := &Use{At: s.t.At}
		u.Name = s.name("use").Name
		s.refers("machines", func(thing any) { u.Machines = append(u.Machines, thing.(*Machine)) })
		if items, isList := s.listIn("machines"); isList && len(items) == 0 {
			s.wrong(s.t.Get("machines"), "the names of the machines that run together", `write machines = ["…", "…"]`)
		}
		s.refers("also_open", func(thing any) { u.AlsoOpen = append(u.AlsoOpen, thing.(*Gate)) })
		u.Hours = s.number("hours")
		r.shop.Uses = append(r.shop.Uses, u)
		s.close()
	}
}
