package entry

import (
	"fmt"
	"sort"
	"strings"
)

// Problem is one thing in a file that has to be changed before it can be used.
type Problem struct {
	File string
	Place
	Read     string // what was read
	Expected string // what was expected there
	Do       string // what to do about it
}

// Error returns the problem on one line:
//
//	shop.toml:12:8: read "800 cfn"; expected a flow; do: write "800 cfm"
func (p Problem) Error() string {
	where := p.File
	if p.Line > 0 {
		where += fmt.Sprintf(":%d", p.Line)
		if p.Column > 0 {
			where += fmt.Sprintf(":%d", p.Column)
		}
	}
	var parts []string
	for _, part := range []struct{ label, text string }{
		{"read ", p.Read}, {"expected ", p.Expected}, {"do: ", p.Do},
	} {
		if part.text != "" {
			parts = append(parts, part.label+plain(part.text))
		}
	}
	said := strings.Join(parts, "; ")
	if where == "" {
		return said
	}
	return where + ": " + said
}

// Problems is a list of problems. As an error it must not be compared with nil;
// use Err.
type Problems []Problem

// Err returns the list as an error, nil when it is empty.
func (p Problems) Err() error {
	if len(p) == 0 {
		return nil
	}
	return p
}

// Error returns one line for each problem.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, problem := range p {
		lines[i] = problem.Error()
	}
	return strings.Join(lines, "\n")
}

// Sort puts the problems in the order of line and column; those at the same
// place stay in the order they were found. Files keep the order in which they
// first appear.
func (p Problems) Sort() {
	files := map[string]int{}
	for _, problem := range p {
		if _, seen := files[problem.File]; !seen {
			files[problem.File] = len(files)
		}
	}
	sort.SliceStable(p, func(i, j int) bool {
		a, b := p[i], p[j]
		switch {
		case a.File != b.File:
			return files[a.File] < files[b.File]
		case a.Line != b.Line:
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
}
