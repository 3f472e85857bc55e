package sequence

import "dustbook/plan/control/trace"

// happen takes in an event.
func (r *Runner) happen(e Event) {
	r.note(trace.Happens, e.Thing, uint8(e.What), 0)
	switch e.What {
	case trace.On:
		r.comesOn(e.Thing)
	case trace.Off:
		r.goesOff(e.Thing)
	case trace.LockoutOn:
		r.lock()
	case trace.LockoutOff:
		r.lockout = false
	case trace.PowerCut:
		r.cut()
	case trace.PowerBack:
		r.back()
	case trace.StopPressed:
		r.stop(e.Thing)
	case trace.HoldOn, trace.HoldOff:
		r.fans[e.Thing].held = e.What == trace.HoldOn
	case trace.StartsUsedUp:
		r.useUp(e.Thing)
	default:
		r.seeTo(e)
	}
}

// seeTo takes in what is done to a gate.
func (r *Runner) seeTo(e Event) {
	g := &r.gates[e.Thing]
	if r.head.Gates[e.Thing].ByHand {
		return
	}
	switch e.What {
	case trace.GateSticks:
		if !g.stuck && g.state.Moves() && r.head.Gates[e.Thing].Proof == trace.BySwitch && g.state != trace.Homing {
			g.until += r.head.Gates[e.Thing].Margin
		}
		g.stuck = true
	case trace.GateFreed:
		if g.stuck = false; g.state == trace.Faulted {
			r.put(e.Thing, trace.Between, 0)
			g.lost = g.lost || r.anyLost(r.head.Gates[e.Thing].Collector) // it looks for its stops with the others
		}
	case trace.GateLocked:
		if g.state == trace.Shut {
			r.put(e.Thing, trace.LockedShut, 0)
		}
	case trace.GateUnlocked:
		if g.state == trace.LockedShut {
			r.put(e.Thing, trace.Shut, 0)
		}
	case trace.Confirmed:
		if g.unseen && r.power {
			g.unseen = false
			r.put(e.Thing, trace.Open, 0)
		}
	}
}

// comesOn takes in a trigger that comes on. It counts only where it may.
func (r *Runner) comesOn(t int) {
	a := &r.asks[t]
	if a.on || !r.power && r.head.Triggers[t].Latched {
		return
	}
	if r.head.Triggers[t].Purge && !r.mayPurge(t) {
		return
	}
	a.on = true
	if !r.power {
		return
	}
	a.since = r.now
	if r.lockout && r.keeps(lockoutHolds) {
		return
	}
	r.count(t)
}

// count lets a trigger that is on count from now, as something new that is
// asked for.
func (r *Runner) count(t int) {
	a := &r.asks[t]
	a.counts, a.sent = true, false
	for c := range r.fans {
		if r.works.touches[t].Has(c) {
			r.fans[c].stopped = false
		}
	}
	r.queue = append(r.dropped(t), t)
	r.yieldPurge(t)
}

// dropped is the queue without a trigger.
func (r *Runner) dropped(t int) []int {
	kept := r.queue[:0]
	for _, other := range r.queue {
		if other != t {
			kept = append(kept, other)
		}
	}
	return kept
}

// goesOff takes in a trigger that goes off: where it was served its run-on
// begins.
func (r *Runner) goesOff(t int) {
	a := &r.asks[t]
	if !a.on {
		return
	}
	served := a.state == trace.Served
	a.on = false
	if !r.power {
		return
	}
	if served && a.counts && !r.head.Triggers[t].Purge {
		a.counts = false
		a.until = r.now + r.head.Triggers[t].RunOn
		if !r.keeps(runOnLasts) {
			a.until = r.now
		}
		r.say(t, trace.RunsOn, 0)
		r.breathe()
		return
	}
	r.forget(t)
}

// forget drops a request: what is on has to go off before it counts again.
func (r *Runner) forget(t int) { r.forgetFor(t, r.barred()) }

// forgetFor drops a request and says why. A purge ends with it.
func (r *Runner) forgetFor(t int, why trace.Why) {
	a := &r.asks[t]
	a.counts, a.sent, a.turn, a.next = false, false, 0, 0
	a.on = a.on && !r.head.Triggers[t].Purge
	r.queue = r.dropped(t)
	if a.on && r.power {
		r.say(t, trace.Waits, why)
	} else {
		r.say(t, trace.Idle, 0)
	}
	r.breathe()
}

// barred is why a trigger that is on does not count.
func (r *Runner) barred() trace.Why {
	if r.lockout {
		return trace.Locked
	}
	return trace.SeenOff
}

// halt takes the drive of a gate off on its way.
func (r *Runner) halt(g int) {
	if r.gates[g].state.Moves() {
		r.put(g, trace.Between, 0)
	}
}
