package drawing

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
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

// crowded is a main with so many drops half a foot apart.
func crowded(t *testing.T, drops int) *plan.Plan {
	t.Helper()
	text := "[shop]\nname = \"Crowd\"\n[[collector]]\nname = \"Fan\"\nat = [0, 0]\ninlet = \"8 in\"\nclaims = { flow = \"1600 cfm\", suction = \"11 inwg\" }\n" +
		fmt.Sprintf("[[duct]]\nname = \"Main\"\nto = \"Fan\"\nsize = \"6 in\"\nroute = [[%v, 0, 9], [0, 0, 9]]\n", float64(drops)/2+2)
	for i := range drops {
		text += fmt.Sprintf("[[duct]]\nname = \"Drop %d\"\nto = \"Main\"\nsize = \"4 in\"\nroute = [[%v, 2, 5], [%[2]v, 2, 9], [%[2]v, 0, 9]]\n", i+1, float64(i)/2+1)
	}
	return read(t, "crowd", []byte(text))
}

// read is the plan of a shop file.
func read(t *testing.T, name string, text []byte) *plan.Plan {
	t.Helper()
	s, problems := shop.Read(name, text)
	if s == nil {
		t.Fatal(problems)
	}
	return plan.Make(s, nil, entry.Date{})
}

// TestEveryStretchHasItsWords checks that each stretch of a routed duct is
// labelled once with its number, size and length, and that the description
// names all of them; where a drawing is so crowded that lengths are left out,
// that it counts them and says so, and that no other does.
func TestEveryStretchHasItsWords(t *testing.T) {
	for _, c := range []struct {
		name string
		p    *plan.Plan
		bare bool
	}{
		{"hall", loaded(t, "hall"), false}, {"works", loaded(t, "works"), false}, {"words", loaded(t, "words"), false},
		{"school", read(t, "school", content.Example()), false}, {"small", read(t, "small", content.Small()), false},
		{"a few drops", crowded(t, 3), false}, {"a crowd", crowded(t, 24), true},
	} {
		for _, collector := range c.p.Shop.Collectors {
			s := NewBoard(c.p).isometric(collector)
			full, bare := s.said(t)
			if bare != s.bare() || full+bare != len(s.numbers)-s.unrouted() {
				t.Errorf("%s: %d stretches in full, %d without length, counted as %d, of %d", c.name, full, bare, s.bare(), len(s.numbers))
			}
			if (bare > 0) != c.bare {
				t.Errorf("%s: %d stretches without their length", c.name, bare)
			}
			notes := strings.Join(s.isoNotes(false), " ")
			if says := fmt.Sprintf("%d had no room for their lengths", bare); strings.Contains(notes, "no room") != c.bare || c.bare && !strings.Contains(notes, says) {
				t.Errorf("%s: %d without length, but it says: %s", c.name, bare, notes)
			}
			desc := s.desc()
			for i, stretch := range InOrder(c.p.Shop, collector) {
				if !strings.Contains(desc, fmt.Sprintf("%d %s, %s", i+1, stretch.Name(), s.lengthOf(stretch))) {
					t.Errorf("%s: the description leaves out %d %s", c.name, i+1, stretch.Name())
				}
				for _, g := range stretch.Gates {
					if !strings.Contains(desc, g.Name) {
						t.Errorf("%s: the description leaves out %s", c.name, g.Name)
					}
				}
			}
		}
	}
}

// said counts the stretches that are labelled with their length and without.
func (s *isometric) said(t *testing.T) (full, bare int) {
	t.Helper()
	seen := map[string]int{}
	for _, l := range s.words {
		seen[l.block.text()]++
	}
	for i, stretch := range InOrder(s.shop, s.collector) {
		number := fmt.Sprintf("%d: ", i+1)
		one := seen[number+s.lengthOf(stretch)] + seen[number+strings.Replace(s.lengthOf(stretch), " · ", " ", 1)]
		short := seen[number+s.sizeOf(stretch.Duct)]
		if want := min(1, len(stretch.Duct.Route)); one+short != want {
			t.Errorf("%s stands %d times in full and %d times without length, not %d times", stretch.Name(), one, short, want)
		}
		full, bare = full+one, bare+short
	}
	return full, bare
}

// unrouted counts the stretches of ducts without a route.
func (s *isometric) unrouted() int {
	count := 0
	for stretch := range s.numbers {
		if len(stretch.Duct.Route) == 0 {
			count++
		}
	}
	return count
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
