package duct

import (
	"math"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// The equal-area points are the middles of n rings of equal area: ring i of n
// lies at (1 − √((2i−1)/(2n)))/2 of the bore from the wall, and its mirror.
// Plain geometry, no source; the set of 20 agrees with the one the trade
// prints, which is from memory.
func TestEqualAreaPoints(t *testing.T) {
	seen := 0
	for _, s := range TraverseSets() {
		if !strings.HasPrefix(s.Family, "equal-area") {
			continue
		}
		seen++
		n := len(s.Fractions) / 2
		for i := 1; i <= n; i++ {
			want := (1 - math.Sqrt(float64(2*i-1)/float64(2*n))) / 2
			at := n - i // the outermost ring stands first
			if off := math.Abs(s.Fractions[at] - want); off > 0.00006 {
				t.Errorf("%s: point %d at %v, the ring is at %.5f", s.Family, at+1, s.Fractions[at], want)
			}
		}
	}
	if seen != 3 {
		t.Errorf("%d equal-area sets", seen)
	}
}

// The log-linear points are those of ISO 3966. Its radii r/R for three, four
// and five points on a radius are from memory; (1 − r/R)/2 gives the shares
// of the bore, which public manuals of instruments print to three decimals.
func TestLogLinearPoints(t *testing.T) {
	radii := map[string][]float64{
		"log-linear 6":  {0.9358, 0.7302, 0.3586},
		"log-linear 8":  {0.9576, 0.7664, 0.6320, 0.3106},
		"log-linear 10": {0.9622, 0.8470, 0.6950, 0.5658, 0.2776},
	}
	for _, s := range TraverseSets() {
		want, is := radii[s.Family]
		if !is {
			continue
		}
		delete(radii, s.Family)
		if len(s.Fractions) != 2*len(want) {
			t.Errorf("%s: %d points", s.Family, len(s.Fractions))
			continue
		}
		for i, r := range want {
			if math.Abs(s.Fractions[i]-(1-r)/2) > 0.0007 {
				t.Errorf("%s: point %d at %v, want %.4f", s.Family, i+1, s.Fractions[i], (1-r)/2)
			}
		}
	}
	if len(radii) > 0 {
		t.Errorf("not in the data: %v", radii)
	}
}

// Every set mirrors itself about the centre and goes from wall to wall.
func TestTraverseSetsMirror(t *testing.T) {
	for _, s := range TraverseSets() {
		for i, x := range s.Fractions {
			if j := len(s.Fractions) - 1 - i; math.Abs(x+s.Fractions[j]-1) > 1e-9 || i > 0 && x <= s.Fractions[i-1] {
				t.Errorf("%s: points %d and %d at %v and %v", s.Family, i+1, j+1, x, s.Fractions[j])
			}
		}
	}
}

// A duct of 10 in is narrow and gets six points; the next size gets ten. The
// bound is that of a public manual, as reported.
func TestTraverseSetFor(t *testing.T) {
	for size, want := range map[string]string{"4 in": "log-linear 6", "10 in": "log-linear 6", "10.1 in": "log-linear 10", "14 in": "log-linear 10", "254 mm": "log-linear 6", "255 mm": "log-linear 10"} {
		if got := TraverseSetFor(unit.Must[unit.Length](size)).Family; got != want {
			t.Errorf("%s: %s, want %s", size, got, want)
		}
	}
}

// A published example, on a public page on averaging a pitot traverse: 0.16,
// 0.25 and 0.36 in wg have the mean root 0.50, which is 2,002 ft/min by the
// constant 4005 (its half, cut off); the mean of the pressures first is wrong
// and gives 2,029.
func TestTraverseExample(t *testing.T) {
	pressures, in, constant, basis := TraverseExample()
	if len(pressures) != 3 || in != "in wg" || pressures[0] != 0.16 || pressures[2] != 0.36 || basis.Document == "" {
		t.Fatalf("%v by %v", pressures, basis)
	}
	root := MeanRoot(pressures)
	if math.Abs(root-0.50) > 1e-12 || math.Floor(root*constant) != 2002 {
		t.Errorf("mean root %v, %v ft/min", root, root*constant)
	}
	if wrong := RootOfMean(pressures) * constant; math.Round(wrong) != 2029 {
		t.Errorf("the mean first gives %v", wrong)
	}
	if MeanRoot(nil) != 0 || RootOfMean(nil) != 0 || MeanRoot([]float64{-0.01, 0.04}) != 0.1 {
		t.Error("no reading, or one below zero")
	}
}
