package chain

import (
	"dustbook/plan/control"
	"dustbook/plan/shop"
)

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	Chains []*Answer         // one for each chain, in file order
	Supply *Supply           // nil where nothing has to be fed
	Twice  []*control.Device // that stand on chains more than once
	Loose  []*control.Device // that have to be fed and stand on no chain
	Reach  Reach             // how the volts of the supply stand to low voltage
	Edge   Edge              // that they lie above
}

// Reckon reckons the chains of a shop.
func Reckon(s *shop.Shop, k *control.Reckoning) *Reckoning {
	r := &Reckoning{}
	if v := s.Control.Supply; v.Known() {
		r.Reach, r.Edge = ReachOf(v.V)
	}
	fed := false
	for _, d := range k.Devices {
		if !k.Wired(d) {
			continue
		}
		fed = true
		switch {
		case len(d.Chains) > 1:
			r.Twice = append(r.Twice, d)
		case len(d.Chains) == 0:
			r.Loose = append(r.Loose, d)
		}
	}
	for _, c := range s.Chains {
		r.Chains = append(r.Chains, answer(s, k, c))
	}
	if fed {
		r.Supply = supply(s, k, r.Chains)
	}
	return r
}

// NoSolution are the chains whose devices ask for more than their cable can
// carry.
func (r *Reckoning) NoSolution() []*Answer {
	var list []*Answer
	for _, a := range r.Chains {
		if a.NoSolution {
			list = append(list, a)
		}
	}
	return list
}

// Of is the answer about a chain; nil where it is none of the shop's.
func (r *Reckoning) Of(c *shop.Chain) *Answer {
	for _, a := range r.Chains {
		if a.Chain == c {
			return a
		}
	}
	return nil
}
