package templates

import (
	"bytes"
	"html"
	"os"
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// hallBook is the book of the control half's test shop with pieces replaced;
// each must stand there once.
func hallBook(t *testing.T, changes ...string) *Book {
	t.Helper()
	return changedBook(t, "../plan/control/testdata/hall.toml", changes...)
}

func changedBook(t *testing.T, file string, changes ...string) *Book {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i+1 < len(changes); i += 2 {
		if n := strings.Count(text, changes[i]); n != 1 {
			t.Fatalf("%q stands %d times in the shop, want once", changes[i], n)
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	return newBook(t, text)
}

func newBook(t *testing.T, text string) *Book {
	t.Helper()
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := plan.Make(s, nil, entry.Date{})
	b, err := New(p, checks.Run(p))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// cardOf is the card of a machine.
func cardOf(t *testing.T, b *Book, machine string) cardView {
	t.Helper()
	for _, u := range b.Plan.Air.Uses {
		if u.Kind == duct.OneMachine && u.Name == machine {
			v := b.cardView(u.Machines[0], u)
			v.Verdict = b.short(b.useVerdict(u))
			return v
		}
	}
	t.Fatalf("no machine %q", machine)
	return cardView{}
}

// textOf renders a sheet by its path and takes its words.
func textOf(t *testing.T, b *Book, path string) string {
	t.Helper()
	for _, s := range b.Sheets {
		if s.Path == path {
			page, err := b.Render(s)
			if err != nil {
				t.Fatal(err)
			}
			return strings.Join(strings.Fields(html.UnescapeString(markup.ReplaceAllString(string(page), " "))), " ")
		}
	}
	t.Fatalf("no sheet %s", path)
	return ""
}

func onCard(gates []cardGate) string {
	var names []string
	for _, g := range gates {
		names = append(names, g.Name)
	}
	return strings.Join(names, ", ")
}

// Two boxes: what the machine's trigger opens, and what its user opens. The
// steps follow how the collector starts.
func TestCards(t *testing.T) {
	b := hallBook(t)
	for _, c := range []struct {
		machine, itself, open string
		start, end            []string
	}{
		{"Saw", "Saw gate", "", []string{"Start the machine, feed nothing: 1 gate opens, Cyclone starts after 1 s", "Gauge in the band? Then feed"},
			[]string{"Let the last chips go", "Machine off. Cyclone runs on for 6 s and stops by itself: leave it alone", "Chips come back on the table? Stop and tell the steward"}},
		{"Planer", "East zone gate, Saw gate, Planer gate", "", []string{"Start the machine, feed nothing: 3 gates open, Cyclone starts", "Gauge in the band? Then feed"}, nil},
		// a switch for the zone, the hand for its own gate
		{"Lathe", "East zone gate", "Far gate", []string{"Open your gates", "Press Lathe switch: 1 gate opens, Cyclone starts", "Gauge in the band? Then start the machine and feed"},
			[]string{"Let the last chips go", "Machine off, then Lathe switch. Cyclone runs on", "Chips come back on the table? Stop and tell the steward"}},
		// no trigger at all: the collector's own switch
		{"Drum", "", "Drum gate", []string{"Open your gates", "Switch on Bag unit and wait for full speed", "Gauge in the band? Then start the machine and feed"},
			[]string{"Let the last chips go", "Machine off; let the air run on until it has run down", "Chips come back on the table? Stop and tell the steward"}},
	} {
		v := cardOf(t, b, c.machine)
		if onCard(v.ByItself) != c.itself || onCard(v.Open) != c.open {
			t.Errorf("%s: by itself %q, you open %q; want %q and %q", c.machine, onCard(v.ByItself), onCard(v.Open), c.itself, c.open)
		}
		if !slices.Equal(v.Start, c.start) {
			t.Errorf("%s starts by %q, want %q", c.machine, v.Start, c.start)
		}
		if c.end != nil && !slices.Equal(v.End, c.end) {
			t.Errorf("%s stops by %q, want %q", c.machine, v.End, c.end)
		}
	}
	if v := cardOf(t, b, "Lathe"); v.ByItself[0].Why != "when you press Lathe switch" {
		t.Errorf("a gate that a switch opens: %q", v.ByItself[0].Why)
	}
	// the disc sander has no trigger: the powered zone gate is its user's
	if v := cardOf(t, b, "Disc"); onCard(v.Open) != "East zone gate, Far gate" || v.Open[0].Why != "no trigger of this machine opens it" {
		t.Errorf("the disc sander: %+v", v.Open)
	}
}

// The stop on the way out goes by its name where it stops the card's
// collector; else the order at smoke says "the stop".
func TestStopOnTheCard(t *testing.T) {
	b := hallBook(t)
	if v := cardOf(t, b, "Saw"); v.Stopper != "Stop by the hall door" {
		t.Errorf("the saw's stop: %q", v.Stopper)
	}
	if v := cardOf(t, b, "Drum"); v.Stopper != "" {
		t.Errorf("the drum sander's stop: %q", v.Stopper)
	}
	if text := textOf(t, b, "card-saw.html"); !strings.Contains(text, "Hit Stop by the hall door on your way out") {
		t.Error("the saw's card does not name the stop")
	}
	if text := textOf(t, b, "card-drum.html"); !strings.Contains(text, "Hit the stop on your way out") {
		t.Error("the drum sander's card does not say the stop")
	}
	// of two, the nearer one
	b = hallBook(t, `[control]
supply`, `[[stop]]
name = "Stop at the planer"
at = [22, 4]
stops = ["Cyclone"]
[control]
supply`)
	if v := cardOf(t, b, "Planer"); v.Stopper != "Stop at the planer" {
		t.Errorf("the planer's stop: %q", v.Stopper)
	}
	// C21: the first line of a card is the stop, whether it has a name or not
	b = changedBook(t, "../checks/testdata/cases/c21-basement-bandsaw.toml")
	text := textOf(t, b, "card-bandsaw.html")
	if i := strings.Index(text, "Smoke, or a smell of burning? Let go of the work Hit the stop on your way out"); i < 0 || i > strings.Index(text, "You open") {
		t.Errorf("the order at smoke is not first on the card: %s", text[:min(300, len(text))])
	}
}

// What the lockout does and does not do stands on the cards of machines that
// a trigger follows, where there is a lockout.
func TestLockoutOnTheCard(t *testing.T) {
	b := hallBook(t)
	if text := textOf(t, b, "card-saw.html"); !strings.Contains(text, "key switch beside the cyclone's starter : with it on, no trigger opens a gate or starts a fan. It locks out no energy") {
		t.Errorf("the saw's card lacks the lockout: %s", text)
	}
	if v := cardOf(t, b, "Drum"); v.Lockout != "" {
		t.Error("a lockout on the card of a machine that no trigger follows")
	}
	b = hallBook(t, `lockout = "key switch beside the cyclone's starter"`, "")
	if text := textOf(t, b, "card-saw.html"); strings.Contains(text, "Lockout") {
		t.Error("a lockout that the shop does not have")
	}
}

// A forgotten gate stops the card of its machine, and no other.
func TestForgottenGateOnTheCard(t *testing.T) {
	b := hallBook(t, `opens = ["Jointer gate", "East zone gate"]`, `opens = ["Jointer gate"]`)
	v := cardOf(t, b, "Jointer")
	if !strings.Contains(v.Stop, "East zone gate") || onCard(v.Open) != "East zone gate" {
		t.Errorf("the jointer: stop %q, you open %q", v.Stop, onCard(v.Open))
	}
	if v := cardOf(t, b, "Saw"); v.Stop != "" {
		t.Errorf("the saw: %q", v.Stop)
	}
}

// An accepted finding stands in a section of its own with its day, and no
// longer among what is to be mended.
func TestAcceptedOnTheSheets(t *testing.T) {
	accepted := func(until string) *Book {
		return hallBook(t, "[control]\nsupply", "[[accepted]]\ncheck = \"power-cut\"\nabout = \"Bag unit\"\nreason = \"replaced in spring\"\nrole = \"steward\"\nuntil = "+until+"\n[control]\nsupply")
	}
	text := textOf(t, accepted("2027-04-01"), "findings.html")
	i := strings.Index(text, "Accepted for now")
	if i < 0 || !strings.Contains(text[i:], "Accepted until 2027-04-01 by the steward: replaced in spring.") || strings.Contains(text[:i], "It has a plain switch") {
		t.Errorf("the findings: %s", text)
	}
	text = textOf(t, accepted("2026-11-23"), "findings.html")
	if strings.Contains(text, "Accepted for now") || !strings.Contains(text, "It was accepted until 2026-11-23, and is no longer.") {
		t.Errorf("past its day: %s", text)
	}
	if b := accepted("2027-04-01"); strings.Contains(textOf(t, b, "check-power-cut.html"), "Accepted until 2027-04-01") == false {
		t.Error("the sheet of the check does not say it")
	}
}

// C13: the sign over the switch has the true count of gates, and what none,
// one, two and all open do to suction and air.
func TestSwitchSign(t *testing.T) {
	b := changedBook(t, "../checks/testdata/cases/c13-six-gates.toml")
	c := b.Plan.Shop.Collectors[0]
	v := b.signView(c, b.gatesOf(c))
	if v.Gates != 6 || v.Zones || v.Powered != 0 || len(v.Rows) != 4 {
		t.Fatalf("%+v", v)
	}
	var open, which []string
	for _, r := range v.Rows {
		open, which = append(open, r.Open), append(which, r.Which)
	}
	if got := strings.Join(open, ", "); got != "0, 1, 2, all 6" {
		t.Errorf("gates open: %s", got)
	}
	if got := strings.Join(which, "; "); got != "all shut; Planer; Planer and Jointer; everything open" {
		t.Errorf("for: %s", got)
	}
	text := textOf(t, b, "switch-collector.html")
	for _, want := range []string{"At least 1 of its 6 gates open", "Look at all 6", "Suction is not air", "Never run it with every gate shut", "One machine at a time"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sign lacks %q", want)
		}
	}
	// with zone gates a machine has more than one gate
	b = hallBook(t)
	c = b.Plan.Shop.Collectors[0]
	if v := b.signView(c, b.gatesOf(c)); !v.Zones || v.Powered != 4 || v.Rows[1].Open != "2" || v.Starts != "by itself with 3 machines and at the press of 1 switch" {
		t.Errorf("the hall's sign: %+v", v)
	}
}

// The matrix, the register and the wiring say what the shop has.
func TestControlSheets(t *testing.T) {
	b := hallBook(t)
	for path, wants := range map[string][]string{
		"matrix.html": {"Z1 East zone gate", "T1 Saw runs comes on", "the current of Saw, above 1 A; fan after 1 s", "by hand first: G4 Far gate", "Lockout on", "Power returns after a cut", "S1 Filter gauge very high",
			"at which collector is not given", "B1 Stop by the hall door is pressed", "also stops Planer", "A gate on the way to Cyclone does not arrive", "2 gates move at a time", "Proved: day, initials"},
		"register.html":               {"G1 Saw gate", "gate, powered", "gate, by hand", "gate, drive not given", "5 ft from its start", "Hall chain , 2", "2 mm", "98 mm", "switch", "24 V, listing not given", "Named, day", "Tested, day"},
		"triggers.html":               {"T1 Saw runs", "With the spindle off 0.1 A", "off 0.1 A", "set 1 A", "idling 5.2 A", "From trigger to fan 1 s", "Run-on 6 s", "Run-on not given", "T2 Planer runs", "a contact of Planer", "H1 Lathe switch"},
		"wiring-hall-chain.html":      {"Before you touch a wire", "licensed electrician", "P1 Control supply", "2 × 18 AWG", "A1 P1 to T1", "A8 T3 to H1", "Polarity", "Pull test", "91 ft of cable in all"},
		"wiring-collector-chain.html": {"B1 P1 to S1", "B3 S3 to S2"},
	} {
		text := textOf(t, b, path)
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s lacks %q:\n%s", path, want, text)
			}
		}
	}
}

// A shop without a control half has no part for it; one trigger makes one.
func TestPartControl(t *testing.T) {
	has := func(b *Book) (paths []string) {
		for _, s := range b.Sheets {
			if s.Part == partControl {
				paths = append(paths, s.Path)
			}
		}
		return paths
	}
	if paths := has(newBook(t, string(content.Small()))); len(paths) != 0 {
		t.Errorf("the smallest example has the sheets %v", paths)
	}
	if paths := has(changedBook(t, "../checks/testdata/cases/c29-measured-idle.toml")); !slices.Equal(paths, []string{"matrix.html", "triggers.html", "register.html", "sequence.html", "trigger-sander-runs.html", "setting.html"}) {
		t.Errorf("a shop with one trigger has the sheets %v", paths)
	}
	if paths := has(hallBook(t)); len(paths) != 12 {
		t.Errorf("the hall has the sheets %v", paths)
	}
	if n := partControl.Number; n != 5 {
		t.Errorf("the part's number is %d", n)
	}
}

func TestRunLabels(t *testing.T) {
	for place, want := range map[int]string{0: "A7", 25: "Z7", 26: "AA7", 27: "AB7", 701: "ZZ7", 702: "AAA7"} {
		if got := runLabel(place, 7); got != want {
			t.Errorf("chain %d: %s, want %s", place, got, want)
		}
	}
}

// Every verdict of the part says something, and none claims.
func TestControlVerdicts(t *testing.T) {
	for _, b := range []*Book{hallBook(t), hallBook(t, `opens = ["Jointer gate", "East zone gate"]`, `opens = ["Jointer gate"]`)} {
		for _, s := range b.Sheets {
			if s.Part == partControl && (len(s.Verdict.Words) == 0 || s.Verdict.Says == "" || s.Verdict.Do == "") {
				t.Errorf("%s: %+v", s.Path, s.Verdict)
			}
		}
	}
	b := hallBook(t, `opens = ["Jointer gate", "East zone gate"]`, `opens = ["Jointer gate"]`)
	for _, s := range b.Sheets {
		if s.Path == "matrix.html" && (s.Verdict.Words[0].Class != "stop" || !strings.HasPrefix(s.Verdict.Says, "Jointer runs: ")) {
			t.Errorf("the matrix with a forgotten gate: %+v", s.Verdict)
		}
	}
}

// Cards print on one sheet of A5. The heights in rem were read off cards that
// Chromium printed; what is counted must not be far from them.
func TestCardHeights(t *testing.T) {
	b := hallBook(t, "[shop]\n", "[shop]\npeople_at_machines = 1\n") // no pairs: those cards were printed without them
	for machine, printed := range map[string]float64{"Saw": 76.1, "Planer": 74.9, "Jointer": 74.7, "Lathe": 75, "Disc": 74.5, "Drum": 68.1} {
		v := cardOf(t, b, machine)
		if h := v.height(); h < printed-1 || h > printed+6 {
			t.Errorf("%s is counted at %.1f rem, printed at %.1f", machine, h, printed)
		}
	}
	for gate, printed := range map[string]float64{"Saw gate": 60, "Planer gate": 56.9, "East zone gate": 60.8} {
		for _, g := range b.Plan.Shop.Gates {
			if g.Name != gate {
				continue
			}
			if h := b.gateCardView(g).height(); h < printed-1 || h > printed+6 {
				t.Errorf("%s is counted at %.1f rem, printed at %.1f", gate, h, printed)
			}
		}
	}
	many := gateCardView{Powered: true}
	for range 20 {
		many.For = append(many.For, strings.Repeat("long name ", 4))
	}
	if h := many.height(); fit(h) == "" || h > smallestHolds {
		t.Errorf("a gate of twenty machines with long names: %.1f rem", h)
	}
}

// No card of the shops we carry, nor one with long names and many gates,
// needs type smaller than the smallest there is.
func TestCardsFit(t *testing.T) {
	long := strings.NewReplacer("Saw gate", "Saw gate above the bench by the third window", "Planer gate", "Planer gate above the bench by the third window",
		"Stop by the hall door", "Red mushroom stop on the left of the west hall door, under the lamp", `also_open = ["Saw gate`, `also_open = ["Jointer gate", "Drum gate", "Saw gate above the bench by the third window`,
		"key switch beside the cyclone's starter", "key switch on the control box beside the cyclone's starter in the lean-to; its key hangs on the red hook in the office")
	data, err := os.ReadFile("../plan/control/testdata/hall.toml")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, text := range []string{string(content.Example()), string(content.Small()), string(content.Starter()), string(data), long.Replace(string(data))} {
		b := newBook(t, text)
		for _, m := range b.Plan.Shop.Machines {
			v := cardOf(t, b, m.Name)
			seen[fit(v.height())] = true
			if h := v.height(); h > smallestHolds {
				t.Errorf("%s, %s: %.1f rem, an A5 sheet holds %d in the smallest type", b.Plan.Shop.Name, m.Name, h, smallestHolds)
			}
		}
		for _, c := range b.Plan.Shop.Collectors {
			if v := b.signView(c, b.gatesOf(c)); v.height() > smallestHolds {
				t.Errorf("%s, the sign of %s: %.1f rem", b.Plan.Shop.Name, c.Name, v.height())
			}
		}
	}
	if !seen[""] || !seen["tight"] {
		t.Errorf("only the types %v were tried", seen)
	}
	for _, c := range []struct {
		height float64
		want   string
	}{{76, ""}, {76.1, "tight"}, {85.1, "tighter"}, {98.1, "tightest"}} {
		if got := fit(c.height); got != c.want {
			t.Errorf("%.1f rem: %q, want %q", c.height, got, c.want)
		}
	}
	for _, f := range fits[1:] {
		if !bytes.Contains(Stylesheet(), []byte(":has(."+f.class+")")) {
			t.Errorf("the stylesheet sets no type for %s", f.class)
		}
	}
}

// The sheet on setting gates says every step and sign in full, shows what the
// file gives of each powered gate, and is left out where none moves by power.
func TestSettingGates(t *testing.T) {
	b := hallBook(t)
	v := b.settingView()
	if len(v.Gates) != len(b.Plan.Control.Powered()) || len(v.Steps) != len(settingSteps) || len(v.Odd) != len(settingSigns) {
		t.Fatalf("%d gates, %d steps, %d signs", len(v.Gates), len(v.Steps), len(v.Odd))
	}
	for _, s := range v.Steps {
		if strings.Contains(s.Name+s.Do+s.Right, "{") {
			t.Errorf("a figure is missing: %+v", s)
		}
	}
	// common practice, no source: 1.5 to 2 times the travel time, 5 % of the flow
	if time, leak := v.Steps[4].Right, v.Steps[6].Right; !strings.Contains(time, "1.5 and 2 times") || !strings.Contains(leak, "over 5 %") {
		t.Errorf("%q, %q", time, leak)
	}
	for i, g := range b.Plan.Control.Powered() {
		if want := b.given(g.OpenStop); v.Gates[i].OpenStop != want || v.Gates[i].Name != g.Name {
			t.Errorf("%+v, want %s at %s", v.Gates[i], g.Name, want)
		}
	}
	for _, s := range newBook(t, string(content.Small())).Sheets {
		if s.Path == "setting.html" {
			t.Error("a shop without powered gates has the sheet on setting them")
		}
	}
}

// The sheet on starters names every trigger that watches a contact and what the
// file gives of its motor; a shop where none does has no such sheet.
func TestWatchingAStarter(t *testing.T) {
	b := newBook(t, string(content.Example()))
	v := b.starterView()
	if len(v.Triggers) != 1 || v.Triggers[0].Name != "Planer running" || v.Triggers[0].Machine != "Planer" || v.Triggers[0].Motor == b.notGiven() {
		t.Fatalf("%+v", v.Triggers)
	}
	if got := string(v.Drawing); !strings.Contains(got, v.Triggers[0].Tag+" Planer running") {
		t.Error("the drawing does not name the trigger")
	}
	without := strings.Replace(string(content.Example()), "senses = \"contact\"", "senses = \"current\"", 1)
	for _, s := range newBook(t, without).Sheets {
		if s.Path == "starter.html" {
			t.Error("nobody watches a contact, and there is a sheet about it")
		}
	}
}
