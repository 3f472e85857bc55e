package drawing_test

import (
	"fmt"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/templates/drawing"
)

// written is a line of text in a drawing with the room its signs take.
type written struct {
	text                     string
	left, top, right, bottom float64
}

// textsOf measures every line of text with the widths of the table.
func textsOf(t testing.TB, root *node) []written {
	var list []written
	root.each(func(n *node) {
		if n.name != "text" || n.text == "" {
			return
		}
		size, x, y := n.size(t), number(t, n.attr["x"]), number(t, n.attr["y"])
		wide := 0.0
		for _, part := range n.bold {
			wide += drawing.TextWidth(part.text, part.bold, size)
		}
		switch n.attr["text-anchor"] {
		case "middle":
			x -= wide / 2
		case "end":
			x -= wide
		}
		list = append(list, written{n.text, x, y - 0.73*size, x + wide, y + 0.21*size})
	})
	return list
}

func (a written) over(b written) bool {
	return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

// checkTexts reports lines of text that lie on each other.
func checkTexts(t *testing.T, key string, svg drawing.SVG) {
	t.Helper()
	list := textsOf(t, parse(t, svg))
	for i, a := range list {
		for _, b := range list[i+1:] {
			if a.over(b) {
				t.Errorf("%s: %q lies on %q", key, a.text, b.text)
			}
		}
	}
}

// TestNoTextOverText checks every drawing of the test shops.
func TestNoTextOverText(t *testing.T) {
	for _, name := range shops {
		for key, svg := range drawn(t, name) {
			checkTexts(t, name+": "+key, svg)
		}
	}
}

// TestNoTextOverTextInTheWorks checks the plan and the isometrics of
// twenty-four machines.
func TestNoTextOverTextInTheWorks(t *testing.T) {
	p := load(t, "works")
	if len(p.Shop.Machines) != 24 {
		t.Fatalf("%d machines", len(p.Shop.Machines))
	}
	board := drawing.NewBoard(p)
	checkTexts(t, "neutral", board.Plan(nil, "n"))
	checkTexts(t, "use", board.Plan(p.Air.Uses[0].Results[0], "u"))
	for _, c := range p.Shop.Collectors {
		checkTexts(t, c.Name, board.Isometric(c, "i"))
	}
}

// TestNoTextOverTextAnywhere checks shops made by a seed, two hundred in a
// whole run: of each the neutral plan, the isometrics and one use, of every eighth the charts
// too. The uses go round, so that every kind of use is among them.
func TestNoTextOverTextAnywhere(t *testing.T) {
	kinds := map[duct.UseKind]bool{}
	for seed := range drawing.Seeds(40, 200) {
		p := read(t, "random.toml", drawing.RandomShop(seed))
		board, uses := drawing.NewBoard(p), p.Air.Uses
		checkTexts(t, fmt.Sprintf("seed %d neutral", seed), board.Plan(nil, "n"))
		for _, c := range p.Shop.Collectors {
			checkTexts(t, fmt.Sprintf("seed %d isometric", seed), board.Isometric(c, "i"))
		}
		use := uses[seed%uint64(len(uses))]
		for _, one := range use.Results[:min(1, len(use.Results))] {
			kinds[use.Kind] = true
			checkTexts(t, fmt.Sprintf("seed %d %s", seed, use.Name), board.Plan(one, "u"))
		}
		if seed%8 == 0 {
			checkCharts(t, fmt.Sprintf("seed %d", seed), p)
		}
	}
	for _, kind := range []duct.UseKind{duct.OneMachine, duct.Together, duct.AllShut, duct.AllOpen, duct.DuctOff} {
		if !kinds[kind] {
			t.Errorf("no use of the kind %v was drawn", kind)
		}
	}
}

// checkCharts checks every fan's chart and every run of every use.
func checkCharts(t *testing.T, key string, p *plan.Plan) {
	t.Helper()
	for _, c := range p.Shop.Collectors {
		svg, _ := drawing.FanChart(p, c, "f")
		checkTexts(t, key+" fan", svg)
	}
	for _, u := range p.Air.Uses {
		for _, one := range u.Results {
			for _, port := range one.Ports {
				checkTexts(t, key+" run", drawing.Profile(p, one, port.Port, "r"))
			}
		}
	}
}

// TestOverlapIsSeen makes sure that the check above can fail.
func TestOverlapIsSeen(t *testing.T) {
	two := `<svg><text x="0" y="20" font-size="14">one word</text><text x="20" y="24" font-size="14">another</text><text x="20" y="60" font-size="14">far</text></svg>`
	list := textsOf(t, parse(t, drawing.SVG(two)))
	if len(list) != 3 || !list[0].over(list[1]) || list[0].over(list[2]) {
		t.Errorf("%+v", list)
	}
}
