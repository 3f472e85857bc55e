package shop

import (
	"fmt"
	"strings"
	"unicode"

	"dustbook/plan/entry"
)

// longest name, in characters.
const longestName = 80

// name reads the table's name field, checks its form, and keeps it under a
// kind, so that it can be referred to and must be unique.
func (s *scope) name(kind string) Ref {
	node := s.node("name")
	if node == nil {
		return Ref{At: s.t.At}
	}
	v, ok := s.str(node, "a name in quotes")
	if !ok {
		return Ref{At: s.t.At}
	}
	ref := Ref{v, node.At}
	if fault := nameFault(v); fault != "" {
		s.r.problem(node.At, "name = "+entry.Quote(v), fault, "choose a plain name")
	}
	s.about = v
	s.r.names = append(s.r.names, named{kind, ref})
	return ref
}

// nameFault says what is wrong with the form of a name; empty when nothing.
func nameFault(v string) string {
	switch {
	case strings.TrimSpace(v) == "":
		return "a name of 1 to 80 characters"
	case len([]rune(v)) > longestName:
		return fmt.Sprintf("at most %d characters, not %d", longestName, len([]rune(v)))
	case strings.ContainsRune(v, '/'):
		return `a name without "/", which stands between machine and port`
	case strings.TrimSpace(v) != v:
		return "a name without spaces at its ends"
	case strings.ContainsFunc(v, unicode.IsControl):
		return "a name without control characters"
	}
	return ""
}

// Slug is a name as part of a file name: small ASCII letters, digits and
// dashes; any other letter becomes its code.
func Slug(name string) string {
	var b strings.Builder
	dash := false
	write := func(text string) {
		if dash && b.Len() > 0 {
			b.WriteByte('-')
		}
		dash = false
		b.WriteString(text)
	}
	for _, c := range strings.ToLower(name) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			write(string(c))
		case c < 0x80:
			dash = true
		default:
			dash = true
			write(fmt.Sprintf("x%x", c))
			dash = true
		}
	}
	if b.Len() == 0 {
		for _, c := range name {
			fmt.Fprintf(&b, "x%x", c)
		}
	}
	return b.String()
}

// sharedNames are the kinds whose names are unique together.
var sharedNames = map[string]bool{"machine": true, "collector": true, "duct": true, "gate": true, "trigger": true, "chain": true, "room": true, "use": true}

// checkNames reports names that stand twice and names that differ but make
// the same file name.
func (r *reader) checkNames() {
	space := func(kind string) string {
		if sharedNames[kind] {
			return ""
		}
		return kind
	}
	first := map[[2]string]named{}
	bySlug := map[[2]string]named{}
	for _, n := range r.names {
		if n.ref.Name == "" {
			continue
		}
		key, slugKey := [2]string{space(n.kind), n.ref.Name}, [2]string{space(n.kind), Slug(n.ref.Name)}
		if other, twice := first[key]; twice {
			r.problem(n.ref.At, "name = "+entry.Quote(n.ref.Name), fmt.Sprintf("a name of its own; line %d names %s so", other.ref.At.Line, article(other.kind)), "give one of them another name")
			continue
		}
		if other, twice := bySlug[slugKey]; twice {
			r.problem(n.ref.At, "name = "+entry.Quote(n.ref.Name), fmt.Sprintf("a name that differs from %s (line %d) by more than signs and letter case", entry.Quote(other.ref.Name), other.ref.At.Line), "give one of them another name")
		}
		first[key], bySlug[slugKey] = n, n
	}
}
