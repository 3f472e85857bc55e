package duct

import (
	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// tells reports whether suction at a tap falls as more air comes from
// upstream, by more than readings agree within. At the end of a narrow duct
// it may not: the velocity pressure there grows with the flow.
func (t *Tree) tells(r *Result, g Gauge) bool {
	share, _ := ProofFigure("agree")
	open, flow, ok := t.throttled(r, g, 0)
	if !ok || flow <= 0 || open <= 0 {
		return false
	}
	part := float64(open) / (flow * flow)
	half, _, ok := t.throttled(r, g, 3*part)
	least, _, also := t.throttled(r, g, 1000*part)
	return ok && also && float64(half) > float64(open)*(1+share/100) && least >= half
}

// throttled is the static suction and the flow at a tap with a loss of so many
// Pa/(m³/s)² put before its stretch.
func (t *Tree) throttled(r *Result, g Gauge, loss float64) (unit.Pressure, float64, bool) {
	s, place := g.place()
	at := t.byEdge[s]
	var edges []Edge
	for i, e := range t.Set(r.Use).Edges {
		if i == at {
			edges = append(edges, Edge{Down: at + 1, Quad: loss, Dead: e.Dead})
		}
		if e.Down > at {
			e.Down++
		}
		edges = append(edges, e)
	}
	solver, fan := NewSolver(NewNetwork(edges)), NewFan(t.Collector, t.State, r.Filter)
	if _, ok := operate(solver, fan, &Result{Use: r.Use}, false); !ok {
		return 0, 0, false
	}
	flow := unit.Flow(solver.Flow[at+1])
	w := worker{t: t, flow: flow}
	w.friction(Term{Kind: FrictionTerm, Size: t.bore(s), Roughness: s.Duct.Roughness, Length: place - s.From, Times: 1})
	for _, turn := range t.turns(s) {
		if turn.At <= place {
			w.charge(Term{Kind: ElbowTerm, Size: t.bore(s), K: air.Elbow(t.elbow(s.Duct), turn.Angle)})
		}
	}
	total := unit.Pressure(solver.Upstream[at+1]) - w.sum()
	return t.State.VelocityPressure(air.SpeedIn(flow, t.bore(s))) - total, float64(flow), true
}
