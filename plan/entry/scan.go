package entry

import "strings"

// scanner reads the text of a file from its first byte to its last, once, and
// builds the outline. After a problem it goes on where the next entry begins.
type scanner struct {
	outline
	at       int       // the byte to be read next
	brackets []bracket // those open now
	label    string    // the key being given a value, as written
	bareList bool      // a name = value straight in a list was reported in this entry
	resume   int       // where to go on after a failure, -1 when not known
}

// bracket is one that is open.
type bracket struct {
	char   byte
	offset int
	place  Place
}

// scan reads a text to its end.
func scan(t *text) *outline {
	root := &Table{At: Place{1, 1}, origin: headed}
	s := &scanner{outline: outline{text: t, root: root, here: root, good: len(t.body)}}
	for s.skipBlank(); s.at < len(s.body) && !s.halted; s.skipBlank() {
		s.entryAt, s.resume, s.brackets, s.label, s.bareList = s.at, -1, s.brackets[:0], "", false
		if !s.entry() || !s.lineDone() {
			s.goOn()
		}
	}
	return &s.outline
}

// entry reads a header or a key with its value.
func (s *scanner) entry() bool {
	if s.peek() == '[' {
		return s.readHeader()
	}
	return s.pair(s.here, s.prefix)
}

// readHeader reads [name] or [[name]].
func (s *scanner) readHeader() bool {
	start, place := s.at, s.place(s.at)
	array := s.has("[[")
	closing := "]"
	if array {
		closing = "]]"
	}
	s.at += len(closing)
	parts, ok := s.dottedKey(func() { s.headerTrouble(start) })
	if !ok {
		return false
	}
	if !s.has(closing) {
		s.headerTrouble(start)
		return false
	}
	s.at += len(closing)
	if !s.within(namesOf(nil, parts), place) {
		return false
	}
	s.header(parts, array, place, excerpt(s.body[start:s.at], sourceLength))
	return true
}

// sourceLength is how much of a value is kept for messages.
const sourceLength = 80

// pair reads a key, the = and the value.
func (s *scanner) pair(into *Table, prefix []string) bool {
	start := s.at
	parts, ok := s.dottedKey(func() { s.pairTrouble(start) })
	if !ok {
		return false
	}
	if s.peek() != '=' {
		s.pairTrouble(start)
		return false
	}
	s.label = strings.TrimRight(s.body[start:s.at], " \t")
	names := namesOf(prefix, parts)
	if !s.within(names, parts[0].place) {
		return false
	}
	s.keys = append(s.keys, names)
	n := s.plant(into, parts)
	s.at++
	s.skipSpace()
	return s.value(n, names)
}

// value reads a value of any kind into the node.
func (s *scanner) value(n *Node, names []string) bool {
	if s.halted {
		return false
	}
	start := s.at
	n.At = s.place(start)
	ok := false
	switch s.peek() {
	case '"', '\'':
		_, ok = s.quoted(true)
	case '[':
		ok = s.array(n, names)
	case '{':
		ok = s.braces(n, names)
	default:
		ok = s.scalar()
	}
	if ok {
		n.Source = excerpt(s.body[start:s.at], sourceLength)
	}
	return ok
}

// array reads [ values ].
func (s *scanner) array(n *Node, names []string) bool {
	if !s.push(n.At) {
		return false
	}
	items := []*Node{}
	for {
		s.skipBlank()
		switch s.peek() {
		case ']':
			s.pop()
			n.Value = items
			return true
		case 0, ',', '}':
			return s.listTrouble()
		}
		item := &Node{Path: indexed(n.Path, len(items)), Name: n.Name, Key: s.place(s.at)}
		s.label = ""
		if !s.value(item, names) || !s.separator() {
			return false
		}
		items = append(items, item)
	}
}

// braces reads { key = value, … }.
func (s *scanner) braces(n *Node, names []string) bool {
	if !s.push(n.At) {
		return false
	}
	table := &Table{Path: n.Path, At: n.At, origin: inline}
	n.Value = table
	for {
		s.skipBlank()
		switch s.peek() {
		case '}':
			s.pop()
			return true
		case 0, ',', ']':
			return s.listTrouble()
		}
		if !s.pair(table, names) || !s.separator() {
			return false
		}
	}
}

// separator reads the comma after a value in brackets, or stops at the closing
// bracket.
func (s *scanner) separator() bool {
	after := s.at
	s.skipBlank()
	switch {
	case s.peek() == ',':
		s.at++
		return true
	case s.peek() == s.closing():
		return true
	}
	return s.separatorTrouble(after)
}

// push opens the bracket that stands here.
func (s *scanner) push(place Place) bool {
	if len(s.brackets) == MaxDepth {
		s.tooDeep(place)
		return false
	}
	s.brackets = append(s.brackets, bracket{s.body[s.at], s.at, place})
	s.at++
	return true
}

// pop closes the bracket opened last.
func (s *scanner) pop() {
	s.brackets = s.brackets[:len(s.brackets)-1]
	s.at++
}

// closing returns the bracket that closes the one opened last, 0 outside brackets.
func (s *scanner) closing() byte {
	if len(s.brackets) == 0 {
		return 0
	}
	return s.brackets[len(s.brackets)-1].char + 2 // [ and ], { and } are two apart
}

// lineDone checks that nothing but a remark is left on the line.
func (s *scanner) lineDone() bool {
	after := s.at
	s.skipSpace()
	switch s.peek() {
	case 0, '\n', '\r', '#':
		return true
	}
	s.tailTrouble(after)
	return false
}

// goOn moves to where the next entry begins after a failure: the next line, or
// from within brackets the next line that looks like an entry and stands no
// further in than the one that failed.
func (s *scanner) goOn() {
	if s.resume >= 0 {
		s.at = s.resume
		return
	}
	s.at = s.lineEnd(s.at)
	for len(s.brackets) > 0 && s.at < len(s.body) && !s.entryAhead(s.at+1) {
		s.at = s.lineEnd(s.at + 1)
	}
}

// entryAhead reports whether the line that starts at the offset looks like an
// entry of its own.
func (s *scanner) entryAhead(line int) bool {
	rest := s.body[line:s.lineEnd(line)]
	written := strings.TrimLeft(rest, " \t")
	indent := s.entryAt - s.lineStart(s.entryAt)
	return len(rest)-len(written) <= indent && entryLike.MatchString(written)
}

// peek returns the byte to be read next, 0 at the end.
func (s *scanner) peek() byte {
	if s.at < len(s.body) {
		return s.body[s.at]
	}
	return 0
}

// has reports whether the text goes on with those bytes.
func (s *scanner) has(next string) bool { return strings.HasPrefix(s.body[s.at:], next) }

// skipSpace passes spaces and tabs.
func (s *scanner) skipSpace() {
	for s.peek() == ' ' || s.peek() == '\t' {
		s.at++
	}
}

// skipBlank passes white space, line ends and remarks.
func (s *scanner) skipBlank() {
	for {
		switch s.peek() {
		case ' ', '\t', '\r', '\n':
			s.at++
		case '#':
			s.at = s.lineEnd(s.at)
		default:
			return
		}
	}
}

// dottedKey reads the names of a key and the white space after them. Where no
// name stands the trouble is reported by the function given.
func (s *scanner) dottedKey(trouble func()) ([]part, bool) {
	var parts []part
	for {
		s.skipSpace()
		place := s.place(s.at)
		if len(parts) == MaxParts {
			s.tooManyParts(parts[0].place)
			return nil, false
		}
		name, ok := "", false
		switch s.peek() {
		case '"', '\'':
			if name, ok = s.quoted(false); !ok {
				return nil, false
			}
		default:
			if name = s.bare(); name == "" {
				trouble()
				return nil, false
			}
		}
		parts = append(parts, part{name, place})
		s.skipSpace()
		if s.peek() != '.' {
			return parts, true
		}
		s.at++
	}
}

// bare reads an unquoted name.
func (s *scanner) bare() string {
	start := s.at
	for isBareByte(s.peek()) {
		s.at++
	}
	return s.body[start:s.at]
}

// isBare reports whether a name needs no quotes.
func isBare(name string) bool {
	for i := range len(name) {
		if !isBareByte(name[i]) {
			return false
		}
	}
	return name != ""
}

// isBareByte reports whether a byte may stand in an unquoted name.
func isBareByte(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}
