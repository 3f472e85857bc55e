package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
)

// On the sheet of a check what to do is said once for all findings that ask
// for the same, and with a finding where it is alone; each finding stands
// there once.
func TestCheckSaysOnceWhatToDo(t *testing.T) {
	several, alone := 0, 0
	for name, b := range embedded(t) {
		for _, c := range checks.All {
			page := pageOf(t, b, b.Path("check", c.ID))
			asks, found := map[string]int{}, 0
			for _, f := range b.Findings {
				if f.Check == c.ID {
					asks[f.Do]++
					found++
				}
			}
			if got := strings.Count(page, `<li class="finding `); got != found {
				t.Errorf("%s, %s: %d findings stand there, not %d", name, c.ID, got, found)
			}
			if got := strings.Count(page, `<p class="do`); got != len(asks) {
				t.Errorf("%s, %s: what to do is said %d times, not %d", name, c.ID, got, len(asks))
			}
			for _, n := range asks {
				if n == 1 {
					alone++
				} else if several++; !strings.Contains(page, b.words.Count("check.do-at", n)) {
					t.Errorf("%s, %s: nothing is said of %d findings together", name, c.ID, n)
				}
			}
		}
	}
	if several == 0 || alone == 0 {
		t.Errorf("%d asked for by several, %d alone: this test needs both", several, alone)
	}
}

// Groups stand where their first finding stands and keep the order of theirs.
func TestAlikeKeepsTheOrder(t *testing.T) {
	b := newBook(t, string(content.Small()))
	rows := []findingRow{{About: "a", Do: "x"}, {About: "b", Do: "y"}, {About: "c", Do: "x"}, {About: "d", Do: "z"}}
	var got []string
	for _, g := range b.alike(rows) {
		line := g.Do
		for _, r := range g.Rows {
			line += " " + r.About + r.Do
		}
		got = append(got, line)
	}
	if want := []string{"x a c", " by", " dz"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if rows[0].Do != "x" {
		t.Error("the findings themselves were changed")
	}
	if len(b.alike(nil)) != 0 {
		t.Error("a group of nothing")
	}
}
