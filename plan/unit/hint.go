package unit

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"slices"
	"strings"
)

//go:embed hints.csv
var hintRows []byte

// hints says which unit is likely meant where another was written: by the
// kind wanted and the unit written, in small letters.
var hints = mustHints(hintRows)

type hintKey struct {
	wanted  Kind
	written string
}

func mustHints(data []byte) map[hintKey][]string {
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		panic("unit: hints: " + err.Error())
	}
	table := map[hintKey][]string{}
	for _, r := range records[1:] {
		at := slices.IndexFunc(Kinds(), func(k Kind) bool { return tableName(k) == r[0] })
		if at < 0 {
			panic("unit: hints: unknown kind " + r[0])
		}
		for _, written := range strings.Split(r[1], "|") {
			table[hintKey{Kinds()[at], fold(written)}] = strings.Split(r[2], "|")
		}
	}
	return table
}

// noUnit complains of a bare number and names a likely unit.
func noUnit(k Kind, n number) *complaint {
	c := &complaint{do: write(k), lead: "Write the unit:", most: 1}
	for _, e := range k.examples() {
		_, likely, _ := strings.Cut(e, " ")
		c.offers = append(c.offers, n.text+" "+likely)
	}
	return c
}

// notA complains of a quantity of another kind.
func notA(k, found Kind) *complaint {
	return &complaint{found: found.phrase(), do: write(k)}
}

// otherKind complains of a unit of another kind.
func otherKind(k Kind, n number, d *Definition, unit string) *complaint {
	c := notA(k, d.Kind)
	c.offer(n, hints[hintKey{k, fold(tidyUnit(unit))}])
	return c
}

// unknownUnit complains of a unit that no row knows and names the nearest
// spellings of the kind, or its units.
func unknownUnit(k Kind, n number, unit string) *complaint {
	s := tidyUnit(unit)
	c := &complaint{do: useOneOf(k)}
	switch instead := hints[hintKey{k, fold(s)}]; {
	case instead != nil:
		c.offer(n, instead)
	case strings.ContainsAny(s[:1], "0123456789,/"):
		c.do = `Write one number and its unit, such as "` + k.examples()[0] + `".`
	case k == KindLength && feetBegin(s):
		c.do = `Write the inches with their unit, such as "12 ft 6 in".`
	case strings.ContainsAny(s, "()"):
		c.do = "Close the bracket, and write in it the same quantity in another unit."
	default:
		c.offer(n, nearest(k, s))
	}
	return c
}

// offer proposes the number with each of the units.
func (c *complaint) offer(n number, units []string) {
	c.lead, c.most = "Write", mostNear
	for _, u := range units {
		c.offers = append(c.offers, n.text+" "+u)
	}
}

// feetBegin reports whether a unit starts as feet and goes on with a figure.
func feetBegin(unit string) bool {
	foot := strings.TrimRight(unit, " 0123456789./½¼¾")
	return foot != unit && units.find(foot) == units.find("ft")
}

// useOneOf names every unit of a kind.
func useOneOf(k Kind) string {
	var names []string
	for _, d := range units.of(k) {
		names = append(names, d.Spellings[0])
	}
	if len(names) == 1 {
		return "Use the unit " + names[0] + "."
	}
	return "Use one of the units " + listed(names) + "."
}

// mostNear bounds how many spellings a message offers.
const mostNear = 3

// nearest finds the spellings of the kind that differ least from the text,
// one for each unit, if any is near enough to be meant.
func nearest(k Kind, text string) []string {
	least := max(1, len([]rune(text))/3)
	var near []string
	for _, d := range units.of(k) {
		best := ""
		for _, s := range d.Spellings {
			switch far := distance(fold(s), fold(text)); {
			case far < least:
				near, best, least = nil, s, far
			case far == least && best == "":
				best = s
			}
		}
		if best != "" {
			near = append(near, best)
		}
	}
	return near
}

// distance counts the characters to put in, leave out or change to make one
// text of the other.
func distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i := range from {
		corner := row[0]
		row[0] = i + 1
		for j := range to {
			change := corner
			if from[i] != to[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
