package shop

import (
	"strings"
	"testing"

	"dustbook/plan/entry"
)

// complete are two files that together hold every field.
var complete = []string{"testdata/contract.toml", "testdata/every.toml"}

// TestEveryFieldIsAsked: every row of fields.csv stands in a file that is
// read without a problem. A row that the reader does not ask for would be a
// key that nothing knows.
func TestEveryFieldIsAsked(t *testing.T) {
	seen := map[*Row]bool{}
	for _, path := range complete {
		sound(t, file(t, path))
		root, problems := entry.Read(path, []byte(file(t, path)))
		if root == nil {
			t.Fatal(problems)
		}
		for _, node := range root.Nodes {
			walk(node, node.Name, seen)
		}
	}
	for i := range rows {
		if !seen[&rows[i]] {
			t.Errorf("no complete file holds %s.%s", rows[i].Table, rows[i].Field)
		}
	}
}

// walk marks the rows that the tables in a node hold.
func walk(node *entry.Node, table string, seen map[*Row]bool) {
	switch v := node.Value.(type) {
	case []*entry.Node:
		for _, item := range v {
			walk(item, table, seen)
		}
	case *entry.Table:
		for _, inner := range v.Nodes {
			if row := rowOf[[2]string{table, inner.Name}]; row != nil {
				seen[row] = true
				walk(inner, row.Of, seen)
			}
		}
	}
}

// TestRequired takes the required fields of the contract out, one at a time:
// each is missed, by name, once. All others may be left out.
func TestRequired(t *testing.T) {
	required := map[string]string{
		"shop": "name", "machine": "name kind", "collector": "name inlet", "duct": "name to size", "gate": "name on",
		"trigger": "name senses opens", "chain": "name cable stops", "room": "name outline", "wall": "from to",
		"use": "name machines", "confirmed": "figure value by", "accepted": "check reason", "revision": "mark date",
	}
	lines := strings.Split(file(t, "testdata/contract.toml"), "\n")
	table, missed := "", map[string]bool{}
	for i, line := range lines {
		if strings.HasPrefix(line, "[") && strings.HasSuffix(strings.TrimSpace(strings.Split(line, "#")[0]), "]") {
			table = strings.Trim(strings.TrimSpace(strings.Split(line, "#")[0]), "[]")
			continue
		}
		field, _, isPair := strings.Cut(line, " = ")
		if !isPair || strings.HasPrefix(line, "#") {
			continue
		}
		text := strings.Join(append(append([]string{}, lines[:i]...), lines[i+1:]...), "\n")
		_, problems := Read("shop.toml", []byte(text))
		// where a fan curve goes the claims stand in; a way of a duct has no other
		must := strings.Contains(" "+required[table]+" ", " "+field+" ") || table == "duct" && (field == "route" || field == "length")
		said := problems.Error()
		switch {
		case must && !(strings.Contains(said, " without ") && strings.Contains(said, entry.Quote(field)+"; expected") || strings.Contains(said, `without "route" or "length"`)):
			t.Errorf("without %s.%s, line %d: %v", table, field, i+1, problems)
		case must:
			missed[table+"."+field] = true
		case strings.Contains(said, " without "):
			t.Errorf("%s.%s may be left out: %v", table, field, problems)
		}
	}
	for table, fields := range required {
		for _, field := range strings.Fields(fields) {
			if !missed[table+"."+field] {
				t.Errorf("the file never gave %s.%s", table, field)
			}
		}
	}
}

// TestLeftOut: every field that the contract does not require may be left
// out, alone and together with all others.
func TestLeftOut(t *testing.T) {
	sound(t, `[shop]
name = "Least"
air = {}
[method]
[[room]]
name = "Hall"
outline = [[0, 0], [9, 0], [9, 9]]
[[appliance]]
[[wall]]
from = [0, 0]
to = [1, 0]
[[extinguisher]]
[[stop]]
[[machine]]
name = "Saw"
kind = "other"
[[machine]]
name = "Hole"
kind = "open end"
[[machine]]
name = "Planer"
kind = "planer"
port = {}
[[collector]]
name = "Fan"
inlet = "8 in"
claims = { flow = "1600 cfm", suction = "11 inwg" }
outlet = {}
[[duct]]
name = "Main"
to = "Fan"
size = "8 in"
length = "9 ft"
[[gate]]
name = "Gate"
on = "Main"
[[leak]]
[[leak]]
on = "Main"
[[leak]]
hole = "1 in"
[[tap]]
[[tap]]
at = "4 ft"
[[trigger]]
name = "Trigger"
senses = "contact"
opens = []
[control]
[[chain]]
name = "Chain"
cable = "18 AWG"
stops = []
[[sensor]]
[[use]]
name = "Both"
machines = ["Saw"]
[[confirmed]]
figure = "f"
value = "v"
by = "b"
[[accepted]]
check = "c"
reason = "r"
[[document]]
[[revision]]
mark = "A"
date = 2026-11-24
`)
	sound(t, "[shop]\nname = \"Nothing else\"\n")
}
