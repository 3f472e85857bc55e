package sequence

import "dustbook/plan/control/trace"

// note writes a record.
func (r *Runner) note(kind trace.Kind, thing int, state, why uint8) {
	at := r.now
	if !r.keeps(wellTold) && kind == trace.FanIs && state == uint8(trace.FanOff) {
		at--
	}
	r.trace.Records = append(r.trace.Records, trace.Record{At: at, Thing: int32(thing), Kind: kind, State: state, Why: why})
	if kind != trace.Happens {
		r.changed = true
	}
}

// put gives a gate a new state.
func (r *Runner) put(g int, state trace.GateState, unproven uint8) {
	v := &r.gates[g]
	if v.state.Moves() {
		r.moving--
	}
	if state.Moves() {
		r.moving++
	}
	v.state = state
	r.note(trace.GateIs, g, uint8(state), unproven)
	if state == trace.Open || state == trace.Opening {
		r.open.Add(g)
	} else {
		r.open.Drop(g)
	}
	r.breathe()
}

// turn gives a fan a new state.
func (r *Runner) turn(c int, state trace.FanState) {
	f := &r.fans[c]
	switch state {
	case trace.FanOn:
		f.starts = append(f.starts, r.now)
	case trace.Coasting:
		f.until = r.now + r.head.Collectors[c].Coast
		f.rested = r.now + r.head.Collectors[c].Rest
	}
	f.state = state
	r.note(trace.FanIs, c, uint8(state), 0)
}

// say gives a request a new state.
func (r *Runner) say(t int, state trace.RequestState, why trace.Why) {
	a := &r.asks[t]
	if a.state == state && a.why == why {
		return
	}
	a.state, a.why = state, why
	r.note(trace.RequestIs, t, uint8(state), uint8(why))
}

// light puts the signal on where something waits, a gate did not arrive, or a
// start is held; off where nothing does.
func (r *Runner) light() {
	on := false
	for t := range r.asks {
		on = on || r.asks[t].state == trace.Waits && r.keeps(answered)
	}
	for g := range r.gates {
		on = on || r.gates[g].state == trace.Faulted
	}
	for c := range r.fans {
		on = on || r.fans[c].held
	}
	if on = on && r.power; on == r.signal {
		return
	}
	r.signal = on
	state := uint8(0)
	if on {
		state = 1
	}
	r.note(trace.SignalIs, 0, state, 0)
}

// breathe writes down what the air does where gates or machines have changed.
func (r *Runner) breathe() {
	r.running, r.carrying = trace.Set{}, trace.Set{}
	for t := range r.asks {
		a, m := &r.asks[t], r.head.Triggers[t].Machine
		if !a.sent || m == trace.None {
			continue
		}
		r.carrying.Add(m)
		if a.counts {
			r.running.Add(m)
		}
	}
	if r.told.Open == r.open && r.told.Running == r.running && r.told.Carrying == r.carrying {
		return
	}
	r.told = trace.Air{Open: r.open, Running: r.running, Carrying: r.carrying}
	r.told.Short, r.told.Slow = r.air.Judge(r.open, r.running, r.carrying)
	r.trace.Airs = append(r.trace.Airs, r.told)
	r.note(trace.AirIs, len(r.trace.Airs)-1, 0, 0)
}
