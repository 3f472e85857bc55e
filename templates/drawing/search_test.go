package drawing

import (
	"math/rand/v2"
	"slices"
	"testing"

	"dustbook/plan"
)

// run is what a leader costs on its way, beside being one. It stops adding
// once the cost reaches a limit.
func (f *field) run(a, c spot, mine *label, limit int) int {
	cost := 0
	for _, s := range f.solids {
		if s.crossed(a, c) && !s.holds(a) {
			cost += leaderOver
		}
	}
	for _, l := range f.labels {
		if l == mine {
			continue
		}
		if l.box.grown(closeBy).crossed(a, c) {
			cost += leaderOver
		}
		if len(l.leader) > 1 && cross(a, c, l.leader[0], l.leader[1]) {
			cost += leadersCross
		}
		if cost >= limit {
			return cost
		}
	}
	for i := range f.strips {
		if s := &f.strips[i]; cross(a, c, s.a, s.c) && !mine.owns(s) {
			cost += s.cost / 5
		}
	}
	return cost
}

// grounds are crowded sheets: labels, strips and marks in each other's way.
func grounds(t *testing.T) []*sheet {
	t.Helper()
	var list []*sheet
	for _, p := range []*plan.Plan{loaded(t, "hall"), loaded(t, "yard"), random(t, 5), random(t, 11)} {
		list = append(list, complete(p, nil, 1), complete(p, p.Air.Uses[0].Results[0], 1))
	}
	return list
}

// TestPartOfAField checks that what a part of a field says of any place within
// its area is what the whole field says.
func TestPartOfAField(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	left, blocked, costly := 0, 0, 0
	for _, s := range grounds(t) {
		at := func() spot {
			return spot{s.scale.long(-3) + r.IntN(12000), s.scale.long(-3) + r.IntN(9000)}
		}
		for range 300 {
			area := around(at(), 400+r.IntN(3000), 200+r.IntN(2000))
			var part ground
			mine := s.labels[r.IntN(len(s.labels))]
			part.take(&s.field, s.barsOf(nil), mine, area)
			left += len(s.strips) + len(s.labels) - len(part.bars)
			for range 30 {
				b := boxOf(area.nearest(at()), area.nearest(at()))
				free, lie := part.free(b, r.IntN(8)), part.lie(b, never)
				if free != s.free(b, mine) || lie != s.lie(b, mine, never) {
					t.Fatalf("%v in %v: free %v, lies %d; in the whole field %v, %d", b, area, free, lie, s.free(b, mine), s.lie(b, mine, never))
				}
				from, to := area.nearest(at()), area.nearest(at())
				run := part.run(from, to, never)
				if run != s.run(from, to, mine, never) {
					t.Fatalf("from %v to %v in %v: %d, in the whole field %d", from, to, area, run, s.run(from, to, mine, never))
				}
				if !free {
					blocked++
				}
				if lie+run > 0 {
					costly++
				}
			}
		}
	}
	if left == 0 || blocked == 0 || costly == 0 {
		t.Errorf("%d left out, %d blocked, %d costly: the test sees nothing", left, blocked, costly)
	}
}

// plainly finds a label's best place by weighing every place against the
// whole field, in the same order and without a bar to pass any over.
func plainly(f *field, l *label) label {
	best := label{cost: never}
	weigh := func(o option, base int, from *spot) {
		if !f.free(o.box, l) {
			return
		}
		cost := base + o.cost + f.lie(o.box, l, never)
		if l.stay != nil {
			cost += l.stay(o)
		}
		var lead []spot
		if from != nil {
			lead = []spot{*from, l.lead(o.box, *from)}
			cost += f.run(lead[0], lead[1], l, never)
		}
		if cost < best.cost {
			best = label{cost: cost, box: o.box, form: l.form, hang: o.hang, leader: lead}
		}
	}
	for i := range max(1, len(l.forms)) {
		base := 0
		if len(l.forms) > 0 {
			l.form, l.block, base = i, l.forms[i].block, l.forms[i].cost
		}
		for _, o := range l.fixed {
			weigh(o, base, nil)
		}
		if l.only && best.cost < never {
			continue
		}
		for _, ring := range rings {
			if base+ring >= best.cost {
				break
			}
			for _, a := range l.anchors {
				for _, o := range ringPlaces(l, a, ring) {
					if ring < l.near {
						weigh(o, base+a.cost, nil)
					} else {
						weigh(o, base+a.cost+leaderCost, &a.at)
					}
				}
			}
		}
	}
	return best
}

// ringPlaces are all places around an anchor at one distance.
func ringPlaces(l *label, a anchor, ring int) []option {
	var list []option
	w, h, d := l.width(), l.height(), a.clear+ring
	add := func(left, top, cost int, h2 hang) {
		list = append(list, option{box: box{left, top, left + w, top + h}, cost: ring + cost, hang: h2})
	}
	for off := 0; off <= h/2+d; off += max(130, ring/4) {
		for _, dy := range []int{off, -off}[:min(2, 1+off)] {
			add(a.at.x+d, a.at.y-h/2+dy, off/4, fromStart)
			add(a.at.x-d-w, a.at.y-h/2+dy, off/4+10, fromEnd)
		}
	}
	for off := 0; off <= w/2+d; off += max(130, ring/4) {
		for _, dx := range []int{off, -off}[:min(2, 1+off)] {
			h2 := centred
			if dx > w/6 {
				h2 = fromStart
			} else if dx < -w/6 {
				h2 = fromEnd
			}
			add(a.at.x-w/2+dx, a.at.y-d-h, off/4+25, h2)
			add(a.at.x-w/2+dx, a.at.y+d, off/4+35, h2)
		}
	}
	return list
}

// TestSearchPassesOverNothing checks that the place a label takes, with every
// short cut of the search, is the one a plain look through all places finds,
// for a label that comes new and for one that stands already.
func TestSearchPassesOverNothing(t *testing.T) {
	moved, led := 0, 0
	for _, s := range grounds(t) {
		for i, l := range s.labels {
			was := *l
			want := plainly(&s.field, l)
			for _, stands := range [2]bool{true, false} {
				if *l = was; !stands {
					l.taken = nil
				}
				s.place(l)
				if l.box != want.box || l.cost != want.cost || l.form != want.form || l.hang != want.hang || !slices.Equal(l.leader, want.leader) {
					t.Fatalf("label %d, %q: at %v for %d, plainly at %v for %d", i, l.block.text(), l.box, l.cost, want.box, want.cost)
				}
			}
			if l.box != was.box {
				moved++
			}
			if len(l.leader) > 1 {
				led++
			}
		}
	}
	if moved == 0 || led == 0 {
		t.Errorf("%d moved, %d with leaders: the test sees nothing", moved, led)
	}
}

// TestSettleEndsEarly checks that labels that settle end up where they would
// if each looked again in every pass.
func TestSettleEndsEarly(t *testing.T) {
	for passes := range 6 {
		f, labels := crowd()
		f.settle(labels, passes)
		plain, looking := crowd()
		for _, l := range looking {
			plain.place(l)
			plain.labels = append(plain.labels, l)
		}
		for range passes {
			for _, l := range looking {
				plain.place(l)
			}
		}
		for i, l := range labels {
			if l.box != looking[i].box || !slices.Equal(l.leader, looking[i].leader) {
				t.Errorf("%d passes: label %d is at %v, not %v", passes, i, l.box, looking[i].box)
			}
		}
	}
}

// TestFirstOfEquals checks that a label that stands already moves to a place
// that costs as much and comes first.
func TestFirstOfEquals(t *testing.T) {
	first, second := around(spot{0, 0}, 300, 100), around(spot{0, 900}, 300, 100)
	l := &label{block: writing("one", false, plainText, 2000, 1), near: 100, fixed: []option{{box: first}, {box: second}}}
	f := &field{solids: []box{first}}
	for _, want := range [2]box{second, first} {
		if f.place(l); l.box != want {
			t.Errorf("at %v, not %v", l.box, want)
		}
		f.solids = nil
	}
}

// walked is the size that looking at every size in full finds.
func walked(strains []int) int {
	best := len(strains) - 1
	for best > 0 && strains[best-1] <= strains[best] {
		best--
	}
	return best
}

// TestNeutralSize checks the size taken against all sizes laid out in full:
// what is given up early is never the size that would be taken.
func TestNeutralSize(t *testing.T) {
	whole, eased, strained := 0, 0, 0
	shops := []*plan.Plan{loaded(t, "hall"), loaded(t, "shed"), loaded(t, "yard"), loaded(t, "works")}
	for seed := range Seeds(20, 60) {
		shops = append(shops, random(t, seed))
	}
	for _, p := range shops {
		var strains [2][]int
		for step := range growths {
			for i := range strains {
				s, _ := NewBoard(p).neutralAt(step, i > 0, nil)
				strains[i] = append(strains[i], s.strain())
			}
		}
		brief, want := 1, walked(strains[1])
		for step := named; step >= 0 && strains[0][step] == 0; step-- {
			brief, want = 0, step
		}
		if s, step := NewBoard(p).neutralSize(); step != want || s.brief != (brief > 0) || s.strain() != strains[brief][want] {
			t.Errorf("%s: size %d, brief %v, with %d strained, not %d of %v", p.Shop.Name, step, s.brief, s.strain(), want, strains)
		}
		if brief == 0 {
			whole++
		} else {
			strained++
			eased += slices.Min(strains[0]) - strains[1][want]
		}
	}
	if whole == 0 || strained == 0 || eased <= 0 {
		t.Errorf("%d shops name everything, %d are brief, which eases %d labels: both must be tried, and help", whole, strained, eased)
	}
}

// TestGrowthForGivesUp checks the walk itself: which sizes it lays out, and
// that one given up is not taken.
func TestGrowthForGivesUp(t *testing.T) {
	for _, c := range []struct {
		strains [len(growths)]int
		want    int
		laid    int
	}{
		{[len(growths)]int{0, 0, 0, 0, 0}, 0, 5},
		{[len(growths)]int{9, 9, 2, 2, 2}, 2, 4},
		{[len(growths)]int{9, 9, 9, 9, 1}, 4, 2},
		{[len(growths)]int{2, 2, 2, 2, 2}, 0, 5},
		{[len(growths)]int{2, 1, 2, 3, 4}, 1, 5},
		{[len(growths)]int{0, 3, 1, 1, 1}, 2, 4},
	} {
		laid := 0
		got := growthFor(func(step int, wait *patience) (int, bool) {
			laid++
			return c.strains[step], wait == nil || c.strains[step] <= wait.left
		})
		if got != c.want || laid != c.laid {
			t.Errorf("%v: size %d after %d laid out, not %d after %d", c.strains, got, laid, c.want, c.laid)
		}
	}
}

// TestPatience checks that a crowd on hard ground is given up, and that it is
// placed whole where more is borne with.
func TestPatience(t *testing.T) {
	for _, most := range [2]int{5, 1000} {
		f, labels := crowd()
		f.wait = &patience{left: most, strained: (*label).far}
		f.settle(labels, 1)
		if lost := most == 5; f.wait.lost() != lost || lost != (len(f.labels) < len(labels)) {
			t.Errorf("%d borne with: lost %v, %d labels placed", most, f.wait.lost(), len(f.labels))
		}
	}
}
