package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// A Verdict is what a set of machines that run together means on one collector
// with its filter in one state.
type Verdict struct {
	Collector         *shop.Collector
	Filter            string
	OnCurve           bool
	Captured, Carried bool
	Why               source.Reason // why it is off the curve; none where it is on it

	Port      *shop.Port // of the ports that do not get their need, the one that gets the least share of it; nil where all get it or it is off the curve
	PortShare float64    // that share

	Slowest *shop.Stretch // of the stretches that do not carry, the one with the least share of its transport velocity; nil where all carry or it is off the curve
	Hose    bool          // it is the stretch's hose
	Speed   float64       // that share
	order   int
}

// verdict judges machines from the flows of the last draw, as a Result does.
func (x *trial) verdict(state int, members []*member) Verdict {
	v := Verdict{Collector: x.tree.Collector, Filter: x.fans[state].Filter}
	if d := x.tree.unsized(); d != nil {
		v.Why = sizeOpen(d)
		return v
	}
	flow, ok := x.draw(state)
	if !ok {
		v.Why = x.note.Why
		return v
	}
	x.round(flow)
	v.OnCurve, v.Captured, v.Carried = true, true, true
	for _, m := range members {
		for _, p := range m.ports {
			got := 0.0
			if !p.held {
				got = x.sums[p.part]
			}
			v.gets(p.port, got)
		}
		for _, p := range m.bare {
			v.gets(p, 0)
			v.Carried = false
		}
	}
	for _, m := range members {
		for i := range m.path {
			x.carries(&v, members, &m.path[i])
		}
	}
	return v
}

// gets counts what a port gets.
func (v *Verdict) gets(p *shop.Port, got float64) {
	if unit.AtLeast(got, float64(p.Flow)) {
		return
	}
	v.Captured = false
	if share := unit.Six(got / float64(p.Flow)); v.Port == nil || share < v.PortShare {
		v.Port, v.PortShare = p, share
	}
}

// carries counts how fast the air is in a stretch and its hose.
func (x *trial) carries(v *Verdict, members []*member, at *passed) {
	need := needOf(members, at)
	speed := func(part int, bore unit.Length) float64 {
		return unit.Six(float64(air.SpeedIn(unit.Flow(x.sums[part]), bore)))
	}
	own := speed(at.part, x.tree.bore(at.stretch))
	v.runs(at, own, need, false)
	if at.hose >= 0 {
		v.runs(at, speed(at.hose, x.tree.hose(at.stretch.Duct).Size), need, true)
	}
}

// runs counts the speed in a stretch or its hose.
func (v *Verdict) runs(at *passed, speed float64, need unit.Velocity, hose bool) {
	if speed >= unit.Six(float64(need)) {
		return
	}
	v.Carried = false
	if share := unit.Six(speed / float64(need)); v.Slowest == nil || share < v.Speed || share == v.Speed && at.order < v.order {
		v.Slowest, v.order, v.Speed, v.Hose = at.stretch, at.order, share, hose
	}
}

// needOf is the greatest velocity that any of the machines needs in a stretch.
func needOf(members []*member, at *passed) unit.Velocity {
	need := at.need
	for _, m := range members {
		for i := range m.path {
			if m.path[i].part == at.part && m.path[i].need > need {
				need = m.path[i].need
			}
		}
	}
	return need
}
