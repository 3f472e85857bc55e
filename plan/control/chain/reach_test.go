package chain

import (
	"testing"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// National Electrical Code, article 725 and chapter 9, table 11(B): up to 30 V
// as public pages report it, up to 60 V from memory. Both sides of both edges.
func TestReach(t *testing.T) {
	for volts, want := range map[unit.Voltage]Reach{0: Reached, 24: Reached, 30: Reached, 30.001: HalfWay, 48: HalfWay, 60: HalfWay, 60.001: OutOfReach, 120: OutOfReach, 230: OutOfReach} {
		got, edge := ReachOf(volts)
		if got != want || (got == Reached) != (edge == Edge{}) {
			t.Errorf("%v V: %v, %+v", volts, got, edge)
		}
		if got == HalfWay && (edge.Volts != 30 || edge.Basis.Mark != source.Reported) || got == OutOfReach && (edge.Volts != 60 || edge.Basis.Mark != source.Memory) {
			t.Errorf("%v V: %+v", volts, edge)
		}
	}
}

// What a label of class 2 is worth at volts the class does not reach.
func TestListedReach(t *testing.T) {
	for volts, want := range map[string]Listed{"24 V": ListedWithin, "30 V": ListedWithin, "48 V": ListedHalfWay, "61 V": ListedOutOfReach, "120 V": ListedOutOfReach} {
		_, r := row(t, `supply = "24 V"`, `supply = "`+volts+`"`)
		if got := r.Supply.Limited.Listed; got != want {
			t.Errorf("%s: %v", volts, got)
		}
	}
	if _, r := row(t, "supply = \"24 V\"\n", ""); r.Reach != Reached || r.Supply.Limited.Listed != ListedWithin {
		t.Errorf("volts not given: %v, %v", r.Reach, r.Supply.Limited.Listed)
	}
	if _, r := row(t, `supply = "24 V"`, `supply = "120 V"`, "supply_listed = \"class 2\"\n", ""); r.Reach != OutOfReach || r.Supply.Limited.Listed != ListingAsked {
		t.Errorf("no listing: %v, %v", r.Reach, r.Supply.Limited.Listed)
	}
}
