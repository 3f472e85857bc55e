package entry

import (
	"sort"
	"strings"
	"unicode"
)

// Bounds on the search for near words: longer words and later candidates are
// not looked at.
const (
	longestWord    = 80
	mostCandidates = 2000
)

// Nearest returns the words nearest in spelling to the one given, at most that
// many, the nearest first and equals in the order given. Case does not count,
// and a space, a hyphen and an underscore are the same. A word that is not
// reasonably near is left out.
func Nearest(word string, among []string, most int) []string {
	asked := fold(word)
	if most < 1 || len(asked) == 0 || len(asked) > longestWord {
		return nil
	}
	if len(among) > mostCandidates {
		among = among[:mostCandidates]
	}
	type match struct {
		word string
		far  int
	}
	var matches []match
	seen := map[string]bool{}
	for _, candidate := range among {
		if seen[candidate] {
			continue
		}
		seen[candidate] = true
		if far, near := farness(asked, fold(candidate)); near {
			matches = append(matches, match{candidate, far})
		}
	}
	sort.SliceStable(matches, func(i, j int) bool { return matches[i].far < matches[j].far })
	var words []string
	for _, m := range matches[:min(most, len(matches))] {
		words = append(words, m.word)
	}
	return words
}

// fold writes a word in the form in which spellings are compared.
func fold(word string) []rune {
	runes := []rune(strings.TrimSpace(word))
	for i, r := range runes {
		if r == ' ' || r == '-' {
			r = '_'
		}
		runes[i] = unicode.ToLower(r)
	}
	return runes
}

// farness tells how far apart two folded words are, and whether that is still
// near: a third of the letters may differ, or one word is a whole part of the
// other. A shared beginning brings words nearer.
func farness(asked, candidate []rune) (far int, near bool) {
	if len(candidate) == 0 || len(candidate) > longestWord {
		return 0, false
	}
	shared := 0
	for shared < min(len(asked), len(candidate), 4) && asked[shared] == candidate[shared] {
		shared++
	}
	longer := max(len(asked), len(candidate))
	allowed := max(1, longer/3)
	edits := edits(asked, candidate, allowed)
	near = edits <= allowed && edits < longer
	if !near && (partOf(asked, candidate) || partOf(candidate, asked)) {
		edits, near = min(edits, 3), true
	}
	return 4*edits - shared, near
}

// partOf reports whether the short word, of three letters or more, begins the
// long one or is one of its words.
func partOf(short, long []rune) bool {
	if len(short) < 3 || len(short) >= len(long) {
		return false
	}
	part, whole := string(short), string(long)
	return strings.HasPrefix(whole, part) || strings.Contains("_"+whole+"_", "_"+part+"_")
}

// edits counts the letters to add, drop, change or swap with their neighbour
// that make one word of the other. It gives up with a number above the limit.
func edits(a, b []rune, limit int) int {
	if gap := len(a) - len(b); gap > limit || -gap > limit {
		return limit + 1
	}
	var before []int
	last := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > limit {
			return limit + 1
		}
		before, last = last, row
	}
	return last[len(b)]
}
