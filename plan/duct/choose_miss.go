package duct

import (
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Missed is what sizes, in the place of those of a choice, miss by most: in the
// uses that the choice is about, with the gates open that it opens as well. It
// is nil where they meet all of those uses.
func (k *Reckoning) Missed(s *shop.Shop, c *Choice, sizes []Sized) (most *Miss) {
	k.eachAs(s, c, sizes, func(u *Use, _ *Tree, r *Result) {
		if miss := missOf(u, r); miss != nil && (most == nil || miss.Share < most.Share) {
			most = miss
		}
	})
	return most
}

// eachAs solves every use that a choice is about, with some sizes and with the
// gates open that the choice opens as well.
func (k *Reckoning) eachAs(s *shop.Shop, c *Choice, sizes []Sized, do func(*Use, *Tree, *Result)) {
	as := alteration{bore: map[*shop.Stretch]unit.Length{}, hose: map[*shop.Duct]*shop.Hose{}}
	for _, at := range sizes {
		as.size(at.Duct, at.Bore)
	}
	t := growAs(s, c.Collector, k.State, as)
	for _, u := range k.Uses {
		if len(u.Machines) == 0 || !slices.Contains(u.Collectors(s), c.Collector) || slices.Contains(c.Beyond, u) {
			continue
		}
		for _, r := range t.solveAll(u.with(c.opened(u))) {
			do(u, t, r)
		}
	}
}

// opened are the gates that a use opens as relief.
func (c *Choice) opened(u *Use) []*shop.Gate {
	for _, opened := range c.Relief {
		if opened.Use == u {
			return opened.Gates
		}
	}
	return nil
}
