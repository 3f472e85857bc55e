package shop

import (
	"math"

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

// meeting is a place on a duct where others join.
type meeting struct {
	into *Duct
	at   unit.Length
}

// reach is how near a route must end to the duct it joins.
func (r *reader) reach() unit.Length {
	if r.shop.Units == unit.Metric {
		return reachMetric
	}
	return reachUS
}

var (
	reachUS     = unit.Must[unit.Length](factorText("join reach us"))
	reachMetric = unit.Must[unit.Length](factorText("join reach metric"))
)

// within reports whether a distance is within reach.
func (r *reader) within(off float64) bool { return unit.AtLeast(float64(r.reach()), off) }

// locate finds where a duct joins the one it empties into: at joins where
// that is given, else where its route's last point lies on the other's route,
// else at the other's upstream end.
func (r *reader) locate(j join) {
	d, into := j.duct, j.duct.Into
	switch {
	case into == nil:
		if j.joins.Known() && d.Collector != nil {
			r.problem(j.joins.At, "joins on a duct that empties into a collector", "joins only where to names a duct", "take joins out")
		}
	case !into.run || !d.run || r.twice[into.Name]:
		// a problem of its own
	case j.joins.Known():
		r.joinInWords(j, into)
	case d.Route != nil && into.Route != nil:
		r.joinByRoute(j, into)
	}
}

// joinInWords takes the place that joins names. Where both routes say one as
// well it must be the same.
func (r *reader) joinInWords(j join, into *Duct) {
	d, at, length := j.duct, j.joins.V, into.Length
	run := func(l unit.Length) string { return unit.Run.Print(r.shop.Units, l) }
	if unit.Compare(float64(at), float64(length)) > 0 {
		r.problem(j.joins.At, said(j.s.t.Get("joins")), "a place on "+entry.Quote(into.Name)+", which is "+run(length)+" long", "measure from its upstream end")
		return
	}
	d.JoinAt = min(at, length)
	if d.Route == nil || into.Route == nil {
		return
	}
	off, along := nearestOn(into.Route, d.Route[len(d.Route)-1])
	if apart := distance(d.Route[len(d.Route)-1], Along(into.Route, at)); r.within(off) && !r.within(apart) {
		r.problem(j.joins.At, said(j.s.t.Get("joins")), "the place where its route ends: "+run(unit.Length(along))+" along "+entry.Quote(into.Name), "take joins out: the route says it")
	}
}

// joinByRoute finds the place on the other's route where the duct's own ends.
// A place within reach of an end is taken for the end: a stub so short is the
// fitting itself.
func (r *reader) joinByRoute(j join, into *Duct) {
	d := j.duct
	off, along := nearestOn(into.Route, d.Route[len(d.Route)-1])
	at := unit.Length(along)
	if !r.within(off) {
		r.problem(r.routeEnd(j.s), "a route that ends "+unit.Run.Print(r.shop.Units, unit.Length(off))+" from "+entry.Quote(into.Name),
			"a last point on the route of "+entry.Quote(into.Name)+", within "+unit.Size.Print(r.shop.Units, r.reach()), "end the route at "+r.spotText(Along(into.Route, at)))
		return
	}
	left := into.Length - at
	switch {
	case at <= left && r.within(float64(at)):
		at = 0
	case at > left && r.within(float64(left)):
		at = into.Length
	}
	d.JoinAt = at
}

// routeEnd is where the last point of a route stands in the file.
func (r *reader) routeEnd(s *scope) entry.Place {
	items := s.t.Get("route").Value.([]*entry.Node)
	return items[len(items)-1].At
}

// spotText writes a spot as the file would.
func (r *reader) spotText(s Spot) string {
	in := func(m float64) string { return unit.Run.Figure(r.shop.Units, unit.Length(m)) }
	return "[" + in(s.X) + ", " + in(s.Y) + ", " + in(s.Z) + "]"
}

// angle settles the fitting a duct joins by, and the elbow that makes up
// what the route's angle leaves. Alone, it is the only duct to join there.
func (r *reader) angle(j join, alone bool) {
	d, into := j.duct, j.duct.Into
	d.Entry = j.entry.V
	if into == nil {
		return
	}
	route, known := routeAngle(d, into)
	inLine := d.JoinAt == 0 && len(into.Serves) == 0 && alone
	if !j.entry.Known() {
		d.Entry = r.likelyEntry(j.s, route, known, inLine)
	}
	d.Wye = !inLine
	if left := math.Abs(unit.Six(float64(route - d.Entry))); known && IsElbow(unit.Angle(left)) {
		d.Turns = append(d.Turns, Turn{Angle: unit.Angle(left), At: d.Length, Join: true})
	}
}

// likelyEntry is the fitting taken where the file does not name one.
func (r *reader) likelyEntry(s *scope, route unit.Angle, known, inLine bool) unit.Angle {
	widest, row := factor("widest route entry"), factor("wye angle")
	if inLine || known && !IsElbow(route) {
		return 0
	}
	angle := unit.Angle(row.Number("value"))
	if known && float64(route) <= widest.Number("value") {
		angle, row = route, widest
	}
	s.assume("entry", unit.Degrees.Print(r.shop.Units, angle), row.Basis)
	return angle
}

// routeAngle is the angle at which a duct's route meets the other's, where
// both have routes.
func routeAngle(d, into *Duct) (unit.Angle, bool) {
	if d.Route == nil || into.Route == nil {
		return 0, false
	}
	n, run := len(d.Route), runAt(into.Route, d.JoinAt)
	return Turned(d.Route[n-2], d.Route[n-1], into.Route[run-1], into.Route[run]), true
}
