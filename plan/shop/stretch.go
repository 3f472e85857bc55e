package shop

import (
	"cmp"
	"fmt"
	"slices"

	"dustbook/plan/unit"
)

// cut cuts a duct into stretches wherever air comes in between its ends, and
// gives what joins and leaks the node it does so at: node 0 is the upstream
// end, node i the end of stretch i.
func (d *Duct) cut() {
	at := []unit.Length{0}
	add := func(place unit.Length) {
		if place > 0 && place < d.Length {
			at = append(at, place)
		}
	}
	for _, other := range d.Joined {
		add(other.JoinAt)
	}
	for _, leak := range d.Leaks {
		add(leak.Where)
	}
	at = append(at, d.Length)
	slices.Sort(at)
	at = slices.Compact(at)
	for i := 1; i < len(at); i++ {
		s := &Stretch{Duct: d, Number: i, From: at[i-1], To: at[i]}
		if d.Route != nil {
			s.Rises = rises(Part(d.Route, s.From, s.To))
		}
		d.Stretches = append(d.Stretches, s)
	}
	for _, turn := range d.Turns {
		s := d.stretchAt(turn.At)
		s.Turns = append(s.Turns, turn)
	}
	slices.SortStableFunc(d.Gates, func(a, b *Gate) int { return cmp.Compare(a.Where, b.Where) })
	for _, gate := range d.Gates {
		gate.Stretch = d.stretchAt(gate.Where)
		gate.Stretch.Gates = append(gate.Stretch.Gates, gate)
	}
	node := func(place unit.Length) int { i, _ := slices.BinarySearch(at, place); return i }
	for _, other := range d.Joined {
		other.JoinNode = node(other.JoinAt)
	}
	for _, leak := range d.Leaks {
		leak.Node = node(leak.Where)
	}
}

// stretchAt is the stretch that holds a place; at a cut, the one upstream of
// it, so that a gate shuts what comes before it.
func (d *Duct) stretchAt(place unit.Length) *Stretch {
	for _, s := range d.Stretches {
		if place <= s.To {
			return s
		}
	}
	return d.Stretches[len(d.Stretches)-1]
}

// Name is the stretch's name: the duct's, with its number where the duct has
// several.
func (s *Stretch) Name() string {
	if len(s.Duct.Stretches) == 1 {
		return s.Duct.Name
	}
	return fmt.Sprintf("%s %d", s.Duct.Name, s.Number)
}

// Below is the stretch that a stretch empties into; nil at the collector.
func (s *Stretch) Below() *Stretch {
	if !s.Last() {
		return s.Duct.Stretches[s.Number]
	}
	if into := s.Duct.Into; into != nil {
		if s.Duct.JoinNode < len(into.Stretches) {
			return into.Stretches[s.Duct.JoinNode]
		}
		// it joins at the very end of the other duct
		return (&Stretch{Duct: into, Number: len(into.Stretches)}).Below()
	}
	return nil
}
