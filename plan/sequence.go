package plan

import (
	"sync"

	"dustbook/plan/control/sequence"
	"dustbook/plan/control/trace"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// Sequence is the control half as works that can be run, with the air of the
// shop's own ducts to judge open gates by. The air may be asked by several at a
// time. The error says what the shop has too much of to be run.
func (p *Plan) Sequence() (*sequence.Works, sequence.Air, error) {
	works, err := sequence.Of(p.Shop, p.Control, p.Times)
	if err != nil {
		return nil, nil, err
	}
	air := &solvedAir{plan: p, head: works.Head, known: map[question]answer{}, stretches: map[*shop.Stretch]int{}}
	for _, d := range p.Shop.Ducts {
		for _, s := range d.Stretches {
			air.stretches[s] = len(air.stretches)
		}
	}
	return works, air, nil
}

// solvedAir judges open gates by solving the ducts for them, each question
// once.
type solvedAir struct {
	plan      *Plan
	head      *trace.Head
	stretches map[*shop.Stretch]int

	lock  sync.Mutex
	known map[question]answer
}

type question struct{ open, running, carrying trace.Set }

type answer struct{ short, slow trace.Set }

// Judge solves the ducts with the gates open, the filter in each state. A
// machine is short, and a stretch slow, where it is so in one of them.
func (a *solvedAir) Judge(open, running, carrying trace.Set) (short, slow trace.Set) {
	q := question{open, running, carrying}
	a.lock.Lock()
	v, known := a.known[q]
	a.lock.Unlock()
	if known {
		return v.short, v.slow
	}
	gates := a.gates(open, carrying)
	of := a.solve(gates, running)
	v.short = of.short
	if carrying != running {
		of = a.solve(gates, carrying)
	}
	v.slow = of.slow
	a.lock.Lock()
	a.known[q] = v
	a.lock.Unlock()
	return v.short, v.slow
}

// gates are the gates of a set, and those that a person opens on the ways of
// machines.
func (a *solvedAir) gates(open, machines trace.Set) map[*shop.Gate]bool {
	gates := map[*shop.Gate]bool{}
	for _, g := range open.Numbers() {
		gates[a.plan.Shop.Gates[g]] = true
	}
	for _, m := range machines.Numbers() {
		for _, way := range a.head.Machines[m].Ways {
			for _, g := range way.Gates {
				if a.head.Gates[g].ByHand {
					gates[a.plan.Shop.Gates[g]] = true
				}
			}
		}
	}
	return gates
}

// solve judges machines with gates open.
func (a *solvedAir) solve(gates map[*shop.Gate]bool, machines trace.Set) (v answer) {
	if machines.Empty() {
		return v
	}
	use := &duct.Use{Kind: duct.Together, Open: gates}
	number := map[*shop.Machine]int{}
	for _, m := range machines.Numbers() {
		use.Machines = append(use.Machines, a.plan.Shop.Machines[m])
		number[a.plan.Shop.Machines[m]] = m
	}
	for _, tree := range a.plan.Air.Trees {
		for _, filter := range duct.States(tree.Collector) {
			r := tree.Solve(use, filter)
			for _, p := range r.Ports {
				if !p.Captured {
					v.short.Add(number[p.Port.Machine])
				}
			}
			for _, s := range r.Stretches {
				if s.Judged && !(s.Carries && s.HoseCarries) {
					v.slow.Add(a.stretches[s.Stretch])
				}
			}
		}
	}
	return v
}
