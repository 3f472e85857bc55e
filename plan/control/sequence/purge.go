package sequence

import "dustbook/plan/control/trace"

// mayPurge reports whether a purge can begin: nothing else asks for anything on
// its collector, nothing holds its fan, and no gate is lost.
func (r *Runner) mayPurge(t int) bool {
	c := r.head.Triggers[t].Starts[0]
	if !r.power || r.lockout || r.fans[c].held {
		return false
	}
	for other := range r.asks {
		if other != t && r.works.touches[other].Has(c) && r.asks[other].state != trace.Idle {
			return false
		}
	}
	return !r.anyLost(c) && r.nextTurn(t, 0)
}

// nextTurn finds the first turn from one on whose gates can all open.
func (r *Runner) nextTurn(t, from int) bool {
	turns := r.head.Triggers[t].Turns
	for i := from; i < len(turns); i++ {
		able := true
		for _, g := range r.head.Triggers[turns[i]].Opens {
			able = able && r.gates[g].state != trace.Faulted && r.gates[g].state != trace.LockedShut
		}
		if able {
			r.asks[t].next = i
			if from == 0 {
				r.asks[t].turn = i
			}
			return true
		}
	}
	return false
}

// advancePurges takes purges to their next turns: once the gates of a turn have
// arrived and its time is over. The gates of the turn before are kept until then.
func (r *Runner) advancePurges() {
	for t := range r.asks {
		a := &r.asks[t]
		if !r.head.Triggers[t].Purge || !a.sent || !a.counts {
			continue
		}
		fan := r.fans[r.head.Triggers[t].Starts[0]].state
		switch {
		case r.blocked(t):
			if r.changed = true; !r.nextTurn(t, a.next+1) {
				r.forget(t)
			} else if fan != trace.FanOn {
				a.turn = a.next
			}
		case fan != trace.FanOn || !r.arrived(t):
			a.until = never
		case a.turn != a.next || a.until == never:
			a.turn, a.until, r.changed = a.next, r.now+r.head.Triggers[t].RunOn, true
		case a.until <= r.now && !r.nextTurn(t, a.next+1):
			r.forget(t)
		case a.until <= r.now:
			a.until, r.changed = never, true
		}
	}
}

// blocked reports whether a gate of a purge's next turn cannot open.
func (r *Runner) blocked(t int) bool {
	for _, g := range r.opens(t) {
		if state := r.gates[g].state; state == trace.Faulted || state == trace.LockedShut {
			return true
		}
	}
	return false
}

// yieldPurge ends a purge when something else asks on its collector. Its gates
// stay until those of the other have arrived, so that the fan need not stop.
func (r *Runner) yieldPurge(t int) {
	if r.head.Triggers[t].Purge || !r.keeps(purgeYields) {
		return
	}
	for other := range r.asks {
		if !r.head.Triggers[other].Purge || !r.asks[other].on || !r.works.touches[t].Has(r.head.Triggers[other].Starts[0]) {
			continue
		}
		if a := &r.asks[other]; a.state == trace.Served {
			a.on, a.counts, a.until = false, false, r.now
			r.say(other, trace.RunsOn, 0)
		} else {
			r.forget(other)
		}
	}
}
