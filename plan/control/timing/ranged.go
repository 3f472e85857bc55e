package timing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Mend is what brings what a sensor sees into its range with the least work:
// the threshold alone, then the turns, then both. Nothing of it serves where
// Turns is nought: then it takes another sensor or a contact of the starter.
type Mend struct {
	Turns     int          // through the sensor then
	Moves     bool         // the threshold has to be set anew, into Low to High
	Low, High unit.Current // of the conductor, with these turns
}

// ranged holds what the sensor sees, turns counted, against its range: what
// has to act is the lesser of the current idling and the threshold, without a
// threshold the most where practice puts one; the most there is is the
// nameplate's current where it is given.
func (x *Threshold) ranged(t *shop.Trigger) Stand {
	if !t.Range.Known() {
		return NoCurrent
	}
	turns := unit.Current(x.Turns)
	acts := x.Sensed.On
	if x.Set.Known() {
		acts = min(acts, x.Set.V)
	} else if _, _, high := x.Sensed.Band(); x.Sensed.Usable() {
		acts = high
	}
	x.Sees = unit.SixOf(turns * acts)
	if unit.Compare(float64(x.Sees), float64(t.Range.V.Low)) < 0 {
		x.Mend = x.mend(t)
		return BelowRange
	}
	if all := unit.SixOf(turns * mostOf(t, x.Sensed)); unit.Compare(float64(all), float64(t.Range.V.High)) > 0 {
		x.Sees, x.Mend = all, x.mend(t)
		return AboveRange
	}
	return NoCurrent
}

// mostOf is the most current there is in the conductor as far as the file
// tells.
func mostOf(t *shop.Trigger, s Sensed) unit.Current {
	if t.Machine != nil && t.Machine.Amps.Known() {
		return max(s.On, t.Machine.Amps.V)
	}
	return s.On
}

// BandOf is where a threshold is put by common practice and within the range
// of a sensor with so many turns; false where that leaves no place.
func (s Sensed) BandOf(r shop.Field[shop.CurrentRange], turns int) (low, best, high unit.Current, ok bool) {
	low, best, high = s.Band()
	if r.Known() {
		n := unit.Current(turns)
		low, high = max(low, unit.SixOf(r.V.Low/n)), min(high, unit.SixOf(r.V.High/n))
	}
	return low, min(max(best, low), high), high, unit.Compare(float64(low), float64(high)) <= 0
}

// mend looks for the least work that lets the sensor see what it has to: the
// turns as they are, those nearest that serve the threshold as it is set, then
// those nearest that serve another.
func (x *Threshold) mend(t *shop.Trigger) Mend {
	best := Mend{}
	for _, turns := range x.turnsToTry(t) {
		low, _, high, ok := x.Sensed.BandOf(t.Range, turns)
		seen := unit.SixOf(unit.Current(turns) * mostOf(t, x.Sensed))
		if !ok || unit.Compare(float64(seen), float64(t.Range.V.High)) > 0 {
			continue
		}
		set := float64(x.Set.V)
		m := Mend{Turns: turns, Low: low, High: high}
		m.Moves = x.Set.Known() && (unit.Compare(set, float64(low)) < 0 || unit.Compare(set, float64(high)) > 0)
		if turns == x.Turns || !m.Moves {
			return m
		}
		if best.Turns == 0 {
			best = m
		}
	}
	return best
}

// turnsToTry are the turns that may go through a sensor: as many as there are,
// then fewer, the nearest first, then more: with a turn to spare for the
// threshold as it is, for the most where practice puts one, then the nearest.
func (x *Threshold) turnsToTry(t *shop.Trigger) []int {
	list := []int{x.Turns}
	for n := x.Turns - 1; n >= 1; n-- {
		list = append(list, n)
	}
	_, _, high := x.Sensed.Band()
	for _, acts := range []unit.Current{x.Set.V, high} {
		if n := TurnsFor(acts, t.Range.V.Low); n > x.Turns {
			list = append(list, n)
		}
	}
	for n := x.Turns + 1; n <= int(share("turns most")); n++ {
		list = append(list, n)
	}
	return list
}

// TurnsFor is how many turns of a conductor through a sensor bring a current
// up to the least that it acts on, with turns to spare: 1 where the current
// does it by itself, nought where more turns than practice winds would be
// needed.
func TurnsFor(current, least unit.Current) int {
	if unit.AtLeast(float64(current), float64(least)) {
		return 1
	}
	turns := math.Ceil(unit.Six(float64(least)/float64(current))) + share("turns to spare")
	if current <= 0 || turns > share("turns most") {
		return 0
	}
	return int(turns)
}
