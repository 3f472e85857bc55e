package record

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"dustbook/plan/entry"
)

// LineForm is how a reading is written on one line.
const LineForm = "OF at THING [in USE] [filter STATE] [with INSTRUMENT] = VALUE"

// lineSample is a reading on one line, for advice.
const lineSample = `"hood pressure at Planer/hood = 4.1 inwg"`

// longestLine is how many characters a reading on one line may have.
const longestLine = 1000

// ReadLine reads a reading written on one line, in the form of LineForm, for
// a shop with these names. The names decide where a clause begins, since a
// name may hold the words in, filter and with itself. The problems are all
// that were found, without places.
func ReadLine(text string, n Names) (Reading, entry.Problems) {
	if count := utf8.RuneCountInString(text); count > longestLine {
		return Reading{}, entry.Problems{{Read: fmt.Sprintf("a reading of %d characters", count), Expected: fmt.Sprintf("at most %d", longestLine), Do: "shorten it"}}
	}
	equals := strings.LastIndex(text, "=")
	of, rest, found := strings.Cut(strings.TrimSpace(text[:max(equals, 0)]), " at ")
	if equals < 0 || !found {
		return Reading{}, entry.Problems{{Read: entry.Quote(text), Expected: LineForm, Do: "write it as " + lineSample}}
	}
	var problems entry.Problems
	m, known := FindMeasure(strings.TrimSpace(of))
	if !known {
		problems = append(problems, entry.Problem{Read: "of = " + entry.Quote(strings.TrimSpace(of)), Expected: "a word for " + clause(rowOf("reading", "of").Means),
			Do: nearest(of, wordsOf("of"), len(measures), "")})
	}
	parts := cutLine(rest, m, n)
	r := Reading{Of: m.Word, At: parts.thing, Use: parts.use, Filter: parts.filter, With: parts.with}
	problems = append(problems, parts.problems(m, n)...)
	if known {
		var err error
		value := strings.TrimSpace(text[equals+1:])
		if r.Value, err = m.Read(value); err != nil {
			p := err.(entry.Problem)
			p.Read = "value = " + p.Read
			problems = append(problems, p)
		}
	}
	return r, problems
}

// line is the middle of a reading on one line, cut into its parts.
type line struct {
	thing, use, filter, with string
	cuts                     int // clauses behind the thing
}

// clauses are the words that begin a clause.
var clauses = []string{" in ", " filter ", " with "}

// mostPlaces bounds how many places of one word are tried.
const mostPlaces = 8

// cutLine cuts the middle of a reading where most of what results is known.
// Of equal cuts, one that leaves nothing unknown is best, then the one with
// the fewest clauses; where something stays unknown, the one with most.
func cutLine(rest string, m Measure, n Names) line {
	var all []line
	var try func(word int, cuts []cut)
	try = func(word int, cuts []cut) {
		if word == len(clauses) {
			if l, ok := cutAt(rest, cuts); ok {
				all = append(all, l)
			}
			return
		}
		try(word+1, cuts)
		for _, at := range places(rest, clauses[word]) {
			try(word+1, append(slices.Clone(cuts), cut{at, clauses[word]}))
		}
	}
	try(0, nil)
	return slices.MinFunc(all, func(a, b line) int {
		knownA, unknownA := a.count(m, n)
		knownB, unknownB := b.count(m, n)
		fewer := cmp.Compare(a.cuts, b.cuts)
		if unknownA > 0 {
			fewer = -fewer
		}
		return cmp.Or(cmp.Compare(knownB, knownA), cmp.Compare(min(unknownA, 1), min(unknownB, 1)), fewer)
	})
}

// cut is a place where a clause begins.
type cut struct {
	at   int
	word string
}

// places are the last places of a word in a text. The next may share its
// space.
func places(text, word string) []int {
	var list []int
	for at := strings.LastIndex(text, word); at >= 0 && len(list) < mostPlaces; at = strings.LastIndex(text[:at+1], word) {
		list = append(list, at)
	}
	return list
}

// cutAt cuts a text at these places, in the order they stand; false where a
// part would be empty.
func cutAt(text string, cuts []cut) (line, bool) {
	slices.SortFunc(cuts, func(a, b cut) int { return cmp.Compare(a.at, b.at) })
	l := line{thing: text, cuts: len(cuts)}
	for i, c := range cuts {
		end := len(text)
		if i+1 < len(cuts) {
			end = cuts[i+1].at
		}
		from := c.at + len(c.word)
		if i == 0 {
			l.thing = text[:c.at]
		}
		if from > end {
			return line{}, false
		}
		part := bared(text[from:end])
		if part == "" {
			return line{}, false
		}
		switch c.word {
		case clauses[0]:
			l.use = part
		case clauses[1]:
			l.filter = part
		default:
			l.with = part
		}
	}
	l.thing = bared(l.thing)
	return l, l.thing != "" || len(cuts) == 0
}

// bared is a part without the spaces around it and a comma behind it.
func bared(part string) string {
	return strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(part), ","))
}

// count counts the parts that are known and those that are not; an instrument
// is neither.
func (l line) count(m Measure, n Names) (known, unknown int) {
	note := func(is bool) {
		if is {
			known++
		} else {
			unknown++
		}
	}
	note(n.Has(l.thing, m.At))
	if l.use != "" {
		note(slices.Contains(n.Uses, l.use))
	}
	if l.filter != "" {
		note(slices.Contains(wordsOf("filter state"), l.filter))
	}
	return known, unknown
}

// problems lists the parts that are not known.
func (l line) problems(m Measure, n Names) entry.Problems {
	var list entry.Problems
	add := func(p *entry.Problem) {
		if p != nil {
			list = append(list, *p)
		}
	}
	switch {
	case l.thing == "":
		add(&entry.Problem{Read: "nothing behind at", Expected: clause(rowOf("reading", "at").Means), Do: "write it as " + lineSample})
	case m.Word != "":
		add(n.missing("at", l.thing, m.At))
	}
	if l.use != "" {
		add(n.missing("use", l.use, []string{"use"}))
	}
	if states := wordsOf("filter state"); l.filter != "" && !slices.Contains(states, l.filter) {
		add(&entry.Problem{Read: "filter = " + entry.Quote(l.filter), Expected: orList(quoteAll(states)), Do: nearest(l.filter, states, len(states), "")})
	}
	return list
}
