package shop

import (
	"slices"

	"dustbook/plan/entry"
)

// resolve turns names into things, finds where ducts join and cuts them into
// stretches.
func (r *reader) resolve() {
	for _, f := range r.pending {
		f()
	}
	r.placeInRooms()
	r.findCollectors()
	for _, j := range r.joins {
		r.locate(j)
	}
	if len(r.problems) > 0 {
		return // stretches would be cut from a file that is wrong anyway
	}
	for _, d := range r.shop.Ducts {
		if d.Into != nil {
			d.Into.Joined = append(d.Into.Joined, d)
		}
	}
	for _, d := range r.shop.Ducts {
		d.gather()
	}
	at := map[meeting]int{}
	for _, j := range r.joins {
		at[meeting{j.duct.Into, j.duct.JoinAt}]++
	}
	for _, j := range r.joins {
		r.angle(j, at[meeting{j.duct.Into, j.duct.JoinAt}] == 1)
	}
	for _, d := range r.shop.Ducts {
		d.cut()
	}
}

// placeInRooms finds the room of whatever only says where it stands.
func (r *reader) placeInRooms() {
	for _, m := range r.shop.Machines {
		if m.Room == nil {
			m.Room = r.roomAt(m.Place)
		}
	}
	for _, c := range r.shop.Collectors {
		if c.Room == nil {
			c.Room = r.roomAt(c.Place)
		}
	}
}

// roomAt is the first room whose outline holds a place.
func (r *reader) roomAt(place Field[Point]) *Room {
	if !place.Known() {
		return nil
	}
	for _, room := range r.shop.Rooms {
		if room.Holds(place.V) {
			return room
		}
	}
	return nil
}

// findCollectors follows each duct to its collector; a loop is a problem. A
// duct whose way ends at a name that means nothing has no collector: that is
// a problem already.
func (r *reader) findCollectors() {
	order := map[*Duct]int{}
	for i, d := range r.shop.Ducts {
		order[d] = i
	}
	done := map[*Duct]bool{}
	for _, d := range r.shop.Ducts {
		var way []*Duct
		place := map[*Duct]int{}
		at := d
		for ; at != nil && !done[at]; at = at.Into {
			if from, again := place[at]; again {
				r.loop(way[from:], order)
				break
			}
			place[at] = len(way)
			way = append(way, at)
		}
		var collector *Collector
		switch {
		case at != nil && done[at]:
			collector = at.Collector
		case at == nil && len(way) > 0:
			collector = way[len(way)-1].Collector
		}
		for _, member := range way {
			done[member] = true
			member.Collector = collector
		}
	}
}

// mostShown of a loop's ducts stand in its message.
const mostShown = 6

// loop reports ducts that empty into each other in a ring, at the one that
// stands first in the file.
func (r *reader) loop(ring []*Duct, order map[*Duct]int) {
	first := 0
	for i, d := range ring {
		if order[d] < order[ring[first]] {
			first = i
		}
	}
	ring = slices.Concat(ring[first:], ring[:first])
	path := ""
	for i, d := range ring {
		if i == mostShown {
			path += "… → "
			break
		}
		path += entry.Quote(d.Name) + " → "
	}
	if r.twice[ring[0].Name] {
		return // which duct is meant is a problem of its own
	}
	r.problem(ring[0].To.At, "a loop: "+path+entry.Quote(ring[0].Name), "one tree for each collector: every duct empties towards a collector", "let one of them empty into the collector, or into a duct nearer to it")
}
