package duct

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/source"
)

// Trees at the edge of what a shop file can say. Each must settle, balance
// and meet the fan, on a falling curve and on one with a hill.

// chain is a file of many ducts one behind the other, every tenth with a port
// of its own.
func chain(count int, more string) string {
	var b strings.Builder
	b.WriteString("[shop]\nname = \"Chain\"\n[[collector]]\nname = \"Fan\"\ninlet = \"200 mm\"\nfan_curve = [CURVE]\n")
	to := "Fan"
	for i := range count {
		fmt.Fprintf(&b, "[[duct]]\nname = \"D%d\"\nto = %q\nsize = \"200 mm\"\nlength = \"1 m\"\n", i, to)
		if i == count-1 || i%10 == 9 {
			fmt.Fprintf(&b, "serves = [\"M%d\"]\n[[machine]]\nname = \"M%d\"\nkind = \"other\"\nport = { size = \"100 mm\", flow = \"1 m3/h\" }\n", i, i)
		}
		to = fmt.Sprintf("D%d", i)
	}
	return b.String() + more
}

// one is a file of a single duct with a port.
func one(duct, port string) string {
	return "[shop]\nname = \"One\"\nair = { density = \"1.2014 kg/m3\", viscosity = \"1.8e-5 Pa s\" }\n[[collector]]\nname = \"Fan\"\ninlet = \"200 mm\"\nfan_curve = [CURVE]\n" +
		"[[machine]]\nname = \"M\"\nkind = \"other\"\nport = { flow = \"1 m3/h\", " + port + " }\n" +
		"[[duct]]\nname = \"D\"\nto = \"Fan\"\nserves = [\"M\"]\n" + duct
}

const bare = "[method]\njunctions = \"none\"\nsize_changes = \"none\"\n"

func TestExtremeTrees(t *testing.T) {
	const (
		usual = `["0 m3/s", "2500 Pa"], ["0.3 m3/s", "2000 Pa"], ["0.8 m3/s", "0 Pa"]`
		hill  = `["0 m3/s", "2000 Pa"], ["0.3 m3/s", "2500 Pa"], ["0.8 m3/s", "0 Pa"]`
		tiny  = `["0 m3/s", "2 Pa"], ["1e-6 m3/s", "1 Pa"], ["0.0005 m3/s", "0 Pa"]`
	)
	wide := "size = \"200 mm\"\nlength = \"2 m\"\n"
	trees := []struct{ name, curve, file string }{
		{"one duct", usual, one(wide, `size = "100 mm"`)},
		{"one duct of no loss at all", usual, bare + one("size = \"200 mm\"\nlength = \"0 m\"\n", `size = "200 mm", hood_loss = 0`)},
		{"hundredth of a millimetre of duct", usual, bare + one("size = \"3 m\"\nlength = \"0.01 mm\"\n", `size = "1 m", hood_loss = 0`)},
		{"hardly any flow", tiny, one(wide, `size = "100 mm"`)},
		{"hardly any flow through a hair", tiny, one("size = \"10 mm\"\nlength = \"500 m\"\n", `size = "10 mm"`)},
		{"tiny hose", usual, one(wide+"hose = { size = \"10 mm\", length = \"50 m\", stretched = false }\n", `size = "10 mm"`)},
		{"greatest loss", usual, one(wide+"loss = 1e6\n", `size = "10 mm", hood_loss = 50`)},
		{"holes alone", usual, one(wide, `size = "100 mm"`) + "[[gate]]\nname = \"G\"\non = \"D\"\nleak = \"none\"\n[[leak]]\non = \"D\"\nhole = \"1 mm\"\n[[leak]]\non = \"D\"\nhole = \"0.1 mm\"\nat = \"2 m\"\n"},
		{"a hole as wide as the room", usual, one(wide, `size = "10 mm"`) + "[[leak]]\non = \"D\"\nhole = \"1 m\"\nat = \"0 m\"\n"},
		{"shut gates in a row", usual, one(wide, `size = "100 mm"`) + "[[gate]]\nname = \"G\"\non = \"D\"\nleak = 1e-4\n[[gate]]\nname = \"H\"\non = \"D\"\nat = \"1 m\"\nleak = 1e-4\n"},
		{"deep", usual, chain(500, "")},
		{"deep and shut at its end", usual, chain(500, "[[gate]]\nname = \"G\"\non = \"D499\"\nleak = 1e-4\n")},
		{"deep with holes", usual, chain(120, "[[leak]]\non = \"D7\"\nhole = \"20 mm\"\n[[leak]]\non = \"D90\"\nhole = \"1 mm\"\nat = \"0.5 m\"\n")},
		{"deep with the flow split", usual, "[method]\njunctions = \"flow split\"\n" + chain(60, "")},
	}
	for _, tree := range trees {
		for _, curve := range []string{tree.curve, hill} {
			t.Run(tree.name, func(t *testing.T) {
				s := mustRead(t, strings.Replace(tree.file, "CURVE", curve, 1))
				grown := Grow(s, s.Collectors[0], StateOf(s))
				net := grown.Set(&Use{})
				fan := NewFan(grown.Collector, grown.State, NoFilter)
				solver := NewSolver(net)
				found, ok := solver.Crossings(fan)
				if !ok {
					t.Fatal("did not settle")
				}
				for _, c := range found {
					demand, ok := solver.At(c.Flow)
					if offer, _ := fan.Suction(c.Flow); !ok || math.Abs(demand-offer) > 1e-7*offer+1e-9 {
						t.Errorf("at %g m³/s the ducts ask for %g Pa, the fan offers %g; settled: %v", c.Flow, demand, offer, ok)
					}
					balanced(t, net, solver, c.Flow)
				}
				_, high := fan.Range()
				if demand, _ := solver.At(high); len(found) == 0 && demand > 0 {
					t.Errorf("no crossing, though the ducts ask for %g Pa at the curve's end", demand)
				}
				for _, u := range Uses(s) {
					if u.Kind != AllShut && u.Kind != AllOpen && u.Kind != DuctOff {
						continue
					}
					if r := grown.Solve(u, NoFilter); !r.OnCurve && r.Why != pastEnd {
						t.Errorf("%s: %s", u.Name, r.Why)
					}
				}
			})
		}
	}
}

// Nothing can flow: the fan runs at the left end of its curve.
func TestNothingFlows(t *testing.T) {
	file := one("size = \"200 mm\"\nlength = \"2 m\"\n", `size = "100 mm"`) + "[[gate]]\nname = \"G\"\non = \"D\"\nleak = \"none\"\n"
	s := mustRead(t, strings.Replace(file, "CURVE", `["0 m3/s", "2500 Pa"], ["0.8 m3/s", "0 Pa"]`, 1))
	r := theResult(t, Reckon(s), "Everything shut", NoFilter)
	if !r.OnCurve || r.Flow != 0 || r.Static != 2500 || r.Inlet != 2500 || r.Stretches[0].Flow != 0 {
		t.Errorf("got %+v, want no flow at 2500 Pa", r)
	}
	s = mustRead(t, strings.Replace(file, "CURVE", `["0.1 m3/s", "2500 Pa"], ["0.8 m3/s", "0 Pa"]`, 1))
	r = theResult(t, Reckon(s), "Everything shut", NoFilter)
	if r.OnCurve || r.Why != noWay {
		t.Errorf("got %+v, want it off the curve", r)
	}
}

// A size that is still to be chosen leaves its collector's tree unreckoned,
// and no other.
func TestSizeToBeChosen(t *testing.T) {
	k := Reckon(mustRead(t, replaced(t, yard, `size = "140 mm"`, `size = "choose"`)))
	for _, u := range k.Uses {
		for _, r := range u.Results {
			switch {
			case r.Collector == nil:
			case u.Kind == DuctOff || r.Collector.Name == "Small fan":
				if !r.OnCurve {
					t.Errorf("%s on %s: %s", u.Name, r.Collector.Name, r.Why)
				}
			case r.OnCurve || r.Captured || r.Carried || r.Why != source.Because("size-open", "Planer drop"):
				t.Errorf("%s on %s: on the curve %v: %q", u.Name, r.Collector.Name, r.OnCurve, r.Why)
			}
		}
	}
	if p, slope := NewCubic([]float64{0, 1, 2}, []float64{3, 2, 0}).At(math.NaN()); !math.IsNaN(p) || math.IsNaN(slope) {
		t.Errorf("at no number the curve is %g with slope %g", p, slope)
	}
}

// A shop without ducts, or without anything, is reckoned as well.
func TestNearlyEmptyShops(t *testing.T) {
	if k := Reckon(mustRead(t, "[shop]\nname = \"Empty\"\n")); len(k.Uses) != 3 || len(k.Trees) != 0 || len(k.Uses[0].Results) != 0 {
		t.Errorf("an empty shop: %+v", k)
	}
	k := Reckon(mustRead(t, "[shop]\nname = \"Fan\"\nair = { density = \"1.2014 kg/m3\", viscosity = \"1.8e-5 Pa s\" }\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"1 m3/s\", suction = \"2000 Pa\" }\n"))
	shut, off := theResult(t, k, "Everything shut", NoFilter), theResult(t, k, "Duct off", NoFilter)
	if !shut.OnCurve || shut.Flow != 0 || shut.Static != 2000 || !off.OnCurve || off.Flow != 1 || off.Static != 0 {
		t.Errorf("a fan alone: shut %+v, off %+v", shut, off)
	}
}
