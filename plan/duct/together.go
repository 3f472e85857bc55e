package duct

import (
	"context"
	"runtime"
	"slices"
	"sync"

	"dustbook/plan/shop"
)

// RunTogether reckons every set of machines that may run at once. It stops and
// returns the context's error when that is done; progress, where it is not nil,
// is told one call at a time how many sets are reckoned and of how many. The
// answer does not depend on how many processors work at it.
func (k *Reckoning) RunTogether(ctx context.Context, s *shop.Shop, progress func(done, total int)) (*Sets, error) {
	x := &Sets{People: s.PeopleAtMachines.V, Assumed: !s.PeopleAtMachines.Stated(), Asked: asked(s), machines: s.Machines}
	count := 0
	x.Size, count = sizes(len(s.Machines), x.Asked)
	x.All = make([]*Set, 0, count)
	for size := 1; size <= x.Size; size++ {
		for at, more := first(size), true; more; more = next(at, len(s.Machines)) {
			set := &Set{Machines: make([]*shop.Machine, size), Open: make([]int, len(k.Trees))}
			for i, m := range at {
				set.Machines[i] = s.Machines[m]
			}
			x.All = append(x.All, set)
		}
	}
	if err := k.share(ctx, x.All, progress); err != nil {
		return nil, err
	}
	if err := k.bands(ctx, x, mostBands); err != nil {
		return nil, err
	}
	x.summarise(s.Collectors)
	return x, nil
}

// handful is how many sets one worker takes at once.
const handful = 32

// share has the sets judged by as many workers as there are processors.
func (k *Reckoning) share(ctx context.Context, all []*Set, progress func(done, total int)) error {
	var lock sync.Mutex
	var group sync.WaitGroup
	taken, done := 0, 0
	take := func(finished int) []*Set {
		lock.Lock()
		defer lock.Unlock()
		if done += finished; finished > 0 && progress != nil {
			progress(done, len(all))
		}
		from := taken
		taken = min(taken+handful, len(all))
		return all[from:taken]
	}
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			var trials []*trial
			for _, t := range k.Trees {
				trials = append(trials, newTrial(t))
			}
			for part := take(0); len(part) > 0 && ctx.Err() == nil; part = take(len(part)) {
				for _, set := range part {
					if ctx.Err() == nil {
						set.judge(ctx, trials)
					}
				}
			}
		})
	}
	group.Wait()
	return ctx.Err()
}

// judge reckons a set on every collector it needs.
func (s *Set) judge(ctx context.Context, trials []*trial) {
	if s.Apart = apart(s.Machines); s.Apart != nil {
		return
	}
	s.Works = true
	bare := len(s.Bare()) > 0
	for i, x := range trials {
		members := x.members(s.Machines)
		s.Open[i] = x.start(members)
		if !slices.ContainsFunc(members, func(m *member) bool { return len(m.ports) > 0 }) {
			continue
		}
		captured, carried := true, true
		for state := range x.fans {
			v := x.verdict(state, members)
			s.On = append(s.On, v)
			captured, carried = captured && v.Captured, carried && v.Carried
		}
		s.Works = s.Works && captured && carried
		if captured && !carried && !bare {
			s.Relief = append(s.Relief, x.relief(ctx, members))
		}
		if s.Works {
			s.doubt(x, members)
		}
	}
	if s.Works = s.Works && len(s.On) > 0; !s.Works {
		s.Thin = nil
	}
}

// members are what some machines mean to the trial's tree.
func (x *trial) members(machines []*shop.Machine) []*member {
	list := make([]*member, len(machines))
	for i, m := range machines {
		list[i] = x.member[m]
	}
	return list
}

// start makes the network for machines that run, and counts the open gates.
func (x *trial) start(members []*member) (open int) {
	x.run(members)
	x.set()
	for _, is := range x.open {
		if is {
			open++
		}
	}
	return open
}

// apart is the first movable end that two of some machines share.
func apart(machines []*shop.Machine) *shop.Duct {
	for i, m := range machines {
		for _, p := range m.Ports {
			if p.Duct == nil || !p.Duct.Movable() {
				continue
			}
			for _, other := range p.Duct.Serves {
				if other.Machine != m && slices.Contains(machines[:i], other.Machine) {
					return p.Duct
				}
			}
		}
	}
	return nil
}
