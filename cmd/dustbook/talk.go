package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime/debug"
	"strings"
	"unicode"

	"dustbook/plan/entry"
)

// All talk with people at a terminal goes through this file. Its rules:
//
//   - Messages go to standard error, results to standard output.
//   - A message is one line: "dustbook: ", lower case, no full stop. It says
//     what is wrong and, after a semicolon, what to do.
//   - A problem of a file is one line that starts with file, line and column.
//     All problems are said, in the order of the file.
//   - A result is printed when the whole of it is known; next to an error
//     stands no result.
//   - No control character from a file, a name or an argument reaches a
//     terminal.

// say prints one message.
func (p *program) say(text string) {
	fmt.Fprintln(p.err, "dustbook: "+clean(text))
}

// print adds a line to the result.
func (p *program) print(format string, values ...any) {
	p.result.WriteString(clean(fmt.Sprintf(format, values...)) + "\n")
}

// sayProblems prints every problem of a file, for people or for programs.
func (p *program) sayProblems(list entry.Problems) {
	if !p.json {
		for _, problem := range list {
			fmt.Fprintln(p.err, clean(problem.Error()))
		}
		return
	}
	type problemJSON struct {
		File     string `json:"file"`
		Line     int    `json:"line"`
		Column   int    `json:"column"`
		Read     string `json:"read"`
		Expected string `json:"expected"`
		Do       string `json:"do"`
	}
	rows := []problemJSON{}
	for _, at := range list {
		rows = append(rows, problemJSON{at.File, at.Line, at.Column, at.Read, at.Expected, at.Do})
	}
	enc := json.NewEncoder(p.err)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	_ = enc.Encode(map[string]any{"errors": rows})
}

// sayBroken prints the one line of a fault of the program itself.
func (p *program) sayBroken(cause any) int {
	p.say(broken(cause).Error())
	if p.env("DUSTBOOK_STACK") == "1" {
		_, _ = p.err.Write(debug.Stack())
	}
	return statusFailed
}

// broken is a fault of the program itself as one line.
func broken(cause any) error {
	return fmt.Errorf("the program broke: %.200v; please report this line together with the shop file", cause)
}

// clean takes control characters, and those that turn the writing direction,
// out of a text that may hold what a user wrote.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case unicode.IsControl(r), r == '\u2028', r == '\u2029', r == '\ufeff',
			r == '\u200e', r == '\u200f', r >= '\u202a' && r <= '\u202e', r >= '\u2066' && r <= '\u2069':
			return unicode.ReplacementChar
		}
		return r
	}, strings.ToValidUTF8(text, string(unicode.ReplacementChar)))
}

// cause is what lies behind an error of the disk, without the path and the
// name of the call it happened in.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

// few names the first of many.
func few(names []string) string {
	const most = 10
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

// count puts a number before a word: 1 sheet, 2 sheets.
func count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// folded breaks a text into lines of a width, at spaces.
func folded(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
