package chain

import (
	"errors"
	"math/bits"
	"math/rand/v2"
	"testing"

	"dustbook/plan/unit"
)

// anyHurt is a seeded chain with movers.
func anyHurt(random *rand.Rand, watts bool) hurt {
	n := 1 + random.IntN(9)
	h := hurt{together: 1 + random.IntN(4), hard: make([]Load, n+1), line: Line{Loads: make([]Load, n+1)}}
	for i := 1; i <= n; i++ {
		h.line.Loops = append(h.line.Loops, unit.Resistance(random.Float64()*0.6))
		h.line.Loads[i].Current = unit.Current(random.Float64() * 0.1)
		h.hard[i] = h.line.Loads[i]
		if random.IntN(4) > 0 {
			h.movers = append(h.movers, i)
			h.hard[i] = Load{Current: unit.Current(random.Float64() * 2)}
			if watts && random.IntN(2) == 0 {
				h.hard[i] = Load{Power: unit.Power(random.Float64() * 20)}
			}
		}
	}
	h.feeds = []Feed{{random.IntN(n + 1), unit.Voltage(3 + random.IntN(22))}}
	return h
}

// bruteForce tries every set of movers by its bits, with the plain solver of
// the line alone.
func bruteForce(h hurt) (lowest []unit.Voltage, ok bool) {
	lowest = make([]unit.Voltage, len(h.line.Loads))
	for set := range 1 << len(h.movers) {
		if bits.OnesCount(uint(set)) > h.together {
			continue
		}
		var who []int
		for i, m := range h.movers {
			if set>>i&1 == 1 {
				who = append(who, m)
			}
		}
		volts, err := h.with(who...).Solve(h.feeds...)
		if err != nil {
			return nil, false
		}
		for n, v := range volts {
			if lowest[n] == 0 || v < lowest[n] {
				lowest[n] = v
			}
		}
	}
	return lowest, true
}

// The worst permitted set of every node, against every set: constant currents,
// by adding up what movers take, and loads of constant power.
func TestWorstAgainstEverySet(t *testing.T) {
	random := rand.New(rand.NewPCG(41, 5))
	solvedOnes, refused := [2]int{}, [2]int{}
	for i := range 3000 {
		watts := i % 2
		h := anyHurt(random, watts == 1)
		want, ok := bruteForce(h)
		got, exact, err := h.lowest()
		if !ok {
			refused[watts]++
			if !errors.Is(err, ErrNoSolution) {
				t.Fatalf("%+v: %v, want no solution", h, err)
			}
			continue
		}
		solvedOnes[watts]++
		if err != nil || !exact {
			t.Fatalf("%+v: exact %v, %v", h, exact, err)
		}
		for n := range want {
			if !near(float64(got[n].volts), float64(want[n]), 1e-6*float64(want[n])) {
				t.Fatalf("%+v: node %d: %v, want %v", h, n, got[n].volts, want[n])
			}
			if len(got[n].set) > h.together {
				t.Fatalf("%+v: node %d: %v move together", h, n, got[n].set)
			}
			volts, err := h.with(got[n].set...).Solve(h.feeds...)
			if err != nil || !near(float64(volts[n]), float64(got[n].volts), 2e-5*float64(want[n])) {
				t.Fatalf("%+v: node %d: its own set gives %v, not %v", h, n, volts[n], got[n].volts)
			}
		}
	}
	if min(solvedOnes[0], solvedOnes[1]) < 300 || min(refused[0], refused[1]) < 20 {
		t.Errorf("%v solved, %v refused: both sides have to be met", solvedOnes, refused)
	}
}

// The floor for chains with more sets than are tried never lies above the
// lowest volts, and is the same where no load is of constant power.
func TestFloor(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	met := 0
	for range 2000 {
		h := anyHurt(random, true)
		want, ok := bruteForce(h)
		got, err := h.floor()
		if !ok && err == nil {
			t.Fatalf("%+v: a floor of what has no solution", h)
		}
		if err != nil {
			continue
		}
		met++
		for n := range want {
			if float64(got[n].volts) > float64(want[n])*(1+1e-6) {
				t.Fatalf("%+v: node %d: floor %v over %v", h, n, got[n].volts, want[n])
			}
		}
	}
	if met < 300 {
		t.Errorf("only %d floors", met)
	}
}

// Forty gates, eight together: too many sets to try with converters, none too
// many without.
func TestManySets(t *testing.T) {
	h := hurt{together: 8, line: Line{Loads: make([]Load, 41)}, hard: make([]Load, 41), feeds: []Feed{{0, 24}}}
	for i := 1; i <= 40; i++ {
		h.line.Loops = append(h.line.Loops, 0.01)
		h.line.Loads[i].Current = 0.02
		h.hard[i].Current = 0.5
		h.movers = append(h.movers, i)
	}
	amps, exact, err := h.lowest()
	if err != nil || !exact {
		t.Fatalf("exact %v, %v", exact, err)
	}
	for i := 1; i <= 40; i++ {
		h.hard[i] = Load{Power: 12} // half an ampere at 24 V, more at less
	}
	watts, exact, err := h.lowest()
	if err != nil || exact || !(watts[40].volts < amps[40].volts) {
		t.Fatalf("exact %v, %v: %v, %v", exact, err, watts[40].volts, amps[40].volts)
	}
	for i := 1; i <= 40; i++ {
		h.hard[i] = Load{Power: 60}
	}
	if _, _, err := h.lowest(); !errors.Is(err, errUnsure) {
		t.Errorf("%v, want unsure", err)
	}
	if h.sets() <= mostSets {
		t.Errorf("%d sets", h.sets())
	}
	h.together = 2
	if got := h.sets(); got != 1+40+40*39/2 {
		t.Errorf("%d sets of at most two of forty", got)
	}
	if _, _, err := h.lowest(); err != nil && !errors.Is(err, ErrNoSolution) {
		t.Errorf("%v: two of forty can be tried", err)
	}
}
