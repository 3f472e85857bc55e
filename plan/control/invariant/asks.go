package invariant

import "dustbook/plan/control/trace"

func latchCleared(s *scene) {
	t := int(s.r.Thing)
	if s.h.Triggers[t].Latched && s.asks[t].state != trace.Idle && s.asks[t].state != trace.RunsOn && !s.asks[t].freshly.cut {
		s.breach(s.h.TriggerName(t))
	}
}

func lockout(s *scene) {
	if c, is := s.begins(); is && !s.askedFor(c, func(_ int, a *ask) bool { return a.freshly.lock }) {
		s.breach(s.h.Collectors[c].Name + " starts for a trigger that came on under it")
	}
	if !s.lockout {
		return
	}
	switch s.r.Kind {
	case trace.GateIs:
		if s.r.GateState().Moves() {
			s.breach(s.says(s.r))
		}
	case trace.FanIs:
		if trace.FanState(s.r.State) == trace.FanOn {
			s.breach(s.says(s.r))
		}
	case trace.RequestIs:
		if trace.RequestState(s.r.State) == trace.Opens {
			s.breach(s.says(s.r))
		}
	}
}

func relief(s *scene) {
	t := int(s.r.Thing)
	if s.asks[t].state != trace.Served {
		return
	}
	for _, g := range s.h.Triggers[t].Relief {
		if s.gates[g].state != trace.Open {
			s.breach(s.h.TriggerName(t), s.h.Gates[g].Name)
		}
	}
}

func fault(s *scene) {
	switch s.r.Kind {
	case trace.GateIs:
		if s.gates[s.r.Thing].falsely {
			s.breach(s.says(s.r))
		}
	case trace.FanIs:
		if c, is := s.begins(); is && !s.anyHolds(c, true) && s.anyHolds(c, false) {
			s.breach(s.says(s.r))
		}
	case trace.RequestIs:
		for _, g := range s.h.Triggers[s.r.Thing].Opens {
			if s.asks[s.r.Thing].state == trace.Served && s.gates[g].state == trace.Faulted {
				s.breach(s.says(s.r), s.h.Gates[g].Name)
			}
		}
	}
}

// answered looks at the end of every moment whether what waits signals, and at
// the end of the story whether every trigger that is on has its answer.
func answered(s *scene) {
	if !s.power {
		return
	}
	for t := range s.asks {
		a := &s.asks[t]
		if a.state == trace.Waits && !s.signal {
			s.breach(s.h.TriggerName(t), "waits without a signal")
		}
		if !s.over || s.h.Triggers[t].Purge {
			continue
		}
		if a.on && a.state != trace.Waits && a.state != trace.Served || !a.on && a.state != trace.Idle {
			s.breach(s.h.TriggerName(t), "the story ends and it "+a.state.String())
		}
	}
}

func oneAtAnEnd(s *scene) {
	for _, end := range s.h.Ends {
		at := trace.None
		for _, m := range end {
			if !s.air.Running.Has(m) {
				continue
			}
			if at != trace.None {
				s.breach(s.h.Machines[at].Name, s.h.Machines[m].Name)
			}
			at = m
		}
	}
}

func stopHolds(s *scene) {
	if c, is := s.begins(); is && !s.askedFor(c, func(_ int, a *ask) bool { return a.freshly.stop }) {
		s.breach(s.h.Collectors[c].Name + " starts without a new request")
	}
	if s.r.Kind == trace.GateIs && s.r.GateState().Moves() && s.fans[s.h.Gates[s.r.Thing].Collector].still {
		s.breach(s.says(s.r))
	}
}

func stopDrops(s *scene) {
	if s.stopped.Empty() {
		return
	}
	for c := range s.fans {
		if s.stopped.Has(c) && s.fans[c].still && s.fans[c].state == trace.FanOn {
			s.breach(s.h.Collectors[c].Name + " runs on")
		}
	}
	for g := range s.gates {
		if c := s.h.Gates[g].Collector; s.stopped.Has(c) && s.fans[c].still && s.gates[g].state.Moves() {
			s.breach(s.h.Gates[g].Name + " moves on")
		}
	}
}

func deadWithout(s *scene) {
	if s.power {
		return
	}
	for g := range s.gates {
		if s.gates[g].state.Moves() {
			s.breach(s.h.Gates[g].Name)
		}
	}
	for c := range s.fans {
		if s.fans[c].state == trace.FanOn {
			s.breach(s.h.Collectors[c].Name)
		}
	}
	for t := range s.asks {
		if s.asks[t].state != trace.Idle {
			s.breach(s.h.TriggerName(t))
		}
	}
	if s.signal {
		s.breach("the signal")
	}
}

// acts reports whether a request has its gates held open.
func (a *ask) acts() bool { return a.state == trace.Opens || a.state == trace.Served }

func purgeYields(s *scene) {
	for p := range s.asks {
		if !s.h.Triggers[p].Purge || !s.asks[p].acts() {
			continue
		}
		for t := range s.asks {
			if !s.h.Triggers[t].Purge && s.asks[t].acts() && s.touches(t, s.h.Triggers[p].Starts[0]) {
				s.breach(s.h.TriggerName(p), s.h.TriggerName(t))
			}
		}
	}
}
