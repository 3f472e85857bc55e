package room

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Estimate is how far below the outdoors a use pulls a space: above nought
// below it, under nought over it. It is reckoned from the openings that stand
// open and from the building's leaks, as far as the file gives them; what it
// does not give would bring the pressure nearer to nought. The fans are taken
// to draw what they draw from a room that does not hold them back.
type Estimate struct {
	V         unit.Pressure
	Low, High unit.Pressure // with the least and the greatest exponent of the leaks
	From      string        // "openings", "envelope" or "both"
	Missing   []Missing     // what no estimate can do without
	Left      []Missing     // what would make the estimate better
}

// Known reports whether there is an estimate.
func (e Estimate) Known() bool { return len(e.Missing) == 0 }

// estimate solves Σ C Δp^n + Cd A √(2 Δp/ρ) = Q for Δp.
func (k *Reckoning) estimate(b *Balance) Estimate {
	area := b.Space.Openings
	_, noLeaks := k.envelope(exponent)
	open, leaky := area.Known() && area.V > 0, len(noLeaks) == 0
	e := Estimate{Left: add(area.Missing, noLeaks...)}
	switch {
	case b.Net == 0:
		e.Left = nil
		return e // nothing to make up, whatever stands open
	case open && leaky:
		e.From = "both"
	case open:
		e.From = "openings"
	case leaky:
		e.From = "envelope"
	case area.Known():
		e.Left = nil
		e.Missing = add([]Missing{{Thing: b.Space.Name(), Why: source.Because("no-opening")}}, noLeaks...)
		return e
	default:
		e.Missing, e.Left = e.Left, nil
		return e
	}
	at := func(n float64) unit.Pressure { return unit.SixOf(k.pressure(b, n, open, leaky)) }
	e.V, e.Low, e.High = at(exponent), at(exponentLeast), at(exponentMost)
	if e.Low > e.High {
		e.Low, e.High = e.High, e.Low
	}
	return e
}

// pressure is the estimate with one exponent, with the sign of the flow.
func (k *Reckoning) pressure(b *Balance, n float64, open, leaky bool) unit.Pressure {
	q, sign := b.Net, unit.Pressure(1)
	if q < 0 {
		q, sign = -q, -1
	}
	var holes crack
	if leaky {
		holes, _ = k.envelope(n)
	}
	area := b.Space.Openings.V
	switch {
	case !leaky:
		return sign * k.air.pressureOf(q, area)
	case !open:
		return sign * holes.pressureOf(q)
	}
	in := func(dp unit.Pressure) unit.Flow {
		return holes.flow(dp) + unit.Flow(float64(area)*float64(k.air.face(dp)))
	}
	// both together need less than either alone
	low, high := unit.Pressure(0), min(k.air.pressureOf(q, area), holes.pressureOf(q))
	for range halvings {
		middle := (low + high) / 2
		if in(middle) < q {
			low = middle
		} else {
			high = middle
		}
	}
	return sign * high
}

// halvings bring a bracket down to the last digit of a number.
const halvings = 60
