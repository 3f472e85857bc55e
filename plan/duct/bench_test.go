package duct

import (
	"math"
	"os"
	"testing"

	"dustbook/plan/air"
)

// thirty is a draw of the reference network with thirty hoods, three of them
// open: as given, with tight gates, and with every other gate leaking the
// share a gate leaks where a file does not say.
func thirty(b testing.TB, closed string) (*Network, *Fan) {
	n := loadNetworks(b, "g05*.json")[0]
	const share = 0.0155
	s := mustRead(b, n.shopFile(closed, 1/(share*share)))
	tree := Grow(s, s.Collectors[0], StateOf(s))
	for _, u := range Uses(s) {
		if u.Name == "Scenario 0" {
			return tree.Set(u), NewFan(tree.Collector, tree.State, Clean)
		}
	}
	b.Fatal("no use")
	return nil, nil
}

func live(n *Network) (count, ducts int) {
	for i := range n.Edges {
		if e := &n.Edges[i]; !e.Dead {
			count++
			if e.Fric > 0 {
				ducts++
			}
		}
	}
	return count, ducts
}

// BenchmarkThirty solves one use from nothing, tight and leaking. Beside each,
// "factor" reckons one friction factor for each duct that carries air, to
// compare with.
func BenchmarkThirty(b *testing.B) {
	for _, kind := range []struct{ name, closed string }{{"tight", "removed"}, {"leaking", "leak"}} {
		net, fan := thirty(b, kind.closed)
		_, high := fan.Range()
		edges, ducts := live(net)
		b.Run(kind.name, func(b *testing.B) {
			b.ReportAllocs()
			solver := NewSolver(net)
			for b.Loop() {
				solver.rest()
				if _, _, ok := solver.Meet(fan, high/2); !ok {
					b.Fatal("did not settle")
				}
			}
			b.ReportMetric(float64(edges), "edges")
			b.ReportMetric(float64(ducts), "ducts")
		})
		b.Run(kind.name+"/factor", func(b *testing.B) {
			b.ReportAllocs()
			solver := NewSolver(net)
			solver.Meet(fan, high/2)
			sum := 0.0
			for b.Loop() {
				for i := range net.Edges {
					if e := &net.Edges[i]; !e.Dead && e.Fric > 0 {
						sum += air.Factor(e.Re*math.Abs(solver.Flow[i]), e.Rel)
					}
				}
			}
			if sum == 0 {
				b.Fatal("no factor")
			}
		})
	}
}

// BenchmarkSchool solves every use of the example with its filters in both
// states.
func BenchmarkSchool(b *testing.B) {
	text, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		b.Fatal(err)
	}
	s := mustRead(b, string(text))
	b.ReportAllocs()
	results := 0
	for b.Loop() {
		results = 0
		for _, u := range Reckon(s).Uses {
			results += len(u.Results)
		}
	}
	b.ReportMetric(float64(results), "results")
}

// Solving again allocates nothing.
func TestSolverAllocatesNothing(t *testing.T) {
	for _, closed := range []string{"removed", "leak"} {
		net, fan := thirty(t, closed)
		solver := NewSolver(net)
		total := 0.2
		if got := testing.AllocsPerRun(50, func() {
			if _, _, ok := solver.Meet(fan, 0.5); !ok {
				t.Fatal("did not settle")
			}
			solver.rest()
			total *= 1.001
			if _, ok := solver.At(total); !ok {
				t.Fatal("did not settle")
			}
		}); got != 0 {
			t.Errorf("gates %s: %g allocations", closed, got)
		}
	}
	d := newDrawing(3003, 9)
	d.junctions = "flow split"
	net, fan := drawnTree(t, d)
	if !net.splits {
		t.Fatal("no wye")
	}
	_, high := fan.Range()
	solver := NewSolver(net)
	if got := testing.AllocsPerRun(50, func() { solver.At(high / 3) }); got != 0 {
		t.Errorf("flow split: %g allocations", got)
	}
}
