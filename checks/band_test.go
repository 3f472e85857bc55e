package checks_test

import (
	"runtime"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan/unit"
)

// bandOf is the value of a finding and the ends of its band, in SI.
func bandOf(t *testing.T, check, about string, changes ...change) (value, low, high float64) {
	t.Helper()
	f := only(t, checks.Run(planOf(t, changes...)), check, about)
	if len(f.Figures) != 3 {
		t.Fatalf("figures %+v, want a value and two ends", f.Figures)
	}
	return f.Figures[0].Value, f.Figures[1].Value, f.Figures[2].Value
}

// A need just under the low end is met, just over it thin; just under the high
// end thin, just over it not met. What a port needs changes no flow.
func TestNeedAgainstBand(t *testing.T) {
	needs := func(flow float64) change {
		return change{"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[machine]]", "makes = \"wood\"\nport = { size = \"4 in\", flow = \"" + unit.Short(flow) + " m3/s\" }\n[[machine]]"}
	}
	value, low, high := bandOf(t, "air-captured", "Saw")
	if !(low < value && value < high) {
		t.Fatalf("%g is not between %g and %g", value, low, high)
	}
	for _, c := range []struct {
		need   float64
		state  checks.State
		weight checks.Weight
		says   string
	}{
		{low * 0.999, checks.Met, checks.Know, "where it needs"},
		{low * 1.001, checks.Thin, checks.Know, "where it needs"},
		{value * 1.001, checks.Thin, checks.Know, "cfm it needs"},
		{high * 0.999, checks.Thin, checks.Know, "cfm it needs"},
		{high * 1.001, checks.NotMet, checks.Mend, "cfm it needs"},
	} {
		f := only(t, checks.Run(planOf(t, needs(c.need))), "air-captured", "Saw")
		if f.State != c.state || f.Weight != c.weight || !strings.Contains(f.Says, c.says) || !strings.Contains(f.Says, "Eight times of ten it is between ") {
			t.Errorf("need %g in %g to %g: %s, %s, want %s, %s: %s", c.need, low, high, f.State, f.Weight, c.state, c.weight, f.Says)
		}
	}
}

// The same of the speed that a machine's dust needs.
func TestTransportAgainstBand(t *testing.T) {
	wants := func(speed float64) change {
		return change{"name = \"Lathe\"\n", "name = \"Lathe\"\ntransport = \"" + unit.Short(speed) + " m/s\"\n"}
	}
	value, low, high := bandOf(t, "dust-carried", "Lathe", wants(20))
	for _, c := range []struct {
		need   float64
		state  checks.State
		weight checks.Weight
	}{
		{low * 0.999, checks.Met, checks.Know},
		{low * 1.001, checks.Thin, checks.Know},
		{value * 1.001, checks.Thin, checks.Know},
		{high * 1.001, checks.NotMet, checks.Know},
		{value * 1.26, checks.NotMet, checks.Mend},
	} {
		f := only(t, checks.Run(planOf(t, wants(c.need))), "dust-carried", "Lathe")
		if f.State != c.state || f.Weight != c.weight || !strings.Contains(f.Says, "Eight times of ten it is between ") {
			t.Errorf("need %g in %g to %g: %s, %s, want %s, %s: %s", c.need, low, high, f.State, f.Weight, c.state, c.weight, f.Says)
		}
	}
}

// Against a speed of common practice nothing is better than thin; what falls
// clearly short of it still settles.
func TestTransportOfPractice(t *testing.T) {
	main := func(size string) change {
		return change{"bonded = \"2 ohm\"\nsize = \"5 in\"", "bonded = \"2 ohm\"\nsize = \"" + size + "\""}
	}
	for size, want := range map[string]checks.State{"6 in": checks.Thin, "10 in": checks.NotMet} {
		f := only(t, checks.Run(planOf(t, main(size))), "dust-carried", "Saw")
		if f.State != want || want == checks.Thin && !strings.Contains(f.Says, "common practice") {
			t.Errorf("%s: %s: %s", size, f.State, f.Says)
		}
	}
}

// So near the end of the curve that slightly other figures leave it there is no
// band: what is enough by itself is thin, what falls short does not meet.
func TestNoBand(t *testing.T) {
	end := change{`["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]`, `["1000 cfm", "10.15 inwg"]`}
	lathe := func(flow string) change {
		return change{"makes = \"wood\"\nport = { size = \"4 in\", flow = \"400 cfm\" }\n[[collector]]", "makes = \"wood\"\nport = { size = \"4 in\", flow = \"" + flow + "\" }\n[[collector]]"}
	}
	for _, e := range []expected{
		{"enough", []change{end}, "air-captured", "Lathe", checks.Thin, checks.ByModel, checks.Know, "How uncertain that is cannot be told"},
		{"enough speed", []change{end}, "dust-carried", "Lathe", checks.Thin, checks.ByModel, checks.Know, "How uncertain that is cannot be told"},
		{"too little", []change{end, lathe("1500 cfm")}, "air-captured", "Lathe", checks.NotMet, checks.ByModel, checks.Mend, "cfm it needs"},
	} {
		t.Run(e.name, func(t *testing.T) { e.hold(t, checks.Run(planOf(t, e.changes...))) })
	}
	f := only(t, checks.Run(planOf(t, end)), "air-captured", "Lathe")
	if len(f.Figures) != 1 || !strings.Contains(f.Do, "rest of the fan curve") {
		t.Errorf("figures %+v; do %s", f.Figures, f.Do)
	}
}

// However many processors solve the bands, the findings are the same.
func TestFindingsOnOneProcessor(t *testing.T) {
	many := sentences(checks.Run(planOf(t)))
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if one := sentences(checks.Run(planOf(t))); one != many {
		t.Errorf("on one processor\n%s\nelse\n%s", one, many)
	}
}

func sentences(list []checks.Finding) string {
	var text strings.Builder
	for _, f := range list {
		text.WriteString(f.Says + f.Do + "\n")
	}
	return text.String()
}
