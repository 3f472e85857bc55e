package plan_test

import (
	"math/rand/v2"
	"os"
	"slices"
	"sync"
	"testing"

	"dustbook/plan"
	"dustbook/plan/control/invariant"
	"dustbook/plan/control/sequence"
	"dustbook/plan/control/trace"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// With the air of the example school's own ducts, random stories keep every
// rule. Seeded: the same stories every time. Two ask the same air at a time.
func TestSequenceOnSolvedAir(t *testing.T) {
	works, air, err := schoolPlan(t).Sequence()
	if err != nil {
		t.Fatal(err)
	}
	var group sync.WaitGroup
	var tried [2]struct{ short, slow, waited int }
	for part := range tried {
		group.Go(func() {
			random := rand.New(rand.NewPCG(20261124, uint64(part)))
			runner, judging := sequence.NewRunner(works, air), invariant.Judging{}
			for range 150 {
				story := runner.Run(someEvents(random, works.Head))
				for _, b := range judging.Of(story) {
					t.Error(b)
				}
				for i := range story.Records {
					if r := &story.Records[i]; r.Kind == trace.RequestIs && trace.Why(r.Why) == trace.Starves {
						tried[part].waited++
					}
				}
				for i := range story.Airs {
					tried[part].short += story.Airs[i].Short.Count()
					tried[part].slow += story.Airs[i].Slow.Count()
				}
			}
		})
	}
	group.Wait()
	for _, n := range tried {
		if n.short == 0 || n.slow == 0 || n.waited == 0 {
			t.Errorf("the air never was short (%d) or slow (%d), or no request waited for it (%d): nothing was tried", n.short, n.slow, n.waited)
		}
	}
}

// someEvents turn twelve triggers on or off, up to twelve seconds apart.
func someEvents(random *rand.Rand, h *trace.Head) []sequence.Event {
	var events []sequence.Event
	on := make([]bool, len(h.Triggers))
	at := trace.Time(0)
	for range 12 {
		n := random.IntN(len(on))
		what := trace.On
		if on[n] {
			what = trace.Off
		}
		on[n] = !on[n]
		events = append(events, sequence.Event{At: at, What: what, Thing: n})
		at += trace.Time(random.IntN(12_000))
	}
	return events
}

func schoolPlan(t testing.TB) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile("../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := shop.Read("school.toml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(s, nil, entry.Date{})
}

// The air of a sequence finds short and slow what the tables of machines that
// run together do, for every machine and every pair of the example school.
func TestSequenceAirAgreesWithSets(t *testing.T) {
	p := schoolPlan(t)
	works, air, err := p.Sequence()
	if err != nil {
		t.Fatal(err)
	}
	sets, checked := p.Together(), 0
	for _, set := range sets.All {
		if set.Apart != nil || len(set.Machines) > 2 || len(set.On) == 0 {
			continue
		}
		var open, running trace.Set
		for m, machine := range p.Shop.Machines {
			if !slices.Contains(set.Machines, machine) {
				continue
			}
			running.Add(m)
			gates := slices.Clone(machine.AlsoOpen)
			for _, port := range machine.Ports {
				for _, s := range port.Path() {
					gates = append(gates, s.Gates...)
				}
			}
			for _, g := range gates {
				if n := slices.Index(p.Shop.Gates, g); !works.Head.Gates[n].ByHand {
					open.Add(n)
				}
			}
		}
		captured, carried := true, true
		for _, v := range set.On {
			captured, carried = captured && v.Captured, carried && v.Carried
		}
		short, slow := air.Judge(open, running, running)
		if short.Empty() != captured || slow.Empty() != carried {
			t.Errorf("%s: short %v, slow %v; captured %t, carried %t", set.Machines[0].Name, short.Numbers(), slow.Numbers(), captured, carried)
		}
		checked++
	}
	if checked < 50 {
		t.Errorf("only %d sets were compared", checked)
	}
}
