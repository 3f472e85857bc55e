package shop

import (
	"cmp"
	"fmt"
	"slices"
	"sort"

	"dustbook/plan/unit"
)

// gather puts what joins and leaks in order along the duct, and makes one
// place of places that are next to the same.
func (d *Duct) gather() {
	var at []*unit.Length
	for _, other := range d.Joined {
		at = append(at, &other.JoinAt)
	}
	for _, leak := range d.Leaks {
		at = append(at, &leak.Where)
	}
	slices.SortStableFunc(at, func(a, b *unit.Length) int { return cmp.Compare(*a, *b) })
	last := unit.Length(0)
	for _, place := range at {
		switch {
		case *place >= d.Length:
			*place = d.Length
		case *place-last <= unit.Length(samePlace):
			*place = last
		case d.Length-*place <= unit.Length(samePlace):
			*place = d.Length
		}
		last = *place
	}
	slices.SortStableFunc(d.Joined, func(a, b *Duct) int { return cmp.Compare(a.JoinAt, b.JoinAt) })
}

// cut cuts a duct into stretches wherever air comes in between its ends, and
// gives what joins and leaks the node it does so at: node 0 is the upstream
// end, node i the end of stretch i.
func (d *Duct) cut() {
	at := []unit.Length{0, d.Length}
	for _, other := range d.Joined {
		at = append(at, other.JoinAt)
	}
	for _, leak := range d.Leaks {
		at = append(at, leak.Where)
	}
	slices.Sort(at)
	if at = slices.Compact(at); len(at) == 1 {
		at = append(at, d.Length) // a duct of no length is one stretch all the same
	}
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
	for _, other := range d.Joined {
		other.JoinNode, _ = slices.BinarySearch(at, other.JoinAt)
	}
	for _, leak := range d.Leaks {
		leak.Node = len(d.Stretches) // at the downstream end, behind any gate
		if leak.Where < d.Length {
			leak.Node, _ = slices.BinarySearch(at, leak.Where)
		}
	}
}

// stretchAt is the stretch that holds a place; at a cut, the one upstream of
// it, so that a gate shuts what comes before it.
func (d *Duct) stretchAt(place unit.Length) *Stretch {
	i := sort.Search(len(d.Stretches), func(i int) bool { return place <= d.Stretches[i].To+unit.Length(samePlace) })
	return d.Stretches[min(i, len(d.Stretches)-1)]
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
	// a duct may join at the very end of the next, whose air then goes on
	for d := s.Duct; d.Into != nil; d = d.Into {
		if d.JoinNode < len(d.Into.Stretches) {
			return d.Into.Stretches[d.JoinNode]
		}
	}
	return nil
}

// Path is the way from a port to its collector, stretch by stretch; empty
// where no duct serves the port.
func (p *Port) Path() []*Stretch {
	if p.Duct == nil {
		return nil
	}
	var path []*Stretch
	for s := p.Duct.Stretches[0]; s != nil; s = s.Below() {
		path = append(path, s)
	}
	return path
}
