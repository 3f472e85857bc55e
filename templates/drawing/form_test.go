package drawing_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/templates/drawing"
)

// drawings are all drawings of a shop: the neutral plan, every use, every
// fan, every run of every use.
func drawings(p *plan.Plan) map[string]drawing.SVG {
	board := drawing.NewBoard(p)
	all := map[string]drawing.SVG{"neutral": board.Plan(nil, "n")}
	for i, u := range p.Air.Uses {
		for j, r := range u.Results {
			key := fmt.Sprintf("%s %s %d", u.Name, r.Filter, j)
			all["plan "+key] = board.Plan(r, fmt.Sprintf("u%d-%d", i, j))
			for k, port := range r.Ports {
				all["run "+key+" "+port.Port.Full()] = drawing.Profile(p, r, port.Port, fmt.Sprintf("r%d-%d-%d", i, j, k))
			}
		}
	}
	for i, c := range p.Shop.Collectors {
		all["isometric "+c.Name] = board.Isometric(c, fmt.Sprintf("i%d", i))
		all["fan "+c.Name], _ = drawing.FanChart(p, c, fmt.Sprintf("f%d", i))
	}
	return all
}

var shops = []string{"hall", "shed", "words", "yard"}

var drawnOnce = map[string]map[string]drawing.SVG{}

// drawn are all drawings of a test shop, drawn once for all tests.
func drawn(t testing.TB, name string) map[string]drawing.SVG {
	t.Helper()
	if drawnOnce[name] == nil {
		drawnOnce[name] = drawings(load(t, name))
	}
	return drawnOnce[name]
}

// TestForm checks what every drawing must be: well formed, titled, with
// classes of the list alone, no style, short numbers, readable text.
func TestForm(t *testing.T) {
	known := map[string]bool{}
	for _, c := range drawing.Classes {
		if c.Name == "" || c.Means == "" || known[c.Name] {
			t.Errorf("class %q: %q", c.Name, c.Means)
		}
		known[c.Name] = true
	}
	ids := map[string]string{}
	for _, name := range shops {
		for key, svg := range drawn(t, name) {
			checkForm(t, name+": "+key, svg, known)
			parse(t, svg).each(func(n *node) {
				if id := n.attr["id"]; id != "" {
					if other := ids[name+id]; other != "" {
						t.Errorf("%s: id %q also in %s", key, id, other)
					}
					ids[name+id] = key
				}
			})
		}
	}
}

var longNumber = regexp.MustCompile(`\d+\.\d\d`)

func checkForm(t *testing.T, key string, svg drawing.SVG, known map[string]bool) {
	t.Helper()
	root := parse(t, svg)
	if root.attr["role"] != "img" || root.attr["font-size"] != "13" || root.title == "" {
		t.Errorf("%s: no role or title", key)
	}
	id := strings.Fields(root.attr["aria-labelledby"])
	if len(root.inner) < 3 || len(id) != 2 || root.inner[0].attr["id"] != id[0] || root.inner[1].name != "desc" || root.inner[1].attr["id"] != id[1] || root.inner[1].text == "" {
		t.Errorf("%s: title and desc are not what aria-labelledby names", key)
	}
	box := strings.Fields(root.attr["viewBox"])
	if len(box) != 4 || root.attr["width"] != box[2] || root.attr["height"] != box[3] {
		t.Errorf("%s: viewBox %v, width %s, height %s", key, box, root.attr["width"], root.attr["height"])
	}
	root.each(func(n *node) {
		for name, value := range n.attr {
			switch {
			case name == "style" || strings.HasPrefix(name, "on") || name == "href":
				t.Errorf("%s: attribute %s", key, name)
			case name == "class":
				for _, c := range strings.Fields(value) {
					if !known[c] {
						t.Errorf("%s: class %q is not in the list", key, c)
					}
				}
			case name == "id" || name == "aria-labelledby":
			case longNumber.MatchString(value):
				t.Errorf("%s: %s = %q has more than one decimal", key, name, value)
			case strings.Contains(value, "NaN") || strings.Contains(value, "Inf"):
				t.Errorf("%s: %s = %q", key, name, value)
			}
		}
		switch n.name {
		case "style", "script", "foreignObject", "image", "use", "a":
			t.Errorf("%s: element %s", key, n.name)
		case "text":
			if size := n.size(t); size < 13 {
				t.Errorf("%s: text of %g units", key, size)
			}
			if strings.Contains(n.text, "NaN") {
				t.Errorf("%s: %q", key, n.text)
			}
		}
	})
}

// TestWithinSheet checks that nothing is cut off at the edge.
func TestWithinSheet(t *testing.T) {
	for _, name := range shops {
		for key, svg := range drawn(t, name) {
			root := parse(t, svg)
			box := strings.Fields(root.attr["viewBox"])
			left, top := number(t, box[0]), number(t, box[1])
			right, bottom := left+number(t, box[2]), top+number(t, box[3])
			inside := func(what string, x, y float64) {
				if x < left || x > right || y < top || y > bottom {
					t.Errorf("%s: %s: %s at %g %g outside %v", name, key, what, x, y, box)
				}
			}
			for _, v := range textsOf(t, root) {
				inside(v.text, v.left, v.top)
				inside(v.text, v.right, v.bottom)
			}
			root.each(func(n *node) {
				if n.name == "path" && !strings.Contains(n.attr["d"], "A") {
					for _, at := range points(t, n.attr["d"]) {
						inside("path", at[0], at[1])
					}
				}
			})
		}
	}
}

// TestHostileNames checks that names cannot leave their place, and that a
// name cut short is whole in a title.
func TestHostileNames(t *testing.T) {
	machine := drawing.HardNames[2]
	machine = strings.ReplaceAll(machine, "/", "|")
	long := drawing.HardNames[len(drawing.HardNames)-1]
	p := read(t, "hostile.toml", fmt.Sprintf(`
[shop]
name = "Shop <img src=x onerror=alert(1)> & \"quotes\""
[[room]]
name = "]]> <!-- room"
outline = [[0,0],[20,0],[20,14],[0,14]]
[[wall]]
from = [20,0]
to = [20,14]
rating = "\"><script>"
[[machine]]
name = %q
kind = "table saw"
at = [4,3]
[[machine]]
name = %q
kind = "planer"
at = [14,3]
[[collector]]
name = "W\u202eedih <c>"
at = [-3,8]
inlet = "6 in"
fan_curve = [["0 cfm","9 inwg"],["900 cfm","4 inwg"]]
[[duct]]
name = "Run & <d>"
to = "W\u202eedih <c>"
size = "6 in"
route = [[16,8,9],[-3,8,9]]
[[duct]]
name = "D'1\""
to = "Run & <d>"
size = "4 in"
route = [[4,3,2],[4,3,9],[4,7,9],[3,8,9]]
serves = [%q]
[[gate]]
name = "🪚 & <g>"
on = "D'1\""
`, machine, long, machine))
	r := named(t, p, machine)
	for _, svg := range []drawing.SVG{drawing.Plan(p, nil, `a"><script>`), drawing.Plan(p, r, "b"), drawing.Profile(p, r, r.Ports[0].Port, "c"), drawing.Isometric(p, p.Shop.Collectors[0], `d"><script>`)} {
		root := parse(t, svg)
		titles := map[string]bool{}
		root.each(func(n *node) {
			if n.name == "script" || n.name == "img" || n.name == "b" {
				t.Errorf("a name became an element: %s", n.name)
			}
			titles[n.title] = true
			if strings.ContainsRune(n.text, 0x202e) && n.name == "text" {
				t.Errorf("a mark that turns text around is drawn: %q", n.text)
			}
		})
		for _, open := range []string{"<script", "<img", "<!--"} {
			if strings.Contains(string(svg), open) {
				t.Errorf("%s stands in the drawing", open)
			}
		}
		if strings.HasPrefix(root.title, "Plan") && !titles[long] {
			t.Error("a name that is cut short is not whole in a title")
		}
	}
}

// TestOffCurve checks that a use off the curve has no figures and says why.
func TestOffCurve(t *testing.T) {
	p := load(t, "hall")
	board, found := drawing.NewBoard(p), false
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if r.OnCurve || r.Collector == nil {
				continue
			}
			found = true
			svg := string(board.Plan(r, "x"))
			if u.Kind != duct.DuctOff && !strings.Contains(svg, r.Why.String()) {
				t.Errorf("%s: does not say %q", u.Name, r.Why)
			}
			svg2, points := drawing.FanChart(p, r.Collector, "y")
			for _, v := range points {
				if v.Result == r && (v.Number != 0 || v.Why == "") {
					t.Errorf("%s: off the curve and drawn as %d", u.Name, v.Number)
				}
			}
			if !strings.Contains(string(svg2), "off the curve") {
				t.Error("the chart does not say that uses are off the curve")
			}
		}
	}
	if !found {
		t.Error("no use of the test shop is off the curve")
	}
}

// TestSparseShops draws shops that give next to nothing.
func TestSparseShops(t *testing.T) {
	known := map[string]bool{}
	for _, c := range drawing.Classes {
		known[c.Name] = true
	}
	for name, text := range map[string]string{
		"a name alone": `[shop]
name = "Nothing yet"`,
		"one machine, no place": `[shop]
name = "One"
[[machine]]
name = "Saw"
kind = "table saw"`,
		"one room": `[shop]
name = "Room"
[[room]]
name = "R"
outline = [[0,0],[9,0],[4,7]]`,
		"one point": `[shop]
name = "Point"
[[machine]]
name = "Saw"
kind = "table saw"
at = [3,3]`,
		"machines on one spot, a duct straight up, a size to choose": heap,
	} {
		p := read(t, name, text)
		for key, svg := range drawings(p) {
			checkForm(t, name+": "+key, svg, known)
			checkTexts(t, name+": "+key, svg)
		}
	}
}

const heap = `[shop]
name = "Heap"
[[machine]]
name = "A"
kind = "table saw"
at = [3,3]
[[machine]]
name = "B"
kind = "planer"
at = [3,3]
[[machine]]
name = "C"
kind = "lathe"
at = [3,3]
[[collector]]
name = "Fan"
inlet = "6 in"
at = [3,3]
claims = { flow = "900 cfm", suction = "9 inwg" }
[[duct]]
name = "Up"
to = "Fan"
size = "choose"
route = [[3,3,1],[3,3,9]]
serves = ["A"]
[[gate]]
name = "G"
on = "Up"
[[leak]]
on = "Up"
hole = "1 in"
at = "2 ft"`
