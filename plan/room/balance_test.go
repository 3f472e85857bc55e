package room

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dustbook/plan/shop"
)

// yard is a shop of two airs: hall and bench room share one, the lean-to has
// its own.
const yard = `[shop]
name = "Yard"
air_temperature = "65 F"
outdoor_design = "5 F"
[[room]]
name = "Hall"
outline = [[0,0],[40,0],[40,30],[0,30]]
height = "10 ft"
open_to = ["Bench room"]
opening = "1.5 sq ft"
[[room]]
name = "Bench room"
outline = [[40,0],[60,0],[60,30],[40,30]]
height = "10 ft"
[[room]]
name = "Lean-to"
outline = [[-8,0],[0,0],[0,10],[-8,10]]
height = "8 ft"
[[appliance]]
kind = "open-flue gas"
room = "Bench room"
[[machine]]
name = "Saw"
kind = "table saw"
room = "Hall"
noise = "95 dBA"
hours = 2
[[machine]]
name = "Lathe"
kind = "lathe"
room = "Lean-to"
noise = "85 dBA"
hours = 3
[[collector]]
name = "Cyclone"
inlet = "8 in"
room = "Lean-to"
exhaust = "outside"
claims = { flow = "1600 cfm", suction = "11.5 inwg" }
[[duct]]
name = "Saw drop"
to = "Cyclone"
size = "5 in"
length = "20 ft"
serves = ["Saw/cabinet"]
[[duct]]
name = "Lathe drop"
to = "Saw drop"
size = "5 in"
length = "10 ft"
serves = ["Lathe/scoop"]
`

func reckon(t *testing.T, text string, uses func(s *shop.Shop) []Use) *Reckoning {
	t.Helper()
	s := mustRead(t, text)
	return Reckon(s, standard, uses(s))
}

// sawRuns is the saw alone: 600 cfm, 30 of them by the lathe's shut gate.
func sawRuns(s *shop.Shop) []Use {
	saw, lathe, c := s.Machines[0], s.Machines[1], s.Collectors[0]
	return []Use{{Name: "Saw", Machines: []*shop.Machine{saw}, Draws: []Draw{{Collector: c, Flow: flow("600 cfm"), Ends: []End{{saw, flow("570 cfm")}, {lathe, flow("30 cfm")}}}}}}
}

func TestSpaces(t *testing.T) {
	var names []string
	spaces := Spaces(mustRead(t, yard))
	for _, s := range spaces {
		names = append(names, s.Name())
	}
	if got := strings.Join(names, ", "); got != "Hall and Bench room, Lean-to" {
		t.Errorf("spaces %s", got)
	}
	if v := float64(spaces[0].Volume.V) / 0.028316846592; !near(v, 18000, 1e-5) {
		t.Errorf("volume %g ft3", v)
	}
	if l := spaces[0].Limit; l == nil || l.Press != 2 {
		t.Errorf("limit of the open flue %v", l)
	}
	if spaces[1].Limit != nil {
		t.Error("the lean-to has a limit and nothing burns there")
	}
	if spaces[1].Openings.Known() {
		t.Error("the lean-to has no opening stated, yet one is known")
	}
	if s := Spaces(mustRead(t, strings.Replace(yard, "open-flue gas", "electric", 1))); len(s[0].Appliances) != 0 || s[0].Limit != nil {
		t.Error("an electric heater burns something")
	}
	apart := Spaces(mustRead(t, strings.Replace(yard, "open_to = [\"Bench room\"]\n", "", 1)))
	if len(apart) != 3 {
		t.Errorf("%d spaces with the doorway shut", len(apart))
	}
}

// Blown outdoors, all that is drawn is to be made up: 570 cfm in the hall.
func TestBalanceOutdoors(t *testing.T) {
	k := reckon(t, yard, sawRuns)
	if len(k.Balances) != 2 {
		t.Fatalf("%d balances", len(k.Balances))
	}
	b := k.Balances[0]
	if !near(float64(b.Net), float64(flow("570 cfm")), 1e-5) || b.Returned != 0 {
		t.Errorf("net %g, back %g", float64(b.Net), float64(b.Returned))
	}
	if got := fmt.Sprintf("%.2f", b.Changes.V); got != "1.90" { // 570 × 60 / 18000
		t.Errorf("%s changes", got)
	}
	// 570 cfm × 1.08 × 60 F = 36,936 Btu/h = 10.8 kW
	if got := fmt.Sprintf("%.1f", float64(b.Heat.Trade)/1000); got != "10.8" {
		t.Errorf("heat %s kW", got)
	}
	// 1.5 ft2 alone: Δp = ρ/2 (Q/(Cd A))²
	v := float64(flow("570 cfm")) / (0.65 * 1.5 * squareFoot)
	if want := 0.6 * v * v; !near(float64(b.Pressure.V), want, 1e-5) || b.Pressure.From != "openings" {
		t.Errorf("%g Pa from %s, want %g", float64(b.Pressure.V), b.Pressure.From, want)
	}
	if other := k.Balances[1]; !near(float64(other.Net), float64(flow("30 cfm")), 1e-5) || other.Pressure.Known() {
		t.Errorf("lean-to: net %g, pressure known %v", float64(other.Net), other.Pressure.Known())
	}
}

// Given back to the hall, the hall gains what the lean-to loses.
func TestBalanceReturned(t *testing.T) {
	text := strings.Replace(yard, `exhaust = "outside"`, "exhaust = \"returns to room\"\nreturns_to = \"Hall\"\nreturn_opening = \"2 sq ft\"", 1)
	k := reckon(t, text, sawRuns)
	sum := 0.0
	for _, b := range k.Balances {
		sum += float64(b.Net)
	}
	if math.Abs(sum) > 1e-5*float64(flow("600 cfm")) { // each space is rounded on its own grid
		t.Errorf("what is given back does not balance: %g m3/s", sum)
	}
	// 30 cfm are blown in: 30 × 60 / 18000 changes an hour go out again
	if b := k.Balances[0]; b.Net >= 0 || fmt.Sprintf("%.2f", b.Changes.V) != "0.10" {
		t.Errorf("hall: net %g, %g changes", float64(b.Net), b.Changes.V)
	}
	r := k.Returns[0]
	if !r.Needed || len(r.From) != 1 || r.From[0].Name() != "Lean-to" {
		t.Errorf("way back from %v", r.From)
	}
	// 600 cfm at 500 and 300 fpm: 1.2 and 2 ft2
	if !near(float64(r.Least)/squareFoot, 1.2, 1e-4) || !near(float64(r.Most)/squareFoot, 2, 1e-4) {
		t.Errorf("way back %g to %g m2", float64(r.Least), float64(r.Most))
	}
	if !near(float64(r.Speed.V)/0.00508, 300, 1e-4) {
		t.Errorf("through 2 ft2 at %g m/s", float64(r.Speed.V))
	}
	same := strings.NewReplacer(`room = "Lean-to"`, `room = "Hall"`).Replace(text)
	if r := reckon(t, same, sawRuns).Returns[0]; r.Needed {
		t.Error("all in one air, and a way back is asked for")
	}
}

// Openings and leaks together need less pressure than either alone, and the
// flow through both adds up to what is drawn.
func TestPressureOfBoth(t *testing.T) {
	one := strings.Replace(strings.Replace(yard, "[[room]]\nname = \"Lean-to\"\noutline = [[-8,0],[0,0],[0,10],[-8,10]]\nheight = \"8 ft\"\n", "", 1), `room = "Lean-to"`, `room = "Hall"`, -1)
	leaky := strings.Replace(one, `name = "Yard"`, "name = \"Yard\"\nenvelope = \"2000 cfm at 50 Pa\"", 1)
	both := reckon(t, leaky, sawRuns).Balances[0]
	alone := reckon(t, one, sawRuns).Balances[0]
	shut := reckon(t, strings.Replace(leaky, "opening = \"1.5 sq ft\"\n", "", 1), sawRuns).Balances[0]
	if !(both.Pressure.V < alone.Pressure.V && both.Pressure.V < shut.Pressure.V) {
		t.Errorf("both %g, opening %g, leaks %g Pa", float64(both.Pressure.V), float64(alone.Pressure.V), float64(shut.Pressure.V))
	}
	holes := crackOf(flow("2000 cfm"), 50, exponent)
	in := float64(holes.flow(both.Pressure.V)) + float64(standard.face(both.Pressure.V))*1.5*squareFoot
	if !near(in, float64(both.Net), 1e-5) {
		t.Errorf("%g m3/s come in, %g go out", in, float64(both.Net))
	}
	if both.Pressure.From != "both" || shut.Pressure.From != "envelope" {
		t.Errorf("from %q and %q", both.Pressure.From, shut.Pressure.From)
	}
	if !(shut.Pressure.Low <= shut.Pressure.V && shut.Pressure.V <= shut.Pressure.High && shut.Pressure.Low < shut.Pressure.High) {
		t.Errorf("band %g %g %g", float64(shut.Pressure.Low), float64(shut.Pressure.V), float64(shut.Pressure.High))
	}
	for i, o := range both.MakeUp {
		if !o.Smaller.Known() || o.Smaller.V > o.Area {
			t.Errorf("limit %s: %v of %g", o.Limit.Name, o.Smaller, float64(o.Area))
		}
		if o.Area > 0 && i > 0 && o.Limit.Press > both.MakeUp[0].Limit.Press && o.Area >= both.MakeUp[0].Area {
			t.Errorf("limit %s wants no smaller opening", o.Limit.Name)
		}
	}
}

// The envelope is of the whole building: with two airs it speaks for neither.
func TestEnvelopeOfTwoAirs(t *testing.T) {
	text := strings.Replace(yard, `name = "Yard"`, "name = \"Yard\"\nenvelope = \"2000 cfm at 50 Pa\"", 1)
	b := reckon(t, text, sawRuns).Balances[0]
	if b.Pressure.From != "openings" || len(b.Pressure.Left) != 1 || !b.Pressure.Left[0].Why.Is() {
		t.Errorf("from %q, left %v", b.Pressure.From, b.Pressure.Left)
	}
}

// What is missing is named, and nothing is reckoned in its place.
func TestMissing(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"height = \"10 ft\"\nopen_to", "open_to", "room.height of Hall"},
		{"room = \"Hall\"\nnoise", "noise", "machine.room of Saw"},
		{"exhaust = \"outside\"\n", "", "collector.exhaust of Cyclone"},
		{`exhaust = "outside"`, `exhaust = "returns to room"`, "collector.returns_to of Cyclone"},
		{"outdoor_design = \"5 F\"\n", "", "shop.outdoor_design"},
		{"opening = \"1.5 sq ft\"\n", "", "room.opening of Hall and Bench room"},
		{"noise = \"95 dBA\"\n", "", "machine.noise of Saw"},
		{"hours = 2\n", "", "machine.hours of Saw"},
	} {
		text := strings.Replace(yard, c.old, c.new, 1)
		if text == yard {
			t.Fatalf("no %q", c.old)
		}
		k := reckon(t, text, sawRuns)
		var missing []string
		for _, b := range k.Balances {
			for _, list := range [][]Missing{b.Missing, b.Changes.Missing, b.Pressure.Missing, b.Pressure.Left, b.Heat.Missing} {
				for _, m := range list {
					missing = append(missing, lackOf(m))
				}
			}
		}
		for _, d := range k.Doses {
			for _, m := range d.Missing {
				missing = append(missing, lackOf(m))
			}
		}
		if got := strings.Join(missing, "; "); !strings.Contains(got, c.want) {
			t.Errorf("without %q: %s, want %s", c.old, got, c.want)
		}
	}
}

// The doses of a use and of a day with both machines.
func TestDoseOfUses(t *testing.T) {
	k := reckon(t, yard, sawRuns)
	if d := k.Doses[0]; !d.Known() || d.By[1].Share != 0.5 { // 95 dBA, 2 h of 4
		t.Errorf("the saw: %+v", d)
	}
	if d := k.Day; !d.Known() || d.By[0].Share != 0.6875 { // 2/4 + 3/16
		t.Errorf("the day: %+v", d.By)
	}
}

// Gates that stand open while nothing runs are shown, but they are not what a
// shop is sized by.
func TestWorstIsAUseOfMachines(t *testing.T) {
	k := reckon(t, yard, func(s *shop.Shop) []Use {
		all := sawRuns(s)
		open := all[0]
		open.Name, open.Machines = "Everything open", nil
		open.Draws = []Draw{{Collector: s.Collectors[0], Flow: flow("900 cfm"), Ends: []End{{s.Machines[0], flow("900 cfm")}}}}
		return append(all, open)
	})
	hall := k.Spaces[0]
	if len(k.Of(hall)) != 2 || k.Worst(hall).Use != "Saw" {
		t.Errorf("%d balances, worst %s", len(k.Of(hall)), k.Worst(hall).Use)
	}
	if k.Worst(&Space{}) != nil {
		t.Error("a space that nothing touches has a worst use")
	}
}

// lackOf is what is missing, as a message names it.
func lackOf(m Missing) string { return strings.TrimSuffix(m.Field+" of "+m.Thing, " of ") }
