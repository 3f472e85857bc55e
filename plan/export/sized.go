package export

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// copies hold, of each thing of a shop that air is reckoned from, a copy.
type copies struct {
	machines  map[*shop.Machine]*shop.Machine
	ports     map[*shop.Port]*shop.Port
	ducts     map[*shop.Duct]*shop.Duct
	stretches map[*shop.Stretch]*shop.Stretch
	gates     map[*shop.Gate]*shop.Gate
	leaks     map[*shop.Leak]*shop.Leak
}

// withSizes is a shop with sizes written in. It shares nothing that they
// change with the shop of the plan, which stays as it is.
func withSizes(s *shop.Shop, sizes []duct.Sized) *shop.Shop {
	c := copies{map[*shop.Machine]*shop.Machine{}, map[*shop.Port]*shop.Port{}, map[*shop.Duct]*shop.Duct{}, map[*shop.Stretch]*shop.Stretch{}, map[*shop.Gate]*shop.Gate{}, map[*shop.Leak]*shop.Leak{}}
	made := *s
	made.Machines, made.Ducts = anew(s.Machines, c.machines), anew(s.Ducts, c.ducts)
	made.Gates, made.Leaks = anew(s.Gates, c.gates), anew(s.Leaks, c.leaks)
	for _, m := range made.Machines {
		m.Ports, m.AlsoOpen = anew(m.Ports, c.ports), those(m.AlsoOpen, c.gates)
		for _, p := range m.Ports {
			p.Machine, p.Duct = m, c.ducts[p.Duct]
		}
	}
	for _, d := range made.Ducts {
		c.join(d)
	}
	for _, g := range made.Gates {
		g.On, g.Stretch = c.ducts[g.On], c.stretches[g.Stretch]
	}
	for _, leak := range made.Leaks {
		leak.On = c.ducts[leak.On]
	}
	made.Uses = anew(s.Uses, map[*shop.Use]*shop.Use{})
	for _, u := range made.Uses {
		u.Machines, u.AlsoOpen = those(u.Machines, c.machines), those(u.AlsoOpen, c.gates)
	}
	for _, at := range sizes {
		take(c.ducts[at.Duct], at)
	}
	return &made
}

// join has a copied duct point to copies.
func (c copies) join(d *shop.Duct) {
	d.Into, d.Joined, d.Serves = c.ducts[d.Into], those(d.Joined, c.ducts), those(d.Serves, c.ports)
	d.Gates, d.Leaks = those(d.Gates, c.gates), those(d.Leaks, c.leaks)
	d.Stretches = anew(d.Stretches, c.stretches)
	for _, s := range d.Stretches {
		s.Duct, s.Gates = d, those(s.Gates, c.gates)
	}
}

// take gives a duct its size, and its hose too where that is the duct's.
func take(d *shop.Duct, at duct.Sized) {
	d.Choose, d.Size, d.Bore = false, at.Size, at.Bore
	if d.Hose != nil && d.Hose.Size == 0 {
		hose := *d.Hose
		hose.Size = at.Bore
		d.Hose = &hose
	}
}

// anew copies things, and notes whose copy each is.
func anew[T any](list []*T, of map[*T]*T) []*T {
	var made []*T
	for _, thing := range list {
		twin := *thing
		of[thing] = &twin
		made = append(made, &twin)
	}
	return made
}

// those are the copies of things.
func those[T any](list []*T, of map[*T]*T) []*T {
	var made []*T
	for _, thing := range list {
		made = append(made, of[thing])
	}
	return made
}
