package entry

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// quoted reads a text in quotes of one of the four kinds, or a name in quotes
// of one of the two kinds it may have, and returns what the name means.
func (s *scanner) quoted(value bool) (string, bool) {
	quote := s.body[s.at]
	if value && (s.has(`"""`) || s.has("'''")) {
		return "", s.longText(quote)
	}
	start := s.at
	var name strings.Builder
	told := false
	for s.at++; ; {
		c := s.peek()
		switch {
		case c == 0 || c == '\n' || c == '\r':
			s.at = start
			s.unclosedText(quote)
			return "", false
		case c == quote:
			s.at++
			return name.String(), true
		case c == '\\' && quote == '"':
			r, width, ok := escape(s.body[s.at:])
			if !ok && !told {
				s.badEscape(s.at, width)
				told = true
			}
			name.WriteRune(r)
			s.at += width
		default:
			name.WriteByte(c)
			s.at++
		}
	}
}

// longText reads a text between three quotes on each side, which may run over
// several lines and end in one or two quotes of its own.
func (s *scanner) longText(quote byte) bool {
	start := s.at
	told := false
	for s.at += 3; s.at < len(s.body); {
		switch c := s.body[s.at]; {
		case c == '\\' && quote == '"':
			width, ok := continued(s.body[s.at:]), true
			if width == 0 {
				_, width, ok = escape(s.body[s.at:])
			}
			if !ok && !told {
				s.badEscape(s.at, width)
				told = true
			}
			s.at += width
		case c == quote:
			run := s.at
			for s.peek() == quote {
				s.at++
			}
			if s.at-run > 5 {
				s.report(s.place(run), "a row of six quotes or more", "three quotes where the text ends", "take the others away")
			}
			if s.at-run >= 3 {
				return true
			}
		default:
			s.at++
		}
	}
	s.at = start
	s.unclosedLongText(quote)
	return false
}

// escapes are the letters that may follow a backslash alone.
var escapes = map[byte]rune{
	'b': '\b', 't': '\t', 'n': '\n', 'f': '\f', 'r': '\r', 'e': 0x1b, '"': '"', '\\': '\\',
}

// hexDigits are the letters after which a character stands as its number, and
// how many digits that has.
var hexDigits = map[byte]int{'x': 2, 'u': 4, 'U': 8}

// escape reads the backslash a text starts with and what belongs to it.
func escape(s string) (meant rune, width int, ok bool) {
	if len(s) < 2 || s[1] == '\n' || s[1] == '\r' {
		return utf8.RuneError, 1, true // the text has no end, which is reported where that shows
	}
	if r, known := escapes[s[1]]; known {
		return r, 2, true
	}
	digits := hexDigits[s[1]]
	if digits == 0 {
		_, size := utf8.DecodeRuneInString(s[1:])
		return utf8.RuneError, 1 + size, false
	}
	if len(s) >= 2+digits {
		code, err := strconv.ParseUint(s[2:2+digits], 16, 32)
		if err == nil && code <= utf8.MaxRune && utf8.ValidRune(rune(code)) {
			return rune(code), 2 + digits, true
		}
	}
	return utf8.RuneError, 2, false
}

// continued returns how many bytes from a backslash on only carry a long text
// over to its next line, 0 when the backslash means something else.
func continued(s string) int {
	for i := 1; i < len(s); i++ {
		switch s[i] {
		case ' ', '\t', '\r':
		case '\n':
			return i + 1
		default:
			return 0
		}
	}
	return 0
}
