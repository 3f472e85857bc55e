package shop

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// panel is a shop with every field of the control half. Its tables stand in
// the order that makes every name refer to what comes later.
const panel = `[shop]
name = "Panel"
[[chain]]
name = "East chain"
cable = "18 AWG"
temperature = "40 C"
stops = [{ device = "Zone gate", cable = "22 ft" }, { device = "Saw gate", cable = "14 ft" }, { device = "Hand", cable = "114 in" }, { device = "Filter gauge", cable = "0 ft" }]
[[trigger]]
name = "Saw running"
senses = "current"
machine = "Saw"
standby = "100 mA"
no_load = "5.2 A"
readings = [{ state = "standby", mean = "0.1 A", spread = "20 mA" }, { state = "no load", mean = "5.2 A" }]
threshold = "2.5 A"
turns = 2
range = "0.5 A to 50 A"
opens = ["Zone gate", "Saw gate"]
starts = ["Second", "Fan"]
start_delay = "1.5 s"
run_on = "1 min"
[[trigger]]
name = "Hand"
senses = "hand switch"
opens = []
[control]
supply = "24 V"
supply_power = "96 W"
supply_listed = "class 2"
lowest = "20 V"
moves_together = 3
after_power_cut = "waits for a person"
enclosure_type = "12"
lockout = "key switch by the door"
purge = "button on the control box"
[[sensor]]
name = "Filter gauge"
senses = "filter pressure"
high = "2 inwg"
very_high = "4 inwg"
[[sensor]]
name = "Air"
senses = "air quality"
high = "0.5 mg/m3"
very_high = "2 mg/m3"
[[stop]]
name = "Red"
at = [1, 13]
stops = ["Second", "Saw", "Fan"]
[[extinguisher]]
at = [2, 20]
rating = "2-A:10-B:C"
[[tap]]
name = "Main tap"
on = "Main"
at = "12 ft"
[[accepted]]
check = "hose-length"
about = "Main"
reason = "replaced in spring"
role = "steward"
until = 2028-02-29
[[document]]
kind = "area classification letter"
held = false
[[document]]
kind = "hazard analysis"
held = true
[[gate]]
name = "Saw gate"
on = "Main"
at = "2 ft"
drive = "powered"
travel = "0.8 s"
moving = "0.9 A"
stall = "1.6 A"
holding = "40 mA"
lowest = "19.5 V"
proves = "time"
open_stop = "127 mm"
shut_stop = "4 mm"
[[gate]]
name = "Zone gate"
on = "Main"
drive = "hand"
[[duct]]
name = "Main"
to = "Fan"
size = "8 in"
length = "20 ft"
serves = ["Saw"]
[[machine]]
name = "Saw"
kind = "planer"
coast = "12 s"
[[collector]]
name = "Fan"
inlet = "8 in"
claims = { flow = "1600 cfm", suction = "11 inwg" }
[[collector]]
name = "Second"
inlet = "6 in"
claims = { flow = "800 cfm", suction = "9 inwg" }
`

// TestControlFigures reads every quantity of the control half, in SI, as
// stated at its own line.
func TestControlFigures(t *testing.T) {
	s := sound(t, panel)
	v, g, c, chain := s.Triggers[0], s.Gates[0], s.Control, s.Chains[0]
	type fact struct {
		what      string
		got, want float64
		how       How
		at        entry.Place
	}
	for _, f := range []fact{
		{"standby", float64(v.Standby.V), 0.1, v.Standby.How, v.Standby.At},
		{"no_load", float64(v.NoLoad.V), 5.2, v.NoLoad.How, v.NoLoad.At},
		{"threshold", float64(v.Threshold.V), 2.5, v.Threshold.How, v.Threshold.At},
		{"turns", float64(v.Turns.V), 2, v.Turns.How, v.Turns.At},
		{"range", float64(v.Range.V.Low), 0.5, v.Range.How, v.Range.At},
		{"range", float64(v.Range.V.High), 50, v.Range.How, v.Range.At},
		{"start_delay", float64(v.StartDelay.V), 1.5, v.StartDelay.How, v.StartDelay.At},
		{"run_on", float64(v.RunOn.V), 60, v.RunOn.How, v.RunOn.At},
		{"readings", float64(v.Readings[0].Spread.V), 0.02, v.Readings[0].Spread.How, v.Readings[0].At},
		{"supply", float64(c.Supply.V), 24, c.Supply.How, c.Supply.At},
		{"supply_power", float64(c.SupplyPower.V), 96, c.SupplyPower.How, c.SupplyPower.At},
		{"lowest", float64(c.Lowest.V), 20, c.Lowest.How, c.Lowest.At},
		{"moves_together", float64(c.MovesTogether.V), 3, c.MovesTogether.How, c.MovesTogether.At},
		{"temperature", float64(chain.Temperature.V), 313.15, chain.Temperature.How, chain.Temperature.At},
		{"travel", float64(g.Travel.V), 0.8, g.Travel.How, g.Travel.At},
		{"moving", float64(g.Moving.V), 0.9, g.Moving.How, g.Moving.At},
		{"stall", float64(g.Stall.V), 1.6, g.Stall.How, g.Stall.At},
		{"holding", float64(g.Holding.V), 0.04, g.Holding.How, g.Holding.At},
		{"lowest", float64(g.Lowest.V), 19.5, g.Lowest.How, g.Lowest.At},
		{"coast", float64(s.Machines[0].Coast.V), 12, s.Machines[0].Coast.How, s.Machines[0].Coast.At},
		{"high", float64(s.Sensors[0].High.Press.V), 2 * 249.08891, s.Sensors[0].High.Press.How, s.Sensors[0].High.Press.At},
		{"very_high", float64(s.Sensors[0].VeryHigh.Press.V), 4 * 249.08891, s.Sensors[0].VeryHigh.Press.How, s.Sensors[0].VeryHigh.Press.At},
	} {
		if unit.Compare(f.got, f.want) != 0 || f.how != Stated {
			t.Errorf("%s: %v (%v), want %v as stated", f.what, f.got, f.how, f.want)
		}
		if line := strings.Split(panel, "\n")[max(f.at.Line, 1)-1]; !strings.HasPrefix(line, f.what+" = ") {
			t.Errorf("%s is placed at line %d: %s", f.what, f.at.Line, line)
		}
	}
	// 18 AWG is 0.005 in × 92^((36 − 18)/39) across, by ASTM B258
	across := 0.005 * 0.0254 * math.Pow(92, (36-18)/39.0)
	if got := float64(chain.Cable); unit.Compare(got, math.Pi/4*across*across) != 0 || chain.CableText != "18 AWG" {
		t.Errorf("cable of %g m², %q", got, chain.CableText)
	}
	if r := v.Readings; len(r) != 2 || r[0].State != "standby" || r[1].State != "no load" || r[1].Mean != 5.2 || r[0].Mean != 0.1 || r[1].Spread.Known() {
		t.Errorf("readings %+v", r)
	}
}

// TestControlNames: every name of the control half became the right thing,
// though it stands in the file before it.
func TestControlNames(t *testing.T) {
	s := sound(t, panel)
	gate := map[string]*Gate{}
	for _, g := range s.Gates {
		gate[g.Name] = g
	}
	fan, second, saw := s.Collectors[0], s.Collectors[1], s.Machines[0]
	v, hand := s.Triggers[0], s.Triggers[1]
	if v.Name != "Saw running" || v.Senses != "current" || v.Machine != saw || !slices.Equal(v.Opens, []*Gate{gate["Zone gate"], gate["Saw gate"]}) || !slices.Equal(v.Starts, []*Collector{second, fan}) {
		t.Errorf("%+v", v)
	}
	if hand.Senses != "hand switch" || hand.Machine != nil || len(hand.Opens) != 0 || len(hand.Starts) != 0 || hand.Threshold.Known() || hand.Range.Known() || hand.Readings != nil {
		t.Errorf("%+v", hand)
	}
	stops := s.Chains[0].Stops
	want := []ChainStop{{Gate: gate["Zone gate"]}, {Gate: gate["Saw gate"]}, {Trigger: hand}, {Sensor: s.Sensors[0]}}
	lengths := []string{"22 ft", "14 ft", "9.5 ft", "0 ft"}
	for i, w := range want {
		if g := stops[i]; g.Gate != w.Gate || g.Trigger != w.Trigger || g.Sensor != w.Sensor || g.Device() != w.Device() || g.Device() == "" || g.Cable != unit.Must[unit.Length](lengths[i]) || g.At.Line != 7 {
			t.Errorf("stop %d: %+v", i+1, g)
		}
	}
	if (ChainStop{}).Device() != "" || len(stops) != len(want) {
		t.Errorf("%d stops", len(stops))
	}
	b := s.Stops[0]
	if b.Name != "Red" || b.Place.V != (Point{1 * foot, 13 * foot}) || !slices.Equal(b.Collectors, []*Collector{second, fan}) || !slices.Equal(b.Machines, []*Machine{saw}) {
		t.Errorf("%+v", b)
	}
	if tap := s.Taps[0]; tap.On != s.Ducts[0] || tap.Where != unit.Must[unit.Length]("12 ft") || tap.Name != "Main tap" {
		t.Errorf("%+v", tap)
	}
}

// TestControlWords: the words and texts of the control half and the paper.
func TestControlWords(t *testing.T) {
	s := sound(t, panel)
	c, g, a := s.Control, s.Gates[0], s.Accepted[0]
	for _, v := range [][2]string{
		{c.SupplyListed.V, "class 2"}, {c.AfterPowerCut.V, "waits for a person"}, {c.EnclosureType.V, "12"}, {c.Lockout.V, "key switch by the door"},
		{g.Drive.V, "powered"}, {g.Proves.V, "time"}, {g.OpenStop.V, "127 mm"}, {g.ShutStop.V, "4 mm"}, {s.Gates[1].Drive.V, "hand"},
		{s.Sensors[0].Senses, "filter pressure"}, {s.Sensors[1].Senses, "air quality"}, {s.Sensors[1].High.Text, "0.5 mg/m3"}, {s.Sensors[1].VeryHigh.Text, "2 mg/m3"},
		{s.Extinguishers[0].Rating.V, "2-A:10-B:C"}, {a.Check, "hose-length"}, {a.About, "Main"}, {a.Reason, "replaced in spring"}, {a.Role, "steward"}, {a.Until.String(), "2028-02-29"},
		{s.Documents[0].Kind, "area classification letter"}, {s.Documents[1].Kind, "hazard analysis"},
	} {
		if v[0] != v[1] {
			t.Errorf("%q, want %q", v[0], v[1])
		}
	}
	if held := s.Documents; held[0].Held.V || !held[0].Held.Stated() || !held[1].Held.V {
		t.Errorf("documents held: %+v, %+v", held[0].Held, held[1].Held)
	}
	if !c.Given || c.At.Line != 26 || a.At.Line == 0 || s.Extinguishers[0].Place.V != (Point{2 * foot, 20 * foot}) {
		t.Errorf("%+v", c)
	}
}

// TestOneOrSeveral: one thing may be written without a list.
func TestOneOrSeveral(t *testing.T) {
	for field, forms := range map[string][2]string{
		"opens":    {`opens = ["Zone gate", "Saw gate"]`, `opens = %s"Zone gate"%s`},
		"starts":   {`starts = ["Second", "Fan"]`, `starts = %s"Fan"%s`},
		"stops":    {`stops = ["Second", "Saw", "Fan"]`, `stops = %s"Saw"%s`},
		"readings": {`readings = [{ state = "standby", mean = "0.1 A", spread = "20 mA" }, { state = "no load", mean = "5.2 A" }]`, `readings = %s{ state = "no load", mean = "5.2 A" }%s`},
		"chain":    {panel[strings.Index(panel, "stops = [{"):strings.Index(panel, "\n[[trigger]]")], `stops = %s{ device = "Saw gate", cable = "9 ft" }%s`},
	} {
		alone := describe(sound(t, strings.Replace(panel, forms[0], fmt.Sprintf(forms[1], "", ""), 1)))
		listed := describe(sound(t, strings.Replace(panel, forms[0], fmt.Sprintf(forms[1], "[", "]"), 1)))
		if alone != listed || alone == describe(sound(t, panel)) {
			t.Errorf("%s alone is not %s in a list: %s", field, field, firstDifference(alone, listed))
		}
	}
}

// TestControlDefaults: what the control half leaves out is not given, but
// for what the contract gives a default.
func TestControlDefaults(t *testing.T) {
	s := sound(t, strings.Replace(bare, "[[leak]]", "[[tap]]\non = \"Main\"\n[[sensor]]\n[[leak]]", 1))
	v, g, c, chain := s.Triggers[0], s.Gates[0], s.Control, s.Chains[0]
	for name, how := range map[string]How{
		"standby": v.Standby.How, "no load": v.NoLoad.How, "threshold": v.Threshold.How, "range": v.Range.How, "start delay": v.StartDelay.How, "run on": v.RunOn.How,
		"supply": c.Supply.How, "power": c.SupplyPower.How, "listed": c.SupplyListed.How, "lowest": c.Lowest.How, "after power cut": c.AfterPowerCut.How, "enclosure": c.EnclosureType.How, "lockout": c.Lockout.How, "purge": c.Purge.How,
		"drive": g.Drive.How, "travel": g.Travel.How, "moving": g.Moving.How, "stall": g.Stall.How, "holding": g.Holding.How, "gate's lowest": g.Lowest.How, "proves": g.Proves.How, "open stop": g.OpenStop.How, "shut stop": g.ShutStop.How,
	} {
		if how != NotGiven {
			t.Errorf("%s is given", name)
		}
	}
	if v.Turns != (Field[int]{1, Defaulted, v.At}) || c.MovesTogether.V != 1 || c.MovesTogether.How != Defaulted || chain.Temperature.How != Defaulted || unit.Compare(float64(chain.Temperature.V), 293.15) != 0 {
		t.Errorf("turns %+v, moves together %+v, temperature %+v", v.Turns, c.MovesTogether, chain.Temperature)
	}
	if s.Taps[0].Where != s.Ducts[0].Length || s.Sensors[0].High.Known() || s.Sensors[0].VeryHigh.Known() {
		t.Errorf("%+v, %+v", s.Taps[0], s.Sensors[0])
	}
	none := sound(t, strings.Replace(bare, "[control]\n", "", 1))
	if none.Control.Given || none.Control.MovesTogether.Known() || assumed(none, "control.moves_together") != nil {
		t.Errorf("without a table: %+v", none.Control)
	}
}

// TestLevels: across a filter a level is a pressure, else it is text; very
// high may be as high as high, and each may stand alone.
func TestLevels(t *testing.T) {
	read := func(body string) *Sensor { return sound(t, oneMachine("Saw")+"[[sensor]]\n"+body).Sensors[0] }
	if v := read("senses = \"filter pressure\"\nhigh = \"600 Pa\"\nvery_high = \"600 Pa\"\n"); v.High.Press.V != 600 || v.VeryHigh.Press.V != 600 || v.High.Text != "" || !v.High.Known() {
		t.Errorf("%+v", v)
	}
	if v := read("senses = \"filter pressure\"\nvery_high = \"600 Pa\"\n"); v.High.Known() || v.VeryHigh.Press.V != 600 {
		t.Errorf("%+v", v)
	}
	for _, body := range []string{"senses = \"bin level\"\nhigh = \"80 %\"\n", "high = \"80 %\"\n"} {
		if v := read(body); v.High.Text != "80 %" || v.High.Press.Known() || !v.High.Known() || v.VeryHigh.Known() {
			t.Errorf("%s: %+v", body, v)
		}
	}
}

// TestCurrentRanges: the ends of a range in any unit of current; they may be
// alike, and the lower may be nothing.
func TestCurrentRanges(t *testing.T) {
	for text, want := range map[string]CurrentRange{
		"0.5 A to 50 A": {0.5, 50}, "500 mA to 50 A": {0.5, 50}, "0 A to 20 A": {0, 20}, "5 A to 5 A": {5, 5},
	} {
		v := sound(t, strings.Replace(panel, "0.5 A to 50 A", text, 1)).Triggers[0].Range
		if unit.Compare(float64(v.V.Low), float64(want.Low)) != 0 || unit.Compare(float64(v.V.High), float64(want.High)) != 0 {
			t.Errorf("%s: %+v", text, v.V)
		}
	}
}

// TestDevices: a device may hang on two chains, which is for a check to say;
// of two devices of one name the gate is meant.
func TestDevices(t *testing.T) {
	west := "[[chain]]\nname = \"West chain\"\ncable = \"0.75 mm2\"\nstops = [{ device = \"Air\", cable = \"9 ft\" }, { device = \"Saw gate\", cable = \"9 ft\" }]\n"
	s := sound(t, panel+west)
	if c := s.Chains[1]; c.Stops[0].Sensor != s.Sensors[1] || c.Stops[1].Gate != s.Gates[0] || c.CableText != "0.75 mm2" || unit.Compare(float64(c.Cable)*1e6, 0.75) != 0 {
		t.Errorf("%+v", c)
	}
	text := panel + "[[sensor]]\nname = \"Zone gate\"\nsenses = \"bin level\"\n"
	if stop := sound(t, text).Chains[0].Stops[0]; stop.Gate == nil || stop.Sensor != nil {
		t.Errorf("%+v", stop)
	}
}

// TestDates: the days that there are, the last of February in a leap year
// among them, and no end where none is given.
func TestDates(t *testing.T) {
	for _, day := range []string{"2026-02-28", "2028-02-29", "2000-02-29", "2026-12-31", "2026-04-30"} {
		if a := sound(t, strings.Replace(panel, "2028-02-29", day, 1)).Accepted[0]; a.Until.String() != day {
			t.Errorf("%s: %v", day, a.Until)
		}
	}
	for _, day := range []string{"2027-02-29", "2100-02-29", "2026-04-31", "2026-13-01", "2026-00-01", "2026-01-00"} {
		if said := refused(t, strings.Replace(panel, "2028-02-29", day, 1)); !strings.Contains(said, "read "+day+"; expected a date or time that exists") {
			t.Errorf("%s: %s", day, said)
		}
	}
	if a := sound(t, strings.Replace(panel, "until = 2028-02-29\n", "", 1)).Accepted[0]; a.Until != (entry.Date{}) {
		t.Errorf("no end: %v", a.Until)
	}
}
