package duct

import "testing"

// yard is a shop with one of each: a machine with two ports, one with chips,
// a movable hose, a port without a gate, a dead end, a zone gate, two
// collectors, and a machine that no duct serves. Air flows Main 1, 2, 3, …
// from the far end.
const yard = `
[shop]
name = "Yard"
units = "metric"
[method]
size_changes = "none"
[[collector]]
name = "Cyclone"
inlet = "200 mm"
fan_curve = [["0 m3/s", "3000 Pa"], ["0.5 m3/s", "2200 Pa"], ["1 m3/s", "0 Pa"]]
filter = { clean = "100 Pa", change = "400 Pa", at = "0.5 m3/s" }
[[collector]]
name = "Small fan"
inlet = "100 mm"
fan_curve = [["0 m3/s", "2000 Pa"], ["0.3 m3/s", "0 Pa"]]

[[machine]]
name = "Saw"
kind = "table saw"
port = [{ name = "cabinet", size = "120 mm", flow = "600 m3/h" }, { name = "guard", size = "60 mm", flow = "150 m3/h" }]
[[machine]]
name = "Planer"
kind = "planer"
port = { name = "hood", size = "120 mm", flow = "700 m3/h" }
also_open = ["Lathe gate"]
[[machine]]
name = "Lathe"
kind = "lathe"
port = { name = "scoop", size = "120 mm", flow = "600 m3/h" }
[[machine]]
name = "Sander"
kind = "disc sander"
port = { name = "hood", size = "80 mm", flow = "300 m3/h" }
[[machine]]
name = "Sweep"
kind = "floor sweep"
port = { name = "inlet", size = "100 mm", flow = "400 m3/h" }
[[machine]]
name = "Press"
kind = "drill press"
port = { name = "hood", size = "80 mm", flow = "200 m3/h" }
[[machine]]
name = "Anvil"
kind = "other"
port = { name = "port", size = "80 mm", flow = "200 m3/h" }

[[duct]]
name = "Main"
to = "Cyclone"
size = "200 mm"
length = "12 m"
[[duct]]
name = "Saw drop"
to = "Main"
joins = "9 m"
size = "120 mm"
length = "4 m"
serves = ["Saw/cabinet"]
[[duct]]
name = "Guard pipe"
to = "Saw drop"
joins = "2 m"
size = "60 mm"
length = "2 m"
serves = ["Saw/guard"]
[[duct]]
name = "Sweep drop"
to = "Main"
joins = "6 m"
size = "100 mm"
length = "3 m"
serves = ["Sweep"]
[[duct]]
name = "Planer drop"
to = "Main"
joins = "2 m"
size = "140 mm"
length = "3 m"
serves = ["Planer"]
[[duct]]
name = "Shared drop"
to = "Main"
size = "120 mm"
length = "3 m"
hose = { size = "100 mm", length = "2 m", stretched = true }
serves = ["Lathe", "Sander"]
[[duct]]
name = "Dead end"
to = "Main"
joins = "9 m"
size = "100 mm"
length = "3 m"
[[duct]]
name = "Press pipe"
to = "Small fan"
size = "80 mm"
length = "2 m"
serves = ["Press"]

[[gate]]
name = "Zone gate"
on = "Main"
at = "4 m"
[[gate]]
name = "Saw gate"
on = "Saw drop"
[[gate]]
name = "Guard gate"
on = "Guard pipe"
[[gate]]
name = "Planer gate"
on = "Planer drop"
[[gate]]
name = "Lathe gate"
on = "Shared drop"
[[gate]]
name = "Press gate"
on = "Press pipe"

[[use]]
name = "Saw and press"
machines = ["Saw", "Press"]
[[use]]
name = "Lathe and sander"
machines = ["Sander", "Lathe"]
[[use]]
name = "Saw with the planer's gate"
machines = ["Saw"]
also_open = ["Planer gate", "Zone gate"]
`

func yardReckoned(t *testing.T) *Reckoning { return Reckon(mustRead(t, yard)) }

// at is one stretch of a result.
func at(t *testing.T, r *Result, duct string, number int) *StretchResult {
	t.Helper()
	for i := range r.Stretches {
		if s := r.Stretches[i].Stretch; s.Duct.Name == duct && s.Number == number {
			return &r.Stretches[i]
		}
	}
	t.Fatalf("no stretch %s %d", duct, number)
	return nil
}
