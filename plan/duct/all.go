package duct

import (
	"sync"

	"dustbook/plan/air"
	"dustbook/plan/shop"
)

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	State air.State
	Trees []*Tree // one for each collector, in file order
	Uses  []*Use  // with their results
	Loads []Load  // what each fan asks of its motor, in file order

	spreads map[*Result]func() *Spread
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
	k := &Reckoning{State: StateOf(s), Uses: Uses(s), spreads: map[*Result]func() *Spread{}}
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
				r := byCollector[c].Solve(u, filter)
				u.Results = append(u.Results, r)
				k.spreads[r] = sync.OnceValue(func() *Spread { return byCollector[c].Spread(r) })
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
	r := &Result{Use: u, Filter: NoFilter, Why: unservedUse}
	for _, p := range u.ports() {
		r.Ports = append(r.Ports, PortResult{Port: p, Weak: p.Need.Mark.Weak()})
	}
	return r
}

// Spread is how far the figures of a result may lie apart; it is solved when
// it is first asked for, and once. Several may ask at a time.
func (k *Reckoning) Spread(r *Result) *Spread {
	if solve := k.spreads[r]; solve != nil {
		return solve()
	}
	return &Spread{}
}
