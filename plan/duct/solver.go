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

	drop, slope []float64 // each edge's loss at the last flow, and its slope
	a, b, g     []float64 // flow = a − b·(pressure downstream) − g·(flow of the edge downstream)
	sumA, sumB  []float64
	sumG        []float64
	rootA       float64
	rootB       float64
	none        float64 // m³/s, a flow that counts as none
	warm        bool
}

// NewSolver makes room to solve a network.
func NewSolver(n *Network) *Solver {
	room := make([]float64, 11*len(n.Edges))
	cut := func() (part []float64) { part, room = room[:len(n.Edges):len(n.Edges)], room[len(n.Edges):]; return }
	return &Solver{net: n, Flow: cut(), Upstream: cut(), End: cut(), drop: cut(), slope: cut(), a: cut(), b: cut(), g: cut(), sumA: cut(), sumB: cut(), sumG: cut()}
}

// settled is the largest change of flow, against the total, that counts as
// none; mostSteps bounds the search; flattest keeps it from dividing by nought.
const (
	settled   = 1e-13
	mostSteps = 200
	flattest  = 1e-12 // Pa/(m³/s), slope of an edge that loses nothing
)

// closure ties the root's flow to its pressure: it returns the total flow of
// the linearised tree, flow = a − b·pressure.
type closure func(a, b float64) (flow, pressure float64)

// At finds the flows for a given total, and the suction at the root that
// draws it. It reports false when it did not settle.
func (s *Solver) At(total float64) (suction float64, ok bool) {
	if total == 0 {
		s.rest()
		return 0, true
	}
	var pressure float64
	ok = s.newton(func(a, b float64) (float64, float64) {
		pressure = (a - total) / b
		return total, pressure
	}, total)
	return -pressure, ok
}

// Meet finds the flows where the tree draws what a falling root offers. The
// root is followed past its range; the caller checks the flow against it.
func (s *Solver) Meet(root Root, guess float64) (flow, suction float64, ok bool) {
	var pressure float64
	flow = guess
	ok = s.newton(func(a, b float64) (float64, float64) {
		flow = crossing(root, a, b, flow)
		pressure = (a - flow) / b
		return flow, pressure
	}, guess)
	return flow, -pressure, ok
}

// crossing solves q = a + b·suction(q) for a suction that never rises.
func crossing(root Root, a, b, q float64) float64 {
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
		if next <= low || next >= high {
			switch {
			case math.IsInf(low, -1):
				next = high - math.Max(1, math.Abs(high))
			case math.IsInf(high, 1):
				next = low + math.Max(1, math.Abs(low))
			default:
				next = (low + high) / 2
			}
		}
		if math.Abs(next-q) <= settled/10*math.Abs(next) {
			return next
		}
		q = next
	}
	return q
}

// rest puts every flow and pressure to zero.
func (s *Solver) rest() {
	clear(s.Flow)
	clear(s.Upstream)
	clear(s.End)
	s.Root, s.warm = 0, false
}

// newton repeats the linearised pass until the flows settle. Near a kink of
// the friction law, or where losses may fall with flow, full steps can swing
// to and fro; where they do not become shorter it halves the share of them
// that is taken.
func (s *Solver) newton(close closure, guess float64) bool {
	s.none = settled * math.Abs(guess)
	if !s.warm || s.net.splits {
		s.start(guess)
	}
	share, last := 1.0, math.Inf(1)
	for step := range mostSteps {
		s.gather()
		flow, pressure := close(s.rootA, s.rootB)
		s.Root = -pressure
		change := s.spread(pressure, flow, share)
		if math.IsNaN(change) {
			s.warm = false
			return false
		}
		limit := settled * math.Max(math.Abs(flow), 1e-9)
		if change <= limit || step > 20 && change <= 1e3*limit {
			s.warm = true
			return true
		}
		if step > 6 && change > 0.9*last {
			share = math.Max(share/2, 1.0/64)
		} else if share < 1 {
			share = math.Min(1, share*1.5)
		}
		last = change
	}
	s.warm = false
	return false
}

// start guesses flows: losses taken as squares with rough-pipe friction, so
// that the tree adds up exactly by conductances; then the total is shared out.
func (s *Solver) start(total float64) {
	edges := s.net.Edges
	clear(s.sumB)
	clear(s.a)
	const factor = 0.02 // any fair value: the next steps correct it
	for i := range edges {
		e := &edges[i]
		if e.Dead {
			s.b[i] = 0
			continue
		}
		r := e.Quad + e.Fric*factor
		if e.Leaf {
			s.b[i] = 1 / math.Sqrt(math.Max(r, 1e-12))
		} else {
			s.b[i] = 1 / math.Sqrt(math.Max(r, 0)+1/(s.sumB[i]*s.sumB[i]))
		}
		if e.Down >= 0 {
			s.sumB[e.Down] += s.b[i]
		}
	}
	rootC := 0.0
	for i := range edges {
		if edges[i].Down < 0 {
			rootC += s.b[i]
		}
	}
	for i := len(edges) - 1; i >= 0; i-- {
		e := &edges[i]
		switch {
		case e.Dead:
			s.Flow[i] = 0
		case e.Down < 0:
			s.Flow[i] = total * s.b[i] / rootC
		default:
			s.Flow[i] = s.Flow[e.Down] * s.b[i] / s.sumB[e.Down]
		}
	}
}

// gather passes from the leaves to the root: each edge's flow as a straight
// line in the pressure downstream of it.
func (s *Solver) gather() {
	edges := s.net.Edges
	clear(s.sumA)
	clear(s.sumB)
	clear(s.sumG)
	s.rootA, s.rootB = 0, 0
	for i := range edges {
		e := &edges[i]
		if e.Dead {
			continue
		}
		q := s.Flow[i]
		drop, slope := e.loss(q)
		// at rest a square has no slope: take that at a flow that counts as none
		slope = math.Max(slope, math.Max(2*e.Quad*s.none, flattest))
		s.drop[i], s.slope[i] = drop, slope
		if e.Leaf {
			s.a[i], s.b[i] = q-drop/slope, 1/slope
		} else {
			// what feeds it: flow = A − B·(pressure upstream)
			bent := s.bend(i, q)
			sumA, sumB := s.sumA[i]/bent, s.sumB[i]/bent
			all := 1 + slope*sumB
			s.a[i], s.b[i] = (sumA+sumB*(slope*q-drop))/all, sumB/all
		}
		s.join(i)
	}
}

// bend is by how much the flow that a node passes on counts, because the
// losses of what joins there grow with it. It is kept above zero; the flow q
// at which the lines touch stays what it was.
func (s *Solver) bend(i int, q float64) float64 {
	bent := math.Max(1+s.sumG[i], steepest)
	s.sumA[i] += (bent - 1 - s.sumG[i]) * q
	s.sumG[i] = bent - 1
	return bent
}

// steepest bounds how fast the loss of a junction may fall with flow in the
// linearised tree.
const steepest = 0.05

// join hands an edge's straight line to the edge it empties into.
func (s *Solver) join(i int) {
	e := &s.net.Edges[i]
	s.g[i] = 0
	if e.Down < 0 {
		s.rootA += s.a[i]
		s.rootB += s.b[i]
		return
	}
	if e.Wye != nil {
		own, all := s.Flow[i], s.Flow[e.Down]
		loss, byOwn, byAll := e.Wye.loss(own, all)
		d := 1 + s.b[i]*byOwn
		if d < steepest {
			d = steepest
			byOwn = (d - 1) / s.b[i]
		}
		s.a[i] = (s.a[i] - s.b[i]*(loss-byOwn*own-byAll*all)) / d
		s.b[i] /= d
		s.g[i] = s.b[i] * byAll
	}
	s.sumA[e.Down] += s.a[i]
	s.sumB[e.Down] += s.b[i]
	s.sumG[e.Down] += s.g[i]
}

// spread passes from the root to the leaves: new flows by the straight lines,
// of which each edge moves a share of the way. It returns the largest change
// of a flow, were it moved all the way.
//
// The pressure above an edge follows from what feeds it, not from the loss of
// the edge: where an inlet costs next to nothing, its flow hangs on the last
// digit of that pressure, and must still add up.
func (s *Solver) spread(rootPressure, rootFlow, share float64) float64 {
	edges := s.net.Edges
	change := 0.0
	for i := len(edges) - 1; i >= 0; i-- {
		e := &edges[i]
		if e.Dead {
			s.Flow[i] = 0
			continue
		}
		below, all := rootPressure, rootFlow
		if e.Down >= 0 {
			below, all = s.Upstream[e.Down], s.a[e.Down]
		}
		old := s.Flow[i]
		flow := s.a[i] - s.b[i]*below
		if e.Wye != nil {
			flow -= s.g[i] * all
		}
		s.a[i] = flow // what comes upstream needs it whole
		s.End[i] = below
		if e.Wye != nil {
			loss, _, _ := e.Wye.loss(flow, all)
			s.End[i] += loss
		}
		if e.Leaf {
			s.Upstream[i] = s.End[i] + s.drop[i] + s.slope[i]*(flow-old)
		} else {
			s.Upstream[i] = (s.sumA[i] - (1+s.sumG[i])*flow) / s.sumB[i]
		}
		s.Flow[i] = old + share*(flow-old)
		change = math.Max(change, math.Abs(flow-old))
	}
	return change
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
