package duct

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"dustbook/plan/shop"
)

// Tolerance of the two laws: what is beyond it is no rounding.
const lawful = 1e-9

// meet solves a tree with some gates open and returns the flow of every port.
func meet(t testing.TB, tree *Tree, open map[*shop.Gate]bool) (total float64, ports map[*shop.Port]float64) {
	t.Helper()
	net := tree.Set(&Use{Open: open})
	fan := NewFan(tree.Collector, tree.State, States(tree.Collector)[0])
	ports = map[*shop.Port]float64{}
	if !net.Live() {
		return 0, ports
	}
	_, high := fan.Range()
	solver := NewSolver(net)
	total, suction, ok := solver.Meet(fan, high/2)
	if !ok {
		t.Fatalf("did not settle: %d edges", len(net.Edges))
	}
	if offer, _ := fan.Suction(total); !near(suction, offer, 1e-9) {
		t.Fatalf("the tree asks for %.12g Pa at the inlet, the fan offers %.12g", suction, offer)
	}
	balanced(t, net, solver, total)
	for d, at := range tree.byEnd {
		ports[d.Serves[0]] = solver.Flow[at]
	}
	return total, ports
}

// The two laws of a falling curve with junctions by angle, from the theory of
// flow networks whose losses grow with their own flow alone: an opening never
// raises another port's flow, a smaller loss never lowers the whole.
func TestOpeningNeverRaisesAnother(t *testing.T) {
	opened := 0
	for seed := range often() {
		d := newDrawing(seed, 1+int(seed)%14)
		s := d.shop(t)
		tree := Grow(s, s.Collectors[0], StateOf(s))
		open := d.opened(s)
		before, had := meet(t, tree, open)
		for _, g := range s.Gates {
			if open[g] {
				continue
			}
			opened++
			more := maps.Clone(open)
			more[g] = true
			after, has := meet(t, tree, more)
			if after < before*(1-lawful) {
				t.Errorf("seed %d: opening %s lowers the whole from %.12g to %.12g", seed, g.Name, before, after)
			}
			for _, p := range portsOf(s) {
				if behind(p, g) {
					continue
				}
				if has[p] > had[p]*(1+lawful)+lawful*before {
					t.Errorf("seed %d: opening %s raises %s from %.12g to %.12g", seed, g.Name, p.Full(), had[p], has[p])
				}
			}
		}
	}
	if opened < int(often()) {
		t.Errorf("opened %d gates only", opened)
	}
}

// portsOf are all ports of a shop.
func portsOf(s *shop.Shop) []*shop.Port {
	var list []*shop.Port
	for _, m := range s.Machines {
		list = append(list, m.Ports...)
	}
	return list
}

// behind reports whether a port draws through a gate.
func behind(p *shop.Port, g *shop.Gate) bool {
	return slices.ContainsFunc(p.Path(), func(s *shop.Stretch) bool { return slices.Contains(s.Gates, g) })
}

func TestHalvingALossNeverLowersTheWhole(t *testing.T) {
	halved := 0
	for seed := range often() {
		d := newDrawing(1000+seed, 1+int(seed)%14)
		s := d.shop(t)
		open := d.opened(s)
		whole := func() float64 {
			total, _ := meet(t, Grow(s, s.Collectors[0], StateOf(s)), open)
			return total
		}
		before := whole()
		try := func(what string, halve, restore func()) {
			halve()
			halved++
			if after := whole(); after < before*(1-lawful) {
				t.Errorf("seed %d: half of %s lowers the whole from %.12g to %.12g", seed, what, before, after)
			}
			restore()
		}
		for _, duct := range s.Ducts {
			if loss := duct.Loss; loss > 0 {
				try("the loss of "+duct.Name, func() { duct.Loss = loss / 2 }, func() { duct.Loss = loss })
			}
			if h := duct.Hose; h != nil {
				length := h.Length
				try("the hose of "+duct.Name, func() { h.Length = length / 2 }, func() { h.Length = length })
			}
		}
		for _, p := range portsOf(s) {
			if loss := p.HoodLoss; loss > 0 {
				try("the hood of "+p.Full(), func() { p.HoodLoss = loss / 2 }, func() { p.HoodLoss = loss })
			}
		}
	}
	if halved < 3*int(often()) {
		t.Errorf("halved %d losses only", halved)
	}
}

// The far side: with a rising curve the laws do not hold, so the tests above
// can tell. Here an opening takes the fan to a higher pressure and gives the
// other port more.
func TestRisingCurveBreaksTheLaw(t *testing.T) {
	text := `
[shop]
name = "Rising"
[method]
junctions = "none"
size_changes = "none"
[[collector]]
name = "Fan"
inlet = "200 mm"
fan_curve = [["0 m3/s", "100 Pa"], ["0.4 m3/s", "3000 Pa"], ["0.5 m3/s", "0 Pa"]]
[[duct]]
name = "Trunk"
to = "Fan"
size = "300 mm"
length = "1 m"
`
	for _, name := range []string{"A", "B"} {
		text += fmt.Sprintf(`
[[machine]]
name = "M%[1]s"
kind = "other"
port = { size = "100 mm", flow = "1 m3/h" }
[[duct]]
name = "Pipe %[1]s"
to = "Trunk"
size = "100 mm"
length = "1 m"
loss = 12
serves = ["M%[1]s"]
[[gate]]
name = "G%[1]s"
on = "Pipe %[1]s"
leak = "none"
`, name)
	}
	k := Reckon(mustRead(t, text+"[[use]]\nname = \"Both\"\nmachines = [\"MA\", \"MB\"]\n"))
	alone, both := theResult(t, k, "MA", NoFilter), theResult(t, k, "Both", NoFilter)
	if !alone.OnCurve || !both.OnCurve || both.Ports[0].Flow <= alone.Ports[0].Flow {
		t.Errorf("alone %g m³/s, with another open %g: want more", alone.Ports[0].Flow, both.Ports[0].Flow)
	}
}
