package shop

import (
	"math"
	"math/rand/v2"
	"testing"

	"dustbook/plan/unit"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

func nearSpot(a, b Spot) bool { return distance(a, b) < 1e-9 }

func TestTurned(t *testing.T) {
	o := Spot{}
	for _, c := range []struct {
		to   Spot
		want unit.Angle
	}{
		{Spot{1, 0, 0}, 0}, {Spot{2, 0, 0}, 0}, {Spot{0, 1, 0}, 90}, {Spot{0, 0, -3}, 90}, {Spot{-1, 0, 0}, 180},
		{Spot{1, 1, 0}, 45}, {Spot{-1, 1, 0}, 135}, {Spot{math.Sqrt(3), 0, 1}, 30}, {Spot{1, 0, math.Sqrt(3)}, 60},
		{Spot{1, 1, 1}, 54.7356}, {o, 0},
	} {
		if got := Turned(o, Spot{1, 0, 0}, o, c.to); got != c.want {
			t.Errorf("turned to %v: %v, want %v", c.to, got, c.want)
		}
	}
}

// TestMeasureRoute: length and elbows of routes, in metres; a turn of less
// than 15° is no elbow.
func TestMeasureRoute(t *testing.T) {
	degrees := func(a float64) Spot { return Spot{4 + math.Cos(a*math.Pi/180), math.Sin(a * math.Pi / 180), 0} }
	for _, c := range []struct {
		name   string
		route  []Spot
		length float64
		turns  []Turn
	}{
		{"straight", []Spot{{0, 0, 0}, {3, 4, 0}}, 5, nil},
		{"straight in pieces", []Spot{{0, 0, 0}, {1, 0, 0}, {5, 0, 0}}, 5, nil},
		{"a corner", []Spot{{0, 0, 0}, {0, 0, 3}, {4, 0, 3}}, 7, []Turn{{Angle: 90, At: 3}}},
		{"two corners", []Spot{{0, 0, 0}, {0, 0, 3}, {4, 0, 3}, {5, 1, 3}}, 7 + math.Sqrt2, []Turn{{Angle: 90, At: 3}, {Angle: 45, At: 7}}},
		{"back again", []Spot{{0, 0, 0}, {2, 0, 0}, {1, 0, 0}}, 3, []Turn{{Angle: 180, At: 2}}},
		{"14.9°", []Spot{{0, 0, 0}, {4, 0, 0}, degrees(14.9)}, 5, nil},
		{"15°", []Spot{{0, 0, 0}, {4, 0, 0}, degrees(15)}, 5, []Turn{{Angle: 15, At: 4}}},
	} {
		length, turns := measureRoute(c.route)
		if !near(float64(length), c.length) || len(turns) != len(c.turns) {
			t.Errorf("%s: %v, %v", c.name, length, turns)
			continue
		}
		for i, turn := range turns {
			if turn.Angle != c.turns[i].Angle || !near(float64(turn.At), float64(c.turns[i].At)) || turn.Join {
				t.Errorf("%s: %v, want %v", c.name, turn, c.turns[i])
			}
		}
	}
}

func TestAlong(t *testing.T) {
	route := []Spot{{0, 0, 0}, {0, 0, 3}, {4, 0, 3}}
	for _, c := range []struct {
		at   unit.Length
		want Spot
	}{
		{-1, Spot{0, 0, 0}}, {0, Spot{0, 0, 0}}, {1.5, Spot{0, 0, 1.5}}, {3, Spot{0, 0, 3}}, {5, Spot{2, 0, 3}}, {7, Spot{4, 0, 3}}, {9, Spot{4, 0, 3}},
	} {
		if got := Along(route, c.at); !nearSpot(got, c.want) {
			t.Errorf("at %v: %v, want %v", c.at, got, c.want)
		}
	}
	if got := Along(nil, 1); got != (Spot{}) {
		t.Errorf("along nothing: %v", got)
	}
}

func TestPart(t *testing.T) {
	route := []Spot{{0, 0, 0}, {0, 0, 3}, {4, 0, 3}}
	for _, c := range []struct {
		from, to unit.Length
		want     []Spot
	}{
		{0, 7, route},
		{0, 2, []Spot{{0, 0, 0}, {0, 0, 2}}},
		{2, 5, []Spot{{0, 0, 2}, {0, 0, 3}, {2, 0, 3}}},
		{3, 7, []Spot{{0, 0, 3}, {4, 0, 3}}},
		{0, 3, []Spot{{0, 0, 0}, {0, 0, 3}}},
		{4, 4, []Spot{{1, 0, 3}, {1, 0, 3}}},
	} {
		got := Part(route, c.from, c.to)
		if len(got) != len(c.want) {
			t.Errorf("%v to %v: %v, want %v", c.from, c.to, got, c.want)
			continue
		}
		for i := range got {
			if !nearSpot(got[i], c.want[i]) {
				t.Errorf("%v to %v: %v, want %v", c.from, c.to, got, c.want)
			}
		}
	}
}

// TestNearestOn: beside a run, beyond its ends, at a corner.
func TestNearestOn(t *testing.T) {
	route := []Spot{{0, 0, 0}, {4, 0, 0}, {4, 4, 0}}
	for _, c := range []struct {
		spot       Spot
		off, along float64
		run        int
	}{
		{Spot{1, 0, 0}, 0, 1, 1}, {Spot{1, -2, 0}, 2, 1, 1}, {Spot{-3, 4, 0}, 5, 0, 1}, {Spot{4, 0, 0}, 0, 4, 2}, {Spot{7, -4, 0}, 5, 4, 2},
		{Spot{5, 3, 0}, 1, 7, 2}, {Spot{4, 9, 0}, 5, 8, 2}, {Spot{2, 1, 0}, 1, 2, 1},
		{Spot{3, 1, 0}, 1, 3, 1}, // as near to the second run: the first counts
	} {
		off, along := nearestOn(route, c.spot)
		if !near(off, c.off) || !near(along, c.along) {
			t.Errorf("%v: %v off, %v along, want %v, %v", c.spot, off, along, c.off, c.along)
		}
		if run := runAt(route, unit.Length(along)); run != c.run {
			t.Errorf("%v: run %d, want %d", c.spot, run, c.run)
		}
	}
}

// TestRoutesAtRandom: whatever the route, the parts make up the whole, a spot
// along it lies on it, and what lies on it is found there.
func TestRoutesAtRandom(t *testing.T) {
	draw := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		route := make([]Spot, 2+draw.IntN(6))
		for i := range route {
			route[i] = Spot{draw.Float64() * 20, draw.Float64() * 20, draw.Float64() * 4}
		}
		length, _ := measureRoute(route)
		at := unit.Length(draw.Float64()) * length
		first, _ := measureRoute(Part(route, 0, at))
		second, _ := measureRoute(Part(route, at, length))
		if !near(float64(first+second), float64(length)) || !near(float64(first), float64(at)) {
			t.Fatalf("%v: parts of %v and %v, want %v and %v", route, first, second, at, length-at)
		}
		off, along := nearestOn(route, Along(route, at))
		if off > 1e-6 || !nearSpot(Along(route, unit.Length(along)), Along(route, at)) {
			t.Fatalf("%v: at %v found %v off at %v", route, at, off, along)
		}
	}
}

// TestRises: a run that goes up by 45° or more and by 300 mm or more.
func TestRises(t *testing.T) {
	slope := func(degrees, length float64) []Spot {
		return []Spot{{0, 0, 1}, {length * math.Cos(degrees*math.Pi/180), 0, 1 + length*math.Sin(degrees*math.Pi/180)}}
	}
	for _, c := range []struct {
		name string
		part []Spot
		want bool
	}{
		{"upright", slope(90, 2), true}, {"down", slope(-90, 2), false}, {"level", slope(0, 2), false},
		{"45°", slope(45, 2), true}, {"44.9°", slope(44.9, 2), false}, {"300 mm", slope(90, 0.3), true}, {"299 mm", slope(90, 0.299), false},
		{"a rise behind a level run", []Spot{{0, 0, 1}, {4, 0, 1}, {4, 0, 2}}, true},
		{"two short rises", []Spot{{0, 0, 1}, {0, 0, 1.2}, {4, 0, 1.2}, {4, 0, 1.4}}, false},
	} {
		if got := rises(c.part); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A turn of 15° is an elbow, one a little less is none; what is 15° in six
// digits is.
func TestIsElbow(t *testing.T) {
	for turn, want := range map[unit.Angle]bool{0: false, 14.9: false, 14.9999: false, 14.99999999: true, 15: true, 15.1: true, 90: true} {
		if IsElbow(turn) != want {
			t.Errorf("a turn of %v°: an elbow %v", turn, !want)
		}
	}
}
