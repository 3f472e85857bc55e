package duct

import "math"

// The first guess: every loss taken as a square, with the friction factor at
// a usual speed. Then a tree adds up exactly by conductances, √(Pa) for a
// flow, as resistors do.

// conduct passes from the leaves to the root: the conductance of each run
// with all that feeds it, in (m³/s)/√Pa. It returns that of the whole.
func (s *Solver) conduct() (whole float64) {
	for i := range s.runs {
		s.runs[i].sumB = 0
	}
	for i := range s.runs {
		r := &s.runs[i]
		k := r.quad
		pipes := s.pipes[r.pipes[0]:r.pipes[1]]
		for j := range pipes {
			k += pipes[j].fric / (pipes[j].root * pipes[j].root)
		}
		if r.leaf {
			r.b = 1 / math.Sqrt(max(k, 1e-12))
		} else {
			r.b = 1 / math.Sqrt(max(k, 0)+1/(r.sumB*r.sumB))
		}
		if r.down < 0 {
			whole += r.b
		} else {
			s.runs[r.down].sumB += r.b
		}
	}
	return whole
}

// share shares a total out from the root to the leaves by conductances.
func (s *Solver) share(total, whole float64) {
	for i := len(s.runs) - 1; i >= 0; i-- {
		r := &s.runs[i]
		if r.down < 0 {
			r.flow = total * r.b / whole
		} else {
			below := &s.runs[r.down]
			r.flow = below.flow * r.b / below.sumB
		}
	}
}

// offered is the flow at which a conductance draws what a falling root
// offers, to a hundredth or so. Where that is no flow inwards the guess stays.
func offered(root Root, conductance, guess float64) float64 {
	const fair = 0.05
	k := 1 / (conductance * conductance)
	q, low, high := guess, 0.0, math.Inf(1)
	for range 20 {
		p, slope := root.Suction(q)
		miss := p - k*q*q
		if miss > 0 {
			low = q
		} else {
			high = q
		}
		next := q - miss/(slope-2*k*q)
		if math.Abs(next-q) <= fair*q {
			return next
		}
		if q = inside(next, low, high); !(q > 0) {
			return guess
		}
	}
	return guess
}
