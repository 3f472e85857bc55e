package sequence

import (
	"fmt"
	"math/rand/v2"
	"os"
	"runtime"
	"strings"
	"sync"
	"testing"

	"dustbook/plan/control/invariant"
	"dustbook/plan/control/trace"
)

// effort is how much is explored: the usual; little of it where tests are to be
// short; the whole where that is asked for, once in a process, for it is the same
// every time.
func effort(t *testing.T) string {
	switch {
	case testing.Short():
		return "little"
	case os.Getenv("DUSTBOOK_WHOLE") == "1" && !raced && !explored[t.Name()]:
		explored[t.Name()] = true
		return "whole"
	}
	return "usual"
}

// explored are the tests that have explored the whole.
var explored = map[string]bool{}

// act is one thing that can happen next in an exploration: on or off by turns,
// or one thing again and again.
type act struct {
	name  string
	what  [2]trace.What
	thing int
}

// acts are the things that can happen in a shop: every trigger, the lockout,
// the power, the stop button, a hold, used-up starts, the first zone gate and
// the first gate of a machine that stick or are locked, a gate that someone
// looks at. That each comes on and goes off by turns leaves out only an On on an
// On and an Off on an Off, which change nothing.
func acts(h *trace.Head) []act {
	var list []act
	for t := range h.Triggers {
		list = append(list, act{h.TriggerName(t), [2]trace.What{trace.On, trace.Off}, t})
	}
	list = append(list,
		act{"lockout", [2]trace.What{trace.LockoutOn, trace.LockoutOff}, 0},
		act{"power", [2]trace.What{trace.PowerCut, trace.PowerBack}, 0},
		act{"stop", [2]trace.What{trace.StopPressed, trace.StopPressed}, 0},
		act{"hold", [2]trace.What{trace.HoldOn, trace.HoldOff}, 0},
		act{"used up", [2]trace.What{trace.StartsUsedUp, trace.StartsUsedUp}, 0})
	zone, machine := false, false
	for g := range h.Gates {
		v := &h.Gates[g]
		if v.ByHand {
			continue
		}
		if v.Proof == trace.ByPerson {
			list = append(list, act{v.Name + " looked at", [2]trace.What{trace.Confirmed, trace.Confirmed}, g})
		}
		if v.Zone && zone || !v.Zone && machine {
			continue
		}
		zone, machine = zone || v.Zone, machine || !v.Zone
		list = append(list,
			act{v.Name + " sticks", [2]trace.What{trace.GateSticks, trace.GateFreed}, g},
			act{v.Name + " locked", [2]trace.What{trace.GateLocked, trace.GateUnlocked}, g})
	}
	return list
}

// A pace is the time after each thing that happens.
type pace func(i int) trace.Time

func steady(gap trace.Time) pace { return func(int) trace.Time { return gap } }

// paces are steady ones, for things that meet on the way of a gate, in a run-on,
// and after everything has settled; changing has all three by turns.
var paces = []pace{steady(700), steady(7_000), steady(130_000)}

func changing(i int) trace.Time { return [...]trace.Time{700, 130_000, 7_000}[i%3] }

// story makes events of a sequence of acts.
func story(list []act, sequence []int, gap pace, into []Event) []Event {
	into = into[:0]
	var done [64]uint8
	at := trace.Time(0)
	for i, n := range sequence {
		into = append(into, Event{at, list[n].what[done[n]&1], list[n].thing})
		done[n]++
		at += gap(i)
	}
	return into
}

// explorer is one worker with its own space.
type explorer struct {
	runner  *Runner
	judging invariant.Judging
	list    []act
	events  []Event
}

func newExplorer(w *Works, broken rule) *explorer {
	x := &explorer{runner: NewRunner(w, roughly(w.Head)), list: acts(w.Head)}
	x.runner.broken = broken
	return x
}

func (x *explorer) try(sequence []int, gap pace) (*trace.Trace, []invariant.Breach) {
	x.events = story(x.list, sequence, gap, x.events)
	t := x.runner.Run(x.events)
	return t, x.judging.Of(t)
}

// every tries each sequence of a length at each pace, and stops where found
// says so. It returns how many runs there were.
func every(w *Works, broken rule, length int, paces []pace, found func(*trace.Trace, []invariant.Breach) bool) int {
	n := len(acts(w.Head))
	var lock sync.Mutex
	var group sync.WaitGroup
	count, first, over := 0, 0, false
	next := func(done int) int {
		lock.Lock()
		defer lock.Unlock()
		if count += done; over {
			return n
		}
		first++
		return first - 1
	}
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			x := newExplorer(w, broken)
			sequence, done := make([]int, length), 0
			for lead := next(0); lead < n; lead = next(done) {
				clear(sequence)
				sequence[0], done = lead, 0
				for more := true; more; more = turn(sequence[1:], n) {
					for _, gap := range paces {
						t, breaches := x.try(sequence, gap)
						if done++; len(breaches) > 0 {
							lock.Lock()
							over = found(t, breaches) || over
							lock.Unlock()
						}
					}
					if done&1023 == 0 {
						lock.Lock()
						stop := over
						lock.Unlock()
						if stop {
							break
						}
					}
				}
			}
		})
	}
	group.Wait()
	return count
}

// turn moves to the next sequence, and reports whether there is one.
func turn(sequence []int, n int) bool {
	for i := len(sequence) - 1; i >= 0; i-- {
		if sequence[i]++; sequence[i] < n {
			return true
		}
		sequence[i] = 0
	}
	return false
}

// showing fails a test with the first breach and its story.
func showing(t *testing.T, shown *int) func(*trace.Trace, []invariant.Breach) bool {
	return func(tr *trace.Trace, breaches []invariant.Breach) bool {
		if *shown++; *shown <= 3 {
			var list []string
			for _, b := range breaches {
				list = append(list, b.String())
			}
			t.Errorf("%s\n%s", strings.Join(list, "\n"), told(tr))
		}
		return *shown >= 3
	}
}

// shops are the works that are explored: the example school, and one small shop
// for what the school has not.
func shops(t testing.TB) map[string]*Works {
	return map[string]*Works{"school": school(t), "pair": pair(t)}
}

// Every sequence of four things that can happen, at three paces, keeps every
// rule. Where the whole is asked for, every sequence of six, at one changing
// pace.
func TestEverySequence(t *testing.T) {
	for name, w := range shops(t) {
		t.Run(name, func(t *testing.T) {
			length, at := 4, paces
			switch effort(t) {
			case "little":
				length = 3
			case "whole":
				length, at = 6, []pace{changing}
			}
			shown := 0
			n := every(w, unbroken, length, at, showing(t, &shown))
			t.Logf("%d things that can happen, %d after each other, %d paces: %d runs", len(acts(w.Head)), length, len(at), n)
		})
	}
}

// Longer sequences at changing paces, the same every time.
func TestRandomSequences(t *testing.T) {
	for name, w := range shops(t) {
		t.Run(name, func(t *testing.T) { randomly(t, w) })
	}
}

func randomly(t *testing.T, w *Works) {
	runs := 20_000
	switch effort(t) {
	case "little":
		runs = 2_000
	case "whole":
		runs = 1_000_000
	}
	const parts = 8
	var group sync.WaitGroup
	var lock sync.Mutex
	shown := 0
	show := showing(t, &shown)
	for part := range parts {
		group.Go(func() {
			random := rand.New(rand.NewPCG(20261124, uint64(part)))
			x := newExplorer(w, unbroken)
			for range runs / parts {
				tr, breaches := x.random(random)
				if len(breaches) > 0 {
					lock.Lock()
					stop := show(tr, breaches)
					lock.Unlock()
					if stop {
						return
					}
				}
			}
		})
	}
	group.Wait()
	t.Logf("%d runs of 5 to 40 things", runs)
}

// random tries one random sequence. Paces are drawn so that things meet on the
// way of a gate, in run-ons, in coast-downs, and after all has settled.
func (x *explorer) random(random *rand.Rand) (*trace.Trace, []invariant.Breach) {
	sequence := make([]int, 5+random.IntN(36))
	for i := range sequence {
		sequence[i] = random.IntN(len(x.list))
	}
	return x.try(sequence, func(int) trace.Time {
		return trace.Time(random.IntN(int([...]int64{0, 1_500, 4_000, 30_000, 150_000, 4_000_000}[random.IntN(6)]) + 1))
	})
}

// Each rule broken one by one is caught by the invariant of its name; a run
// that keeps them all was shown to break none.
func TestBrokenRules(t *testing.T) {
	w := school(t)
	for broken := unbroken + 1; int(broken) < len(ruleNames); broken++ {
		t.Run(ruleNames[broken], func(t *testing.T) {
			caught := ""
			find := func(_ *trace.Trace, breaches []invariant.Breach) bool {
				for _, b := range breaches {
					if b.Rule == ruleNames[broken] && caught == "" {
						caught = b.String()
					}
				}
				return caught != ""
			}
			runs, length := 0, 0
			for length = 1; length <= 4 && caught == ""; length++ {
				runs += every(w, broken, length, paces, find)
			}
			if caught == "" {
				t.Fatalf("not caught in %d runs", runs)
			}
			t.Logf("caught by %d things: %s", length-1, caught)
		})
	}
}

// Every rule that a run keeps has its invariant, and every invariant its rule.
func TestRulesAndInvariants(t *testing.T) {
	var names, judged []string
	names = append(names, ruleNames[1:]...)
	for _, r := range invariant.Rules {
		judged = append(judged, r.Name)
	}
	for _, n := range names {
		if !strings.Contains(fmt.Sprintf("%q", judged), fmt.Sprintf("%q", n)) {
			t.Errorf("no invariant watches the rule %q", n)
		}
	}
	if len(names) != len(judged) {
		t.Errorf("%d rules, %d invariants", len(names), len(judged))
	}
}

func BenchmarkRun(b *testing.B) {
	w := school(b)
	x := newExplorer(w, unbroken)
	random := rand.New(rand.NewPCG(1, 2))
	sequences := make([][]int, 256)
	for i := range sequences {
		for range 6 {
			sequences[i] = append(sequences[i], random.IntN(len(x.list)))
		}
	}
	pace := steady(7_000)
	b.Run("run", func(b *testing.B) {
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			x.events = story(x.list, sequences[i&255], pace, x.events)
			x.runner.Run(x.events)
		}
		b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "runs/s")
	})
	b.Run("run and judge", func(b *testing.B) {
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			x.try(sequences[i&255], pace)
		}
		b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "runs/s")
	})
}
