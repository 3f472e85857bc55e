package checks

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"slices"

	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

//go:embed editions.csv
var editionsData []byte

// editionsOf are the editions of each text that a shop may name, by the text's
// short name; texts are its names in the order of the data.
var editionsOf, textsOfRules = mustEditions(editionsData)

func mustEditions(data []byte) (of map[string][]string, texts []string) {
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		panic("checks: editions.csv: " + err.Error())
	}
	of = map[string][]string{}
	for _, r := range records[1:] {
		d, known := source.FindDocument(r[0])
		if !known || slices.Contains(of[d.Short], r[1]) {
			panic("checks: editions.csv: " + r[0] + " is no document or stands twice")
		}
		if of[d.Short] == nil {
			texts = append(texts, d.Short)
		}
		of[d.Short] = append(of[d.Short], r[1])
	}
	return of, texts
}

// Editions lists the editions of a text, by its short name, that a shop may
// name; nil where it is none of the texts of the rules.
func Editions(text string) []string { return editionsOf[text] }

// EditionProblems are the editions of a shop file that the checks do not know, or
// of texts that they do not know.
func EditionProblems(s *shop.Shop) entry.Problems {
	var list entry.Problems
	for _, e := range s.Editions {
		if problem, found := editionProblem(e); found {
			problem.File, problem.Place = s.File, e.At
			list = append(list, problem)
		}
	}
	return list
}

// editionProblem is what is wrong with an edition that the shop names: a text or
// an edition that the checks do not know.
func editionProblem(e shop.Edition) (entry.Problem, bool) {
	known := editionsOf[e.Text]
	if known == nil {
		return entry.Problem{Read: say("finding-problem.text.read", entry.Quote(e.Text)), Expected: say("finding-problem.text.expected"), Do: nearest(e.Text, textsOfRules)}, true
	}
	if !slices.Contains(known, e.Edition) {
		return entry.Problem{Read: say("finding-problem.edition.read", entry.Quote(e.Text), entry.Quote(e.Edition)), Expected: say("finding-problem.edition.expected", e.Text),
			Do: say("finding-problem.edition.do", quoted(known))}, true
	}
	return entry.Problem{}, false
}
