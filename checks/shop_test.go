package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
)

// whole is a shop that meets every check: two wood machines with given needs,
// steel pipe, a curve, a filter and a motor strong enough.
const whole = `
[shop]
name = "Whole"
setting = "school"
rules = "us"
[[room]]
name = "Hall"
outline = [[0, 0], [30, 0], [30, 20], [0, 20]]
[[room]]
name = "House"
outline = [[30, 0], [50, 0], [50, 20], [30, 20]]
[[wall]]
from = [30, 0]
to = [30, 20]
divides = "garage from dwelling"
[[appliance]]
kind = "electric"
room = "Hall"
[[machine]]
name = "Saw"
kind = "table saw"
at = [10, 5]
makes = "wood"
port = { size = "4 in", flow = "400 cfm" }
[[machine]]
name = "Lathe"
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
filter = { clean = "0.5 inwg", change = "2 inwg", at = "1000 cfm" }
exhaust = "outside"
[[duct]]
name = "Main"
to = "Cyclone"
size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 10, 8], [2, 10, 8]]
[[duct]]
name = "Saw drop"
to = "Main"
size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[10, 5, 2], [10, 5, 8], [10, 8, 8], [8, 10, 8]]
serves = ["Saw"]
[[duct]]
name = "Lathe drop"
to = "Main"
size = "5 in"
material = "spiral steel"
gauge = "24 ga"
route = [[20, 5, 2], [20, 5, 8], [20, 10, 8]]
serves = ["Lathe"]
[[gate]]
name = "Saw gate"
on = "Saw drop"
at = "4 ft"
[[gate]]
name = "Lathe gate"
on = "Lathe drop"
at = "4 ft"
`

// change is a piece of the whole shop replaced by another.
type change struct{ old, new string }

// planOf reads the whole shop with changes; each must apply exactly once.
func planOf(t *testing.T, changes ...change) *plan.Plan {
	t.Helper()
	text := whole
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
	return plan.Make(s, entry.Date{})
}

// pick finds the findings of a check about a thing; an empty name means any.
func pick(list []checks.Finding, check, about string) []checks.Finding {
	var found []checks.Finding
	for _, f := range list {
		if f.Check == check && (about == "" || f.About == about) {
			found = append(found, f)
		}
	}
	return found
}
