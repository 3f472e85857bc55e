package drawing

import (
	"regexp"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
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
	for _, name := range []string{"machine", "machine-on", "collector", "wall", "exit", "dimension", "collector-on", "scale", "single-join", "fan-claim", "chart-axis",
		"fan-crossing"} { // no fan of the test shops has a second crossing
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
			check(s.signs(), SVG(string(s.out)))
		}
		for _, c := range p.Shop.Collectors {
			s := b.isometric(c)
			check(s.isoSigns(), SVG(string(s.out)))
		}
		for _, u := range p.Air.Uses {
			for _, r := range u.Results {
				if r.Collector != nil {
					s := newSingle(b, r)
					s.lay()
					s.draw()
					check(s.singleKey(), SVG(string(s.out)))
				}
			}
		}
		for _, c := range p.Shop.Collectors {
			for _, state := range duct.States(c) {
				f := &fanChart{collector: c, fan: duct.NewFan(c, p.Air.State, state), points: pointsOf(p, c)}
				check(f.key(), "")
			}
		}
	}
	check(chainKey(), "")
	check(starterKey(), Starter(nil, "t"))
	told := &lanePen{story: Story()}
	told.gather(StoryNames)
	told.draw()
	check(told.key(), SVG(string(told.out)))
	for _, r := range loaded(t, "hall").Air.Uses[0].Results {
		for _, port := range r.Ports {
			c := &profile{}
			if c.take(loaded(t, "hall"), r, port.Port) == "" {
				check(c.key(), "")
			}
		}
	}
	for _, m := range marks {
		if !used[m.name] {
			t.Errorf("no drawing of the test shops uses the mark %q", m.name)
		}
	}
}

// shape is how an element is drawn: its class, and whether dashed and round.
var (
	drawnShape = regexp.MustCompile(`<(path|rect|circle|g)[ >][^>]*`)
	attribute  = regexp.MustCompile(` ([a-z-]+)="([^"]*)"`)
)

// shapesOf are the kinds of shapes in a drawing: element, class and whether it
// is dashed. Those of a group are drawn as the group says.
func shapesOf(svg SVG) map[string]bool {
	kinds, group := map[string]bool{}, ""
	for _, tag := range drawnShape.FindAllString(string(svg), -1) {
		how := ""
		for _, a := range attribute.FindAllStringSubmatch(tag, -1) {
			switch a[1] {
			case "class":
				how += " " + a[2]
			case "stroke-dasharray":
				how += " dashed"
			}
		}
		if strings.HasPrefix(tag, "<g") {
			group = how
			continue
		}
		if how == "" {
			how = group
		}
		kinds[strings.Fields(tag[1:])[0]+how] = true
	}
	return kinds
}

// TestKeyHoldsEveryShape walks all drawings of the embedded shops, of the works
// and of the test shops: every kind of shape and every class drawn has a sample
// in the key. What a drawing lays down for labels alone has none.
func TestKeyHoldsEveryShape(t *testing.T) {
	known, rows := map[string]bool{}, map[string]bool{}
	for _, row := range Key("k") {
		for kind := range shapesOf(row.Sample) {
			known[kind] = true
		}
		rows[row.Name] = true
	}
	for _, unnamed := range []string{
		"rect fill-paper",          // a break in a line, for a label
		"rect fill-paper line-ink", // the frame of a tag or a rating
		"circle fill-ink",          // where a leader starts
	} {
		known[unnamed] = true
	}
	seen := map[string]bool{}
	for name, p := range shopsOfKey(t) {
		for key, svg := range everyDrawing(p) {
			for kind := range shapesOf(svg) {
				if !seen[kind] && !known[kind] {
					t.Errorf("%s: %s: %q is drawn and in no sample of the key", name, key, kind)
				}
				seen[kind] = true
			}
			for _, match := range classAttribute.FindAllStringSubmatch(string(svg), -1) {
				for _, class := range strings.Fields(match[1]) {
					if !rows[class] {
						t.Errorf("%s: %s: class %q is drawn and not in the key", name, key, class)
					}
				}
			}
		}
	}
	if len(seen) < 20 {
		t.Errorf("%d kinds of shapes: the test sees nothing", len(seen))
	}
}

// TestShapesOf makes sure that the test above can fail.
func TestShapesOf(t *testing.T) {
	p := &pen{}
	p.line(look{line: air, weight: 10, dash: "4 4"}, "", spot{}, spot{10, 10})
	p.circle(look{fill: stop}, "", spot{}, 10)
	p.circle(look{fill: stop}, "", spot{}, 20)
	kinds := shapesOf(p.frame("t", "title", "desc", 0))
	if len(kinds) != 2 || !kinds["path line-air dashed"] || !kinds["circle fill-stop"] {
		t.Errorf("%v", kinds)
	}
}

// shopsOfKey are the embedded shops, the works and the test shops.
func shopsOfKey(t *testing.T) map[string]*plan.Plan {
	t.Helper()
	list := map[string]*plan.Plan{}
	for name, text := range map[string][]byte{"school": content.Example(), "small": content.Small(), "starter": content.Starter()} {
		s, problems := shop.Read(name, text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		list[name] = plan.Make(s, nil, entry.Date{})
	}
	for _, name := range []string{"hall", "shed", "words", "yard", "works"} {
		list[name] = loaded(t, name)
	}
	return list
}

// everyDrawing is every drawing of a shop, by what it is.
func everyDrawing(p *plan.Plan) map[string]SVG {
	b := NewBoard(p)
	list := map[string]SVG{"plan": b.Plan(nil, "n")}
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			list["use "+u.Name] = b.Plan(r, "u")
			if r.Collector == nil {
				continue
			}
			list["single "+u.Name] = b.Single(r, "s")
			for _, port := range r.Ports {
				list["run "+port.Port.Full()], _ = b.Profile(r, port.Port, "r")
			}
		}
	}
	for _, c := range p.Shop.Collectors {
		list["isometric "+c.Name] = b.Isometric(c, "i")
		list["fan "+c.Name], _ = b.FanChart(c, "f")
	}
	for _, c := range p.Shop.Chains {
		list["chain "+c.Name] = Chain(p, c, "c")
	}
	list["lanes"] = Lanes(Story(), StoryNames, "Saw", "l")
	list["starter"] = Starter([]string{"Planer running"}, "t")
	return list
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
