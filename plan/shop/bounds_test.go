package shop

import (
	"fmt"
	"strings"
	"testing"

	"dustbook/plan/unit"
)

// TestLongLists: what a file may hold in one field, up to the bound and one
// beyond it.
func TestLongLists(t *testing.T) {
	points := func(count int, point func(i int) string) string {
		list := make([]string, count)
		for i := range list {
			list[i] = point(i)
		}
		return "[" + strings.Join(list, ", ") + "]"
	}
	zigzag := func(count int) string {
		return yard(duct("Long", "Fan", "route = "+points(count, func(i int) string { return fmt.Sprintf("[%d, %d, 9]", i, i%2) })))
	}
	curve := func(count int) string {
		return strings.Replace(yard(), "claims = { flow = \"1600 cfm\", suction = \"11 inwg\" }", "fan_curve = "+points(count, func(i int) string { return fmt.Sprintf(`["%d cfm", "9 inwg"]`, i) }), 1)
	}
	outline := func(count int) string {
		return yard("[[room]]\nname = \"Round\"\noutline = " + points(count, func(i int) string { return fmt.Sprintf("[%d, %d]", i, i*i%997) }) + "\n")
	}
	note := func(count int) string {
		return yard("[[revision]]\nmark = \"A\"\ndate = 2026-11-24\nnote = \"" + strings.Repeat("ü", count) + "\"\n")
	}
	for _, c := range []struct {
		name  string
		most  int
		write func(int) string
		says  string
	}{
		{"route", 200, zigzag, "a route of at most 200 points"},
		{"curve", 1000, curve, "at most 1000 points"},
		{"outline", 1000, outline, "at most 1000 points"},
		{"note", 1000, note, "at most 1000 characters, not 1001"},
	} {
		sound(t, c.write(c.most))
		if said := refused(t, c.write(c.most+1)); !strings.Contains(said, "expected "+c.says+"; do: ") || strings.Contains(said, "\n") {
			t.Errorf("%s: %s", c.name, said)
		}
	}
}

// TestBounds: every row's least and most are read, and one step beyond either
// is not.
func TestBounds(t *testing.T) {
	checked := 0
	for _, row := range Rows() {
		if row.Least == "" && row.Most == "" || row.Kind == "bin" {
			continue
		}
		parse := func(text string) (float64, bool) {
			for _, k := range unit.Kinds() {
				if x, err := unit.ReadKind(k, text); err == nil {
					return x, true
				}
			}
			if g, err := unit.ReadGauge(text); err == nil {
				return float64(g), true
			}
			return parseNumber(text), row.Kind == "count" || row.Kind == "number"
		}
		least, most := 0.0, 0.0
		ok := true
		if row.Least != "" {
			least, ok = parse(row.Least)
		}
		if row.Most != "" && ok {
			most, ok = parse(row.Most)
		}
		if !ok || row.Least != "" && row.Most != "" && least >= most {
			t.Errorf("%s.%s: from %q to %q", row.Table, row.Field, row.Least, row.Most)
		}
		if row.Default != "" {
			if x, ok := parse(row.Default); ok && (row.Least != "" && x < least || row.Most != "" && x > most) {
				t.Errorf("%s.%s: the default %s is out of bounds", row.Table, row.Field, row.Default)
			}
		}
		checked++
	}
	if checked < 60 {
		t.Errorf("%d rows with bounds", checked)
	}
	for _, c := range []struct {
		hours string
		ok    bool
	}{{"0", true}, {"24", true}, {"24.0000001", true}, {"24.001", false}, {"-0.001", false}} {
		s, problems := Read("shop.toml", []byte(oneMachine("Saw")+"hours = "+c.hours+"\n"))
		if (s != nil) != c.ok {
			t.Errorf("hours = %s: %v", c.hours, problems)
		}
	}
}

// TestRooms: what stands within an outline is in that room, the first of
// several; what names a room is in the one it names.
func TestRooms(t *testing.T) {
	text := func(at string) string {
		return oneMachine("Saw") + at + `
[[room]]
name = "Corner"
outline = [[0, 0], [10, 0], [10, 10], [5, 10], [5, 5], [0, 5]]
[[room]]
name = "All"
outline = [[-1, -1], [20, -1], [20, 20], [-1, 20]]
`
	}
	for at, want := range map[string]string{"at = [2, 2]": "Corner", "at = [7, 9]": "Corner", "at = [2, 7]": "All", "at = [15, 15]": "All", "at = [2, 2]\nroom = \"All\"": "All"} {
		if m := sound(t, text(at)).Machines[0]; m.Room == nil || m.Room.Name != want {
			t.Errorf("%s: in %v, want %s", at, m.Room, want)
		}
	}
	for _, at := range []string{"at = [50, 2]", ""} {
		if m := sound(t, text(at)).Machines[0]; m.Room != nil {
			t.Errorf("%q: in %s", at, m.Room.Name)
		}
	}
	s := sound(t, text(""))
	if area := float64(s.Rooms[0].Area()) / 0.09290304; unit.Compare(area, 75) != 0 {
		t.Errorf("the corner room has %v sq ft", area)
	}
}
