package shop

import (
	"strings"
	"testing"
)

// TestStarterControl: the remarks on the control half in the starter file are
// a control half once their marks are taken away.
func TestStarterControl(t *testing.T) {
	text := file(t, "../../content/starter/shop.toml")
	from, to := strings.Index(text, "# [control]"), strings.Index(text, "# --- What runs together")
	if from < 0 || to < from {
		t.Fatal("no control half in the starter file")
	}
	var lines []string
	for _, line := range strings.Split(text[from:to], "\n") {
		bare := strings.TrimPrefix(strings.TrimPrefix(line, "#"), " ")
		if _, _, pair := strings.Cut(bare, " = "); pair || strings.HasPrefix(bare, "[") {
			lines = append(lines, bare)
		}
	}
	s := sound(t, text[:from]+strings.Join(lines, "\n")+"\n"+text[to:])
	if s.Control.Supply.V != 24 || len(s.Triggers) != 1 || len(s.Triggers[0].Opens) != 1 || len(s.Chains) != 1 || len(s.Chains[0].Stops) != 2 || len(s.Stops) != 1 {
		t.Errorf("%+v, %d triggers, %d chains, %d stops", s.Control, len(s.Triggers), len(s.Chains), len(s.Stops))
	}
	if s := sound(t, text); s.Control.Given || len(s.Triggers) != 0 {
		t.Error("the starter file has a control half of its own")
	}
}
