package sequence

import "dustbook/plan/control/trace"

// lock begins the lockout: no gate moves, nothing new is served. What already
// runs goes on until its own cause ends; what has not come to run is forgotten.
func (r *Runner) lock() {
	r.lockout = true
	if !r.keeps(lockoutHolds) {
		return
	}
	for g := range r.gates {
		r.halt(g)
	}
	for t := range r.asks {
		if a := &r.asks[t]; a.on && (a.state != trace.Served || r.head.Triggers[t].Purge) {
			r.forget(t)
		}
	}
}

// cut takes the power away: drives and fans go off, gates stay where they are,
// and everything asked for is forgotten.
func (r *Runner) cut() {
	if !r.power {
		return
	}
	r.power = false
	for g := range r.gates {
		if r.keeps(deadWithout) {
			r.halt(g)
		}
		if r.gates[g].unseen = false; !r.head.Gates[g].ByHand {
			r.gates[g].lost = true
		}
	}
	for c := range r.fans {
		r.fans[c].stopped = false
		if r.fans[c].state == trace.FanOn {
			r.turn(c, trace.Coasting)
		}
	}
	for t := range r.asks {
		if r.head.Triggers[t].Latched && r.keeps(latchCleared) {
			r.asks[t].on = false
		}
		r.forget(t)
	}
}

// back gives the power back. Gates look for their stops once every fan is taken
// to stand still; a trigger that is on counts only after it was seen off.
func (r *Runner) back() {
	if r.power {
		return
	}
	r.power = true
	for g := range r.gates {
		v := &r.gates[g]
		if v.state == trace.LockedShut || v.state == trace.Faulted {
			v.lost = false
		}
		v.from = r.now + r.head.Collectors[r.head.Gates[g].Collector].Coast
		if !r.keeps(homesStill) {
			v.from = r.now
		}
	}
	for t := range r.asks {
		if !r.asks[t].on {
			continue
		}
		latched := r.head.Triggers[t].Latched
		if latched || !r.keeps(afterPowerCut) {
			r.asks[t].since = r.now
			r.count(t)
			continue
		}
		r.say(t, trace.Waits, r.barred())
	}
}

// stop drops everything of a stop button's collectors. Only a new request
// starts them again.
func (r *Runner) stop(button int) {
	if !r.power {
		return
	}
	for _, c := range r.head.Stops[button].Collectors {
		if r.fans[c].state == trace.FanOn && r.keeps(stopHolds) {
			r.turn(c, trace.Coasting)
		}
		r.fans[c].stopped = true
		for g := range r.gates {
			if r.head.Gates[g].Collector == c {
				r.halt(g)
			}
		}
		for t := range r.asks {
			if a := &r.asks[t]; r.works.touches[t].Has(c) && a.state != trace.Idle && r.keeps(stopHolds) {
				r.forget(t)
			}
		}
	}
}

// useUp takes the starts of the time just past for used up.
func (r *Runner) useUp(c int) {
	f := &r.fans[c]
	for range r.head.Collectors[c].Starts {
		f.starts = append(f.starts, r.now)
	}
}
