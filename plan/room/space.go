package room

import (
	"slices"
	"strings"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Space is one air: a room with every room that stands open to it, either
// way round, in file order.
type Space struct {
	Rooms      []*shop.Room
	Volume     Figure[unit.Volume]
	Openings   Figure[unit.Area] // the free area for make-up air that its rooms state, added up
	Appliances []*shop.Appliance // that burn something
	Limit      *Limit            // the strictest of its appliances; nil where none of them has one
	Chosen     unit.Pressure     // the least depressurisation that its rooms choose; nought where none does

	// What a room air cleaner would move for the usual changes of air: from,
	// and to. Common practice.
	CleanerLeast, CleanerMost Figure[unit.Flow]
}

// Name is the names of its rooms: "Machine hall and Bench room".
func (s *Space) Name() string {
	var names []string
	for _, r := range s.Rooms {
		names = append(names, r.Name)
	}
	return strings.Join(names, " and ")
}

// Holds reports whether a room is of the space.
func (s *Space) Holds(r *shop.Room) bool { return r != nil && slices.Contains(s.Rooms, r) }

// Spaces groups the rooms of a shop by the air they share, in the order of
// their first rooms.
func Spaces(s *shop.Shop) []*Space {
	var list []*Space
	for _, r := range s.Rooms {
		if slices.ContainsFunc(list, func(space *Space) bool { return space.Holds(r) }) {
			continue
		}
		space := &Space{}
		for _, other := range s.Rooms {
			if reaches(s, r, other) {
				space.Rooms = append(space.Rooms, other)
			}
		}
		space.measure()
		space.burns(s)
		list = append(list, space)
	}
	return list
}

// reaches reports whether air passes between two rooms through open doorways.
func reaches(s *shop.Shop, from, to *shop.Room) bool {
	seen := []*shop.Room{from}
	for i := 0; i < len(seen); i++ {
		for _, next := range s.Rooms {
			joined := slices.Contains(seen[i].OpenTo, next) || slices.Contains(next.OpenTo, seen[i])
			if joined && !slices.Contains(seen, next) {
				seen = append(seen, next)
			}
		}
	}
	return slices.Contains(seen, to)
}

// measure adds up volume and openings.
func (s *Space) measure() {
	var volume float64
	var area unit.Area
	var lost []Missing
	stated := false
	for _, r := range s.Rooms {
		if !r.Height.Known() {
			lost = append(lost, Missing{Thing: r.Name, Field: "room.height"})
		}
		volume += float64(r.Area()) * float64(r.Height.V)
		area += r.Opening.V
		if r.Chosen.Known() && (s.Chosen == 0 || r.Chosen.V < s.Chosen) {
			s.Chosen = r.Chosen.V
		}
		stated = stated || r.Opening.Known()
	}
	s.Volume, s.Openings = known(unit.Volume(volume)), known(area)
	if len(lost) > 0 {
		s.Volume = lacking[unit.Volume](lost...)
	}
	if !stated {
		s.Openings = lacking[unit.Area](Missing{Thing: s.Name(), Field: "room.opening"})
	}
	s.CleanerLeast, s.CleanerMost = s.flowFor(cleanerLeast), s.flowFor(cleanerMost)
}

// electric is the kind of appliance that burns nothing.
const electric = "electric"

// burns finds the appliances of the space and the strictest of their limits.
func (s *Space) burns(of *shop.Shop) {
	for _, a := range of.Appliances {
		if !s.Holds(a.Room) || a.Kind == electric {
			continue
		}
		s.Appliances = append(s.Appliances, a)
		for i, l := range limits {
			if slices.Contains(l.Kinds, a.Kind) && (s.Limit == nil || l.Press < s.Limit.Press) {
				s.Limit = &limits[i]
			}
		}
	}
}

// Changes is how many times an hour a flow changes the air of the space:
// n = 3600 Q d/V, for a flow that runs a share d of the time. Range: flow and
// share not below zero.
func (s *Space) Changes(q unit.Flow, duty float64) Figure[float64] {
	if !s.Volume.Known() {
		return lacking[float64](s.Volume.Missing...)
	}
	return known(float64(q) * float64(oneHour) * duty / float64(s.Volume.V))
}

// flowFor is the flow that changes the air this many times an hour.
func (s *Space) flowFor(changes float64) Figure[unit.Flow] {
	if !s.Volume.Known() {
		return lacking[unit.Flow](s.Volume.Missing...)
	}
	return known(unit.Flow(changes * float64(s.Volume.V) / float64(oneHour)))
}
