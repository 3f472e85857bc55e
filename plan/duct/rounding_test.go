package duct

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// manyPipes is a fan with pipes alike that each go straight into it, and
// whose curve passes through the point at which they carry a flow together.
func manyPipes(count int, flow float64) string {
	var b strings.Builder
	area := math.Pi * 0.1 * 0.1 / 4
	v := flow / float64(count) / area
	fmt.Fprintf(&b, "[shop]\nname = \"Many\"\n%s\n%s[[collector]]\nname = \"Fan\"\ninlet = \"100 mm\"\n", standardAir, bare)
	fmt.Fprintf(&b, "fan_curve = [[\"0 m3/s\", \"5000 Pa\"], [\"%.12g m3/s\", \"%.12g Pa\"], [\"30 m3/s\", \"0 Pa\"]]\n", flow, 2*1.2014/2*v*v)
	for i := range count {
		fmt.Fprintf(&b, "[[machine]]\nname = \"M%[1]d\"\nkind = \"other\"\nport = { size = \"100 mm\", flow = \"1 m3/h\", hood_loss = 1 }\n"+
			"[[duct]]\nname = \"D%[1]d\"\nto = \"Fan\"\nsize = \"100 mm\"\nlength = \"0 m\"\nloss = 1\nserves = [\"M%[1]d\"]\n", i)
	}
	return b.String()
}

// What is printed adds up, also where the parts, each rounded up, make a sum
// with a digit more.
func TestRoundedFlowsAddUp(t *testing.T) {
	for _, flow := range []float64{0.9999992, 0.09999992, 0.9999996, 1.0000004, 0.7} {
		r := theResult(t, Reckon(mustRead(t, manyPipes(14, flow))), "Everything open", NoFilter)
		if !near(float64(r.Flow), flow, 1e-4) {
			t.Fatalf("flow %.9g, want %.9g", r.Flow, flow)
		}
		sum := 0.0
		for _, v := range r.Stretches {
			sum += unit.Six(float64(v.Flow))
			if float64(v.Flow) != unit.Six(float64(v.Flow)) {
				t.Errorf("flow %.9g: a pipe carries %.12g, more than six digits", flow, v.Flow)
			}
		}
		if math.Abs(sum-unit.Six(float64(r.Flow))) > 1e-12 {
			t.Errorf("flow %.9g: the pipes carry %.9g as printed, the fan moves %.9g", flow, sum, unit.Six(float64(r.Flow)))
		}
	}
}
