package drawing

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// openWay finds the stretches through which air is drawn in a use: an open
// end lies upstream, and no shut gate stands between it and a collector that
// runs.
type openWay struct {
	use   *duct.Use
	fed   map[*shop.Stretch]bool
	known map[*shop.Stretch]bool
}

// openStretches are the stretches on the open way of a use, on the
// collectors that run in it.
func openStretches(s *shop.Shop, use *duct.Use, runs map[*shop.Collector]bool) map[*shop.Stretch]bool {
	open := map[*shop.Stretch]bool{}
	if use == nil || use.Kind == duct.DuctOff {
		return open
	}
	w := &openWay{use: use, fed: map[*shop.Stretch]bool{}, known: map[*shop.Stretch]bool{}}
	for _, d := range s.Ducts {
		if !runs[d.Collector] {
			continue
		}
		for _, stretch := range d.Stretches {
			open[stretch] = w.feeds(stretch) && w.leads(stretch.Below())
		}
	}
	return open
}

// feeds reports whether air can leave a stretch at its downstream end.
func (w *openWay) feeds(s *shop.Stretch) bool {
	if w.known[s] {
		return w.fed[s]
	}
	d := s.Duct
	fed := s.Number == 1 && len(d.Serves) > 0 || s.Number > 1 && w.feeds(d.Stretches[s.Number-2])
	for _, other := range d.Joined {
		if !fed && other.JoinNode == s.Number-1 && len(other.Stretches) > 0 {
			fed = w.feeds(other.Stretches[len(other.Stretches)-1])
		}
	}
	w.known[s], w.fed[s] = true, fed && w.passes(s)
	return w.fed[s]
}

// leads reports whether no shut gate stands from a stretch on to its
// collector.
func (w *openWay) leads(s *shop.Stretch) bool {
	for ; s != nil; s = s.Below() {
		if !w.passes(s) {
			return false
		}
	}
	return true
}

// passes reports whether no gate on a stretch is shut.
func (w *openWay) passes(s *shop.Stretch) bool {
	for _, g := range s.Gates {
		if !w.use.Open[g] {
			return false
		}
	}
	return true
}
