package duct

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Enough says whether a collector is big enough for the shop's uses.
type Enough struct {
	Collector *shop.Collector
	Claimed   unit.Flow // the maker's figure; nought where the file gives none
	Needed    unit.Flow // the largest working demand: what the ports of one use need in all
	NeededBy  *Use      // the first use that needs so much
	Demands   []Demand  // of each use of machines it serves, with the filter in each state
	Worst     *Demand   // of those that some fan meets and that are on the curve, the one whose weakest port gets the least share of its need, the first where several do; nil where there is none
}

// Demand is what one use asks of a collector, with the filter in one state.
type Demand struct {
	Use    *Use
	Filter string
	Result *Result // what is held against the need

	Need      unit.Flow // what its ports on this collector need, in all
	OnCurve   bool
	Delivered unit.Flow  // what those ports get, in all
	Port      *shop.Port // the one that gets the least share of its need; nil where none needs air
	Share     float64    // that share; one is just enough, nought off the curve
	Margin    float64    // of air: that share less one

	// The least that a fan must do so that every one of those ports gets its
	// need, with the same ducts, gates, separator, filter and outlet. The weakest
	// port then just gets it; others may get more, and leaks draw as well.
	Reachable bool          // some fan does: each port has an end of its own
	Flow      unit.Flow     // through the fan
	Static    unit.Pressure // fan static pressure, in the shop's air
	InRange   bool          // this fan's curve holds that flow
	Offered   unit.Pressure // what this fan makes there
	Spare     unit.Pressure // Offered less Static; below nought the fan is too small
}

// BigEnough holds each collector against the uses of the shop: each machine
// alone and those of the file. A port whose need is nought asks for nothing.
func (k *Reckoning) BigEnough() []Enough {
	var list []Enough
	for _, t := range k.Trees {
		e := Enough{Collector: t.Collector}
		if c := t.Collector.Claims; c != nil {
			e.Claimed = c.Flow
		}
		solver := NewSolver(&Network{})
		for _, u := range k.Uses {
			for _, r := range u.Results {
				if r.Collector == t.Collector && len(u.Machines) > 0 {
					e.add(t.demand(solver, r))
				}
			}
		}
		for i := range e.Demands {
			if d := &e.Demands[i]; d.Port != nil && d.Reachable && d.OnCurve && (e.Worst == nil || d.Share < e.Worst.Share) {
				e.Worst = d
			}
		}
		list = append(list, e)
	}
	return list
}

func (e *Enough) add(d Demand) {
	if d.Need > e.Needed {
		e.Needed, e.NeededBy = d.Need, d.Use
	}
	e.Demands = append(e.Demands, d)
}

// demand finds what a result's use asks of the tree.
func (t *Tree) demand(solver *Solver, r *Result) Demand {
	d := Demand{Use: r.Use, Filter: r.Filter, Result: r, OnCurve: r.OnCurve}
	var wants []want
	d.Reachable = t.unsized() == nil
	for _, p := range r.Ports {
		need := p.Port.Flow
		if need <= 0 {
			continue
		}
		d.Need += need
		d.Delivered += p.Flow
		if share := unit.Six(float64(p.Flow / need)); d.Port == nil || share < d.Share {
			d.Port, d.Share = p.Port, share
		}
		if p.Port.Duct == nil {
			d.Reachable = false
		} else if served, _ := r.Use.Served(p.Port.Duct); served != p.Port {
			d.Reachable = false
		} else {
			wants = append(wants, want{t.byEnd[p.Port.Duct], float64(need)})
		}
	}
	d.Need, d.Delivered = unit.Flow(unit.Six(float64(d.Need))), unit.Flow(unit.Six(float64(d.Delivered)))
	d.Margin = unit.Six(d.Share - 1)
	if d.Reachable = d.Reachable && len(wants) > 0; d.Reachable {
		d.meet(t, solver, wants)
	}
	return d
}

// Unserved is the first port of a use that needs air and that no fan can serve,
// since no duct leads from it or another port of the use has its duct's end;
// nil where there is none.
func (u *Use) Unserved() *shop.Port {
	for _, p := range u.ports() {
		if p.Flow <= 0 {
			continue
		}
		if p.Duct == nil {
			return p
		}
		if served, _ := u.Served(p.Duct); served != p {
			return p
		}
	}
	return nil
}

// want is a need at the end of a duct.
type want struct {
	part int
	flow float64
}

// meet finds the least that a fan must do.
func (d *Demand) meet(t *Tree, solver *Solver, wants []want) {
	solver.Take(t.Set(d.Use))
	flow, suction, ok := solver.justEnough(wants)
	if !ok {
		d.Reachable = false
		return
	}
	fan := NewFan(t.Collector, t.State, d.Filter)
	separator, filter, outlet := fan.Charges(flow)
	d.Flow, d.Static = unit.Flow(unit.Six(flow)), unit.Pressure(unit.Six(suction+separator+filter+outlet))
	low, high := fan.Range()
	if d.InRange = unit.AtLeast(flow, low) && unit.AtLeast(high, flow); d.InRange {
		d.Offered = unit.Pressure(unit.Six(fan.Static(flow)))
		d.Spare = unit.Pressure(unit.Six(float64(d.Offered - d.Static)))
	}
}

// justEnough finds the least total at which every want is met, and the suction
// at the root that draws it. A port's share of the total hardly changes with
// the total, so that scaling it by what the weakest port lacks comes near at
// once; bounds keep the search.
func (s *Solver) justEnough(wants []want) (total, suction float64, ok bool) {
	const most, near = 100, 1e-12
	for _, w := range wants {
		total += w.flow
	}
	low, high := 0.0, math.Inf(1)
	for range most {
		if suction, ok = s.At(total); !ok {
			return 0, 0, false
		}
		least := math.Inf(1)
		for _, w := range wants {
			least = math.Min(least, s.Flow[w.part]/w.flow)
		}
		switch {
		case math.Abs(least-1) <= near:
			return total, suction, true
		case least < 1:
			low = total
		default:
			high = total
		}
		scaled := total / least
		switch {
		case least > 0 && scaled > low && scaled < high:
			total = scaled
		case math.IsInf(high, 1):
			total *= 2
		default:
			total = (low + high) / 2
		}
	}
	return total, suction, high-low <= 1e-9*total
}
