package duct

import (
	"slices"

	"dustbook/plan/shop"
)

// A Doubt is why a verdict is thin all the same, though the model's figures
// meet every need.
type Doubt string

// The doubts, in the order they stand in.
const (
	ByFilter Doubt = "filter"      // the filter's pressure is not given: reckoned without it
	ByClaims Doubt = "claims"      // the fan is known by two claims only
	ByNeed   Doubt = "need"        // a port's need is a default from memory or practice
	BySpeed  Doubt = "speed"       // a speed that carries the dust is one from memory or practice
	ByBand   Doubt = "band"        // a need lies inside the band of what is got, or there is no band
	NoBand   Doubt = "band-not-in" // the bands were not reckoned: there are too many sets
)

// EveryDoubt lists them in order.
var EveryDoubt = []Doubt{ByFilter, ByClaims, ByNeed, BySpeed, ByBand, NoBand}

// Doubts are some of them, each once and in order.
type Doubts []Doubt

// Any reports whether there is one.
func (d Doubts) Any() bool { return len(d) > 0 }

// Has reports whether one is among them.
func (d Doubts) Has(one Doubt) bool { return slices.Contains(d, one) }

// And is all of both.
func (d Doubts) And(o Doubts) (both Doubts) {
	for _, one := range EveryDoubt {
		if d.Has(one) || o.Has(one) {
			both = append(both, one)
		}
	}
	return both
}

// Without is all but one.
func (d Doubts) Without(one Doubt) (rest Doubts) {
	for _, other := range d {
		if other != one {
			rest = append(rest, other)
		}
	}
	return rest
}

// with is them and one more, where it is so.
func (d Doubts) with(one Doubt, is bool) Doubts {
	if !is || d.Has(one) {
		return d
	}
	return d.And(Doubts{one})
}

// FilterOpen reports whether nothing is known of a collector's filter although
// its air may come back into a room: its fan is reckoned without one.
func FilterOpen(c *shop.Collector) bool { return c.Filter == nil && c.Exhaust.V != "outside" }

// fanDoubts are those of a result's fan and filter.
func (r *Result) fanDoubts() Doubts {
	return Doubts(nil).with(ByFilter, r.Collector != nil && FilterOpen(r.Collector)).with(ByClaims, r.Claimed)
}

// AirDoubts are what keeps a result's air at thin; s is its spread.
func (r *Result) AirDoubts(s *Spread) Doubts {
	d := r.fanDoubts()
	for i := range r.Ports {
		d = d.And(r.Ports[i].doubts(s))
	}
	return d
}

// doubts are what keeps a port's own figure at thin.
func (p *PortResult) doubts(s *Spread) (d Doubts) {
	if p.Port.Flow > 0 {
		d = d.with(ByNeed, p.Weak).with(ByBand, s.Port(p.Port).Judge(float64(p.Port.Flow)) != Surely)
	}
	return d
}

// PortDoubts are what keeps the air of one port at thin, the fan's doubts with
// its own; s is the result's spread.
func (r *Result) PortDoubts(p *PortResult, s *Spread) Doubts { return r.fanDoubts().And(p.doubts(s)) }

// DustDoubts are what keeps the carrying of a result's dust at thin.
func (r *Result) DustDoubts(s *Spread) Doubts {
	d := r.fanDoubts()
	for i := range r.Stretches {
		if v := &r.Stretches[i]; v.Judged {
			d = d.with(BySpeed, v.Basis.Mark.Weak()).with(ByBand, s.Speed(v.Stretch).Judge(float64(v.Transport)) != Surely)
		}
	}
	return d
}
