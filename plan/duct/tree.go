package duct

import (
	"math"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Tree is one collector's ducts as a network, with what each edge stands for.
type Tree struct {
	Collector *shop.Collector
	State     air.State

	shop   *shop.Shop
	as     alteration
	how    air.Change
	parts  []part
	gates  []*shop.Gate // on its ducts, in file order
	number map[*shop.Gate]int
	byEdge map[*shop.Stretch]int
	byEnd  map[*shop.Duct]int
	byLeak map[*shop.Leak]int

	// Fallbacks are the junctions that the method "flow split" does not
	// cover and that are charged by angle instead.
	Fallbacks []*shop.Duct
}

// part is one edge with its sources: a stretch, a machine's end of a duct,
// or a leak.
type part struct {
	edge    Edge
	stretch *shop.Stretch
	end     *shop.Duct // the duct whose hood end this is
	leak    *shop.Leak
	ends    []Edge    // of an end: one for each port it may serve
	numbers []int     // of a stretch: its gates' places among those of the collector
	gates   []float64 // of a stretch: what each shut gate adds to Quad; +Inf shuts it off
}

// Grow makes the tree of one collector.
func Grow(s *shop.Shop, c *shop.Collector, state air.State) *Tree {
	return growAs(s, c, state, alteration{})
}

// growAs makes the tree with something altered.
func growAs(s *shop.Shop, c *shop.Collector, state air.State, as alteration) *Tree {
	how, _ := air.ReadChange(s.SizeChanges)
	t := &Tree{Collector: c, State: state, shop: s, as: as, how: how, byEdge: map[*shop.Stretch]int{}, byEnd: map[*shop.Duct]int{}, byLeak: map[*shop.Leak]int{}, number: map[*shop.Gate]int{}}
	for _, g := range s.Gates {
		if g.On.Collector == c {
			t.number[g] = len(t.gates)
			t.gates = append(t.gates, g)
		}
	}
	for _, d := range s.Ducts {
		if d.Into == nil && d.Collector == c {
			t.grow(d)
		}
	}
	if s.Junctions == "flow split" {
		t.splitWyes()
	}
	return t
}

// grow adds a duct and all that empties into it. It returns the edges whose
// air leaves at the duct's downstream end.
func (t *Tree) grow(d *shop.Duct) []int {
	var ahead []int
	into := func(node int) {
		for _, other := range d.Joined {
			if other.JoinNode == node {
				ahead = append(ahead, t.grow(other)...)
			}
		}
		for _, leak := range d.Leaks {
			if leak.Node == node && !t.as.closed[leak] {
				ahead = append(ahead, t.addLeak(leak))
			}
		}
	}
	if len(d.Serves) > 0 {
		ahead = append(ahead, t.addEnd(d))
	}
	for i, s := range d.Stretches {
		into(i)
		at := t.addStretch(s)
		for _, e := range ahead {
			t.parts[e].edge.Down = at
		}
		ahead = []int{at}
	}
	into(len(d.Stretches))
	return ahead
}

func (t *Tree) add(p part) int {
	p.edge.Down = -1
	t.parts = append(t.parts, p)
	return len(t.parts) - 1
}

// dynamic is the velocity pressure at 1 m³/s in a bore, in Pa/(m³/s)².
func dynamic(state air.State, bore unit.Length) float64 {
	area := float64(air.Bore(bore))
	return float64(state.Density) / 2 / (area * area)
}

// pipe is an edge with friction alone.
func pipe(state air.State, bore, roughness, length unit.Length, times float64) Edge {
	e := Edge{
		Fric: dynamic(state, bore) * float64(length) / float64(bore) * times,
		Re:   4 / (math.Pi * float64(bore) * state.Kinematic()),
		Rel:  float64(roughness) / float64(bore),
	}
	e.Root = 1 / math.Sqrt(air.Factor(air.Reynolds(state, usualSpeed, bore), e.Rel))
	return e
}

// usualSpeed is a speed in the middle of what dust ducts run at, for first
// guesses alone.
const usualSpeed unit.Velocity = 20

// change is the coefficient where one bore meets the next, in Pa/(m³/s)²: a
// widening on the velocity pressure of the smaller end before it, a
// narrowing on that of the smaller end behind it, both at the same flow.
func (t *Tree) change(from, to unit.Length) float64 {
	switch {
	case unit.Compare(float64(from), float64(to)) < 0:
		return air.Widening(from, to, t.how) * dynamic(t.State, from)
	case unit.Compare(float64(from), float64(to)) > 0:
		return air.Narrowing(from, to, t.how) * dynamic(t.State, to)
	}
	return 0
}

func (t *Tree) addStretch(s *shop.Stretch) int {
	d, bore := s.Duct, t.bore(s)
	e := pipe(t.State, bore, d.Roughness, t.length(s), 1)
	e.Quad = t.own(s)*dynamic(t.State, bore) + t.change(bore, t.below(s))
	p := part{edge: e, stretch: s}
	for _, g := range s.Gates {
		p.numbers = append(p.numbers, t.number[g])
		p.gates = append(p.gates, shutLoss(g, bore)*dynamic(t.State, bore))
	}
	at := t.add(p)
	t.byEdge[s] = at
	return at
}

// own is the sum of a stretch's coefficients on its own velocity pressure.
func (t *Tree) own(s *shop.Stretch) float64 {
	d, k := s.Duct, 0.0
	for _, turn := range t.turns(s) {
		k += air.Elbow(t.elbow(d), turn.Angle)
	}
	if s.Last() {
		k += d.Loss + t.entry(d)
	}
	return k
}

// entry is the entry coefficient of the fitting a duct joins by.
func (t *Tree) entry(d *shop.Duct) float64 {
	if t.shop.Junctions == "none" || d.Into == nil {
		return 0
	}
	return air.Entry(t.angle(d))
}

// shutLoss is the coefficient that a shut gate adds; +Inf where nothing
// passes.
func shutLoss(g *shop.Gate, bore unit.Length) float64 {
	switch {
	case g.Leak.None:
		return math.Inf(1)
	case g.Leak.Share > 0:
		return air.LeakCoefficient(g.Leak.Share)
	}
	return air.FlowCoefficient(g.Leak.Flow, g.Leak.Press, bore, air.Standard())
}

// addEnd adds the hood and hose of a duct: one edge, with one form for each
// port it may serve.
func (t *Tree) addEnd(d *shop.Duct) int {
	p := part{end: d}
	for _, port := range d.Serves {
		p.ends = append(p.ends, t.hood(port, t.hose(d), t.bore(d.Stretches[0])))
	}
	p.edge = p.ends[0]
	at := t.add(p)
	t.byEnd[d] = at
	return at
}

// hood is the edge of a port's hood, with the hose between it and a pipe.
func (t *Tree) hood(port *shop.Port, hose *shop.Hose, bore unit.Length) Edge {
	e := Edge{Quad: port.HoodLoss * dynamic(t.State, port.Size)}
	if hose != nil {
		e = pipe(t.State, hose.Size, hose.Roughness, hose.Length, hose.Times)
		e.Quad = port.HoodLoss*dynamic(t.State, port.Size) + t.change(port.Size, hose.Size) + t.change(hose.Size, bore)
	} else {
		e.Quad += t.change(port.Size, bore)
	}
	e.Leaf = true
	return e
}

func (t *Tree) addLeak(l *shop.Leak) int {
	// a hole draws with the square root of the pressure: what it draws at one
	// pascal says all
	atOne := float64(air.Orifice(air.Bore(l.Hole), air.Discharge(), 1, t.State))
	at := t.add(part{edge: Edge{Quad: 1 / (atOne * atOne), Leaf: true}, leak: l})
	t.byLeak[l] = at
	return at
}

// splitWyes puts the flow-split loss on every junction that the formulas
// cover, in place of the branch's entry coefficient.
func (t *Tree) splitWyes() {
	for _, d := range t.shop.Ducts {
		into := d.Into
		if into == nil || d.Collector != t.Collector || !d.Wye {
			continue
		}
		if !t.splitWye(d) {
			t.Fallbacks = append(t.Fallbacks, d)
		}
	}
}

// splitWye covers a branch that joins a run between two stretches of one
// duct, alone at its place and of a size and angle within the formulas.
func (t *Tree) splitWye(d *shop.Duct) bool {
	into, node := d.Into, d.JoinNode
	if node == 0 || node >= len(into.Stretches) {
		return false
	}
	for _, other := range into.Joined {
		if other != d && other.JoinNode == node {
			return false
		}
	}
	before, behind, own := into.Stretches[node-1], into.Stretches[node], last(d)
	wye, ok := air.Converging(t.angle(d), t.bore(before), t.bore(own), t.bore(behind))
	if !ok {
		return false
	}
	unitLoss := dynamic(t.State, t.bore(behind))
	branch, run := &t.parts[t.byEdge[own]].edge, &t.parts[t.byEdge[before]].edge
	if len(into.Leaks) > 0 && t.leaksAt(into, node) {
		return false
	}
	branch.Quad -= air.Entry(t.angle(d)) * dynamic(t.State, t.bore(own))
	branch.Quad -= t.change(t.bore(own), t.bore(behind)) // the formulas hold the widening
	branch.Wye = &Split{Branch: true, Wye: wye, Dynamic: unitLoss}
	run.Wye = &Split{Wye: wye, Dynamic: unitLoss}
	return true
}

func (t *Tree) leaksAt(d *shop.Duct, node int) bool {
	for _, l := range d.Leaks {
		if l.Node == node && !t.as.closed[l] {
			return true
		}
	}
	return false
}
