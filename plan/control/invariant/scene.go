package invariant

import "dustbook/plan/control/trace"

// scene is everything as it stands after a record: what the rules look at.
type scene struct {
	t    *trace.Trace
	h    *trace.Head
	rule string
	over bool // the story has ended

	now trace.Time
	r   *trace.Record
	was uint8 // the state before the record, of the same thing

	power, lockout, signal bool
	cut                    bool      // the power was cut at this moment
	stopped                trace.Set // collectors stopped at this moment
	moving                 int
	gates                  []gate
	fans                   []fan
	asks                   []ask
	open                   trace.Set // gates open or opening
	sent                   gateSent  // the move that the record, or the one before the air's, begins
	air, airWas            trace.Air

	behind   []trace.Set // powered gates before each zone gate
	breaches []Breach
}

type gate struct {
	state     trace.GateState
	since     trace.Time
	stuck     bool
	late      bool // it stuck when or after it was sent
	falsely   bool // it is told to be open though it did not reach its switch
	lost      bool // it has not looked for its stops since the power came back
	confirmed bool
}

type fan struct {
	state  trace.FanState
	off    trace.Time // when it was last switched off
	ran    bool
	held   bool
	still  bool // stopped by a button, and nothing new asked for
	starts []trace.Time
}

type ask struct {
	state   trace.RequestState
	why     trace.Why
	on      bool
	onAt    trace.Time
	freshly fresh
	until   trace.Time // the end of its run-on
}

// fresh says since what a trigger was seen to come on.
type fresh struct{ cut, lock, stop, hold bool }

type gateSent struct {
	gate int
	to   trace.GateState
}

// begin sets the scene for a story.
func (s *scene) begin(t *trace.Trace) {
	if s.h != t.Head {
		h := t.Head
		*s = scene{h: h, gates: make([]gate, len(h.Gates)), fans: make([]fan, len(h.Collectors)), asks: make([]ask, len(h.Triggers)), behind: make([]trace.Set, len(h.Gates))}
		for g := range h.Gates {
			for _, z := range h.Gates[g].Zones {
				if !h.Gates[g].ByHand {
					s.behind[z].Add(g)
				}
			}
		}
	}
	s.t, s.over, s.now, s.moving = t, false, 0, 0
	s.power, s.lockout, s.signal, s.cut, s.stopped = true, false, false, false, trace.Set{}
	clear(s.gates)
	for i := range s.fans {
		s.fans[i] = fan{starts: s.fans[i].starts[:0]}
	}
	clear(s.asks)
	s.open, s.air, s.airWas, s.sent = trace.Set{}, trace.Air{}, trace.Air{}, gateSent{gate: trace.None}
	s.breaches = s.breaches[:0]
}

// take brings the scene up to a record.
func (s *scene) take(r *trace.Record) {
	s.r, s.was = r, 0
	n := int(r.Thing)
	if r.Kind != trace.AirIs {
		s.sent.gate = trace.None
	}
	switch r.Kind {
	case trace.Happens:
		s.happens(r.What(), n)
	case trace.GateIs:
		s.gateIs(n, r.GateState())
	case trace.FanIs:
		s.fanIs(n, trace.FanState(r.State))
	case trace.RequestIs:
		s.was = uint8(s.asks[n].state)
		s.asks[n].state, s.asks[n].why = trace.RequestState(r.State), trace.Why(r.Why)
	case trace.SignalIs:
		s.signal = r.State == 1
	case trace.AirIs:
		s.airWas, s.air = s.air, s.t.Airs[n]
	}
}

func (s *scene) gateIs(n int, state trace.GateState) {
	g := &s.gates[n]
	s.was = uint8(g.state)
	if g.state.Moves() {
		s.moving--
	}
	if state.Moves() {
		s.moving++
		g.late, g.confirmed = g.stuck, false
		s.sent = gateSent{n, state}
	}
	bySwitch := s.h.Gates[n].Proof == trace.BySwitch
	g.falsely = state == trace.Open && g.late && bySwitch
	if g.state == trace.Homing && (state == trace.Shut || state == trace.Faulted) || state == trace.LockedShut && s.power {
		g.lost = false
	}
	if g.state = state; state == trace.Open || state == trace.Opening {
		s.open.Add(n)
	} else {
		s.open.Drop(n)
	}
}

func (s *scene) fanIs(n int, state trace.FanState) {
	f := &s.fans[n]
	s.was = uint8(f.state)
	f.state = state
	switch state {
	case trace.FanOn:
		f.starts = append(f.starts, s.now)
	case trace.Coasting:
		f.off, f.ran = s.now, true
	}
}

// happens takes in an event.
func (s *scene) happens(w trace.What, n int) {
	switch w {
	case trace.On:
		s.comesOn(n)
	case trace.Off:
		s.goesOff(n)
	case trace.LockoutOn:
		s.lockout = true
		for t := range s.asks {
			a := &s.asks[t]
			a.freshly.lock = a.freshly.lock && a.state == trace.Served && !s.h.Triggers[t].Purge
		}
	case trace.LockoutOff:
		s.lockout = false
	case trace.PowerCut:
		s.goesDark()
	case trace.PowerBack:
		s.power = true
		for g := range s.gates {
			if s.gates[g].state == trace.LockedShut || s.gates[g].state == trace.Faulted {
				s.gates[g].lost = false
			}
		}
	case trace.StopPressed:
		s.stops(n)
	case trace.HoldOn:
		s.fans[n].held = true
		for t := range s.asks {
			a := &s.asks[t]
			a.freshly.hold = a.freshly.hold && (a.state == trace.Served || !s.starts(t, n))
		}
	case trace.HoldOff:
		s.fans[n].held = false
	case trace.StartsUsedUp:
		for range s.h.Collectors[n].Starts {
			s.fans[n].starts = append(s.fans[n].starts, s.now)
		}
	case trace.GateSticks:
		s.gates[n].stuck, s.gates[n].late = true, s.gates[n].late || s.gates[n].state.Moves()
	case trace.GateFreed:
		s.gates[n].stuck, s.gates[n].late = false, false
	case trace.Confirmed:
		s.gates[n].confirmed = true
	}
}

func (s *scene) goesDark() {
	s.cut, s.power = true, false
	for t := range s.asks {
		a := &s.asks[t]
		a.freshly, a.until = fresh{}, 0
		a.on = a.on && !s.h.Triggers[t].Latched
	}
	for g := range s.gates {
		s.gates[g].lost = true
	}
	for c := range s.fans {
		s.fans[c].still = false
	}
}

func (s *scene) comesOn(n int) {
	a, v := &s.asks[n], &s.h.Triggers[n]
	if a.on && !v.Purge || !s.power && v.Latched {
		return
	}
	a.on, a.onAt, a.until = true, s.now, 0
	a.freshly = fresh{cut: s.power, lock: s.power && !s.lockout, stop: s.power, hold: true}
	for _, c := range v.Starts {
		a.freshly.hold = a.freshly.hold && !s.fans[c].held
	}
	if !s.power || s.lockout {
		return
	}
	for c := range s.fans {
		if s.touches(n, c) {
			s.fans[c].still = false
		}
	}
}

func (s *scene) goesOff(n int) {
	a := &s.asks[n]
	if a.on && a.state == trace.Served && !s.h.Triggers[n].Purge {
		a.until = s.now + s.h.Triggers[n].RunOn
	}
	a.on, a.freshly = false, fresh{}
}

func (s *scene) stops(n int) {
	if !s.power {
		return
	}
	for _, c := range s.h.Stops[n].Collectors {
		s.stopped.Add(c)
		s.fans[c].still = true
		for t := range s.asks {
			if s.touches(t, c) {
				s.asks[t].freshly.stop, s.asks[t].until = false, 0
			}
		}
	}
}

// touches reports whether a trigger starts a collector or opens a gate of it.
func (s *scene) touches(t, c int) bool {
	v := &s.h.Triggers[t]
	for _, other := range v.Starts {
		if other == c {
			return true
		}
	}
	for _, g := range v.Opens {
		if s.h.Gates[g].Collector == c {
			return true
		}
	}
	return false
}

// starts reports whether a trigger starts a collector.
func (s *scene) starts(t, c int) bool {
	for _, other := range s.h.Triggers[t].Starts {
		if other == c {
			return true
		}
	}
	return false
}
