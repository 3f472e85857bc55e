package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
)

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	State air.State
	Trees []*Tree // one for each collector, in file order
	Uses  []*Use  // with their results
	Loads []Load  // what each fan asks of its motor, in file order
}

// StateOf is the state of the air in the ducts.
func StateOf(s *shop.Shop) air.State {
	if s.AirDensity.Known() {
		return air.State{Density: s.AirDensity.V, Viscosity: s.AirViscosity.V}
	}
	return air.At(s.Altitude.V, s.AirTemperature.V)
}

// Reckon solves every use of a shop on every collector it needs, with the
// filter in each state.
func Reckon(s *shop.Shop) *Reckoning {
	k := &Reckoning{State: StateOf(s), Uses: Uses(s)}
	byCollector := map[*shop.Collector]*Tree{}
	for _, c := range s.Collectors {
		tree := Grow(s, c, k.State)
		k.Trees = append(k.Trees, tree)
		byCollector[c] = tree
		k.Loads = append(k.Loads, Weigh(s, c))
	}
	for _, u := range k.Uses {
		for _, c := range u.Collectors(s) {
			for _, filter := range States(c) {
				u.Results = append(u.Results, byCollector[c].Solve(u, filter))
			}
		}
		if len(u.Results) == 0 && len(u.Machines) > 0 {
			u.Results = append(u.Results, unserved(u))
		}
	}
	return k
}

// unserved is the result of a use whose machines no duct serves.
func unserved(u *Use) *Result {
	r := &Result{Use: u, Filter: NoFilter, Why: "no duct serves it"}
	for _, p := range u.ports() {
		r.Ports = append(r.Ports, PortResult{Port: p, Weak: p.Need.Mark.Weak()})
	}
	return r
}
