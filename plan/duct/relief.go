package duct

import (
	"context"
	"slices"

	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// The bounds of a search for relief: so many gates at most are opened as well,
// and so many additions tried; fewer where each trial must look for several
// crossings.
const (
	mostRelief = 3
	mostTrials = 3000
	fewTrials  = 300
)

// relief looks for the smallest addition of open gates with which machines are
// captured and carried with the filter in each state. The trial stands at
// those machines.
//
// Where the fan's curve falls and no loss hangs on how flows split, an open gate
// never raises the flow of a stretch that it does not lie upstream of: so every
// stretch that is too slow needs one upstream of it, and what takes a port's air
// stays out of larger additions.
func (x *trial) relief(ctx context.Context, members []*member) Relief {
	r := Relief{Collector: x.tree.Collector}
	var shut []int
	for g := range x.open {
		if !x.open[g] {
			shut = append(shut, g)
		}
	}
	search := reliefSearch{x: x, members: members, left: fewTrials, falls: x.drawsFalling()}
	if search.falls {
		search.left = mostTrials
		if search.hopeless(shut) {
			r.Through = -1
			return r
		}
	}
	for size := 1; size <= mostRelief; size++ {
		if size > len(shut) {
			r.Through = -1
			return r
		}
		found, whole := search.additions(ctx, shut, size)
		if found != nil {
			for _, g := range found {
				r.Gates = append(r.Gates, x.tree.gates[g])
			}
			r.Through = size - 1
			return r
		}
		if !whole {
			return r
		}
		r.Through = size
	}
	return r
}

// reliefSearch tries additions of gates for machines that run.
type reliefSearch struct {
	x       *trial
	members []*member
	falls   bool
	left    int       // trials
	starved []*passed // what was too slow as it stood
	greedy  [][]int   // additions with which a port lost its need: larger ones lose it too
}

// hopeless notes what is too slow as it stands. It reports whether one of it
// has no shut gate upstream, or stays too slow with all of those open.
func (s *reliefSearch) hopeless(shut []int) bool {
	worst := len(s.x.fans) - 1
	s.starved = s.slow(worst)
	for _, at := range s.starved {
		var above []int
		for _, g := range shut {
			if s.x.feeds(g, at) {
				above = append(above, g)
			}
		}
		if len(above) == 0 {
			return true
		}
		s.x.openAlso(above)
		still := slices.ContainsFunc(s.slow(worst), func(other *passed) bool { return other == at })
		s.x.shutAgain(above)
		if still {
			return true
		}
	}
	return false
}

// drawsFalling reports whether the machines draw on a fan where its curve
// falls, and can only do so: then an open gate, which eases the way, leaves it
// there.
func (x *trial) drawsFalling() bool {
	if x.falls {
		return true
	}
	x.set()
	for _, fan := range x.fans {
		if _, only := x.solver.onTail(fan); !fan.Falls() && !only {
			return false
		}
	}
	return !x.net.splits
}

// slow lists what is clearly too slow with the network as the gates are.
func (s *reliefSearch) slow(state int) (list []*passed) {
	s.x.set()
	flow, ok := s.x.draw(state)
	if !ok && flow == 0 {
		return nil
	}
	for _, m := range s.members {
		for i := range m.path {
			if at := &m.path[i]; s.x.clearlySlow(at, needOf(s.members, at)) {
				list = append(list, at)
			}
		}
	}
	return list
}

// clearly is how far under its need a speed must be, as a share of it, that the
// rounding cannot decide.
const clearly = 1e-4

// clearlySlow reports whether a stretch or its hose is too slow, whatever the
// rounding does.
func (x *trial) clearlySlow(at *passed, need unit.Velocity) bool {
	slow := func(part int, bore unit.Length) bool {
		return float64(air.SpeedIn(unit.Flow(x.solver.Flow[part]), bore)) < float64(need)*(1-clearly)
	}
	return slow(at.part, x.tree.bore(at.stretch)) || at.hose >= 0 && slow(at.hose, x.tree.hose(at.stretch.Duct).Size)
}

// feeds reports whether a gate lies upstream of a stretch; of a hose, none does.
func (x *trial) feeds(g int, at *passed) bool {
	for s := x.tree.gates[g].Stretch; s != nil; s = s.Below() {
		if s == at.stretch {
			return true
		}
	}
	return false
}

func (x *trial) openAlso(gates []int) {
	for _, g := range gates {
		x.open[g] = true
	}
}

func (x *trial) shutAgain(gates []int) {
	for _, g := range gates {
		x.open[g] = false
	}
}

// additions tries every addition of one size. whole is false where the trials
// ran out.
func (s *reliefSearch) additions(ctx context.Context, shut []int, size int) (found []int, whole bool) {
	picked := make([]int, size)
	for at, more := first(size), true; more; more = next(at, len(shut)) {
		for i, place := range at {
			picked[i] = shut[place]
		}
		if s.vain(picked) {
			continue
		}
		if s.left--; s.left < 0 || ctx.Err() != nil {
			return nil, false
		}
		s.x.openAlso(picked)
		works := s.works(picked)
		s.x.shutAgain(picked)
		if works {
			return picked, true
		}
	}
	return nil, true
}

// vain reports whether an addition is known to fail without a trial.
func (s *reliefSearch) vain(picked []int) bool {
	for _, at := range s.starved {
		if !slices.ContainsFunc(picked, func(g int) bool { return s.x.feeds(g, at) }) {
			return true
		}
	}
	for _, greedy := range s.greedy {
		if subset(greedy, picked) {
			return true
		}
	}
	return false
}

func subset(part, whole []int) bool {
	for _, g := range part {
		if !slices.Contains(whole, g) {
			return false
		}
	}
	return true
}

// works reports whether the machines are captured and carried with the gates
// as they are. The filter's last state comes first: it leaves the least air.
func (s *reliefSearch) works(picked []int) bool {
	s.x.set()
	for state := len(s.x.fans) - 1; state >= 0; state-- {
		v := s.x.verdict(state, s.members)
		if !v.Captured && v.OnCurve && s.falls && len(picked) < mostRelief {
			s.greedy = append(s.greedy, slices.Clone(picked))
		}
		if !v.Captured || !v.Carried {
			return false
		}
	}
	return true
}
