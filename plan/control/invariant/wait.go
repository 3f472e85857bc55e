package invariant

import "dustbook/plan/control/trace"

// together looks at the end of every moment for a gate that a request opens and
// that is not sent although it may move.
func together(s *scene) {
	if !s.power || s.lockout || s.moving >= s.h.Moves {
		return
	}
	for t := range s.asks {
		if s.asks[t].state != trace.Opens || s.h.Triggers[t].Purge {
			continue
		}
		for _, g := range s.h.Triggers[t].Opens {
			switch s.gates[g].state {
			case trace.Shut, trace.Shutting:
				s.breach(s.h.TriggerName(t), s.h.Gates[g].Name)
			case trace.Between:
				if s.h.Gates[g].Proof != trace.ByPerson {
					s.breach(s.h.TriggerName(t), s.h.Gates[g].Name)
				}
			}
		}
	}
}

// waitsForCause looks at the end of the story whether what a request is said to
// wait for is so. Starts that are used up and gates that look for their stops
// are waited for in a story, never at its end.
func waitsForCause(s *scene) {
	if !s.over || !s.power {
		return
	}
	for t := range s.asks {
		if a := &s.asks[t]; a.state == trace.Waits && !s.cause(t, a) {
			s.breach(s.h.TriggerName(t), "waits, "+a.why.String())
		}
	}
}

// cause reports whether a request has the cause to wait that it is said to
// have.
func (s *scene) cause(t int, a *ask) bool {
	v := &s.h.Triggers[t]
	switch a.why {
	case trace.NoWay:
		for _, c := range v.Starts {
			whole := false
			for i := range v.Ways {
				whole = whole || v.Ways[i].Whole && v.Ways[i].Collector == c
			}
			if !whole {
				return true
			}
		}
	case trace.SeenOff:
		return !(a.freshly.cut && a.freshly.lock && a.freshly.stop && a.freshly.hold)
	case trace.Locked:
		return s.lockout
	case trace.HomingGap: // only where something keeps them from looking
		return s.anyGate(s.all(t), func(g int) bool { return s.gates[g].lost }) && (s.lockout || s.anyStill(t))
	case trace.Faulty:
		return s.anyGate(v.Opens, func(g int) bool { return s.gates[g].state == trace.Faulted })
	case trace.Padlocked:
		return s.anyGate(v.Opens, func(g int) bool { return s.gates[g].state == trace.LockedShut })
	case trace.Unseen:
		return s.anyGate(v.Opens, func(g int) bool { return s.h.Gates[g].Proof == trace.ByPerson && s.gates[g].state == trace.Between })
	case trace.EndTaken:
		return s.sharesEnd(v.Machine)
	case trace.Starves:
		return !s.air.Running.Empty()
	case trace.Held:
		for _, c := range v.Starts {
			if s.fans[c].held {
				return true
			}
		}
	}
	return false
}

func (s *scene) anyGate(gates []int, is func(g int) bool) bool {
	for _, g := range gates {
		if is(g) {
			return true
		}
	}
	return false
}

// all are the powered gates of the collectors that a trigger touches.
func (s *scene) all(t int) []int {
	var list []int
	for g := range s.gates {
		if !s.h.Gates[g].ByHand && s.touches(t, s.h.Gates[g].Collector) {
			list = append(list, g)
		}
	}
	return list
}

// anyStill reports whether a collector that a trigger touches is stopped.
func (s *scene) anyStill(t int) bool {
	for c := range s.fans {
		if s.fans[c].still && s.touches(t, c) {
			return true
		}
	}
	return false
}

// sharesEnd reports whether a machine that runs shares a movable end with one.
func (s *scene) sharesEnd(m int) bool {
	for _, end := range s.h.Ends {
		has, taken := false, false
		for _, other := range end {
			has = has || other == m
			taken = taken || other != m && s.air.Running.Has(other)
		}
		if has && taken {
			return true
		}
	}
	return false
}
