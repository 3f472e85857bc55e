package invariant

import "dustbook/plan/control/trace"

// shuts reports whether the record sends a gate to shut, and which.
func (s *scene) shuts() (g int, is bool) {
	state := s.r.GateState()
	return int(s.r.Thing), s.r.Kind == trace.GateIs && (state == trace.Shutting || state == trace.Homing)
}

// lastGate looks for any way that is left open; one past a gate that a person
// moves counts only while someone goes by its card.
func lastGate(s *scene) {
	g, is := s.shuts()
	c := s.h.Gates[g].Collector
	if !is || trace.GateState(s.was) != trace.Open || s.fans[c].state == trace.FanOff {
		return
	}
	if !s.anyLeft(c) && s.leftBefore(c, g) {
		s.breach(s.h.Gates[g].Name)
	}
}

// anyLeft reports whether a whole way to a collector is open, whoever asks.
func (s *scene) anyLeft(c int) bool {
	for t := range s.asks {
		ways := s.h.Triggers[t].Ways
		for i := range ways {
			if ways[i].Collector == c && s.whole(&ways[i], s.asks[t].state != trace.Idle) {
				return true
			}
		}
	}
	return false
}

// leftBefore reports whether one was open while a gate still was.
func (s *scene) leftBefore(c, g int) bool {
	now := s.gates[g].state
	s.gates[g].state = trace.Open
	was := s.anyLeft(c)
	s.gates[g].state = now
	return was
}

func cutsNoWay(s *scene) {
	g, is := s.shuts()
	if !is {
		return
	}
	for t := range s.asks {
		if state := s.asks[t].state; state != trace.Served && state != trace.RunsOn && state != trace.Opens {
			continue
		}
		ways := s.h.Triggers[t].Ways
		for i := range ways {
			if !ways[i].Whole || !s.starts(t, ways[i].Collector) {
				continue
			}
			for _, on := range ways[i].Gates {
				if on == g {
					s.breach(s.h.Gates[g].Name, s.h.TriggerName(t))
					return
				}
			}
		}
	}
}

// keepsCarrying compares the air after a gate was sent to shut with the air
// before, the machines being the same.
func keepsCarrying(s *scene) {
	if s.sent.gate == trace.None || s.sent.to == trace.Opening || s.air.Carrying != s.airWas.Carrying || s.air.Open == s.airWas.Open {
		return
	}
	if s.fans[s.h.Gates[s.sent.gate].Collector].state != trace.FanOn {
		return
	}
	if worse := s.air.Slow.Without(s.airWas.Slow); !worse.Empty() {
		s.breach(s.h.Gates[s.sent.gate].Name, s.h.Stretches[worse.Least()])
	}
}

// starvesNone compares the air after a gate was sent to open with the air
// before, the machines being the same. A machine whose own gates are still on
// their way has nothing that could be taken.
func starvesNone(s *scene) {
	if s.sent.gate == trace.None || s.sent.to != trace.Opening || s.air.Running != s.airWas.Running || s.air.Open == s.airWas.Open {
		return
	}
	worse := s.air.Short.Without(s.airWas.Short)
	if worse.Empty() {
		return
	}
	for t := range s.asks {
		if m := s.h.Triggers[t].Machine; m != trace.None && s.asks[t].state == trace.Served && worse.Has(m) {
			s.breach(s.h.Gates[s.sent.gate].Name, s.h.Machines[m].Name)
		}
	}
}

func fewAtOnce(s *scene) {
	if s.moving > s.h.Moves && s.r.GateState().Moves() {
		s.breach(s.h.Gates[s.r.Thing].Name)
	}
}

func zoneFirst(s *scene) {
	g := int(s.r.Thing)
	if s.r.GateState() != trace.Opening {
		return
	}
	for _, z := range s.h.Gates[g].Zones {
		if state := s.gates[z].state; state != trace.Open && state != trace.Opening && s.bothAsked(g, z) {
			s.breach(s.h.Gates[g].Name, s.h.Gates[z].Name)
		}
	}
}

// bothAsked reports whether one request has two gates opened.
func (s *scene) bothAsked(a, b int) bool {
	for t := range s.asks {
		if state := s.asks[t].state; state != trace.Opens && state != trace.Served {
			continue
		}
		both := 0
		for _, g := range s.h.Triggers[t].Opens {
			if g == a || g == b {
				both++
			}
		}
		if both == 2 {
			return true
		}
	}
	return false
}

func zoneLast(s *scene) {
	z, is := s.shuts()
	if !is {
		return
	}
	behind := s.behind[z]
	for g := behind.Least(); g >= 0; g = behind.Least() {
		behind.Drop(g)
		switch s.gates[g].state {
		case trace.Open, trace.Opening, trace.Between:
			s.breach(s.h.Gates[z].Name, s.h.Gates[g].Name)
			return
		}
	}
}

func homesStill(s *scene) {
	g := int(s.r.Thing)
	switch s.r.GateState() {
	case trace.Homing:
		if s.fans[s.h.Gates[g].Collector].state != trace.FanOff {
			s.breach(s.h.Gates[g].Name, "the fan turns")
		}
	case trace.Opening:
		if s.gates[g].lost {
			s.breach(s.h.Gates[g].Name, "it has not found its stops")
		}
	}
}

func arrival(s *scene) {
	g := int(s.r.Thing)
	v, h := &s.gates[g], &s.h.Gates[g]
	defer func() { v.since = s.now }()
	if state := s.r.GateState(); state != trace.Open && state != trace.Shut {
		return
	}
	least := h.Travel
	if h.Proof == trace.ByTime {
		least += h.Margin
	}
	if trace.GateState(s.was).Moves() && s.now < v.since+least {
		s.breach(h.Name, "too soon")
	}
	if s.r.GateState() != trace.Open {
		return
	}
	if s.r.Proven() == (h.Proof == trace.ByTime) {
		s.breach(h.Name, "shown otherwise than it is known")
	}
	if h.Proof == trace.ByPerson && !v.confirmed {
		s.breach(h.Name, "no one has looked")
	}
}
