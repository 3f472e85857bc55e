package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// FindUse finds a use by its name; nil where there is none.
func (k *Reckoning) FindUse(name string) *Use {
	for _, u := range k.Uses {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// Alone is the use of one machine alone.
func (k *Reckoning) Alone(m *shop.Machine) *Use {
	for _, u := range k.Uses {
		if u.Kind == OneMachine && u.Machines[0] == m {
			return u
		}
	}
	return nil
}

// On lists the results of a use on a collector, one for each state of its
// filter.
func (u *Use) On(c *shop.Collector) []*Result {
	var list []*Result
	for _, r := range u.Results {
		if r.Collector == c && c != nil {
			list = append(list, r)
		}
	}
	return list
}

// Port is what a port gets in a result; nil where its machine does not run.
func (r *Result) Port(p *shop.Port) *PortResult {
	for i := range r.Ports {
		if r.Ports[i].Port == p {
			return &r.Ports[i]
		}
	}
	return nil
}

// Stretch is what passes a stretch in a result; nil where it belongs to
// another collector.
func (r *Result) Stretch(s *shop.Stretch) *StretchResult {
	for i := range r.Stretches {
		if r.Stretches[i].Stretch == s {
			return &r.Stretches[i]
		}
	}
	return nil
}

// StretchAt is the stretch of a duct that holds a place; at a cut, the one
// upstream of it.
func StretchAt(d *shop.Duct, place unit.Length) *shop.Stretch {
	for _, s := range d.Stretches {
		if unit.Compare(float64(place), float64(s.To)) <= 0 {
			return s
		}
	}
	return d.Stretches[len(d.Stretches)-1]
}

// FilterGauge is the pressure a gauge across the filter shows in a result,
// also where the fan's curve was measured with the filter in it. Range: a
// collector with a filter, a result on the curve.
func (r *Result) FilterGauge() unit.Pressure {
	f := r.Collector.Filter
	at := f.Clean
	if r.Filter == ChangeOut {
		at = f.Change
	}
	return unit.Pressure(unit.Six(float64(at) * float64(r.Flow/f.Flow)))
}

// SeparatorGauge is the pressure a gauge across the separator shows in a
// result. Range: a collector with a separator, a result on the curve.
func (k *Reckoning) SeparatorGauge(r *Result) unit.Pressure {
	s := r.Collector.Separator
	share := float64(r.Flow / s.Flow)
	return unit.Pressure(unit.Six(float64(s.Loss) * share * share * k.State.Ratio()))
}

// InletSpeed is the speed in the collector's inlet in a result.
func (r *Result) InletSpeed() unit.Velocity {
	return unit.Velocity(unit.Six(float64(air.SpeedIn(r.Flow, r.Collector.Inlet))))
}

// PortSpeed is the speed at a port's own size.
func (p *PortResult) PortSpeed() unit.Velocity {
	return unit.Velocity(unit.Six(float64(air.SpeedIn(p.Flow, p.Port.Size))))
}

// HoodAtNeed is the hood pressure at which a port just gets its need; nought
// where it has none.
func (k *Reckoning) HoodAtNeed(p *shop.Port) unit.Pressure {
	vp := k.State.VelocityPressure(air.SpeedIn(p.Flow, p.Size))
	return unit.Pressure(unit.Six(float64(air.HoodPressure(p.HoodLoss, vp))))
}

// Suction is what a gauge at a place of a duct shows in a result: the static
// pressure there below the room, suction positive. It is not known off the
// curve, and in a piece of duct between gates that shut tight.
func (k *Reckoning) Suction(r *Result, d *shop.Duct, place unit.Length) (p unit.Pressure, known bool) {
	t := k.TreeOf(r.Collector)
	if t == nil || !r.OnCurve || d.Collector != r.Collector {
		return 0, false
	}
	s := StretchAt(d, place)
	v := r.Stretch(s)
	if v == nil {
		return 0, false
	}
	if v.Flow == 0 {
		return t.atRest(r, s, place)
	}
	w := worker{t: t, flow: v.Flow}
	w.until(r, s, place)
	total := v.Start - w.sum()
	static := total - t.State.VelocityPressure(v.Velocity)
	return unit.Pressure(unit.Six(float64(-static))), true
}

// atRest is the suction where no air moves: that of the first place further
// on where it does, unless a gate that shuts tight stands between.
func (t *Tree) atRest(r *Result, s *shop.Stretch, place unit.Length) (unit.Pressure, bool) {
	for ; s != nil; s = s.Below() {
		if v := r.Stretch(s); v.Flow != 0 {
			w := worker{t: t, flow: v.Flow}
			if s.Number == 1 && len(s.Duct.Serves) > 0 {
				port, _ := r.Use.Served(s.Duct)
				w.flow = t.endFlow(r, s.Duct)
				w.end(s.Duct, port)
			}
			return unit.Pressure(unit.Six(float64(w.sum() - v.Start))), true
		}
		for _, g := range s.Gates {
			if !r.Use.Open[g] && g.Leak.None && g.Where > place {
				return 0, false
			}
		}
		place = -1 // every gate of the stretches further on counts
	}
	return r.Inlet, true
}

// sum adds up the losses.
func (w *worker) sum() (all unit.Pressure) {
	for _, term := range w.terms {
		all += term.Loss
	}
	return all
}

// TreeOf is the tree of a collector's ducts; nil where it is of another shop.
func (k *Reckoning) TreeOf(c *shop.Collector) *Tree {
	for _, t := range k.Trees {
		if t.Collector == c {
			return t
		}
	}
	return nil
}
