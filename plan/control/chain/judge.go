package chain

import (
	"errors"
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// answer reckons one chain.
func answer(s *shop.Shop, k *control.Reckoning, c *shop.Chain) *Answer {
	a := &Answer{Chain: c, Supply: s.Control.Supply.V, Worst: -1, Exact: true}
	t := trialOf(s, k, c)
	run := unit.Length(0)
	for i, taker := range t.takers {
		run += t.cables[i]
		n := Node{Device: taker.device, Judged: taker.judged, Run: run, Loop: Loop(t.area, t.warm, t.cables[i])}
		n.Need, n.Own = needOf(s, c.Stops[i])
		a.Nodes = append(a.Nodes, n)
		a.Assumed = append(a.Assumed, taker.assumed...)
		if taker.unknown {
			a.miss(StallCurrent, taker.device)
		}
	}
	a.Wires = wires(k, c)
	a.Joints = joints(a.Wires)
	a.Together = min(t.together, len(t.hurt(false).movers))
	a.Guessed = !s.Control.MovesTogether.Stated() && len(t.hurt(false).movers) > t.together
	if !(a.Supply > 0) {
		a.miss(SupplyVolts, nil)
	} else if len(a.Missing) == 0 {
		a.reckon(t)
		a.Mends = a.mends(t)
		a.Splits = a.splits(t)
	}
	a.verdict()
	a.Fuse = a.fuse(t, gives(s.Control))
	return a
}

// trialOf is a chain as the file has it.
func trialOf(s *shop.Shop, k *control.Reckoning, c *shop.Chain) trial {
	t := trial{area: c.Cable, warm: c.Temperature.V, supply: s.Control.Supply.V, together: togetherOf(s)}
	for _, stop := range c.Stops {
		t.takers = append(t.takers, takerOf(s, k, stop))
		t.cables = append(t.cables, stop.Cable)
	}
	return t
}

// togetherOf is how many gates move at once; where the file has no control, as
// many as where it leaves the figure out.
func togetherOf(s *shop.Shop) int { return max(s.Control.MovesTogether.V, 1) }

// needOf is the lowest volts of a device: the gate's own, else the control's.
func needOf(s *shop.Shop, stop shop.ChainStop) (need unit.Voltage, own bool) {
	if g := stop.Gate; g != nil && g.Lowest.Known() {
		return g.Lowest.V, true
	}
	return s.Control.Lowest.V, false
}

func (a *Answer) miss(input Input, d *control.Device) {
	if gap := (Gap{input, d}); !slices.Contains(a.Missing, gap) {
		a.Missing = append(a.Missing, gap)
	}
}

// reckon solves the chain and judges every node.
func (a *Answer) reckon(t trial) {
	h := t.hurt(false)
	nodes, exact, err := h.lowest()
	a.Exact = exact
	sure, _, sureErr := t.hurt(true).lowest()
	rest, restErr := h.line.Solve(h.feeds...)
	if errors.Is(err, ErrNoSolution) {
		a.NoSolution = true
		a.Limit, a.Asks = limitOf(h)
	}
	for i := range a.Nodes {
		n := &a.Nodes[i]
		if err == nil && restErr == nil {
			n.solve(a, t, nodes[i+1], rest[i+1])
		}
		if n.Judged {
			certain := errors.Is(sureErr, ErrNoSolution) || sureErr == nil && n.Need > 0 && !unit.AtLeast(float64(sure[i+1].volts), float64(n.Need))
			a.judge(n, certain)
		}
	}
	a.Most = most(h, a)
}

// solve notes what a node gets.
func (n *Node) solve(a *Answer, t trial, w worst, rest unit.Voltage) {
	n.Solved, n.AtRest, n.Volts = true, rest, w.volts
	n.Share = float64(1 - w.volts/a.Supply)
	n.Margin = w.volts - n.Need
	for _, m := range w.set {
		n.Movers = append(n.Movers, t.takers[m-1].device)
	}
}

// judge gives a node its verdict. A lack that only an assumed current brings
// about is a question, not a fault.
func (a *Answer) judge(n *Node, certain bool) {
	switch {
	case certain:
		n.Verdict = Short
	case n.Need == 0:
		a.miss(LowestVolts, n.Device)
	case !n.Solved || !unit.AtLeast(float64(n.Volts), float64(n.Need)):
		for _, s := range a.Assumed {
			a.miss(s.Input, s.Device)
		}
	case !a.Wide(n.Margin) || len(a.Assumed) > 0 || a.Guessed || !a.Exact:
		n.Verdict = Thin
	default:
		n.Verdict = Holds
	}
}

// Usual is the margin that common practice leaves.
func (a *Answer) Usual() unit.Voltage { return unit.Voltage(figures.thin) * a.Supply }

// Wide reports whether a margin is as wide as common practice leaves it.
func (a *Answer) Wide(margin unit.Voltage) bool {
	return unit.AtLeast(float64(margin), float64(a.Usual()))
}

// limitOf is the most power that the gates with converters that hurt most can
// be sent together, and what they ask; 0 where no gate has one.
func limitOf(h hurt) (limit, asks unit.Power) {
	var set []int
	share := map[int]float64{} // of what a gate asks that it can be sent alone
	for _, m := range h.movers {
		if p := h.hard[m].Power; p > 0 {
			if alone, err := h.with(m).Limit(h.feeds...); err == nil {
				set, share[m] = append(set, m), float64(alone/p)
			}
		}
	}
	slices.SortStableFunc(set, func(a, b int) int { return unit.Compare(share[a], share[b]) })
	set = set[:min(h.together, len(set))]
	for _, m := range set {
		asks += h.hard[m].Power
	}
	if asks > 0 {
		limit, _ = h.with(set...).Limit(h.feeds...) // sound: each was solved alone
	}
	return limit, asks
}

// verdict gathers the verdicts of the nodes.
func (a *Answer) verdict() {
	a.Verdict = Holds
	for i, n := range a.Nodes {
		if !n.Judged {
			continue
		}
		a.Verdict = worseOf(a.Verdict, n.Verdict)
		if a.Worst < 0 || worse(n, a.Nodes[a.Worst]) {
			a.Worst = i
		}
	}
	if len(a.Missing) > 0 && a.Verdict != Short {
		a.Verdict = Unknown
	}
}

// worse reports whether a node has less margin than another; one whose need is
// known comes before one whose need is not.
func worse(n, than Node) bool {
	if (n.Need > 0) != (than.Need > 0) {
		return n.Need > 0
	}
	return unit.Compare(float64(n.Margin), float64(than.Margin)) < 0
}

// most is the most that a chain may draw: everything at rest, and the movers
// that add most.
func most(h hurt, a *Answer) unit.Current {
	sum := unit.Current(0)
	var adds []float64
	for i := range h.line.Loads {
		volts := a.Supply
		if i > 0 && a.Nodes[i-1].Solved {
			volts = a.Nodes[i-1].Volts
		}
		rest := h.line.Loads[i].Amps(volts)
		sum += rest
		if slices.Contains(h.movers, i) {
			adds = append(adds, float64(max(h.hard[i].Amps(volts)-rest, 0)))
		}
	}
	return sum + unit.Current(largest(adds, h.together))
}

// largest adds up the largest figures, so many of them.
func largest(list []float64, count int) (sum float64) {
	slices.SortFunc(list, func(a, b float64) int { return unit.Compare(b, a) })
	for _, x := range list[:min(count, len(list))] {
		sum += x
	}
	return sum
}
