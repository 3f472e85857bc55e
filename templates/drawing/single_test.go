package drawing_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// singles are the single-line diagrams of a shop, by use, collector and state
// of the filter.
func singles(p *plan.Plan) map[string]drawing.SVG {
	board, all := drawing.NewBoard(p), map[string]drawing.SVG{}
	for i, u := range p.Air.Uses {
		for j, r := range u.Results {
			if r.Collector != nil {
				all[fmt.Sprintf("%s %s %d", u.Name, r.Filter, j)] = board.Single(r, fmt.Sprintf("s%d-%d", i, j))
			}
		}
	}
	return all
}

// TestSingleForm checks what every single-line diagram must be, and that no
// line of text lies on another, on every shop of testdata.
func TestSingleForm(t *testing.T) {
	known := map[string]bool{}
	for _, c := range drawing.Classes {
		known[c.Name] = true
	}
	for _, name := range append([]string{"works"}, shops...) {
		p := load(t, name)
		list, again := singles(p), singles(p)
		if len(list) == 0 {
			t.Errorf("%s: no diagram", name)
		}
		for key, svg := range list {
			checkForm(t, name+": "+key, svg, known)
			checkTexts(t, name+": "+key, svg)
			checkWithin(t, name+": "+key, svg)
			if again[key] != svg {
				t.Errorf("%s: %s differs when drawn again", name, key)
			}
		}
	}
}

// TestSingleAnywhere checks shops made by a seed.
func TestSingleAnywhere(t *testing.T) {
	for seed := range drawing.Seeds(40, 200) {
		p := read(t, "random.toml", drawing.RandomShop(seed))
		for key, svg := range singles(p) {
			checkTexts(t, fmt.Sprintf("seed %d %s", seed, key), svg)
		}
	}
}

// checkWithin reports lines of text that are cut off at the edge.
func checkWithin(t *testing.T, key string, svg drawing.SVG) {
	t.Helper()
	root := parse(t, svg)
	box := strings.Fields(root.attr["viewBox"])
	left, top := number(t, box[0]), number(t, box[1])
	right, bottom := left+number(t, box[2]), top+number(t, box[3])
	for _, v := range textsOf(t, root) {
		if v.left < left || v.right > right || v.top < top || v.bottom > bottom {
			t.Errorf("%s: %q is cut off", key, v.text)
		}
	}
}

// TestSingleSaysWhatIsSolved reads a diagram back: every stretch on the way
// has its number and the figures of the result, what is shut has none, and
// the words beside the drawing say the same.
func TestSingleSaysWhatIsSolved(t *testing.T) {
	p := load(t, "hall")
	slow, shut := 0, 0
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if r.Collector == nil || !r.OnCurve || len(u.Machines) == 0 {
				continue
			}
			root := parse(t, drawing.Single(p, r, "s"))
			lines := map[string]int{}
			for _, v := range textsOf(t, root) {
				lines[v.text]++
			}
			desc := root.inner[1].text
			way := map[string]bool{}
			for _, port := range r.Ports {
				if port.Port.Duct == nil || port.Port.Duct.Collector != r.Collector {
					continue
				}
				for _, s := range port.Port.Path() {
					way[s.Name()] = true
				}
			}
			for i, s := range drawing.InOrder(p.Shop, r.Collector) {
				named := strconv.Itoa(i+1) + " · " + s.Name()
				found := false
				for line := range lines {
					found = found || strings.HasPrefix(line, named)
				}
				if !found {
					t.Errorf("%s: no line begins with %q", u.Name, named)
				}
				v := r.Stretch(s)
				flow := unit.Air.Print(p.Shop.Units, v.Flow)
				if !way[s.Name()] {
					shut++
					continue
				}
				total := unit.Press.Figure(p.Shop.Units, -v.End)
				static, _ := p.Air.Suction(r, s.Duct, s.To)
				press := "total " + total + ", static " + unit.Press.Print(p.Shop.Units, static)
				if lines[press] == 0 || !strings.Contains(desc, press) {
					t.Errorf("%s: %s does not say %q in the drawing and in words", u.Name, s.Name(), press)
				}
				speed, _ := unit.Speed.Pair(p.Shop.Units, v.Velocity, v.Transport)
				if v.Carries {
					speed = unit.Speed.Figure(p.Shop.Units, v.Velocity)
				}
				says := ""
				for line := range lines {
					if strings.HasPrefix(line, flow+" · "+speed+" "+unit.Speed.Unit(p.Shop.Units)) {
						says = line
					}
				}
				if says == "" || !strings.Contains(desc, strings.ReplaceAll(says, "▲ ", "")) {
					t.Errorf("%s: %s does not say %q and %q", u.Name, s.Name(), flow, speed)
				}
				if !v.Carries {
					slow++
					if !strings.Contains(says, "▲ slow, needs ") {
						t.Errorf("%s: %s is slow and says %q", u.Name, s.Name(), says)
					}
				}
			}
		}
	}
	if slow == 0 || shut == 0 {
		t.Errorf("%d slow stretches and %d shut ones: this test needs both", slow, shut)
	}
}

// TestSingleGates checks that every gate of the collector stands in the
// diagram with its state, and that its blade lies across or out of the frame.
func TestSingleGates(t *testing.T) {
	p := load(t, "hall")
	r := named(t, p, "Table saw")
	root := parse(t, drawing.Single(p, r, "s"))
	var gates []*shop.Gate
	states := map[bool]int{}
	for _, g := range p.Shop.Gates {
		if g.On.Collector == r.Collector {
			gates = append(gates, g)
			states[r.Use.Open[g]]++
		}
	}
	checkGates(t, "Table saw", root, gates, r.Use)
	if states[true] == 0 || states[false] == 0 {
		t.Errorf("gates %v: this test needs open and shut ones", states)
	}
}

// TestSingleLinks checks that machines lead to their use, and the machine of
// the use itself does not.
func TestSingleLinks(t *testing.T) {
	p := load(t, "hall")
	board := drawing.NewBoard(p)
	board.LinkUses(func(u *duct.Use) string { return "to " + u.Name })
	r := named(t, p, "Table saw")
	links := map[string]bool{}
	parse(t, board.Single(r, "s")).each(func(n *node) {
		if n.name == "a" {
			links[n.attr["href"]] = true
		}
	})
	if links["to Table saw"] || len(links) == 0 {
		t.Errorf("links %v", links)
	}
	for _, d := range p.Shop.Ducts {
		for _, port := range d.Serves {
			if d.Collector == r.Collector && port.Machine.Name != "Table saw" && !links["to "+port.Machine.Name] {
				t.Errorf("no link to %s", port.Machine.Name)
			}
		}
	}
}

// TestSingleOffCurve checks that without figures it says why and shows none.
func TestSingleOffCurve(t *testing.T) {
	p, seen := load(t, "hall"), false
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if r.Collector == nil || r.OnCurve {
				continue
			}
			seen = true
			root := parse(t, drawing.Single(p, r, "s"))
			said := strings.Contains(root.inner[1].text, r.Why.String())
			for _, v := range textsOf(t, root) {
				if strings.HasPrefix(v.text, "total ") {
					t.Errorf("%s: has figures: %q", u.Name, v.text)
				}
			}
			if !said {
				t.Errorf("%s: does not say %q", u.Name, r.Why)
			}
		}
	}
	if !seen {
		t.Error("no use of the hall is off the curve")
	}
}

// TestLookSingle writes a page to look at, where DUSTBOOK_LOOK names a folder.
func TestLookSingle(t *testing.T) {
	dir := os.Getenv("DUSTBOOK_LOOK")
	if dir == "" {
		t.Skip("DUSTBOOK_LOOK names no folder")
	}
	for name, use := range map[string]string{"works": "Panel saw", "hall": "Thicknesser and table saw", "yard": "Mortiser", "words": "Lathe", "shed": "Band saw"} {
		p := load(t, name)
		page := lookStyle + `<div class="box">` + string(drawing.Single(p, named(t, p, use), "s")) + "</div>"
		if err := os.WriteFile(filepath.Join(dir, name+"-single.html"), []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
