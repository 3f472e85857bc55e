package invariant_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"dustbook/plan/control/invariant"
	"dustbook/plan/control/trace"
)

// head is one machine behind one gate of one collector.
func head() *trace.Head {
	ways := []trace.Way{{Port: "hood", Collector: 0, Gates: []int{0}, Whole: true}}
	return &trace.Head{
		Moves:      1,
		Gates:      []trace.Gate{{Name: "Gate", Proof: trace.BySwitch, Travel: 1000, Margin: 500}},
		Collectors: []trace.Collector{{Name: "Fan", Started: true, Coast: 10_000}},
		Machines:   []trace.Machine{{Name: "Saw", Ways: ways}},
		Triggers:   []trace.Trigger{{Name: "Runs", Machine: 0, Opens: []int{0}, Starts: []int{0}, Ways: ways, StartDelay: 1000, RunOn: 4000}},
		Stretches:  []string{"Trunk"},
		Stops:      []trace.Stop{{Name: "Stop", Collectors: []int{0}}},
	}
}

// run is a story of it that keeps every rule, written by hand.
func run() *trace.Trace {
	saw, gate := trace.SetOf(0), trace.SetOf(0)
	return &trace.Trace{
		Head: head(),
		Airs: []trace.Air{
			{Running: saw, Carrying: saw, Short: saw},
			{Open: gate, Running: saw, Carrying: saw},
			{Open: gate, Carrying: saw},
			{Open: gate},
			{},
		},
		Records: []trace.Record{
			{At: 0, Kind: trace.Happens, State: uint8(trace.On)},
			{At: 0, Kind: trace.RequestIs, State: uint8(trace.Opens)},
			{At: 0, Kind: trace.AirIs, Thing: 0},
			{At: 0, Kind: trace.GateIs, State: uint8(trace.Opening)},
			{At: 0, Kind: trace.AirIs, Thing: 1},
			{At: 1000, Kind: trace.GateIs, State: uint8(trace.Open)},
			{At: 1000, Kind: trace.FanIs, State: uint8(trace.FanOn)},
			{At: 1000, Kind: trace.RequestIs, State: uint8(trace.Served)},
			{At: 5000, Kind: trace.Happens, State: uint8(trace.Off)},
			{At: 5000, Kind: trace.RequestIs, State: uint8(trace.RunsOn)},
			{At: 5000, Kind: trace.AirIs, Thing: 2},
			{At: 9000, Kind: trace.RequestIs, State: uint8(trace.Idle)},
			{At: 9000, Kind: trace.AirIs, Thing: 3},
			{At: 9000, Kind: trace.FanIs, State: uint8(trace.Coasting)},
			{At: 19_000, Kind: trace.FanIs, State: uint8(trace.FanOff)},
			{At: 19_000, Kind: trace.GateIs, State: uint8(trace.Shutting)},
			{At: 19_000, Kind: trace.AirIs, Thing: 4},
			{At: 20_000, Kind: trace.GateIs, State: uint8(trace.Shut)},
		},
		End: 20_000,
	}
}

// rules are the rules that a story breaks, without doubles.
func rules(t *trace.Trace) string {
	var list []string
	for _, b := range invariant.Judge(t) {
		if text := strings.Join(list, ", "); !strings.Contains(text, b.Rule) {
			list = append(list, b.Rule)
		}
	}
	return strings.Join(list, ", ")
}

// A story written by hand keeps every rule, and each change of it breaks what
// it should, and nothing else.
func TestByHand(t *testing.T) {
	for name, x := range map[string]struct {
		change func(*trace.Trace)
		want   string
	}{
		"as it is":                {func(*trace.Trace) {}, ""},
		"time falls":              {func(s *trace.Trace) { s.Records[4].At = -1 }, "well told"},
		"it ends too soon":        {func(s *trace.Trace) { s.End = 19_999 }, "well told"},
		"no such gate":            {func(s *trace.Trace) { s.Records[3].Thing = 1 }, "well told"},
		"no such state":           {func(s *trace.Trace) { s.Records[6].State = 3 }, "well told"},
		"no such machine":         {func(s *trace.Trace) { s.Airs[0].Short.Add(7) }, "well told"},
		"arrives at once":         {func(s *trace.Trace) { s.Records[5].At, s.Records[3].At, s.Records[4].At = 1000, 1, 1 }, "together, arrival"},
		"arrives too soon":        {func(s *trace.Trace) { s.Records[5].At = 999 }, "arrival"},
		"not shown as proven":     {func(s *trace.Trace) { s.Records[5].Why = 1 }, "arrival"},
		"the fan starts before":   {func(s *trace.Trace) { s.Records[5], s.Records[6] = s.Records[6], s.Records[5] }, "whole way"},
		"the run-on is cut short": {func(s *trace.Trace) { at(s, 11, 8999) }, "run-on"},
		"it coasts too short":     {func(s *trace.Trace) { s.Records[14].At = 18_999 }, "well told"},
		"it shuts while it coasts": {func(s *trace.Trace) {
			s.Records[14].At, s.Records[14], s.Records[15], s.Records[16] = 19_000, s.Records[15], s.Records[16], s.Records[14]
		}, "last gate"},
		"it never answers": {func(s *trace.Trace) { s.Records[7].State = uint8(trace.Waits) }, "answered"},
	} {
		s := run()
		x.change(s)
		if got := rules(s); got != x.want {
			t.Errorf("%s: breaks %q, want %q", name, got, x.want)
		}
	}
}

// at moves the records from one on, of the same moment, to another time.
func at(s *trace.Trace, from int, to trace.Time) {
	for i, was := from, s.Records[from].At; i < len(s.Records) && s.Records[i].At == was; i++ {
		s.Records[i].At = to
	}
}

// However a story is garbled, it is judged without a fall.
func TestGarbled(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 20_000 {
		s := run()
		for range 1 + random.IntN(4) {
			r := &s.Records[random.IntN(len(s.Records))]
			switch random.IntN(5) {
			case 0:
				r.Kind = trace.Kind(random.IntN(8))
			case 1:
				r.Thing = int32(random.IntN(9) - 3)
			case 2:
				r.State = uint8(random.IntN(20))
			case 3:
				r.Why = uint8(random.IntN(20))
			case 4:
				s.Airs[random.IntN(len(s.Airs))].Slow.Add(random.IntN(trace.Most))
			}
		}
		invariant.Judge(s)
	}
}

// Every rule has a name of its own and says what it asks.
func TestRulesAreNamed(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range invariant.Rules {
		if seen[r.Name] || r.Name == "" || !strings.HasSuffix(r.Says, ".") {
			t.Errorf("rule %q: %q", r.Name, r.Says)
		}
		seen[r.Name] = true
	}
}
