package sequence

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/control/timing"
	"dustbook/plan/control/trace"
	"dustbook/plan/shop"
)

// school is the example school's works, with round figures for its fan's
// starts, rest and coasting.
func school(t testing.TB) *Works {
	t.Helper()
	w := worksOf(t, "../../../content/example/school.toml")
	c := &w.Head.Collectors[0] // the stories reckoned by hand are told of these, whatever the example gives
	c.Starts, c.Within, c.Rest, c.Coast = 3, 3600_000, 30_000, 60_000
	return w
}

func worksOf(t testing.TB, file string) *Works {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := shop.Read("shop.toml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	k := control.Reckon(s)
	w, err := Of(s, k, timing.Reckon(s, k, timing.Air{}))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// told is a trace in words, a line a record, without the air.
func told(t *trace.Trace) string {
	var b strings.Builder
	for i := range t.Records {
		if r := &t.Records[i]; r.Kind != trace.AirIs {
			fmt.Fprintf(&b, "%d %s\n", r.At, t.Says(r))
		}
	}
	return b.String()
}

// pair is a shop of two collectors: a saw with a port on each, a sander whose
// gate someone has to look at, a drill whose trigger forgets its zone gate, and
// a switch without a machine. One gate moves at a time.
func pair(t testing.TB) *Works {
	t.Helper()
	gate := func(name string, c int, proof trace.Proof, zones ...int) trace.Gate {
		return trace.Gate{Name: name, Collector: c, Zones: zones, Proof: proof, Travel: 1000, Margin: 500}
	}
	way := func(c int, whole bool, gates ...int) trace.Way {
		return trace.Way{Port: "port", Collector: c, Gates: gates, Whole: whole}
	}
	zone := gate("Zone", 0, trace.BySwitch)
	zone.Zone = true
	saw := []trace.Way{way(0, true, 1, 0), way(1, true, 2)}
	sander, drill := []trace.Way{way(0, true, 3, 0)}, []trace.Way{way(0, false, 4, 0)}
	h := &trace.Head{
		Moves: 1,
		Gates: []trace.Gate{zone, gate("Saw below", 0, trace.BySwitch, 0), gate("Saw above", 1, trace.ByTime), gate("Sander", 0, trace.ByPerson, 0), gate("Drill", 0, trace.ByTime, 0)},
		Collectors: []trace.Collector{
			{Name: "Big", Started: true, Coast: 20_000},
			{Name: "Small", Started: true, Coast: 10_000, Rest: 15_000, Starts: 2, Within: 600_000}},
		Machines: []trace.Machine{{Name: "Saw", Ways: saw}, {Name: "Sander", Ways: sander}, {Name: "Drill", Ways: drill}},
		Triggers: []trace.Trigger{
			{Name: "Saw runs", Machine: 0, Opens: []int{0, 1, 2}, Starts: []int{0, 1}, Ways: saw, StartDelay: 1000, RunOn: 6000},
			{Name: "Sander runs", Machine: 1, Opens: []int{0, 3}, Starts: []int{0}, Ways: sander, StartDelay: 1000, RunOn: 4000},
			{Name: "Drill runs", Machine: 2, Opens: []int{4}, Starts: []int{0}, Ways: drill, StartDelay: 1000, RunOn: 4000},
			{Name: "Switch", Machine: trace.None, Latched: true, Opens: []int{2}, Starts: []int{1}, Ways: saw[1:], StartDelay: 1000, RunOn: 4000},
			{Name: "Small", Machine: trace.None, Latched: true, Purge: true, Turns: []int{3}, Starts: []int{1}, RunOn: 8000},
		},
		Stretches: []string{"Trunk"},
		Stops:     []trace.Stop{{Name: "Stop", Collectors: []int{0, 1}}},
	}
	w, err := Prepare(h)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
