package checks_test

import (
	"testing"

	"dustbook/checks"
	"dustbook/content"
)

// The stretch that Do speaks of goes with the finding, and with no other.
func TestSlowStretch(t *testing.T) {
	hose := change{`serves = ["Saw"]`, "serves = [\"Saw\"]\nhose = { length = \"3 ft\", size = \"9 in\" }"}
	f := only(t, checks.Run(planOf(t, hose)), "dust-carried", "Saw")
	if f.Slow == nil || f.Slow.Stretch.Name() != "Saw drop" || !f.Slow.Hose || !f.Slow.Settles {
		t.Errorf("a wide hose: %+v", f.Slow)
	}
	if f := only(t, checks.Run(planOf(t)), "dust-carried", "Lathe"); f.State != checks.Met || f.Slow != nil {
		t.Errorf("dust carried: %v, %+v", f.State, f.Slow)
	}
	inside := change{"filter = { clean = \"0.5 inwg\", change = \"2 inwg\", at = \"1000 cfm\" }\nexhaust = \"outside\"", "exhaust = \"returns to room\"\nreturns_to = \"Hall\""}
	if f := only(t, checks.Run(planOf(t, inside)), "dust-carried", "Lathe"); f.State != checks.Thin || f.Slow != nil {
		t.Errorf("what to do is about the filter: %v, %q, %+v", f.State, f.Do, f.Slow)
	}
	words, seen := content.WordsIn(content.English), map[string]int{}
	for _, f := range checks.Run(read(t, content.Example())) {
		if f.Check != "dust-carried" {
			continue
		}
		switch settles := f.Slow != nil && f.Slow.Settles; {
		case settles && f.Do == words.Text("finding-dust-carried.settles.do"):
			seen["settles"]++
		case f.Slow != nil && !settles && f.Do == words.Text("finding-dust-carried.thin.do"):
			seen["thin"]++
		case f.Slow != nil:
			t.Errorf("%s: %+v with %q", f.About, f.Slow, f.Do)
		default:
			seen["none"]++
		}
	}
	if seen["settles"] == 0 || seen["thin"] == 0 || seen["none"] == 0 {
		t.Errorf("%v, this test needs findings of each kind", seen)
	}
}
