package duct

import (
	"math"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// wayShop has one machine behind a hose, a drop and two mains.
const wayShop = `
[shop]
name = "Way"
air = { density = "1.2 kg/m3", viscosity = "1.8e-5 Pa s" }
[[collector]]
name = "Fan"
inlet = "200 mm"
claims = { flow = "1 m3/s", suction = "3000 Pa" }
separator = { loss = "300 Pa", at = "0.5 m3/s" }
filter = { clean = "100 Pa", change = "400 Pa", at = "0.5 m3/s" }
exhaust = "outside"
outlet = { size = "200 mm", length = "2 m" }
[[machine]]
name = "Saw"
kind = "other"
port = { size = "100 mm", flow = "NEED m3/s", hood_loss = 1 }
[[machine]]
name = "Bare"
kind = "other"
port = { size = "100 mm", flow = "100 m3/h" }
[[duct]]
name = "Main"
to = "Fan"
size = "200 mm"
material = "spiral steel"
length = "6 m"
[[duct]]
name = "Drop"
to = "Main"
joins = "2 m"
size = "150 mm"
material = "spiral steel"
length = "3 m"
hose = { size = "100 mm", length = "1.5 m", material = "ribbed hose" }
serves = ["Saw"]
[[duct]]
name = "Other drop"
to = "Main"
size = "150 mm"
material = "spiral steel"
length = "1 m"
[[gate]]
name = "Gate"
on = "Drop"
`

func wayOf(t *testing.T, need string) (*Reckoning, *Result) {
	t.Helper()
	k := Reckon(mustRead(t, strings.Replace(wayShop, "NEED", need, 1)))
	u := theUse(t, k, "Saw")
	return k, u.Results[len(u.Results)-1]
}

func demandOf(t *testing.T, k *Reckoning, r *Result) *Demand {
	t.Helper()
	for _, e := range k.BigEnough() {
		for i := range e.Demands {
			if d := &e.Demands[i]; d.Use == r.Use && d.Filter == r.Filter {
				return d
			}
		}
	}
	t.Fatal("no demand")
	return nil
}

// Where the fan just delivers the need, what the way loses at the need is the
// suction at the inlet.
func TestRunLossAtWhatTheFanDelivers(t *testing.T) {
	_, probe := wayOf(t, "0.1")
	if !probe.OnCurve {
		t.Fatal(probe.Why)
	}
	k, r := wayOf(t, unit.Short(float64(probe.Ports[0].Flow)))
	loss, known := k.RunLoss(r.Collector, demandOf(t, k, r))
	if !known || !near(float64(loss), float64(r.Inlet), 1e-4) {
		t.Errorf("the way loses %g Pa, the inlet's suction is %g", loss, r.Inlet)
	}
	// losses grow with the square of the flow, or nearly: halving it leaves a
	// quarter, and a little more since friction factors rise
	half, _ := wayOf(t, unit.Short(float64(probe.Ports[0].Flow)/2))
	less, _ := half.RunLoss(half.Trees[0].Collector, demandOf(t, half, theUse(t, half, "Saw").Results[1]))
	if share := float64(less / loss); share < 0.25 || share > 0.28 {
		t.Errorf("at half the air the way loses %g of what it did", share)
	}
}

func TestRunLossIsNotKnownWithoutADuct(t *testing.T) {
	k, r := wayOf(t, "0.1")
	if _, known := k.RunLoss(r.Collector, &Demand{}); known {
		t.Error("a demand that no fan meets has a loss")
	}
	if bare := theUse(t, k, "Bare").Machines[0].Ports[0]; RunLength(bare) != 0 {
		t.Errorf("a port without a duct has a way of %g m", RunLength(bare))
	}
}

// 1.5 m of hose, 3 m of drop, and the 4 m of main behind the join.
func TestRunLengthByHand(t *testing.T) {
	_, r := wayOf(t, "0.1")
	if got := RunLength(r.Ports[0].Port); !near(float64(got), 8.5, 1e-6) {
		t.Errorf("%g m, want 8.5", got)
	}
}

func TestAmountsByHand(t *testing.T) {
	k, _ := wayOf(t, "0.1")
	want := []Amount{{0.2, "spiral steel", 6}, {0.15, "spiral steel", 4}, {0.1, "ribbed hose", 1.5}}
	got := k.Trees[0].Amounts()
	if len(got) != len(want) {
		t.Fatalf("%v", got)
	}
	for i, w := range want {
		if !got[i].Alike(w) || !near(float64(got[i].Length), float64(w.Length), 1e-6) {
			t.Errorf("%v, want %v", got[i], w)
		}
	}
}

// Fan total pressure is fan static pressure and the velocity pressure at the
// outlet: the definition of fan test codes, from memory.
func TestFanTotalByHand(t *testing.T) {
	k, r := wayOf(t, "0.1")
	speed := float64(r.Flow) / (math.Pi / 4 * 0.2 * 0.2)
	want := float64(r.Static) + 1.2/2*speed*speed
	if got, known := k.FanTotal(r); !known || !near(float64(got), want, 1e-5) {
		t.Errorf("%g Pa, want %g", got, want)
	}
	if _, known := k.FanTotal(&Result{OnCurve: true}); known {
		t.Error("known without a collector")
	}
	if _, known := k.FanTotal(&Result{Collector: r.Collector}); known {
		t.Error("known off the curve")
	}
}
