package duct

import (
	"math"

	"dustbook/plan/air"
)

// run is a row of live edges that carry one flow, because nothing joins or
// leaks in between: the solver takes it as one. Its state is that of the last
// pass.
type run struct {
	head, down int     // its first edge; the run it empties into, -1 for the root
	pipes      [2]int  // its pipes, from and up to, in Solver.pipes
	quad       float64 // Pa/(m³/s)², all fixed coefficients
	leaf       bool    // its upstream end is open to the room
	wye        *Split  // the loss where it joins, by the share of flow

	flow         float64 // m³/s, positive towards the root
	at           float64 // the flow that drop and slope stand for
	drop, slope  float64 // Pa, and Pa/(m³/s)
	a, b, g      float64 // flow = a − b·(pressure downstream) − g·(flow of the run downstream)
	sumA, sumB   float64 // what feeds it, added up
	sumG         float64
	above, below float64 // Pa, total gauge pressure at its two ends
}

// runPipe is the friction of a run in one bore and wall: pieces of it that
// follow each other share one friction factor.
type runPipe struct {
	fric, re, rel float64 // as of an Edge
	root          float64 // 1/√f at the last flow, where the next search starts
	f, rise       float64 // the factor there, and its slope by flow
}

// usualRoot is a fair 1/√f of a pipe that does not say where to start.
const usualRoot = 8

// Take sets the solver to a network, in the room it has: taking one with no
// more edges than the last allocates nothing. Nothing of the last is kept.
func (s *Solver) Take(n *Network) {
	s.net, s.warm, s.Root = n, false, 0
	s.Flow, s.Upstream, s.End = stretched(s.Flow, len(n.Edges)), stretched(s.Upstream, len(n.Edges)), stretched(s.End, len(n.Edges))
	s.runOf, s.pipeOf = stretched(s.runOf, len(n.Edges)), stretched(s.pipeOf, len(n.Edges))
	s.split(n.Edges)
	s.pipes = s.pipes[:0]
	for i := range s.runs {
		s.fill(i)
	}
}

// stretched is a slice of n elements, all nought, in the room of another where
// that is enough.
func stretched[T int | float64 | bool](list []T, n int) []T {
	if cap(list) < n {
		return make([]T, n)
	}
	list = list[:n]
	clear(list)
	return list
}

// split finds the runs: an edge goes on with the run that feeds it where that
// is all that feeds it.
func (s *Solver) split(edges []Edge) {
	const none, many = -1, -2
	feeder := s.pipeOf // borrowed: it is filled later
	for i := range feeder {
		feeder[i] = none
	}
	s.runs = s.runs[:0]
	for i := range edges {
		e := &edges[i]
		if e.Dead {
			s.runOf[i] = none
			continue
		}
		from := feeder[i]
		if e.Leaf || from < 0 || edges[from].Wye != nil {
			s.runOf[i] = len(s.runs)
			s.runs = append(s.runs, run{head: i, leaf: e.Leaf})
		} else {
			s.runOf[i] = s.runOf[from]
		}
		if e.Down >= 0 {
			if feeder[e.Down] == none {
				feeder[e.Down] = i
			} else {
				feeder[e.Down] = many
			}
		}
	}
}

// fill adds up the losses of a run and finds what it empties into.
func (s *Solver) fill(i int) {
	r := &s.runs[i]
	r.pipes[0] = len(s.pipes)
	for at := r.head; ; {
		e := &s.net.Edges[at]
		r.quad += e.Quad
		r.wye = e.Wye
		if e.Fric != 0 {
			s.addPipe(e, r.pipes[0])
		}
		s.pipeOf[at] = len(s.pipes) - 1
		r.down = -1
		if e.Down < 0 {
			break
		}
		if r.down = s.runOf[e.Down]; r.down != i {
			break
		}
		at = e.Down
	}
	r.pipes[1] = len(s.pipes)
}

// addPipe adds an edge's friction to the run whose pipes start at first.
func (s *Solver) addPipe(e *Edge, first int) {
	if n := len(s.pipes); n > first && s.pipes[n-1].re == e.Re && s.pipes[n-1].rel == e.Rel {
		s.pipes[n-1].fric += e.Fric
		return
	}
	root := e.Root
	if root == 0 {
		root = usualRoot
	}
	s.pipes = append(s.pipes, runPipe{fric: e.Fric, re: e.Re, rel: e.Rel, root: root})
}

// lose finds what a run loses at its flow, and the slope of that.
func (s *Solver) lose(r *run) {
	size := math.Abs(r.flow)
	k, bend, viscous := r.quad, 0.0, 0.0
	pipes := s.pipes[r.pipes[0]:r.pipes[1]]
	for i := range pipes {
		p := &pipes[i]
		re := p.re * size
		if re < least {
			// so near to rest that the factor would overflow: laminar, 64/Re
			p.f, p.rise = 0, 0
			viscous += p.fric * 64 / p.re
			continue
		}
		var rise float64
		p.f, rise, p.root = air.FactorFrom(p.root, re, p.rel)
		p.rise = rise * p.re
		k += float64(p.fric * p.f)
		bend += p.fric * p.rise
	}
	r.at = r.flow
	r.drop = (viscous + k*size) * r.flow
	r.slope = viscous + 2*k*size + bend*size*size
}

// spell writes out the flow and the pressures of each edge of a run, from its
// upstream end on.
func (s *Solver) spell(r *run) {
	press := r.above
	size := math.Abs(r.flow)
	for at, of := r.head, s.runOf[r.head]; ; {
		e := &s.net.Edges[at]
		s.Flow[at], s.Upstream[at] = r.flow, press
		if e.Down < 0 || s.runOf[e.Down] != of {
			s.End[at] = r.joins()
			return
		}
		k := e.Quad
		if e.Fric != 0 {
			p := &s.pipes[s.pipeOf[at]]
			if p.f == 0 {
				press -= e.Fric * 64 / e.Re * r.flow
			} else {
				k += float64(e.Fric * (p.f + p.rise*(size-math.Abs(r.at))))
			}
		}
		press -= k * size * r.flow
		s.End[at] = press
		at = e.Down
	}
}
