package shop

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"slices"

	"dustbook/plan/source"
)

// A Row is what the contract says of one field: the data that the reader and
// the page of fields share.
type Row struct {
	Table, Field string
	Kind         string // how the value is written
	Of           string // group of words or kind of thing the value names
	Need         string // "must", or "a or b" where one of two is required
	Default      string
	Basis        source.Basis // of the default
	Least, Most  string
	Example      string // one or two, as in a file, where the kind's own do not fit
	Means        string
}

//go:embed fields.csv
var fieldsData []byte

//go:embed words.csv
var wordsData []byte

var rows, rowOf, rowsOf = loadRows()

// fieldNames are the fields of each table, in the order of the data file.
var fieldNames = namesOfFields()

func namesOfFields() map[string][]string {
	names := map[string][]string{}
	for _, row := range rows {
		names[row.Table] = append(names[row.Table], row.Field)
	}
	return names
}

func loadRows() ([]Row, map[[2]string]*Row, map[string][]*Row) {
	read := source.MustRows("fields.csv", fieldsData, "table", "field", "kind", "of", "need", "default", "least", "most", "example", "means")
	list := make([]Row, len(read))
	byName := map[[2]string]*Row{}
	byTable := map[string][]*Row{}
	for i, r := range read {
		list[i] = Row{
			Table: r.Text("table"), Field: r.Text("field"), Kind: r.Text("kind"), Of: r.Text("of"), Need: r.Text("need"),
			Default: r.Text("default"), Basis: r.Basis, Least: r.Text("least"), Most: r.Text("most"), Example: r.Text("example"), Means: r.Text("means"),
		}
		row := &list[i]
		byName[[2]string{row.Table, row.Field}] = row
		byTable[row.Table] = append(byTable[row.Table], row)
	}
	return list, byName, byTable
}

// Rows lists every field of the contract in the order of the data file.
func Rows() []Row { return rows }

// FindRow finds a field by its table and name; nil where there is none.
func FindRow(table, field string) *Row { return rowOf[[2]string{table, field}] }

// Word is one word a field may hold, with its meaning.
type Word struct{ Word, Means string }

var words = loadWords()

func loadWords() map[string][]Word {
	records, err := csv.NewReader(bytes.NewReader(wordsData)).ReadAll()
	if err != nil {
		panic("shop: words.csv: " + err.Error())
	}
	groups := map[string][]Word{}
	for _, r := range records[1:] {
		groups[r[0]] = append(groups[r[0]], Word{r[1], r[2]})
	}
	for _, k := range kinds {
		groups["kind"] = append(groups["kind"], Word{k.Name, k.says()})
	}
	for _, m := range materials {
		groups["material"] = append(groups["material"], Word{m.Name, m.About + conducting(m.Conducts)})
	}
	for _, h := range hoses {
		groups["hose"] = append(groups["hose"], Word{h.Name, h.About + conducting(h.Conducts)})
	}
	for _, e := range elbows {
		groups["elbows"] = append(groups["elbows"], Word{e.Name, e.says()})
	}
	return groups
}

// Words lists the words of a group, in the order of the data.
func Words(group string) []Word { return words[group] }

// WordGroups lists the groups of words, in the order in which the contract's
// fields first name them.
func WordGroups() []string {
	var groups []string
	for _, row := range rows {
		if row.TakesWords() && !slices.Contains(groups, row.Of) {
			groups = append(groups, row.Of)
		}
	}
	return groups
}

// wordOf finds a word by its group and its spelling; spellings are all that a
// group knows, a kind's other names among them.
var wordOf, spellings = loadSpellings()

func loadSpellings() (map[[2]string]string, map[string][]string) {
	byName, byGroup := map[[2]string]string{}, map[string][]string{}
	add := func(group, spelling, word string) {
		byName[[2]string{group, spelling}] = word
		byGroup[group] = append(byGroup[group], spelling)
	}
	for group, list := range words {
		for _, w := range list {
			add(group, w.Word, w.Word)
		}
	}
	for _, k := range kinds {
		for _, alias := range k.Aliases {
			add("kind", alias, k.Name)
		}
	}
	return byName, byGroup
}

func wordNames(group string) []string {
	var names []string
	for _, w := range words[group] {
		names = append(names, w.Word)
	}
	return names
}
