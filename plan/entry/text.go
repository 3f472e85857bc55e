package entry

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// mostProblems is where the list of problems of one file ends: whoever has
// mended that many reads the file again.
const mostProblems = 50

// text is the body of a file and the way from a byte of it to line and column.
type text struct {
	file string
	body string

	// The place found last; counting goes on from there.
	offset int
	last   Place
}

// newText begins at the first character.
func newText(file, body string) *text {
	return &text{file: file, body: body, last: Place{1, 1}}
}

// place returns the line and column of the byte at that offset. It is quick
// when asked in the order of the text.
func (t *text) place(offset int) Place {
	offset = max(0, min(offset, len(t.body)))
	if offset < t.offset {
		t.offset, t.last = 0, Place{1, 1}
	}
	passed := t.body[t.offset:offset]
	if lines := strings.Count(passed, "\n"); lines > 0 {
		passed = passed[strings.LastIndexByte(passed, '\n')+1:]
		t.last = Place{t.last.Line + lines, 1}
	}
	t.last.Column += utf8.RuneCountInString(passed)
	t.offset = offset
	return t.last
}

// lineStart and lineEnd return the offsets round the line that holds an offset.
func (t *text) lineStart(offset int) int {
	return strings.LastIndexByte(t.body[:offset], '\n') + 1
}

func (t *text) lineEnd(offset int) int {
	if end := strings.IndexByte(t.body[offset:], '\n'); end >= 0 {
		return offset + end
	}
	return len(t.body)
}

// look refuses bytes that are no text a TOML file may hold: too many, not
// UTF-8, or with control characters. A byte order mark is dropped.
func look(file string, data []byte) (*text, Problems) {
	if len(data) > MaxBytes {
		return nil, Problems{tooLarge(file, fmt.Sprintf("%d bytes", len(data)))}
	}
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return nil, Problems{{File: file, Place: Place{1, 1}, Read: "text saved as UTF-16", Expected: "text saved as UTF-8",
			Do: "save the file again with the encoding UTF-8"}}
	}
	t := newText(file, strings.TrimPrefix(string(data), "\ufeff"))
	if bad := firstBadByte(t.body); bad >= 0 {
		return nil, Problems{{File: file, Place: t.place(bad), Read: fmt.Sprintf("the byte 0x%02X, which is not UTF-8", t.body[bad]),
			Expected: "text saved as UTF-8", Do: "save the file again with the encoding UTF-8"}}
	}
	return t, controls(t)
}

// firstBadByte returns the offset of the first byte that is not UTF-8, or -1.
func firstBadByte(s string) int {
	if utf8.ValidString(s) {
		return -1
	}
	for i, r := range s {
		if r != utf8.RuneError {
			continue
		}
		if _, width := utf8.DecodeRuneInString(s[i:]); width == 1 {
			return i
		}
	}
	return -1
}

// controls lists the control characters that TOML does not allow.
func controls(t *text) Problems {
	var problems Problems
	for i := 0; i < len(t.body) && len(problems) < mostProblems; i++ {
		c := t.body[i]
		lone := c == '\r' && !strings.HasPrefix(t.body[i+1:], "\n")
		if !lone && (c >= ' ' && c != 0x7f || c == '\t' || c == '\n' || c == '\r') {
			continue
		}
		read, do := fmt.Sprintf("the control character 0x%02X", c), "take the character away"
		switch {
		case lone:
			read, do = "a carriage return without a line feed", "save the file with ordinary line endings"
		case c == 0:
			do = "take the character away, or save the file as UTF-8 if it was saved as UTF-16"
		}
		problems = append(problems, Problem{File: t.file, Place: t.place(i), Read: read, Expected: "text without control characters", Do: do})
	}
	return problems
}
