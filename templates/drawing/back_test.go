package drawing_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// near reports whether two positions agree within what one decimal leaves.
func near(a, b [2]float64, by float64) bool {
	return math.Abs(a[0]-b[0]) <= by && math.Abs(a[1]-b[1]) <= by
}

// titled are the elements with a title, by that title.
func titled(root *node) map[string][]*node {
	found := map[string][]*node{}
	root.each(func(n *node) {
		if n.title != "" {
			found[n.title] = append(found[n.title], n)
		}
	})
	return found
}

// TestDuctsRunAsRouted reads every duct's line back and compares it with its
// route, scaled as the room's corners are.
func TestDuctsRunAsRouted(t *testing.T) {
	for _, name := range []string{"hall", "shed", "yard"} {
		p := load(t, name)
		found := titled(parse(t, drawing.Plan(p, nil, "n")))
		room := p.Shop.Rooms[0]
		corners := points(t, found[room.Name][0].attr["d"])
		place := mapping(t, room.Outline, corners)
		for _, d := range p.Shop.Ducts {
			if len(d.Route) == 0 {
				continue
			}
			lines := found[d.Name+", "+unit.Size.Print(p.Shop.Units, d.Size)]
			if len(lines) != 1 {
				t.Errorf("%s: %d lines for %s", name, len(lines), d.Name)
				continue
			}
			var want [][2]float64
			for _, s := range d.Route {
				at := place(shop.Point{X: s.X, Y: s.Y})
				if len(want) == 0 || !near(want[len(want)-1], at, 0.05) {
					want = append(want, at)
				}
			}
			got := points(t, lines[0].attr["d"])
			if d.Joined != nil && d.Joined[0].JoinAt == 0 {
				// it begins a little before its first point, on the same line
				if math.Abs(got[0][0]-want[0][0])+math.Abs(got[0][1]-want[0][1]) > 30 {
					t.Errorf("%s: %s begins at %v, not near %v", name, d.Name, got[0], want[0])
				}
				got[0] = want[0]
			}
			if len(got) != len(want) {
				t.Errorf("%s: %s has %d points, not %d", name, d.Name, len(got), len(want))
				continue
			}
			for i := range got {
				if !near(got[i], want[i], 0.11) {
					t.Errorf("%s: %s point %d is at %v, not %v", name, d.Name, i, got[i], want[i])
				}
			}
		}
	}
}

// mapping finds from a room's corners how the drawing lies over the file.
func mapping(t *testing.T, outline []shop.Point, drawn [][2]float64) func(shop.Point) [2]float64 {
	t.Helper()
	if len(outline) != 4 || len(drawn) != 4 {
		t.Fatalf("%d corners drawn as %d", len(outline), len(drawn))
	}
	o, a, b := outline[0], outline[1], outline[3]
	along := func(p shop.Point) (u, v float64) { return (p.X - o.X) / (a.X - o.X), (p.Y - o.Y) / (b.Y - o.Y) }
	return func(p shop.Point) [2]float64 {
		u, v := along(p)
		at := [2]float64{}
		for i := range at {
			at[i] = drawn[0][i] + u*(drawn[1][i]-drawn[0][i]) + v*(drawn[3][i]-drawn[0][i])
		}
		return at
	}
}

// boxAround is the least box around some points.
func boxAround(list [][2]float64) (left, top, right, bottom float64) {
	left, top, right, bottom = list[0][0], list[0][1], list[0][0], list[0][1]
	for _, p := range list {
		left, top, right, bottom = min(left, p[0]), min(top, p[1]), max(right, p[0]), max(bottom, p[1])
	}
	return left, top, right, bottom
}

// TestGatesReadByShape checks that a gate's blade lies in its frame when it
// is shut and out of it when open, and that the word says the same.
func TestGatesReadByShape(t *testing.T) {
	p := load(t, "hall")
	for _, u := range p.Air.Uses[:3] {
		root := parse(t, drawing.Plan(p, u.Results[0], "u"))
		checkGates(t, u.Name, root, p.Shop.Gates, u)
	}
}

// checkGates checks the blades of some gates against their frames: within when
// shut, beyond it when open. All frames are drawn before all blades.
func checkGates(t *testing.T, key string, root *node, gates []*shop.Gate, u *duct.Use) {
	t.Helper()
	open := map[string]bool{}
	for _, g := range gates {
		open[gateTitle(g, u)] = u.Open[g]
	}
	var frames, blades []*node
	root.each(func(n *node) {
		if _, gate := open[n.title]; gate && n.name == "path" {
			frames, blades = append(frames, n), nil
		} else if n.name == "path" {
			blades = append(blades, n)
		}
	})
	if len(frames) != len(open) || len(blades) < len(frames) {
		t.Fatalf("%s: %d frames of %d gates", key, len(frames), len(open))
	}
	for i, n := range frames {
		blade := blades[i]
		l, top, r, b := boxAround(points(t, n.attr["d"]))
		l2, top2, r2, b2 := boxAround(points(t, blade.attr["d"]))
		within := l2 >= l && top2 >= top && r2 <= r && b2 <= b
		if blade.attr["class"] != "fill-ink" || within == open[n.title] {
			t.Errorf("%s: %s: frame %v %v %v %v, blade %v %v %v %v", key, n.title, l, top, r, b, l2, top2, r2, b2)
		}
		if x, y := (l+r)/2, (top+b)/2; math.Abs(x-(l2+r2)/2)+math.Abs(y-(top2+b2)/2) > 40 {
			t.Errorf("%s: %s: the blade is elsewhere", key, n.title)
		}
	}
}

// gateTitle is what the title of a gate's frame says in a use.
func gateTitle(g *shop.Gate, u *duct.Use) string {
	if u.Open[g] {
		return g.Name + " open"
	}
	return g.Name + " shut"
}

// TestUseIsTold checks a use's drawing: the machine in use is outlined more
// heavily, flows stand in tags, the open way is filled, and the neutral plan
// has none of it.
func TestUseIsTold(t *testing.T) {
	p := load(t, "hall")
	r := named(t, p, "Thicknesser")
	found := titled(parse(t, drawing.Plan(p, r, "u")))
	weight := func(name string) float64 { return number(t, found[name][0].attr["stroke-width"]) }
	if weight("Thicknesser") <= weight("Jointer") || weight("West cyclone") <= weight("Sanding collector") {
		t.Error("what runs is not drawn more heavily")
	}
	svg := string(drawing.Plan(p, r, "u"))
	flow := unit.Air.Print(unit.US, r.Ports[0].Flow)
	for _, text := range []string{flow, "EXIT", "1 h", "46 × 30 ft, 12 ft high", "62 ft", "line-air-soft"} {
		if !strings.Contains(svg, text) {
			t.Errorf("the use does not show %q", text)
		}
	}
	neutral := string(drawing.Plan(p, nil, "n"))
	for _, text := range []string{flow, "line-air-soft", "open</text>", "shut</text>"} {
		if strings.Contains(neutral, text) {
			t.Errorf("the neutral plan shows %q", text)
		}
	}
	if !strings.Contains(neutral, "Panel drop · 6 in") {
		t.Error("the neutral plan does not show a duct's size")
	}
}

// TestBothCollectorsOfAUse checks that a use on two collectors shows both.
func TestBothCollectorsOfAUse(t *testing.T) {
	p := load(t, "hall")
	r := named(t, p, "Sanding beside the lathe")
	found := titled(parse(t, drawing.Plan(p, r, "u")))
	for _, c := range p.Shop.Collectors {
		if w := found[c.Name][0].attr["stroke-width"]; w != "2.4" {
			t.Errorf("%s is drawn with weight %s", c.Name, w)
		}
	}
	open := func(svg drawing.SVG) int { return strings.Count(string(svg), "line-air-soft") }
	if one := drawing.Plan(p, named(t, p, "Drum sander"), "v"); open(one) >= open(drawing.Plan(p, r, "u")) {
		t.Error("two collectors show no more open way than one")
	}
}

// axes reads a chart's two scales back from the figures on its axes.
func axes(t *testing.T, root *node) (x, y func(float64) float64) {
	t.Helper()
	var alongX, alongY [][2]float64 // value, place
	root.each(func(n *node) {
		v, err := strconv.ParseFloat(n.text, 64)
		if n.name != "text" || err != nil || n.attr["font-weight"] == "700" {
			return
		}
		if n.attr["text-anchor"] == "middle" {
			alongX = append(alongX, [2]float64{v, number(t, n.attr["x"])})
		} else if n.attr["text-anchor"] == "end" {
			alongY = append(alongY, [2]float64{v, number(t, n.attr["y"])})
		}
	})
	line := func(list [][2]float64) func(float64) float64 {
		a, b := list[0], list[len(list)-1]
		return func(v float64) float64 { return a[1] + (v-a[0])/(b[0]-a[0])*(b[1]-a[1]) }
	}
	if len(alongX) < 4 || len(alongY) < 4 {
		t.Fatalf("%d and %d figures on the axes", len(alongX), len(alongY))
	}
	up := line(alongY)
	return line(alongX), func(v float64) float64 { return up(v) - up(0) } // from nought: text hangs below its tick
}

// TestFanPointsLieWhereTheySay reads the marks of a fan's chart back against
// its axes.
func TestFanPointsLieWhereTheySay(t *testing.T) {
	for _, name := range []string{"hall", "shed", "yard"} {
		p := load(t, name)
		for _, c := range p.Shop.Collectors {
			svg, list := drawing.FanChart(p, c, "f")
			root := parse(t, svg)
			x, y := axes(t, root)
			marks := map[string][][2]float64{}
			root.each(func(n *node) {
				if n.name == "circle" {
					marks[duct.Clean] = append(marks[duct.Clean], [2]float64{number(t, n.attr["cx"]), number(t, n.attr["cy"])})
				} else if n.name == "rect" && n.attr["width"] == "9" {
					marks[duct.ChangeOut] = append(marks[duct.ChangeOut], [2]float64{number(t, n.attr["x"]) + 4.5, number(t, n.attr["y"]) + 4.5})
				}
			})
			marks[duct.NoFilter] = marks[duct.Clean]
			drawn, last := 0, 0
			for _, v := range list {
				if v.Number == 0 {
					continue
				}
				drawn++
				if v.Number != last && v.Number != last+1 {
					t.Errorf("%s: number %d after %d", c.Name, v.Number, last)
				}
				last = v.Number
				want := [2]float64{x(unit.Air.In(p.Shop.Units, v.Flow)), y(unit.Press.In(p.Shop.Units, v.Static))}
				found := false
				for _, at := range marks[v.Filter] {
					found = found || near(at, want, 0.3)
				}
				if !found {
					t.Errorf("%s: no mark at %v for %s, filter %s", c.Name, want, v.Use, v.Filter)
				}
			}
			if drawn < 4 {
				t.Errorf("%s: %d points", c.Name, drawn)
			}
		}
	}
}

// TestFanCurveStaysInRange checks that the curve starts and ends with its
// first and last point, and that claims stand on the axes.
func TestFanCurveStaysInRange(t *testing.T) {
	p := load(t, "hall")
	c := p.Shop.Collectors[0]
	svg, _ := drawing.FanChart(p, c, "f")
	root := parse(t, svg)
	x, y := axes(t, root)
	var curve [][2]float64
	root.each(func(n *node) {
		if n.attr["class"] == "line-air" && len(points(t, n.attr["d"])) > len(curve) {
			curve = points(t, n.attr["d"])
		}
	})
	fan := duct.NewFan(c, p.Air.State, duct.Clean)
	for i, end := range map[int]shop.CurvePoint{0: c.Curve[0], len(curve) - 1: c.Curve[len(c.Curve)-1]} {
		want := [2]float64{x(unit.Air.In(unit.US, end.Flow)), y(unit.Press.In(unit.US, unit.Pressure(fan.Static(float64(end.Flow)))))}
		if !near(curve[i], want, 0.3) {
			t.Errorf("the curve's end lies at %v, not %v", curve[i], want)
		}
	}
	for _, claim := range []string{"claimed 2200 cfm", "claimed 13.00 in wg"} {
		if !strings.Contains(string(svg), claim) {
			t.Errorf("no %q", claim)
		}
	}
	svg, _ = drawing.FanChart(p, p.Shop.Collectors[1], "g")
	if strings.Contains(string(svg), "claimed") {
		t.Error("a collector without claims shows claims")
	}
}

// TestProfileRises reads the dots of a run back: suction at the end of every
// stretch, up to the fan's static pressure.
func TestProfileRises(t *testing.T) {
	p := load(t, "hall")
	for _, use := range []string{"Thicknesser", "Table saw", "Drum sander"} {
		r := named(t, p, use)
		port := r.Ports[0].Port
		root := parse(t, drawing.Profile(p, r, port, "p"))
		_, y := axes(t, root)
		var dots []float64
		root.each(func(n *node) {
			if n.name == "circle" && number(t, n.attr["cy"]) < y(0)+10 { // what stands lower is the key
				dots = append(dots, number(t, n.attr["cy"]))
			}
		})
		var want []float64
		want = append(want, 0)
		for _, s := range port.Path() {
			for _, v := range r.Stretches {
				if v.Stretch == s {
					want = append(want, y(unit.Press.In(unit.US, -v.End)))
				}
			}
		}
		want = append(want, y(unit.Press.In(unit.US, r.Static)))
		if fmt.Sprint(len(dots)) != fmt.Sprint(len(want)) {
			t.Fatalf("%s: %d dots, not %d", use, len(dots), len(want))
		}
		for i := range want {
			if math.Abs(dots[i]-want[i]) > 0.3 {
				t.Errorf("%s: dot %d at %g, not %g", use, i, dots[i], want[i])
			}
		}
	}
}

// TestProfileWithoutFigures checks what a run says that has none.
func TestProfileWithoutFigures(t *testing.T) {
	p := load(t, "words")
	idle := p.Shop.Machines[4].Ports[0]
	svg := string(drawing.Profile(p, p.Air.Uses[0].Results[0], idle, "p"))
	if !strings.Contains(svg, "No duct serves Drill press/hood.") {
		t.Error(svg)
	}
	h := load(t, "hall")
	svg = string(drawing.Profile(h, named(t, h, "Drum sander"), h.Shop.Machines[0].Ports[0], "p"))
	if !strings.Contains(svg, "The use does not run West cyclone.") {
		t.Error(svg)
	}
}
