package duct

import (
	"math"
	"testing"
)

func TestBand(t *testing.T) {
	b := Band{Low: 100, High: 100}.Add(120)
	for _, c := range []struct {
		x, off, share float64
		agrees        bool
	}{
		{100, 0, 0, true}, {110, 0, 0, true}, {120, 0, 0, true},
		{132, 12, 0.1, true}, {132.001, 12.001, 0.100008, false},
		{90, -10, -0.1, true}, {89.999, -10.001, -0.10001, false},
		{100.00000001, 0, 0, true}, {99.9999999, 0, 0, true}, // the same to six digits
	} {
		if off, share := b.Off(c.x), b.Share(c.x); math.Abs(off-c.off) > 1e-9 || math.Abs(share-c.share) > 1e-9 || b.Agrees(c.x) != c.agrees {
			t.Errorf("%g: off %g, share %g, agrees %v", c.x, off, share, b.Agrees(c.x))
		}
	}
	if w := b.Within(); w.Low != 90 || w.High != 132 {
		t.Errorf("within %v", w)
	}
	if w := (Band{-120, -100}).Within(); w.Low != -132 || w.High != -90 {
		t.Errorf("within %v", w)
	}
	none := Band{}
	if none.Agrees(1e-9) || !none.Agrees(0) || !math.IsInf(none.Share(1), 1) {
		t.Error("nought is agreed with by what is not nought")
	}
}

// Every figure of commissioning that the sheets ask for is in the data.
func TestProofFigures(t *testing.T) {
	for _, name := range []string{"agree", "repeat agrees", "repeat least", "repeat most", "traverse agrees", "straight before traverse", "straight after fan", "straight behind traverse", "tap at tapered hood", "tap at plain hood", "faster"} {
		if x, basis := ProofFigure(name); x <= 0 || basis.Mark == 0 {
			t.Errorf("%s: %g, %v", name, x, basis)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("a figure that is not there was found")
		}
	}()
	ProofFigure("none")
}
