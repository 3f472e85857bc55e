package room

import (
	"fmt"
	"testing"

	"dustbook/plan/unit"
)

// The allowed times of 29 CFR 1910.95, table G-16a, as printed: to the last
// digit that the table gives.
func TestAllowedTimes(t *testing.T) {
	r := rateNamed(t, "OSHA, limit")
	for _, c := range []struct {
		level unit.Sound
		hours string
		digit float64
	}{
		{80, "32", 1}, {82, "24.3", .1}, {83, "21.1", .1}, {85, "16", 1}, {88, "10.6", .1}, {90, "8", 1}, {92, "6.1", .1},
		{95, "4", 1}, {97, "3.0", .1}, {100, "2", 1}, {102, "1.5", .1}, {105, "1", 1}, {110, "0.5", .1}, {115, "0.25", .01},
	} {
		digits := map[float64]int{1: 0, .1: 1, .01: 2}[c.digit]
		if got := fmt.Sprintf("%.*f", digits, r.Allowed(c.level)); got != c.hours {
			t.Errorf("%g dBA: %s h, want %s", float64(c.level), got, c.hours)
		}
	}
}

// The published example prints 131 % with the time as tabled, 6.1 h; the
// formula gives 131.95 %. The day of three levels was computed beforehand: 106.25, 87.5 and 408.5 %.
func TestDoses(t *testing.T) {
	day := []Exposure{{95, 2}, {90, 3}, {85, 3}}
	for _, c := range []struct {
		rate    string
		day     []Exposure
		percent string
		average string
	}{
		{"OSHA, limit", []Exposure{{92, 8}}, "131.95", "92.00"},
		{"OSHA, hearing programme", day, "106.25", "90.44"},
		{"OSHA, limit", day, "87.50", "89.04"},
		{"NIOSH", day, "408.54", "91.11"},
		{"NIOSH", []Exposure{{85, 8}}, "100.00", "85.00"},
		{"OSHA, limit", []Exposure{{90, 8}}, "100.00", "90.00"},
	} {
		r := rateNamed(t, c.rate)
		dose := r.Dose(c.day)
		if got := fmt.Sprintf("%.2f", 100*dose); got != c.percent {
			t.Errorf("%s, %v: %s %%, want %s", c.rate, c.day, got, c.percent)
		}
		if got := fmt.Sprintf("%.2f", float64(r.Average(dose).V)); got != c.average {
			t.Errorf("%s, %v: average %s, want %s", c.rate, c.day, got, c.average)
		}
	}
}

// What lies under a threshold does not count, what lies on it does.
func TestThreshold(t *testing.T) {
	r := rateNamed(t, "OSHA, limit")
	if dose := r.Dose([]Exposure{{89.9, 8}}); dose != 0 {
		t.Errorf("under the threshold: %g", dose)
	}
	if r.Average(0).Known() {
		t.Error("no dose has an average")
	}
	if dose := r.Dose([]Exposure{{90, 8}}); dose != 1 {
		t.Errorf("at the threshold: %g", dose)
	}
	if dose := rateNamed(t, "NIOSH").Dose([]Exposure{{60, 8}}); dose == 0 {
		t.Error("a rate without a threshold counts every level")
	}
}

// Two alike are 3.0 dB more than one, ten alike 10 dB (acoustics textbooks,
// from memory).
func TestTogether(t *testing.T) {
	if got := Together(90, 90); got != 93.0103 {
		t.Errorf("two alike: %g", float64(got))
	}
	if got := Together(80, 80, 80, 80, 80, 80, 80, 80, 80, 80); got != 90 {
		t.Errorf("ten alike: %g", float64(got))
	}
}

func rateNamed(t *testing.T, name string) Rate {
	t.Helper()
	for _, r := range Rates() {
		if r.Name == name {
			return r
		}
	}
	t.Fatalf("no rate %q", name)
	return Rate{}
}

// Lines of table A-1 of 29 CFR 1910.95, appendix A, from memory: the dose in
// percent and the time-weighted average it stands for.
func TestAverages(t *testing.T) {
	r := rateNamed(t, "OSHA, hearing programme")
	for percent, want := range map[float64]string{25: "80.0", 50: "85.0", 75: "87.9", 100: "90.0", 150: "92.9", 200: "95.0", 400: "100.0"} {
		if got := fmt.Sprintf("%.1f", float64(r.Average(percent/100).V)); got != want {
			t.Errorf("a dose of %g %%: %s dBA, want %s", percent, got, want)
		}
	}
}

// The dose that stands for a limit is that of a full day at the limit: half a
// dose at the action level, a full one at the others.
func TestLimitDose(t *testing.T) {
	for name, share := range map[string]float64{"OSHA, hearing programme": 0.5, "OSHA, limit": 1, "NIOSH": 1} {
		r := rateNamed(t, name)
		if got := r.LimitDose(); got != share {
			t.Errorf("%s: a day at the limit gives %g, want %g", name, got, share)
		}
	}
}

// At 88 dBA for a day the action level is reached, for an hour it is not; the
// figure itself is reached where the text speaks from there on, and not passed.
func TestBeyond(t *testing.T) {
	for _, c := range []struct {
		rate  string
		level unit.Sound
		hours float64
		want  bool
	}{
		{"OSHA, hearing programme", 88, 8, true},
		{"OSHA, hearing programme", 88, 1, false},
		{"OSHA, hearing programme", 85, 8, true},
		{"OSHA, hearing programme", 84.9, 8, false},
		{"OSHA, limit", 90, 8, false},
		{"OSHA, limit", 90.1, 8, true},
		{"NIOSH", 85, 8, true},
		{"NIOSH", 84.9, 8, false},
	} {
		r := rateNamed(t, c.rate)
		if got := r.Beyond(r.Dose([]Exposure{{c.level, c.hours}})); got != c.want {
			t.Errorf("%s, %g dBA for %g h: %v", c.rate, float64(c.level), c.hours, got)
		}
	}
	if Full(1) || !Full(1.001) {
		t.Error("more than a full dose begins at the wrong place")
	}
}

// The daily level by energy. The day of three levels was computed beforehand:
// 91.09. A full day at one level has that level, half a day 3.01 less, and a day
// without hours none.
func TestDaily(t *testing.T) {
	for _, c := range []struct {
		day  []Exposure
		want string
	}{
		{[]Exposure{{95, 2}, {90, 3}, {85, 3}}, "91.09"},
		{[]Exposure{{85, 8}}, "85.00"},
		{[]Exposure{{85, 4}}, "81.99"},
		{[]Exposure{{85, 0}}, "0.00"},
		{nil, "0.00"},
	} {
		if got := fmt.Sprintf("%.2f", float64(Daily(c.day))); got != c.want {
			t.Errorf("%v: %s, want %s", c.day, got, c.want)
		}
	}
}
