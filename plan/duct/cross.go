package duct

import "math"

// Crossing is one flow at which a tree draws what the root offers.
type Crossing struct {
	Flow    float64 // m³/s
	Suction float64 // Pa at the root
	Stable  bool    // the tree's demand rises faster there than the offer
}

// Crossings finds every crossing within the root's range, in order of flow.
// The offer is compared with the demand at samples between the root's ends;
// where the two come near without a change of sign, the nearest place between
// is searched, so that a pair of crossings is found as well.
func (s *Solver) Crossings(root Root) ([]Crossing, bool) {
	low, high := root.Range()
	const samples = 192
	at := make([]float64, samples+1)
	gap := make([]float64, samples+1)
	sound := true
	excess := func(q float64) float64 {
		demand, ok := s.At(q)
		sound = sound && ok
		offer, _ := root.Suction(q)
		return offer - demand
	}
	for i := range at {
		at[i] = low + (high-low)*float64(i)/samples
		gap[i] = excess(at[i])
	}
	var found []Crossing
	keep := func(q float64, stable bool) {
		p, _ := root.Suction(q)
		found = append(found, Crossing{q, p, stable})
	}
	for i := range at {
		if gap[i] == 0 {
			keep(at[i], i == 0 || gap[i-1] > 0)
			continue
		}
		left, right := max(i-1, 0), min(i+1, samples)
		if nears(gap[left], gap[i], gap[right]) && (i == 0 || gap[i] != gap[left]) {
			if q, between := touch(excess, at[left], at[right], gap[i] > 0); between {
				// a pair hidden between samples: one on each side of the touch
				up := gap[i] < 0
				keep(bisect(excess, at[left], q), !up)
				keep(bisect(excess, q, at[right]), up)
				continue
			}
		}
		if gap[i]*gap[right] < 0 {
			keep(bisect(excess, at[i], at[right]), gap[i] > 0)
		}
	}
	return found, sound
}

// nears reports whether the middle of three gaps of one sign is the smallest;
// at an end of the range, it and its one neighbour.
func nears(a, b, c float64) bool {
	return a*b > 0 && b*c > 0 && math.Abs(b) <= math.Abs(a) && math.Abs(b) <= math.Abs(c)
}

// touch searches between two places for the least gap, and reports whether
// the sign changes there.
func touch(excess func(float64) float64, low, high float64, positive bool) (float64, bool) {
	size := func(q float64) float64 {
		if v := excess(q); positive {
			return v
		} else {
			return -v
		}
	}
	for range 60 {
		a, b := low+(high-low)/3, high-(high-low)/3
		va, vb := size(a), size(b)
		if va <= 0 {
			return a, true
		}
		if vb <= 0 {
			return b, true
		}
		if va < vb {
			high = b
		} else {
			low = a
		}
	}
	return 0, false
}

// bisect narrows down a change of sign to the last digits.
func bisect(excess func(float64) float64, low, high float64) float64 {
	atLow := excess(low)
	for range 100 {
		middle := (low + high) / 2
		if middle <= low || middle >= high {
			break
		}
		if v := excess(middle); v == 0 {
			return middle
		} else if v*atLow < 0 {
			high = middle
		} else {
			low = middle
		}
	}
	return (low + high) / 2
}
