package templates

import (
	"html/template"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/control/sequence"
	"dustbook/plan/control/trace"
)

// toldOf is the control half of a book as it is run.
func toldOf(t *testing.T, b *Book) *told {
	t.Helper()
	run := &told{}
	var err error
	if run.works, run.air, err = b.Plan.Sequence(); err != nil {
		t.Fatal(err)
	}
	return run
}

// whenTold are the times of the moments in which something is told.
func whenTold(v storyView, what string) (at []string) {
	for _, r := range v.Rows {
		for _, text := range r.What {
			if strings.Contains(text, what) {
				at = append(at, r.At)
			}
		}
	}
	return at
}

// Every trigger has a sheet with its story, told from the model: its gates open
// before the fan starts, and the fan stops after the run-on. Two gates move at
// once; by time a gate is given half as much again as its travel, and 8 s of
// travel where the file gives none.
func TestStories(t *testing.T) {
	b := hallBook(t)
	run := toldOf(t, b)
	for i, want := range []struct{ opens, starts, off string }{
		{"1.3", "1.5", "26.5"},           // a switch after 0.8 s, the fan after its delay of 1 s; run-on 6 s
		{"1.7, 2.3, 2.5", "2.5", "24.5"}, // 0.8 s and 1.2 s by time, then the saw's gate; run-on of practice, 4 s
		{"2.3, 12.5", "12.5", "24.5"},    // 1.2 s and 8 s by time
		{"2.3", "2.3", "24.5"},
	} {
		trigger := b.Plan.Shop.Triggers[i]
		v := b.triggerStoryView(run, i).Story
		if !strings.Contains(string(v.Drawing), trigger.Name) {
			t.Errorf("%s is not in its drawing", trigger.Name)
		}
		opens := slices.Sorted(slices.Values(append(whenTold(v, "gate is open"), whenTold(v, "gate counts as open, not proven")...)))
		slices.SortStableFunc(opens, func(a, b string) int { return len(a) - len(b) }) // 2.3 before 12.5
		if got := strings.Join(opens, ", "); got != want.opens || len(opens) != len(b.Plan.Control.OpensWith(trigger)) {
			t.Errorf("%s: gates are open at %s s, want %s", trigger.Name, got, want.opens)
		}
		for what, at := range map[string]string{trigger.Name + " comes on": "0.5", "Cyclone starts": want.starts, trigger.Name + " goes off": "20.5", "Cyclone is switched off": want.off} {
			if got := whenTold(v, what); !slices.Equal(got, []string{at}) {
				t.Errorf("%s: %q is told at %v s, want %s", trigger.Name, what, got, at)
			}
		}
	}
	if len(b.Plan.Shop.Triggers) != 4 {
		t.Errorf("%d triggers", len(b.Plan.Shop.Triggers))
	}
}

// Two that are served at once, two of which one waits, and the power cut: with
// the saw and the planer the cyclone feeds both, the planer and the jointer have
// too little behind one main. A shop with one trigger has the power cut alone.
func TestTwoAtOnce(t *testing.T) {
	b := hallBook(t)
	v := b.sequenceView(toldOf(t, b))
	if len(v.Triggers) != 4 || len(v.Stories) != 3 {
		t.Fatalf("%d triggers, %d stories", len(v.Triggers), len(v.Stories))
	}
	both, apart, cut := v.Stories[0], v.Stories[1], v.Stories[2]
	if both.Title != "T1 Saw runs and T2 Planer runs overlap" || apart.Title != "T2 Planer runs and T3 Jointer runs overlap" || cut.Title != "The power fails while T1 Saw runs is on" {
		t.Errorf("%s; %s; %s", both.Title, apart.Title, cut.Title)
	}
	if len(whenTold(both, " waits: ")) != 0 || len(whenTold(both, ": gates open, fan on")) != 2 {
		t.Errorf("both: %+v", both.Rows)
	}
	if at := whenTold(apart, "T3 Jointer runs waits: a running machine would get too little air"); !slices.Equal(at, []string{"8.5"}) {
		t.Errorf("apart: %+v", apart.Rows)
	}
	b = changedBook(t, "../checks/testdata/cases/c29-measured-idle.toml")
	if v := b.sequenceView(toldOf(t, b)); len(v.Stories) != 1 || !strings.Contains(v.Stories[0].Title, "The power fails") {
		t.Errorf("one trigger: %d stories", len(v.Stories))
	}
}

// Gates that a person looks at do not go by time, and are not told so.
func TestGatesByTime(t *testing.T) {
	person := []string{"name = \"Planer gate\"", "name = \"Planer gate\"\nproves = \"person\"", "name = \"Jointer gate\"", "name = \"Jointer gate\"\nproves = \"person\""}
	for _, c := range []struct {
		changes []string
		says    string
	}{
		{nil, "The control counts 3 gates as open when their travel time and a margin are over"},
		{person, "The control counts 1 gate as open when its travel time and a margin are over"},
		{append(person, `proves = "time"`, `proves = "person"`), "Of every powered gate a switch or a person tells that it is open."},
	} {
		if v := hallBook(t, c.changes...).sequenceVerdict(); !strings.HasPrefix(v.Says, c.says) {
			t.Errorf("%q, want %q", v.Says, c.says)
		}
	}
}

// Why there is no story is said on its sheets, with what to do.
func TestNoStoryToTell(t *testing.T) {
	b := hallBook(t)
	for _, c := range []struct {
		fault sequence.Fault
		wants []string
	}{
		{sequence.Fault{Kind: sequence.ManyGates, Count: 257, Most: 256}, []string{"257", "gates", "256", "Give each collector a shop file of its own"}},
		{sequence.Fault{Kind: sequence.ManyMachines, Count: 257, Most: 256}, []string{"machines are more", "shop file of its own"}},
		{sequence.Fault{Kind: sequence.ManyCollectors, Count: 257, Most: 256}, []string{"collectors are more", "shop file of its own"}},
		{sequence.Fault{Kind: sequence.ManyStretches, Count: 257, Most: 256}, []string{"stretches of duct are more", "shop file of its own"}},
		{sequence.Fault{Kind: sequence.StrayGate, Name: "Far <gate>"}, []string{"Far &lt;gate&gt;", "Add to its duct what it leads to."}},
	} {
		run := &told{fault: b.notTold(&c.fault)}
		for _, text := range []template.HTML{b.sequenceView(run).NotTold, b.triggerStoryView(run, 0).NotTold} {
			for _, want := range c.wants {
				if !strings.Contains(string(text), want) {
					t.Errorf("%s: %q lacks %q", c.fault.Kind.Name(), text, want)
				}
			}
		}
	}
	if text := b.sequenceView(toldOf(t, b)).NotTold; text != "" {
		t.Errorf("the hall: %q", text)
	}
}

// The words of every state that a record can have are there.
func TestEveryHappeningHasWords(t *testing.T) {
	b := hallBook(t)
	names := b.laneNames()
	for kind, states := range map[trace.Kind][]uint8{trace.GateIs: {0, 1, 2, 3, 4, 5, 6, 7}, trace.FanIs: {0, 1, 2}, trace.SignalIs: {0, 1}, trace.Happens: {0, 1, 2, 3, 4, 5}} {
		for _, s := range states {
			if text := b.happening(&trace.Record{Kind: kind, State: s}, names); text == "" || strings.Contains(text, "{") {
				t.Errorf("kind %d, state %d: %q", kind, s, text)
			}
		}
	}
	for _, r := range []trace.Record{{Kind: trace.Happens, State: uint8(trace.StopPressed)}, {Kind: trace.RequestIs, State: uint8(trace.Idle)}, {Kind: trace.RequestIs, State: uint8(trace.Opens)}, {Kind: trace.AirIs}} {
		if text := b.happening(&r, names); text != "" {
			t.Errorf("kind %d, state %d is told: %q", r.Kind, r.State, text)
		}
	}
	for why := trace.NoWay; why <= trace.Limit; why++ {
		if text := b.happening(&trace.Record{Kind: trace.RequestIs, State: uint8(trace.Waits), Why: uint8(why)}, names); !strings.Contains(text, ": ") || strings.HasSuffix(text, ": ") {
			t.Errorf("why %s: %q", why, text)
		}
	}
}
