package duct

import "math"

// One pass of the search: every run's loss is taken as a straight line at its
// flow, and the tree of lines is solved exactly, from the leaves to the root
// and back.

// gather passes from the leaves to the root: each run's flow as a straight
// line in the pressure downstream of it.
func (s *Solver) gather() {
	for i := range s.runs {
		r := &s.runs[i]
		r.sumA, r.sumB, r.sumG = 0, 0, 0
	}
	s.rootA, s.rootB = 0, 0
	for i := range s.runs {
		r := &s.runs[i]
		q := r.flow
		s.lose(r)
		// at rest a square has no slope: take that at a flow that counts as none
		r.slope = max(r.slope, 2*r.quad*s.none, flattest)
		if r.leaf {
			r.b = 1 / r.slope
			r.a = q - r.drop*r.b
		} else {
			// what feeds it: flow = A − B·(pressure upstream)
			bent := r.bend()
			sumA, sumB := r.sumA/bent, r.sumB/bent
			all := 1 / (1 + r.slope*sumB)
			r.a, r.b = (sumA+sumB*(r.slope*q-r.drop))*all, sumB*all
		}
		s.join(r)
	}
}

// bend is by how much the flow that a node passes on counts, because the
// losses of what joins there grow with it. It is kept above zero; the flow at
// which the lines touch stays what it was.
func (r *run) bend() float64 {
	bent := max(1+r.sumG, steepest)
	r.sumA += (bent - 1 - r.sumG) * r.flow
	r.sumG = bent - 1
	return bent
}

// steepest bounds how fast the loss of a junction may fall with flow in the
// linearised tree.
const steepest = 0.05

// join hands a run's straight line to the run it empties into.
func (s *Solver) join(r *run) {
	r.g = 0
	if r.down < 0 {
		s.rootA += r.a
		s.rootB += r.b
		return
	}
	below := &s.runs[r.down]
	if r.wye != nil {
		own, all := r.flow, below.flow
		loss, byOwn, byAll := r.wye.loss(own, all)
		d := 1 + r.b*byOwn
		if d < steepest {
			d = steepest
			byOwn = (d - 1) / r.b
		}
		r.a = (r.a - r.b*(loss-byOwn*own-byAll*all)) / d
		r.b /= d
		r.g = r.b * byAll
	}
	below.sumA += r.a
	below.sumB += r.b
	below.sumG += r.g
}

// spread passes from the root to the leaves: new flows by the straight lines,
// of which each run moves a share of the way. It returns the largest change
// of a flow, were it moved all the way.
//
// The pressure above a run follows from what feeds it, not from the loss of
// the run: where an inlet costs next to nothing, its flow hangs on the last
// digit of that pressure, and must still add up.
func (s *Solver) spread(rootPressure, rootFlow, share float64) float64 {
	change := 0.0
	for i := len(s.runs) - 1; i >= 0; i-- {
		r := &s.runs[i]
		all := rootFlow
		r.below = rootPressure
		if r.down >= 0 {
			r.below, all = s.runs[r.down].above, s.runs[r.down].a
		}
		old := r.flow
		flow := r.a - r.b*r.below
		if r.wye != nil {
			flow -= r.g * all
		}
		r.a, r.g = flow, all // what comes upstream needs the flow whole
		if r.leaf {
			r.above = r.joins() + r.drop + r.slope*(flow-old)
		} else {
			r.above = (r.sumA - (1+r.sumG)*flow) / r.sumB
		}
		r.flow = old + share*(flow-old)
		change = max(change, math.Abs(flow-old))
	}
	return change
}

// joins is the pressure at the end of a run, before what it joins by.
func (r *run) joins() float64 {
	if r.wye == nil {
		return r.below
	}
	loss, _, _ := r.wye.loss(r.a, r.g)
	return r.below + loss
}

// spellOut writes out the flow and the pressures of every edge.
func (s *Solver) spellOut() {
	for i := range s.runs {
		s.spell(&s.runs[i])
	}
}
