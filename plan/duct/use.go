package duct

import (
	"slices"

	"dustbook/plan/shop"
)

// The kinds of use.
type UseKind uint8

const (
	OneMachine UseKind = iota // a machine alone
	Together                  // a [[use]] of the file
	AllShut                   // every gate shut
	AllOpen                   // every gate open
	DuctOff                   // the fan without its ducts
)

// Use is one way the shop is used: machines that run, gates that are open.
type Use struct {
	Name     string
	Kind     UseKind
	Machines []*shop.Machine
	Open     map[*shop.Gate]bool
	Stated   *shop.Use // of a use of the file
	Results  []*Result
}

// Uses lists every use of a shop: each machine alone in file order, then the
// file's own, then everything shut, everything open and duct off.
func Uses(s *shop.Shop) []*Use {
	var list []*Use
	for _, m := range s.Machines {
		list = append(list, &Use{Name: m.Name, Kind: OneMachine, Machines: []*shop.Machine{m}, Open: openFor([]*shop.Machine{m}, nil)})
	}
	for _, u := range s.Uses {
		list = append(list, &Use{Name: u.Name, Kind: Together, Machines: u.Machines, Open: openFor(u.Machines, u.AlsoOpen), Stated: u})
	}
	all := map[*shop.Gate]bool{}
	for _, g := range s.Gates {
		all[g] = true
	}
	return append(list,
		&Use{Name: "Everything shut", Kind: AllShut, Open: map[*shop.Gate]bool{}},
		&Use{Name: "Everything open", Kind: AllOpen, Open: all},
		&Use{Name: "Duct off", Kind: DuctOff, Open: map[*shop.Gate]bool{}})
}

// openFor finds the gates that are open when machines run: all on the way
// from their ports to the collector, and those opened as well.
func openFor(machines []*shop.Machine, also []*shop.Gate) map[*shop.Gate]bool {
	open := map[*shop.Gate]bool{}
	for _, m := range machines {
		for _, p := range m.Ports {
			for _, s := range p.Path() {
				for _, g := range s.Gates {
					open[g] = true
				}
			}
		}
		for _, g := range m.AlsoOpen {
			open[g] = true
		}
	}
	for _, g := range also {
		open[g] = true
	}
	return open
}

// Collectors are the collectors a use needs, in file order.
func (u *Use) Collectors(s *shop.Shop) []*shop.Collector {
	var list []*shop.Collector
	for _, c := range s.Collectors {
		if len(u.Machines) == 0 || slices.ContainsFunc(u.ports(), func(p *shop.Port) bool { return p.Duct != nil && p.Duct.Collector == c }) {
			list = append(list, c)
		}
	}
	return list
}

// ports are the ports of the use's machines, in file order.
func (u *Use) ports() []*shop.Port {
	var list []*shop.Port
	for _, m := range u.Machines {
		list = append(list, m.Ports...)
	}
	return list
}

// Served is the port that a duct's end stands at in this use: that of the
// first of the use's machines it can serve, else the first it names.
func (u *Use) Served(d *shop.Duct) (port *shop.Port, index int) {
	for i, p := range d.Serves {
		if slices.Contains(u.Machines, p.Machine) {
			return p, i
		}
	}
	return d.Serves[0], 0
}
