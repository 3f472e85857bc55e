package entry

import (
	"strings"
)

// headerTrouble reports a header that cannot be read.
func (s *scanner) headerTrouble(start int) {
	line, _, _ := strings.Cut(s.body[start:s.lineEnd(start)], "#")
	line = strings.TrimRight(line, " \t\r")
	opening := "["
	if strings.HasPrefix(line, "[[") {
		opening = "[["
	}
	closing := strings.Repeat("]", len(opening))
	name := strings.Trim(line, "[] \t")
	at, read := s.place(start), excerpt(line, sourceLength)
	parts := strings.Split(name, ".")
	switch {
	case name == "":
		s.trouble(at, read, "a name in the brackets", "write a name in them, or take the line away")
	case strings.Contains(name, ","):
		s.trouble(at, read, "a name and = before a list", "write a name in front: name = [ … ]")
	case soundParts(parts):
		s.trouble(at, read, "the header "+opening+excerpt(name, longestAdvice)+closing, "write the name between "+opening+" and "+closing+", alone on the line")
	case emptyPart(parts):
		s.trouble(at, read, "a name on each side of a point", "take the point away, or write the name")
	case strings.ContainsAny(name, `=[]"'`):
		s.trouble(at, read, "a header such as "+opening+"name"+closing+" alone on the line", "write the name between "+opening+" and "+closing)
	default:
		s.trouble(at, read, "letters, digits, - and _ in a name, or quotes round it",
			"write "+opening+excerpt(quotedParts(parts), longestAdvice)+closing)
	}
}

// pairTrouble reports a line that should give a name a value and does not. The
// scanner stands where it could not read on.
func (s *scanner) pairTrouble(start int) {
	if s.newEntry(start) {
		s.unclosedBracket()
		return
	}
	line := s.body[start:s.lineEnd(start)]
	key := strings.TrimRight(s.body[start:s.at], " \t")
	rest := strings.TrimRight(s.body[s.at:s.lineEnd(s.at)], " \t\r")
	at, read := s.place(start), excerpt(line, sourceLength)
	equals := strings.IndexAny(rest, `="'#`)
	switch {
	case isRemark(line):
		s.trouble(at, read, "# before a remark", "write # in front of it")
	case oddSpace(rest) == 0:
		s.trouble(s.place(s.at), read, ordinarySpace, oddSpaceAdvice)
	case strings.HasSuffix(key, ".") || key == "" && strings.HasPrefix(rest, "."):
		s.trouble(at, read, "a name on each side of a point", "write the name, or take the point away")
	case key == "" && strings.HasPrefix(rest, "="):
		s.trouble(at, read, "a name before the =", "write the name of what is given")
	case equals > 0 && rest[equals] == '=' && rest[0] != ':':
		s.badName(start, s.at+equals)
	case key == "":
		s.noEntry(start)
	case s.closing() == '}' && (rest == "" || rest[0] == ',' || rest[0] == '}'):
		s.trouble(at, excerpt(key, longestAdvice)+" in braces", "name = value in braces", "write the name and = before the value, or use [ ] for a list")
	case rest != "" && strings.IndexByte(",]})", rest[0]) >= 0:
		s.trouble(at, read, "name = value, or a header in [ ]", "look for the list it belongs to, or take it away")
	case rest == "" || rest[0] == '#':
		s.trouble(at, excerpt(key, longestAdvice)+" and nothing after it", "= and a value", "write "+excerpt(key, longestAdvice)+" = and the value, or take it away")
	default:
		s.trouble(at, read, "= between a name and its value", "write "+excerpt(key+" = "+s.asValue(rest), longestAdvice))
	}
}

// asValue writes what follows a name as its value: without what a colon or a
// remark adds, and in quotes if it needs them.
func (s *scanner) asValue(rest string) string {
	value := strings.TrimLeft(rest, ":= \t")
	if value == "" || strings.IndexByte("\"'[{", value[0]) >= 0 {
		return value
	}
	ends := "#"
	if s.closing() != 0 {
		ends = "#,]}"
	}
	if end := strings.IndexAny(value, ends); end >= 0 {
		value = value[:end]
	}
	value = strings.TrimRight(value, " \t")
	if judge(value) == sound {
		return value
	}
	return inQuotes(strings.Trim(value, smartQuotes))
}

// badName reports a name with characters that need quotes.
func (s *scanner) badName(start, equals int) {
	name := strings.TrimRight(s.body[start:equals], " \t")
	value := excerpt(s.asValue(strings.TrimRight(s.body[equals+1:s.lineEnd(equals)], " \t\r")), longestAdvice)
	if odd := oddSpace(name); odd >= 0 {
		s.trouble(s.place(start+odd), excerpt(name, longestAdvice), ordinarySpace, oddSpaceAdvice)
		return
	}
	s.trouble(s.place(start), excerpt(name, longestAdvice), "letters, digits, - and _ in a name, or quotes round it",
		"write "+excerpt(inQuotes(strings.Trim(name, smartQuotes)), longestAdvice)+" = "+value)
}

// noEntry reports a line that begins with what begins no entry.
func (s *scanner) noEntry(start int) {
	at, read := s.place(start), s.rest(start)
	switch {
	case s.closing() == '}':
		s.trouble(at, read, "name = value in braces", "write the name and = before the value, or use [ ] for a list")
	case strings.IndexByte("]})", s.body[start]) >= 0:
		s.trouble(at, read, "name = value, or a header in [ ]", "take the bracket away, or look for the line where it should have been opened")
	default:
		s.trouble(at, read, "name = value, or a header in [ ]", "write # in front if it is a remark")
	}
}

// soundParts reports whether every part is a name that needs no quotes.
func soundParts(parts []string) bool {
	for _, p := range parts {
		if !isBare(strings.TrimSpace(p)) {
			return false
		}
	}
	return true
}

// emptyPart reports whether a part is missing.
func emptyPart(parts []string) bool {
	for _, p := range parts {
		if strings.TrimSpace(p) == "" {
			return true
		}
	}
	return false
}

// quotedParts writes the parts with quotes round those that need them.
func quotedParts(parts []string) string {
	written := make([]string, len(parts))
	for i, p := range parts {
		p = strings.TrimSpace(p)
		if !isBare(p) {
			p = inQuotes(p)
		}
		written[i] = p
	}
	return strings.Join(written, ".")
}
