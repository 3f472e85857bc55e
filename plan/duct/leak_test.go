package duct

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// lone is one duct of no loss, 5 m long and 100 mm wide, at standard air, so
// that the whole suction stands on what leaks.
func lone(gate string) string {
	return rig("", `fan_curve = [["0 m3/s", "2000 Pa"], ["0.5 m3/s", "1600 Pa"], ["1 m3/s", "0 Pa"]]`,
		"size = \"100 mm\"\nlength = \"5 m\"\nroughness = \"0 mm\"\n[[gate]]\nname = \"Gate\"\non = \"Pipe\"\nat = \"3 m\"\n"+gate)
}

func shut(t *testing.T, file string) *Result {
	t.Helper()
	return theResult(t, Reckon(mustRead(t, file)), "Everything shut", NoFilter)
}

// What a shut gate lets through: a share s of its bore passes s·A·√(2Δp/ρ); a
// flow given at a pressure grows with the pressure's root.
func TestGateLeaks(t *testing.T) {
	bore := math.Pi * 0.1 * 0.1 / 4
	rho := float64(air.Standard().Density)
	tests := []struct {
		name, gate string
		want       func(p float64) float64
	}{
		{"none", `leak = "none"`, func(float64) float64 { return 0 }},
		{"share", `leak = 0.02`, func(p float64) float64 { return 0.02 * bore * math.Sqrt(2*p/rho) }},
		{"left out", ``, func(p float64) float64 { return 0.0155 * bore * math.Sqrt(2*p/rho) }},
		{"flow at a pressure", `leak = "10 m3/h at 500 Pa"`, func(p float64) float64 { return 10.0 / 3600 * math.Sqrt(p/500) }},
	}
	for _, test := range tests {
		r := shut(t, lone(test.gate))
		// friction in the five metres is of the order of a pascal
		want := test.want(float64(r.Inlet))
		if math.Abs(float64(r.Flow)-want) > 0.001*want {
			t.Errorf("%s: %.6g m³/s pass at %g Pa, want %.6g", test.name, r.Flow, r.Inlet, want)
		}
		if r.Stretches[0].Flow != r.Flow {
			t.Errorf("%s: the duct carries %g of %g m³/s", test.name, r.Stretches[0].Flow, r.Flow)
		}
	}
	// all of it: a share of one is an open gate with one velocity pressure more
	open, all := theResult(t, Reckon(mustRead(t, lone(`leak = 1`))), "Everything open", NoFilter), shut(t, lone(`leak = 1`))
	if all.Flow >= open.Flow || float64(all.Flow) < 0.5*float64(open.Flow) {
		t.Errorf("a shut gate with a share of one passes %g, an open one %g m³/s", all.Flow, open.Flow)
	}
}

// A leak given at standard air is the same hole in thin air: it passes more,
// by the root of the density ratio, at the same pressure.
func TestGateLeakInThinAir(t *testing.T) {
	thin := strings.Replace(lone(`leak = "10 m3/h at 500 Pa"`), "[method]", "altitude = \"2000 m\"\n[method]", 1)
	s := mustRead(t, thin)
	r := shut(t, thin)
	want := 10.0 / 3600 * math.Sqrt(float64(r.Inlet)/500/StateOf(s).Ratio())
	if !near(float64(r.Flow), want, 1e-3) {
		t.Errorf("%.6g m³/s pass, want %.6g", r.Flow, want)
	}
}

// Several gates on one duct add up their losses.
func TestTwoGates(t *testing.T) {
	one := shut(t, lone("leak = 0.02"))
	two := shut(t, lone("leak = 0.02\n[[gate]]\nname = \"Second\"\non = \"Pipe\"\nleak = 0.02\n"))
	if got := float64(two.Flow) / float64(one.Flow); !near(got, 1/math.Sqrt2, 1e-3) {
		t.Errorf("a second gate leaves %.6g of the leakage, want 1/√2", got)
	}
}

// A hole draws Cd·A·√(2Δp/ρ). Left without a place it sits at the duct's
// downstream end, behind any gate; upstream of a tight shut gate it draws
// nothing.
func TestHoles(t *testing.T) {
	const hole = "\n[[leak]]\non = \"Pipe\"\nhole = \"20 mm\"\n"
	const tight = `leak = "none"`
	area := math.Pi * 0.02 * 0.02 / 4
	rho := float64(air.Standard().Density)
	tests := []struct {
		name, place string
		node        int
		draws       bool
	}{
		{"downstream end", "", 1, true},
		{"behind the gate", `at = "4 m"`, 1, true},
		{"before the gate", `at = "2 m"`, 1, false},
		{"upstream end", `at = "0 m"`, 0, false},
		{"downstream end, said", `at = "5 m"`, 1, true},
	}
	for _, test := range tests {
		s := mustRead(t, strings.Replace(lone(tight+hole+test.place), "hood_loss = 0", "hood_loss = 1", 1))
		if got := s.Leaks[0].Node; got != test.node {
			t.Errorf("%s: at node %d, want %d", test.name, got, test.node)
		}
		r := theResult(t, Reckon(s), "Everything shut", NoFilter)
		if len(r.Leaks) != 1 {
			t.Fatalf("%s: leaks %+v", test.name, r.Leaks)
		}
		want := 0.0
		if test.draws {
			want = air.Discharge() * area * math.Sqrt(2*float64(r.Inlet)/rho)
		}
		if math.Abs(float64(r.Leaks[0].Flow)-want) > 1e-3*want || r.Flow != r.Leaks[0].Flow {
			t.Errorf("%s: draws %.6g of %.6g m³/s, want %.6g", test.name, r.Leaks[0].Flow, r.Flow, want)
		}
		open := theResult(t, Reckon(s), "Saw", NoFilter)
		if open.Leaks[0].Flow <= 0 || open.Ports[0].Flow+open.Leaks[0].Flow != open.Flow {
			t.Errorf("%s, gate open: port %g and hole %g of %g m³/s", test.name, open.Ports[0].Flow, open.Leaks[0].Flow, open.Flow)
		}
	}
	if air.Discharge() != 0.65 { // a large sharp opening, open building-airflow library
		t.Errorf("discharge coefficient %g", air.Discharge())
	}
}

// A hole in a duct that joins another belongs to the joining duct's end: it
// draws, and what it draws shows in the other duct.
func TestHoleAtAJoin(t *testing.T) {
	file := strings.Replace(yard, `serves = ["Press"]`, `serves = ["Press"]`+"\n[[leak]]\non = \"Planer drop\"\nhole = \"20 mm\"\n", 1)
	r := shutCyclone(t, file)
	before, behind := at(t, r, "Main", 1), at(t, r, "Main", 2)
	drop := at(t, r, "Planer drop", 1)
	if got := behind.Flow - before.Flow - drop.Flow; math.Abs(float64(got-r.Leaks[0].Flow)) > 1e-12 || r.Leaks[0].Flow <= 0 {
		t.Errorf("at the join %g m³/s are added, the hole draws %g", got, r.Leaks[0].Flow)
	}
	tidy := shutCyclone(t, yard)
	if v := at(t, tidy, "Main", 2); v.Flow >= behind.Flow {
		t.Errorf("the hole makes the main carry %g instead of %g m³/s", behind.Flow, v.Flow)
	}
}

func shutCyclone(t *testing.T, file string) *Result {
	t.Helper()
	return theResult(t, Reckon(mustRead(t, file)), "Everything shut", Clean)
}

// Places written as whole feet or metres and the same places read off a route
// are one: a duct is cut once there, and a gate at the place of a join shuts
// what comes before it, not what joins.
func TestPlacesAreOne(t *testing.T) {
	checked := 0
	for _, units := range []struct{ word, unit string }{{"us", "ft"}, {"metric", "m"}} {
		for n := 6; n < 39; n++ {
			for _, run := range [][2]string{
				{"[[0, 0, 9], [40, 0, 9]]", fmt.Sprintf("[%d, 5, 9], [%d, 0, 9]", n, n)},
				{"[[40, 7, 9], [0, 7, 9]]", fmt.Sprintf("[%d, 5, 9], [%d, 7, 9]", 40-n, 40-n)},
				{"[[0, 0, 9], [3, 4, 9], [3, 44, 9]]", fmt.Sprintf("[9, %d, 9], [3, %d, 9]", n-1, n-1)},
			} {
				checked++
				s := mustRead(t, fmt.Sprintf(`
[shop]
name = "Places"
units = %[1]q
[[collector]]
name = "Fan"
inlet = "6 in"
claims = { flow = "1500 cfm", suction = "10 inwg" }
[[machine]]
name = "Far"
kind = "planer"
[[machine]]
name = "Near"
kind = "planer"
[[duct]]
name = "Main"
to = "Fan"
size = "6 in"
route = %[2]s
serves = ["Far"]
[[duct]]
name = "Drop"
to = "Main"
size = "4 in"
route = [%[3]s]
serves = ["Near"]
[[gate]]
name = "Zone"
on = "Main"
at = "%[4]d %[5]s"
[[leak]]
on = "Main"
hole = "1 in"
at = "%[4]d %[5]s"
`, units.word, run[0], run[1], n, units.unit))
				main, drop := s.Ducts[0], s.Ducts[1]
				if len(main.Stretches) != 2 || s.Gates[0].Stretch.Number != 1 || drop.JoinNode != 1 || s.Leaks[0].Node != 1 {
					t.Errorf("%d %s on %s: %d stretches, the gate on %d, the drop at node %d, the hole at node %d", n, units.unit, run[0], len(main.Stretches), s.Gates[0].Stretch.Number, drop.JoinNode, s.Leaks[0].Node)
				}
				for _, u := range Uses(s) {
					if u.Name == "Near" && u.Open[s.Gates[0]] {
						t.Errorf("%d %s on %s: the near machine opens the zone gate", n, units.unit, run[0])
					}
				}
			}
		}
	}
	if checked != 2*33*3 {
		t.Errorf("checked %d places", checked)
	}
}

// A duct is cut where others join it and where a hole is, and the pieces are
// numbered the way the air goes, whatever the order of the file.
func TestStretchesInFlowOrder(t *testing.T) {
	s := mustRead(t, yard)
	var cuts []string
	for _, d := range s.Ducts[:2] {
		for _, piece := range d.Stretches {
			cuts = append(cuts, fmt.Sprintf("%s %g-%g", piece.Name(), unit.Six(float64(piece.From)), unit.Six(float64(piece.To))))
		}
	}
	if got, want := strings.Join(cuts, ", "), "Main 1 0-2, Main 2 2-6, Main 3 6-9, Main 4 9-12, Saw drop 1 0-2, Saw drop 2 2-4"; got != want {
		t.Errorf("cut into %s; want %s", got, want)
	}
	r := theResult(t, Reckon(s), "Everything open", Clean)
	for n := 2; n <= 4; n++ {
		before, behind := at(t, r, "Main", n-1), at(t, r, "Main", n)
		if behind.Flow <= before.Flow || behind.Start >= before.Start {
			t.Errorf("Main %d carries %g m³/s at %g Pa, Main %d %g at %g", n-1, before.Flow, before.Start, n, behind.Flow, behind.Start)
		}
	}
	last := len(r.Stretches) - 1
	if r.Stretches[0].Stretch.Name() != "Main 1" || r.Stretches[last].Stretch.Name() != "Dead end" {
		t.Errorf("from %s to %s; want the file's order", r.Stretches[0].Stretch.Name(), r.Stretches[last].Stretch.Name())
	}
}
