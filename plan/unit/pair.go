package unit

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// ReadAt reads a quantity that holds at another, as "2000 cfm at 50 Pa". The
// error is an *Error.
func ReadAt[Q, R Measure](text string) (Q, R, error) { return readTwo[Q, R](text, " at ") }

// ReadRange reads the two ends of a range, as "0.5 A to 50 A", the lower one
// first. The error is an *Error.
func ReadRange[Q Measure](text string) (low, high Q, err error) {
	if low, high, err = readTwo[Q, Q](text, " to "); err != nil {
		return 0, 0, err
	}
	if !AtLeast(float64(high), float64(low)) {
		k := low.Kind()
		return 0, 0, &Error{Read: quote(text), Expected: wantsTwo(k, k, " to "), Do: "Write the lower end first."}
	}
	return low, high, nil
}

func readTwo[Q, R Measure](text, word string) (Q, R, error) {
	var q Q
	var r R
	fail := func(do string) (Q, R, error) {
		return 0, 0, &Error{Read: quote(text), Expected: wantsTwo(q.Kind(), r.Kind(), word), Do: do}
	}
	if utf8.RuneCountInString(text) > longestText {
		return fail(tooLong)
	}
	first, second, found := cutWord(text, word)
	if !found {
		return fail("Write two quantities with " + strconv.Quote(strings.TrimSpace(word)) + " between them.")
	}
	x, fault := read(q.Kind(), first)
	if fault != nil {
		return fail(fault.fix(q.Kind()))
	}
	y, fault := read(r.Kind(), second)
	if fault != nil {
		return fail(fault.fix(r.Kind()))
	}
	return Q(x), R(y), nil
}

func wantsTwo(k, l Kind, word string) string {
	a, b := k.examples()[0], l.examples()[0]
	if word == " to " {
		return `the two ends of a range with "to" between them, each ` + k.phrase() + ` such as "` + a + `"`
	}
	return k.phrase() + word + l.phrase() + `, such as "` + a + word + b + `"`
}

// cutWord parts a text at a word in any letter case that stands in it once.
func cutWord(text, word string) (before, after string, found bool) {
	at := -1
	for i := 0; i+len(word) <= len(text); i++ {
		if strings.EqualFold(text[i:i+len(word)], word) {
			if at >= 0 {
				return "", "", false
			}
			at = i
		}
	}
	if at < 0 {
		return "", "", false
	}
	return text[:at], text[at+len(word):], true
}
