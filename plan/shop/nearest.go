package shop

import (
	"strings"

	"dustbook/plan/entry"
)

// search looks for the words nearest to unknown ones. It remembers what it
// found and gives up after many: whoever has mended those reads again.
type search struct {
	found map[[2]string][]string
}

// mostSearches bounds the searches of one file, so that a file full of
// unknown words is read as quickly as any other.
const mostSearches = 500

// near lists the words nearest to one, at most three. The group names what
// the words are, so that each word is looked for once.
func (f *search) near(group, word string, known []string) []string {
	key := [2]string{group, word}
	if near, done := f.found[key]; done {
		return near
	}
	if f.found == nil {
		f.found = map[[2]string][]string{}
	}
	if len(f.found) >= mostSearches {
		return nil
	}
	near := entry.Nearest(word, known, 3)
	f.found[key] = near
	return near
}

// nearest is the advice for a word that is not known: the nearest ones, all
// of them where they are few, else what is said of none.
func (r *reader) nearest(group, word string, known []string, none string) string {
	if near := r.search.near(group, word, known); len(near) > 0 {
		return "write " + orList(quoteAll(near))
	}
	if len(known) > 0 && len(known) <= 12 {
		return "use " + orList(quoteAll(known))
	}
	return none
}

func quoteAll(list []string) []string {
	quoted := make([]string, len(list))
	for i, word := range list {
		quoted[i] = entry.Quote(word)
	}
	return quoted
}

func orList(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " or " + list[len(list)-1]
}

// article puts a or an before a word.
func article(word string) string {
	if word != "use" && word != "" && strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

// lower makes a sentence part of a longer one, without what follows a
// semicolon.
func lower(sentence string) string {
	sentence, _, _ = strings.Cut(strings.TrimSuffix(sentence, "."), "; ")
	if sentence == "" {
		return sentence
	}
	return strings.ToLower(sentence[:1]) + sentence[1:]
}
