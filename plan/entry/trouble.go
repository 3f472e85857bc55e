package entry

import (
	"fmt"
	"regexp"
	"strings"
)

// Shapes by which the scanner finds its way after a problem.
var (
	bareKey    = `[A-Za-z0-9_-]+(?:[ \t]*\.[ \t]*[A-Za-z0-9_-]+)*`
	headerLike = regexp.MustCompile(`^\[\[?[ \t]*[A-Za-z][A-Za-z0-9_.-]*[ \t]*\]\]?[ \t\r]*(?:#.*)?$`)
	pairLike   = regexp.MustCompile(`^` + bareKey + `[ \t]*=`)
	entryLike  = regexp.MustCompile(headerLike.String() + `|` + pairLike.String())
)

// trouble reports a problem after which the entry cannot be read on.
func (s *scanner) trouble(at Place, read, expected, do string) bool {
	s.broken = true
	s.report(at, read, expected, do)
	return false
}

// rest returns the line from an offset on, for a message.
func (s *scanner) rest(from int) string {
	return excerpt(s.body[from:s.lineEnd(from)], sourceLength)
}

// tooDeep and tooManyParts end the reading.
func (s *scanner) tooDeep(at Place) {
	s.report(at, fmt.Sprintf("bracket number %d within the brackets before it", MaxDepth+1),
		fmt.Sprintf("at most %d brackets open at a time", MaxDepth), "close brackets first, or check that this is the file you mean")
	s.limited, s.halted = true, true
}

func (s *scanner) tooManyParts(at Place) {
	s.report(at, fmt.Sprintf("a name of more than %d parts", MaxParts),
		fmt.Sprintf("at most %d parts with points between them", MaxParts), "use fewer parts, or put the name in quotes if the points belong to it")
	s.limited, s.halted = true, true
}

// unclosedText reports a text or name whose closing quote is not on its line.
func (s *scanner) unclosedText(quote byte) {
	read := s.rest(s.at)
	expected := "a closing " + string(quote) + " on the same line"
	do := "put a " + string(quote) + " where the text ends"
	if strings.ContainsAny(read, smartQuotes) {
		do += "; the curled quotes of print do not count"
	}
	s.trouble(s.place(s.at), read, expected, do)
}

// unclosedLongText reports a long text without an end. All that follows is in it.
func (s *scanner) unclosedLongText(quote byte) {
	three := strings.Repeat(string(quote), 3)
	s.resume = len(s.body)
	s.trouble(s.place(s.at), three+" and no other "+three+" after it", three+" where the text ends", "put "+three+" after the last line of the text")
}

// badEscape reports a backslash that means nothing.
func (s *scanner) badEscape(at, width int) {
	read, expected := excerpt(s.body[at:at+width], sourceLength), `\\ for a backslash, \" for a quote, \n for a new line`
	if digits := hexDigits[s.body[at+1]]; digits > 0 {
		expected = fmt.Sprintf("%d hexadecimal digits of a character after %s", digits, read)
	}
	s.trouble(s.place(at), read+" in a text in double quotes", expected,
		`write \\, or put the text in single quotes, where a backslash is only itself`)
}

// newEntry reports whether what stands at an offset begins a line that looks
// like an entry of its own, though a bracket of an earlier line is open. The
// brackets of a header on that line, taken for those of a list, are forgotten.
func (s *scanner) newEntry(offset int) bool {
	line := s.lineStart(offset)
	earlier := 0
	for earlier < len(s.brackets) && s.brackets[earlier].offset < line {
		earlier++
	}
	if earlier == 0 || strings.Trim(s.body[line:offset], " \t[") != "" || !s.entryAhead(line) {
		return false
	}
	s.brackets = s.brackets[:earlier]
	return true
}

// unclosedBracket reports the bracket opened last as never closed, and goes on
// with the entry of this line.
func (s *scanner) unclosedBracket() bool {
	last := s.brackets[len(s.brackets)-1]
	closing := string(s.closing())
	s.resume = s.lineStart(s.at)
	if s.at == len(s.body) {
		s.resume = s.at
	}
	return s.trouble(last.place, s.rest(last.offset), closing+" to close the "+string(last.char), "put "+closing+" after the last value")
}

// listTrouble reports what cannot begin a value in brackets.
func (s *scanner) listTrouble() bool {
	switch c := s.peek(); c {
	case 0:
		return s.unclosedBracket()
	case ',':
		return s.trouble(s.place(s.at), "a comma with no value before it", "a value", "take the comma away")
	default:
		return s.wrongBracket(c)
	}
}

// wrongBracket reports a closing bracket of the other kind.
func (s *scanner) wrongBracket(c byte) bool {
	last := s.brackets[len(s.brackets)-1]
	return s.trouble(s.place(s.at), string(c), fmt.Sprintf("%c to close the %c of line %d", s.closing(), last.char, last.place.Line),
		fmt.Sprintf("write %c", s.closing()))
}

// separatorTrouble reports what stands after a value in brackets in the place
// of a comma. It returns true when reading can go on as if one stood there.
func (s *scanner) separatorTrouble(after int) bool {
	last := s.brackets[len(s.brackets)-1]
	c := s.peek()
	crossed := strings.Contains(s.body[after:s.at], "\n")
	spread := strings.Contains(s.body[last.offset:after], "\n")
	switch {
	case c == 0:
		return s.unclosedBracket()
	case crossed && s.newEntry(s.at) && !(spread && last.char == '{' && c != '['):
		return s.unclosedBracket()
	case s.quoteWithin(after):
		return false
	case c == ']' || c == '}':
		return s.wrongBracket(c)
	case c == '=' && last.char == '[':
		return s.trouble(s.place(s.at), "= in a list", "a value, or { name = value }", "put braces round what belongs together: [ { … } ]")
	case c == ';':
		s.at++
		s.trouble(s.place(s.at-1), ";", "a comma between two values", "write a comma")
		return true
	}
	s.trouble(s.place(s.at), s.rest(s.at), fmt.Sprintf("a comma, or %c", s.closing()), "put a comma between the values")
	if last.char == '{' {
		return pairLike.MatchString(s.body[s.at:s.lineEnd(s.at)])
	}
	return strings.IndexByte("\"'[{", c) >= 0
}

// quoteWithin reports a text that ended at a quote meant to be part of it.
func (s *scanner) quoteWithin(after int) bool {
	if after == 0 || s.at != after || strings.IndexByte(`"'`, s.body[after-1]) < 0 {
		return false
	}
	if c := s.peek(); c != '"' && c != '\'' && !isBareByte(c) && c < 0x80 {
		return false
	}
	s.trouble(s.place(after-1), s.rest(after-1), "nothing more on the line after the closing quote",
		otherQuotes[s.body[after-1]])
	return true
}

// otherQuotes says how to get a quote into a text.
var otherQuotes = map[byte]string{
	'"':  `write \" for a quote within the text, or put the whole text in single quotes`,
	'\'': `put the whole text in double quotes, so that it may hold a single one`,
}

// tailTrouble reports what stands on a line after its entry is complete.
func (s *scanner) tailTrouble(after int) {
	if s.quoteWithin(after) {
		return
	}
	at, read := s.place(s.at), s.rest(s.at)
	const expected = "the end of the line"
	switch {
	case strings.TrimRight(read, ",; ") == "":
		s.trouble(at, read, expected, "take it away: entries of a table need no comma")
	case isRemark(read):
		s.trouble(at, read, "# before a remark", "write # in front of it")
	case entryLike.MatchString(read):
		s.trouble(at, read, expected, "put it on a line of its own")
	case s.body[s.entryAt] == '[' && read[0] == ']':
		s.trouble(at, read, expected, "write as many brackets behind the name as before it")
	case s.body[s.entryAt] == '[':
		s.trouble(at, read, expected, "put it on a line of its own, or write # before a remark")
	case strings.IndexByte("]})", read[0]) >= 0:
		s.trouble(at, read, expected, "take the bracket away, or open one before the value")
	default:
		s.trouble(at, read, expected, "put the whole value in one pair of quotes, or write # before a remark")
	}
}

// isRemark reports whether a text starts like a remark of another language.
func isRemark(text string) bool {
	for _, mark := range []string{"//", "/*", ";", "-- ", "%"} {
		if strings.HasPrefix(text, mark) {
			return true
		}
	}
	return false
}
