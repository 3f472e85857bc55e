package shop

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"slices"
	"strings"
	"unicode"

	"dustbook/plan/entry"
)

// longestName, in characters.
const longestName = 80

// name reads the table's name field, checks its form, and keeps it under a
// kind, so that it can be referred to and must be unique.
func (s *scope) name(kind string) Ref {
	node := s.node("name")
	if node == nil {
		if s.row("name").Need == "must" {
			s.r.nameless[kind] = true
		}
		return Ref{At: s.t.At}
	}
	v, ok := s.str(node, "a name in quotes")
	if !ok {
		s.r.nameless[kind] = true
		return Ref{At: s.t.At}
	}
	s.checkName(kind, v, node)
	ref := Ref{v, node.At}
	s.about = v
	s.r.names = append(s.r.names, named{kind, ref})
	return ref
}

// checkName reports what is wrong with the form of a name.
func (s *scope) checkName(kind, v string, node *entry.Node) {
	fault := nameFault(v)
	if kind != "shop" && strings.ContainsRune(v, '/') && fault == "" {
		fault = `a name without "/", which stands between machine and port`
	}
	if fault != "" {
		s.wrong(node, fault, "choose another name")
	}
}

// nameFault says what is wrong with the form of a name; empty when nothing.
func nameFault(v string) string {
	count := len([]rune(v))
	switch {
	case strings.TrimSpace(v) == "":
		return fmt.Sprintf("a name of 1 to %d characters", longestName)
	case count > longestName:
		return fmt.Sprintf("at most %d characters, not %d", longestName, count)
	case strings.ContainsFunc(v, unicode.IsControl):
		return "a name without control characters"
	case strings.TrimSpace(v) != v:
		return "a name without spaces at its ends"
	}
	return ""
}

// longestSlug keeps a file name within what every disk takes.
const longestSlug = 120

// Slug is a name as part of a file name: small ASCII letters, digits and
// dashes, for which the longer dashes stand as well; any other letter becomes its code. A very long one ends in a sum
// of the whole.
func Slug(name string) string {
	slug := spell(name, func(c rune) bool { return c < 0x80 || isDash(c) })
	if slug == "" {
		slug = spell(name, func(rune) bool { return false })
	}
	if len(slug) > longestSlug {
		sum := fnv.New64a()
		sum.Write([]byte(slug))
		slug = fmt.Sprintf("%s-%016x", strings.TrimRight(slug[:longestSlug-17], "-"), sum.Sum64())
	}
	return slug
}

// isDash reports whether a sign is one of the dashes of printed text.
func isDash(c rune) bool { return c >= 0x2010 && c <= 0x2015 }

// spell writes small letters and digits as they are, signs that drop as one
// dash between the rest, and any other character as its code.
func spell(name string, drops func(rune) bool) string {
	var parts []string
	plain := false // the last part is letters and digits, and goes on
	for _, c := range strings.ToLower(name) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			if !plain {
				parts = append(parts, "")
			}
			parts[len(parts)-1] += string(c)
			plain = true
			continue
		case !drops(c):
			parts = append(parts, fmt.Sprintf("x%x", c))
		}
		plain = false
	}
	return strings.Join(parts, "-")
}

// sharedNames are the kinds whose names are unique together.
var sharedNames = map[string]bool{"machine": true, "collector": true, "duct": true, "gate": true, "trigger": true, "chain": true, "room": true, "use": true}

// standingUses are the names of the uses that every shop has.
var standingUses = []string{"Everything shut", "Everything open", "Duct off"}

// checkNames reports names that stand twice and names that differ but make
// the same file name.
func (r *reader) checkNames() {
	space := func(kind string) string {
		if sharedNames[kind] {
			return ""
		}
		return kind
	}
	byPlace := slices.Clone(r.names)
	slices.SortStableFunc(byPlace, func(a, b named) int {
		return cmp.Or(cmp.Compare(a.ref.At.Line, b.ref.At.Line), cmp.Compare(a.ref.At.Column, b.ref.At.Column))
	})
	first := map[[2]string]named{}
	for _, n := range byPlace {
		if n.ref.Name == "" {
			continue
		}
		slug := Slug(n.ref.Name)
		if n.kind == "machine" || n.kind == "use" {
			if i := slices.IndexFunc(standingUses, func(use string) bool { return Slug(use) == slug }); i >= 0 {
				r.problem(n.ref.At, nameSaid(n), "another name than "+entry.Quote(standingUses[i])+", a use that every shop has", "choose another name")
			}
		}
		key := [2]string{space(n.kind), slug}
		other, taken := first[key]
		switch {
		case !taken:
			first[key] = n
		case other.ref.Name == n.ref.Name:
			r.twice[n.ref.Name] = true
			r.problem(n.ref.At, nameSaid(n), fmt.Sprintf("a name of its own: line %d gives it to %s", other.ref.At.Line, article(other.kind)), "give one of the two another name")
		default:
			r.problem(n.ref.At, nameSaid(n), fmt.Sprintf("a name that differs in letters or digits from %s, line %d: both would be filed as %s", entry.Quote(other.ref.Name), other.ref.At.Line, slug), "give one of the two another name")
		}
	}
}

func nameSaid(n named) string { return "name = " + entry.Quote(n.ref.Name) }
