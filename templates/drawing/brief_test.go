package drawing

import (
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// TestBriefPlan checks what a crowded plan leaves out: the name of a drop and
// of a gate that bears the name of the machine beside it, and nothing else; and
// that it says so. Every name stands in a title.
func TestBriefPlan(t *testing.T) {
	p := loaded(t, "works")
	b := NewBoard(p)
	neutral := b.sheet(nil)
	if !neutral.brief {
		t.Fatal("the works' plan names everything")
	}
	use := b.sheet(p.Air.Uses[0].Results[0])
	if !use.brief {
		t.Error("the plan of a use is not brief as the neutral one is")
	}
	written := func(s *sheet) map[string]int {
		count := map[string]int{}
		for _, l := range s.words {
			block := l.block
			if len(l.forms) > 0 {
				block = l.forms[l.form].shown
			}
			count[block.text()]++
		}
		return count
	}
	plain, inUse := written(neutral), written(use)
	own, drops := 0, 0
	for _, g := range p.Shop.Gates {
		named := plain[g.Name] > 0
		if named == neutral.ownGate(g) {
			t.Errorf("%s: named %v on the plan", g.Name, named)
		}
		if !named {
			own++
		} else if inUse[g.Name+" open"]+inUse[g.Name+" shut"] != 1 {
			t.Errorf("%s has no state in a use", g.Name)
		}
		if !strings.Contains(string(neutral.out), "<title>"+escaped(g.Name)+"</title>") {
			t.Errorf("%s stands in no title", g.Name)
		}
	}
	if inUse["open"]+inUse["shut"] != own || inUse["open"] == 0 {
		t.Errorf("%d words open and %d shut beside %d gates without a name", inUse["open"], inUse["shut"], own)
	}
	for _, d := range p.Shop.Ducts {
		if len(d.Route) < 2 {
			continue
		}
		full := plain[d.Name+" · "+neutral.sizeOf(d)] + plain[d.Name+" "+neutral.sizeOf(d)]
		if drop := neutral.isDrop(d); drop == (full > 0) {
			t.Errorf("%s: a drop %v, named %d times", d.Name, drop, full)
		} else if drop {
			drops++
		}
		if !strings.Contains(string(neutral.out), "<title>"+escaped(d.Name)+", ") {
			t.Errorf("%s stands in no title", d.Name)
		}
	}
	if own == 0 || drops == 0 {
		t.Errorf("%d gates and %d drops without a name: the test sees nothing", own, drops)
	}
	for _, s := range []*sheet{neutral, use} {
		if !strings.Contains(string(s.out), wording.Text("drawing.brief")) {
			t.Error("a brief plan does not say what it leaves out")
		}
	}
	if whole := NewBoard(loaded(t, "shed")).sheet(nil); whole.brief || strings.Contains(string(whole.out), wording.Text("drawing.brief")) {
		t.Error("a plan with room is brief")
	}
}

// TestAlikeStandTogether checks that elements drawn alike say once how, and
// that nothing else is drawn so.
func TestAlikeStandTogether(t *testing.T) {
	p := &pen{}
	one, other := look{line: dark, weight: 10}, look{line: soft, weight: 10}
	p.line(one, "", spot{}, spot{10, 0})
	p.line(one, "a", spot{}, spot{0, 10})
	p.line(one, "", spot{}, spot{20, 10})
	p.line(other, "", spot{}, spot{10, 0})
	p.link("x", func() { p.line(other, "", spot{}, spot{30, 0}) })
	p.line(other, "", spot{}, spot{40, 0})
	p.apart()
	const inked, softened = ` class="line-ink" fill="none" stroke="#000" stroke-width="1"`, ` class="line-soft" fill="none" stroke="#444" stroke-width="1"`
	want := `<g` + inked + `><path d="M0 0h1"/><path d="M0 0v1"><title>a</title></path><path d="M0 0l2 1"/></g>` +
		`<path d="M0 0h1"` + softened + `/><a href="x"><path d="M0 0h3"` + softened + `/></a><path d="M0 0h4"` + softened + `/>`
	if got := string(p.out); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// TestCloser checks the short way to compare a distance against the long one.
func TestCloser(t *testing.T) {
	for x := range 40 {
		for y := range 40 {
			for _, least := range [5]int{-1, 0, 1, 20, 41} {
				if a, b := (spot{3, 4}), (spot{3 - x, 4 + y}); closer(a, b, least) != (span(a, b) < least) {
					t.Fatalf("%v to %v: closer than %d", a, b, least)
				}
			}
		}
	}
}

// TestSimpleText checks that a text set without cutting it up is set the same.
func TestSimpleText(t *testing.T) {
	for _, text := range []string{"", " ", "Table saw", "a  b", " a", "a ", "Band-saw", "a\tb", "größer", "集塵機", "W\u202eedih"} {
		plain := strings.Join(strings.Fields(drawable(text)), " ")
		if set, short := wrap(text, true, smallText, 5000, 3); short || len(set) != 1 || set[0] != plain {
			t.Errorf("%q is set as %q", text, set)
		}
		if simple(text) && text != plain {
			t.Errorf("%q is not simple", text)
		}
	}
}

// TestEitherStateHasRoom checks that what a gate says in one state needs no
// more room than what it says in the state its label is placed with.
func TestEitherStateHasRoom(t *testing.T) {
	for _, name := range HardNames {
		m := &gateMark{gate: &shop.Gate{Name: name}}
		for _, most := range [4]int{600, 900, 1300, 2400} {
			room := gateSays(m, longerState(), most)
			for _, state := range [2]gateState{openGate, shutGate} {
				if b := gateSays(m, state, most); b.width() > room.width() || b.height() > room.height() {
					t.Errorf("%q %s takes %d by %d, its room is %d by %d", name, state, b.width(), b.height(), room.width(), room.height())
				}
			}
		}
	}
}
