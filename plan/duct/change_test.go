package duct

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// routed is a shop with one of everything that can be changed.
const routed = `
[shop]
name = "Routed"
units = "metric"
[[collector]]
name = "Fan"
inlet = "200 mm"
fan_curve = [["0 m3/s", "3000 Pa"], ["0.4 m3/s", "2400 Pa"], ["1.2 m3/s", "0 Pa"]]
filter = { clean = "100 Pa", change = "400 Pa", at = "0.5 m3/s" }
[[machine]]
name = "Saw"
kind = "other"
port = { size = "120 mm", flow = "1400 m3/h" }
[[machine]]
name = "Lathe"
kind = "other"
port = { size = "120 mm", flow = "500 m3/h" }
[[duct]]
name = "Main"
to = "Fan"
size = "160 mm"
route = [[12, 0, 3], [4, 0, 3], [4, 3, 3]]
[[duct]]
name = "Saw drop"
to = "Main"
size = "125 mm"
entry = "90 deg"
elbows = "stamped R/D 1.0"
route = [[10, 4, 0], [10, 4, 3], [10, 0, 3]]
hose = { size = "120 mm", length = "2 m" }
serves = ["Saw"]
[[duct]]
name = "Lathe drop"
to = "Main"
size = "120 mm"
route = [[7, 2, 0], [7, 2, 3], [7, 0, 3]]
serves = ["Lathe"]
[[gate]]
name = "Saw gate"
on = "Saw drop"
[[gate]]
name = "Lathe gate"
on = "Lathe drop"
[[leak]]
on = "Saw drop"
hole = "30 mm"
at = "2 m"
`

// edited is the text of a shop file with a change made in it; empty where a
// file cannot say it, as of one stretch of several.
func edited(t *testing.T, text string, c *Change) string {
	t.Helper()
	put := func(duct, field, value string) string {
		from := strings.Index(text, "[[duct]]\nname = "+fmt.Sprintf("%q", duct)+"\n")
		if from < 0 {
			t.Fatalf("no duct %s", duct)
		}
		block, rest := text[from:], ""
		if end := strings.Index(block[1:], "\n["); end >= 0 {
			block, rest = block[:end+2], block[end+2:]
		}
		lines := strings.Split(strings.TrimRight(block, "\n"), "\n")
		lines = slices.DeleteFunc(lines, func(l string) bool { return strings.HasPrefix(l, field+" = ") })
		return text[:from] + strings.Join(lines, "\n") + "\n" + field + " = " + value + "\n" + rest
	}
	switch c.Name {
	case "clean filter":
		return text
	case "leak closed":
		hole := fmt.Sprintf("[[leak]]\non = %q\nhole = \"%.0f mm\"\nat = \"%.0f m\"\n", c.Leak.On.Name, float64(c.Leak.Hole)*1000, float64(c.Leak.Where))
		return replaced(t, text, hole, "")
	case "hose straight", "shorter hose", "wider hose":
		hose := c.Duct.Hose
		size, length, says := hose.Size, hose.Length, ""
		switch c.Name {
		case "shorter hose":
			length = c.Length
		case "wider hose":
			size = c.Size
		}
		if hose.Stretched.Known() {
			says = fmt.Sprintf(", stretched = %v", hose.Stretched.V)
		}
		if c.Name == "hose straight" {
			says = ", stretched = true"
		}
		return put(c.Duct.Name, "hose", fmt.Sprintf("{ size = \"%.9g m\", length = \"%.9g m\", material = %q%s }", float64(size), float64(length), hose.Material, says))
	case "long elbows":
		return put(c.Duct.Name, "elbows", fmt.Sprintf("%q", c.Elbows))
	case "wye 45 deg", "wye 30 deg":
		return put(c.Duct.Name, "entry", fmt.Sprintf("\"%g deg\"", float64(c.Angle)))
	case "wider pipe":
		if c.Stretch != nil {
			return ""
		}
		return put(c.Duct.Name, "size", fmt.Sprintf("\"%.9g mm\"", float64(c.Size)*1000))
	case "collector nearer":
		return replaced(t, text, ", [4, 3, 3]]", "]")
	}
	t.Fatalf("no way to edit %q", c.Name)
	return ""
}

// checkReread holds a change against the shop file with it made.
func checkReread(t *testing.T, text string, f *First, c *Change) {
	t.Helper()
	after := edited(t, text, c)
	if after == "" {
		return
	}
	r := theResult(t, Reckon(mustRead(t, after)), f.Result.Use.Name, c.filter)
	if r.OnCurve != c.OnCurve || r.Captured != c.Captured || r.Carried != c.Carried || r.Flow != c.Fan {
		t.Errorf("%s on %v: on curve %v, captured %v, carried %v, fan %g; read anew %v, %v, %v, %g", c.Name, c.Duct, c.OnCurve, c.Captured, c.Carried, c.Fan, r.OnCurve, r.Captured, r.Carried, r.Flow)
	}
	for _, p := range r.Ports {
		if p.Port.Full() == f.Port.Full() && p.Flow != c.Flow {
			t.Errorf("%s: the port gets %g, read anew %g", c.Name, c.Flow, p.Flow)
		}
	}
}

func TestChangesOfRouted(t *testing.T) {
	k := Reckon(mustRead(t, routed))
	f := k.First(theResult(t, k, "Saw", ChangeOut))
	want := map[string]int{"clean filter": 1, "leak closed": 1, "shorter hose": 1, "wider hose": 1, "long elbows": 2, "wye 45 deg": 1, "wye 30 deg": 1, "wider pipe": 6, "collector nearer": 1}
	for i := range f.Changes {
		c := &f.Changes[i]
		want[c.Name]--
		checkReread(t, routed, f, c)
		if c.Work == "" || c.Gain != unit.Flow(unit.Six(float64(c.Flow-f.Flow))) {
			t.Errorf("%s: work %q, gain %g", c.Name, c.Work, c.Gain)
		}
		if i > 0 && f.Changes[i-1].OnCurve == c.OnCurve && unit.Compare(float64(f.Changes[i-1].Gain), float64(c.Gain)) < 0 {
			t.Errorf("%s stands before %s with less gain", f.Changes[i-1].Name, c.Name)
		}
	}
	for name, left := range want {
		if left != 0 {
			t.Errorf("%d too few of %q", left, name)
		}
	}
	// with a clean filter, for another machine: no filter to clean, no hose, the
	// same leak, a wye of 30 degrees in place of 45
	f = k.First(theResult(t, k, "Lathe", Clean))
	for i := range f.Changes {
		c := &f.Changes[i]
		checkReread(t, routed, f, c)
		if c.Name == "clean filter" || strings.Contains(c.Name, "hose") || c.Name == "wye 45 deg" && c.Duct.Name == "Lathe drop" {
			t.Errorf("%s is no change for the lathe", c.Name)
		}
	}
	// off the curve there is nothing to rank
	off := strings.Replace(routed, `["1.2 m3/s", "0 Pa"]`, `["0.41 m3/s", "2390 Pa"]`, 1)
	k = Reckon(mustRead(t, off))
	if r := theResult(t, k, "Everything open", Clean); k.First(r) != nil {
		t.Error("a use without machines has a weakest port")
	}
}

// One stretch of a duct in a wider pipe is the duct in two pieces that join in
// line.
func TestOneStretchWider(t *testing.T) {
	const before, after = `
[[duct]]
name = "Main"
to = "Fan"
size = "160 mm"
length = "10 m"
`, `
[[duct]]
name = "Main"
to = "Far"
size = "160 mm"
length = "4 m"
entry = "straight"
[[duct]]
name = "Far"
to = "Fan"
size = "180 mm"
length = "6 m"
`
	text := routed[:strings.Index(routed, "[[duct]]")]
	drops := `
[[duct]]
name = "Saw drop"
to = "Main"
size = "125 mm"
length = "4 m"
serves = ["Saw"]
[[duct]]
name = "Lathe drop"
to = %q
joins = %q
size = "120 mm"
length = "4 m"
serves = ["Lathe"]
[[gate]]
name = "Lathe gate"
on = "Lathe drop"
`
	k := Reckon(mustRead(t, text+before+fmt.Sprintf(drops, "Main", "4 m")))
	f := k.First(theResult(t, k, "Saw", Clean))
	i := slices.IndexFunc(f.Changes, func(c Change) bool { return c.Stretch != nil && c.Stretch.Name() == "Main 2" })
	if i < 0 {
		t.Fatal("no change of the main's second stretch")
	}
	r := theResult(t, Reckon(mustRead(t, text+after+fmt.Sprintf(drops, "Far", "0 m"))), "Saw", Clean)
	if c := f.Changes[i]; c.Flow != r.Ports[0].Flow || c.Fan != r.Flow || c.Gain <= 0 {
		t.Errorf("the change gives %g and %g m³/s, the file in two pieces %g and %g", c.Flow, c.Fan, r.Ports[0].Flow, r.Flow)
	}
}

// On a falling fan no change that only takes loss away lowers the collector's
// flow, and closing a hole never lowers a port's.
func TestChangesNeverHurt(t *testing.T) {
	counted := map[string]int{}
	for seed := uint64(0); seed < often()/4; seed++ {
		texts := []*shop.Shop{newDrawing(5600+seed, 7).shop(t), mustRead(t, rowOf(seed, 5))}
		for _, s := range texts {
			k := Reckon(s)
			for _, u := range k.Uses {
				for _, r := range u.Results {
					f := k.First(r)
					if f == nil {
						continue
					}
					for _, c := range f.Changes {
						counted[c.Name]++
						if !c.OnCurve {
							continue
						}
						grid := 2e-5 * float64(r.Flow)
						// a wider pipe or hose may meet what is next to it worse than before
						if c.Name != "wider pipe" && c.Name != "wider hose" && c.Name != "leak closed" && float64(c.Fan-r.Flow) < -grid {
							t.Errorf("seed %d, %s: %s takes the fan from %g to %g m³/s", seed, u.Name, c.Name, r.Flow, c.Fan)
						}
						if c.Name == "leak closed" && float64(c.Gain) < -grid {
							t.Errorf("seed %d, %s: a hole closed takes %g m³/s from the port", seed, u.Name, -c.Gain)
						}
					}
				}
			}
		}
	}
	for _, name := range []string{"clean filter", "leak closed", "hose straight", "shorter hose", "wider hose", "long elbows", "wye 45 deg", "wye 30 deg", "wider pipe"} {
		if counted[name] == 0 {
			t.Errorf("no %s among the changes", name)
		}
	}
}

// Changes agree with the files that say them, on random rows of drops.
func TestChangesOfRows(t *testing.T) {
	for seed := uint64(0); seed < often()/10; seed++ {
		text := strings.ReplaceAll(rowOf(seed, 4), "hose = { length", "hose = { size = \"90 mm\", length")
		k := Reckon(mustRead(t, text))
		for _, u := range k.Uses[:4] {
			for _, r := range u.Results {
				if f := k.First(r); f != nil {
					for i := range f.Changes {
						checkReread(t, text, f, &f.Changes[i])
					}
				}
			}
		}
	}
}

// C01: what helps the planer at the far end most is the run's size. Its hose at
// the machine is three feet here; the ten at the collector are a duct.
func TestCaseWhatToChange(t *testing.T) {
	k := readCase(t, "c01-planer-far-end.toml")
	f := k.First(theResult(t, k, "Planer", NoFilter))
	if f.Port.Machine.Name != "Planer" || !between(f.Share, 0.50, 0.65) {
		t.Errorf("weakest: %s at %g", f.Port.Full(), f.Share)
	}
	if c := f.Changes[0]; c.Name != "wider pipe" || c.Duct.Name != "Planer pipe" {
		t.Errorf("first: %s on %s, want a wider run", c.Name, c.Duct.Name)
	}
	i := slices.IndexFunc(f.Changes, func(c Change) bool { return c.Name == "shorter hose" })
	if i < 1 || f.Changes[max(i, 0)].Gain <= 0 {
		t.Errorf("the hose stands at %d of %d: %+v", i, len(f.Changes), f.Changes)
	}
}

// C15: a hole is a hood. At 4 in wg a hole of 2 in draws about 105 cfm, one of
// 4 in about 420; the far leg falls under what carries, and closing the hole
// brings it back.
func TestCaseHoleUpstream(t *testing.T) {
	const text = `
[shop]
name = "Grown line"
[method]
size_changes = "none"
[[collector]]
name = "Fan"
inlet = "6 in"
claims = { flow = "1000 cfm", suction = "4.7 inwg" }
[[machine]]
name = "Planer"
kind = "planer"
port = { size = "4 in", flow = "390 cfm", hood_loss = 1.0 }
[[duct]]
name = "Line"
to = "Fan"
size = "6 in"
length = "30 ft"
[[duct]]
name = "Leg"
to = "Line"
size = "4 in"
length = "20 ft"
entry = "straight"
fittings = ["elbow 90", "elbow 90"]
serves = ["Planer"]
`
	hole := "[[leak]]\non = \"Line\"\nhole = \"4 in\"\nat = \"0 ft\"\n"
	k := Reckon(mustRead(t, text+hole))
	r := theResult(t, k, "Planer", NoFilter)
	whole := theResult(t, Reckon(mustRead(t, text)), "Planer", NoFilter)
	if v := at(t, r, "Leg", 1); v.Carries || float64(v.Velocity) > 3500*fpm || !at(t, whole, "Leg", 1).Carries {
		t.Errorf("with the hole the leg runs at %.0f fpm, without it at %.0f", float64(v.Velocity)/fpm, float64(at(t, whole, "Leg", 1).Velocity)/fpm)
	}
	f := k.First(r)
	i := slices.IndexFunc(f.Changes, func(c Change) bool { return c.Name == "leak closed" })
	if i < 0 || f.Changes[i].Flow != whole.Ports[0].Flow || r.Captured || !f.Changes[i].Captured {
		t.Errorf("closing the hole: %+v, want %g m³/s", f.Changes[max(i, 0)], whole.Ports[0].Flow)
	}
	// the case's figures, scaled to the suction at the hole
	suction := -float64(at(t, r, "Line", 1).Start) / inwg
	if got := float64(r.Leaks[0].Flow) / cfm; math.Abs(got/(420*math.Sqrt(suction/4))-1) > 0.1 {
		t.Errorf("the hole draws %.0f cfm at %.2f in wg; 420 at 4 in wg", got, suction)
	}
}

// Every change of the ducts together gives a port at least what the best of
// them gives alone, and the filter stays as it is. Where none gains, it is what
// the port gets now.
func TestEveryChangeTogether(t *testing.T) {
	k := Reckon(mustRead(t, routed))
	for _, filter := range []string{Clean, ChangeOut} {
		f := k.First(theResult(t, k, "Saw", filter))
		best := f.Flow
		for _, c := range f.Changes {
			if c.OnCurve && c.Name != "clean filter" {
				best = max(best, c.Flow)
			}
		}
		if f.All <= best {
			t.Errorf("%s: together %g m³/s, the best alone %g", filter, f.All, best)
		}
		f.Changes = nil
		if got := f.together(k.TreeOf(f.Result.Collector)); got != f.Flow {
			t.Errorf("%s: with no change %g, want %g", filter, got, f.Flow)
		}
	}
}

// A hose that is pulled out has nothing to pull; one that is not gains.
func TestHoseStraight(t *testing.T) {
	for said, want := range map[string]bool{"true": false, "false": true} {
		text := strings.Replace(routed, "hose = { ", "hose = { stretched = "+said+", ", 1)
		k := Reckon(mustRead(t, text))
		f := k.First(theResult(t, k, "Saw", Clean))
		i := slices.IndexFunc(f.Changes, func(c Change) bool { return c.Name == "hose straight" })
		if (i >= 0) != want || want && f.Changes[i].Gain <= 0 {
			t.Errorf("stretched = %s: at %d of %+v", said, i, f.Changes)
		}
	}
}
