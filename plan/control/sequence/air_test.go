package sequence

import "dustbook/plan/control/trace"

// rough is an Air made of counts: so many branches are fed at most, and the
// trunk carries the dust of one machine only with so many branches open. It
// stands in for the solver where stories are tried by the million.
type rough struct {
	h      *trace.Head
	branch []trace.Set // powered gates on the ways of each machine
	zones  trace.Set
	feeds  int // branches at most
	heavy  int // the machine whose dust needs more
	wants  int // branches at least
}

func roughly(h *trace.Head) *rough {
	a := &rough{h: h, feeds: 3, heavy: 1, wants: 2}
	for m := range h.Machines {
		var set trace.Set
		for _, w := range h.Machines[m].Ways {
			for _, g := range w.Gates {
				if !h.Gates[g].ByHand {
					set.Add(g)
				}
			}
		}
		a.branch = append(a.branch, set)
	}
	for g := range h.Gates {
		if h.Gates[g].Zone {
			a.zones.Add(g)
		}
	}
	return a
}

func (a *rough) Judge(open, running, carrying trace.Set) (short, slow trace.Set) {
	own := open.Without(a.zones)
	branches := own.Count()
	for m := range a.branch {
		if carrying.Has(m) && a.branch[m].Within(open) && a.branch[m].Within(a.zones) {
			branches++ // behind a gate that a person moves
		}
		if running.Has(m) && !a.branch[m].Within(open) {
			short.Add(m)
		}
	}
	if branches > a.feeds {
		short = running
	}
	if carrying.Has(a.heavy) && branches < a.wants {
		slow.Add(0)
	}
	return short, slow
}
