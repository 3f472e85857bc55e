package duct

import (
	"math"
	"slices"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// A trial solves one tree again and again, with other machines and other gates
// open, in space that it keeps. It answers what Tree.Solve answers, by the same
// rounding, without the figures. One goroutine uses it at a time.
type trial struct {
	tree   *Tree
	fans   []*Fan // one for each state of the filter
	open   []bool // of gates
	stands []int  // of parts that are ends: the port they stand at

	net    *Network
	solver *Solver
	sums   []float64
	note   Result // takes the words of a solve
	draws  int    // how often it has solved
	falls  bool   // the fan falls and no loss hangs on how flows split
	member map[*shop.Machine]*member
}

// member is what a machine means to one tree.
type member struct {
	machine *shop.Machine
	opens   []int // of gates
	ports   []standing
	bare    []*shop.Port // no duct serves them
	path    []passed
}

// standing is a port where its duct's end stands in place of the other ports
// it may serve.
type standing struct {
	port *shop.Port
	part int  // the end
	form int  // which of its forms
	held bool // another port of the same machine has the end
}

// passed is a stretch a machine's dust passes, and the velocity it needs there.
type passed struct {
	stretch *shop.Stretch
	order   int // among the stretches, in file order
	part    int
	hose    int // the part of its hose, -1 without one
	need    unit.Velocity
	weak    bool // that need is from memory or practice
}

func newTrial(t *Tree) *trial {
	x := &trial{tree: t, net: &Network{Edges: make([]Edge, len(t.parts))}, member: map[*shop.Machine]*member{}, falls: true}
	for _, filter := range States(t.Collector) {
		fan := NewFan(t.Collector, t.State, filter)
		x.fans = append(x.fans, fan)
		x.falls = x.falls && fan.Falls()
	}
	for i := range t.parts {
		x.net.splits = x.net.splits || t.parts[i].edge.Wye != nil
	}
	x.falls = x.falls && !x.net.splits
	x.open, x.stands, x.sums = make([]bool, len(t.gates)), make([]int, len(t.parts)), make([]float64, len(t.parts))
	for _, m := range t.shop.Machines {
		x.member[m] = t.memberOf(m)
	}
	x.solver = NewSolver(&Network{})
	return x
}

// memberOf finds what a machine alone opens, draws and passes.
func (t *Tree) memberOf(m *shop.Machine) *member {
	v := &member{machine: m}
	for g := range openFor([]*shop.Machine{m}, nil) {
		if at, here := t.number[g]; here {
			v.opens = append(v.opens, at)
		}
	}
	slices.Sort(v.opens)
	raise := air.CarryRaise(t.State)
	order := map[*shop.Stretch]int{}
	for _, d := range t.shop.Ducts {
		for _, s := range d.Stretches {
			order[s] = len(order)
		}
	}
	alone := &Use{Machines: []*shop.Machine{m}}
	for _, p := range m.Ports {
		if p.Duct == nil {
			v.bare = append(v.bare, p)
			continue
		}
		if p.Duct.Collector != t.Collector {
			continue
		}
		served, form := alone.Served(p.Duct)
		v.ports = append(v.ports, standing{p, t.byEnd[p.Duct], form, served != p})
		if served != p {
			continue
		}
		for _, s := range p.Path() {
			at := passed{stretch: s, part: t.byEdge[s], hose: -1, order: order[s]}
			if s.Number == 1 && t.hose(s.Duct) != nil {
				at.hose = t.byEnd[s.Duct]
			}
			need, name, basis := Need(s, m)
			if name != "given" {
				need = unit.Velocity(unit.Six(float64(need) * raise))
			}
			at.need, at.weak = need, basis.Mark.Weak()
			v.path = append(v.path, at)
		}
	}
	return v
}

// run sets which machines run: their hoses and their gates. No two of them
// may share an end.
func (x *trial) run(members []*member) {
	clear(x.open)
	clear(x.stands)
	for _, m := range members {
		for _, g := range m.opens {
			x.open[g] = true
		}
		for _, p := range m.ports {
			if !p.held {
				x.stands[p.part] = p.form
			}
		}
	}
}

// set makes the network anew for what is open.
func (x *trial) set() {
	for i := range x.tree.parts {
		p := &x.tree.parts[i]
		e := p.edge
		if p.end != nil {
			e = p.ends[x.stands[i]]
			e.Down = p.edge.Down
		}
		for k, g := range p.numbers {
			switch shut := p.gates[k]; {
			case x.open[g]:
			case math.IsInf(shut, 1):
				e.Dead = true
			default:
				e.Quad += shut
			}
		}
		x.net.Edges[i] = e
	}
	x.net.MarkDead()
	x.solver.Take(x.net)
}

// draw finds the flow with the filter in one state; the network is set. After
// another state the search starts from its flows.
func (x *trial) draw(state int) (flow float64, ok bool) {
	x.note.Why, x.note.Crossings = source.Reason{}, nil
	x.draws++
	return operate(x.solver, x.fans[state], &x.note, false)
}

// round puts the flows of the last draw on the grid that results stand on.
func (x *trial) round(flow float64) {
	total := addUp(x.sums, x.net, x.solver, unit.Grid(flow))
	if unit.Six(total) != total {
		addUp(x.sums, x.net, x.solver, unit.Grid(total))
	}
}
