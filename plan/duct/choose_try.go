package duct

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// outcome is what one choice of sizes comes to. Its figures are rounded: they
// decide.
type outcome struct {
	at     []int // of each duct, the place of its size
	score  float64
	miss   *Miss
	relief []Opened
	area   float64 // m²
	cost   float64 // m²
	energy float64 // W h a day
}

// almost is the most that the share of a missed need counts.
const almost = 0.999999

// better reports whether an outcome beats another: by its score, cost and
// energy, then by the smaller sizes in file order.
func (c *chooser) better(a, b *outcome) bool {
	switch {
	case b == nil:
		return true
	case a.score != b.score:
		return a.score > b.score
	case a.cost != b.cost:
		return a.cost < b.cost
	case a.energy != b.energy:
		return a.energy < b.energy
	}
	for _, d := range c.inFile {
		if a.at[d] != b.at[d] {
			return a.at[d] < b.at[d]
		}
	}
	return false
}

// sized is the tree with sizes for its ducts.
func (c *chooser) sized(at []int) *Tree {
	as := alteration{bore: map[*shop.Stretch]unit.Length{}, hose: map[*shop.Duct]*shop.Hose{}}
	for d, size := range at {
		as.size(c.ducts[d], c.sizes[d][size].bore)
	}
	return growAs(c.shop, c.tree.Collector, c.tree.State, as)
}

// size gives a duct a bore, and its hose too where that is the duct's.
func (as *alteration) size(d *shop.Duct, bore unit.Length) {
	for _, s := range d.Stretches {
		as.bore[s] = bore
	}
	if d.Hose != nil && d.Hose.Size == 0 {
		hose := *d.Hose
		hose.Size = bore
		as.hose[d] = &hose
	}
}

// try solves every use with sizes chosen. It gives up, with nothing, where the
// score falls under what is of use. Of what is known of the uses it takes which
// of them no relief helps.
func (c *chooser) try(at []int, known []bound) *outcome {
	c.tried++
	o := &outcome{at: append([]int(nil), at...), score: 1}
	for _, d := range c.inFile {
		o.area += c.sizes[d][at[d]].area
	}
	o.area = unit.Six(o.area)
	t := c.sized(at)
	all := make([][]*Result, len(c.uses))
	slow := make([]bool, len(c.uses)) // relief may help it
	for i, u := range c.uses {
		all[i] = t.solveAll(u)
		captured, carried := judged(all[i])
		if slow[i] = captured && !carried && (known == nil || known[i].score == 1); !slow[i] && !c.worth(all[i]) {
			return nil
		}
	}
	var x *trial
	gates := 0
	for i, u := range c.uses {
		if !slow[i] {
			continue
		}
		if x == nil {
			x = newTrial(t)
		}
		also := x.reliefOf(c, u)
		if c.left, x.draws = c.left-x.draws, 0; len(also) > 0 {
			gates += len(also)
			o.relief = append(o.relief, Opened{u, also})
			all[i] = t.solveAll(u.with(also))
		} else if !c.worth(all[i]) {
			return nil
		}
	}
	for i, u := range c.uses {
		o.energy += u.hours() * watts(all[i][0])
		for _, r := range all[i] {
			if miss := missOf(u, r); miss != nil && (o.miss == nil || miss.Share < o.score) {
				o.score, o.miss = miss.Share, miss
			}
		}
	}
	o.cost, o.energy = unit.Six(o.area+float64(gates)*float64(reliefPrice)), unit.Six(o.energy)
	return o
}

// worth reports whether the results of a use leave its choice of use.
func (c *chooser) worth(results []*Result) bool {
	least := c.least
	if c.best != nil {
		least = max(least, c.best.score)
	}
	for _, r := range results {
		if miss := missOf(nil, r); miss != nil && miss.Share < least {
			return false
		}
	}
	return true
}

func (t *Tree) solveAll(u *Use) (list []*Result) {
	for _, filter := range States(t.Collector) {
		list = append(list, t.Solve(u, filter))
	}
	return list
}

func judged(results []*Result) (captured, carried bool) {
	captured, carried = true, true
	for _, r := range results {
		captured, carried = captured && r.Captured, carried && r.Carried
	}
	return captured, carried
}

// with is the use with gates opened as well.
func (u *Use) with(also []*shop.Gate) *Use {
	more := *u
	more.Open = map[*shop.Gate]bool{}
	for g := range u.Open {
		more.Open[g] = true
	}
	for _, g := range also {
		more.Open[g] = true
	}
	return &more
}

// hours a day that a use runs; one where the file does not say.
func (u *Use) hours() float64 {
	switch {
	case u.Stated != nil && u.Stated.Hours.Known():
		return u.Stated.Hours.V
	case u.Kind == OneMachine && u.Machines[0].Hours.Known():
		return u.Machines[0].Hours.V
	}
	return 1
}

// watts are those of the fan's shaft, or of its air where the shaft's are not
// known.
func watts(r *Result) float64 {
	if !r.OnCurve {
		return 0
	}
	if r.PowerKnown {
		return float64(r.Power)
	}
	return float64(r.Flow) * float64(r.Static)
}

// reliefOf finds the relief of a use that is captured but not carried.
func (x *trial) reliefOf(c *chooser, u *Use) []*shop.Gate {
	members := x.members(u.Machines)
	x.run(members)
	for g := range u.Open {
		if at, here := x.tree.number[g]; here {
			x.open[at] = true
		}
	}
	return x.relief(c.ctx, members).Gates
}

// missOf is what a result misses by most; nil where it is captured and carried.
func missOf(u *Use, r *Result) *Miss {
	if r.Captured && r.Carried {
		return nil
	}
	m := &Miss{Use: u, Filter: r.Filter, Share: math.Inf(1), Why: r.Why}
	if !r.OnCurve {
		m.Share = 0
		return m
	}
	if p, share := r.Weakest(); p != nil {
		m.Port, m.Share = p.Port, share
	}
	if s, share := r.Slowest(); s != nil && share < m.Share && !r.Carried {
		m.Port, m.Stretch, m.Share = nil, s.Stretch, share
		m.Hose = s.Hose && s.HoseVelocity < s.Velocity
	}
	m.Share = min(m.Share, almost)
	return m
}
