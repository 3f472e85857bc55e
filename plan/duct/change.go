package duct

import (
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// First says what to change first for the weakest port of a use on one
// collector, with the filter in one state.
type First struct {
	Result  *Result
	Port    *shop.Port // the one that gets the least share of its need, the first where several do
	Flow    unit.Flow  // what it gets
	Share   float64    // of its need
	All     unit.Flow  // what it gets with every change of the ducts that gains air made together, the most first, as far as they go together
	Changes []Change   // by the air they gain, then in the order of the data and on the way to the collector; those that leave the fan's curve last
}

// Change is one change of the shop, made alone.
type Change struct {
	Name string // as its row of the data
	Work string // what it takes, in a word of the data

	Duct    *shop.Duct    // what it is made on; nil for the filter and the collector
	Stretch *shop.Stretch // of a wider pipe: the one stretch that is replaced; nil where it is the whole duct
	Leak    *shop.Leak    // the hole that is closed
	Size    unit.Length   // of a wider pipe: its nominal size
	Length  unit.Length   // of a hose: what is left of it; of a collector moved: how much nearer
	Angle   unit.Angle    // of a branch fitting
	Elbows  string        // their make

	OnCurve           bool // what the collector does with the change
	Fan               unit.Flow
	Captured, Carried bool
	Flow, Gain        unit.Flow // what the port gets then, and by how much that is more

	as     alteration
	filter string
}

// First is what to change first for the weakest port of a result; nil where it
// is off the curve or no port of the use on this collector needs air. The hose
// stays as it is where a pipe is replaced, and a wye in place of a steeper one
// has the elbow that the route then asks for.
func (k *Reckoning) First(r *Result) *First {
	t := k.TreeOf(r.Collector)
	f := &First{Result: r}
	if t == nil || !r.OnCurve {
		return nil
	}
	for i := range r.Ports {
		p := &r.Ports[i]
		if p.Port.Flow <= 0 || p.Port.Duct == nil {
			continue
		}
		if served, _ := r.Use.Served(p.Port.Duct); served != p.Port {
			continue
		}
		if share := unit.Six(float64(p.Flow / p.Port.Flow)); f.Port == nil || share < f.Share {
			f.Port, f.Flow, f.Share = p.Port, p.Flow, share
		}
	}
	if f.Port == nil {
		return nil
	}
	f.Changes = t.changes(r, f.Port)
	for i := range f.Changes {
		f.Changes[i].solve(t, f)
	}
	slices.SortStableFunc(f.Changes, func(a, b Change) int {
		if a.OnCurve != b.OnCurve {
			if a.OnCurve {
				return -1
			}
			return 1
		}
		return unit.Compare(float64(b.Gain), float64(a.Gain))
	})
	f.All = f.together(t)
	return f
}

// together is what the port gets with every change of the ducts that gains air;
// where two alter the same thing, the one that gains more. The filter stays as
// it is. Off the curve, it is what the port gets now.
func (f *First) together(t *Tree) unit.Flow {
	as, some := alteration{}, false
	for _, c := range f.Changes {
		if c.OnCurve && c.Gain > 0 && c.filter == f.Result.Filter {
			as.also(c.as)
			some = true
		}
	}
	if !some {
		return f.Flow
	}
	r := growAs(t.shop, t.Collector, t.State, as).Solve(f.Result.Use, f.Result.Filter)
	for _, p := range r.Ports {
		if p.Port == f.Port && r.OnCurve {
			return max(f.Flow, p.Flow)
		}
	}
	return f.Flow
}

// solve solves the use with the change made.
func (c *Change) solve(t *Tree, f *First) {
	r := growAs(t.shop, t.Collector, t.State, c.as).Solve(f.Result.Use, c.filter)
	c.OnCurve, c.Fan, c.Captured, c.Carried = r.OnCurve, r.Flow, r.Captured, r.Carried
	for _, p := range r.Ports {
		if p.Port == f.Port && r.OnCurve {
			c.Flow = p.Flow
			c.Gain = unit.Flow(unit.Six(float64(p.Flow - f.Flow)))
		}
	}
}

// change starts a change by its row of the data.
func change(name string, r *Result) Change {
	return Change{Name: name, Work: changeTable.Row(name).Text("work"), filter: r.Filter}
}

// changes lists every single change that applies for a port, in the order of
// the data and on the way to the collector.
func (t *Tree) changes(r *Result, p *shop.Port) (list []Change) {
	if r.Filter == ChangeOut {
		c := change("clean filter", r)
		c.filter = Clean
		list = append(list, c)
	}
	for _, leak := range r.Leaks {
		if leak.Flow > 0 {
			c := change("leak closed", r)
			c.Duct, c.Leak, c.as.closed = leak.Leak.On, leak.Leak, map[*shop.Leak]bool{leak.Leak: true}
			list = append(list, c)
		}
	}
	way := onTheWay(p)
	list = append(list, t.hoseChanges(r, p)...)
	for _, w := range way {
		list = append(list, t.elbowChanges(r, w)...)
	}
	for _, name := range []string{"wye 45 deg", "wye 30 deg"} {
		for _, w := range way {
			list = append(list, t.wyeChanges(name, r, w.duct)...)
		}
	}
	for _, w := range way {
		list = append(list, t.pipeChanges(r, w)...)
	}
	return append(list, t.moveChanges(r, way[len(way)-1].duct)...)
}

// leg is a duct on a port's way to the collector, with the stretches of it
// that the way takes.
type leg struct {
	duct      *shop.Duct
	stretches []*shop.Stretch
}

func onTheWay(p *shop.Port) (way []leg) {
	for _, s := range p.Path() {
		if n := len(way); n == 0 || way[n-1].duct != s.Duct {
			way = append(way, leg{duct: s.Duct})
		}
		at := &way[len(way)-1]
		at.stretches = append(at.stretches, s)
	}
	return way
}
