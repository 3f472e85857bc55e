package record

import (
	"reflect"
	"strings"
	"testing"
)

func TestReadLine(t *testing.T) {
	names := shopNames
	names.Uses = append(names.Uses, "Ripping in the hall", "Planer with jointer", "Edge = first")
	names.Ducts = append(names.Ducts, "Main in roof")
	for _, c := range []struct {
		text string
		want Reading
	}{
		{"hood pressure at Planer/hood = 4.1 inwg", Reading{Of: "hood pressure", At: "Planer/hood"}},
		{"hood pressure at Planer/hood in Planer = 4.1 inwg", Reading{Of: "hood pressure", At: "Planer/hood", Use: "Planer"}},
		{"hood pressure at Planer/hood in Planer filter clean = 4.1 inwg", Reading{Of: "hood pressure", At: "Planer/hood", Use: "Planer", Filter: "clean"}},
		{"hood pressure at Planer/hood, in Planer, filter clean=4.1 inwg", Reading{Of: "hood pressure", At: "Planer/hood", Use: "Planer", Filter: "clean"}},
		{"hood pressure at Planer/hood filter change-out with U-tube 3 in Table saw = 4.1 inwg", Reading{Of: "hood pressure", At: "Planer/hood", Use: "Table saw", Filter: "change-out", With: "U-tube 3"}},
		{"  velocity   at   East main  with  pitot tube  =  4.1 m/s ", Reading{Of: "velocity", At: "East main", With: "pitot tube"}},
		{"velocity at Main in roof = 4 m/s", Reading{Of: "velocity", At: "Main in roof"}},
		{"velocity at Main in roof in Ripping in the hall = 4 m/s", Reading{Of: "velocity", At: "Main in roof", Use: "Ripping in the hall"}},
		{"flow at East main in Planer with jointer = 400 cfm", Reading{Of: "flow", At: "East main", Use: "Planer with jointer"}},
		{"flow at East main in Planer with jointer with vane = 400 cfm", Reading{Of: "flow", At: "East main", Use: "Planer with jointer", With: "vane"}},
		{"flow at East main in Edge = first = 400 cfm", Reading{Of: "flow", At: "East main", Use: "Edge = first"}},
		{"flow at East main with hose in hand = 400 cfm", Reading{Of: "flow", At: "East main", With: "hose in hand"}},
		{"open stop at Saw gate = 4 mm", Reading{Of: "open stop", At: "Saw gate"}},
	} {
		got, problems := ReadLine(c.text, names)
		if len(problems) > 0 || !got.Value.Given() {
			t.Errorf("%s: %v", c.text, problems)
			continue
		}
		got.Value = Quantity{}
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s:\n got %+v\nwant %+v", c.text, got, c.want)
		}
	}
}

func TestReadLineWrong(t *testing.T) {
	form := func(text string) string {
		return `read "` + text + `"; expected ` + LineForm + `; do: write it as "hood pressure at Planer/hood = 4.1 inwg"`
	}
	const pressure = `a pressure with its unit, such as "2.5 inwg" or "600 Pa"`
	const ports = `expected a port of the shop; do: write "Planer/hood"`
	for _, c := range []struct {
		text     string
		problems []string
	}{
		{"", []string{form("")}},
		{"=", []string{form("=")}},
		{"hood pressure at Planer/hood", []string{form("hood pressure at Planer/hood")}},
		{"hood pressure Planer/hood = 2 inwg", []string{form("hood pressure Planer/hood = 2 inwg")}},
		{"hood pressure at = 2 inwg", []string{form("hood pressure at = 2 inwg")}},
		{strings.Repeat("x", 1001), []string{"read a reading of 1001 characters; expected at most 1000; do: shorten it"}},
		{"hood presure at Planer/hood = 2 inwg", []string{`read of = "hood presure"; expected a word for what was measured; do: write "hood pressure" or "room pressure"`}},
		{"hood pressure at Plainer/hood = 2 inwg", []string{`read at = "Plainer/hood"; ` + ports}},
		{"hood pressure at Plainer/hood in Planer = 2 inwg", []string{`read at = "Plainer/hood"; ` + ports}},
		{"hood pressure at Plainer/hood in Planner with U-tube = 2 cfm", []string{
			`read at = "Plainer/hood"; ` + ports,
			`read use = "Planner"; expected a use of the shop; do: write "Planer"`,
			`read value = "2 cfm"; expected ` + pressure + `, not an air flow; do: write a pressure, such as "2.5 inwg"`}},
		{"hood pressure at Planer/hood filter cleen = 2 inwg", []string{
			`read filter = "cleen"; expected "clean", "used", "change-out" or "none"; do: write "clean"`}},
		{"hood pressure at Planer/hood = 2", []string{`read value = "2"; expected ` + pressure + `; do: write the unit: "2 inwg"`}},
		{"hood pressure at Planer/hood = ", []string{`read value = ""; expected ` + pressure + `; do: write a number and a unit, such as "2.5 inwg"`}},
		{"time at Saw gate = -2 s", []string{`read value = "-2 s"; expected at least 0 s; do: check the sign`}},
	} {
		_, got := ReadLine(c.text, shopNames)
		compareLines(t, c.text, got, "", c.problems)
	}
}

// A line full of the words that begin clauses is read like any other.
func TestReadLineManyWords(t *testing.T) {
	_, problems := ReadLine(manyWords, shopNames)
	if len(problems) == 0 {
		t.Error("it is read")
	}
	if _, problems := ReadLine("flow at East main with "+strings.Repeat(" in x filter y with z", 3)+" = 2 cfm", shopNames); len(problems) > 0 {
		t.Errorf("%v", problems)
	}
}

var manyWords = "flow at Nowhere" + strings.Repeat(" in x filter y with z", 45) + " = 2 cfm"

func BenchmarkReadLine(b *testing.B) {
	for b.Loop() {
		ReadLine(manyWords, shopNames)
	}
}
