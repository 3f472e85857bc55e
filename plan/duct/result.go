package duct

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Result is one use on one collector with its filter in one state. Its
// figures are rounded once, so that they add up as they stand: flows to the
// sixth digit of the collector's flow, pressures to that of the fan's.
type Result struct {
	Use       *Use
	Collector *shop.Collector // nil where no duct leads from the use's machines
	Filter    string

	OnCurve bool
	Why     source.Reason // why it is off the curve; none where it is on it

	Flow       unit.Flow     // through the fan
	Static     unit.Pressure // fan static pressure
	Power      unit.Power    // shaft
	PowerKnown bool
	Inlet      unit.Pressure // suction at the inlet, total, below the room
	Separator  unit.Pressure // losses on the fan's side
	FilterLoss unit.Pressure
	Outlet     unit.Pressure

	Crossings  []FanPoint // every crossing where there are several
	LeftOfPeak bool       // the point lies left of the curve's highest point
	Claimed    bool       // the fan is a parabola through two claims

	Ports     []PortResult
	Stretches []StretchResult // every stretch of the collector's tree, in file order
	Leaks     []LeakResult

	Captured, Carried bool
}

// FanPoint is one place on the fan curve.
type FanPoint struct {
	Flow   unit.Flow
	Static unit.Pressure
	Stable bool
}

// PortResult is what one port of the use's machines gets.
type PortResult struct {
	Port     *shop.Port
	Flow     unit.Flow
	Hood     unit.Pressure // hood static pressure behind the hood, at the port's size, below the room
	Captured bool
	Weak     bool // the need is a default from memory or practice
}

// StretchResult is what passes through one stretch.
type StretchResult struct {
	Stretch  *shop.Stretch
	Flow     unit.Flow
	Velocity unit.Velocity
	Start    unit.Pressure // total pressure at its upstream end, hose and hood before it
	End      unit.Pressure // total pressure where it has emptied into the next
	Loss     unit.Pressure // of the whole stretch, hose and hood included

	Judged    bool // a running machine's dust passes it
	Transport unit.Velocity
	Basis     source.Basis
	Case      string // which row of the transport data decides
	Carries   bool

	Hose         bool
	HoseVelocity unit.Velocity
	HoseCarries  bool
}

// LeakResult is what a hole draws.
type LeakResult struct {
	Leak *shop.Leak
	Flow unit.Flow
}

// Slowest is the judged stretch, or hose, with the least share of its
// transport velocity, and that share; nil where none is judged.
func (r *Result) Slowest() (s *StretchResult, share float64) {
	for i := range r.Stretches {
		at := &r.Stretches[i]
		if !at.Judged {
			continue
		}
		if part := unit.Six(float64(at.Slower() / at.Transport)); s == nil || part < share {
			s, share = at, part
		}
	}
	return s, share
}

// Slower is the speed that counts for a stretch: its own, or its hose's where
// that is less.
func (v *StretchResult) Slower() unit.Velocity {
	if v.Hose && v.HoseVelocity < v.Velocity {
		return v.HoseVelocity
	}
	return v.Velocity
}

// Weakest is the port that gets the least share of its need, and the share;
// nil where every port gets its need.
func (r *Result) Weakest() (p *PortResult, share float64) {
	share = 1
	for i := range r.Ports {
		at := &r.Ports[i]
		if at.Captured || at.Port.Flow <= 0 {
			continue
		}
		if part := unit.Six(float64(at.Flow / at.Port.Flow)); p == nil || part < share {
			p, share = at, part
		}
	}
	return p, share
}

// OpenGates are the gates open in the use that sit on this collector's
// ducts, in file order.
func (r *Result) OpenGates(s *shop.Shop) []*shop.Gate {
	var list []*shop.Gate
	for _, g := range s.Gates {
		if r.Use.Open[g] && g.On.Collector == r.Collector {
			list = append(list, g)
		}
	}
	return list
}
