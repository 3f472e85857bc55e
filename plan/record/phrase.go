package record

import (
	"strings"

	"dustbook/plan/entry"
)

// nearest is the advice for a word that is not known: the nearest ones, else
// all of them where they are few, else what is said of none.
func nearest(word string, known []string, few int, none string) string {
	if near := entry.Nearest(word, known, 3); len(near) > 0 {
		return "write " + orList(quoteAll(near))
	}
	if len(known) > 0 && len(known) <= few {
		return "use one of " + strings.Join(quoteAll(known), ", ")
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

// orList joins words into a choice: a, b or c.
func orList(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " or " + list[last]
}

// clause makes a sentence a part of a longer one.
func clause(sentence string) string {
	sentence = strings.TrimSuffix(sentence, ".")
	if sentence == "" {
		return sentence
	}
	return strings.ToLower(sentence[:1]) + sentence[1:]
}
