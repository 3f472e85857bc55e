package duct

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// The points are those of the log-linear rule of ISO 3966. Its radii r/R for
// three points on a radius, 0.3586, 0.7302 and 0.9358, are from memory; they
// give the positions by (1 − r/R)/2, and the other half by the mirror.
func TestTraversePointsAreLogLinear(t *testing.T) {
	var want []float64
	for _, r := range []float64{0.9358, 0.7302, 0.3586} {
		want = append(want, (1-r)/2)
	}
	for i := len(want) - 1; i >= 0; i-- {
		want = append(want, 1-want[i])
	}
	got := TraverseSetFor(0.1).Points(1)
	if len(got) != len(want) {
		t.Fatalf("%d points", len(got))
	}
	for i := range got {
		if math.Abs(float64(got[i])-want[i]) > 0.0006 {
			t.Errorf("point %d at %.4f of the bore, want %.4f", i+1, got[i], want[i])
		}
	}
}

// The plain mean of the speeds at the points is the mean speed of the duct.
// Held against the exact mean of the power law (1 − r/R)^(1/n), which is
// 2n²/((n+1)(2n+1)) of the speed at the centre: plain calculus, no source.
func TestTraverseMeanAgainstPowerLaw(t *testing.T) {
	for _, n := range []float64{6, 7, 8, 9} {
		sum := 0.0
		points := TraverseSetFor(0.1).Points(1)
		for _, p := range points {
			fromWall := 2 * math.Min(float64(p), 1-float64(p))
			sum += math.Pow(fromWall, 1/n)
		}
		exact := 2 * n * n / ((n + 1) * (2*n + 1))
		if mean := sum / float64(len(points)); math.Abs(mean/exact-1) > 0.005 {
			t.Errorf("1/%g power: %.4f of the speed at the centre, exactly %.4f", n, mean, exact)
		}
	}
}

// twoMains is a main with a bend, a gate and a branch, and a short one.
const twoMains = `
[shop]
name = "Two mains"
units = "metric"
[[collector]]
name = "Fan"
inlet = "200 mm"
fan_curve = [["0 m3/s", "3000 Pa"], ["1 m3/s", "0 Pa"]]
[[machine]]
name = "Saw"
kind = "table saw"
port = { name = "cabinet", size = "120 mm", flow = "600 m3/h" }
[[machine]]
name = "Planer"
kind = "planer"
port = { name = "hood", size = "120 mm", flow = "700 m3/h" }
[[duct]]
name = "Main"
to = "Fan"
size = "200 mm"
route = [[0, 0, 3], [4, 0, 3], [4, 5, 3]]
[[duct]]
name = "Saw drop"
to = "Main"
size = "120 mm"
route = [[0, 0, 1], [0, 0, 3]]
serves = ["Saw"]
[[duct]]
name = "Planer drop"
to = "Main"
size = "120 mm"
entry = "45 deg"
route = [[4, 1, 1], [4, 1, 3]]
serves = ["Planer"]
[[gate]]
name = "Main gate"
on = "Main"
at = "1 m"
`

func TestTraversePlaces(t *testing.T) {
	list := Reckon(mustRead(t, twoMains)).Traverses()
	if len(list) != 1 {
		t.Fatalf("%d places, want one: drops of one machine are no mains", len(list))
	}
	v := list[0]
	// straight pieces: 0 to 1 m (gate), 1 to 4 (bend), 4 to 5 (branch), 5 to 9
	if v.Stretch.Name() != "Main 2" || !v.Long || v.Guessed {
		t.Errorf("%s, long %v, guessed %v", v.Stretch.Name(), v.Long, v.Guessed)
	}
	for name, c := range map[string][2]unit.Length{"place": {v.Place, 6.5}, "before": {v.Before, 1.5}, "behind": {v.Behind, 2.5}} {
		if unit.Compare(float64(c[0]), float64(c[1])) != 0 {
			t.Errorf("%s: %v m, want %v", name, c[0], c[1])
		}
	}
	var uses []string
	for _, r := range v.Results {
		uses = append(uses, r.Use.Name)
	}
	if len(uses) != 2 || uses[0] != "Saw" || uses[1] != "Planer" {
		t.Errorf("speeds for %v", uses)
	}
	// in a wider main no piece is as long as the data asks for, and the longest
	// is shared out in the same proportion
	short := replaced(t, replaced(t, twoMains, "[4, 5, 3]]", "[4, 3, 3]]"), "size = \"200 mm\"\nroute", "size = \"300 mm\"\nroute")
	v = Reckon(mustRead(t, short)).Traverses()[0]
	if v.Long || math.Abs(float64(v.Before)-3*7.5/10.5) > 1e-5 || unit.Compare(float64(v.Before+v.Behind), 3) != 0 {
		t.Errorf("long %v, %v m before and %v behind", v.Long, v.Before, v.Behind)
	}
	if v.Stretch.Name() != "Main 1" || unit.Compare(float64(v.Place), 1+3*7.5/10.5) != 0 {
		t.Errorf("%s at %v m", v.Stretch.Name(), v.Place)
	}
}

// Where the file counts a duct's elbows and does not say where they stand,
// the place is a guess.
func TestTraverseGuessed(t *testing.T) {
	text := replaced(t, yard, "length = \"12 m\"", "length = \"12 m\"\nfittings = [\"elbow 90\"]")
	guessed := map[string]bool{}
	for _, v := range Reckon(mustRead(t, text)).Traverses() {
		guessed[v.Stretch.Duct.Name] = v.Guessed
	}
	if !guessed["Main"] || len(guessed) < 2 {
		t.Errorf("%v", guessed)
	}
}
