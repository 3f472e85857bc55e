package drawing

import (
	"testing"

	"dustbook/plan/duct"
)

// touches reports whether two pieces of the line meet, in tenths, with what
// an upright is drawn longer than to its join.
func (w wire) touches(o wire) bool {
	for _, list := range [2][2]path{{w.spots, o.spots}, {o.spots, w.spots}} {
		for _, end := range [2]spot{list[0][0], list[0][len(list[0])-1]} {
			for i := 1; i < len(list[1]); i++ {
				if boxOf(list[1][i-1], list[1][i]).grown(openWire / 2).holds(end) {
					return true
				}
			}
		}
	}
	return false
}

// TestSingleWayIsHeavy checks that in every use of machines the heavy line
// leads from each port of the use to the collector without a break, that it
// goes nowhere else, and that every row off the way is thin.
func TestSingleWayIsHeavy(t *testing.T) {
	ways := 0
	for _, name := range []string{"hall", "shed", "words", "yard", "works"} {
		p := loaded(t, name)
		board := NewBoard(p)
		for _, u := range p.Air.Uses {
			for _, r := range u.Results {
				if r.Collector == nil || u.Kind != duct.OneMachine && u.Kind != duct.Together {
					continue
				}
				s := newSingle(board, r)
				s.lay()
				s.draw()
				var heavy []wire
				for _, w := range s.wires {
					if w.open {
						heavy = append(heavy, w)
					}
				}
				reached := map[int]bool{}
				next := []wire{{spots: path{{0, treeRoot}, {0, treeRoot}}}}
				for len(next) > 0 {
					from := next[0]
					next = next[1:]
					for i, w := range heavy {
						if !reached[i] && w.touches(from) {
							reached[i] = true
							next = append(next, w)
						}
					}
				}
				if len(reached) != len(heavy) {
					t.Errorf("%s, %s: %d of %d heavy pieces hang together", name, u.Name, len(reached), len(heavy))
				}
				for _, row := range s.rows {
					stretch := row.stretch
					if stretch == nil {
						stretch = row.duct.Stretches[0]
					}
					is := false
					for _, w := range heavy {
						is = is || w.spots[0] == row.from && w.spots[1].y == row.from.y
					}
					if is != s.open[stretch] {
						t.Errorf("%s, %s: %s is heavy: %v", name, u.Name, stretch.Name(), is)
					}
				}
				for _, v := range r.Ports {
					if v.Port.Duct != nil && v.Port.Duct.Collector == r.Collector && s.open[v.Port.Duct.Stretches[0]] {
						ways++
					}
				}
			}
		}
	}
	if ways < 50 {
		t.Errorf("only %d ways", ways)
	}
}
