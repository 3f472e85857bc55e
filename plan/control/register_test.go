package control_test

import (
	"strings"
	"testing"

	"dustbook/plan/control"
)

// tagsOf are the tags and names of the register on one line.
func tagsOf(k *control.Reckoning) string {
	var list []string
	for _, d := range k.Devices {
		list = append(list, d.Pair())
	}
	return strings.Join(list, "; ")
}

func TestRegister(t *testing.T) {
	_, k := hall(t)
	want := "G1 Saw gate; G2 Planer gate; G3 Jointer gate; G4 Far gate; G5 Drum gate; Z1 East zone gate; " +
		"T1 Saw runs; T2 Planer runs; T3 Jointer runs; H1 Lathe switch; S1 Filter gauge; S2 Room dust; S3 Drum eye; " +
		"R1 Cyclone; P1 Control supply; B1 Stop by the hall door"
	if got := tagsOf(k); got != want {
		t.Errorf("the register is\n%s\nwant\n%s", got, want)
	}
}

// A collector that no trigger starts has no relay.
func TestRelays(t *testing.T) {
	s, k := hall(t)
	if d := k.RelayOf(s.Collectors[0]); d == nil || d.Switches != s.Collectors[0] || d.Tag != "R1" || k.Wired(d) {
		t.Errorf("the cyclone's relay is %+v", d)
	}
	if d := k.RelayOf(s.Collectors[1]); d != nil {
		t.Errorf("the bag unit has a switch of its own, and the relay %+v", d)
	}
}

// A change of one kind leaves the tags of the others alone, and so does the
// order of machines and ducts.
func TestTagsAreStable(t *testing.T) {
	_, k := hall(t, `[[trigger]]
name = "Jointer runs"
senses = "current"
machine = "Jointer"
opens = ["Jointer gate", "East zone gate"]
starts = "Cyclone"
`, "", `  { device = "Jointer runs", cable = "6 ft" },
`, "", `[[machine]]
name = "Drum"
kind = "drum sander"
at = [50, 5]
port = { name = "hood", size = "4 in", flow = "350 cfm" }
`, "", `[[collector]]
name = "Cyclone"`, `[[machine]]
name = "Drum"
kind = "drum sander"
port = { name = "hood", size = "4 in", flow = "350 cfm" }
[[collector]]
name = "Cyclone"`)
	got := tagsOf(k)
	for _, want := range []string{"G1 Saw gate", "Z1 East zone gate", "H1 Lathe switch", "S3 Drum eye", "B1 Stop by the hall door"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
}

// A tag that the file gives stays, whatever is added before it; the others
// count around it.
func TestPinnedTags(t *testing.T) {
	_, k := hall(t, "name = \"Planer gate\"\n", "name = \"Planer gate\"\ntag = \"G1\"\n")
	got := tagsOf(k)
	for _, want := range []string{"G2 Saw gate", "G1 Planer gate", "G3 Jointer gate", "G4 Far gate", "G5 Drum gate", "Z1 East zone gate"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	_, k = hall(t, "name = \"Saw gate\"\n", "name = \"New gate\"\non = \"Saw drop\"\nat = \"1 ft\"\n[[gate]]\nname = \"Saw gate\"\ntag = \"G1\"\n")
	if got := tagsOf(k); !strings.Contains(got, "G1 Saw gate") || strings.Contains(got, "G1 New gate") {
		t.Errorf("a new gate before a pinned one: %s", got)
	}
}

// A gate is a zone gate where ducts of more than one machine empty through
// it: not for one movable end, not for two ports of one machine.
func TestZoneGates(t *testing.T) {
	zones := func(k *control.Reckoning) string {
		var list []string
		for _, d := range k.Devices {
			if d.Kind == control.ZoneGate {
				list = append(list, d.Name)
			}
		}
		return strings.Join(list, ", ")
	}
	_, k := hall(t)
	if got := zones(k); got != "East zone gate" {
		t.Errorf("zone gates: %s", got)
	}
	// the far end serves two machines by one movable hose; with a second duct
	// that joins it, two machines empty through its gate
	_, k = hall(t, `serves = ["Lathe", "Disc"]`, `serves = ["Lathe"]
[[duct]]
name = "Disc drop"
to = "Far drop"
size = "4 in"
route = [[34, 15, 3], [34, 15, 9], [32, 15, 9]]
serves = ["Disc"]`, `name = "Far gate"
on = "Far drop"
at = "4 ft"`, `name = "Far gate"
on = "Far drop"`)
	if got := zones(k); got != "East zone gate, Far gate" {
		t.Errorf("zone gates with two ducts before the far gate: %s", got)
	}
	// two ducts of one machine
	_, k = hall(t, `port = { name = "cabinet", size = "4 in", flow = "350 cfm" }`, `port = [{ name = "cabinet", size = "4 in", flow = "350 cfm" }, { name = "guard", size = "3 in", flow = "100 cfm" }]`,
		`serves = ["Saw"]`, `serves = ["Saw/cabinet"]
[[duct]]
name = "Guard pipe"
to = "Saw drop"
size = "3 in"
route = [[10, 2, 9], [10, 5, 9]]
serves = ["Saw/guard"]`, `on = "Saw drop"
at = "5 ft"`, `on = "Saw drop"`)
	if got := zones(k); got != "East zone gate" {
		t.Errorf("zone gates with a guard pipe: %s", got)
	}
}

func TestPlaces(t *testing.T) {
	s, k := hall(t)
	d := k.DeviceOf(s.Gates[1])
	if d.Name != "Saw gate" || d.Duct.Name != "Saw drop" || d.Room == nil || d.Room.Name != "Hall" || len(d.Machines) != 1 || d.Machines[0].Name != "Saw" {
		t.Errorf("%+v", d)
	}
	if len(d.Chains) != 1 || d.Chains[0].Chain.Name != "Hall chain" || d.Chains[0].Position != 2 {
		t.Errorf("on chains %+v, want Hall chain, place 2", d.Chains)
	}
	if d := k.DeviceOf(s.Triggers[0]); d.Room == nil || d.Room.Name != "Hall" || d.Machines[0].Name != "Saw" || d.Chains[0].Position != 1 {
		t.Errorf("%+v", d)
	}
	if d := k.DeviceOf(s.Stops[0]); d.Room == nil || d.Room.Name != "Hall" || k.Wired(d) {
		t.Errorf("%+v", d)
	}
	if d := k.OnStop(s.Chains[1].Stops[1]); d == nil || d.Tag != "S3" || !k.Wired(d) {
		t.Errorf("the drum eye: %+v", d)
	}
	if got := k.SupplyTag(); got != "P1" {
		t.Errorf("the supply is %q", got)
	}
}

// The drive of a gate: as the file says; else powered where a trigger opens
// it or a chain feeds it; else not given.
func TestDrive(t *testing.T) {
	s, k := hall(t, `at = "4 ft"
drive = "powered"
[[gate]]
name = "Far gate"`, `at = "4 ft"
[[gate]]
name = "Far gate"`)
	want := map[string]control.Drive{"East zone gate": control.Powered, "Jointer gate": control.Powered, "Far gate": control.ByHand, "Drum gate": control.DriveNotGiven}
	for _, g := range s.Gates {
		if d, asked := want[g.Name]; asked && k.Drive(g) != d {
			t.Errorf("%s: drive %d, want %d", g.Name, k.Drive(g), d)
		}
	}
}

// A shop without a control half has none: a stop button alone makes none.
func TestGiven(t *testing.T) {
	const plain = `[shop]
name = "Plain"
[[machine]]
name = "Saw"
kind = "table saw"
[[collector]]
name = "Fan"
inlet = "4 in"
claims = { flow = "800 cfm", suction = "8 inwg" }
[[duct]]
name = "Drop"
to = "Fan"
size = "4 in"
length = "10 ft"
serves = ["Saw/cabinet"]
[[gate]]
name = "Gate"
on = "Drop"
[[stop]]
name = "Stop"
stops = ["Fan"]
`
	_, k := read(t, plain)
	if k.Given || k.Matrix != nil || len(k.Ways) != 0 {
		t.Errorf("a shop without a control half: given %v, matrix %v", k.Given, k.Matrix)
	}
	_, k = read(t, strings.Replace(plain, `on = "Drop"`, "on = \"Drop\"\ndrive = \"powered\"", 1))
	if !k.Given || k.Matrix == nil {
		t.Error("a powered gate makes a control half")
	}
}
