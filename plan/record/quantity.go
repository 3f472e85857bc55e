package record

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// Quantity is a measured value: a number in the SI unit of its kind, and the
// text as it was written. With the zero Kind the text is all there is. The
// zero Quantity is none.
type Quantity struct {
	SI   float64
	Kind unit.Kind
	Text string
}

// Given reports whether there is a value.
func (q Quantity) Given() bool { return q.Text != "" }

// longestQuantity is how many characters a value may have.
var longestQuantity = rowOf("reading", "value").Longest

// Read reads a value of what is measured. The error is an entry.Problem
// without a place.
func (m Measure) Read(text string) (Quantity, error) {
	q, p := m.read(text)
	if p != nil {
		p.Read = entry.Quote(text)
		return Quantity{}, *p
	}
	return q, nil
}

// read reads a value, or says what is expected and what to do.
func (m Measure) read(text string) (Quantity, *entry.Problem) {
	if m.Kind == 0 {
		return m.readText(text)
	}
	si, err := unit.ReadKind(m.Kind, text)
	if err != nil {
		p := &entry.Problem{Expected: m.wants(), Do: err.Error()}
		if e, ok := err.(*unit.Error); ok {
			p.Expected, p.Do = e.Expected, clause(e.Do)
		}
		return Quantity{}, p
	}
	if m.Least != "" && unit.Compare(si, m.least()) < 0 {
		return Quantity{}, &entry.Problem{Expected: "at least " + m.Least, Do: "check the sign"}
	}
	return Quantity{SI: si, Kind: m.Kind, Text: text}, nil
}

// readText takes a value that is kept as it is written.
func (m Measure) readText(text string) (Quantity, *entry.Problem) {
	switch count := utf8.RuneCountInString(text); {
	case strings.TrimSpace(text) == "":
		return Quantity{}, &entry.Problem{Expected: m.wants(), Do: "write what was read"}
	case count > longestQuantity:
		return Quantity{}, &entry.Problem{Expected: fmt.Sprintf("at most %d characters, not %d", longestQuantity, count), Do: "shorten it"}
	}
	return Quantity{Text: text}, nil
}

// wants is what a message expects of a value.
func (m Measure) wants() string {
	if m.Kind == 0 {
		return "a text in quotes, such as " + entry.Quote(m.Example)
	}
	return "a value of the kind " + m.Kind.String() + " in quotes, such as " + m.Kind.Example()
}

// least is the quantity it cannot be below.
func (m Measure) least() float64 {
	si, err := unit.ReadKind(m.Kind, m.Least)
	if err != nil {
		panic("record: of.csv: " + err.Error())
	}
	return si
}
