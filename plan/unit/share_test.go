package unit

import "testing"

// A share that falls short is never printed as all of it.
func TestPercent(t *testing.T) {
	for share, want := range map[float64]string{0: "0", 0.5: "50", 0.994: "99", 0.996: "99.6", 0.97: "97", 1: "100", 1.004: "100", 1.12: "112"} {
		if got := Percent(share); got != want {
			t.Errorf("%g: %s, want %s", share, got, want)
		}
	}
}

func TestSixOf(t *testing.T) {
	if got := SixOf(Length(1.23456789)); got != 1.23457 {
		t.Errorf("%g", float64(got))
	}
}
