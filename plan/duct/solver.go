package duct

import "math"

// Solver finds the flows of one network. It keeps its working space, so that
// solving again allocates nothing.
type Solver struct {
	net *Network

	Flow     []float64 // m³/s in each edge, positive towards the root
	Upstream []float64 // Pa, total gauge pressure at each edge's upstream end
	End      []float64 // Pa, total gauge pressure at each edge's downstream end, before what it joins by
	Root     float64   // Pa, suction at the root: how far it lies below the room

	runs   []run // each before the run it empties into
	pipes  []runPipe
	runOf  []int // the run of each edge, -1 where it is dead
	pipeOf []int // the last pipe up to each edge
	rootA  float64
	rootB  float64
	none   float64 // m³/s, a flow that counts as none
	warm   bool
}

// NewSolver makes room to solve a network.
func NewSolver(n *Network) *Solver {
	s := &Solver{runs: make([]run, 0, len(n.Edges)), pipes: make([]runPipe, 0, len(n.Edges))}
	s.Take(n)
	return s
}

// settled is the largest change of flow, against the total, that counts as
// none; mostSteps bounds the search; flattest keeps it from dividing by nought.
const (
	settled   = 1e-13
	mostSteps = 200
	flattest  = 1e-12 // Pa/(m³/s), slope of a run that loses nothing
)

// At finds the flows for a given total, and the suction at the root that
// draws it. It reports false when it did not settle.
func (s *Solver) At(total float64) (suction float64, ok bool) {
	if total == 0 {
		s.rest()
		return 0, true
	}
	if s.cold() {
		s.share(total, s.conduct())
	}
	_, ok = s.newton(nil, total)
	return s.Root, ok
}

// Meet finds the flows where the tree draws what a falling root offers. The
// root is followed past its range; the caller checks the flow against it.
func (s *Solver) Meet(root Root, guess float64) (flow, suction float64, ok bool) {
	if s.cold() {
		c := s.conduct()
		guess = offered(root, c, guess)
		s.share(guess, c)
	}
	flow, ok = s.newton(root, guess)
	return flow, s.Root, ok
}

// cold reports whether the flows of the last search are no start for the next.
func (s *Solver) cold() bool { return !s.warm || s.net.splits }

// rest puts every flow and pressure to zero.
func (s *Solver) rest() {
	clear(s.Flow)
	clear(s.Upstream)
	clear(s.End)
	s.Root, s.warm = 0, false
}

// newton repeats the linearised pass until the flows settle; without a root
// the total stays as it is. Near a kink of the friction law, or where losses
// may fall with flow, full steps can swing to and fro; where they do not
// become shorter it halves the share of them that is taken.
func (s *Solver) newton(root Root, total float64) (flow float64, ok bool) {
	s.none, s.warm = settled*math.Abs(total), false
	flow = total
	share, last := 1.0, math.Inf(1)
	for step := range mostSteps {
		s.gather()
		if root != nil {
			flow = crossing(root, s.rootA, s.rootB, flow)
		}
		s.Root = (flow - s.rootA) / s.rootB
		change := s.spread(-s.Root, flow, share)
		if math.IsNaN(change) {
			return flow, false
		}
		limit := settled * math.Max(math.Abs(flow), 1e-9)
		// steps shrink at least as fast as the last one did: where the next
		// would count as none, this was the last
		shrunk := step > 0 && share == 1 && change*change <= limit*last
		if change <= limit || shrunk || step > 20 && change <= 1e3*limit {
			s.warm = true
			s.spellOut()
			return flow, true
		}
		if step > 6 && change > 0.9*last {
			share = math.Max(share/2, 1.0/64)
		} else if share < 1 {
			share = math.Min(1, share*1.5)
		}
		last = change
	}
	return flow, false
}

// crossing solves q = a + b·suction(q) for a suction that never rises. A step
// that hardly moves the flow is the last: what it leaves is less by as much
// again, and the next pass starts from there.
func crossing(root Root, a, b, q float64) float64 {
	const hardly = 1e-4
	low, high := math.Inf(-1), math.Inf(1)
	for range 100 {
		p, slope := root.Suction(q)
		miss := a + b*p - q
		if miss > 0 {
			low = q
		} else {
			high = q
		}
		next := q - miss/(b*slope-1)
		if math.Abs(next-q) <= hardly*math.Abs(next) {
			return next
		}
		q = inside(next, low, high)
	}
	return q
}

// inside keeps a step within the bounds known so far; where it leaves them, it
// goes half way, or further out where there is no bound yet.
func inside(next, low, high float64) float64 {
	switch {
	case next > low && next < high:
		return next
	case math.IsInf(low, -1):
		return high - math.Max(1, math.Abs(high))
	case math.IsInf(high, 1):
		return low + math.Max(1, math.Abs(low))
	}
	return (low + high) / 2
}

// Residual is the largest pressure by which an edge's two ends differ from
// its loss, and the largest flow that goes missing at a junction.
func (s *Solver) Residual() (pressure, flow float64) {
	sum := make([]float64, len(s.net.Edges))
	for i := range s.net.Edges {
		e := &s.net.Edges[i]
		if e.Dead {
			continue
		}
		drop, _ := e.loss(s.Flow[i])
		pressure = math.Max(pressure, math.Abs(s.Upstream[i]-s.End[i]-drop))
		if e.Leaf {
			pressure = math.Max(pressure, math.Abs(s.Upstream[i]))
		} else {
			flow = math.Max(flow, math.Abs(sum[i]-s.Flow[i]))
		}
		if e.Down >= 0 {
			sum[e.Down] += s.Flow[i]
		}
	}
	return pressure, flow
}
