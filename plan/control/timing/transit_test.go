package timing

import (
	"testing"

	"dustbook/plan/unit"
)

// Times worked out beforehand for the form t = L/(k v): common practice, no
// source for k. Lengths in metres; speeds 18, 20 and 22.5 m/s; each with k =
// 0.5 and 0.7; printed to a tenth of a second.
func TestTransitTable(t *testing.T) {
	speeds := []unit.Velocity{18, 20, 22.5}
	for _, row := range []struct {
		length unit.Length
		want   []string
	}{
		{10, []string{"1.1", "0.8", "1.0", "0.7", "0.9", "0.6"}},
		{20, []string{"2.2", "1.6", "2.0", "1.4", "1.8", "1.3"}},
		{30, []string{"3.3", "2.4", "3.0", "2.1", "2.7", "1.9"}},
		{40, []string{"4.4", "3.2", "4.0", "2.9", "3.6", "2.5"}},
	} {
		for i, v := range speeds {
			got, known := TransitOf(Path{Known: true, Legs: []Leg{{row.length, v}}})
			if !known || unit.Fixed(float64(got.Cautious), 1) != row.want[2*i] || unit.Fixed(float64(got.Fair), 1) != row.want[2*i+1] {
				t.Errorf("%v m at %v m/s: %v and %v, want %s and %s", row.length, v, got.Cautious, got.Fair, row.want[2*i], row.want[2*i+1])
			}
		}
	}
}

// The legs of a path add up; air that stands still in one of them brings
// nothing, unless that leg has no length.
func TestTransitOfLegs(t *testing.T) {
	p := Path{Known: true, Legs: []Leg{{7, 10}, {14, 20}, {0, 0}}}
	got, known := TransitOf(p)
	if !known || got.Length != 21 || got.Air != 1.4 || got.Fair != 2 || got.Cautious != 2.8 {
		t.Errorf("got %+v, %v; want 21 m in 1.4 s by the air, 2 s and 2.8 s by chips", got, known)
	}
	p.Legs[2].Length = 1
	if _, known := TransitOf(p); known {
		t.Error("a time through air that stands still")
	}
	if _, known := TransitOf(Path{Legs: []Leg{{1, 1}}}); known {
		t.Error("a time through air that was not solved")
	}
}
