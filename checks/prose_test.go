package checks_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
)

// The prose of a check opens with the hazard in two sentences, says what is
// compared, what to do and whom to ask, and writes the question where its
// findings ask somebody.
func TestProse(t *testing.T) {
	for _, c := range checks.All {
		if fault := proseFault(string(content.CheckProse(c.ID)), c.Whom != ""); fault != "" {
			t.Errorf("%s: %s", c.ID, fault)
		}
	}
	good := "It burns. Keep it out.\n\n## What is compared\n\nOne with two.\n\n## What to do\n\n1. Stop.\n\n## Whom to ask\n\nThe maker: “May it run?”\n"
	for text, want := range map[string]string{
		good: "",
		strings.Replace(good, " Keep it out.", "", 1):                 "its hazard has 1 sentences",
		strings.Replace(good, "## What to do", "## To do", 1):         "its heads are What is compared, To do, Whom to ask",
		strings.Replace(good, "“May it run?”", "whether it runs.", 1): "it writes no question",
	} {
		if got := proseFault(text, true); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

var (
	proseHead = regexp.MustCompile(`(?m)^## (.*)$`)
	question  = regexp.MustCompile(`“[^”]+\?”`)
)

func proseFault(text string, asks bool) string {
	hazard, _, _ := strings.Cut(text, "\n\n")
	if n := len(sentencesOf(hazard)); n != 2 {
		return "its hazard has " + string(rune('0'+n)) + " sentences"
	}
	var heads []string
	for _, m := range proseHead.FindAllStringSubmatch(text, -1) {
		heads = append(heads, m[1])
	}
	if want := []string{"What is compared", "What to do", "Whom to ask"}; !slices.Equal(heads, want) {
		return "its heads are " + strings.Join(heads, ", ")
	}
	_, whom, _ := strings.Cut(text, "## Whom to ask")
	if asks && !question.MatchString(whom) {
		return "it writes no question"
	}
	return ""
}

// No two checks share most of their sentences.
func TestProseIsItsOwn(t *testing.T) {
	for i, a := range checks.All {
		for _, b := range checks.All[i+1:] {
			if share := sharedSentences(string(content.CheckProse(a.ID)), string(content.CheckProse(b.ID))); share > 0.5 {
				t.Errorf("%s and %s share %.0f of 100 sentences", a.ID, b.ID, 100*share)
			}
		}
	}
	for _, c := range []struct {
		a, b string
		want float64
	}{{"A b. C d. E f.", "C d. E f. G h. I j.", 2.0 / 3}, {"A b. C d.", "E f. G h.", 0}, {"A b. C d.", "C d. A b.", 1}} {
		if got := sharedSentences(c.a, c.b); got != c.want {
			t.Errorf("%q and %q: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

// sharedSentences is the share of the shorter text's sentences that the other
// has as well.
func sharedSentences(a, b string) float64 {
	first, second := sentencesOf(a), sentencesOf(b)
	if len(second) < len(first) {
		first, second = second, first
	}
	both := 0
	for _, s := range first {
		if slices.Contains(second, s) {
			both++
		}
	}
	return float64(both) / float64(len(first))
}

var sentenceEnd = regexp.MustCompile(`[.?!][*”)]*\s+|\n\n+|\n\d+\. |\n- `)

// sentencesOf are the sentences of a text, heads left out, in small letters.
func sentencesOf(text string) []string {
	var list []string
	for _, s := range sentenceEnd.Split(proseHead.ReplaceAllString(text, "")+" ", -1) {
		s = strings.ToLower(strings.Trim(s, " \n.?!*"))
		if strings.ContainsAny(s, "abcdefghijklmnopqrstuvwxyz") {
			list = append(list, s)
		}
	}
	return list
}
