package duct

import (
	"math"
	"os"
	"testing"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// onePipe is a hood on a straight pipe of the port's own size.
const onePipe = `
[shop]
name = "One pipe"
units = "metric"
air = { density = "1.2 kg/m3", viscosity = "1.8e-5 Pa s" }
[[collector]]
name = "Fan"
inlet = "150 mm"
fan_curve = [["0 m3/s", "3000 Pa"], ["1 m3/s", "0 Pa"]]
[[machine]]
name = "Saw"
kind = "table saw"
port = { name = "hood", size = "150 mm", flow = "900 m3/h", hood_loss = 0.5 }
[[duct]]
name = "Pipe"
to = "Fan"
size = "150 mm"
material = "spiral steel"
roughness = "0.15 mm"
length = "10 m"
serves = ["Saw"]
[[gate]]
name = "Pipe gate"
on = "Pipe"
at = "4 m"
`

// Worked by hand: behind a hood the suction is (1 + F) velocity pressures,
// and along the pipe f·L/D more, with f solved here from Colebrook's law.
func TestSuctionAlongAPipeByHand(t *testing.T) {
	k := Reckon(mustRead(t, onePipe))
	r := theResult(t, k, "Saw", NoFilter)
	d := r.Stretches[0].Stretch.Duct
	v := float64(r.Stretches[0].Velocity)
	vp := 1.2 / 2 * v * v
	re := 1.2 * v * 0.15 / 1.8e-5
	f := 0.02
	for range 100 {
		f = math.Pow(-2*math.Log10(0.00015/0.15/3.7+2.51/(re*math.Sqrt(f))), -2)
	}
	for _, x := range []float64{0, 0.3, 4, 9.5, 10} {
		want := (1 + 0.5 + f*x/0.15) * vp
		got, known := k.Suction(r, d, unit.Length(x))
		if !known || math.Abs(float64(got)/want-1) > 2e-5 {
			t.Errorf("at %g m: %g Pa, known %v, want %g", x, float64(got), known, want)
		}
	}
	if hood, _ := k.Suction(r, d, 0); unit.Compare(float64(hood), float64(r.Ports[0].Hood)) != 0 {
		t.Errorf("behind the hood %v Pa, hood pressure %v", hood, r.Ports[0].Hood)
	}
}

// With the gate shut what leaks through it leaves next to no suction before
// it and nearly all of the fan's behind it.
func TestSuctionAtAShutGate(t *testing.T) {
	k := Reckon(mustRead(t, onePipe))
	r := resultOf(k, "Everything shut", NoFilter)
	d := r.Stretches[0].Stretch.Duct
	before, _ := k.Suction(r, d, 3.9)
	behind, _ := k.Suction(r, d, 4.1)
	if before <= 0 || before > 0.01*behind || float64(behind) < 0.99*float64(r.Inlet) {
		t.Errorf("%v Pa before the gate, %v behind it, %v at the inlet", before, behind, r.Inlet)
	}
	tight := Reckon(mustRead(t, onePipe+"leak = \"none\"\n"))
	r = resultOf(tight, "Everything shut", NoFilter)
	d = r.Stretches[0].Stretch.Duct
	if p, known := tight.Suction(r, d, 3.9); known {
		t.Errorf("%v Pa before a gate that shuts tight", p)
	}
	if p, known := tight.Suction(r, d, 4.1); !known || p != r.Inlet {
		t.Errorf("%v Pa behind a gate that shuts tight, %v at the inlet", p, r.Inlet)
	}
}

// At the end of a stretch that goes on in the next, and at the start of a
// stretch, the suction and the velocity pressure make the total pressure of
// the solution, in every use of several shops.
func TestSuctionMeetsTheNodes(t *testing.T) {
	school, err := os.ReadFile("../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"school": string(school), "yard": yard, "twig": twig} {
		k := Reckon(mustRead(t, text))
		checked := 0
		for _, u := range k.Uses {
			for _, r := range u.Results {
				for _, v := range r.Stretches {
					if !r.OnCurve || v.Flow == 0 {
						continue
					}
					vp := float64(k.State.VelocityPressure(v.Velocity))
					slack := 1e-5*float64(r.Static) + float64(v.Loss)*math.Min(1, 2e-5*float64(r.Flow/v.Flow))
					if s := v.Stretch; !s.Last() {
						checked++
						got, known := k.Suction(r, s.Duct, s.To)
						if want := vp - float64(v.End); !known || math.Abs(float64(got)-want) > slack {
							t.Errorf("%s, %s: the end of %s: %v Pa, known %v, want %g", name, u.Name, s.Name(), got, known, want)
						}
					}
				}
			}
		}
		if checked == 0 {
			t.Errorf("%s: nothing checked", name)
		}
	}
}

// Along a duct with steady flow the suction grows towards the fan.
func TestSuctionGrowsTowardsTheFan(t *testing.T) {
	k := Reckon(mustRead(t, yard))
	for _, u := range k.Uses {
		for _, r := range u.Results {
			for _, v := range r.Stretches {
				if !r.OnCurve || v.Flow == 0 {
					continue
				}
				last := unit.Pressure(math.Inf(-1))
				for i := range 9 {
					s := v.Stretch
					at, known := k.Suction(r, s.Duct, s.From+(s.To-s.From)*unit.Length(float64(i)+0.5)/9)
					if !known || at < last {
						t.Errorf("%s: %v Pa behind %v in %s", u.Name, at, last, s.Name())
					}
					last = at
				}
			}
		}
	}
}

func TestSuctionIsNotKnown(t *testing.T) {
	k := Reckon(mustRead(t, yard))
	other := theResult(t, k, "Saw", Clean)
	var d *shop.Duct
	for _, tree := range k.Trees {
		if tree.Collector.Name == "Small fan" {
			d = tree.shop.Ducts[len(tree.shop.Ducts)-1]
		}
	}
	if d == nil || d.Collector == other.Collector {
		t.Fatal("no duct of another collector")
	}
	if _, known := k.Suction(other, d, 0); known {
		t.Error("a duct of another collector is known")
	}
	off := resultOf(k, "Duct off", Clean)
	if _, known := k.Suction(off, other.Stretches[0].Stretch.Duct, 0); known {
		t.Error("a duct is known with the ducts off")
	}
}

// resultOf is the first result of a use with the filter in a state.
func resultOf(k *Reckoning, use, filter string) *Result {
	for _, r := range k.FindUse(use).Results {
		if r.Filter == filter {
			return r
		}
	}
	return nil
}

// A gauge across the filter and the separator shows what stands there, also
// where the fan's curve was measured with them.
func TestGaugesAcrossFilterAndSeparator(t *testing.T) {
	const parts = "\nseparator = { kind = \"cyclone\", loss = \"400 Pa\", at = \"0.5 m3/s\" }\nfilter = { clean = \"100 Pa\", change = \"400 Pa\", at = \"0.5 m3/s\" }\n"
	for _, includes := range []string{"", "curve_includes = [\"separator\", \"clean filter\"]\n"} {
		k := Reckon(mustRead(t, replaced(t, onePipe, "inlet = \"150 mm\"\n", "inlet = \"150 mm\""+parts+includes)))
		for _, state := range []string{Clean, ChangeOut} {
			r := resultOf(k, "Saw", state)
			share := float64(r.Flow) / 0.5
			want := map[string]float64{Clean: 100, ChangeOut: 400}[state] * share
			if got := r.FilterGauge(); math.Abs(float64(got)-want) > 1e-4*want {
				t.Errorf("%q, %s: %v Pa across the filter, want %g", includes, state, got, want)
			}
			if got, want := k.SeparatorGauge(r), 400*share*share*k.State.Ratio(); math.Abs(float64(got)-want) > 1e-4*want {
				t.Errorf("%q, %s: %v Pa across the separator, want %g", includes, state, got, want)
			}
			if includes == "" && math.Abs(float64(r.FilterGauge()-r.FilterLoss)) > 1e-4*want {
				t.Errorf("%s: the gauge shows %v Pa, the fan pays %v", state, r.FilterGauge(), r.FilterLoss)
			}
		}
	}
}

func TestSpeedsAtPortAndInlet(t *testing.T) {
	k := Reckon(mustRead(t, onePipe))
	r := theResult(t, k, "Saw", NoFilter)
	want := unit.Six(float64(r.Flow) / (math.Pi / 4 * 0.15 * 0.15))
	if got := float64(r.InletSpeed()); got != want {
		t.Errorf("%g m/s in the inlet, want %g", got, want)
	}
	if got := float64(r.Ports[0].PortSpeed()); got != want {
		t.Errorf("%g m/s at the port, want %g", got, want)
	}
	need := k.HoodAtNeed(r.Ports[0].Port)
	if flow := air.HoodFlow(air.Bore(0.15), air.EntryCoefficient(0.5), need, k.State); math.Abs(float64(flow)/0.25-1) > 1e-5 {
		t.Errorf("at %v Pa the hood passes %v m³/s, want its need", need, flow)
	}
}
