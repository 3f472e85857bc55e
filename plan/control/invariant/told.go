package invariant

import "dustbook/plan/control/trace"

// follows says from which states of a gate each one can follow.
var follows = [...][]trace.GateState{
	trace.Shut:       {trace.Shutting, trace.Homing, trace.LockedShut},
	trace.Opening:    {trace.Shut, trace.Shutting, trace.Between},
	trace.Open:       {trace.Opening, trace.Between},
	trace.Shutting:   {trace.Open, trace.Between},
	trace.Between:    {trace.Opening, trace.Shutting, trace.Homing, trace.Faulted},
	trace.Homing:     {trace.Shut, trace.Open, trace.Between},
	trace.Faulted:    {trace.Opening, trace.Shutting, trace.Homing},
	trace.LockedShut: {trace.Shut},
}

// wellTold judges a record before it is taken: its time, that there is such a
// thing and state, and that the state can follow.
func (s *scene) wellTold(r *trace.Record) bool {
	s.rule = "well told"
	n := int(r.Thing)
	switch {
	case r.At < s.now:
		s.breach("time falls", s.says(r))
		return false
	case r.Kind > trace.AirIs || n < 0 || n >= s.many(r) || r.State > s.most(r.Kind), r.Kind == trace.RequestIs && r.Why > uint8(trace.Limit),
		r.Kind == trace.GateIs && s.h.Gates[n].ByHand, r.Kind == trace.AirIs && !s.fits(&s.t.Airs[n]):
		s.breach("a record of nothing")
		return false
	}
	switch r.Kind {
	case trace.GateIs:
		for _, from := range follows[r.State] {
			if from == s.gates[n].state {
				return true
			}
		}
		s.breach("cannot follow on "+s.gates[n].state.String(), s.says(r))
	case trace.FanIs:
		f := s.fans[n].state
		if on := trace.FanState(r.State) == trace.FanOn; on == (f == trace.FanOn) || !on && r.State == uint8(f) {
			if trace.FanState(r.State) != trace.FanOff || f != trace.Coasting {
				s.breach("cannot follow on "+f.String(), s.says(r))
			}
		}
		if trace.FanState(r.State) == trace.FanOff && r.At < s.fans[n].off+s.h.Collectors[n].Coast {
			s.breach("before it has coasted down", s.says(r))
		}
	}
	return true
}

// says is a record in words.
func (s *scene) says(r *trace.Record) string { return s.t.Says(r) }

// fits reports whether the air tells of things that there are.
func (s *scene) fits(a *trace.Air) bool {
	below := func(set trace.Set, n int) bool {
		for ; n < trace.Most; n++ {
			if set.Has(n) {
				return false
			}
		}
		return true
	}
	machines := len(s.h.Machines)
	return below(a.Open, len(s.gates)) && below(a.Running, machines) && below(a.Carrying, machines) && below(a.Short, machines) && below(a.Slow, len(s.h.Stretches))
}

// many is how many things there are of the kind a record is about.
func (s *scene) many(r *trace.Record) int {
	switch r.Kind {
	case trace.GateIs:
		return len(s.gates)
	case trace.FanIs:
		return len(s.fans)
	case trace.RequestIs:
		return len(s.asks)
	case trace.AirIs:
		return len(s.t.Airs)
	case trace.Happens:
		switch r.What() {
		case trace.On, trace.Off:
			return len(s.asks)
		case trace.StopPressed:
			return len(s.h.Stops)
		case trace.HoldOn, trace.HoldOff, trace.StartsUsedUp:
			return len(s.fans)
		case trace.GateSticks, trace.GateFreed, trace.GateLocked, trace.GateUnlocked, trace.Confirmed:
			return len(s.gates)
		}
	}
	return 1
}

// most is the greatest state of a kind.
func (s *scene) most(k trace.Kind) uint8 {
	return [...]uint8{trace.Happens: uint8(trace.Confirmed), trace.GateIs: uint8(trace.LockedShut), trace.FanIs: uint8(trace.Coasting), trace.RequestIs: uint8(trace.RunsOn), trace.SignalIs: 1, trace.AirIs: 0}[k]
}

// toldAir judges that the air is told of the gates as they stand.
func toldAir(s *scene) {
	if s.air.Open != s.open {
		s.breach("the air is told of other gates than are open")
	}
	for t := range s.asks {
		m := s.h.Triggers[t].Machine
		if m == trace.None {
			continue
		}
		switch s.asks[t].state {
		case trace.Served, trace.Opens:
			if !s.air.Running.Has(m) {
				s.breach("the air is not told of a machine that runs", s.h.Machines[m].Name)
			}
		case trace.RunsOn:
			if !s.air.Carrying.Has(m) {
				s.breach("the air is not told of a machine that runs on", s.h.Machines[m].Name)
			}
		}
	}
}
