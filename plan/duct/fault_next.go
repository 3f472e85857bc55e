package duct

// Next is the gauge to read after some readings: the one that leaves the
// fewest sides, and then the fewest causes, whichever way it reads. What a
// water gauge reads at a tap, a hood or the filter goes before the fan's three
// readings and the pitot tube. It is false where none of them would tell more.
func (f *Finder) Next(shown ...Shown) (Gauge, bool) {
	for _, plain := range []bool{true, false} {
		if g, found := f.next(plain, shown); found {
			return g, true
		}
	}
	return Gauge{}, false
}

// next is the best gauge that a plain water gauge can read, or of the rest.
func (f *Finder) next(plain bool, shown []Shown) (best Gauge, found bool) {
	stand, causes := f.count(shown)
	sides := len(stand)
	for _, g := range f.Gauges {
		if taken(g, shown) || (g.Kind != AcrossFan && g.Kind != SpeedGauge) != plain {
			continue
		}
		s, c := f.leaves(g, shown)
		if s < sides || s == sides && c < causes {
			best, sides, causes, found = g, s, c, true
		}
	}
	return best, found
}

func taken(g Gauge, shown []Shown) bool {
	for _, s := range shown {
		if s.At == g {
			return true
		}
	}
	return false
}

// leaves is how many sides and causes a further gauge leaves at most.
func (f *Finder) leaves(g Gauge, shown []Shown) (sides, causes int) {
	for _, sign := range []Sign{Above, Below} {
		stand, left := f.count(append(shown[:len(shown):len(shown)], Shown{g, sign}))
		sides, causes = max(sides, len(stand)), max(causes, left)
	}
	return sides, causes
}
