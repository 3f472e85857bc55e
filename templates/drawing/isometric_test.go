package drawing

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// TestIsometricLabelsLieOnNothing lays out every isometric of the test shops
// and checks that no label's box meets another's or a mark, and that none
// lies on a duct; in the works with twenty-four machines too.
func TestIsometricLabelsLieOnNothing(t *testing.T) {
	for _, name := range []string{"hall", "shed", "yard", "works"} {
		p := loaded(t, name)
		for _, c := range p.Shop.Collectors {
			key, s := name+": "+c.Name, NewBoard(p).isometric(c)
			if len(s.words) == 0 || len(s.labels) <= len(s.words) {
				t.Errorf("%s: %d words, %d labels", key, len(s.words), len(s.labels))
			}
			checkIsometric(t, key, s)
			for _, l := range s.labels {
				if s.lie(l.box, l, never) >= trunkCost {
					t.Errorf("%s: %q lies on a duct", key, l.block.text())
				}
			}
		}
	}
}

// checkIsometric reports labels that meet each other or a mark.
func checkIsometric(t *testing.T, key string, s *isometric) {
	t.Helper()
	s.words = s.labels // the ends too
	checkBoxes(t, key, s.sheet)
}

// TestIsometricLabelsMeetNothingAnywhere checks shops made by a seed.
func TestIsometricLabelsMeetNothingAnywhere(t *testing.T) {
	drawn := 0
	for seed := range Seeds(20, 60) {
		p := random(t, seed+2000)
		for _, c := range p.Shop.Collectors {
			s := NewBoard(p).isometric(c)
			drawn += len(s.pipes)
			checkIsometric(t, fmt.Sprintf("seed %d: %s", seed, c.Name), s)
		}
	}
	if drawn == 0 {
		t.Error("no duct was drawn")
	}
}

// TestEveryStretchHasItsWords checks that each stretch of a routed duct is
// labelled once with its number, size and length, on a brief drawing without
// the length, and that the description names all of them with it.
func TestEveryStretchHasItsWords(t *testing.T) {
	brief := map[bool]int{}
	for _, name := range []string{"hall", "works", "words"} {
		p := loaded(t, name)
		for _, c := range p.Shop.Collectors {
			s := NewBoard(p).isometric(c)
			brief[s.brief]++
			if notes := strings.Join(s.isoNotes(false), " "); strings.Contains(notes, "the table has its length") != s.brief {
				t.Errorf("%s: brief %v, but it says: %s", c.Name, s.brief, notes)
			}
			seen := map[string]int{}
			for _, l := range s.words {
				seen[l.block.text()]++
			}
			desc := s.desc()
			for i, stretch := range InOrder(p.Shop, c) {
				says := fmt.Sprintf("%d: %s", i+1, s.lengthOf(stretch))
				if s.brief {
					says = fmt.Sprintf("%d: %s", i+1, s.sizeOf(stretch.Duct))
				}
				both := seen[says]
				if two := strings.Replace(says, " · ", " ", 1); two != says {
					both += seen[two] // on two lines
				}
				if want := min(1, len(stretch.Duct.Route)); both != want {
					t.Errorf("%s: %q stands %d times, not %d", name, says, both, want)
				}
				if !strings.Contains(desc, fmt.Sprintf("%d %s, %s", i+1, stretch.Name(), s.lengthOf(stretch))) {
					t.Errorf("%s: the description leaves out %d %s", name, i+1, stretch.Name())
				}
			}
			for _, d := range ductsOf(p.Shop, c) {
				for _, g := range d.Gates {
					if !strings.Contains(desc, g.Name) {
						t.Errorf("%s: the description leaves out %s", name, g.Name)
					}
				}
			}
		}
	}
	if brief[true] == 0 || brief[false] == 0 {
		t.Errorf("%v drawings are brief, this test needs both", brief)
	}
}

// TestNumbersRunOutwards checks that a stretch has a higher number than what
// it empties into, and that none is left out.
func TestNumbersRunOutwards(t *testing.T) {
	p := loaded(t, "works")
	for _, c := range p.Shop.Collectors {
		numbers, want := numbering(p.Shop, c), 0
		for _, d := range ductsOf(p.Shop, c) {
			want += len(d.Stretches)
			for _, stretch := range d.Stretches {
				if below := stretch.Below(); below != nil && numbers[below] >= numbers[stretch] {
					t.Errorf("%s has number %d, what it empties into %d", stretch.Name(), numbers[stretch], numbers[below])
				}
			}
		}
		if len(numbers) != want || want == 0 {
			t.Errorf("%s: %d numbers for %d stretches", c.Name, len(numbers), want)
		}
	}
}

// TestEyeIsIsometric checks the projection: from every corner a metre along
// each of the three axes is as long, up is up, and the far end of a level run
// is higher on the sheet.
func TestEyeIsIsometric(t *testing.T) {
	for quarter := range 4 {
		e := eye{quarter: quarter, units: 100}
		o := e.spot(shop.Spot{})
		for axis, one := range []shop.Spot{{X: 1}, {Y: 1}, {Z: 1}} {
			at := e.spot(one)
			if long := span(o, at); long < 999 || long > 1001 {
				t.Errorf("corner %d, axis %d: %d tenths for a metre", quarter, axis, long)
			}
			if nearer := e.near(one) > e.near(shop.Spot{}); axis < 2 && nearer != (at.y > o.y) {
				t.Errorf("corner %d, axis %d: what is nearer does not stand lower", quarter, axis)
			}
			if axis == 2 && (at.x != o.x || at.y >= o.y) {
				t.Errorf("corner %d: up is not up", quarter)
			}
		}
	}
}

// TestFromNamesTheCorner checks that the corner named is the corner of the
// plan nearest to the eye, turned or not.
func TestFromNamesTheCorner(t *testing.T) {
	for _, turned := range []bool{false, true} {
		k := scale{units: 100, turned: turned}
		for quarter := range 4 {
			e := eye{quarter: quarter}
			var nearest spot
			most := -1e9
			for _, c := range []shop.Spot{{X: 0}, {X: 1}, {Y: 1}, {X: 1, Y: 1}} {
				if n := e.near(c); n > most {
					most, nearest = n, k.spot(c)
				}
			}
			corners := boxOf(k.spot(shop.Spot{}), k.spot(shop.Spot{X: 1, Y: 1}))
			want := "upper"
			if nearest.y == corners.bottom {
				want = "lower"
			}
			if nearest.x == corners.right {
				want += "-right"
			} else {
				want += "-left"
			}
			if got := e.from(turned); got != want {
				t.Errorf("turned %v, corner %d: %s, not %s", turned, quarter, got, want)
			}
		}
	}
}

// TestTheNearerPasses lays two ducts over each other in the drawing: the
// upper one is drawn through; two that join are left alone.
func TestTheNearerPasses(t *testing.T) {
	e := eye{units: 100}
	lay := func(route ...shop.Spot) *pipe {
		d := &shop.Duct{Route: route, Bore: 0.1}
		d.Stretches = []*shop.Stretch{{Duct: d, Number: 1}}
		return e.pipe(d, 1)
	}
	low := lay(shop.Spot{X: -4, Y: 2, Z: 1}, shop.Spot{X: 4, Y: 2, Z: 1})
	high := lay(shop.Spot{X: 2, Y: 0, Z: 3}, shop.Spot{X: 2, Y: 8, Z: 3})
	level := lay(shop.Spot{X: 2, Y: 0, Z: 1}, shop.Spot{X: 2, Y: 4, Z: 1})
	if list := e.passes([]*pipe{low, high}); len(list) != 1 || list[0].pipe != high {
		t.Errorf("%+v", list)
	}
	if list := e.passes([]*pipe{high, low}); len(list) != 1 || list[0].pipe != high {
		t.Errorf("in the other order: %+v", list)
	}
	if list := e.passes([]*pipe{low, level}); len(list) != 0 {
		t.Errorf("two that meet: %+v", list)
	}
}

// TestEndsLeadToTheirUse checks that every machine's end is a link where its
// use has a sheet, and that the collector's isometric has none without.
func TestEndsLeadToTheirUse(t *testing.T) {
	p := loaded(t, "works")
	for _, c := range p.Shop.Collectors {
		b := NewBoard(p)
		b.paths = pathByName
		svg := string(b.Isometric(c, "i"))
		for _, d := range ductsOf(p.Shop, c) {
			for _, port := range d.Serves {
				if want := `href="` + pathByName(p.Air.Alone(port.Machine)) + `"`; !strings.Contains(svg, want) {
					t.Errorf("%s: no %s", c.Name, want)
				}
			}
		}
		if strings.Contains(string(Isometric(p, c, "i")), "href") {
			t.Error("a link without a book")
		}
	}
}
