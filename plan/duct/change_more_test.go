package duct

import (
	"slices"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// A wye of another angle has the elbow that the route then asks for, from the
// least angle that counts as one on.
func TestWyeAndItsElbow(t *testing.T) {
	for _, end := range []string{"4.9", "4.929", "5.0", "5.069", "6.5", "7", "8"} {
		text := replaced(t, routed, "[7, 2, 3], [7, 0, 3]]", "[7, 2, 3], ["+end+", 0, 3]]\nentry = \"60 deg\"")
		k := Reckon(mustRead(t, text))
		f := k.First(theResult(t, k, "Lathe", Clean))
		wyes := 0
		for i := range f.Changes {
			if c := &f.Changes[i]; c.Angle > 0 {
				wyes++
				checkReread(t, text, f, c)
			}
		}
		if wyes != 2 {
			t.Errorf("route to %s: %d wyes, want two", end, wyes)
		}
	}
}

// The data name makes that the shop file knows, of less loss, and sizes that
// rise; what is under the largest has a next.
func TestAdviceData(t *testing.T) {
	for _, r := range longTable.Rows {
		long, known := longElbow(r.Text("elbows"))
		i := slices.IndexFunc(shop.Elbows(), func(e shop.ElbowMake) bool { return e.Name == r.Text("elbows") })
		if !known || i < 0 || long.K90 >= shop.Elbows()[i].K90 {
			t.Errorf("%s: no make of less loss", r.Text("elbows"))
		}
	}
	if _, known := longElbow("stamped R/D 2.0"); known {
		t.Error("a long elbow has a longer one")
	}
	for sys, n := range map[unit.System]int{unit.US: 13, unit.Metric: 17} {
		sizes := StockSizes(sys)
		if len(sizes) != n || !slices.IsSorted(sizes) {
			t.Errorf("%d sizes, want %d that rise", len(sizes), n)
		}
	}
	// a metric pipe in a shop in inches goes up by metric sizes; thick plastic by
	// its nominal size; the largest has no next
	us, metric := &shop.Shop{Units: unit.US}, &shop.Shop{Units: unit.Metric}
	mm := func(x float64) unit.Length { return unit.Length(x / 1000) }
	bore, _ := shop.Bore("plastic schedule 40", mm(101.6))
	for _, test := range []struct {
		s       *shop.Shop
		d       shop.Duct
		want    unit.Length
		largest bool
	}{
		{us, shop.Duct{Size: mm(101.6), Bore: mm(101.6), Material: "spiral steel"}, mm(127), false},
		{us, shop.Duct{Size: mm(125), Bore: mm(125), Material: "spiral steel"}, mm(140), false},
		{metric, shop.Duct{Size: mm(101.6), Bore: mm(101.6), Material: "spiral steel"}, mm(127), false},
		{metric, shop.Duct{Size: mm(130), Bore: mm(130), Material: "spiral steel"}, mm(140), false},
		{us, shop.Duct{Size: mm(101.6), Bore: bore, Material: "plastic schedule 40"}, mm(127), false},
		{us, shop.Duct{Size: mm(508), Bore: mm(508), Material: "spiral steel"}, 0, true},
		{metric, shop.Duct{Size: mm(500), Bore: mm(500), Material: "spiral steel"}, 0, true},
	} {
		if got, known := nextSize(test.s, &test.d); known == test.largest || !near(float64(got), float64(test.want), 1e-9) {
			t.Errorf("over %g: %g, %v; want %g", test.d.Size, got, known, test.want)
		}
	}
}

// The main of C05: its last run is what moving the collector saves.
const farCollector = `
[shop]
name = "Far collector"
[[collector]]
name = "Cyclone"
inlet = "6 in"
claims = { flow = "1800 cfm", suction = "12 inwg" }
[[machine]]
name = "Sander"
kind = "other"
port = { size = "6 in", flow = "785 cfm", hood_loss = 1.0 }
[[duct]]
name = "Main"
to = "Cyclone"
size = "6 in"
route = [[0, 0, 3], [0, 0, 9], [20, 0, 9], [20, 115, 9]]
serves = ["Sander"]
`

// C05: moving the collector takes 4 to 5 in wg off the governing run of a fan
// of 10 to 12 in wg, and that is worth more than the next size of fan.
func TestCaseMoveTheCollector(t *testing.T) {
	k := Reckon(mustRead(t, farCollector))
	f := k.First(theResult(t, k, "Sander", NoFilter))
	i := slices.IndexFunc(f.Changes, func(c Change) bool { return c.Name == "collector nearer" })
	if i < 0 || !near(float64(f.Changes[i].Length), 115*0.3048, 1e-6) {
		t.Fatalf("%+v", f.Changes)
	}
	moved := Reckon(mustRead(t, replaced(t, farCollector, ", [20, 115, 9]]", "]")))
	before, after := k.BigEnough()[0].Worst, moved.BigEnough()[0].Worst
	if saved := float64(before.Static-after.Static) / inwg; !between(saved, 4, 5) {
		t.Errorf("moving it saves %.2f in wg, want 4 to 5", saved)
	}
	c := f.Changes[i]
	if r := theResult(t, moved, "Sander", NoFilter); r.Flow != c.Fan || c.Gain <= 0 {
		t.Errorf("the change gives %g m³/s, the file with it %g", c.Fan, r.Flow)
	}
	// a fan of a quarter more flow and pressure than the claim
	bigger := Reckon(mustRead(t, replaced(t, farCollector, `flow = "1800 cfm", suction = "12 inwg"`, `flow = "2250 cfm", suction = "15 inwg"`)))
	if r := theResult(t, bigger, "Sander", NoFilter); r.Flow >= c.Fan {
		t.Errorf("a bigger fan gives %.0f cfm, moving the collector %.0f", float64(r.Flow)/cfm, float64(c.Fan)/cfm)
	}
}

// C10: what stands in the way of the discharge is on the fan's curve. It takes
// air from the machine, and a fan for the same need must make as much more
// pressure.
func TestCaseThrottledDischarge(t *testing.T) {
	outlet := func(loss string) *Reckoning {
		return Reckon(mustRead(t, replaced(t, farCollector, "inlet = \"6 in\"\n", "inlet = \"6 in\"\noutlet = { size = \"6 in\", length = \"0 ft\", loss = "+loss+" }\n")))
	}
	free, sealed := outlet("0"), outlet("3")
	a, b := theResult(t, free, "Sander", NoFilter), theResult(t, sealed, "Sander", NoFilter)
	if b.Flow >= a.Flow || b.Ports[0].Flow >= a.Ports[0].Flow {
		t.Errorf("with the room sealed %g m³/s, free %g", b.Flow, a.Flow)
	}
	before, after := free.BigEnough()[0].Worst, sealed.BigEnough()[0].Worst
	// three velocity pressures of the need in 6 in: 4000 fpm make 1 in wg each
	if more := float64(after.Static-before.Static) / inwg; !between(more, 2.9, 3.1) || after.Flow != before.Flow {
		t.Errorf("the need asks for %.2f in wg more at %g m³/s, want 3", more, after.Flow)
	}
}
