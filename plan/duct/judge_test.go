package duct

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// Transport velocities: 20 m/s in a machine's own duct (TRGS 553, annex 2);
// 3500, 4500 and 5500 fpm for mains, risers and chips, wet wood are common
// practice, no source.
var (
	ownDuct = 20.0
	main    = 3500 * 0.00508
	chips   = 4500 * 0.00508 // and rising mains
	wet     = 5500 * 0.00508
)

// mill is a main with a riser between two drops, and what machines stand on
// them.
func mill(about, first, second string) string {
	return fmt.Sprintf(`
[shop]
name = "Mill"
units = "metric"
%s
[[collector]]
name = "Fan"
inlet = "160 mm"
claims = { flow = "1 m3/s", suction = "3000 Pa" }
[[machine]]
name = "First"
port = { size = "120 mm", flow = "100 m3/h" }
%s
[[machine]]
name = "Second"
port = { size = "120 mm", flow = "100 m3/h" }
%s
[[duct]]
name = "Main"
to = "Fan"
size = "160 mm"
route = [[0, 0, 2], [5, 0, 2], [5, 0, 4], [9, 0, 4]]
[[duct]]
name = "First drop"
to = "Main"
size = "120 mm"
route = [[0, 3, 0.5], [0, 3, 2], [0, 0, 2]]
serves = ["First"]
[[duct]]
name = "Second drop"
to = "Main"
size = "120 mm"
route = [[2, 3, 0.5], [2, 3, 2], [2, 0, 2]]
serves = ["Second"]
[[duct]]
name = "Third drop"
to = "Main"
size = "120 mm"
route = [[7, 3, 0.5], [7, 3, 4], [7, 0, 4]]
`, about, first, second)
}

func TestTransportByCase(t *testing.T) {
	const dust, planer = `kind = "bandsaw"`, `kind = "planer"`
	tests := []struct {
		name, machine string
		// in its own drop (which rises), in Main 1 (its air alone), Main 2
		// (shared, with a riser), Main 3 (shared, level)
		want [4]float64
		row  [4]string
	}{
		{"dust", dust, [4]float64{ownDuct, ownDuct, chips, main}, [4]string{"own duct", "own duct", "rising main", "main"}},
		{"chips", planer, [4]float64{chips, chips, chips, chips}, [4]string{"chips", "chips", "rising main", "chips"}},
		{"wet chips", planer + "\nmakes = \"wet wood\"", [4]float64{wet, wet, wet, wet}, [4]string{"wet", "wet", "wet", "wet"}},
		{"wet dust", dust + "\nmakes = \"wet wood\"", [4]float64{wet, wet, wet, wet}, [4]string{"wet", "wet", "wet", "wet"}},
		{"given high", dust + "\ntransport = \"31 m/s\"", [4]float64{31, 31, 31, 31}, [4]string{"given", "given", "given", "given"}},
		{"given low", planer + "\ntransport = \"12 m/s\"", [4]float64{12, 12, 12, 12}, [4]string{"given", "given", "given", "given"}},
	}
	for _, test := range tests {
		k := Reckon(mustRead(t, mill("", test.machine, dust)))
		r := theResult(t, k, "First", NoFilter)
		for i, place := range []struct {
			duct   string
			number int
		}{{"First drop", 1}, {"Main", 1}, {"Main", 2}, {"Main", 3}} {
			v := at(t, r, place.duct, place.number)
			if !v.Judged || !near(float64(v.Transport), test.want[i], 1e-5) || v.Case != test.row[i] {
				t.Errorf("%s in %s: %.6g m/s by %q, judged %v; want %.6g by %q", test.name, v.Stretch.Name(), v.Transport, v.Case, v.Judged, test.want[i], test.row[i])
			}
		}
		if v := at(t, r, "Second drop", 1); v.Judged || v.Transport != 0 || !v.Carries {
			t.Errorf("%s: the other machine's drop is judged: %+v", test.name, v)
		}
	}
}

// Of two machines whose dust passes, the greater need counts.
func TestTransportOfTwo(t *testing.T) {
	const both = "[[use]]\nname = \"Both\"\nmachines = [\"First\", \"Second\"]\n"
	for _, order := range [][2]string{{`kind = "bandsaw"`, `kind = "planer"`}, {`kind = "planer"`, `kind = "bandsaw"`}} {
		k := Reckon(mustRead(t, mill("", order[0], order[1])+both))
		if v := at(t, theResult(t, k, "Both", NoFilter), "Main", 3); !near(float64(v.Transport), chips, 1e-5) || v.Case != "chips" {
			t.Errorf("%v: %g m/s by %q in the shared main, want that of chips", order, v.Transport, v.Case)
		}
	}
	k := Reckon(mustRead(t, mill("", "kind = \"bandsaw\"\ntransport = \"18 m/s\"", "kind = \"bandsaw\"\ntransport = \"5 m/s\"")+both))
	if v := at(t, theResult(t, k, "Both", NoFilter), "Main", 3); v.Transport != 18 {
		t.Errorf("of 18 and 5 m/s given %g counts", v.Transport)
	}
}

// In thin air the data are raised by 1/√(density ratio), never lowered, and a
// velocity that the file gives stands.
func TestTransportInThinAir(t *testing.T) {
	for _, test := range []struct {
		about string
		raise func(air.State) float64
	}{
		{`altitude = "2417 m"`, func(s air.State) float64 { return 1 / math.Sqrt(s.Ratio()) }},
		{"altitude = \"0 m\"\nair_temperature = \"-20 C\"", func(air.State) float64 { return 1 }},
	} {
		k := Reckon(mustRead(t, mill(test.about, `kind = "bandsaw"`, "kind = \"bandsaw\"\ntransport = \"18 m/s\"")))
		r := theResult(t, k, "First", NoFilter)
		if v, want := at(t, r, "First drop", 1), ownDuct*test.raise(k.State); !near(float64(v.Transport), want, 1e-5) {
			t.Errorf("%s: %g m/s, want %g", test.about, v.Transport, want)
		}
		if v := at(t, theResult(t, k, "Second", NoFilter), "Second drop", 1); v.Transport != 18 {
			t.Errorf("%s: the velocity given became %g m/s", test.about, v.Transport)
		}
	}
}

// Verdicts from both sides of the limit: the velocity given is the one found,
// then a trifle more.
func TestCarriedAtTheLimit(t *testing.T) {
	file := func(first string) *Result {
		text := strings.Replace(mill("", "kind = \"bandsaw\"\n"+first, `kind = "bandsaw"`), `size = "160 mm"`, `size = "250 mm"`, 1)
		return theResult(t, Reckon(mustRead(t, text)), "First", NoFilter)
	}
	found, own := at(t, file(""), "Main", 1).Velocity, at(t, file(""), "First drop", 1).Velocity
	if found >= own {
		t.Fatalf("the main runs at %g m/s, the drop at %g: want it slower", found, own)
	}
	for _, test := range []struct {
		need float64
		want bool
	}{{float64(found), true}, {float64(found) * 1.00001, false}} {
		r := file(fmt.Sprintf("transport = \"%.9g m/s\"", test.need))
		if v := at(t, r, "Main", 1); v.Carries != test.want || r.Carried != test.want {
			t.Errorf("%.9g m/s for %.9g: carries %v, carried %v", v.Velocity, test.need, v.Carries, r.Carried)
		}
		if slowest, share := r.Slowest(); slowest != at(t, r, "Main", 1) || share >= 1 != test.want {
			t.Errorf("slowest %v at %g of its need", slowest, share)
		}
	}
}

func TestCapturedAtTheLimit(t *testing.T) {
	file := func(need string) *Result {
		text := strings.Replace(mill("", `kind = "bandsaw"`, `kind = "bandsaw"`), `flow = "100 m3/h"`, `flow = "`+need+`"`, 1)
		return theResult(t, Reckon(mustRead(t, text)), "First", NoFilter)
	}
	flow := float64(file("100 m3/h").Ports[0].Flow)
	if r := file(fmt.Sprintf("%.9g m3/s", flow)); !r.Captured || !r.Ports[0].Captured {
		t.Errorf("%g m³/s of the same: captured %v", flow, r.Captured)
	}
	r := file(fmt.Sprintf("%.9g m3/s", flow*1.00001))
	if r.Captured || r.Ports[0].Captured {
		t.Errorf("%g m³/s of a trifle more: captured %v", flow, r.Captured)
	}
	if p, share := r.Weakest(); p != &r.Ports[0] || share >= 1 || share < 0.9999 {
		t.Errorf("weakest %v at %g", p, share)
	}
}

// A hose narrower than its duct is judged by its own velocity, and a wider
// one can be too slow where the duct is not.
func TestHoseIsJudged(t *testing.T) {
	file := func(hose string) *Result {
		text := strings.Replace(mill("", "kind = \"bandsaw\"\ntransport = \"10 m/s\"", `kind = "bandsaw"`), `serves = ["First"]`, "serves = [\"First\"]\nhose = { size = \""+hose+"\", length = \"0.5 m\", stretched = true }", 1)
		return theResult(t, Reckon(mustRead(t, text)), "First", NoFilter)
	}
	narrow, wide := at(t, file("100 mm"), "First drop", 1), at(t, file("300 mm"), "First drop", 1)
	if !narrow.Hose || narrow.HoseVelocity <= narrow.Velocity || !narrow.HoseCarries || !narrow.Carries {
		t.Errorf("narrow hose: %+v", narrow)
	}
	if wide.HoseVelocity >= wide.Velocity || wide.HoseCarries || !wide.Carries || file("300 mm").Carried {
		t.Errorf("wide hose: %+v", wide)
	}
	if s, share := file("300 mm").Slowest(); s == nil || !near(share, float64(wide.HoseVelocity)/10, 1e-5) {
		t.Errorf("slowest is at %g, want the hose", share)
	}
}

func TestTransportRowsHaveASource(t *testing.T) {
	var names []string
	for _, row := range TransportRows() {
		names = append(names, row.Text("case"))
		if unit.Must[unit.Velocity](row.Text("speed")) <= 0 || row.Basis.Mark == 0 {
			t.Errorf("row %v", row)
		}
	}
	if want := []string{"own duct", "main", "rising main", "chips", "wet"}; !slices.Equal(names, want) {
		t.Errorf("cases %v, want %v", names, want)
	}
}

// A stretch is shared where dust of more than one machine may meet: two ports
// of one machine share its own duct, a movable end is one end, a dead end and
// a hole are none.
func TestShared(t *testing.T) {
	want := map[string]bool{"Main 1": false, "Main 2": true, "Main 3": true, "Main 4": true}
	for _, d := range mustRead(t, yard).Ducts {
		for _, s := range d.Stretches {
			if got := Shared(s); got != want[s.Name()] {
				t.Errorf("%s shared: %v, want %v", s.Name(), got, want[s.Name()])
			}
		}
	}
	dead := mustRead(t, strings.Replace(yard, `serves = ["Sweep"]`, "", 1)+"[[leak]]\non = \"Main\"\nhole = \"10 mm\"\nat = \"1 m\"\n")
	if s := dead.Ducts[0].Stretches[1]; Shared(s) {
		t.Errorf("%s with a hole upstream is shared", s.Name())
	}
}
