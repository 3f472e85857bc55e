package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// flowOf is the flow a stretch carries in a result.
func (t *Tree) flowOf(r *Result, s *shop.Stretch) unit.Flow {
	for i := range r.Stretches {
		if r.Stretches[i].Stretch == s {
			return r.Stretches[i].Flow
		}
	}
	return 0
}

// endFlow is what a duct's own end lets in: what its first stretch carries
// less what joins or leaks in at its upstream end.
func (t *Tree) endFlow(r *Result, d *shop.Duct) unit.Flow {
	return t.flowOf(r, d.Stretches[0]) - t.entering(r, d, 0)
}

// entering is what comes in at a node of a duct from other ducts and holes.
func (t *Tree) entering(r *Result, d *shop.Duct, node int) (sum unit.Flow) {
	for _, other := range d.Joined {
		if n := len(other.Stretches); other.JoinNode == node {
			sum += t.flowOf(r, other.Stretches[n-1]) + t.entering(r, other, n)
		}
	}
	for _, leak := range r.Leaks {
		if leak.Leak.On == d && leak.Leak.Node == node {
			sum += leak.Flow
		}
	}
	return sum
}
