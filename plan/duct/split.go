package duct

import "dustbook/plan/air"

// Split is the loss of a converging wye by the share of flow, for one of the
// two edges that join: on the velocity pressure of the combined flow.
type Split struct {
	Wye     air.Wye
	Branch  bool    // this edge is the branch; else it is the run
	Dynamic float64 // velocity pressure of the combined duct at 1 m³/s
}

// loss is the junction's loss for this edge and its slopes by the edge's own
// flow and by the combined flow. Shares outside 0 to 1 are taken at the end
// of the range, so that the search can pass through them.
func (w *Split) loss(own, all float64) (loss, byOwn, byAll float64) {
	if all <= 0 {
		return 0, 0, 0
	}
	x, turn := own/all, 1.0
	if !w.Branch {
		x, turn = 1-x, -1
	}
	if x < 0 {
		x, turn = 0, 0
	} else if x > 1 {
		x, turn = 1, 0
	}
	at, _ := w.Wye.Loss(x)
	k, slope := at.Branch, at.BranchSlope
	if !w.Branch {
		k, slope = at.Run, at.RunSlope
	}
	slope *= turn
	loss = k * w.Dynamic * all * all
	byOwn = slope * w.Dynamic * all
	byAll = 2*k*w.Dynamic*all - slope*w.Dynamic*own
	return loss, byOwn, byAll
}
