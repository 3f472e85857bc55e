package sequence

import (
	"os"
	"strings"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/control/timing"
	"dustbook/plan/control/trace"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// fanStarts is when a fan starts in the story of one trigger, from when it
// comes on; false where none does.
func fanStarts(w *Works, trigger int) (trace.Time, bool) {
	story := One(w, Ample{}, trigger)
	for i := range story.Records {
		if r := &story.Records[i]; r.Kind == trace.FanIs && trace.FanState(r.State) == trace.FanOn {
			return r.At - early, true
		}
	}
	return 0, false
}

// The least start delay that the times of a trigger ask for is when the model
// has its fan start, and its last gate is open when the model lets a fan start
// that waits for nothing else. Over every trigger of the example, with no
// start_delay in the file, each way of proof and one or two gates at once.
func TestDelayAgreesWithTheRun(t *testing.T) {
	data, err := os.ReadFile("../../../content/example/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for line := range strings.Lines(string(data)) {
		if !strings.HasPrefix(line, "start_delay") {
			lines = append(lines, line)
		}
	}
	plain := strings.Join(lines, "")
	compared := 0
	for _, change := range [][2]string{{"", ""}, {`proves = "time"`, `proves = "switch"`}, {`proves = "switch"`, `proves = "time"`}, {"moves_together = 1", "moves_together = 2"}, {"moves_together = 2", "moves_together = 1"}} {
		text := plain
		if change[0] != "" {
			text = strings.ReplaceAll(plain, change[0], change[1])
		}
		s, problems := shop.Read("shop.toml", []byte(text))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		k := control.Reckon(s)
		times := timing.Reckon(s, k, timing.Air{})
		w, err := Of(s, k, times)
		if err != nil {
			t.Fatal(err)
		}
		for i, of := range times.Triggers {
			d := of.Delay
			if d.Verdict == timing.NoFan || len(d.Missing) > 0 {
				continue
			}
			for _, asks := range []unit.Time{d.Least, d.Open} {
				w.Head.Triggers[i].StartDelay = 0
				if asks == d.Least {
					w.Head.Triggers[i].StartDelay = whole(d.Used)
				}
				at, starts := fanStarts(w, i)
				if !starts {
					continue
				}
				if compared++; at != whole(asks) {
					t.Errorf("%v: %s: the fan starts after %d ms, %v asked", change, of.Trigger.Name, at, asks)
				}
			}
		}
	}
	if compared < 40 {
		t.Errorf("only %d compared", compared)
	}
}
