package entry

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestAdvice is the length up to which a text is written out again in what
// to do; above it the middle is left to the reader.
const longestAdvice = 60

// write advises to write a value in the place of what was read.
func (s *scanner) write(value string) string { return "write " + s.given(value) }

// given writes a value with the name it is given to.
func (s *scanner) given(value string) string {
	value = excerpt(value, longestAdvice)
	if s.label == "" {
		return value
	}
	return excerpt(s.label, longestAdvice) + " = " + value
}

// inQuotes writes a text as a TOML string, in the quotes that need no escape
// where there are such.
func inQuotes(text string) string {
	switch {
	case !strings.ContainsAny(text, "\"\\"):
		return `"` + text + `"`
	case !strings.Contains(text, "'"):
		return "'" + text + "'"
	}
	return strconv.Quote(text)
}

// A space that is none of the keyboard's is easily pasted and hard to see.
const (
	ordinarySpace  = "ordinary spaces"
	oddSpaceAdvice = "take away the character shown as a code, or type a space for it"
)

// oddSpace returns the byte at which the first space that TOML does not know
// stands, -1 when there is none.
func oddSpace(text string) int {
	return strings.IndexFunc(text, func(r rune) bool { return r > ' ' && unicode.IsSpace(r) || r == '\ufeff' || r == '\u200b' })
}

// firstRune returns the first character of a text.
func firstRune(text string) string {
	_, width := utf8.DecodeRuneInString(text)
	return text[:width]
}
