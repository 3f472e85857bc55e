package duct

import (
	"math"
	"testing"
)

// humps are curves that rise before they fall, with none, one and two valleys.
var humps = []string{
	`["0 m3/s", "1500 Pa"], ["0.1 m3/s", "2000 Pa"], ["0.6 m3/s", "1000 Pa"], ["1 m3/s", "0 Pa"]`,
	`["0 m3/s", "2000 Pa"], ["0.1 m3/s", "900 Pa"], ["0.3 m3/s", "1900 Pa"], ["0.7 m3/s", "1000 Pa"], ["1.2 m3/s", "0 Pa"]`,
	`["0.05 m3/s", "600 Pa"], ["0.2 m3/s", "400 Pa"], ["0.3 m3/s", "700 Pa"], ["0.4 m3/s", "500 Pa"], ["0.5 m3/s", "800 Pa"], ["0.9 m3/s", "100 Pa"]`,
}

// Where a tree can meet a curve only on its falling end, a search over all of
// the curve finds that one crossing and no other.
func TestOnTail(t *testing.T) {
	only, several := 0, 0
	for seed := uint64(0); seed < often(); seed++ {
		d := newDrawing(6200+seed, 6)
		d.curve = humps[seed%3]
		net, fan := drawnTree(t, d)
		s := NewSolver(net)
		if !net.Live() {
			continue
		}
		root, is := s.onTail(fan)
		found, sound := NewSolver(net).Crossings(fan)
		if !sound {
			continue
		}
		if !is {
			several++
			continue
		}
		only++
		flow, _, ok := s.Meet(root, 0.3)
		_, high := fan.Range()
		switch {
		case !ok:
			t.Errorf("seed %d: did not settle", seed)
		case flow > high:
			if len(found) > 0 {
				t.Errorf("seed %d: past the end, a search finds %v", seed, found)
			}
		case len(found) != 1 || !found[0].Stable || math.Abs(found[0].Flow-flow) > 1e-9:
			t.Errorf("seed %d: %g m³/s, a search finds %v", seed, flow, found)
		}
	}
	if only < 20 || several < 5 {
		t.Errorf("%d trees on the tail, %d not: too few to say anything", only, several)
	}
}
