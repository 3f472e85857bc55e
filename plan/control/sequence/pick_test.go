package sequence

import (
	"fmt"
	"testing"

	"dustbook/plan/control/trace"
)

// pairNames are the triggers of a pair; a stroke where there is none.
func pairNames(w *Works, p *Pair) string {
	if p == nil {
		return "-"
	}
	return w.Head.TriggerName(p.First) + " then " + w.Head.TriggerName(p.Second)
}

// crowded is an Air in which a machine is short while a gate is open.
type crowded struct{ gate, machine int }

func (a crowded) Judge(open, running, _ trace.Set) (short, slow trace.Set) {
	if open.Has(a.gate) && running.Has(a.machine) {
		short.Add(a.machine)
	}
	return short, slow
}

// The saw's trigger and the switch share the small collector. The sander waits
// for someone to look, not for the saw; the drill has no whole way; the purge
// needs the switch's collector. With the saw's end moved to the sander, the
// sander waits for that.
func TestPairs(t *testing.T) {
	w := pair(t)
	both, apart := Pairs(w, Ample{})
	if got := pairNames(w, both) + "; " + pairNames(w, apart); got != "Saw runs then Switch; -" {
		t.Error(got)
	}
	if told(both.Story) != told(Two(w, Ample{}, 0, 3)) {
		t.Error("the story is not that of its triggers")
	}
	w.Head.Ends = [][]int{{0, 1}}
	w, err := Prepare(w.Head)
	if err != nil {
		t.Fatal(err)
	}
	both, apart = Pairs(w, Ample{})
	if got := pairNames(w, both) + "; " + pairNames(w, apart); got != "Saw runs then Switch; Saw runs then Sander runs" {
		t.Error(got)
	}
	// no collector in common
	w.Head.Triggers = w.Head.Triggers[1:4]
	w, err = Prepare(w.Head)
	if err != nil {
		t.Fatal(err)
	}
	if both, apart = Pairs(w, Ample{}); both != nil || apart != nil {
		t.Errorf("%s; %s", pairNames(w, both), pairNames(w, apart))
	}
}

// bench is a collector with a switch of no machine before a lathe, each with a
// gate of 1 s, and two more gates.
func bench(t *testing.T, moves int, slow trace.Time) *Works {
	t.Helper()
	way := []trace.Way{{Port: "port", Gates: []int{1}, Whole: true}}
	h := &trace.Head{
		Moves:      moves,
		Collectors: []trace.Collector{{Name: "Big", Started: true, Coast: 10_000}},
		Machines:   []trace.Machine{{Name: "Lathe", Ways: way}},
		Triggers: []trace.Trigger{
			{Name: "Switch", Machine: trace.None, Latched: true, Opens: []int{0}, Starts: []int{0}, Ways: []trace.Way{{Port: "port", Gates: []int{0}, Whole: true}}, RunOn: 4000},
			{Name: "Lathe runs", Opens: []int{1}, Starts: []int{0}, Ways: way, RunOn: 4000},
		},
	}
	for i, travel := range []trace.Time{1000, 1000, 1000, slow} {
		h.Gates = append(h.Gates, trace.Gate{Name: fmt.Sprint("Gate ", i), Travel: travel, Margin: travel / 2})
	}
	w, err := Prepare(h)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Either order is tried: with the switch on first the lathe is served and short,
// with the lathe on first the switch waits.
func TestPairsEitherOrder(t *testing.T) {
	w := bench(t, 1, 1000)
	both, apart := Pairs(w, crowded{gate: 0, machine: 0})
	if got := pairNames(w, both) + "; " + pairNames(w, apart); got != "Switch then Lathe runs; Lathe runs then Switch" {
		t.Error(got)
	}
}

// The one that nobody presses, and the first where each is pressed.
func TestUnpressed(t *testing.T) {
	w := bench(t, 1, 1000)
	if got := Unpressed(w); got != 1 {
		t.Errorf("%s", w.Head.TriggerName(got))
	}
	w.Head.Triggers[1].Latched = true
	if got := Unpressed(w); got != 0 {
		t.Errorf("%s", w.Head.TriggerName(got))
	}
}

// After a power cut a trigger is served again once every gate has found its
// stops, also where one of them takes far longer than the rest, 60 s and half
// as much again, and all move at once.
func TestCutIsServedAgain(t *testing.T) {
	for _, x := range []struct {
		moves int
		slow  trace.Time
	}{{1, 60_000}, {2, 60_000}, {4, 60_000}, {4, 1000}} {
		w := bench(t, x.moves, x.slow)
		served := 0
		for _, s := range Cut(w, Ample{}, 1).Lane(trace.RequestIs, 1) {
			if trace.RequestState(s.State) == trace.Served {
				served++
			}
		}
		if served != 2 {
			t.Errorf("%d at once, one of %d ms: served %d times, want twice", x.moves, x.slow, served)
		}
	}
}
