package content

import (
	"bytes"
	"fmt"
	"strings"
)

// Bounds on one note. The reader of Markdown takes time with the square of
// some of them, and memory with the product of others; a text that people
// wrote stays far below.
const (
	mostLines    = 5000
	mostBrackets = 4000 // "[": links, pictures, boxes, footnotes
	mostStars    = 10000
	mostNested   = 20 // quotes and lists that begin in one line
	mostIndent   = 200
	mostColumns  = 20
)

// bounded reports whether a note can be read in bounded time, and notes what
// there is too much of.
func (n *Note) bounded() bool {
	before := len(n.faults)
	lines, brackets, stars := 0, 0, 0
	for start := 0; start < len(n.source); {
		end := start + len(n.source[start:])
		if i := bytes.IndexByte(n.source[start:], '\n'); i >= 0 {
			end = start + i
		}
		line := n.source[start:end]
		if lines++; lines == mostLines+1 {
			n.wrong(start, "more than 5000 lines", "a note of at most 5000", "take it apart into several notes")
		}
		if at := deep(line); at >= 0 {
			n.wrong(start+at, "lists or quotes within each other without end", fmt.Sprintf("at most %d that begin in one line, indented by at most %d characters", mostNested, mostIndent), "write it with fewer levels")
		}
		if wide(line) {
			n.wrong(start, "a table of many columns", fmt.Sprintf("at most %d columns", mostColumns), "take the table apart; a sheet is not that wide")
		}
		for i, c := range line {
			switch {
			case c == '[':
				if brackets++; brackets == mostBrackets+1 {
					n.wrong(start+i, "more than 4000 brackets", "a note of at most 4000", "take it apart into several notes")
				}
			case (c == '*' || c == '_') && (i == 0 || line[i-1] != c):
				if stars++; stars == mostStars+1 {
					n.wrong(start+i, "more than 10000 asterisks and underscores", "a note of at most 10000", "take it apart into several notes")
				}
			}
		}
		start = end + 1
	}
	return len(n.faults) == before
}

// deep finds where a line begins more quotes and lists within each other than
// any text needs; -1 where it does not.
func deep(line []byte) int {
	if rule(line) {
		return -1
	}
	line = bytes.TrimRight(line, " \t")
	nested := 0
	for at := 0; at < len(line); {
		switch width := marker(line[at:]); {
		case line[at] == ' ' || line[at] == '\t':
			at++
		case width == 0:
			return -1
		default:
			if nested++; nested > mostNested {
				return at
			}
			at += width
		}
		if at > mostIndent {
			return at
		}
	}
	return -1
}

// marker is the width of what begins a quote, a list, a definition or a
// footnote; 0 where nothing of these stands.
func marker(text []byte) int {
	digits := len(text) - len(bytes.TrimLeft(text, "0123456789"))
	gap := func(i int) bool { return i >= len(text) || text[i] == ' ' || text[i] == '\t' }
	switch {
	case text[0] == '>':
		return 1
	case strings.IndexByte("-*+:", text[0]) >= 0 && gap(1):
		return 1
	case digits > 0 && digits < len(text) && (text[digits] == '.' || text[digits] == ')') && gap(digits+1):
		return digits + 1
	case bytes.HasPrefix(text, []byte("[^")):
		if end := bytes.Index(text, []byte("]:")); end >= 0 {
			return end + 2
		}
	}
	return 0
}

// rule reports whether a line is a rule across the page: one sign repeated,
// with or without spaces.
func rule(line []byte) bool {
	signs := bytes.ReplaceAll(bytes.ReplaceAll(line, []byte(" "), nil), []byte("\t"), nil)
	return len(signs) > 2 && strings.IndexByte("-*_", signs[0]) >= 0 && len(bytes.Trim(signs, string(signs[:1]))) == 0
}

// wide reports whether a line sets the columns of a table, and too many.
func wide(line []byte) bool {
	return bytes.Count(line, []byte("|")) > mostColumns+1 && len(bytes.Trim(line, "|:-> \t\v\f")) == 0
}
