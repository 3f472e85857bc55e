package chain

import (
	"testing"

	"dustbook/plan/control"
)

// A chain of forty gates with currents, three together.
func BenchmarkChain(b *testing.B) { many(b, Load{Current: 1}, 3, 40) }

// A chain of twenty gates with converters, three together, every set tried.
func BenchmarkConverters(b *testing.B) { many(b, Load{Power: 12}, 3, 20) }

func many(b *testing.B, hard Load, together, count int) {
	h := hurt{together: together, line: Line{Loads: make([]Load, count+1)}, hard: make([]Load, count+1), feeds: []Feed{{0, 24}}}
	for i := 1; i <= count; i++ {
		h.line.Loops = append(h.line.Loops, 0.02)
		h.line.Loads[i].Current = 0.02
		h.hard[i] = hard
		h.movers = append(h.movers, i)
	}
	for b.Loop() {
		if _, _, err := h.lowest(); err != nil {
			b.Fatal(err)
		}
	}
}

// A whole shop file of one chain, with its mends.
func BenchmarkReckon(b *testing.B) {
	s, _ := row(b, `cable = "18 AWG"`, `cable = "24 AWG"`)
	k := control.Reckon(s)
	for b.Loop() {
		if r := Reckon(s, k); len(r.Chains) == 0 {
			b.Fatal("no chain")
		}
	}
}
