package record

import (
	"fmt"
	"testing"
)

// shopNames is what an invented shop has.
var shopNames = Names{
	Ports: []string{"Planer/hood", "Table saw/cabinet"}, Ducts: []string{"East main", "Saw drop"}, Gates: []string{"Saw gate", "East gate"},
	Devices: []string{"Saw gate", "Saw running"}, Chains: []string{"East chain"}, Machines: []string{"Planer", "Table saw"},
	Collectors: []string{"Cyclone", "Bag"}, Filters: []string{"Cyclone"}, Rooms: []string{"Hall"}, Uses: []string{"Planer", "Table saw", "Everything shut"},
}

// at is a record of one reading at a thing, in a use.
func at(t *testing.T, of, value, thing, use string) *Record {
	t.Helper()
	text := head + fmt.Sprintf("[[reading]]\nof = %q\nat = %q\nvalue = %q\n", of, thing, value)
	if use != "" {
		text += fmt.Sprintf("use = %q\n", use)
	}
	r, problems := Read("records/2026-11-24-inspection-1.toml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return r
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		of, value, at, use string
		problems           []string
	}{
		{"hood pressure", "2 inwg", "Planer/hood", "Planer", nil},
		{"flow", "350 cfm", "Planer/hood", "Everything shut", nil},
		{"flow", "350 cfm", "Saw drop", "", nil},
		{"flow", "350 cfm", "Bag", "", nil},
		{"filter pressure", "300 Pa", "Cyclone", "", nil},
		{"voltage", "22 V", "Saw gate", "", nil},
		{"voltage", "24 V", "East chain", "", nil},
		{"room pressure", "-2 Pa", "Hall", "", nil},
		{"hood pressure", "2 inwg", "Plainer/hood", "", []string{
			`5:6: read at = "Plainer/hood"; expected a port of the shop; do: write "Planer/hood"`}},
		{"hood pressure", "2 inwg", "Planer", "", []string{
			`5:6: read at = "Planer"; expected a port of the shop, not a machine; do: write "Planer/hood"`}},
		{"flow", "350 cfm", "Saw gate", "", []string{
			`5:6: read at = "Saw gate"; expected a port, a duct or a collector of the shop, not a gate; do: use one of "Planer/hood", "Table saw/cabinet", "East main", "Saw drop", "Cyclone", "Bag"`}},
		{"filter pressure", "300 Pa", "Bag", "", []string{
			`5:6: read at = "Bag"; expected a device or the filter of a collector of the shop, not a collector; do: use one of "Saw gate", "Saw running", "Cyclone"`}},
		{"tap pressure", "2 inwg", "Main tap", "", []string{
			`5:6: read at = "Main tap"; expected a tap of the shop; do: the shop file has none: add it there first`}},
		{"stop", "4 mm", "Saw gates", "Planner", []string{
			`5:6: read at = "Saw gates"; expected a gate of the shop; do: write "Saw gate"`,
			`7:7: read use = "Planner"; expected a use of the shop; do: write "Planer"`}},
		{"stop", "4 mm", "Saw gate", "East main", []string{
			`7:7: read use = "East main"; expected a use of the shop, not a duct; do: use one of "Planer", "Table saw", "Everything shut"`}},
		{"stop", "4 mm", "saw gate", "", []string{
			`5:6: read at = "saw gate"; expected a gate of the shop; do: write "Saw gate" or "East gate"`}},
	} {
		got := at(t, c.of, c.value, c.at, c.use).Check(shopNames)
		compareLines(t, c.of+" at "+c.at, got, "records/2026-11-24-inspection-1.toml:", c.problems)
	}
}

// Every kind of thing is looked for where its names are.
func TestCheckFindsEveryKind(t *testing.T) {
	for i, thing := range things {
		only := Names{}
		lists := []*[]string{&only.Ports, &only.Ducts, &only.Gates, &only.Taps, &only.Devices, &only.Chains, &only.Machines, &only.Collectors, &only.Filters, &only.Rooms, &only.Uses, &only.Sheets}
		*lists[i] = []string{"X"}
		if p := only.missing("at", "X", []string{thing.word}); p != nil {
			t.Errorf("%s: %v", thing.word, p)
		}
		if p := (Names{}).missing("at", "X", []string{thing.word}); p == nil {
			t.Errorf("%s is found where there is none", thing.word)
		}
	}
}

// In a shop of many names the message does not list them all.
func TestCheckManyNames(t *testing.T) {
	var n Names
	for i := range 30 {
		n.Gates = append(n.Gates, fmt.Sprintf("Gate %d", i))
	}
	compareLines(t, "many names", at(t, "stop", "4 mm", "zzz", "").Check(n), "records/2026-11-24-inspection-1.toml:", []string{
		`5:6: read at = "zzz"; expected a gate of the shop; do: take a name that the shop file has`})
}

// A record that is not on the disk yet has no places, and is checked all the
// same; a long one ends in a list that a person can read.
func TestCheckUnwritten(t *testing.T) {
	r := &Record{Kind: "inspection", Date: day(2026, 11, 24)}
	for range 100 {
		r.Readings = append(r.Readings, Reading{Of: "stop", At: "Nowhere", Value: Quantity{Text: "4 mm"}})
	}
	got := r.Check(shopNames)
	if len(got) != mostProblems || got[0].Error() != `read at = "Nowhere"; expected a gate of the shop; do: use one of "Saw gate", "East gate"` {
		t.Errorf("%d: %v", len(got), got[0])
	}
}
