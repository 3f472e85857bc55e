package duct

// tail is the falling end of a fan's curve, with its highest pressure held
// level before it: what draws on a tree that can only meet the curve there.
type tail struct {
	fan  *Fan
	from float64 // m³/s
}

// Suction is what the fan offers, and its slope.
func (t tail) Suction(q float64) (p, slope float64) {
	if q < t.from {
		p, _ = t.fan.Suction(t.from)
		return p, 0
	}
	return t.fan.Suction(q)
}

// Range is that of the fan.
func (t tail) Range() (low, high float64) { return t.fan.Range() }

// Falls is true: that is what the tail is for.
func (t tail) Falls() bool { return true }

// onTail reports whether a tree can meet a curve that rises somewhere only
// where it falls to its end. Between two points of the curve it offers no less
// than at the lower one, less what the fan's own parts take at the far one; the
// tree draws no more than at the far one. Where the first is more, the two do
// not meet in between.
func (s *Solver) onTail(fan *Fan) (root tail, only bool) {
	cubic, is := fan.curve.(*Cubic)
	if !is || s.net.splits {
		return tail{}, false
	}
	x, y := cubic.Points()
	from := len(y) - 1
	for from > 0 && y[from] <= y[from-1] {
		from--
	}
	if from == len(y)-1 {
		return tail{}, false
	}
	for i := range from {
		separator, filter, outlet := fan.Charges(x[i+1])
		demand, ok := s.At(x[i+1])
		if offer := min(y[i], y[i+1])*fan.rated.Density - separator - filter - outlet; !ok || offer <= demand {
			return tail{}, false
		}
	}
	return tail{fan, x[from]}, true
}
