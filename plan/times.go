package plan

import (
	"dustbook/plan/control"
	"dustbook/plan/control/timing"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
)

// times asks package timing, which knows neither ducts nor bins: it is told
// how fast the air is on the way from every port, use by use, and what every
// machine's heaviest usual cut throws.
func times(s *shop.Shop, k *duct.Reckoning, c *control.Reckoning, t *takeoff.Reckoning) *timing.Reckoning {
	air := timing.Air{Chips: chips(t)}
	for _, u := range k.Uses {
		for _, r := range u.Results {
			for i := range r.Ports {
				if r.Collector != nil {
					air.Paths = append(air.Paths, way(u, r, r.Ports[i].Port))
				}
			}
		}
	}
	return timing.Reckon(s, c, air)
}

// way is the way of a port's air in a result, its hose first.
func way(u *duct.Use, r *duct.Result, p *shop.Port) timing.Path {
	w := timing.Path{Port: p, Collector: r.Collector, Use: u.Name, Filter: r.Filter, Known: r.OnCurve}
	if !r.OnCurve {
		return w
	}
	for _, s := range p.Path() {
		at := r.Stretch(s)
		if at == nil {
			w.Known = false // another collector's tree
			return w
		}
		if h := s.Duct.Hose; at.Hose && h != nil {
			w.Legs = append(w.Legs, timing.Leg{Length: h.Length, Speed: at.HoseVelocity})
		}
		w.Legs = append(w.Legs, timing.Leg{Length: s.Length(), Speed: at.Velocity})
	}
	return w
}

// chips are what the machines throw whose cut is given.
func chips(t *takeoff.Reckoning) map[*shop.Machine]timing.Chips {
	all := map[*shop.Machine]timing.Chips{}
	for _, f := range t.Bins {
		for _, of := range f.Machines {
			if of.Solid > 0 {
				all[of.Machine] = timing.Chips{Solid: of.Solid, Loose: of.Loose}
			}
		}
	}
	return all
}
