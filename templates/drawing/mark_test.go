package drawing

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

func pathByName(u *duct.Use) string {
	return "use-" + strings.ReplaceAll(strings.ToLower(u.Name), " ", "-") + ".html"
}

var classAttribute = regexp.MustCompile(`class="([^"]*)"`)

// TestKeyHoldsEverythingDrawn checks that every mark and every class that the
// plans and isometrics of the test shops use stands in the key, once, with its
// meaning, and that the key holds no mark in vain.
func TestKeyHoldsEverythingDrawn(t *testing.T) {
	known, count := map[string]bool{}, 0
	for _, row := range Key("k") {
		if row.Name == "" || row.Means == "" || known[row.Name] || row.Class != (row.Sample == "") {
			t.Errorf("%+v", row)
		}
		known[row.Name] = true
		count++
	}
	if count != len(marks)+len(Classes) {
		t.Errorf("%d rows", count)
	}
	used := map[string]bool{}
	// what carries its own name or word is in no drawing's own key
	for _, name := range []string{"machine", "machine-on", "collector", "wall", "exit", "dimension"} {
		used[name] = true
	}
	check := func(signs []sign, svg SVG) {
		for _, one := range signs {
			found := false
			for _, m := range marks {
				if wording.Text("drawing.means."+m.name) == one.means {
					used[m.name], found = true, known[wording.Text("drawing.mark."+m.name)]
				}
			}
			if !found {
				t.Errorf("%q is in a drawing and not in the key", one.means)
			}
		}
		for _, match := range classAttribute.FindAllStringSubmatch(string(svg), -1) {
			for _, class := range strings.Fields(match[1]) {
				if !known[class] {
					t.Errorf("class %q is in a drawing and not in the key", class)
				}
			}
		}
	}
	for _, name := range []string{"hall", "shed", "words", "yard", "works"} {
		p := loaded(t, name)
		b := NewBoard(p)
		results := []*duct.Result{nil}
		for _, u := range p.Air.Uses {
			if u.Kind != duct.DuctOff && len(u.Results) > 0 && len(results) < 8 {
				results = append(results, u.Results[0])
			}
		}
		for _, r := range results {
			s := b.sheet(r)
			check(s.signs(), SVG(s.String()))
		}
		for _, c := range p.Shop.Collectors {
			s := b.isometric(c)
			check(s.isoSigns(), SVG(s.String()))
		}
	}
	check(chainKey(), "")
	for _, m := range marks {
		if !used[m.name] {
			t.Errorf("no drawing of the test shops uses the mark %q", m.name)
		}
	}
}

// TestUnknownMark makes sure that a drawing cannot use what the key lacks.
func TestUnknownMark(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown mark was taken")
		}
	}()
	signOf("no such mark")
}

// TestFixturesAndTapsAreDrawn checks that every stop, extinguisher and tap of
// the works is marked and named on its plan, each clear of the others.
func TestFixturesAndTapsAreDrawn(t *testing.T) {
	p := loaded(t, "works")
	s := NewBoard(p).sheet(nil)
	if len(p.Shop.Stops) == 0 || len(p.Shop.Extinguishers) == 0 || len(p.Shop.Taps) == 0 {
		t.Fatal("the works have none")
	}
	placed := 0
	for _, e := range p.Shop.Extinguishers {
		if e.Place.Known() {
			placed++
		}
	}
	for _, b := range p.Shop.Stops {
		if b.Place.Known() {
			placed++
		}
	}
	if placed < 4 || len(s.fixtures) != placed || len(s.taps) != len(p.Shop.Taps) {
		t.Errorf("%d marks and %d taps", len(s.fixtures), len(s.taps))
	}
	if missing := strings.Join(s.notShown(), ", "); missing != "Extinguisher 4-A:60-B:C" {
		t.Errorf("not shown: %s", missing)
	}
	says := map[string]bool{}
	for _, l := range s.words {
		says[l.block.text()] = true
	}
	for i, m := range s.fixtures {
		if !says[m.says] {
			t.Errorf("%q is not written", m.says)
		}
		for _, o := range s.fixtures[i+1:] {
			if m.extent().meets(o.extent()) {
				t.Errorf("%q lies on %q", m.says, o.says)
			}
		}
	}
	for _, m := range s.taps {
		pipe := s.pipeOf(m.tap.On)
		at, _ := pipe.path.at(pipe.planAt(m.tap.Where))
		if !says[m.tap.Name] || span(at, m.foot) > pipe.width/2+1 {
			t.Errorf("%s: not written or not at its place", m.tap.Name)
		}
	}
}

// TestHiddenEnds checks that an end behind another duct counts, and one that
// stands free does not.
func TestHiddenEnds(t *testing.T) {
	lay := func(serves bool, spots ...spot) *pipe {
		d := &shop.Duct{}
		if serves {
			d.Serves = []*shop.Port{{}}
		}
		return &pipe{duct: d, path: spots}
	}
	trunk := lay(false, spot{0, 0}, spot{5000, 0})
	behind, free := lay(true, spot{1000, 100}, spot{1000, -900}), lay(true, spot{3000, 1500}, spot{3000, 0})
	if n := hiddenEnds([]*pipe{trunk, behind, free}); n != 1 {
		t.Errorf("%d ends are hidden", n)
	}
}

// TestFolds checks that a duct that comes back on its own drawing is counted
// from the corner where it does so, and from the next corner not.
func TestFolds(t *testing.T) {
	d := &shop.Duct{Bore: 0.1, Route: []shop.Spot{{X: 0, Y: 0, Z: 3}, {X: 0, Y: 0, Z: 2}, {X: -1, Y: -1, Z: 2}}}
	d.Stretches = []*shop.Stretch{{Duct: d, Number: 1}}
	for quarter, want := range map[int]int{0: 1, 1: 0} {
		e := eye{quarter: quarter, units: 100}
		if n := folds([]*pipe{e.pipe(d, 1)}); n != want {
			t.Errorf("corner %d: %d folds, not %d", quarter, n, want)
		}
	}
}

// TestTwoOnOneSpot checks that an extinguisher and a stop at one place stand
// side by side.
func TestTwoOnOneSpot(t *testing.T) {
	s := &sheet{}
	first := &fixtureMark{at: spot{100, 100}}
	second := &fixtureMark{at: spot{100, 100}}
	if second.at = s.besideOthers(second, []*fixtureMark{first}); second.extent().meets(first.extent()) {
		t.Errorf("%+v", second)
	}
	alone := &fixtureMark{at: spot{400, 100}}
	if s.besideOthers(alone, []*fixtureMark{first}) != alone.at {
		t.Error("one alone was moved")
	}
}
