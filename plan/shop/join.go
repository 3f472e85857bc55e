package shop

import (
	"cmp"
	"fmt"
	"slices"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// join is what the file says of where a duct joins, kept until the duct it
// joins is known.
type join struct {
	s     *scope
	duct  *Duct
	entry Field[unit.Angle]
	joins Field[unit.Length]
}

// resolve turns names into things, finds where ducts join and cuts them into
// stretches.
func (r *reader) resolve() {
	for _, f := range r.pending {
		f()
	}
	r.placeInRooms()
	if !r.findCollectors() {
		return
	}
	for _, j := range r.joins {
		r.locate(j)
	}
	if len(r.problems) > 0 {
		return // stretches would be cut from a file that is wrong anyway
	}
	for _, d := range r.shop.Ducts {
		for _, other := range r.shop.Ducts {
			if other.Into == d {
				d.Joined = append(d.Joined, other)
			}
		}
		slices.SortStableFunc(d.Joined, func(a, b *Duct) int { return cmp.Compare(a.JoinAt, b.JoinAt) })
	}
	for _, j := range r.joins {
		r.angle(j)
	}
	for _, d := range r.shop.Ducts {
		d.cut()
	}
}

// placeInRooms finds the room of whatever only says where it stands.
func (r *reader) placeInRooms() {
	in := func(place Field[Point]) *Room {
		if place.Known() {
			for _, room := range r.shop.Rooms {
				if room.Holds(place.V) {
					return room
				}
			}
		}
		return nil
	}
	for _, m := range r.shop.Machines {
		if m.Room == nil {
			m.Room = in(m.Place)
		}
	}
	for _, c := range r.shop.Collectors {
		if c.Room == nil {
			c.Room = in(c.Place)
		}
	}
}

// findCollectors follows each duct to its collector; a loop is a problem.
func (r *reader) findCollectors() bool {
	sound := true
	reported := map[*Duct]bool{}
	for _, d := range r.shop.Ducts {
		seen := []*Duct{}
		at := d
		for at.Into != nil && !slices.Contains(seen, at) {
			seen = append(seen, at)
			at = at.Into
		}
		if i := slices.Index(seen, at); i >= 0 {
			sound = false
			if loop := seen[i:]; !reported[loop[0]] {
				path := ""
				for _, member := range loop {
					reported[member] = true
					path += entry.Quote(member.Name) + " → "
				}
				r.problem(d.To.At, "a loop: "+path+entry.Quote(loop[0].Name), "one tree for each collector: every duct empties towards a collector", "let one of them empty into the collector, or into a duct nearer to it")
			}
			continue
		}
		if at.Collector == nil {
			sound = false // its "to" names nothing, which has been said
			continue
		}
		d.Collector = at.Collector
	}
	return sound
}

// locate finds where a duct joins the one it empties into.
func (r *reader) locate(j join) {
	d, into := j.duct, j.duct.Into
	if into == nil {
		if j.joins.Known() {
			r.problem(j.joins.At, "joins on a duct that empties into a collector", "joins only with a duct in to", "leave out joins")
		}
		return
	}
	if into.Length <= 0 || d.Length <= 0 {
		return
	}
	reach := factor("join reach").Number("value") / 1000
	switch {
	case j.joins.Known():
		d.JoinAt = j.joins.V
		if unit.Compare(float64(d.JoinAt), float64(into.Length)) > 0 {
			r.problem(j.joins.At, "joins = "+entry.Quote(unit.Run.Print(r.shop.Units, d.JoinAt)), fmt.Sprintf("a place on %s, which is %s long", entry.Quote(into.Name), unit.Run.Print(r.shop.Units, into.Length)), "measure from its upstream end")
		}
		if d.Route != nil && into.Route != nil {
			if off := distance(d.Route[len(d.Route)-1], Along(into.Route, d.JoinAt)); off > reach {
				r.problem(j.joins.At, fmt.Sprintf("joins %s from where the route ends", unit.Run.Print(r.shop.Units, unit.Length(off))), "joins and route to name one place", "leave out joins: the route says it")
			}
		}
	case d.Route != nil && into.Route != nil:
		end := d.Route[len(d.Route)-1]
		off, along, _ := nearestOn(into.Route, end)
		if off > reach {
			at := Along(into.Route, unit.Length(along))
			r.problem(r.routeEnd(j.s), fmt.Sprintf("the route of %s, which ends %s from %s", entry.Quote(d.Name), unit.Run.Print(r.shop.Units, unit.Length(off)), entry.Quote(into.Name)),
				"a last point on the route of the duct named in to, within "+r.reachText(), "end the route at "+r.spotText(at))
		}
		d.JoinAt = unit.Length(along)
	}
	if float64(d.JoinAt) < reach {
		d.JoinAt = 0
	}
	if float64(into.Length-d.JoinAt) < reach {
		d.JoinAt = into.Length
	}
}

// routeEnd is where the last point of a route stands in the file.
func (r *reader) routeEnd(s *scope) entry.Place {
	node := s.t.Get("route")
	if items, ok := node.Value.([]*entry.Node); ok && len(items) > 0 {
		return items[len(items)-1].At
	}
	return node.At
}

func (r *reader) reachText() string {
	if r.shop.Units == unit.Metric {
		return unit.Size.Print(unit.Metric, unit.Length(factor("join reach").Number("value")/1000))
	}
	return "6 in"
}

// spotText writes a spot as the file would.
func (r *reader) spotText(s Spot) string {
	in := func(m float64) string { return unit.Run.Figure(r.shop.Units, unit.Length(m)) }
	return "[" + in(s.X) + ", " + in(s.Y) + ", " + in(s.Z) + "]"
}

// angle settles the fitting a duct joins by, and the elbow that makes up
// what the route's angle leaves.
func (r *reader) angle(j join) {
	d, into := j.duct, j.duct.Into
	if into == nil {
		d.Entry = j.entry.V
		return
	}
	route, known := routeAngle(d, into)
	inLine := d.JoinAt == 0 && len(into.Serves) == 0 && alone(d, into)
	d.Entry = j.entry.V
	if !j.entry.Known() {
		d.Entry = r.likelyEntry(j.s, route, known, inLine)
	}
	d.Wye = !inLine
	if left := route - d.Entry; known {
		if left < 0 {
			left = -left
		}
		if float64(left) >= factor("least elbow").Number("value") {
			d.Turns = append(d.Turns, Turn{Angle: left, At: d.Length, Join: true})
		}
	}
}

// likelyEntry is the fitting taken where the file does not name one.
func (r *reader) likelyEntry(s *scope, route unit.Angle, known, inLine bool) unit.Angle {
	least, widest := factor("least elbow"), factor("widest route entry")
	if inLine || known && float64(route) < least.Number("value") {
		return 0
	}
	row := factor("wye angle")
	angle := unit.Angle(row.Number("value"))
	if known && float64(route) <= widest.Number("value") {
		angle, row = route, widest
	}
	s.assume("entry", unit.Degrees.Print(r.shop.Units, angle), &Row{Basis: row.Basis})
	return angle
}

// routeAngle is the angle at which a duct's route meets the other's, where
// both have routes.
func routeAngle(d, into *Duct) (unit.Angle, bool) {
	if d.Route == nil || into.Route == nil {
		return 0, false
	}
	_, _, segment := nearestOn(into.Route, Along(into.Route, d.JoinAt))
	if d.JoinAt > 0 && segment+1 < len(into.Route) {
		// at a corner of the other duct, what counts is where it goes on to
		if corner := into.Route[segment]; distance(corner, Along(into.Route, d.JoinAt)) < 1e-6 {
			segment++
		}
	}
	n := len(d.Route)
	return Turned(d.Route[n-2], d.Route[n-1], into.Route[segment-1], into.Route[segment]), true
}

// alone reports whether a duct is the only one that joins where it does.
func alone(d, into *Duct) bool {
	for _, other := range into.Joined {
		if other != d && other.JoinAt == d.JoinAt {
			return false
		}
	}
	return true
}
