package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// whole is a shop that stands as well as a shop can to every check: two wood
// machines with given needs, steel pipe that is bonded, a curve, a filter, a
// motor strong enough and an opening for the air.
const whole = `
[shop]
name = "Whole"
setting = "school"
rules = "us"
[[revision]]
mark = "A"
date = 2026-09-07
note = "First issue"
[[room]]
name = "Hall"
outline = [[0, 0], [30, 0], [30, 20], [0, 20]]
exits = [[0, 5]]
opening = "3 sq ft"
height = "10 ft"
way_out = "48 in"
cleaned = "vacuum"
layer = { depth = "0.01 in", area = "40 sq ft", density = "20 lb/ft3" }
[[room]]
name = "House"
outline = [[30, 0], [50, 0], [50, 20], [30, 20]]
[[wall]]
from = [30, 0]
to = [30, 20]
divides = "garage from dwelling"
board = "5/8 in"
door = { thick = "1 3/8 in", closes = true, into_bedroom = false }
[[extinguisher]]
at = [1, 7]
rating = "4-A:80-B:C"
serviced = 2026-03-02
[[appliance]]
kind = "electric"
room = "Hall"
[[machine]]
name = "Saw"
restarts = false
noise = "76 dBA"
hours = 2
cut = { width = "1/8 in", depth = "2 in", feed = "12 ft/min" }
kind = "table saw"
at = [10, 5]
makes = "wood"
port = { size = "4 in", flow = "400 cfm" }
[[machine]]
name = "Lathe"
restarts = false
noise = "74 dBA"
hours = 2
kind = "lathe"
at = [20, 5]
makes = "wood"
port = { size = "4 in", flow = "400 cfm" }
[[collector]]
name = "Cyclone"
at = [2, 10]
inlet = "5 in"
fan_curve = [["0 cfm", "13 inwg"], ["600 cfm", "12 inwg"], ["1200 cfm", "9 inwg"], ["1800 cfm", "3 inwg"]]
fan_power = [["0 cfm", "1 hp"], ["1800 cfm", "4 hp"]]
motor = { power = "5 hp" }
bin = { size = "30 gal", material = "steel" }
bonded = "3 ohm"
starter = "magnetic, three-wire"
enclosure = "rigid housing"
labelled = true
dirty_volume = "6 cu ft"
filter = { clean = "0.5 inwg", change = "2 inwg", at = "1000 cfm" }
exhaust = "outside"
outlet = { to_property = "40 ft", to_opening = "15 ft", above_ground = "12 ft" }
[[duct]]
name = "Main"
to = "Cyclone"
hangers = "8 ft"
clean_outs = ["0 ft", "9 ft", "18 ft"]
clearance = "8 in"
bonded = "2 ohm"
size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8], [2, 10, 8]]
[[duct]]
name = "Saw drop"
to = "Main"
clearance = "6 in"
bonded = "4 ohm"
size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[10, 5, 2], [10, 5, 8], [10, 8, 8], [8, 10, 8]]
serves = ["Saw"]
[[duct]]
name = "Lathe drop"
to = "Main"
clearance = "4 in"
bonded = "4 ohm"
size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]
serves = ["Lathe"]
[[stop]]
name = "Stop by the door"
at = [1, 6]
stops = ["Cyclone"]
[[gate]]
name = "Saw gate"
on = "Saw drop"
at = "4 ft"
[[gate]]
name = "Lathe gate"
on = "Lathe drop"
at = "4 ft"
[[document]]
kind = "area classification letter"
held = true
date = 2026-10-02
by = "electrical inspector"
[[document]]
kind = "dust hazard analysis"
held = true
date = 2026-09-14
by = "fire protection engineer"
` + tapped + heldPapers

// best is the best state of a check whose figures are practice: for every other
// it is met.
var best = map[string]checks.State{"make-up-air": checks.Thin, "bin-filling": checks.Advice, "explosion-protection": checks.Ask, "collector-place": checks.Ask, "dust-scope": checks.Ask, "sprinkler-area": checks.Ask, "aisle-width": checks.Advice, "outlet-openings": checks.Advice, "noise-dose": checks.Ask, "dust-exposure": checks.Ask, "duct-clearance": checks.Advice, "duct-clean-outs": checks.Advice, "last-test": checks.Ask, "duct-thickness": checks.Thin}

// short reports whether a finding is less than the best its check can say.
func short(f checks.Finding) bool {
	state, practice := best[f.Check]
	return f.Weight != checks.Know || practice && f.State != state || !practice && f.State != checks.Met
}

// driven is what the whole shop gets for a control half: two triggers with a
// zone gate on the main, a supply, a chain and a switch.
const driven = `
[control]
supply = "24 V"
after_power_cut = "waits for a person"
enclosure_type = "12"
lowest = "18 V"
moves_together = 1
supply_power = "96 W"
supply_listed = "class 2"
lockout = "key switch by the door"
[[gate]]
name = "Zone gate"
on = "Main"
drive = "powered"
open_stop = "160 mm"
shut_stop = "4 mm"
travel = "1.5 s"
stall = "1.6 A"
holding = "20 mA"
[[trigger]]
name = "Saw runs"
senses = "current"
machine = "Saw"
standby = "0.1 A"
no_load = "5.2 A"
threshold = "0.7 A"
range = "0.5 A to 50 A"
opens = ["Saw gate", "Zone gate"]
starts = "Cyclone"
start_delay = "4 s"
run_on = "12 s"
draws = "30 mA"
[[trigger]]
name = "Lathe runs"
senses = "contact"
machine = "Lathe"
opens = ["Lathe gate", "Zone gate"]
starts = "Cyclone"
start_delay = "3.8 s"
run_on = "14 s"
draws = "30 mA"
[[sensor]]
name = "Drum eye"
senses = "bin level"
high = "80 %"
draws = "40 mA"
[[chain]]
name = "Chain"
cable = "18 AWG"
stops = [
  { device = "Saw runs", cable = "6 ft" },
  { device = "Saw gate", cable = "8 ft" },
  { device = "Zone gate", cable = "12 ft" },
  { device = "Lathe gate", cable = "20 ft" },
  { device = "Lathe runs", cable = "6 ft" },
  { device = "Drum eye", cable = "30 ft" },
]
`

// change is a piece of the whole shop replaced by another.
type change struct{ old, new string }

// planOf reads the whole shop with changes; each must apply exactly once.
func planOf(t *testing.T, changes ...change) *plan.Plan {
	t.Helper()
	return changed(t, whole, changes)
}

// drivenPlan reads the whole shop with its control half, with changes.
func drivenPlan(t *testing.T, changes ...change) *plan.Plan {
	t.Helper()
	return changed(t, drivenText(), changes)
}

// drivenText is the whole shop with its control half.
func drivenText() string {
	text := strings.Replace(whole, "hours = 2\n", "", 2)
	for _, machine := range []string{"Saw", "Lathe"} {
		text = strings.Replace(text, "name = \""+machine+"\"\n", "name = \""+machine+"\"\nblower = false\n", 1)
		text = strings.Replace(text, "name = \""+machine+" gate\"\n", "name = \""+machine+" gate\"\ndrive = \"powered\"\nopen_stop = \"160 mm\"\nshut_stop = \"4 mm\"\ntravel = \"0.9 s\"\n", 1)
		text = strings.Replace(text, "on = \""+machine+" drop\"\nat = \"4 ft\"\n", "on = \""+machine+" drop\"\nat = \"4 ft\"\nstall = \"1.6 A\"\nholding = \"20 mA\"\n", 1)
	}
	text = strings.Replace(text, "restarts = false\n", "restarts = false\ncoast = \"6 s\"\nhours = 2\nstarts = 4\n", 2)
	text = strings.Replace(text, "starter = \"magnetic, three-wire\"\n", "starter = \"magnetic, three-wire\"\nstarts_per_hour = 6\n", 1)
	return text + driven
}

func changed(t *testing.T, text string, changes []change) *plan.Plan {
	t.Helper()
	for _, c := range changes {
		if strings.Count(text, c.old) != 1 {
			t.Fatalf("%q stands %d times in the shop, want once", c.old, strings.Count(text, c.old))
		}
		text = strings.Replace(text, c.old, c.new, 1)
	}
	s, problems := shop.Read("shop.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(s, nil, entry.Date{})
}

// pick finds the findings of a check about a thing; an empty name means any.
func pick(list []checks.Finding, check, about string) []checks.Finding {
	var found []checks.Finding
	for _, f := range list {
		if f.Check == check && (about == "" || f.About == about) {
			show(f)
			found = append(found, f)
		}
	}
	return found
}
