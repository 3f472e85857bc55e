package drawing

import (
	"math/rand/v2"
	"slices"
	"testing"

	"dustbook/plan"
)

// grounds are crowded sheets: labels, strips and marks in each other's way.
func grounds(t *testing.T) []*sheet {
	t.Helper()
	var list []*sheet
	for _, p := range []*plan.Plan{loaded(t, "hall"), loaded(t, "yard"), random(t, 5), random(t, 11)} {
		list = append(list, complete(p, nil, 1), complete(p, p.Air.Uses[0].Results[0], 1))
	}
	return list
}

// TestPartOfAField checks that what a field's part says of any place within
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
			var part field
			part.take(&s.field, area)
			left += len(s.strips) - len(part.strips)
			mine := s.labels[r.IntN(len(s.labels))]
			for range 30 {
				b := boxOf(area.nearest(at()), area.nearest(at()))
				free, lie := part.free(b, mine), part.lie(b, mine, never)
				if free != s.free(b, mine) || lie != s.lie(b, mine, never) {
					t.Fatalf("%v in %v: free %v, lies %d; in the whole field %v, %d", b, area, free, lie, s.free(b, mine), s.lie(b, mine, never))
				}
				from, to := area.nearest(at()), area.nearest(at())
				run := part.run(from, to, mine, never)
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
	find := &search{field: f, label: l, bar: never}
	best := label{cost: never}
	weigh := func(try func()) {
		find.bar, find.found = never, false
		if try(); find.found && find.best.cost < best.cost {
			best = find.best
		}
	}
	for i := range max(1, len(l.forms)) {
		base := 0
		if len(l.forms) > 0 {
			l.form, l.block, base = i, l.forms[i].block, l.forms[i].cost
		}
		for _, o := range l.fixed {
			weigh(func() { find.try(f, &o, base, nil) })
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
						weigh(func() { find.try(f, &o, base+a.cost, nil) })
					} else {
						weigh(func() { find.try(f, &o, base+a.cost+leaderCost, &a.at) })
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
	for off := 0; off <= h/2+d; off += max(120, ring/6) {
		for _, dy := range []int{off, -off}[:min(2, 1+off)] {
			add(a.at.x+d, a.at.y-h/2+dy, off/4, fromStart)
			add(a.at.x-d-w, a.at.y-h/2+dy, off/4+10, fromEnd)
		}
	}
	for off := 0; off <= w/2+d; off += max(120, ring/6) {
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
				if l.box != want.box || l.cost != want.cost || l.form != want.form || l.hang != want.hang || len(l.leader) != len(want.leader) {
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

// TestLeastStrain checks the size taken against all sizes laid out in full.
func TestLeastStrain(t *testing.T) {
	eased, strained := 0, 0
	for _, p := range []*plan.Plan{loaded(t, "hall"), loaded(t, "shed"), random(t, 5), random(t, 7), random(t, 11), random(t, 20)} {
		var strains []int
		for _, g := range growths {
			strains = append(strains, complete(p, nil, g).strain())
		}
		least := slices.Min(strains)
		for from := range 3 {
			want := from + slices.Index(strains[from:], slices.Min(strains[from:]))
			if s, step := NewBoard(p).leastStrain(nil, from, len(growths)); step != want || s.strain() != strains[want] {
				t.Errorf("%s: from %d on size %d with %d strained, not %d with %d", p.Shop.Name, from, step, s.strain(), want, strains[want])
			}
		}
		if least == 0 {
			eased++
		} else {
			strained++
		}
	}
	if eased == 0 || strained == 0 {
		t.Errorf("%d shops have a size without strain, %d have none: both must be tried", eased, strained)
	}
}
