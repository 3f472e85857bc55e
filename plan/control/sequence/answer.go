package sequence

import "dustbook/plan/control/trace"

// release lets go what is over: run-ons, where no other request still needs the
// gates to keep the fan's air.
func (r *Runner) release() {
	for t := range r.asks {
		a := &r.asks[t]
		if a.state != trace.RunsOn || a.until > r.now || r.awaited(t) {
			continue
		}
		if r.forget(t); !r.keeps(cutsNoWay) {
			r.shutAtOnce(t)
		}
	}
	r.advancePurges()
}

// awaited reports whether another request waits for its own gates on a
// collector that runs on: until they have arrived, these keep the fan's air.
func (r *Runner) awaited(t int) bool {
	for other := range r.asks {
		if a := &r.asks[other]; other == t || !a.counts || a.state != trace.Opens {
			continue
		}
		if shared := r.works.starts[other].And(r.works.starts[t]); !shared.Empty() {
			return true
		}
	}
	return false
}

// answer decides for every request that counts whether its gates are sent to
// open, the oldest first.
func (r *Runner) answer() {
	for i := 0; i < len(r.queue); i++ {
		t := r.queue[i]
		a := &r.asks[t]
		if !a.counts || r.head.Triggers[t].Purge && a.sent || a.state == trace.Waits && !r.keeps(looksAgain) {
			continue
		}
		why := r.hinders(t)
		switch {
		case a.sent && (why == trace.Faulty || why == trace.Padlocked):
			a.sent = false
			r.say(t, trace.Waits, why)
			r.breathe()
		case a.sent:
		case why == trace.Held:
			r.forgetFor(t, why)
			i--
		case why != trace.NoReason:
			r.say(t, trace.Waits, why)
		default:
			r.send(t)
		}
	}
	for t := range r.asks {
		if a := &r.asks[t]; a.on && !a.counts && !a.sent {
			r.say(t, trace.Waits, r.bars(t))
		}
	}
}

// bars is why a trigger that is on does not count.
func (r *Runner) bars(t int) trace.Why {
	if a := &r.asks[t]; a.why == trace.Held && !r.lockout && r.heldOff(t) {
		return trace.Held
	}
	return r.barred()
}

// send has a request's gates opened.
func (r *Runner) send(t int) {
	r.asks[t].sent = true
	r.say(t, trace.Opens, 0)
	r.breathe()
}

// hinders is what keeps a request from being served as things are.
func (r *Runner) hinders(t int) trace.Why {
	if !r.works.able[t] {
		return trace.NoWay
	}
	if r.lockout && r.keeps(lockoutHolds) && !r.asks[t].sent {
		return trace.Locked
	}
	for _, g := range r.opens(t) {
		switch v := &r.gates[g]; {
		case v.state == trace.Faulted:
			return trace.Faulty
		case v.state == trace.LockedShut:
			return trace.Padlocked
		}
	}
	switch {
	case r.homing(t):
		return trace.HomingGap
	case r.asks[t].sent:
		return trace.NoReason
	case r.heldOff(t):
		return trace.Held
	case r.endTaken(t) && r.keeps(oneAtAnEnd):
		return trace.EndTaken
	case r.starves(t) && r.keeps(starvesNone):
		return trace.Starves
	}
	return trace.NoReason
}

// homing reports whether a gate of a collector that a trigger touches has not
// found its stops: until all have, nothing of it is sent.
func (r *Runner) homing(t int) bool {
	for c := range r.fans {
		if r.works.touches[t].Has(c) && r.anyLost(c) {
			return true
		}
	}
	return false
}

// anyLost reports whether a gate of a collector has to look for its stops.
func (r *Runner) anyLost(c int) bool {
	for _, g := range r.works.closing[c] {
		if r.gates[g].lost {
			return true
		}
	}
	return false
}

// heldOff reports whether a fan that a trigger starts is off and held off.
func (r *Runner) heldOff(t int) bool {
	for _, c := range r.head.Triggers[t].Starts {
		if r.fans[c].held && r.fans[c].state != trace.FanOn && r.keeps(holdHolds) {
			return true
		}
	}
	return false
}

// endTaken reports whether another machine that runs has the movable end.
func (r *Runner) endTaken(t int) bool {
	m := r.head.Triggers[t].Machine
	if m == trace.None {
		return false
	}
	shared := r.works.ends[m].And(r.running)
	return !shared.Empty()
}

// starves reports whether opening a request's gates would take a running
// machine below its need, or leave its own machine short though it would not be
// alone.
func (r *Runner) starves(t int) bool {
	m, own := r.head.Triggers[t].Machine, r.works.opens[t]
	all, staying := r.open, trace.Set{}
	for other := range r.asks {
		if a := &r.asks[other]; a.sent {
			all = all.Or(r.works.opens[other])
			if a.counts {
				staying = staying.Or(r.works.opens[other])
			}
		}
	}
	if r.running.Empty() {
		return false
	}
	carrying := r.carrying
	if m != trace.None {
		carrying.Add(m)
	}
	before, _ := r.air.Judge(all, r.running, r.carrying)
	after, _ := r.air.Judge(all.Or(own), r.running, carrying)
	if !after.Within(before) {
		return true
	}
	if m == trace.None || r.running.Has(m) {
		return false
	}
	with, alone := r.running, trace.SetOf(m)
	with.Add(m)
	if short, _ := r.air.Judge(staying.Or(own), with, with); !short.Has(m) {
		return false
	}
	short, _ := r.air.Judge(own, alone, alone)
	return !short.Has(m)
}

// opens are the gates that a trigger opens, in order; of a purge, those of the
// turn that is next.
func (r *Runner) opens(t int) []int {
	v := &r.head.Triggers[t]
	if v.Purge {
		v = &r.head.Triggers[v.Turns[r.asks[t].next]]
	}
	if !r.keeps(reliefWith) {
		return v.Opens[:len(v.Opens)-len(v.Relief)]
	}
	return v.Opens
}

// arrived reports whether the gates that a trigger opens are all open.
func (r *Runner) arrived(t int) bool {
	for _, g := range r.opens(t) {
		if r.gates[g].state != trace.Open {
			return false
		}
	}
	return true
}
