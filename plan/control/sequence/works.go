package sequence

import (
	"cmp"
	"slices"

	"dustbook/plan/control/trace"
)

// Works is what is there to be run: the head of every trace, and what is looked
// up in it again and again.
type Works struct {
	Head *trace.Head

	opens   []trace.Set // gates of each trigger
	starts  []trace.Set // collectors of each trigger
	touches []trace.Set // collectors each trigger starts or opens gates of
	able    []bool      // whether a trigger has a whole way to every collector it starts
	ends    []trace.Set // of each machine: those that share a movable end with it
	behind  []trace.Set // of each zone gate: the powered gates whose air passes it
	closing [][]int     // powered gates of each collector in the order in which they shut
}

// Prepare makes works of a head. It refuses more things than a set holds, and a
// gate on no way, with a *Fault.
func Prepare(h *trace.Head) (*Works, error) {
	for _, n := range []struct {
		kind  FaultKind
		count int
	}{{ManyGates, len(h.Gates)}, {ManyMachines, len(h.Machines)}, {ManyCollectors, len(h.Collectors)}, {ManyStretches, len(h.Stretches)}} {
		if n.count > trace.Most {
			return nil, &Fault{Kind: n.kind, Count: n.count, Most: trace.Most}
		}
	}
	for _, g := range h.Gates {
		if g.Collector < 0 {
			return nil, &Fault{Kind: StrayGate, Name: g.Name}
		}
	}
	w := &Works{Head: h, behind: make([]trace.Set, len(h.Gates)), ends: make([]trace.Set, len(h.Machines)), closing: make([][]int, len(h.Collectors))}
	for i := range h.Triggers {
		w.trigger(&h.Triggers[i])
	}
	for g := range h.Gates {
		if h.Gates[g].ByHand {
			continue
		}
		for _, z := range h.Gates[g].Zones {
			w.behind[z].Add(g)
		}
		c := h.Gates[g].Collector
		w.closing[c] = append(w.closing[c], g)
	}
	for _, list := range w.closing {
		slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(w.depth(a), w.depth(b)) })
	}
	for _, end := range h.Ends {
		for _, m := range end {
			for _, other := range end {
				if other != m {
					w.ends[m].Add(other)
				}
			}
		}
	}
	return w, nil
}

// depth puts gates of machines before zone gates, and those before zone gates
// nearer to the collector.
func (w *Works) depth(g int) int {
	if !w.Head.Gates[g].Zone {
		return -len(w.Head.Gates)
	}
	return -len(w.Head.Gates[g].Zones)
}

// trigger notes what a trigger touches and whether it can be served.
func (w *Works) trigger(t *trace.Trigger) {
	starts, touches := trace.SetOf(t.Starts...), trace.SetOf(t.Starts...)
	for _, g := range t.Opens {
		touches.Add(w.Head.Gates[g].Collector)
	}
	able := true
	for _, c := range t.Starts {
		able = able && slices.ContainsFunc(t.Ways, func(way trace.Way) bool { return way.Collector == c && way.Whole })
	}
	w.opens = append(w.opens, trace.SetOf(t.Opens...))
	w.starts, w.touches = append(w.starts, starts), append(w.touches, touches)
	w.able = append(w.able, able || t.Purge)
}
