package duct

import (
	"math"
	"testing"

	"dustbook/plan/air"
)

// balanced checks a solved network against the equations of the method,
// written out here once more: losses by package air's friction factor, flow
// in is flow out at every node, hood ends lie at the room's pressure.
func balanced(t testing.TB, net *Network, s *Solver, total float64) {
	t.Helper()
	press, flow := imbalance(net, s, total)
	if press > 1e-9 || flow > 1e-11 {
		t.Fatalf("out of balance by %.3g of the suction and %.3g of the flow", press, flow)
	}
	own, missing := s.Residual()
	if own > 1e-9*math.Max(s.Root, 1e-3) || missing > 1e-11*total {
		t.Fatalf("Residual says %g Pa of %g, %g m³/s of %g", own, s.Root, missing, total)
	}
}

// imbalance is the worst fault of a solution: of a pressure as a share of the
// suction at the root, of a flow as a share of the total.
func imbalance(net *Network, s *Solver, total float64) (press, flow float64) {
	into := make([]float64, len(net.Edges)+1) // the last is the root
	node := func(i int) int {
		if d := net.Edges[i].Down; d >= 0 {
			return d
		}
		return len(net.Edges)
	}
	for i, e := range net.Edges {
		q := s.Flow[i]
		if e.Dead {
			if q != 0 {
				flow = math.Inf(1)
			}
			continue
		}
		into[node(i)] += q
		loss := e.Quad
		if re := e.Re * math.Abs(q); re > 0 && e.Fric > 0 {
			loss += e.Fric * air.Factor(re, e.Rel)
		}
		drop := loss * q * math.Abs(q)
		up, down := s.Upstream[i], -s.Root
		if e.Leaf {
			up = 0
		}
		if e.Down >= 0 {
			down = s.Upstream[e.Down]
		}
		if e.Wye != nil {
			drop += wyeLoss(e.Wye, q, all(net, s, e, total))
		}
		press = math.Max(press, math.Abs(up-down-drop))
	}
	for i, e := range net.Edges {
		if !e.Dead && !e.Leaf {
			flow = math.Max(flow, math.Abs(into[i]-s.Flow[i]))
		}
	}
	flow = math.Max(flow, math.Abs(into[len(net.Edges)]-total))
	scale := 1e-3 // Pa; below that only digits are left
	for i := range net.Edges {
		scale = math.Max(scale, math.Abs(s.Upstream[i]))
	}
	return press / math.Max(math.Abs(s.Root), scale), flow / math.Abs(total)
}

// all is the combined flow behind a wye.
func all(net *Network, s *Solver, e Edge, total float64) float64 {
	if e.Down >= 0 {
		return s.Flow[e.Down]
	}
	return total
}

// wyeLoss is the published converging-wye coefficient, on the velocity
// pressure of the combined flow.
func wyeLoss(w *Split, own, all float64) float64 {
	if all <= 0 {
		return 0
	}
	x := own / all
	if !w.Branch {
		x = 1 - x
	}
	at, _ := w.Wye.Loss(math.Max(0, math.Min(1, x)))
	k := at.Run
	if w.Branch {
		k = at.Branch
	}
	return k * w.Dynamic * all * all
}
