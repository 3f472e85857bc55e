package room

import (
	"math"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Face is the area that passes a flow at a speed: A = Q/V, in m².
// Range: speed above zero.
func Face(q unit.Flow, v unit.Velocity) unit.Area { return unit.Area(float64(q) / float64(v)) }

// SpeedThrough is the speed of a flow through an area: V = Q/A, in m/s.
// Range: area above zero.
func SpeedThrough(q unit.Flow, a unit.Area) unit.Velocity {
	return unit.Velocity(float64(q) / float64(a))
}

// dynamic is the velocity pressure ρ V²/2.
func (a Air) dynamic(v unit.Velocity) unit.Pressure {
	return unit.Pressure(float64(a.Density) / 2 * float64(v) * float64(v))
}

// face is the speed behind an opening at a pressure difference, the discharge
// coefficient taken in: Cd √(2 Δp/ρ).
func (a Air) face(dp unit.Pressure) unit.Velocity {
	return unit.Velocity(a.Discharge * math.Sqrt(2*float64(dp)/float64(a.Density)))
}

// pressureOf is the pressure difference that drives a flow through an
// opening: Δp = ρ/2 (Q/(Cd A))². Range: area above zero.
func (a Air) pressureOf(q unit.Flow, area unit.Area) unit.Pressure {
	v := float64(q) / (a.Discharge * float64(area))
	return unit.Pressure(float64(a.Density) / 2 * v * v)
}

// Opening is the free area that keeps a space within one limit.
type Opening struct {
	Limit   Limit
	Area    unit.Area         // with nothing let in by the building's own leaks
	Smaller Figure[unit.Area] // with what the envelope lets in at that pressure
}

// openings are the openings for what a space has to get from outdoors, one
// for each limit of the data, and the one for the depressurisation that the
// file chooses, else for the strictest limit in play: A = Q/(Cd √(2 Δp/ρ)).
func (k *Reckoning) openings(b *Balance) []Opening {
	need := max(b.Net, 0)
	tight, missing := k.envelope(exponent)
	at := func(l Limit) Opening {
		o := Opening{Limit: l, Area: unit.SixOf(Face(need, k.air.face(l.Press)))}
		o.Smaller = lacking[unit.Area](missing...)
		if len(missing) == 0 {
			rest := max(need-tight.flow(l.Press), 0)
			o.Smaller = known(Face(rest, k.air.face(l.Press)))
		}
		return o
	}
	var list []Opening
	for _, l := range limits {
		list = append(list, at(l))
	}
	switch s := b.Space; {
	case s.Chosen > 0:
		o := at(Limit{Press: s.Chosen})
		b.Chosen = &o
	case s.Limit != nil:
		o := at(*s.Limit)
		b.Chosen = &o
	}
	return list
}

// crack is a building's leaks: Q = C Δp^n.
type crack struct{ c, n float64 }

// crackOf is the crack that lets in a flow at a pressure, with an exponent.
func crackOf(q unit.Flow, at unit.Pressure, n float64) crack {
	return crack{float64(q) / math.Pow(float64(at), n), n}
}

func (c crack) flow(dp unit.Pressure) unit.Flow {
	return unit.Flow(c.c * math.Pow(float64(dp), c.n))
}

// pressureOf is Δp = (Q/C)^(1/n).
func (c crack) pressureOf(q unit.Flow) unit.Pressure {
	return unit.Pressure(math.Pow(float64(q)/c.c, 1/c.n))
}

// envelope is the building's leaks by the blower door, where that figure can
// speak for a space: it measures the building, which must be one air.
func (k *Reckoning) envelope(n float64) (crack, []Missing) {
	e := k.shop.Envelope
	switch {
	case !e.Known():
		return crack{}, []Missing{{Field: "shop.envelope"}}
	case len(k.Spaces) != 1:
		return crack{}, []Missing{{Why: source.Because("whole-envelope")}}
	}
	return crackOf(e.V.Flow, e.V.At, n), nil
}
