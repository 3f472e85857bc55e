package duct

import (
	"math"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// A small tree put together by hand from the method: hood, hose, size
// changes, friction, elbows, extra loss and entry, each on the velocity
// pressure of its own bore.
const twig = `
[shop]
name = "Twig"
air = { density = "1.2 kg/m3", viscosity = "1.8e-5 Pa s" }
[method]
size_changes = "abrupt"
[[collector]]
name = "Fan"
inlet = "250 mm"
claims = { flow = "1 m3/s", suction = "3000 Pa" }
[[machine]]
name = "Hosed"
kind = "other"
port = { size = "80 mm", flow = "1 m3/h", hood_loss = 0.9 }
[[machine]]
name = "Plain"
kind = "other"
port = { size = "120 mm", flow = "1 m3/h", hood_loss = 1.1 }
[[duct]]
name = "Main"
to = "Fan"
size = "200 mm"
length = "6 m"
roughness = "0.15 mm"
loss = 0.4
serves = ["Plain"]
[[duct]]
name = "Branch"
to = "Main"
joins = "2 m"
entry = "30 deg"
size = "150 mm"
length = "3 m"
roughness = "0.2 mm"
elbows = "mitred"
fittings = ["elbow 90", "elbow 45"]
hose = { size = "100 mm", length = "2 m", material = "smooth-bore hose", stretched = false }
serves = ["Hosed"]
`

// dyn is the velocity pressure of 1.2 kg/m³ at 1 m³/s.
func dyn(size float64) float64 {
	area := math.Pi * size * size / 4
	return 1.2 / 2 / (area * area)
}

// wider is the loss of Borda and Carnot on the smaller end's velocity pressure.
func wider(small, large float64) float64 {
	lost := 1 - small*small/(large*large)
	return lost * lost
}

func TestTreeByHand(t *testing.T) {
	s := mustRead(t, twig)
	tree := Grow(s, s.Collectors[0], StateOf(s))
	net := tree.Set(&Use{})
	var hoseRough, elbow float64
	for _, h := range shop.Hoses() {
		if h.Name == "smooth-bore hose" {
			hoseRough = float64(h.Roughness)
		}
	}
	for _, e := range shop.Elbows() {
		if e.Name == "mitred" {
			elbow = e.K90
		}
	}
	entry := air.Entry(30)
	want := map[string]Edge{
		"hose":   {Quad: 0.9*dyn(0.08) + wider(0.08, 0.1)*dyn(0.08) + wider(0.1, 0.15)*dyn(0.1), Fric: 4 * 2 / 0.1 * dyn(0.1), Re: reynolds(0.1), Rel: hoseRough / 0.1, Leaf: true},
		"branch": {Quad: (1.5*elbow+entry)*dyn(0.15) + wider(0.15, 0.2)*dyn(0.15), Fric: 3 / 0.15 * dyn(0.15), Re: reynolds(0.15), Rel: 0.0002 / 0.15},
		"end":    {Quad: 1.1*dyn(0.12) + wider(0.12, 0.2)*dyn(0.12), Leaf: true},
		"main 1": {Fric: 2 / 0.2 * dyn(0.2), Re: reynolds(0.2), Rel: 0.00015 / 0.2},
		"main 2": {Quad: 0.4*dyn(0.2) + wider(0.2, 0.25)*dyn(0.2), Fric: 4 / 0.2 * dyn(0.2), Re: reynolds(0.2), Rel: 0.00015 / 0.2},
	}
	main, branch := s.Ducts[0], s.Ducts[1]
	at := map[string]int{"hose": tree.byEnd[branch], "branch": tree.byEdge[branch.Stretches[0]], "end": tree.byEnd[main], "main 1": tree.byEdge[main.Stretches[0]], "main 2": tree.byEdge[main.Stretches[1]]}
	below := map[string]string{"hose": "branch", "branch": "main 2", "end": "main 1", "main 1": "main 2"}
	if len(net.Edges) != len(want) {
		t.Fatalf("%d edges, want %d", len(net.Edges), len(want))
	}
	for name, w := range want {
		got := net.Edges[at[name]]
		down := -1
		if next := below[name]; next != "" {
			down = at[next]
		}
		if !near(got.Quad, w.Quad, 1e-9) || !near(got.Fric, w.Fric, 1e-9) || !near(got.Re, w.Re, 1e-9) || !near(got.Rel, w.Rel, 1e-9) || got.Leaf != w.Leaf || got.Down != down || got.Dead || got.Wye != nil {
			t.Errorf("%s is %+v, want %+v down %d", name, got, w, down)
		}
	}
}

func reynolds(size float64) float64 { return 4 / (math.Pi * size * 1.8e-5 / 1.2) }

// With the flow split the branch's entry and widening make way for the wye's
// formulas, on the combined velocity pressure; the run gets its share.
func TestSplitByHand(t *testing.T) {
	const split = "[method]\njunctions = \"flow split\"\nsize_changes = \"abrupt\"\n"
	s := mustRead(t, replaced(t, twig, "[method]\nsize_changes = \"abrupt\"\n", split))
	tree := Grow(s, s.Collectors[0], StateOf(s))
	net := tree.Set(&Use{})
	main, branch := s.Ducts[0], s.Ducts[1]
	b, run := net.Edges[tree.byEdge[branch.Stretches[0]]], net.Edges[tree.byEdge[main.Stretches[0]]]
	mitred := 1.2
	if want := 1.5 * mitred * dyn(0.15); !near(b.Quad, want, 1e-9) {
		t.Errorf("the branch keeps %g, want its elbows' %g", b.Quad, want)
	}
	wye, ok := air.Converging(30, unit.Length(0.2), unit.Length(0.15), unit.Length(0.2))
	if !ok || b.Wye == nil || run.Wye == nil || !b.Wye.Branch || run.Wye.Branch || b.Wye.Wye != wye || run.Wye.Wye != wye || !near(b.Wye.Dynamic, dyn(0.2), 1e-9) {
		t.Fatalf("branch %+v, run %+v", b.Wye, run.Wye)
	}
	if len(tree.Fallbacks) != 0 {
		t.Errorf("charged by angle: %v", tree.Fallbacks)
	}
	for _, share := range []float64{0.05, 0.3, 0.405, 0.6, 0.95} {
		at, _ := wye.Loss(share)
		lossB, _, _ := b.Wye.loss(share*0.5, 0.5)
		lossR, _, _ := run.Wye.loss((1-share)*0.5, 0.5)
		if !near(lossB, at.Branch*dyn(0.2)*0.25, 1e-9) || math.Abs(lossR-at.Run*dyn(0.2)*0.25) > 1e-9*dyn(0.2) {
			t.Errorf("share %g: %g and %g Pa, want %g and %g", share, lossB, lossR, at.Branch*dyn(0.2)*0.25, at.Run*dyn(0.2)*0.25)
		}
	}
	for _, w := range []*Split{b.Wye, run.Wye} {
		checkSlopes(t, w)
	}
}

// checkSlopes holds the slopes of a junction's loss against differences.
func checkSlopes(t *testing.T, w *Split) {
	t.Helper()
	const h = 1e-6
	for _, q := range [][2]float64{{0.02, 0.3}, {0.1, 0.3}, {0.2, 0.3}, {0.28, 0.3}} {
		_, byOwn, byAll := w.loss(q[0], q[1])
		up, _, _ := w.loss(q[0]+h, q[1])
		down, _, _ := w.loss(q[0]-h, q[1])
		more, _, _ := w.loss(q[0], q[1]+h)
		less, _, _ := w.loss(q[0], q[1]-h)
		scale := 1e-5 * w.Dynamic
		if math.Abs(byOwn-(up-down)/(2*h)) > scale || math.Abs(byAll-(more-less)/(2*h)) > scale {
			t.Errorf("branch %v at %v: slopes %g and %g, differences say %g and %g", w.Branch, q, byOwn, byAll, (up-down)/(2*h), (more-less)/(2*h))
		}
	}
}

// Junctions that the formulas do not cover are charged by angle and told.
func TestFallbacks(t *testing.T) {
	const split = "[method]\njunctions = \"flow split\"\nsize_changes = \"abrupt\"\n"
	file := replaced(t, twig, "[method]\nsize_changes = \"abrupt\"\n", split)
	third := "[[machine]]\nname = \"Third\"\nkind = \"other\"\nport = { size = \"80 mm\", flow = \"1 m3/h\" }\n[[duct]]\nname = \"Other\"\nto = \"Main\"\nsize = \"100 mm\"\nlength = \"1 m\"\nserves = [\"Third\"]\nentry = \"45 deg\"\n"
	tests := []struct {
		name, file string
		want       []string
	}{
		{"as it is", file, nil},
		{"too flat", replaced(t, file, "30 deg", "20 deg"), []string{"Branch"}},
		{"wider than the trunk", replaced(t, file, `size = "150 mm"`, `size = "220 mm"`), []string{"Branch"}},
		{"at the trunk's far end", replaced(t, file, `joins = "2 m"`, `joins = "0 m"`), []string{"Branch"}},
		{"two at one place", file + third + "joins = \"2 m\"\n", []string{"Branch", "Other"}},
		{"two apart", file + third + "joins = \"4 m\"\n", nil},
		{"with a hole there", file + "[[leak]]\non = \"Main\"\nhole = \"5 mm\"\nat = \"2 m\"\n", []string{"Branch"}},
	}
	for _, test := range tests {
		s := mustRead(t, test.file)
		tree := Grow(s, s.Collectors[0], StateOf(s))
		var got []string
		for _, d := range tree.Fallbacks {
			got = append(got, d.Name)
		}
		wyes := 0
		for _, p := range tree.parts {
			if p.edge.Wye != nil {
				wyes++
			}
		}
		joins := 1
		if len(s.Ducts) == 3 {
			joins = 2
		}
		if len(got) != len(test.want) || len(got) > 0 && got[0] != test.want[0] || wyes != 2*(joins-len(got)) {
			t.Errorf("%s: by angle %v with %d halves of wyes, want %v", test.name, got, wyes, test.want)
		}
	}
}
