package shop

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// mutations spoil a file in the ways of a slip of the hand.
var mutations = []func(draw *rand.Rand, text string) string{
	func(draw *rand.Rand, text string) string { // leave out a line
		lines := strings.Split(text, "\n")
		i := draw.IntN(len(lines))
		return strings.Join(append(lines[:i:i], lines[i+1:]...), "\n")
	},
	func(draw *rand.Rand, text string) string { // write a line twice
		lines := strings.Split(text, "\n")
		i := draw.IntN(len(lines))
		return strings.Join(append(lines[:i+1:i+1], lines[i:]...), "\n")
	},
	func(draw *rand.Rand, text string) string { // move a line
		lines := strings.Split(text, "\n")
		i, j := draw.IntN(len(lines)), draw.IntN(len(lines))
		lines[i], lines[j] = lines[j], lines[i]
		return strings.Join(lines, "\n")
	},
	func(draw *rand.Rand, text string) string { // swap two letters
		i := draw.IntN(len(text) - 1)
		return text[:i] + text[i+1:i+2] + text[i:i+1] + text[i+2:]
	},
	func(draw *rand.Rand, text string) string { // lose a letter
		i := draw.IntN(len(text))
		return text[:i] + text[i+1:]
	},
	func(draw *rand.Rand, text string) string { // hit another key
		keys := "abcxyz0189 .,\"'[]{}=#/-_\n\tü"
		i, j := draw.IntN(len(text)), draw.IntN(len(keys)-1)
		return text[:i] + keys[j:j+1] + text[i+1:]
	},
	func(draw *rand.Rand, text string) string { // copy a table
		head, blocks := inBlocks(text)
		if len(blocks) == 0 {
			return text
		}
		return head + strings.Join(blocks, "") + blocks[draw.IntN(len(blocks))]
	},
	func(draw *rand.Rand, text string) string { // leave out a table
		head, blocks := inBlocks(text)
		if len(blocks) == 0 {
			return text
		}
		i := draw.IntN(len(blocks))
		return head + strings.Join(blocks[:i], "") + strings.Join(blocks[i+1:], "")
	},
	func(draw *rand.Rand, text string) string { // change a quote
		return another(draw, text, `"`, []string{"'", "“", "", `""`, "`"})
	},
	func(draw *rand.Rand, text string) string { // change a unit
		return another(draw, text, " in\"", []string{"\"", " cfm\"", " mm\"", "\"\"", " inwg\""})
	},
	func(draw *rand.Rand, text string) string { // change a figure
		digit := string(rune('0' + draw.IntN(10)))
		return another(draw, text, digit, []string{"0", "-1", "99999999", "1e300", "1.5", "", "x"})
	},
	func(draw *rand.Rand, text string) string { // refer to something else
		names := []string{"Main", "Trunk", "Collector", "Cyclone", "Planer", "Saw gate", "Table saw"}
		return another(draw, text, `"`+names[draw.IntN(len(names))]+`"`, []string{`"Main"`, `"Trunk"`, `"Saw pipe"`, `"Saw drop"`, `""`, `"?"`, `5`, `["Trunk"]`})
	},
	func(draw *rand.Rand, text string) string { // change a point
		return another(draw, text, "[1", []string{"[", "[[1", "[9999", "[-0.0001", "[1, 1", "[true, 1"})
	},
}

// another writes one of the occurrences of a text anew.
func another(draw *rand.Rand, text, old string, instead []string) string {
	count := strings.Count(text, old)
	if count == 0 {
		return text
	}
	at := 0
	for range 1 + draw.IntN(count) {
		at += strings.Index(text[at:], old) + len(old)
	}
	return text[:at-len(old)] + instead[draw.IntN(len(instead))] + text[at:]
}

// outcome is what reading gave, in words.
func outcome(text string) string {
	s, problems := Read("shop.toml", []byte(text))
	if s == nil {
		return problems.Error()
	}
	return describe(s)
}

// TestMutations: whatever a hand does to a sound file, reading it gives
// either a shop or problems with known places, and the same ones each time.
func TestMutations(t *testing.T) {
	draw := rand.New(rand.NewPCG(5, 6))
	read, refused := 0, 0
	for _, path := range shops {
		text := file(t, path)
		for i := range 12 * len(mutations) {
			spoiled := mutations[i%len(mutations)](draw, text)
			for range draw.IntN(3) {
				spoiled = mutations[draw.IntN(len(mutations))](draw, spoiled)
			}
			if checkOutcome(t, spoiled) {
				read++
			} else {
				refused++
			}
			if t.Failed() {
				t.Fatalf("%s, spoiled:\n%s", path, numbered(spoiled))
			}
		}
	}
	if read < 50 || refused < 300 {
		t.Errorf("%d read, %d refused: the hand is too heavy or too light", read, refused)
	}
}

// checkOutcome checks what holds of reading any text. It reports whether the
// text is a shop.
func checkOutcome(t *testing.T, text string) bool {
	t.Helper()
	s, problems := Read("shop.toml", []byte(text))
	if (s == nil) == (len(problems) == 0) {
		t.Fatalf("a shop: %v, and %d problems", s != nil, len(problems))
	}
	if s == nil {
		checkProblems(t, text)
	} else {
		checkShop(t, s)
	}
	if again := outcome(text); s == nil && again != problems.Error() || s != nil && again != describe(s) {
		t.Errorf("read again it is\n%s", again)
	}
	return s != nil
}

// checkShop checks what holds of any shop.
func checkShop(t *testing.T, s *Shop) {
	t.Helper()
	ends := map[*Duct]bool{}
	for _, d := range s.Ducts {
		if d.Collector == nil || len(d.Stretches) == 0 || d.Stretches[0].From != 0 || d.Stretches[len(d.Stretches)-1].To != d.Length {
			t.Errorf("%s: %+v", d.Name, d)
		}
		for i, st := range d.Stretches {
			if st.Number != i+1 || i > 0 && st.From != d.Stretches[i-1].To || st.To < st.From {
				t.Errorf("%s: stretch %+v", d.Name, st)
			}
		}
		if d.Into != nil && (d.JoinAt < 0 || d.JoinAt > d.Into.Length || d.JoinNode < 0 || d.JoinNode > len(d.Into.Stretches)) {
			t.Errorf("%s joins at %v, node %d", d.Name, d.JoinAt, d.JoinNode)
		}
		steps := 0
		for st := d.Stretches[0]; st != nil; st = st.Below() {
			if steps++; steps > 100000 {
				t.Fatalf("%s: no end to its way", d.Name)
			}
		}
		ends[d] = true
	}
	for _, g := range s.Gates {
		if g.On == nil || g.Stretch == nil || g.Where < 0 || g.Where > g.On.Length || !ends[g.On] {
			t.Errorf("gate %s: %+v", g.Name, g)
		}
	}
	for _, m := range s.Machines {
		for _, p := range m.Ports {
			if p.Size <= 0 || p.Flow < 0 || p.HoodLoss < 0 || p.Name == "" {
				t.Errorf("%s: %+v", p.Full(), p)
			}
		}
	}
	for _, a := range s.Assumed {
		if a.Thing == "" || a.Field == "" || a.Value == "" || a.Basis.Mark == 0 {
			t.Errorf("assumption %+v", a)
		}
	}
	if len(s.Assumed) > 0 && fmt.Sprint(s.Assumed[0].Basis) == "" {
		t.Error("an assumption without a word on its source")
	}
}
