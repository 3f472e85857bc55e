package main

import (
	"slices"
	"strings"

	"dustbook/checks"
	"dustbook/plan/entry"
)

// choice is which findings are shown: those of some checks, of some weights or
// of both. Nothing chosen is everything.
type choice struct {
	checks  []string
	weights []checks.Weight
}

// readChoice reads --only and --weight. Each takes several words with commas
// between them, and may be given several times.
func readChoice(c *call) (choice, error) {
	var chosen choice
	var known []string
	for _, check := range checks.All {
		known = append(known, check.ID)
	}
	slices.Sort(known)
	for _, id := range listed(c.many["only"]) {
		if !slices.Contains(known, id) {
			return choice{}, unknownCheck(id, known)
		}
		chosen.checks = append(chosen.checks, id)
	}
	for _, word := range listed(c.many["weight"]) {
		w := checks.Weight(word)
		if !slices.ContainsFunc(weights, func(g weightGroup) bool { return g.weight == w }) {
			return choice{}, wrongUse{"--weight was given " + entry.Quote(word), "write stop, mend or know, or several with commas: --weight stop,mend"}
		}
		chosen.weights = append(chosen.weights, w)
	}
	return chosen, nil
}

// listed takes lists with commas apart.
func listed(values []string) []string {
	var words []string
	for _, value := range values {
		for word := range strings.SplitSeq(value, ",") {
			words = append(words, strings.TrimSpace(word))
		}
	}
	return words
}

// unknownCheck says which check may be meant, and where to see all.
func unknownCheck(id string, known []string) error {
	do := ""
	if near := entry.Nearest(id, known, 3); len(near) > 0 {
		do = "do you mean " + strings.Join(near, ", ") + "? "
	}
	return wrongUse{"--only was given " + entry.Quote(id) + ", which is no check", do + "dustbook inspect --all shows the id of every check that found something"}
}

// shows reports whether findings of a weight are shown.
func (ch choice) shows(w checks.Weight) bool {
	return len(ch.weights) == 0 || slices.Contains(ch.weights, w)
}

// asks reports whether findings of a check are shown.
func (ch choice) asks(id string) bool {
	return len(ch.checks) == 0 || slices.Contains(ch.checks, id)
}

// from are the chosen ones of some findings.
func (ch choice) from(list []checks.Finding) []checks.Finding {
	var chosen []checks.Finding
	for _, f := range list {
		if ch.asks(f.Check) && ch.shows(f.Weight) {
			chosen = append(chosen, f)
		}
	}
	return chosen
}
