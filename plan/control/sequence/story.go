package sequence

import "dustbook/plan/control/trace"

// The pieces a canned story is made of: long enough for everything before them
// to settle.
const (
	early    = 500   // before the first event
	atWork   = 20000 // how long a machine runs
	overlaps = 8000  // how long it runs before the second one comes on
	dark     = 5000  // how long the power is away
)

// One is the story of one trigger that comes on, stays on for a while and goes
// off, from everything shut to everything shut again.
func One(w *Works, air Air, trigger int) *trace.Trace {
	return Run(w, air, []Event{
		{early, trace.On, trigger},
		{early + atWork, trace.Off, trigger},
	})
}

// Two is the story of two triggers that overlap: the second comes on while the
// first is on and stays on after it.
func Two(w *Works, air Air, first, second int) *trace.Trace {
	return Run(w, air, []Event{
		{early, trace.On, first},
		{early + overlaps, trace.On, second},
		{early + atWork, trace.Off, first},
		{early + overlaps + atWork + w.Head.Triggers[first].RunOn, trace.Off, second},
	})
}

// Cut is the story of a power cut while a trigger is on: the power comes back
// with the trigger still on, and nothing starts; then it goes off and comes on
// again.
func Cut(w *Works, air Air, trigger int) *trace.Trace {
	cut := trace.Time(early + atWork)
	back := cut + dark
	again := back + homed(w)
	return Run(w, air, []Event{
		{early, trace.On, trigger},
		{cut, trace.PowerCut, 0},
		{back, trace.PowerBack, 0},
		{again, trace.Off, trigger},
		{again + overlaps, trace.On, trigger},
		{again + overlaps + atWork, trace.Off, trigger},
	})
}

// homed is a time in which every gate has found its stops after a power cut:
// the last one begins no later than when all others are done, so many at once
// as may move.
func homed(w *Works) trace.Time {
	var all, longest, coast trace.Time
	for i := range w.Head.Gates {
		if g := &w.Head.Gates[i]; !g.ByHand {
			all += g.Travel + g.Margin
			longest = max(longest, g.Travel+g.Margin)
		}
	}
	for i := range w.Head.Collectors {
		coast = max(coast, w.Head.Collectors[i].Coast)
	}
	return coast + all/trace.Time(w.Head.Moves) + longest + overlaps
}
