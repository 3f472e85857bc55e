package source

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
)

// Mark says how a figure was come by.
type Mark uint8

const (
	Verified Mark = iota + 1 // read in a copy of the document itself
	Reported                 // read on a page that reports the document
	Memory                   // known to the trade, not seen in a copy
	Practice                 // rule of thumb, no published source
	Computed                 // our own arithmetic from a stated formula
	Given                    // stated in the shop file by its owner
)

// markRow is what the data say of one mark: its short form in data files, the
// name of its texts, and in plain English its word, what is added behind a
// figure with it and what stands in place of a document.
type markRow struct{ short, name, word, says, instead string }

//go:embed marks.csv
var marksData []byte

// markRows are the rows of the marks, in the order of their constants; the
// first is that of no mark.
var markRows = mustMarks(marksData)

func mustMarks(data []byte) []markRow {
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(records) != int(Given)+2 {
		panic(fmt.Sprintf("source: marks.csv: %d rows, %v", len(records), err))
	}
	var list []markRow
	for _, r := range records[1:] {
		list = append(list, markRow{r[0], r[1], r[2], r[3], r[4]})
	}
	return list
}

// row is the row of a mark.
func (m Mark) row() markRow {
	if int(m) >= len(markRows) {
		m = 0
	}
	return markRows[m]
}

// ReadMark reads the short form used in data files: V, V2, M, P, C or G.
func ReadMark(text string) (Mark, error) {
	for i, row := range markRows {
		if i > 0 && row.short == text {
			return Mark(i), nil
		}
	}
	return 0, fmt.Errorf("%q is no mark: want V, V2, M, P, C or G", text)
}

// String is the word used in JSON and in tables of the terminal.
func (m Mark) String() string { return m.row().word }

// Decides reports whether a rule figure with this mark may decide met or not
// met. A figure from memory becomes a question, one from practice advice.
func (m Mark) Decides() bool { return m == Verified || m == Reported || m == Given }

// Weak reports whether a need that rests on this mark keeps a verdict at
// thin: the figure is from memory or from practice.
func (m Mark) Weak() bool { return m == Memory || m == Practice }

// The texts of a mark.
const (
	wordText    = "word"    // the mark in a word
	saysText    = "says"    // what is added behind a figure; none where it was read in the document or is the owner's own
	insteadText = "instead" // what stands in place of a document
)

// Wording gives the texts of marks in a language: "word", "says" or "instead"
// of the mark of a name.
type Wording func(which, mark string) string

// english are the texts of the data file.
func english(which, mark string) string {
	for _, row := range markRows {
		if row.name == mark {
			return row.text(which)
		}
	}
	return ""
}

// text is one text of a row; empty where it has none.
func (row markRow) text(which string) string {
	switch which {
	case saysText:
		return row.says
	case insteadText:
		return row.instead
	}
	return row.word
}

// in is a text of the mark in a language; empty where the mark has none.
func (m Mark) in(w Wording, which string) string {
	if m.row().text(which) == "" {
		return ""
	}
	return w(which, m.row().name)
}
