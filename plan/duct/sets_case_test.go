package duct

import (
	"context"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// C06: an 8 in main passes two machines of 600 to 785 cfm, and not three of
// 785, whatever the label of the fan says.
func TestCaseTwoToThreeAtOnce(t *testing.T) {
	text, err := os.ReadFile("testdata/cases/c06-two-to-three-at-once.toml")
	if err != nil {
		t.Fatal(err)
	}
	s := mustRead(t, string(text))
	x := setsOf(t, s)
	if len(x.All) != 14 || x.Size != 3 {
		t.Fatalf("%d sets of up to %d, want 14 of up to 3", len(x.All), x.Size)
	}
	for _, set := range x.All {
		if v, few := set.On[0], len(set.Machines) < 3; set.Works != few || v.Captured != few {
			t.Errorf("%s: %+v, want it to work: %v", names(set), v, few)
		}
	}
	if len(x.Largest) != 6 || len(x.Largest[0].Machines) != 2 {
		t.Errorf("%d largest sets, want the six pairs", len(x.Largest))
	}
	if len(x.Broken) != 4 || len(x.Broken[0].Machines) != 3 {
		t.Errorf("%d sets fail of themselves, want the four of three", len(x.Broken))
	}
	if g := x.Gates; len(g) != 1 || g[0].Least != 1 || g[0].Most != 2 {
		t.Errorf("gates open over working sets: %+v, want one and two", g)
	}
	if x.Pair(1, 3) != x.Of(s.Machines[3], s.Machines[1]) || !x.Pair(1, 3).Works || x.Pair(2, 2) != x.All[2] || x.Pair(1, 3).Works == x.All[10].Works {
		t.Error("the table machine by machine finds other sets")
	}
}

// C03: in a 6 in main one 4 in gate leaves the air a little slow, a second
// opened as well carries it.
func TestCaseSecondGate(t *testing.T) {
	text, err := os.ReadFile("testdata/cases/c03-main-size.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range setsOf(t, mustRead(t, string(text))).All {
		switch set.Machines[0].Name {
		case "Router table", "Table saw", "Wing router", "Bandsaw", "Drill press":
			if set.Works || len(set.Relief) != 1 || len(set.Relief[0].Gates) != 1 || set.Relief[0].Through != 0 {
				t.Errorf("%s: works %v, relief %+v; want one gate", names(set), set.Works, set.Relief)
			}
		}
	}
}

// In the yard two machines share a movable end, one has no duct, and one draws
// on another collector.
func TestSetsOfTheYard(t *testing.T) {
	s := mustRead(t, people(t, yard, "3"))
	x := setsOf(t, s)
	m := func(name string) *shop.Machine {
		i := slices.IndexFunc(s.Machines, func(m *shop.Machine) bool { return m.Name == name })
		return s.Machines[i]
	}
	if set := x.Of(m("Sander"), m("Saw"), m("Lathe")); set.Apart == nil || set.Apart.Name != "Shared drop" || set.Works || len(set.On) > 0 {
		t.Errorf("lathe and sander share an end: %+v", set)
	}
	if set := x.Of(m("Anvil")); set.Works || len(set.On) > 0 {
		t.Errorf("no duct serves the anvil: %+v", set)
	}
	set := x.Of(m("Saw"), m("Press"))
	if len(set.On) != 3 || set.On[2].Collector.Name != "Small fan" || set.On[2].Filter != NoFilter || set.Open[0] != 2 || set.Open[1] != 1 {
		t.Errorf("saw and press: %+v, want the cyclone's two states and the small fan's one, and 2 gates and 1", set)
	}
	if set := x.Of(m("Press"), m("Anvil")); len(set.On) != 1 || set.Works || set.On[0].Carried || set.On[0].Port == nil || set.On[0].Port.Machine.Name != "Anvil" {
		t.Errorf("press and anvil: %+v, want the anvil's port to get nothing", set.On)
	}
	for i, set := range x.All {
		if x.Of(set.Machines...) != set {
			t.Fatalf("set %d is not found by its machines", i)
		}
	}
	if x.Of() != nil || x.Of(s.Machines[:4]...) != nil {
		t.Error("a set that was not reckoned is found")
	}
}

// A context that is done stops the work; progress counts up to all.
func TestSetsStopAndTell(t *testing.T) {
	s := mustRead(t, twentyFour())
	k := Reckon(s)
	ctx, stop := context.WithCancel(context.Background())
	if _, err := k.RunTogether(ctx, s, func(done, total int) { stop() }); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped work returns %v", err)
	}
	small := mustRead(t, people(t, yard, "3"))
	last := 0
	if _, err := Reckon(small).RunTogether(context.Background(), small, func(done, total int) {
		if done <= last || total != 63 {
			t.Errorf("told %d of %d after %d", done, total, last)
		}
		last = done
	}); err != nil || last != 63 {
		t.Errorf("told of %d sets, %v; want 63", last, err)
	}
}

// The number of sets is bounded: beyond it only smaller sets are reckoned.
func TestSetsAreBounded(t *testing.T) {
	for _, test := range []struct{ n, people, size, count int }{
		{24, 4, 4, 12950}, {24, 5, 5, 55454}, {24, 6, 5, 55454}, {3, 12, 3, 7}, {0, 3, 0, 0}, {500, 3, 1, 500}, {60, 2, 2, 1830}, {100_001, 1, 0, 0},
	} {
		if size, count := sizes(test.n, test.people); size != test.size || count != test.count {
			t.Errorf("%d machines, %d people: %d sets of up to %d, want %d of up to %d", test.n, test.people, count, size, test.count, test.size)
		}
	}
}

// C13: shut, no air flows and the pull is greatest; at least one gate is open
// wherever a set works.
func TestCaseSixGates(t *testing.T) {
	s := mustRead(t, strings.Replace(rowOf(3, 6), "people_at_machines = 3", "people_at_machines = 6", 1))
	for _, g := range setsOf(t, s).Gates {
		if g.Least < 1 || g.Most < g.Least || g.Fewest == nil || g.Widest == nil || !g.Fewest.Works || !g.Widest.Works {
			t.Errorf("gates open: %+v", g)
		}
	}
}
