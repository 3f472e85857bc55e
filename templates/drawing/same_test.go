package drawing_test

import (
	"runtime"
	"sync"
	"testing"

	"dustbook/plan/duct"
	"dustbook/templates/drawing"
)

// TestSameBytes draws everything again, on one processor and on two, from
// shops read anew.
func TestSameBytes(t *testing.T) {
	old := runtime.GOMAXPROCS(2)
	defer runtime.GOMAXPROCS(old)
	for _, name := range shops {
		drawn(t, name)
	}
	runtime.GOMAXPROCS(1)
	for _, name := range shops {
		for key, svg := range drawings(load(t, name)) {
			if drawn(t, name)[key] != svg {
				t.Errorf("%s: %s differs", name, key)
			}
		}
	}
}

// TestBoard draws the plans of a shop on one board from several goroutines:
// each is what it is when drawn alone.
func TestBoard(t *testing.T) {
	p := load(t, "hall")
	results := []*duct.Result{nil, nil}
	for _, u := range p.Air.Uses[:6] {
		results = append(results, u.Results...)
	}
	board, got := drawing.NewBoard(p), make([]drawing.SVG, len(results))
	var all sync.WaitGroup
	for i, r := range results {
		all.Go(func() { got[i] = board.Plan(r, "b") })
	}
	all.Wait()
	for i, r := range results {
		if got[i] != drawing.Plan(p, r, "b") {
			t.Errorf("plan %d differs", i)
		}
	}
}

// TestEveryClassIsUsed makes sure that the list holds no class in vain.
func TestEveryClassIsUsed(t *testing.T) {
	used := map[string]bool{}
	for _, name := range shops {
		for _, svg := range drawn(t, name) {
			parse(t, svg).each(func(n *node) {
				start := 0
				class := n.attr["class"]
				for i := 0; i <= len(class); i++ {
					if i == len(class) || class[i] == ' ' {
						used[class[start:i]] = true
						start = i + 1
					}
				}
			})
		}
	}
	for _, c := range drawing.Classes {
		if !used[c.Name] {
			t.Errorf("no drawing uses %q", c.Name)
		}
	}
}

// BenchmarkPlan draws a busy use: alone, and on a board that knows the size of
// the neutral plan.
func BenchmarkPlan(b *testing.B) {
	p := load(b, "hall")
	r := named(b, p, "Thicknesser and table saw")
	b.Run("alone", func(b *testing.B) {
		for b.Loop() {
			drawing.Plan(p, r, "b")
		}
	})
	b.Run("board", func(b *testing.B) {
		board := drawing.NewBoard(p)
		board.Plan(nil, "n")
		for b.Loop() {
			board.Plan(r, "b")
		}
	})
}

func BenchmarkFanChart(b *testing.B) {
	p := load(b, "hall")
	for b.Loop() {
		drawing.FanChart(p, p.Shop.Collectors[0], "b")
	}
}

// BenchmarkIsometric draws the ducts of a large collector.
func BenchmarkIsometric(b *testing.B) {
	p := load(b, "works")
	for b.Loop() {
		drawing.Isometric(p, p.Shop.Collectors[0], "b")
	}
}

// BenchmarkWorksPlan draws the neutral plan of twenty-four machines.
func BenchmarkWorksPlan(b *testing.B) {
	p := load(b, "works")
	for b.Loop() {
		drawing.Plan(p, nil, "b")
	}
}
