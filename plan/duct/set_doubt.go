package duct

import (
	"cmp"
	"context"
	"runtime"
	"slices"
	"sync"
)

// mostBands is how many sets have the bands of their figures reckoned.
const mostBands = 400

// doubt notes what a set rests on that keeps it thin: all but the bands.
func (s *Set) doubt(x *trial, members []*member) {
	s.Thin = s.Thin.with(ByClaims, x.fans[0].Claimed).with(ByFilter, FilterOpen(x.tree.Collector))
	for _, m := range members {
		for _, p := range m.ports {
			s.Thin = s.Thin.with(ByNeed, p.port.Flow > 0 && p.port.Need.Mark.Weak())
		}
		for i := range m.path {
			s.Thin = s.Thin.with(BySpeed, weakNeed(members, m.path[i].part))
		}
	}
}

// weakNeed reports whether the greatest speed that a part needs is one of
// practice.
func weakNeed(members []*member, part int) (weak bool) {
	most := -1.0
	for _, m := range members {
		for i := range m.path {
			if at := &m.path[i]; at.part == part && float64(at.need) > most {
				most, weak = float64(at.need), at.weak
			}
		}
	}
	return weak
}

// bands reckons the bands of the sets that work beyond every other doubt: those
// of one and two machines first, then the largest, so many at most.
func (k *Reckoning) bands(ctx context.Context, x *Sets, most int) error {
	var sure []*Set
	for _, s := range x.All {
		if s.Works && len(s.Thin) == 0 {
			sure = append(sure, s)
		}
	}
	slices.SortStableFunc(sure, func(a, b *Set) int { return cmp.Compare(bandTurn(a), bandTurn(b)) })
	for _, s := range sure[min(most, len(sure)):] {
		s.Thin = Doubts{NoBand}
	}
	work := make(chan *Set)
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for s := range work {
				if ctx.Err() == nil && k.straddles(s) {
					s.Thin = Doubts{ByBand}
				}
			}
		})
	}
	for _, s := range sure[:min(most, len(sure))] {
		work <- s
	}
	close(work)
	group.Wait()
	return ctx.Err()
}

// bandTurn is where a set stands in the row for bands.
func bandTurn(s *Set) int {
	if len(s.Machines) <= 2 {
		return -1 << 10
	}
	return -len(s.Machines)
}

// straddles reports whether a need of a set is not surely met: with the filter
// in one state it does not lie below the band of what is got, or there is no
// band.
func (k *Reckoning) straddles(s *Set) bool {
	use := &Use{Name: "set", Kind: Together, Machines: s.Machines, Open: openFor(s.Machines, nil)}
	for _, v := range s.On {
		t := k.TreeOf(v.Collector)
		r := t.Solve(use, v.Filter)
		spread := t.Spread(r)
		if r.AirDoubts(spread).And(r.DustDoubts(spread)).Has(ByBand) {
			return true
		}
	}
	return false
}
