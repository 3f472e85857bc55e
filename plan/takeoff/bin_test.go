package takeoff

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

func mustRead(t testing.TB, text string) *shop.Shop {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if s == nil {
		t.Fatalf("%v\n%s", problems, text)
	}
	return s
}

func near(got, want, share float64) bool { return math.Abs(got-want) <= share*math.Abs(want) }

// A unit of 200 ft3 of shavings is 50 ft3 of wood, of sawdust 80 (a
// forest-products conversion handbook, chapter 7, table 7-1): the bin is full
// when so much wood has been cut.
func TestUnitOfResidue(t *testing.T) {
	mark, _ := FillMark()
	for _, c := range []struct {
		waste string
		solid float64
	}{{"chips", 50}, {"dust", 80}} {
		cut := &shop.Cut{Width: unit.Must[unit.Length]("1 ft"), Depth: unit.Must[unit.Length]("1 ft"), Feed: unit.Must[unit.Velocity]("1 ft/min")}
		bin := unit.Must[unit.Volume]("200 cu ft") / unit.Volume(mark) // so that 200 ft3 lie in it at the mark
		minutes := float64(Until(bin, cut, ResidueOf(c.waste).Expansion)) / 60
		if !near(minutes, c.solid, 1e-9) { // at 1 ft3 of wood a minute
			t.Errorf("%s: %g ft3 of wood, want %g", c.waste, minutes, c.solid)
		}
	}
}

// One face of a board 8 in by 8 ft, 1/16 in off: 0.0278 ft3 of wood, 0.111 of
// shavings (computed from the same table).
func TestOneFace(t *testing.T) {
	wood := float64(Solid(unit.Must[unit.Length]("8 in"), unit.Must[unit.Length]("1/16 in"), unit.Must[unit.Velocity]("8 ft/min"))) * 60 / 0.028316846592
	if got := fmt.Sprintf("%.4f %.3f", wood, wood*ResidueOf("chips").Expansion); got != "0.0278 0.111" {
		t.Errorf("%s ft3", got)
	}
}

const drum = `[shop]
name = "Drum"
[[machine]]
name = "Planer"
kind = "planer"
hours = 1
cut = { width = "12 in", depth = "1/16 in", feed = "20 ft/min" }
[[machine]]
name = "Saw"
kind = "table saw"
[[collector]]
name = "Cyclone"
inlet = "8 in"
claims = { flow = "1600 cfm", suction = "11.5 inwg" }
bin = "55 gal"
filter = { area = "10 m2", clean = "0.5 inwg", change = "2.5 inwg", at = "1000 cfm" }
[[duct]]
name = "Planer drop"
to = "Cyclone"
size = "6 in"
length = "20 ft"
serves = ["Planer/hood"]
[[duct]]
name = "Saw drop"
to = "Planer drop"
size = "5 in"
length = "10 ft"
serves = ["Saw/cabinet"]
`

// A drum of 55 gal under a planer that takes 1/16 in off 12 in at 20 ft a
// minute: at its mark in 14 minutes, in 28 at half the depth (a published
// account of a drum that overflowed, recomputed).
func TestDrumUnderAPlaner(t *testing.T) {
	for _, c := range []struct{ depth, minutes string }{{"1/16 in", "14"}, {"1/32 in", "28"}} {
		s := mustRead(t, strings.Replace(drum, "1/16 in", c.depth, 1))
		f := Reckon(s, nil).Bin(s.Collectors[0])
		planer := f.Machines[0]
		if got := fmt.Sprintf("%.0f", float64(planer.Until)/60); got != c.minutes {
			t.Errorf("%s: %s min, want %s", c.depth, got, c.minutes)
		}
		if !near(float64(planer.Least), float64(planer.Until)*4/10, 1e-5) {
			t.Errorf("at its bulkiest %g s of %g", float64(planer.Least), float64(planer.Until))
		}
		if f.Fastest != planer {
			t.Errorf("fastest %v", f.Fastest)
		}
	}
}

// A day of one hour fills the drum more than four times; the saw's cut and
// hours are missing and are named.
func TestDays(t *testing.T) {
	s := mustRead(t, drum)
	f := Reckon(s, nil).Bin(s.Collectors[0])
	if !near(f.Days, float64(f.Machines[0].Until)/3600, 1e-5) || !f.Known() {
		t.Errorf("%g days", f.Days)
	}
	want := []Missing{{"Saw", "machine.cut"}, {"Saw", "machine.hours"}}
	if fmt.Sprint(f.Open) != fmt.Sprint(want) {
		t.Errorf("open %v", f.Open)
	}
	if saw := f.Machines[1]; saw.Known() || saw.Until != 0 {
		t.Errorf("the saw's time is known without a cut")
	}
}

// What is missing: no bin, no hours; metal does not count as wood.
func TestMissing(t *testing.T) {
	s := mustRead(t, strings.Replace(drum, "bin = \"55 gal\"\n", "", 1))
	f := Reckon(s, nil).Bin(s.Collectors[0])
	if f.Known() || f.Fastest != nil || f.Machines[0].Missing[0].Field != "collector.bin" {
		t.Errorf("a bin that is not there: %+v", f)
	}
	s = mustRead(t, drum)
	s.Machines[slices.IndexFunc(s.Machines, func(m *shop.Machine) bool { return m.Name == "Planer" })].Cut.Depth = 0 // no file can say so
	if f := Reckon(s, nil).Bin(s.Collectors[0]); f.Fastest != nil || f.Machines[0].Missing[0].Field != "machine.cut" {
		t.Errorf("a cut of nothing fills a bin: %+v", f.Machines[0])
	}
	s = mustRead(t, strings.Replace(drum, "hours = 1\n", "", 1))
	if f := Reckon(s, nil).Bin(s.Collectors[0]); f.Known() || f.Fastest == nil {
		t.Errorf("days without hours: %+v", f)
	}
	s = mustRead(t, strings.Replace(drum, "kind = \"planer\"\n", "kind = \"planer\"\nmakes = \"metal\"\n", 1))
	if f := Reckon(s, nil).Bin(s.Collectors[0]); len(f.Machines) != 1 {
		t.Errorf("metal fills a bin of wood: %d machines", len(f.Machines))
	}
}

// 150 m3/h through each m2 are 2.5 m/min; the figure for returned air speaks
// only where air is returned.
func TestFilterLoad(t *testing.T) {
	s := mustRead(t, drum)
	draws := []Draw{{s.Collectors[0], "Saw", unit.Must[unit.Flow]("900 m3/h")}, {s.Collectors[0], "Planer", unit.Must[unit.Flow]("1500 m3/h")}}
	f := Reckon(s, draws).Filter(s.Collectors[0])
	if f.Use != "Planer" || !near(float64(f.Speed)*60, 2.5, 1e-5) {
		t.Errorf("%s, %g m/min", f.Use, float64(f.Speed)*60)
	}
	for _, l := range f.Against {
		if l.Returned {
			t.Errorf("%s speaks of air that is not known to be returned", l.Name)
		}
	}
	back := mustRead(t, strings.Replace(drum, "bin =", "exhaust = \"returns to room\"\nbin =", 1))
	g := Reckon(back, draws[:0]).Filter(back.Collectors[0])
	if len(g.Against) != len(f.Against)+1 || !g.Against[0].Returned || !near(float64(g.Against[0].Speed)*60, 2.5, 1e-9) {
		t.Errorf("against %v", g.Against)
	}
	if g.Known() {
		t.Error("a load without a flow")
	}
	bare := mustRead(t, strings.Replace(drum, "area = \"10 m2\", ", "", 1))
	if f := Reckon(bare, []Draw{{bare.Collectors[0], "Saw", 1}}).Filter(bare.Collectors[0]); f.Known() || f.Missing[0].Field != "filter.area" {
		t.Errorf("a load without an area: %+v", f)
	}
}

func TestTablesNameTheirSources(t *testing.T) {
	for _, table := range Tables() {
		for i, row := range table.Rows {
			if row.Basis.Mark == 0 {
				t.Errorf("%s, row %d: no mark", table.Name, i+1)
			}
		}
	}
}
