package templates

import (
	"testing"

	"dustbook/content"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Where the file sets no time, the sheet expects the least that is reckoned; where
// something is missing for it, or the file sets one, it says just that.
func TestTimesToProve(t *testing.T) {
	b := upkeepBook(t, content.Example(), day(2026, 11, 24))
	set := shop.Field[unit.Time]{V: 2.5, How: shop.Stated}
	for _, c := range []struct {
		set   shop.Field[unit.Time]
		known bool
		want  string
	}{{set, true, "2.5 s"}, {set, false, "2.5 s"}, {shop.Field[unit.Time]{}, true, "3.6 s or more, reckoned"}, {shop.Field[unit.Time]{}, false, "not given"}} {
		if got := b.setOrReckoned(c.set, 3.6, c.known); got != c.want {
			t.Errorf("%+v, known %v: %q, want %q", c.set, c.known, got, c.want)
		}
	}
	seen := map[string]string{}
	for _, trigger := range b.Plan.Shop.Triggers {
		seen[trigger.Name] = b.triggerProof(trigger).StartDelay
	}
	if seen["Saw running"] != "2.5 s" || seen["Planer running"] != "2.7 s or more, reckoned" {
		t.Errorf("%q", seen)
	}
}
