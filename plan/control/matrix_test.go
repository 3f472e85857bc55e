package control_test

import (
	"strings"
	"testing"

	"dustbook/plan/control"
	"dustbook/plan/shop"
)

// cells are a row's cells by the name of their column; the signal is "".
func cells(m *control.Matrix, r *control.Row) map[string]string {
	all := map[string]string{}
	for i, c := range m.Columns {
		if text := r.Cells[i].String(); text != "" {
			all[columnName(c)] = text
		}
	}
	return all
}

func columnName(c control.Column) string {
	switch {
	case c.Gate != nil:
		return c.Gate.Name
	case c.Collector != nil:
		return c.Collector.Name
	}
	return "signal"
}

// rowOf finds a row by its cause and the name of what causes it.
func rowOf(t *testing.T, m *control.Matrix, cause control.Cause, name string) *control.Row {
	t.Helper()
	for _, r := range m.Rows {
		named := ""
		switch {
		case r.Trigger != nil:
			named = r.Trigger.Name
		case r.Sensor != nil:
			named = r.Sensor.Name
		case r.Stop != nil:
			named = r.Stop.Name
		case r.Collector != nil:
			named = r.Collector.Name
		}
		if r.Cause == cause && named == name {
			return r
		}
	}
	t.Fatalf("no row of cause %d for %q", cause, name)
	return nil
}

// The matrix is computed from the shop: powered gates, collectors and the
// signal as columns, every cause as a row.
func TestMatrix(t *testing.T) {
	_, k := hall(t)
	m := k.Matrix
	var heads []string
	for _, c := range m.Columns {
		heads = append(heads, columnName(c))
	}
	if got := strings.Join(heads, ", "); got != "East zone gate, Saw gate, Planer gate, Jointer gate, Cyclone, Bag unit, signal" {
		t.Errorf("columns: %s", got)
	}
	for _, want := range []struct {
		cause control.Cause
		name  string
		cells map[string]string
	}{
		{control.TriggerOn, "Saw runs", map[string]string{"Saw gate": "O", "Cyclone": "R", "signal": "W"}},
		{control.TriggerOff, "Saw runs", map[string]string{"Saw gate": "S", "Cyclone": "L"}},
		// three gates, two at a time: the zone gate opens first and shuts last
		{control.TriggerOn, "Planer runs", map[string]string{"East zone gate": "O1", "Planer gate": "O1", "Saw gate": "O2", "Cyclone": "R", "signal": "W"}},
		{control.TriggerOff, "Planer runs", map[string]string{"Saw gate": "S1", "Planer gate": "S1", "East zone gate": "S2", "Cyclone": "L"}},
		{control.TriggerOn, "Lathe switch", map[string]string{"East zone gate": "O", "Cyclone": "R", "signal": "W"}},
		{control.LockoutOn, "", map[string]string{"East zone gate": "K", "Saw gate": "K", "Planer gate": "K", "Jointer gate": "K", "Cyclone": "N"}},
		{control.PowerReturned, "", map[string]string{"East zone gate": "H", "Saw gate": "H", "Planer gate": "H", "Jointer gate": "H", "Cyclone": "N"}},
		{control.PurgePressed, "", map[string]string{"East zone gate": "T", "Saw gate": "T", "Planer gate": "T", "Jointer gate": "T", "Cyclone": "R"}},
		{control.SupplyLow, "", map[string]string{"East zone gate": "K", "Saw gate": "K", "Planer gate": "K", "Jointer gate": "K", "Cyclone": "N", "signal": "!"}},
		{control.GateLocked, "Cyclone", map[string]string{"East zone gate": "B", "Saw gate": "B", "Planer gate": "B", "Jointer gate": "B", "Cyclone": "N", "signal": "!"}},
		{control.StartsUsed, "Cyclone", map[string]string{"Cyclone": "N", "signal": "!"}},
		{control.LevelHigh, "Filter gauge", map[string]string{"signal": "!"}},
		{control.LevelVeryHigh, "Filter gauge", map[string]string{"Cyclone": "N", "signal": "!"}},
		{control.LevelHigh, "Room dust", map[string]string{"signal": "!"}},
		{control.LevelHigh, "Drum eye", map[string]string{"Cyclone": "N", "signal": "!"}},
		{control.StopPressed, "Stop by the hall door", map[string]string{"East zone gate": "K", "Saw gate": "K", "Planer gate": "K", "Jointer gate": "K", "Cyclone": "X", "signal": "!"}},
		{control.NotArrived, "Cyclone", map[string]string{"East zone gate": "D", "Saw gate": "D", "Planer gate": "D", "Jointer gate": "D", "Cyclone": "N", "signal": "!"}},
	} {
		got := cells(m, rowOf(t, m, want.cause, want.name))
		if len(got) != len(want.cells) {
			t.Errorf("cause %d, %s: %v, want %v", want.cause, want.name, got, want.cells)
			continue
		}
		for column, text := range want.cells {
			if got[column] != text {
				t.Errorf("cause %d, %s: %v, want %v", want.cause, want.name, got, want.cells)
				break
			}
		}
	}
	if len(m.Rows) != 8+4+4+1+2+1 {
		t.Errorf("%d rows", len(m.Rows))
	}
	if r := rowOf(t, m, control.TriggerOn, "Lathe switch"); gateNames(r.ByHand) != "Far gate" {
		t.Errorf("by hand: %q", gateNames(r.ByHand))
	}
	var key []string
	for _, a := range m.Acts() {
		key = append(key, a.Letter())
		if a.Name() == "" {
			t.Errorf("%s has no name", a.Letter())
		}
	}
	if got := strings.Join(key, ""); got != "OSRLXNKHTDBW!" {
		t.Errorf("the key holds %s", got)
	}
}

// Without limits on moves no cell has a turn; one at a time gives each its
// own, and the figure of the file decides between.
func TestTurns(t *testing.T) {
	for moves, want := range map[string]map[string]string{
		"3": {"East zone gate": "O", "Planer gate": "O", "Saw gate": "O"},
		"2": {"East zone gate": "O1", "Planer gate": "O1", "Saw gate": "O2"},
		"1": {"East zone gate": "O1", "Planer gate": "O2", "Saw gate": "O3"},
	} {
		_, k := hall(t, "moves_together = 2", "moves_together = "+moves)
		got := cells(k.Matrix, rowOf(t, k.Matrix, control.TriggerOn, "Planer runs"))
		for gate, text := range want {
			if got[gate] != text {
				t.Errorf("%s at once: %s %s, want %s", moves, gate, got[gate], text)
			}
		}
	}
	// left out: one at a time, the cautious reading
	_, k := hall(t, "moves_together = 2\n", "")
	if k.Matrix.Moves != 1 {
		t.Errorf("left out: %d at once", k.Matrix.Moves)
	}
}

// Of two zone gates in one stretch the one nearer the collector leads, however
// the trigger names them.
func TestZoneGatesOfOneStretch(t *testing.T) {
	for _, first := range []string{`"East zone gate", "Second zone gate"`, `"Second zone gate", "East zone gate"`} {
		s, k := hall(t, "moves_together = 2", "moves_together = 1", "name = \"East zone gate\"\n", "name = \"Second zone gate\"\non = \"East main\"\nat = \"15 ft\"\ndrive = \"powered\"\n[[gate]]\nname = \"East zone gate\"\n",
			`opens = ["Jointer gate", "East zone gate"]`, `opens = [`+first+`, "Jointer gate"]`)
		got := cells(k.Matrix, rowOf(t, k.Matrix, control.TriggerOn, "Jointer runs"))
		if got["East zone gate"] != "O1" || got["Second zone gate"] != "O2" || got["Jointer gate"] != "O3" {
			t.Errorf("%s of %s: %v", first, s.Name, got)
		}
	}
}

// What is not in the file makes no row, and a collector that no trigger
// starts is held off by nothing.
func TestRowsFollowTheFile(t *testing.T) {
	_, k := hall(t, `lockout = "key switch beside the cyclone's starter"`, "")
	for _, r := range k.Matrix.Rows {
		if r.Cause == control.LockoutOn {
			t.Error("a lockout that the file does not have")
		}
		for i, c := range k.Matrix.Columns {
			if c.Collector != nil && c.Collector.Name == "Bag unit" && r.Cells[i].Act != control.Nothing {
				t.Errorf("cause %d does %s to a collector with its own switch", r.Cause, r.Cells[i])
			}
		}
	}
	_, k = hall(t, "purge = \"button on the control box\"\n", "")
	for _, r := range k.Matrix.Rows {
		if r.Cause == control.PurgePressed {
			t.Error("a purge that the file does not have")
		}
		if r.Cause == control.StartsUsed && r.Collector.Name == "Bag unit" {
			t.Error("the starts of a collector with its own switch are counted")
		}
	}
	_, k = hall(t, `stops = ["Cyclone", "Planer"]`, `stops = ["Cyclone", "Bag unit"]`)
	if got := cells(k.Matrix, rowOf(t, k.Matrix, control.StopPressed, "Stop by the hall door")); got["Bag unit"] != "X" {
		t.Errorf("a stop that also stops the bag unit: %v", got)
	}
	_, k = hall(t, `very_high = "3 inwg"`, "")
	for _, r := range k.Matrix.Rows {
		if r.Cause == control.LevelVeryHigh {
			t.Error("a level that the file does not have")
		}
	}
}

// Whatever the file says, every row has a cell for every column, and a gate
// that a trigger is not named with never moves on its account.
func TestCellsMatchTheFile(t *testing.T) {
	_, k := hall(t)
	for _, r := range k.Matrix.Rows {
		if len(r.Cells) != len(k.Matrix.Columns) {
			t.Fatalf("cause %d has %d cells for %d columns", r.Cause, len(r.Cells), len(k.Matrix.Columns))
		}
		if r.Trigger == nil {
			continue
		}
		for i, c := range k.Matrix.Columns {
			if c.Gate != nil && (r.Cells[i].Act != control.Nothing) != opens(r.Trigger, c.Gate) {
				t.Errorf("%s, %s: %s", r.Trigger.Name, c.Gate.Name, r.Cells[i])
			}
		}
	}
}

func opens(t *shop.Trigger, g *shop.Gate) bool {
	for _, other := range t.Opens {
		if other == g {
			return true
		}
	}
	return false
}

// Who starts a collector for a machine.
func TestStarters(t *testing.T) {
	s, k := hall(t)
	named := func(machine, collector int) string {
		var names []string
		for _, t := range k.StartersFor(s.Machines[machine], s.Collectors[collector]) {
			names = append(names, t.Name)
		}
		return strings.Join(names, ", ")
	}
	if got := named(0, 0); got != "Saw runs" {
		t.Errorf("the saw's cyclone is started by %q", got)
	}
	if got := named(5, 1); got != "" {
		t.Errorf("the drum sander's bag unit is started by %q", got)
	}
	s, k = hall(t, `machine = "Lathe"
`, "")
	if got := named(4, 0); got != "Lathe switch" {
		t.Errorf("a switch of no machine: %q", got)
	}
}
