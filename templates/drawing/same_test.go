package drawing_test

import (
	"runtime"
	"testing"

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

func BenchmarkPlan(b *testing.B) {
	p := load(b, "hall")
	r := named(b, p, "Thicknesser")
	for b.Loop() {
		drawing.Plan(p, r, "b")
	}
}

func BenchmarkFanChart(b *testing.B) {
	p := load(b, "hall")
	for b.Loop() {
		drawing.FanChart(p, p.Shop.Collectors[0], "b")
	}
}
