package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Margins are how near the sizes of a choice come to what the uses need: the
// least share of a port's need and of a speed that carries dust, in the uses
// that the choice is about, with the gates open that it opens as well.
type Margins struct {
	Air, Dust *Margin // nil where nothing is asked or nothing is on the curve
	Doubts    Doubts  // what keeps them at thin, over all those uses
}

// Margin is the least share of a kind.
type Margin struct {
	Use     *Use
	Filter  string
	Port    *shop.Port    // that gets least of its need; nil of dust
	Stretch *shop.Stretch // that is slowest; nil of air
	Hose    bool          // its hose is slower
	Share   float64
	Band    Range // of that share; empty where there is none
}

// Margins finds those of a choice; it has none without sizes.
func (k *Reckoning) Margins(s *shop.Shop, c *Choice) (m Margins) {
	if len(c.Sizes) == 0 {
		return m
	}
	k.eachAs(s, c, c.Sizes, func(u *Use, t *Tree, r *Result) {
		if r.OnCurve {
			m.add(u, r, t.Spread(r))
		}
	})
	return m
}

// add counts one result in.
func (m *Margins) add(u *Use, r *Result, spread *Spread) {
	m.Doubts = m.Doubts.And(r.AirDoubts(spread)).And(r.DustDoubts(spread))
	for i := range r.Ports {
		p := &r.Ports[i]
		need := float64(p.Port.Flow)
		if need <= 0 {
			continue
		}
		if share := unit.Six(float64(p.Flow) / need); m.Air == nil || share < m.Air.Share {
			m.Air = &Margin{Use: u, Filter: r.Filter, Port: p.Port, Share: share, Band: spread.Port(p.Port).of(need)}
		}
	}
	if at, share := r.Slowest(); at != nil && (m.Dust == nil || share < m.Dust.Share) {
		m.Dust = &Margin{Use: u, Filter: r.Filter, Stretch: at.Stretch, Hose: at.Slower() < at.Velocity, Share: share, Band: spread.Speed(at.Stretch).of(float64(at.Transport))}
	}
}

// of is a band as a share of a need.
func (b Range) of(need float64) Range {
	return Range{unit.Six(b.Low / need), unit.Six(b.High / need)}
}
