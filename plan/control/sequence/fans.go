package sequence

import "dustbook/plan/control/trace"

// runFans starts fans for requests whose gates have arrived, and stops those
// that nothing needs any more.
func (r *Runner) runFans() {
	for c := range r.fans {
		switch {
		case r.fans[c].state == trace.FanOn:
			if !r.needed(c) {
				r.turn(c, trace.Coasting)
			}
		case r.wanted(c) && r.allowed(c) <= r.now:
			r.turn(c, trace.FanOn)
		}
	}
}

// needed reports whether a request keeps a fan running.
func (r *Runner) needed(c int) bool {
	for t := range r.asks {
		a := &r.asks[t]
		if a.sent && r.works.starts[t].Has(c) && (a.state == trace.RunsOn || a.state == trace.Served || a.counts && r.arrived(t)) {
			return true
		}
	}
	return false
}

// wanted reports whether a request is ready for a fan that is off: its gates
// have arrived and its start delay is over.
func (r *Runner) wanted(c int) bool {
	if r.lockout && r.keeps(lockoutHolds) {
		return false
	}
	for t := range r.asks {
		a := &r.asks[t]
		if !a.sent || !a.counts || !r.works.starts[t].Has(c) || r.heldOff(t) {
			continue
		}
		if delay := r.head.Triggers[t].StartDelay; r.now < a.since+delay && r.keeps(delayKept) {
			continue
		}
		if r.arrived(t) || !r.keeps(wholeWay) {
			return true
		}
	}
	return false
}

// allowed is when a fan may start again: it has rested, and one of the starts
// that count has become too old to count.
func (r *Runner) allowed(c int) trace.Time {
	f, h := &r.fans[c], &r.head.Collectors[c]
	at := trace.Time(0)
	if r.keeps(restHeld) {
		at = f.rested
	}
	if n := len(f.starts) - h.Starts; h.Starts > 0 && n >= 0 && r.keeps(startsLimit) {
		at = max(at, f.starts[n]+h.Within)
	}
	return at
}

// serve says how it stands with every request whose gates were sent.
func (r *Runner) serve() {
	for t := range r.asks {
		a := &r.asks[t]
		if !a.sent || !a.counts {
			continue
		}
		if state, why := r.standing(t); state == trace.Waits && why == trace.Held {
			r.forgetFor(t, why) // it has to go off once before it counts
		} else {
			r.say(t, state, why)
		}
	}
}

// standing is how it stands with a request whose gates were sent.
func (r *Runner) standing(t int) (trace.RequestState, trace.Why) {
	a := &r.asks[t]
	if !r.arrived(t) {
		if r.head.Triggers[t].Purge && a.state == trace.Served {
			return trace.Served, 0
		}
		return r.onTheWay(t)
	}
	for _, c := range r.head.Triggers[t].Starts {
		switch {
		case r.fans[c].state == trace.FanOn:
		case r.heldOff(t):
			return trace.Waits, trace.Held
		case r.allowed(c) > r.now:
			return trace.Waits, trace.Limit
		default:
			return trace.Opens, 0
		}
	}
	return trace.Served, 0
}

// onTheWay tells gates that move from gates that only a person can still tell
// of, and from those that the air keeps shut.
func (r *Runner) onTheWay(t int) (trace.RequestState, trace.Why) {
	unseen := false
	for _, g := range r.opens(t) {
		switch v := &r.gates[g]; {
		case v.state == trace.Open:
		case v.takes && r.waitsToOpen(g):
			return trace.Waits, trace.Starves
		case v.unseen:
			unseen = true
		default:
			return trace.Opens, 0
		}
	}
	if unseen {
		return trace.Waits, trace.Unseen
	}
	return trace.Opens, 0
}
