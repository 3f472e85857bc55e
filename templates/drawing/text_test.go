package drawing

import (
	"strings"
	"testing"
)

// TestWidths checks the table against widths of the common sans face as they
// are published with its metrics (from memory), and the stand-ins for signs
// outside it.
func TestWidths(t *testing.T) {
	for _, c := range []struct {
		sign          rune
		regular, bold int
	}{{' ', 278, 278}, {'0', 556, 556}, {'A', 667, 722}, {'M', 833, 833}, {'W', 944, 944}, {'i', 222, 278}, {'m', 833, 889}, {'.', 278, 278}, {'é', 556, 556}, {'€', otherWidth, otherWidth}} {
		for bold, want := range map[bool]int{false: c.regular, true: c.bold} {
			if got := signWidth(c.sign, bold); got < want || got > want+1 {
				t.Errorf("%c bold %v: %d, not %d", c.sign, bold, got, want)
			}
		}
	}
	for r := rune(' '); r < 0x100; r++ {
		if _, ok := widths[r]; !ok && (r < 0x7f || r >= 0xa0) {
			t.Errorf("no width for %q", r)
		}
	}
	if signWidth('箱', false) <= signWidth('M', false) || signWidth('🪚', false) <= signWidth('箱', false) || signWidth(0x301, false) != 0 || signWidth(0x202e, true) != 0 {
		t.Error("signs outside the table")
	}
	if textWidth("AA", false, 100) <= 2*66 {
		t.Error("a text is narrower than its signs")
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		most  int
		lines int
		want  []string
		short bool
	}{
		{"Table saw", 1000, 3, []string{"Table saw"}, false},
		{"Band saw by the lumber rack", 1000, 3, []string{"Band saw by", "the lumber rack"}, false},
		{"Band saw by the lumber rack", 760, 3, []string{"Band saw", "by the", "lumber rack"}, false},
		{"edge-sander", 700, 3, []string{"edge-", "sander"}, false},
		{"aaaaaaaaaaaaaaaaaaaa", 850, 3, []string{"aaaaaaaaaa", "aaaaaaaaaa"}, false},
		{"  two   gaps ", 2000, 1, []string{"two gaps"}, false},
		{"one two three four five six", 500, 2, []string{"one", "two t…"}, true},
		{"", 500, 2, []string{""}, false},
		{"W\u202eedih", 2000, 1, []string{"Wedih"}, false},
	} {
		got, short := wrap(c.text, false, 140, c.most, c.lines)
		if strings.Join(got, "|") != strings.Join(c.want, "|") || short != c.short {
			t.Errorf("%q in %d: %q %v, not %q %v", c.text, c.most, got, short, c.want, c.short)
		}
		for _, line := range got {
			if textWidth(line, false, 140) > c.most {
				t.Errorf("%q is wider than %d", line, c.most)
			}
		}
	}
}

// TestWrapKeepsSignsWhole checks that a sign made of several is not torn.
func TestWrapKeepsSignsWhole(t *testing.T) {
	family := "👩🏽\u200d🔧"
	got, _ := wrap(strings.Repeat(family, 9), false, 140, 900, 3)
	for _, line := range got {
		if strings.ReplaceAll(strings.TrimSuffix(line, "…"), family, "") != "" {
			t.Errorf("%q", line)
		}
	}
}

func TestFigure(t *testing.T) {
	for n, want := range map[int]string{0: "0", 5: "0.5", -5: "-0.5", 120: "12", -123: "-12.3", 1001: "100.1"} {
		if got := figure(n); got != want {
			t.Errorf("%d: %s, not %s", n, got, want)
		}
	}
	if tenths(12.34999999999) != tenths(12.35000000001) || tenths(-0.04) != 0 {
		t.Error("one rounding")
	}
}

func TestAxis(t *testing.T) {
	for _, c := range []struct {
		reaches, ticks, end, step float64
		decimals                  int
	}{{2200, 8, 2200, 200, 0}, {13, 6, 14, 2, 0}, {8.54, 6, 9, 1, 0}, {0.37, 6, 0.4, 0.05, 2}, {3200, 6, 3500, 500, 0}, {0, 6, 1, 0.2, 1}, {1, 8, 1, 0.1, 1}} {
		a := newAxis(c.reaches, c.ticks, 1000)
		if a.end != c.end || a.step != c.step || a.decimals != c.decimals {
			t.Errorf("%g: to %g by %g with %d decimals, not %+v", c.reaches, a.end, a.step, a.decimals, c)
		}
		if n := len(a.ticks()); n < 4 || n > 14 {
			t.Errorf("%g: %d ticks", c.reaches, n)
		}
		if a.at(0) != 0 || a.at(a.end) != 1000 {
			t.Errorf("%g: ends at %d", c.reaches, a.at(a.end))
		}
	}
}
