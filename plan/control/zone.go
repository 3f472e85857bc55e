package control

import "dustbook/plan/shop"

// ends are the duct ends whose air passes a gate, with their machines.
type ends struct {
	ducts    []*shop.Duct
	machines []*shop.Machine
}

// endsOf finds for every gate the ends upstream of it.
func endsOf(s *shop.Shop) map[*shop.Gate]*ends {
	all := map[*shop.Gate]*ends{}
	for _, g := range s.Gates {
		all[g] = &ends{}
	}
	for _, m := range s.Machines {
		for _, p := range m.Ports {
			for _, g := range gatesOn(p) {
				all[g].add(p)
			}
		}
	}
	return all
}

func (e *ends) add(p *shop.Port) {
	seen := false
	for _, d := range e.ducts {
		seen = seen || d == p.Duct
	}
	if !seen {
		e.ducts = append(e.ducts, p.Duct)
	}
	for _, m := range e.machines {
		if m == p.Machine {
			return
		}
	}
	e.machines = append(e.machines, p.Machine)
}

// gatesOn are the gates between a port and its collector, in the order in
// which the air meets them.
func gatesOn(p *shop.Port) []*shop.Gate {
	var list []*shop.Gate
	for _, s := range p.Path() {
		list = append(list, s.Gates...)
	}
	return list
}

// Zone reports whether a gate is a zone gate: the ducts of more than one
// machine empty through it. One movable end, whoever it serves, is one duct.
func (k *Reckoning) Zone(g *shop.Gate) bool {
	e := k.ends[g]
	return len(e.ducts) > 1 && len(e.machines) > 1
}

// Upstream are the machines whose air passes a gate, in file order.
func (k *Reckoning) Upstream(g *shop.Gate) []*shop.Machine { return k.ends[g].machines }
