package trace

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// A set does what a map of the same numbers does.
func TestSet(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		var a, b Set
		inA, inB := map[int]bool{}, map[int]bool{}
		for range random.IntN(12) {
			n := random.IntN(Most)
			a.Add(n)
			inA[n] = true
		}
		for range random.IntN(12) {
			n := random.IntN(Most)
			b.Add(n)
			inB[n] = true
		}
		or, and, without, within := a.Or(b), a.And(b), a.Without(b), true
		var numbers []int
		for n := range Most {
			if or.Has(n) != (inA[n] || inB[n]) || and.Has(n) != (inA[n] && inB[n]) || without.Has(n) != (inA[n] && !inB[n]) {
				t.Fatalf("%v and %v differ at %d", inA, inB, n)
			}
			if inA[n] {
				numbers = append(numbers, n)
			}
			within = within && (!inA[n] || inB[n])
		}
		if a.Within(b) != within || a.Count() != len(numbers) || !slices.Equal(a.Numbers(), numbers) || a.Empty() != (len(numbers) == 0) {
			t.Fatalf("%v: %v", inA, a.Numbers())
		}
		if least := a.Least(); len(numbers) > 0 && least != numbers[0] || len(numbers) == 0 && least != -1 {
			t.Fatalf("least of %v is %d", numbers, least)
		}
		for _, n := range numbers {
			a.Drop(n)
		}
		if !a.Empty() {
			t.Fatal("something is left of a set")
		}
	}
}

// short is a story of one gate, one fan, one latched switch and a power cut.
func short() *Trace {
	return &Trace{
		Head: &Head{Gates: []Gate{{Name: "Gate"}}, Collectors: []Collector{{Name: "Fan"}}, Triggers: []Trigger{{Name: "Switch", Latched: true}, {Name: "Runs"}}},
		Records: []Record{
			{At: 0, Kind: Happens, Thing: 0, State: uint8(On)},
			{At: 0, Kind: RequestIs, Thing: 0, State: uint8(Waits), Why: uint8(Starves)},
			{At: 0, Kind: RequestIs, Thing: 0, State: uint8(Opens)},
			{At: 0, Kind: GateIs, Thing: 0, State: uint8(Opening)},
			{At: 900, Kind: GateIs, Thing: 0, State: uint8(Open), Why: 1},
			{At: 900, Kind: FanIs, Thing: 0, State: uint8(FanOn)},
			{At: 1000, Kind: Happens, Thing: 1, State: uint8(On)},
			{At: 2000, Kind: Happens, Thing: 0, State: uint8(PowerCut)},
			{At: 2000, Kind: FanIs, Thing: 0, State: uint8(Coasting)},
			{At: 2500, Kind: Happens, Thing: 0, State: uint8(PowerBack)},
			{At: 2500, Kind: Happens, Thing: 0, State: uint8(LockoutOn)},
			{At: 3000, Kind: FanIs, Thing: 0, State: uint8(FanOff)},
		},
		End: 4000,
	}
}

// Lanes have no gap, begin at nought and end with the story; what lasts no time
// is left out.
func TestLanes(t *testing.T) {
	tr := short()
	for name, x := range map[string]struct {
		got  []Span
		want string
	}{
		"gate":    {tr.Lane(GateIs, 0), "[{0 900 1 0} {900 4000 2 1}]"},
		"fan":     {tr.Lane(FanIs, 0), "[{0 900 0 0} {900 2000 1 0} {2000 3000 2 0} {3000 4000 0 0}]"},
		"request": {tr.Lane(RequestIs, 0), "[{0 4000 2 0}]"},
		"signal":  {tr.Lane(SignalIs, 0), "[{0 4000 0 0}]"},
		"latched": {tr.Input(0), "[{0 2000 1 0} {2000 4000 0 0}]"},
		"runs":    {tr.Input(1), "[{0 1000 0 0} {1000 4000 1 0}]"},
		"power":   {tr.Power(), "[{0 2000 1 0} {2000 2500 0 0} {2500 4000 1 0}]"},
		"lockout": {tr.Lockout(), "[{0 2500 0 0} {2500 4000 1 0}]"},
	} {
		if got := fmt.Sprint(x.got); got != x.want {
			t.Errorf("%s: %s, want %s", name, got, x.want)
		}
	}
}

// Every state, event and reason has a word of its own.
func TestWords(t *testing.T) {
	for name, x := range map[string]struct {
		words []string
		count int
	}{
		"what":    {whatNames[:], int(Confirmed) + 1},
		"gate":    {gateNames[:], int(LockedShut) + 1},
		"fan":     {fanNames[:], int(Coasting) + 1},
		"request": {requestNames[:], int(RunsOn) + 1},
		"why":     {whyNames[:], int(Limit) + 1},
	} {
		seen := map[string]bool{}
		for _, w := range x.words {
			if seen[w] {
				t.Errorf("%s: %q stands twice", name, w)
			}
			seen[w] = true
		}
		if len(x.words) != x.count {
			t.Errorf("%s: %d words for %d", name, len(x.words), x.count)
		}
	}
	tr := short()
	var said []string
	for i := range tr.Records {
		said = append(said, tr.Says(&tr.Records[i]))
	}
	want := []string{"Switch on", "Switch: waits, starves", "Switch: opens", "Gate opening", "Gate open, not proven", "Fan fan on", "Runs on", "power cut", "Fan fan coasting", "power back", "lockout on", "Fan fan off"}
	if !slices.Equal(said, want) {
		t.Errorf("it says %q, want %q", said, want)
	}
}
