package duct

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

func fileText(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

const schoolFile = "../../content/example/school.toml"

// The band holds the plain result, is not empty, and the same file gives the
// same band.
func TestSpreadHoldsTheResult(t *testing.T) {
	k, again := Reckon(mustRead(t, fileText(t, schoolFile))), Reckon(mustRead(t, fileText(t, schoolFile)))
	seen := 0
	for i, u := range k.Uses {
		for j, r := range u.Results {
			s := k.Spread(r)
			if u.Kind == DuctOff || !r.OnCurve || r.Flow == 0 {
				if s.Known() {
					t.Errorf("%s: a band without a flow", u.Name)
				}
				continue
			}
			if !s.Known() || s.Solves != 401 {
				t.Fatalf("%s, %s: no band, %d of %d lost", u.Name, r.Filter, s.Lost, s.Solves)
			}
			if f := float64(r.Flow); !(s.Flow.Low < f && f < s.Flow.High) {
				t.Errorf("%s: flow %g not in %v", u.Name, f, s.Flow)
			}
			for _, p := range r.Ports {
				if b := s.Port(p.Port); p.Flow > 0 && !(b.Low < float64(p.Flow) && float64(p.Flow) < b.High) {
					t.Errorf("%s: %s %g not in %v", u.Name, p.Port.Full(), float64(p.Flow), b)
				}
			}
			for _, at := range r.Stretches {
				if b := s.Speed(at.Stretch); at.Judged && !(b.Low < float64(at.Slower()) && float64(at.Slower()) < b.High) {
					t.Errorf("%s: %s %g not in %v", u.Name, at.Stretch.Name(), float64(at.Slower()), b)
				} else if !at.Judged && b != (Range{}) {
					t.Errorf("%s: %s has a band and is not judged", u.Name, at.Stretch.Name())
				}
			}
			other := again.Spread(again.Uses[i].Results[j])
			if other.Flow != s.Flow {
				t.Errorf("%s: %v and %v of the same file", u.Name, s.Flow, other.Flow)
			}
			seen++
		}
	}
	if seen < 10 {
		t.Fatalf("%d results", seen)
	}
}

// oneHood is a hood, a pipe and a fan: what the band has to be can be reckoned
// from the factors alone.
const oneHood = `[shop]
name = "One"
[[machine]]
name = "Saw"
kind = "table saw"
[[machine.port]]
name = "hood"
size = "100 mm"
flow = "400 m3/h"
hood_loss = 1.5
[[collector]]
name = "Fan"
inlet = "100 mm"
fan_curve = [["0 m3/h", "3000 Pa"], ["1000 m3/h", "2000 Pa"], ["2000 m3/h", "200 Pa"]]
[[duct]]
name = "Pipe"
to = "Fan"
size = "100 mm"
length = "1 mm"
material = "spiral steel"
serves = ["Saw/hood"]
`

// With next to no pipe, the loss is the hood's alone: (1 + F) is not charged,
// F is, times its factor, against the fan times its own.
func TestSpreadOfOneHood(t *testing.T) {
	k := Reckon(mustRead(t, oneHood))
	r := k.Uses[0].Results[0]
	s := k.Spread(r)
	hood, fan := stream("hood", "Saw/hood", "hood given"), stream("fan", "Fan", "curve")
	curve := NewFan(r.Collector, k.State, r.Filter)
	var flows []float64
	for i := range hood {
		loss := 1.5 * hood[i] * dynamic(k.State, unit.Must[unit.Length]("100 mm"))
		low, high := 0.0, 2000.0/3600
		for range 60 {
			q := (low + high) / 2
			if loss*q*q < curve.Static(q)*fan[i] {
				low = q
			} else {
				high = q
			}
		}
		flows = append(flows, low)
	}
	slices.Sort(flows)
	if want := (Range{flows[40], flows[360]}); math.Abs(s.Flow.Low-want.Low) > 2e-3*want.Low || math.Abs(s.Flow.High-want.High) > 2e-3*want.High {
		t.Errorf("band %v, want %v", s.Flow, want)
	}
}

// Eight of ten factors lie within the width of their row, none beyond a
// quarter more of it, and half of them on either side.
func TestStreams(t *testing.T) {
	for _, row := range spreadTable.Rows {
		width := row.Number("value")
		inside, below := 0, 0
		for _, f := range stream("a kind", "a name", row.Text("name")) {
			if f >= 1/(1+width) && f <= 1+width {
				inside++
			}
			if f < 1 {
				below++
			}
			if reach := math.Pow(1+width, 1.25); f > reach*1.000001 || f < 1/reach/1.000001 {
				t.Errorf("%s: factor %g of width %g", row.Text("name"), f, width)
			}
		}
		if inside < 295 || inside > 347 || below < 170 || below > 231 { // 321 and 200 of 401, three standard deviations
			t.Errorf("%s: %d inside, %d below one", row.Text("name"), inside, below)
		}
	}
	a, b := stream("hood", "A", "hood"), stream("hood", "B", "hood")
	if slices.Equal(a, b) || !slices.Equal(a, stream("hood", "A", "hood")) || slices.Equal(a, stream("hose", "A", "hood")) {
		t.Error("streams are not keyed by their thing")
	}
}

// Another machine far from a use, behind a gate that shuts tight, changes
// nothing of its band.
func TestSpreadIgnoresOtherThings(t *testing.T) {
	text := strings.Replace(oneHood, "length = \"1 mm\"", "length = \"5 m\"", 1)
	more := text + `[[machine]]
name = "Sander"
kind = "disc sander"
[[duct]]
name = "Sander pipe"
to = "Pipe"
joins = "5 m"
size = "100 mm"
length = "3 m"
serves = ["Sander/hood"]
[[gate]]
name = "Sander gate"
on = "Sander pipe"
leak = "none"
`
	band := func(text string) Range {
		k := Reckon(mustRead(t, text))
		return k.Spread(k.Uses[0].Results[0]).Flow
	}
	if a, b := band(text), band(more); a != b {
		t.Errorf("%v alone, %v with a machine behind a shut gate", a, b)
	}
}

func TestJudgeARange(t *testing.T) {
	b := Range{10, 20}
	for need, want := range map[float64]Likely{5: Surely, 10: Surely, 10.00001: Surely, 10.001: Thinly, 20: Thinly, 20.001: Hardly, 30: Hardly} {
		if got := b.Judge(need); got != want {
			t.Errorf("need %g: %v, want %v", need, got, want)
		}
	}
	if (Range{}).Judge(5) != Unknown {
		t.Error("an empty range judges")
	}
}

// A fan whose curve ends near where it runs loses solves past its end; beyond
// a tenth of them there is no band.
func TestSpreadPastTheCurve(t *testing.T) {
	k := Reckon(mustRead(t, oneHood))
	end := float64(k.Uses[0].Results[0].Flow) * 1.002 * 3600
	near := strings.Replace(oneHood, `["2000 m3/h", "200 Pa"]`, "["+quoted(end, "m3/h")+`, "`+unit.Short(float64(k.Uses[0].Results[0].Static)*0.998)+` Pa"]`, 1)
	near = strings.Replace(near, `, ["1000 m3/h", "2000 Pa"]`, "", 1)
	n := Reckon(mustRead(t, near))
	r := n.Uses[0].Results[0]
	if !r.OnCurve {
		t.Fatal("the plain result is off the curve")
	}
	if s := n.Spread(r); s.Known() || s.Lost < 40 || s.Port(r.Ports[0].Port) != (Range{}) {
		t.Errorf("%d lost, band %v", s.Lost, s.Flow)
	}
}

func quoted(x float64, unitName string) string { return `"` + unit.Short(x) + " " + unitName + `"` }

func BenchmarkSpread(b *testing.B) {
	k := Reckon(mustRead(b, fileText(b, schoolFile)))
	r := k.Uses[0].Results[0]
	tree := k.Trees[0]
	for b.Loop() {
		tree.Spread(r)
	}
}
