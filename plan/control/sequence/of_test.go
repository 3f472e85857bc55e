package sequence

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"dustbook/plan/control/invariant"
	"dustbook/plan/control/trace"
)

// What the works of the example school hold, as its file says it.
func TestOfSchool(t *testing.T) {
	h := worksOf(t, "../../../content/example/school.toml").Head
	lathe := h.Triggers[named(t, h, "Lathe switch")]
	names := func(gates []int) string {
		var list []string
		for _, g := range gates {
			list = append(list, h.Gates[g].Name)
		}
		return strings.Join(list, ", ")
	}
	for what, x := range map[string][2]string{
		"opens of the lathe, its zone first": {names(lathe.Opens), "South zone gate, Saw gate"},
		"relief of the lathe":                {names(lathe.Relief), "Saw gate"},
		"way of the lathe":                   {names(lathe.Ways[0].Gates), "Far gate, South zone gate"},
		"run-on and delay of the lathe, ms":  {fmt.Sprint(lathe.RunOn, lathe.StartDelay, lathe.Latched), "15000 2250 true"},
		"zones of the planer gate":           {names(h.Gates[named(t, h, "Planer gate")].Zones), "East zone gate"},
		"moves at once":                      {fmt.Sprint(h.Moves), "2"},
		"movable ends":                       {fmt.Sprint(len(h.Ends), " ", h.Machines[h.Ends[0][0]].Name, ", ", h.Machines[h.Ends[0][1]].Name), "1 Lathe, Disc sander"},
		"stops":                              {fmt.Sprint(h.Stops[0].Collectors, h.Stops[1].Collectors), "[0] [1]"},
		"the forgotten zone gate":            {fmt.Sprint(h.Triggers[named(t, h, "Mitre saw running")].Ways[0].Whole), "false"},
		"collectors that triggers start":     {fmt.Sprint(h.Collectors[0].Started, h.Collectors[1].Started), "true false"},
		"starts and rest by the motor table": {fmt.Sprint(h.Collectors[0].Starts, h.Collectors[0].Within/1000, h.Collectors[0].Rest), "1 2526 83000"}, // MG 10 table 2-3: 5 hp, 2 poles, 5.7/4 an hour, 83 s
		"no limit of starts is given":        {fmt.Sprint(h.Collectors[1].Starts, h.Collectors[1].Rest), "0 0"},
		"purges":                             {fmt.Sprint(len(h.Triggers), " ", h.TriggerName(len(h.Triggers)-1)), "10 Cyclone purge"},
		"times of the east zone gate, ms":    {fmt.Sprint(h.Gates[0].Travel, h.Gates[0].Margin, h.Gates[0].Proof == trace.BySwitch), "1800 900 true"},
	} {
		if x[0] != x[1] {
			t.Errorf("%s: %q, want %q", what, x[0], x[1])
		}
	}
	for _, turn := range h.Triggers[len(h.Triggers)-1].Turns {
		if name := h.TriggerName(turn); strings.Contains(name, "switch") && name != "Sweep switch" || name == "Mitre saw running" {
			t.Errorf("the purge takes %s, which needs a person or has no way", name)
		}
	}
}

// Every shop at hand can be run, and keeps the rules.
func TestOfOtherShops(t *testing.T) {
	for _, file := range []string{"../testdata/hall.toml", "../../../content/example/small.toml", "../../../content/starter/shop.toml"} {
		w := worksOf(t, file)
		if len(w.Head.Triggers) == 0 {
			continue
		}
		x := newExplorer(w, unbroken)
		random := rand.New(rand.NewPCG(3, 4))
		for range 2000 {
			tr, breaches := x.random(random)
			for _, b := range breaches {
				t.Fatalf("%s: %s\n%s", file, b, told(tr))
			}
		}
	}
}

// More gates than a set holds are refused, as is a gate on no way.
func TestPrepareRefuses(t *testing.T) {
	many := &trace.Head{Collectors: make([]trace.Collector, 1), Gates: make([]trace.Gate, trace.Most)}
	if _, err := Prepare(many); err != nil {
		t.Error(err)
	}
	many.Gates = append(many.Gates, trace.Gate{})
	for name, x := range map[string]struct {
		head  *trace.Head
		fault Fault
	}{
		"many-gates: 257, at most 256":      {many, Fault{Kind: ManyGates, Count: 257, Most: 256}},
		"many-machines: 257, at most 256":   {&trace.Head{Machines: make([]trace.Machine, 257)}, Fault{Kind: ManyMachines, Count: 257, Most: 256}},
		"many-collectors: 258, at most 256": {&trace.Head{Collectors: make([]trace.Collector, 258)}, Fault{Kind: ManyCollectors, Count: 258, Most: 256}},
		"many-stretches: 257, at most 256":  {&trace.Head{Stretches: make([]string, 257)}, Fault{Kind: ManyStretches, Count: 257, Most: 256}},
		"stray-gate: Stray":                 {&trace.Head{Collectors: make([]trace.Collector, 1), Gates: []trace.Gate{{Name: "Stray", Collector: trace.None}}}, Fault{Kind: StrayGate, Name: "Stray"}},
	} {
		_, err := Prepare(x.head)
		if fault, is := errors.AsType[*Fault](err); !is || *fault != x.fault || err.Error() != name {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A Runner gives the same story again, whatever it ran before, and a story has
// no part in the next one.
func TestRunnerAgain(t *testing.T) {
	w := school(t)
	x := newExplorer(w, unbroken)
	random := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		sequence := make([]int, 12)
		for i := range sequence {
			sequence[i] = random.IntN(len(x.list))
		}
		again, _ := x.try(sequence, changing)
		first := told(again)
		fresh, breaches := newExplorer(w, unbroken).try(sequence, changing)
		if told(fresh) != first || len(breaches) > 0 {
			t.Fatalf("%v is told otherwise by a fresh runner", sequence)
		}
		x.random(random)
	}
}

// The canned stories keep the rules, for every trigger of the school.
func TestStoriesKeepRules(t *testing.T) {
	w := school(t)
	for a := range w.Head.Triggers {
		stories := []*trace.Trace{One(w, Ample{}, a), Cut(w, Ample{}, a)}
		for b := range w.Head.Triggers {
			if a != b {
				stories = append(stories, Two(w, Ample{}, a, b))
			}
		}
		for _, s := range stories {
			for _, b := range invariant.Judge(s) {
				t.Errorf("%s: %s", w.Head.TriggerName(a), b)
			}
		}
	}
}
