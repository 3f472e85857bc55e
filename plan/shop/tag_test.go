package shop

import (
	"strings"
	"testing"
)

// A tag is short, and no other device has it; both sides.
func TestTags(t *testing.T) {
	text := func(gate, trigger string) string {
		return "[shop]\nname = \"Tags\"\n[[collector]]\nname = \"Fan\"\ninlet = \"6 in\"\nclaims = { flow = \"900 cfm\", suction = \"9 inwg\" }\n" +
			"[[machine]]\nname = \"Saw\"\nkind = \"table saw\"\n[[duct]]\nname = \"Run\"\nto = \"Fan\"\nsize = \"6 in\"\nlength = \"30 ft\"\nserves = [\"Saw/cabinet\"]\n" +
			"[[gate]]\nname = \"Gate\"\ntag = \"" + gate + "\"\non = \"Run\"\n[[trigger]]\nname = \"Runs\"\ntag = \"" + trigger + "\"\nsenses = \"current\"\nopens = [\"Gate\"]\n"
	}
	for _, c := range []struct{ gate, trigger, want string }{
		{"G1", "T1", ""},
		{"A99", "ZZ999", ""},
		{"g1", "T1", "capital letters"},
		{"G0", "T1", "a number up to 999"},
		{"G1000", "T1", "a number up to 999"},
		{"Gate 1", "T1", "capital letters"},
		{"G1", "G1", "a tag of its own: line 18"},
	} {
		s, problems := Read("shop.toml", []byte(text(c.gate, c.trigger)))
		switch {
		case c.want == "" && (len(problems) > 0 || s.Gates[0].Tag.V != c.gate || s.Triggers[0].Tag.V != c.trigger):
			t.Errorf("%s and %s: %v", c.gate, c.trigger, problems)
		case c.want != "" && (len(problems) != 1 || !strings.Contains(problems[0].Expected, c.want)):
			t.Errorf("%s and %s: %v, want %q", c.gate, c.trigger, problems, c.want)
		}
	}
}
