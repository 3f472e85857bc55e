package room

import (
	"math"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Return is the way that a collector's air takes back. Where the collector,
// or a machine it draws from, stands in other air than the room that gets the
// air back, the way has to be there, and its area is on the fan's curve.
type Return struct {
	Collector *shop.Collector
	To        *Space    // that gets the air back; nil where the file does not tell
	From      []*Space  // the others that the air has to come from
	Needed    bool      // there is such another
	Missing   []Missing // what has to be known before a way can be ruled out

	Flow        Figure[unit.Flow] // the most it gives back in any use
	Off         []string          // uses without a flow: they may give more
	Least, Most unit.Area         // the area it takes, at the faster and the slower face speed
	Baffle      [2]Figure[unit.Area]
	Given       shop.Field[unit.Area]
	Speed       Figure[unit.Velocity] // through the area given
}

// wayBack reckons the way back of one collector.
func (k *Reckoning) wayBack(c *shop.Collector, uses []Use) *Return {
	r := &Return{Collector: c, To: k.SpaceOf(c.ReturnsTo), Given: c.ReturnOpening}
	switch {
	case !c.Exhaust.Known():
		r.Missing = []Missing{{Thing: c.Name, Field: "collector.exhaust"}}
	case r.To == nil:
		r.Missing = []Missing{{Thing: c.Name, Field: "collector.returns_to"}}
	default:
		k.from(r)
	}
	r.greatest(uses)
	r.Least, r.Most = unit.SixOf(Face(r.Flow.V, returnFast)), unit.SixOf(Face(r.Flow.V, returnSlow))
	r.Speed = r.through()
	r.Baffle = baffle(c)
	return r
}

// from finds the airs that the way has to join.
func (k *Reckoning) from(r *Return) {
	visit := func(in *shop.Room, thing, field string) {
		switch s := k.SpaceOf(in); {
		case s == nil:
			r.Missing = add(r.Missing, Missing{Thing: thing, Field: field})
		case s != r.To && !slices.Contains(r.From, s):
			r.From = append(r.From, s)
		}
	}
	visit(r.Collector.Room, r.Collector.Name, "collector.room")
	for _, m := range k.reach(r.Collector) {
		visit(m.Room, m.Name, "machine.room")
	}
	r.Needed = len(r.From) > 0
}

// greatest finds the most that the collector moves in any use.
func (r *Return) greatest(uses []Use) {
	r.Flow = lacking[unit.Flow](Missing{Thing: r.Collector.Name, Why: source.Because("no-flow")})
	for _, u := range uses {
		for _, d := range u.Draws {
			switch {
			case d.Collector != r.Collector:
			case d.Why.Is():
				r.Off = append(r.Off, u.Name)
			case !r.Flow.Known() || d.Flow > r.Flow.V:
				r.Flow = known(d.Flow)
			}
		}
	}
}

// through is the speed in the way that the file gives.
func (r *Return) through() Figure[unit.Velocity] {
	switch {
	case !r.Given.Known():
		return lacking[unit.Velocity](Missing{Thing: r.Collector.Name, Field: "collector.return_opening"})
	case !r.Flow.Known():
		return lacking[unit.Velocity](r.Flow.Missing...)
	case r.Given.V == 0:
		return lacking[unit.Velocity](Missing{Thing: r.Collector.Name, Why: source.Because("no-way-back")})
	}
	return known(SpeedThrough(r.Flow.V, r.Given.V))
}

// baffle is the free area inside a silencer behind a collector's outlet.
func baffle(c *shop.Collector) [2]Figure[unit.Area] {
	if c.Outlet == nil {
		missing := lacking[unit.Area](Missing{Thing: c.Name, Field: "collector.outlet"})
		return [2]Figure[unit.Area]{missing, missing}
	}
	pipe := math.Pi / 4 * float64(c.Outlet.Size) * float64(c.Outlet.Size)
	return [2]Figure[unit.Area]{known(unit.Area(baffleLeast * pipe)), known(unit.Area(baffleMost * pipe))}
}
