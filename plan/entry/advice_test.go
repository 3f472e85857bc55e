package entry

import (
	"regexp"
	"slices"
	"testing"
)

// suggested finds a whole line that a problem advises to write.
var suggested = regexp.MustCompile(`(?:write|put it in quotes:) ("?[\pL_"-][^ ]*(?: saw")? = .+|\[+[^ …]+.*\]+)$`)

// TestAdviceTakenIsAccepted reads every line that a problem advises to write:
// whoever does what is said must not be sent back again.
func TestAdviceTakenIsAccepted(t *testing.T) {
	taken := 0
	for _, c := range slices.Concat(wrongValues, wrongTexts, wrongKeys, wrongHeaders) {
		_, problems := Read("f", []byte(c.text))
		for _, p := range problems {
			line := suggested.FindStringSubmatch(p.Do)
			if line == nil || line[1] == "name = [ … ]" || line[1] == "name = and the value, or take it away" {
				continue
			}
			taken++
			if _, again := Read("again", []byte(line[1])); len(again) > 0 {
				t.Errorf("%q: told to %s\nand then: %v", c.text, p.Do, again)
			}
		}
	}
	if taken < 40 {
		t.Errorf("only %d lines of advice found", taken)
	}
}
