package unit

import (
	"errors"
	"math"
	"testing"
	"unicode/utf8"
)

// FuzzRead reads any bytes as every kind. Nothing panics; what is accepted is
// short, finite, and printed so that it is read again; what is refused says
// why, and proposes only what is read.
func FuzzRead(f *testing.F) {
	for _, c := range goodTexts {
		f.Add(c.text)
	}
	for _, c := range badTexts {
		f.Add(c.text)
	}
	for _, text := range []string{"26 ga", "2000 cfm at 50 Pa", "0.5 A to 50 A"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		accepted := 0
		for _, k := range Kinds() {
			x, err := ReadKind(k, text)
			var e *Error
			if errors.As(err, &e) {
				checkError(t, k, e)
				continue
			}
			accepted++
			checkAccepted(t, k, text, x)
		}
		if accepted > 1 {
			t.Errorf("%q is read as more than one kind", text)
		}
		checkOthers(t, text)
	})
}

func checkAccepted(t *testing.T, k Kind, text string, x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) || utf8.RuneCountInString(text) > longestText {
		t.Fatalf("%q was read as %v", text, x)
	}
	if x == 0 && math.Signbit(x) {
		t.Fatalf("%q was read as a nought with a sign", text)
	}
	for _, s := range allScales {
		for _, sys := range systems {
			// A figure longer than a text may be, or a temperature that
			// rounds to under absolute zero, is no figure of a shop.
			if s.kind != k || len(s.print(sys, x)) > longestText || k == KindTemperature && x < 1 {
				continue
			}
			checkPrintThenRead(t, s, sys, x)
		}
	}
}

func checkOthers(t *testing.T, text string) {
	var e *Error
	if g, err := ReadGauge(text); err != nil && !errors.As(err, &e) || err == nil && (g < thickestGauge || g > thinnestGauge) {
		t.Errorf("%q as a gauge: %v, %v", text, g, err)
	}
	if _, _, err := ReadAt[Flow, Pressure](text); err != nil && !errors.As(err, &e) {
		t.Errorf("%q as a flow at a pressure: %v", text, err)
	}
	low, high, err := ReadRange[Current](text)
	if err != nil && !errors.As(err, &e) || err == nil && Compare(float64(low), float64(high)) > 0 {
		t.Errorf("%q as a range: %v to %v, %v", text, low, high, err)
	}
}
