package duct

import (
	"math"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// HandCheck holds the trade's hand method against a result.
type HandCheck struct {
	Sheet *HandSheet
	Lines []HandLine // one for each row of the sheet
	Inlet HandOff    // the static pressure in the collector's inlet
	Fan   HandOff    // the fan static pressure
	Limit float64    // a difference up to this share is the method's own
}

// HandLine is what the solver has for a row of the hand sheet.
type HandLine struct {
	HandOff
	Flow    unit.Flow     // the solver's
	Need    unit.Velocity // its transport velocity
	Largest unit.Length   // the largest bore that keeps the row's flow at that
}

// HandOff is a static pressure of the solver and how far the hand method is
// off it.
type HandOff struct {
	Solver unit.Pressure // magnitude, below the room
	Off    float64       // hand over solver, less one
	Why    HandWhy
}

// HandWhy is the chief reason for a difference beyond the method's own.
type HandWhy uint8

const (
	Close      HandWhy = iota // within the method's own limit
	ByFlow                    // the balance has raised flows upstream
	ByFriction                // the friction fit stands for another wall
	ByJunction                // speeds and losses where ways meet and sizes change
)

// CheckByHand reckons a result's use by the trade's hand method from the flows
// that the solver found at the ports, and compares static pressures. It is nil
// where the result is off the fan's curve.
func (t *Tree) CheckByHand(r *Result, sys unit.System) *HandCheck {
	if !r.OnCurve {
		return nil
	}
	accept, _ := air.BalanceLimits()
	c := &HandCheck{Sheet: t.ByHand(r.Use, r.Filter, t.startOf(r), sys), Limit: unit.Six(accept - 1)}
	gaps := make([]unit.Pressure, len(c.Sheet.Rows)) // of friction alone, added up on the governing way
	for i, row := range c.Sheet.Rows {
		v := t.resultOf(r, row.Stretch)
		line := HandLine{Flow: v.Flow, Need: v.Transport}
		if v.Transport > 0 {
			line.Largest = air.LargestBore(row.Flow, v.Transport)
		}
		if row.after >= 0 {
			gaps[i] = gaps[row.after]
		}
		gaps[i] += row.Hose + unit.Pressure(row.Friction)*row.Dynamic - t.rubbed(r, row.Stretch)
		dynamic := t.State.VelocityPressure(air.SpeedIn(v.Flow, row.Bore))
		line.HandOff = c.off(row.Static, -v.End-t.widened(row.Stretch, v.Flow)+dynamic, row.Flow, v.Flow, gaps[i])
		c.Lines = append(c.Lines, line)
	}
	if n := len(c.Sheet.Rows); n > 0 {
		inlet := t.State.VelocityPressure(air.SpeedIn(r.Flow, t.Collector.Inlet))
		c.Inlet = c.off(c.Sheet.Static, r.Inlet+inlet, c.Sheet.Flow, r.Flow, gaps[c.Sheet.after])
		c.Fan = c.off(c.Sheet.Fan, r.Static, c.Sheet.Flow, r.Flow, gaps[c.Sheet.after])
	}
	return c
}

// off compares two static pressures and finds why they differ.
func (c *HandCheck) off(hand, solver unit.Pressure, flow, solved unit.Flow, friction unit.Pressure) HandOff {
	x := HandOff{Solver: solver, Off: unit.Six(float64(hand/solver) - 1)}
	raised := float64(flow*flow/(solved*solved)) - 1
	switch rest := hand - solver - friction; {
	case math.Abs(x.Off) <= c.Limit:
	case unit.Six(raised) > c.Limit:
		x.Why = ByFlow
	case math.Abs(float64(friction)) >= math.Abs(float64(rest)):
		x.Why = ByFriction
	default:
		x.Why = ByJunction
	}
	return x
}

// startOf are the flows a result has at the running ports, and what comes in
// beside them.
func (t *Tree) startOf(r *Result) HandStart {
	start := HandStart{Ends: map[*shop.Duct]unit.Flow{}}
	for _, p := range r.Ports {
		if d := p.Port.Duct; d != nil && p.Flow > 0 {
			start.Ends[d] = p.Flow
		}
	}
	start.More = func(into *shop.Stretch, from []*shop.Stretch) unit.Flow {
		rest := r.Flow
		if into != nil {
			rest = t.flowOf(r, into)
			if into.Number == 1 {
				rest -= start.Ends[into.Duct]
			}
		}
		for _, s := range from {
			rest -= t.flowOf(r, s)
		}
		return unit.Flow(max(0, unit.Grid(float64(r.Flow))(float64(rest))))
	}
	return start
}

// resultOf is what a result has of a stretch.
func (t *Tree) resultOf(r *Result, s *shop.Stretch) *StretchResult {
	for i := range r.Stretches {
		if r.Stretches[i].Stretch == s {
			return &r.Stretches[i]
		}
	}
	return &StretchResult{Stretch: s}
}

// rubbed is the friction of a stretch in a result, its hose's too.
func (t *Tree) rubbed(r *Result, s *shop.Stretch) (sum unit.Pressure) {
	for _, x := range t.Working(r, s) {
		if x.Kind == FrictionTerm || x.Kind == HoseTerm {
			sum += x.Loss
		}
	}
	return sum
}

// widened is what a stretch loses where it meets the next size; nothing where
// the flow split holds it.
func (t *Tree) widened(s *shop.Stretch, q unit.Flow) unit.Pressure {
	if t.parts[t.byEdge[s]].edge.Wye != nil {
		return 0
	}
	return unit.Pressure(t.change(t.bore(s), t.below(s)) * float64(q*q))
}
