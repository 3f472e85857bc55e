package templates

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"dustbook/checks"
	"dustbook/plan/record"
)

// concern is a finding of the book that a point may speak of.
type concern struct {
	State Word
	About string
	Check aboutLink
}

// mostConcerns is how many findings stand beside a point.
const mostConcerns = 4

// concerns are the open findings that a point may speak of: first those of a
// check whose name its words hold, then those about a thing that it names.
func (b *Book) concerns(item record.Item) (list []concern, more int) {
	text := item.Asks + "\n" + item.Gap
	var byCheck, byThing []checks.Finding
	for _, f := range b.Findings {
		c := checks.Find(f.Check)
		switch {
		case f.State == checks.Met:
		case c != nil && speaksOf(text, c.Name):
			byCheck = append(byCheck, f)
		case mentions(text, f.About):
			byThing = append(byThing, f)
		}
	}
	for _, f := range append(byCheck, byThing...) {
		if len(list) == mostConcerns {
			more++
			continue
		}
		at := concern{State: stateWord(f.State), About: f.About, Check: aboutLink{f.Check, b.Path("check", f.Check)}}
		if c := checks.Find(f.Check); c != nil {
			at.Check.Name = c.Name
		}
		list = append(list, at)
	}
	return list, more
}

// leastLetters is from how many letters on a word of a name tells something.
const leastLetters = 4

// speaksOf reports whether a text holds every word of a name that tells
// something, whatever its case and its ending.
func speaksOf(text, name string) bool {
	has, found := lowerWords(text), false
	for _, word := range lowerWords(name) {
		if utf8.RuneCountInString(word) < leastLetters {
			continue
		}
		word = strings.TrimSuffix(word, "s")
		if !slices.ContainsFunc(has, func(w string) bool { return strings.HasPrefix(w, word) }) {
			return false
		}
		found = true
	}
	return found
}

// lowerWords are the words of a text in small letters; a hyphen is part of its
// word.
func lowerWords(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !inWord(r) && r != '-' })
}

// mentions reports whether a text holds a name as words of its own, whatever
// their case.
func mentions(text, name string) bool {
	text, name = strings.ToLower(text), strings.ToLower(strings.TrimSpace(name))
	if name == "" {
		return false
	}
	for at := 0; ; {
		i := strings.Index(text[at:], name)
		if i < 0 {
			return false
		}
		start := at + i
		end := start + len(name)
		if !letterBefore(text[:start]) && !letterAfter(text[end:]) {
			return true
		}
		at = start + 1
	}
}

func letterBefore(text string) bool {
	r, _ := utf8.DecodeLastRuneInString(text)
	return inWord(r)
}

func letterAfter(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return inWord(r)
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
