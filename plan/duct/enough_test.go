package duct

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// flat is a fan that makes one pressure whatever it draws.
type flat float64

func (f flat) Suction(float64) (p, slope float64) { return float64(f), 0 }
func (f flat) Range() (low, high float64)         { return 0, math.Inf(1) }
func (f flat) Falls() bool                        { return true }

// checkDemand solves a demand's own network at the pressure found: every port
// gets its need, one of them no more, and at a little less pressure one lacks.
func checkDemand(t *testing.T, tree *Tree, d *Demand) {
	t.Helper()
	fan := NewFan(tree.Collector, tree.State, d.Filter)
	separator, filter, outlet := fan.Charges(float64(d.Flow))
	suction := float64(d.Static) - separator - filter - outlet
	least := func(p float64) (share, total float64) {
		solver := NewSolver(tree.Set(d.Use))
		total, _, ok := solver.Meet(flat(p), float64(d.Flow))
		if !ok {
			t.Fatal("did not settle")
		}
		share = math.Inf(1)
		for _, p := range d.Use.ports() {
			if p.Duct != nil && p.Duct.Collector == tree.Collector && p.Flow > 0 {
				share = min(share, solver.Flow[tree.byEnd[p.Duct]]/float64(p.Flow))
			}
		}
		return share, total
	}
	// the figures have six digits, and the fan's own parts take most of them
	slack := 3e-5 * float64(d.Static) / suction
	if share, total := least(suction); math.Abs(share-1) > slack || !near(total, float64(d.Flow), slack) {
		t.Errorf("%s: at %g Pa the weakest port gets %.8f of its need and the fan %g, not %g m³/s", d.Use.Name, suction, share, total, d.Flow)
	}
	if share, _ := least(suction * (1 - 10*slack)); share >= 1 {
		t.Errorf("%s: less pressure does as well", d.Use.Name)
	}
}

func TestEnoughOnRandomShops(t *testing.T) {
	checked := 0
	for seed := uint64(0); seed < often()/2; seed++ {
		d := newDrawing(8800+seed, 8)
		s := d.shop(t)
		if seed%2 == 0 {
			s = mustRead(t, rowOf(seed, 5))
		}
		k := Reckon(s)
		for _, e := range k.BigEnough() {
			largest := unit.Flow(0)
			for i := range e.Demands {
				v := &e.Demands[i]
				largest = max(largest, v.Need)
				if v.Reachable && v.Share < e.Worst.Share {
					t.Errorf("seed %d: %s is worse than the worst", seed, v.Use.Name)
				}
				if v.Reachable && v.Static < 1e6 {
					checkDemand(t, k.Trees[0], v)
					checked++
				}
				// a fan that has pressure to spare where all just get their need serves
				// the use, and one that has none does not
				r := filteredResult(k, v)
				if v.Reachable && v.InRange && r.OnCurve && !near(float64(v.Offered), float64(v.Static), 1e-5) && r.Captured != (v.Spare > 0) {
					t.Errorf("seed %d, %s: captured %v with %g Pa to spare", seed, v.Use.Name, r.Captured, v.Spare)
				}
			}
			if largest != e.Needed {
				t.Errorf("seed %d: needed %g, the largest demand is %g", seed, e.Needed, largest)
			}
		}
	}
	if checked < 100 {
		t.Errorf("%d demands checked", checked)
	}
}

func filteredResult(k *Reckoning, d *Demand) *Result {
	for _, r := range d.Use.Results {
		if r.Filter == d.Filter {
			return r
		}
	}
	return nil
}

// By hand: a plain pipe whose losses go with the square of the flow. Half the
// flow needs a quarter of the pressure.
func TestEnoughByHand(t *testing.T) {
	const text = `
[shop]
name = "Plain"
units = "metric"
air = { density = "1.2 kg/m3", viscosity = "1.8e-5 Pa s" }
[[collector]]
name = "Fan"
inlet = "100 mm"
fan_curve = [["0 m3/s", "900 Pa"], ["0.4 m3/s", "900 Pa"]]
claims = { flow = "0.5 m3/s", suction = "900 Pa" }
filter = { clean = "100 Pa", change = "200 Pa", at = "0.1 m3/s" }
curve_density = "1.2 kg/m3"
[[machine]]
name = "M"
kind = "other"
port = { size = "100 mm", flow = "0.1 m3/s", hood_loss = 2.0 }
[[duct]]
name = "Pipe"
to = "Fan"
size = "100 mm"
length = "0 m"
loss = 1.0
serves = ["M"]
`
	e := Reckon(mustRead(t, text)).BigEnough()[0]
	// three velocity pressures of 0.1 m³/s in 100 mm, and the filter
	speed := 0.1 / (math.Pi / 4 * 0.01)
	pipe := 3 * 1.2 / 2 * speed * speed
	for i, filter := range []float64{100, 200} {
		d := e.Demands[i]
		if !d.Reachable || !near(float64(d.Flow), 0.1, 1e-6) || !near(float64(d.Static), pipe+filter, 1e-5) || !near(float64(d.Spare), 900-pipe-filter, 1e-4) {
			t.Errorf("%s filter: %+v, want 0.1 m³/s at %g Pa", d.Filter, d, pipe+filter)
		}
	}
	if e.Claimed != 0.5 || e.Needed != 0.1 || e.NeededBy.Name != "M" || e.Worst != &e.Demands[1] || e.Worst.Margin <= 0 || !near(e.Worst.Margin, float64(e.Worst.Delivered)/0.1-1, 1e-4) {
		t.Errorf("claimed %g, needed %g, worst %+v", e.Claimed, e.Needed, e.Worst)
	}
}

// C01: the fan has its claimed flow and the pressure for the pipe, yet the
// planer's need would take about three times the pressure that it makes.
func TestCaseNotEnough(t *testing.T) {
	k := readCase(t, "c01-planer-far-end.toml")
	e := k.BigEnough()[0]
	if !near(float64(e.Claimed), 1891*cfm, 1e-4) || e.Worst == nil || e.Worst.Port.Machine.Name != "Planer" || !between(e.Worst.Share, 0.50, 0.65) {
		t.Errorf("claimed %.0f cfm, worst %+v", float64(e.Claimed)/cfm, e.Worst)
	}
	if w := e.Worst; !w.Reachable || !w.InRange || w.Spare >= 0 || float64(w.Static) < 2*float64(w.Offered) {
		t.Errorf("%+v, want far more pressure than it makes", w)
	}
}

// In the yard two uses have a port that cannot be met: lathe and sander share
// an end.
func TestEnoughOfTheYard(t *testing.T) {
	k := yardReckoned(t)
	list := k.BigEnough()
	if len(list) != 2 || list[1].Collector.Name != "Small fan" || list[0].Claimed != 0 {
		t.Fatalf("%+v", list)
	}
	for i := range list[0].Demands {
		d := &list[0].Demands[i]
		if want := d.Use.Name != "Lathe and sander"; d.Reachable != want {
			t.Errorf("%s: reachable %v", d.Use.Name, d.Reachable)
		}
	}
	for i := range list[0].Demands {
		if d := &list[0].Demands[i]; d.Reachable && d.Port != nil && d.Share < list[0].Worst.Share {
			t.Errorf("worst: %s, share %g, but %s has %g", list[0].Worst.Use.Name, list[0].Worst.Share, d.Use.Name, d.Share)
		}
	}
	if w := list[0].Worst; !w.Reachable || w.Use.Name == "Lathe and sander" {
		t.Errorf("worst: %s, which no fan meets", w.Use.Name)
	}
}
