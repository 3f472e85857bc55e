package drawing

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// loaded reads a shop of testdata.
func loaded(t testing.TB, name string) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := shop.Read(name, data)
	if s == nil {
		t.Fatal(problems)
	}
	return plan.Make(s, nil, entry.Date{})
}

// TestLabelsLieOnNothing lays out every plan of the test shops and checks
// that no label's box meets another's, a machine, a gate, a collector or a
// riser; and that none of them lies on a duct or a wall.
func TestLabelsLieOnNothing(t *testing.T) {
	for _, name := range []string{"hall", "shed", "yard"} {
		p := loaded(t, name)
		board, results := NewBoard(p), []*duct.Result{nil}
		for _, u := range p.Air.Uses {
			if u.Kind == duct.OneMachine || u.Kind == duct.Together {
				results = append(results, u.Results...)
			}
		}
		for _, r := range results {
			key := name + ": neutral"
			if r != nil {
				key = fmt.Sprintf("%s: %s, %s", name, r.Use.Name, r.Filter)
			}
			s := board.sheet(r)
			if len(s.words) == 0 || len(s.labels) < len(s.words)+len(s.machines) {
				t.Errorf("%s: %d words, %d labels", key, len(s.words), len(s.labels))
			}
			checkBoxes(t, key, s)
			for _, l := range s.words {
				if cost := s.lie(l.box, l, never); cost > 0 {
					t.Errorf("%s: %q lies on something", key, l.block.text())
				}
			}
		}
	}
}

// checkBoxes reports labels whose boxes meet each other or a mark.
func checkBoxes(t *testing.T, key string, s *sheet) {
	t.Helper()
	for i, l := range s.labels {
		if l.box.width() <= 0 || l.box.height() <= 0 {
			t.Errorf("%s: %q has no place", key, l.block.text())
		}
		for _, o := range s.labels[i+1:] {
			if l.box.meets(o.box) {
				t.Errorf("%s: %q meets %q", key, l.block.text(), o.block.text())
			}
		}
	}
	for _, l := range s.words {
		for _, solid := range s.solids {
			if l.box.meets(solid) {
				t.Errorf("%s: %q meets a mark", key, l.block.text())
			}
		}
	}
}

// crowd is a field and many labels for one spot on it.
func crowd() (*field, []*label) {
	f := &field{solids: []box{around(spot{0, 0}, 100, 100)}, strips: []strip{{a: spot{-9000, 300}, c: spot{9000, 300}, half: 50, cost: 1000}}}
	var labels []*label
	for i := range 60 {
		labels = append(labels, &label{block: writing(fmt.Sprintf("label number %d", i), false, plainText, 2000, 2), near: 100, anchors: []anchor{{at: spot{0, 0}, clear: 150}}})
	}
	return f, labels
}

// TestPlaceOnCrowdedGround puts many labels at one spot: none may meet
// another, and those moved away have leaders.
func TestPlaceOnCrowdedGround(t *testing.T) {
	f, labels := crowd()
	f.settle(labels, 1)
	leaders := 0
	for i, l := range labels {
		for _, o := range labels[i+1:] {
			if l.box.meets(o.box) {
				t.Fatalf("%q meets %q", l.block.text(), o.block.text())
			}
		}
		if l.box.meets(f.solids[0]) {
			t.Errorf("%q meets the mark", l.block.text())
		}
		if len(l.leader) == 2 {
			leaders++
		}
	}
	if leaders < 40 {
		t.Errorf("%d leaders", leaders)
	}
}

// TestPlaceTakesTheNearest checks that a label alone stands right beside its
// anchor without a leader, and that a solid box there makes it go elsewhere.
func TestPlaceTakesTheNearest(t *testing.T) {
	l := &label{block: writing("one", false, plainText, 2000, 1), near: 100, anchors: []anchor{{at: spot{0, 0}, clear: 50}}}
	f := &field{}
	f.place(l)
	if l.box.left != 50 || len(l.leader) > 0 {
		t.Errorf("%+v", l.box)
	}
	f.solids = []box{around(spot{200, 0}, 150, 60)}
	f.place(l)
	if l.box.meets(f.solids[0]) || l.box.left == 50 {
		t.Errorf("%+v", l.box)
	}
}

// TestGrowth checks that a crowded shop is drawn larger than an easy one, and
// never smaller for a use than for the neutral plan.
func TestGrowth(t *testing.T) {
	easy, crowded := loaded(t, "shed"), loaded(t, "hall")
	if s := NewBoard(easy).sheet(nil); s.strain() != 0 || s.scale != newSheet(NewBoard(easy), nil, 1).scale {
		t.Error("the shed has room at the first size")
	}
	board := NewBoard(crowded)
	first, taken := complete(crowded, nil, 1), board.sheet(nil)
	if first.strain() == 0 || taken.scale.units <= first.scale.units {
		t.Error("the hall needs more room than the first size gives")
	}
	for _, u := range crowded.Air.Uses[:4] {
		if s := board.sheet(u.Results[0]); s.scale.units < taken.scale.units {
			t.Errorf("%s is drawn smaller than the neutral plan", u.Name)
		}
	}
}

// TestFixedWordsStayPut checks that what stands on every plan of a shop
// stands at the same place on all that are drawn alike large.
func TestFixedWordsStayPut(t *testing.T) {
	p := loaded(t, "hall")
	a, b := newSheet(NewBoard(p), p.Air.Uses[0].Results[0], 1.25), newSheet(NewBoard(p), p.Air.Uses[5].Results[0], 1.25)
	for i, m := range a.machines {
		if m.label.box != b.machines[i].label.box {
			t.Errorf("%s moves", m.machine.Name)
		}
	}
	for i, g := range a.gates {
		if g.at != b.gates[i].at || g.left != b.gates[i].left {
			t.Errorf("%s moves", g.gate.Name)
		}
	}
	for i := range len(a.gates) + len(a.collectors) + len(a.doors) {
		if a.words[i].box != b.words[i].box {
			t.Errorf("%q moves", a.words[i].block.text())
		}
	}
}

// TestScaleTurns checks that only a deep shop is turned, and that a turn is
// no mirror.
func TestScaleTurns(t *testing.T) {
	hall, _ := scaleFor(loaded(t, "hall").Shop, 1)
	yard, _ := scaleFor(loaded(t, "yard").Shop, 1)
	if hall.turned || !yard.turned {
		t.Error("the hall is wide, the yard deep")
	}
	o, x, y := yard.at(shop.Point{}), yard.at(shop.Point{X: 1}), yard.at(shop.Point{Y: 1})
	if x.x != o.x || x.y >= o.y || y.x <= o.x || y.y != o.y {
		t.Errorf("x goes to %v, y to %v", x, y)
	}
	if _, any := scaleFor(loaded(t, "words").Shop, 1); any {
		t.Error("a shop without coordinates has no scale")
	}
	if l := hall.long(float64(unit.Must[unit.Length]("67 ft"))); l != sheetWidth*10 {
		t.Errorf("the hall's 67 ft are %d tenths", l)
	}
}

// newSheet is a plan at a growth, not drawn yet. Of the labels it has those
// that stand on every plan of the shop; placeOwn adds the others.
func newSheet(b *Board, r *duct.Result, growth float64) *sheet {
	return b.layout(slices.Index(growths[:], growth), false).with(r)
}

// complete lays out a plan with all its labels.
func complete(p *plan.Plan, r *duct.Result, growth float64) *sheet {
	s := newSheet(NewBoard(p), r, growth)
	s.placeOwn()
	return s
}

// random is a shop made by a seed.
func random(t *testing.T, seed uint64) *plan.Plan {
	t.Helper()
	s, problems := shop.Read("random", []byte(RandomShop(seed)))
	if len(problems) > 0 {
		t.Fatal(problems[0])
	}
	return plan.Make(s, nil, entry.Date{})
}

// TestLabelsMeetNothingAnywhere checks shops made by a seed the same way; on
// crowded ground a label may lie on a duct, but on nothing that is written or
// drawn as a mark.
func TestLabelsMeetNothingAnywhere(t *testing.T) {
	for seed := range Seeds(20, 40) {
		p := random(t, seed+1000)
		checkBoxes(t, fmt.Sprintf("seed %d", seed), complete(p, nil, 1))
		checkBoxes(t, fmt.Sprintf("seed %d in use", seed), complete(p, p.Air.Uses[0].Results[0], 1))
	}
}
