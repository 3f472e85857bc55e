package content

import "strings"

// Controls of the direction of writing, of the Unicode bidirectional
// algorithm (UAX 9).
const (
	leftEmbedding   = '\u202a'
	rightEmbedding  = '\u202b'
	endEmbedding    = '\u202c'
	leftOverride    = '\u202d'
	rightOverride   = '\u202e'
	leftIsolate     = '\u2066'
	rightIsolate    = '\u2067'
	firstIsolate    = '\u2068'
	endIsolate      = '\u2069'
	directionMarkup = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
)

// Settled is a name with every control of direction that it opens closed at
// its end, and without ends that close nothing of its own: whatever stands
// after it in a sentence keeps its direction.
func Settled(name string) string {
	if !strings.ContainsAny(name, directionMarkup) {
		return name
	}
	var out strings.Builder
	var open []rune // what would close each control that is open
	for _, r := range name {
		switch r {
		case leftEmbedding, rightEmbedding, leftOverride, rightOverride:
			open = append(open, endEmbedding)
		case leftIsolate, rightIsolate, firstIsolate:
			open = append(open, endIsolate)
		case endEmbedding, endIsolate:
			if len(open) == 0 || open[len(open)-1] != r {
				continue
			}
			open = open[:len(open)-1]
		}
		out.WriteRune(r)
	}
	for i := len(open) - 1; i >= 0; i-- {
		out.WriteRune(open[i])
	}
	return out.String()
}
