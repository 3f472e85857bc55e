package duct

import (
	"context"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Settling is where dust settles in a use that has all its air, on one
// collector, and what helps.
type Settling struct {
	Result  *Result // with the filter in the state that carries worst
	Slowest *StretchResult
	Share   float64 // of the speed that its dust needs
	Relief  Relief
	Smaller *Smaller // nil where no smaller size is stocked or what joins is wider
}

// Smaller is the duct that holds the slowest stretch in the next smaller stock
// size.
type Smaller struct {
	Duct              *shop.Duct
	Size              unit.Length // nominal
	Captured, Carried bool        // with the filter in each state
	Share             float64     // of the speed that is needed where it is then least, in the state in which that is less
}

// Settles finds where dust settles in the results of a use on one collector;
// nil where it is carried or a port lacks air.
func (k *Reckoning) Settles(ctx context.Context, u *Use, c *shop.Collector) *Settling {
	t := k.TreeOf(c)
	var s *Settling
	for _, r := range u.On(c) {
		at, share := r.Slowest()
		if !r.OnCurve || !r.Captured {
			return nil
		}
		if !r.Carried && at != nil && (s == nil || share < s.Share) {
			s = &Settling{Result: r, Slowest: at, Share: share}
		}
	}
	if s == nil || t == nil {
		return nil
	}
	x := newTrial(t)
	members := x.members(u.Machines)
	x.run(members)
	for g := range u.Open {
		if at, here := t.number[g]; here {
			x.open[at] = true
		}
	}
	s.Relief = x.relief(ctx, members)
	s.Smaller = t.smaller(u, s.Slowest)
	return s
}

// smaller tries the duct of a stretch in the next smaller stock size.
func (t *Tree) smaller(u *Use, at *StretchResult) *Smaller {
	d := at.Stretch.Duct
	size, known := lastSize(t.shop, d)
	if !known || slices.ContainsFunc(d.Joined, func(o *shop.Duct) bool { return unit.Compare(float64(o.Size), float64(size)) > 0 }) {
		return nil
	}
	bore, _ := shop.Bore(d.Material, size)
	as := alteration{bore: map[*shop.Stretch]unit.Length{}, hose: map[*shop.Duct]*shop.Hose{}}
	as.size(d, bore)
	v := &Smaller{Duct: d, Size: size, Captured: true, Carried: true, Share: -1}
	for _, r := range growAs(t.shop, t.Collector, t.State, as).solveAll(u) {
		v.Captured, v.Carried = v.Captured && r.Captured, v.Carried && r.Carried
		if !r.OnCurve {
			return nil
		}
		if _, share := r.Slowest(); v.Share < 0 || share < v.Share {
			v.Share = share
		}
	}
	return v
}
