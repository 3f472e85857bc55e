package unit

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

func TestReadGauge(t *testing.T) {
	for text, want := range map[string]Gauge{
		"26 ga": 26, "26ga": 26, "26 GA": 26, "26 ga.": 26, "26 gauge": 26, "26-gauge": 26,
		"26 Gage": 26, " 3 ga ": 3, "38 ga": 38,
	} {
		got, err := ReadGauge(text)
		if err != nil || got != want {
			t.Errorf("%q: %v, %v", text, got, err)
		}
		if again, err := ReadGauge(got.String()); err != nil || again != want {
			t.Errorf("%q prints as %q, which reads as %v, %v", text, got, again, err)
		}
	}
}

func TestReadGaugeRefuses(t *testing.T) {
	for _, c := range []struct{ text, hint string }{
		{"", `Write a whole number and "ga"`},
		{"ga", `expected a sheet gauge, such as "26 ga" or "26 gauge"`},
		{"26", `Write the unit: "26 ga".`},
		{"26 gx", `Write "26 ga".`},
		{"26.5 ga", `Write a whole number`},
		{"-26 ga", `Write a whole number`},
		{"26/2 ga", `Write a whole number`},
		{"2/0 ga", `Write a whole number`},
		{"0.55 mm", `Write a whole number`},
		{"1 mm", "not a length"},
		{"26 AWG", "not a conductor size"},
		{"2 ga", "Write a gauge from 3 ga to 38 ga."},
		{"39 ga", "Write a gauge from 3 ga to 38 ga."},
		{strings.Repeat("9", 99), "Write the unit"},
		{strings.Repeat("9", 97) + " ga", "Write a gauge from"},
		{strings.Repeat("9", 101), "Write the gauge alone"},
	} {
		g, err := ReadGauge(c.text)
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(e.Error(), c.hint) || g != 0 {
			t.Errorf("%q: %v, %v: want it to say %s", c.text, g, err, c.hint)
		}
	}
}

// Areas in circular mils against the National Electrical Code, chapter 9,
// table 8, as a public copy reports it; the table rounds to tens.
func TestWireGaugeAgainstTable8(t *testing.T) {
	for gauge, mils := range map[int]float64{18: 1620, 16: 2580, 14: 4110, 12: 6530, 10: 10380, 8: 16510} {
		w := Must[Wire](fmt.Sprintf("%d AWG", gauge))
		got := float64(w) / (math.Pi / 4 * 0.001 * inch * 0.001 * inch)
		if math.Abs(got-mils) > 5 {
			t.Errorf("%d AWG: %.1f circular mils, the table says %v", gauge, got, mils)
		}
	}
}

// ASTM B258 defines the gauge by two diameters, 36 AWG of 0.005 in and 4/0 of
// 0.46 in, and by equal ratios between (from memory).
func TestWireGaugeDefinition(t *testing.T) {
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	for _, c := range []struct {
		text string
		want float64
	}{
		{"36 AWG", area(0.005 * inch)},
		{"4/0 AWG", area(0.46 * inch)},
		{"0000 AWG", area(0.46 * inch)},
	} {
		if got := float64(Must[Wire](c.text)); math.Abs(got/c.want-1) > 1e-9 {
			t.Errorf("%s: %v m2, want %v", c.text, got, c.want)
		}
	}
	same := [][2]string{{"1/0 AWG", "0 AWG"}, {"2/0 AWG", "00 AWG"}, {"3/0 AWG", "000 AWG"}, {"1/0 awg", "1/0AWG"}}
	for _, c := range same {
		if a, b := Must[Wire](c[0]), Must[Wire](c[1]); a != b {
			t.Errorf("%s is %v, %s is %v", c[0], a, c[1], b)
		}
	}
	order := []string{"40 AWG", "18 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG", "250 kcmil"}
	for i := range order[1:] {
		if thin, thick := Must[Wire](order[i]), Must[Wire](order[i+1]); thin >= thick {
			t.Errorf("%s (%v) is not thinner than %s (%v)", order[i], thin, order[i+1], thick)
		}
	}
}

// Every size of the gauge gives back the number it was read by, and an area
// next to one, a metric size or a size beyond the ends gives none.
func TestWireNumber(t *testing.T) {
	numbers := []string{"4/0", "3/0", "2/0"}
	for n := range 41 {
		numbers = append(numbers, fmt.Sprint(n))
	}
	for _, number := range numbers {
		w := Must[Wire](number + " AWG")
		if got, ok := w.Number(); !ok || got != number {
			t.Errorf("%s AWG is %q %v", number, got, ok)
		}
		for _, off := range []Wire{1 - 2e-5, 1 + 2e-5} {
			if got, ok := (w * off).Number(); ok {
				t.Errorf("next to %s AWG: %q", number, got)
			}
		}
	}
	for text, want := range map[string]string{"00 AWG": "2/0", "1/0 AWG": "0"} {
		if got, ok := Must[Wire](text).Number(); !ok || got != want {
			t.Errorf("%s is %q %v", text, got, ok)
		}
	}
	for _, w := range []Wire{Must[Wire]("2.5 mm2"), Must[Wire]("0.14 mm2"), Must[Wire]("250 kcmil"), 0, -1} {
		if got, ok := w.Number(); ok {
			t.Errorf("%v m2 is %q", w, got)
		}
	}
}
