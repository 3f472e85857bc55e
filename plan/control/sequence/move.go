package sequence

import "dustbook/plan/control/trace"

// move sends gates: to their stops after a power cut, open where they are asked
// for, shut where nothing holds them open. No more move at once than may.
func (r *Runner) move() {
	if r.lockout && r.keeps(lockoutHolds) {
		return
	}
	for c := range r.fans {
		for _, g := range r.works.closing[c] {
			r.home(g)
		}
	}
	r.openAsked()
	for c := range r.fans {
		r.shutLeft(c)
	}
}

// full reports whether no more gates may move.
func (r *Runner) full() bool { return r.moving >= r.head.Moves && r.keeps(fewAtOnce) }

// drive puts a gate's drive on.
func (r *Runner) drive(g int, to trace.GateState) {
	v, h := &r.gates[g], &r.head.Gates[g]
	v.unseen = false
	v.until = r.now + h.Travel
	if (h.Proof == trace.ByTime || v.stuck || to == trace.Homing) && r.keeps(arrivalTimed) {
		v.until += h.Margin
	}
	r.put(g, to, 0)
}

// arrive ends the move of a gate.
func (r *Runner) arrive(g int) {
	v, proof := &r.gates[g], r.head.Gates[g].Proof
	to := trace.Shut
	if v.state == trace.Opening {
		to = trace.Open
	}
	unproven := uint8(0)
	switch {
	case v.stuck && proof == trace.BySwitch && r.keeps(faultHolds):
		to = trace.Faulted
	case to == trace.Open && proof == trace.ByPerson:
		to, v.unseen = trace.Between, true
	case proof != trace.BySwitch:
		unproven = 1
	}
	v.lost = v.lost && v.state != trace.Homing
	r.put(g, to, unproven)
}

// home has a gate look for its shut stop, a zone gate after those before it.
func (r *Runner) home(g int) {
	v := &r.gates[g]
	if !v.lost || v.state.Moves() || v.from > r.now || r.fans[r.head.Gates[g].Collector].stopped || r.full() {
		return
	}
	if v.state == trace.LockedShut || v.state == trace.Faulted {
		v.lost = false
		return
	}
	if r.zoneBusy(g) {
		return
	}
	r.drive(g, trace.Homing)
}

// zoneBusy reports whether a gate before a zone gate is not yet on its way to
// shut.
func (r *Runner) zoneBusy(zone int) bool {
	behind := r.works.behind[zone]
	for g := behind.Least(); g >= 0; g = behind.Least() {
		behind.Drop(g)
		switch r.gates[g].state {
		case trace.Open, trace.Opening, trace.Between:
			return true
		}
	}
	return false
}

// openAsked opens what is asked for: the oldest request first, each in its own
// order, zone gates leading.
func (r *Runner) openAsked() {
	for g := range r.gates {
		r.gates[g].takes = false
	}
	for _, t := range r.queue {
		if !r.asks[t].sent {
			continue
		}
		list := r.opens(t)
		for i := range list {
			g := list[i]
			if !r.keeps(zoneFirst) {
				g = list[len(list)-1-i]
			}
			if !r.waitsToOpen(g) {
				continue
			}
			if r.gates[g].takes = r.takes(g); r.gates[g].takes {
				break
			}
			if !r.keeps(sentTogether) && r.zoneOnItsWay(g) || !r.opening(g) {
				return // the others wait their turn
			}
		}
	}
}

// zoneOnItsWay reports whether a zone gate below a gate still opens. It is what
// the rule that both are sent together keeps from being waited for.
func (r *Runner) zoneOnItsWay(g int) bool {
	for _, z := range r.head.Gates[g].Zones {
		if r.gates[z].state == trace.Opening {
			return true
		}
	}
	return false
}

// takes reports whether opening a gate now would take a machine that is served
// below its need: gates that nothing asks for any more may have to shut first.
func (r *Runner) takes(g int) bool {
	var served trace.Set
	for t := range r.asks {
		if m := r.head.Triggers[t].Machine; r.asks[t].state == trace.Served && m != trace.None {
			served.Add(m)
		}
	}
	if served.Empty() || !r.keeps(starvesNone) {
		return false
	}
	with := r.open
	with.Add(g)
	before, _ := r.air.Judge(r.open, r.running, r.carrying)
	after, _ := r.air.Judge(with, r.running, r.carrying)
	return !after.And(served).Within(before)
}

// waitsToOpen reports whether a gate is neither open nor on its way there.
func (r *Runner) waitsToOpen(g int) bool {
	switch v := &r.gates[g]; v.state {
	case trace.Shut, trace.Shutting:
		return true
	case trace.Between:
		return !v.unseen
	}
	return false
}

// opening sends a gate to open; one that is shutting is turned round.
func (r *Runner) opening(g int) bool {
	if r.gates[g].state != trace.Shutting && r.full() {
		return false
	}
	r.drive(g, trace.Opening)
	return true
}

// asked are the gates that are asked to be open, or kept open by a run-on.
func (r *Runner) asked() trace.Set {
	var all trace.Set
	for t := range r.asks {
		if !r.asks[t].sent {
			continue
		}
		if v := &r.head.Triggers[t]; v.Purge {
			all = all.Or(r.works.opens[v.Turns[r.asks[t].turn]]).Or(r.works.opens[v.Turns[r.asks[t].next]])
		} else {
			all = all.Or(r.works.opens[t])
		}
	}
	return all
}

// shutLeft shuts the gates of a collector that nothing holds open: once all
// openings have arrived, and never while its fan coasts.
func (r *Runner) shutLeft(c int) {
	if r.fans[c].stopped || r.fans[c].state == trace.Coasting && r.keeps(lastGate) {
		return
	}
	asked := r.asked()
	for _, g := range r.works.closing[c] {
		if v := &r.gates[g]; v.lost || v.state == trace.Opening || asked.Has(g) && r.waitsToOpen(g) && !v.takes {
			return
		}
	}
	list := r.works.closing[c]
	for i := range list {
		g := list[i]
		if !r.keeps(zoneLast) {
			g = list[len(list)-1-i]
		}
		if state := r.gates[g].state; asked.Has(g) || state != trace.Open && state != trace.Between {
			continue
		}
		if r.zoneBusy(g) && r.keeps(zoneLast) || !r.mayShut(c, g) {
			continue
		}
		if r.full() {
			return
		}
		r.drive(g, trace.Shutting)
	}
}

// mayShut reports whether a gate can shut without taking a stretch below its
// transport velocity.
func (r *Runner) mayShut(c, g int) bool {
	if r.fans[c].state == trace.FanOff || !r.open.Has(g) || r.carrying.Empty() || !r.keeps(keepsCarrying) {
		return true
	}
	without := r.open
	without.Drop(g)
	_, before := r.air.Judge(r.open, r.running, r.carrying)
	_, after := r.air.Judge(without, r.running, r.carrying)
	return after.Within(before)
}

// shutAtOnce shuts a request's gates whoever else asks for them. It is what
// the rule that no closing cuts a way keeps from happening.
func (r *Runner) shutAtOnce(t int) {
	for _, g := range r.opens(t) {
		if r.gates[g].state == trace.Open {
			r.drive(g, trace.Shutting)
		}
	}
}
