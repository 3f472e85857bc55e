package invariant

import "dustbook/plan/control/trace"

// begins reports whether the record switches a fan on, and which.
func (s *scene) begins() (c int, is bool) {
	return int(s.r.Thing), s.r.Kind == trace.FanIs && trace.FanState(s.r.State) == trace.FanOn
}

// whole reports whether a way is open: its powered gates have arrived, and
// those a person moves are on a card that someone goes by.
func (s *scene) whole(w *trace.Way, carded bool) bool {
	if !w.Whole {
		return false
	}
	for _, g := range w.Gates {
		if s.h.Gates[g].ByHand && !carded || !s.h.Gates[g].ByHand && s.gates[g].state != trace.Open {
			return false
		}
	}
	return true
}

// heldOpen reports whether a trigger's request holds a whole way to a
// collector; truly asks that no gate on it is falsely told to be open.
func (s *scene) heldOpen(t, c int, truly bool) bool {
	v := &s.h.Triggers[t]
	if s.asks[t].state == trace.Idle || !s.starts(t, c) {
		return false
	}
	for _, turn := range v.Turns {
		if s.opensWay(turn, c, truly) {
			return true
		}
	}
	return s.opensWay(t, c, truly)
}

func (s *scene) opensWay(t, c int, truly bool) bool {
	ways := s.h.Triggers[t].Ways
	for i := range ways {
		if ways[i].Collector != c || !s.whole(&ways[i], true) {
			continue
		}
		honest := true
		for _, g := range ways[i].Gates {
			honest = honest && !s.gates[g].falsely
		}
		if honest || !truly {
			return true
		}
	}
	return false
}

// anyHolds reports whether any request holds a whole way to a collector.
func (s *scene) anyHolds(c int, truly bool) bool {
	for t := range s.asks {
		if s.heldOpen(t, c, truly) {
			return true
		}
	}
	return false
}

func startsOnWay(s *scene) {
	if c, is := s.begins(); is && !s.anyHolds(c, false) {
		s.breach(s.h.Collectors[c].Name + " starts without one")
	}
}

func keepsWay(s *scene) {
	for c := range s.fans {
		if s.fans[c].state == trace.FanOn && !s.anyHolds(c, false) {
			s.breach(s.h.Collectors[c].Name + " runs without one")
		}
	}
}

// askedFor reports whether a trigger that passes starts a collector and is on.
func (s *scene) askedFor(c int, passes func(t int, a *ask) bool) bool {
	for t := range s.asks {
		if a := &s.asks[t]; a.on && s.starts(t, c) && passes(t, a) {
			return true
		}
	}
	return false
}

func afterPowerCut(s *scene) {
	if c, is := s.begins(); is && !s.askedFor(c, func(_ int, a *ask) bool { return a.freshly.cut }) {
		s.breach(s.h.Collectors[c].Name + " starts by itself")
	}
}

func starts(s *scene) {
	c, is := s.begins()
	if !is || s.h.Collectors[c].Starts == 0 {
		return
	}
	recent := 0
	for _, at := range s.fans[c].starts {
		if at > s.now-s.h.Collectors[c].Within {
			recent++
		}
	}
	if recent > s.h.Collectors[c].Starts {
		s.breach(s.h.Collectors[c].Name + " starts once too often")
	}
}

func rest(s *scene) {
	c, is := s.begins()
	if is && s.fans[c].ran && s.now < s.fans[c].off+s.h.Collectors[c].Rest {
		s.breach(s.h.Collectors[c].Name + " has not rested")
	}
}

func hold(s *scene) {
	if c, is := s.begins(); is && s.fans[c].held {
		s.breach(s.h.Collectors[c].Name + " starts")
	}
}

func runOn(s *scene) {
	c := int(s.r.Thing)
	if trace.FanState(s.r.State) != trace.Coasting {
		return
	}
	for t := range s.asks {
		if s.now < s.asks[t].until && s.starts(t, c) {
			s.breach(s.h.Collectors[c].Name+" stops in the run-on", s.h.TriggerName(t))
		}
	}
}

func startDelay(s *scene) {
	c, is := s.begins()
	if is && !s.askedFor(c, func(t int, a *ask) bool { return s.now >= a.onAt+s.h.Triggers[t].StartDelay }) {
		s.breach(s.h.Collectors[c].Name + " starts too soon")
	}
}
