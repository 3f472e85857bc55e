package duct

import (
	"math"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Set makes the network of a tree for one use: hoses at their machines,
// gates open or shut.
func (t *Tree) Set(u *Use) *Network {
	edges := make([]Edge, len(t.parts))
	for i := range t.parts {
		p := &t.parts[i]
		edges[i] = p.edge
		if p.end != nil {
			_, at := u.Served(p.end)
			down := p.edge.Down
			edges[i] = p.ends[at]
			edges[i].Down = down
		}
		if p.stretch != nil {
			for k, g := range p.stretch.Gates {
				if u.Open[g] {
					continue
				}
				if math.IsInf(p.gates[k], 1) {
					edges[i].Dead = true
				} else {
					edges[i].Quad += p.gates[k]
				}
			}
		}
	}
	return NewNetwork(edges)
}

// Solve solves one use with the filter in one state, and judges it.
func (t *Tree) Solve(u *Use, filter string) *Result {
	fan := NewFan(t.Collector, t.State, filter)
	r := &Result{Use: u, Collector: t.Collector, Filter: filter, Claimed: fan.Claimed}
	net := t.Set(u)
	if u.Kind == DuctOff {
		net = NewNetwork(nil)
	}
	solver := NewSolver(net)
	flow, ok := 0.0, false
	if d := t.unsized(); d != nil && u.Kind != DuctOff {
		r.Why = sizeOpen(d)
	} else {
		flow, ok = operate(solver, fan, r, u.Kind == DuctOff)
	}
	if !ok {
		flow = math.NaN()
	}
	t.report(r, fan, solver, net, flow)
	t.judge(r)
	return r
}

// unsized is the first duct of the tree whose size is still to be chosen.
func (t *Tree) unsized() *shop.Duct {
	for _, d := range t.shop.Ducts {
		if d.Collector == t.Collector && d.Choose && t.bore(d.Stretches[0]) == 0 {
			return d
		}
	}
	return nil
}

// operate finds the flow at which the fan works. With several crossings the
// stable one of least flow counts.
func operate(s *Solver, fan *Fan, r *Result, ductOff bool) (flow float64, ok bool) {
	low, high := fan.Range()
	switch {
	case ductOff:
		return alone(fan, r)
	case !s.net.Live():
		if low > 0 {
			r.Why = noWay
			return 0, false
		}
		s.rest()
		return 0, true
	case fan.Falls() && !s.net.splits:
		flow, _, ok = s.Meet(fan, (low+high)/2)
		if !ok {
			r.Why = unsettled
			return 0, false
		}
		return flow, within(flow, low, high, r)
	}
	if root, only := s.onTail(fan); only {
		if flow, _, ok = s.Meet(root, (low+high)/2); ok {
			return flow, within(flow, low, high, r)
		}
	}
	found, sound := s.Crossings(fan)
	if !sound {
		r.Why = unsettled
		return 0, false
	}
	if len(found) > 1 {
		for _, c := range found {
			r.Crossings = append(r.Crossings, FanPoint{unit.Flow(unit.Six(c.Flow)), unit.Pressure(unit.Six(fan.Static(c.Flow))), c.Stable})
		}
	}
	for _, c := range found {
		if c.Stable {
			_, ok := s.At(c.Flow)
			return c.Flow, ok
		}
	}
	r.Why = pastEnd
	if demand, _ := s.At(low); low > 0 {
		if offer, _ := fan.Suction(low); offer < demand {
			r.Why = beforeStart
		}
	}
	return 0, false
}

// Why a use is off the curve.
var (
	pastEnd     = source.Because("past-end")
	beforeStart = source.Because("before-start")
	noWay       = source.Because("no-way")
	unsettled   = source.Because("unsettled")
	unservedUse = source.Because("unserved")
)

// sizeOpen is why a use of a duct without a size is off the curve.
func sizeOpen(d *shop.Duct) source.Reason { return source.Because("size-open", d.Name) }

// within checks a flow against the curve's ends.
func within(flow, low, high float64, r *Result) bool {
	switch {
	case unit.Compare(flow, low) < 0:
		r.Why = beforeStart
	case unit.Compare(flow, high) > 0:
		r.Why = pastEnd
	default:
		return true
	}
	return false
}

// alone finds where the fan works with its ducts off: the flow at which it
// spends all its pressure on its own parts.
func alone(fan *Fan, r *Result) (flow float64, ok bool) {
	low, high := fan.Range()
	offer := func(q float64) float64 { p, _ := fan.Suction(q); return p }
	if offer(high) > 1e-9*fan.Static(low) {
		r.Why = pastEnd
		return 0, false
	}
	if offer(low) < 0 {
		r.Why = beforeStart
		return 0, false
	}
	// from the left: the first flow at which nothing is left
	const samples = 256
	for i := 1; i <= samples; i++ {
		at := low + (high-low)*float64(i)/samples
		if offer(at) <= 0 {
			return bisect(offer, at-(high-low)/samples, at), true
		}
	}
	return high, true
}

// report fills a result from the solved network, rounding once. Off the curve
// the flow is NaN and no figure is filled.
func (t *Tree) report(r *Result, fan *Fan, s *Solver, net *Network, flow float64) {
	r.OnCurve = !math.IsNaN(flow)
	static := 0.0
	if r.OnCurve {
		static = fan.Static(flow)
	}
	if r.Use.Kind != DuctOff {
		t.reportDucts(r, s, net, flow, static)
	}
	if !r.OnCurve {
		return
	}
	if r.Use.Kind == DuctOff || !net.Live() {
		r.Flow = unit.Flow(unit.Six(flow))
	}
	separator, filter, outlet := fan.Charges(flow)
	round := unit.Grid(static)
	inlet, _ := fan.Suction(flow)
	if r.Use.Kind == DuctOff {
		inlet = 0
	}
	r.Inlet = unit.Pressure(round(inlet))
	r.Separator, r.FilterLoss, r.Outlet = unit.Pressure(round(separator)), unit.Pressure(round(filter)), unit.Pressure(round(outlet))
	r.Static = unit.Pressure(unit.Six(float64(r.Inlet + r.Separator + r.FilterLoss + r.Outlet)))
	if watts, known := fan.Power(flow); known {
		r.Power, r.PowerKnown = unit.Power(unit.Six(watts)), true
	}
	r.LeftOfPeak = unit.Compare(flow, fan.Peak()) < 0
}

// reportDucts rounds the flows of what lets air in and adds them up on the
// way to the collector, and rounds the pressure at every node.
func (t *Tree) reportDucts(r *Result, s *Solver, net *Network, flow, static float64) {
	flows := make([]float64, len(net.Edges))
	if r.OnCurve {
		total := addUp(flows, net, s, unit.Grid(flow))
		if unit.Six(total) != total { // the rounded parts make a digit more
			total = addUp(flows, net, s, unit.Grid(total))
		}
		r.Flow = unit.Flow(total)
	}
	press := unit.Grid(static)
	for _, d := range t.shop.Ducts {
		if d.Collector != t.Collector {
			continue
		}
		for _, stretch := range d.Stretches {
			r.Stretches = append(r.Stretches, t.stretchResult(r, s, net, flows, stretch, press))
		}
		for _, leak := range d.Leaks {
			if at, draws := t.byLeak[leak]; draws {
				r.Leaks = append(r.Leaks, LeakResult{leak, unit.Flow(flows[at])})
			}
		}
	}
	t.reportPorts(r, flows)
}

// addUp rounds what each leaf lets in and adds it up on the way to the root;
// it returns the total.
func addUp(flows []float64, net *Network, s *Solver, round func(float64) float64) (total float64) {
	clear(flows)
	for i := range net.Edges {
		e := &net.Edges[i]
		if e.Leaf && !e.Dead {
			flows[i] = round(s.Flow[i])
		}
		if e.Down >= 0 {
			flows[e.Down] = round(flows[e.Down] + flows[i])
		} else {
			total = round(total + flows[i])
		}
	}
	return total
}

func (t *Tree) stretchResult(r *Result, s *Solver, net *Network, flows []float64, stretch *shop.Stretch, press func(float64) float64) StretchResult {
	i := t.byEdge[stretch]
	e := &net.Edges[i]
	d := stretch.Duct
	v := StretchResult{Stretch: stretch, Flow: unit.Flow(flows[i])}
	v.Velocity = unit.Velocity(unit.Six(float64(air.SpeedIn(v.Flow, t.bore(stretch)))))
	if hose := t.hose(d); stretch.Number == 1 && hose != nil {
		v.Hose = true
		v.HoseVelocity = unit.Velocity(unit.Six(float64(air.SpeedIn(unit.Flow(flows[t.byEnd[d]]), hose.Size))))
	}
	if e.Dead || !r.OnCurve {
		return v
	}
	start := s.Upstream[i]
	if stretch.Number == 1 && len(d.Serves) > 0 {
		start = 0 // hose and hood count to the stretch
	}
	end := -s.Root
	if e.Down >= 0 {
		end = s.Upstream[e.Down]
	}
	v.Start, v.End = unit.Pressure(press(start)), unit.Pressure(press(end))
	v.Loss = unit.Pressure(unit.Six(float64(v.Start - v.End)))
	return v
}

// reportPorts fills what each port of the use's machines gets.
func (t *Tree) reportPorts(r *Result, flows []float64) {
	for _, p := range r.Use.ports() {
		if p.Duct != nil && p.Duct.Collector != t.Collector {
			continue
		}
		v := PortResult{Port: p, Weak: p.Need.Mark.Weak()}
		if p.Duct != nil {
			if served, _ := r.Use.Served(p.Duct); served == p {
				v.Flow = unit.Flow(flows[t.byEnd[p.Duct]])
			}
		}
		vp := t.State.VelocityPressure(air.SpeedIn(v.Flow, p.Size))
		v.Hood = unit.Pressure(unit.Six(float64(air.HoodPressure(p.HoodLoss, vp))))
		v.Captured = r.OnCurve && unit.AtLeast(float64(v.Flow), float64(p.Flow))
		r.Ports = append(r.Ports, v)
	}
}
