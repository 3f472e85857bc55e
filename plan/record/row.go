package record

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"dustbook/plan/unit"
)

// A Row is what the contract says of one field: the data that the reader and
// a page of fields share.
type Row struct {
	Table, Field string // the table is record for the top of the file
	Kind         string // how the value is written
	Of           string // group of words, or what the value names
	Need         string // "must" where it may not be left out
	Longest      int    // characters it may have; 0: no text
	Means        string
}

// Word is one word a field may hold, with its meaning.
type Word struct{ Word, Means string }

// Measure is one thing that can be measured.
type Measure struct {
	Word    string
	Kind    unit.Kind // of the quantity; the zero Kind is text, kept as written
	At      []string  // kinds of thing it can be measured at
	Least   string    // quantity it cannot be below; empty: none
	Example string    // of a text
	Means   string
	Suction bool // suction counts as positive
}

//go:embed fields.csv
var fieldsData []byte

//go:embed words.csv
var wordsData []byte

//go:embed of.csv
var ofData []byte

var (
	rows     = loadRows()
	words    = loadWords()
	measures = loadMeasures()
)

// Rows lists every field of the contract in the order of the data file.
func Rows() []Row { return slices.Clone(rows) }

// Words lists the words of a group, in the order of the data.
func Words(group string) []Word { return slices.Clone(words[group]) }

// Measures lists what can be measured, in the order of the data file.
func Measures() []Measure { return slices.Clone(measures) }

// FindMeasure finds what can be measured by its word.
func FindMeasure(word string) (Measure, bool) {
	i := slices.IndexFunc(measures, func(m Measure) bool { return m.Word == word })
	if i < 0 {
		return Measure{}, false
	}
	return measures[i], true
}

func loadRows() []Row {
	var list []Row
	for _, r := range table("fields.csv", fieldsData) {
		longest := 0
		if r[5] != "" {
			var err error
			if longest, err = strconv.Atoi(r[5]); err != nil {
				panic("record: fields.csv: " + err.Error())
			}
		}
		list = append(list, Row{Table: r[0], Field: r[1], Kind: r[2], Of: r[3], Need: r[4], Longest: longest, Means: r[6]})
	}
	return list
}

func loadWords() map[string][]Word {
	groups := map[string][]Word{}
	for _, r := range table("words.csv", wordsData) {
		groups[r[0]] = append(groups[r[0]], Word{r[1], r[2]})
	}
	for _, r := range table("of.csv", ofData) {
		groups["of"] = append(groups["of"], Word{r[0], r[5]})
	}
	return groups
}

func loadMeasures() []Measure {
	var list []Measure
	for _, r := range table("of.csv", ofData) {
		list = append(list, Measure{Word: r[0], Kind: kindNamed(r[1]), At: strings.Split(r[2], "|"), Least: r[3], Example: r[4], Means: r[5], Suction: r[6] == "suction"})
	}
	return list
}

// kindNamed finds a kind of quantity by its name; "text" is none.
func kindNamed(name string) unit.Kind {
	if name == "text" {
		return 0
	}
	for _, k := range unit.Kinds() {
		if k.String() == name {
			return k
		}
	}
	panic("record: of.csv: no kind of quantity: " + name)
}

// table reads the lines of an embedded table below its head. A malformed one
// is a fault of the program, found by its first test.
func table(name string, data []byte) [][]string {
	lines, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		panic("record: " + name + ": " + err.Error())
	}
	return lines[1:]
}

// rowOf is the row of a field, nil where the contract has none.
func rowOf(table, field string) *Row {
	i := slices.IndexFunc(rows, func(r Row) bool { return r.Table == table && r.Field == field })
	if i < 0 {
		return nil
	}
	return &rows[i]
}

// fieldsOf are the names of a table's fields.
func fieldsOf(table string) []string {
	var names []string
	for _, r := range rows {
		if r.Table == table {
			names = append(names, r.Field)
		}
	}
	return names
}

// wordsOf are the words of a group alone.
func wordsOf(group string) []string {
	var list []string
	for _, w := range words[group] {
		list = append(list, w.Word)
	}
	return list
}
