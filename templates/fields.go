package templates

import (
	"strings"

	"dustbook/plan/shop"
)

// fieldsView lists every table of the shop file with its fields, and every
// word they take.
type fieldsView struct {
	Tables []fieldTable
	Groups []fieldWords
}

type fieldTable struct {
	ID, Name, Title, Means, Place string
	Rows                          []fieldRow
}

// fieldRow is one field: how it is written, what stands in for it, what it
// means.
type fieldRow struct {
	ID               string
	Name             []string // the parts of its name, between which a line may break
	Written          string
	Examples, Words  []string
	WordsID, TableID string // where its words, or the fields it holds, are listed
	Needed           string
	Default, Basis   string
	Bounds, Means    string
}

type fieldWords struct {
	ID, Name string
	Words    []shop.Word
}

// mostWords a row lists; where there are more, it leads to their list.
const mostWords = 8

// addFields adds the sheet of the shop file's fields.
func (b *Book) addFields() {
	b.add(&Sheet{Part: partFindings, Path: "fields.html", Title: b.words.Text("fields.the-shop-file"), Kind: "table", Lede: b.words.Text("fields.every-table-and-every-field"), Verdict: b.lookUp("fields"), name: "fields.html", view: func() any { return b.viewOfFields() }})
}

func (b *Book) viewOfFields() fieldsView {
	var v fieldsView
	for _, t := range shop.Tables() {
		table := fieldTable{ID: tableID(t.Name), Name: t.Name, Title: raised(t.Name), Means: t.Means, Place: t.Place()}
		for _, r := range t.Rows() {
			table.Rows = append(table.Rows, b.viewOfField(r))
		}
		v.Tables = append(v.Tables, table)
	}
	for _, group := range shop.WordGroups() {
		v.Groups = append(v.Groups, fieldWords{wordsID(group), raised(group), shop.Words(group)})
	}
	return v
}

func (b *Book) viewOfField(r *shop.Row) fieldRow {
	row := fieldRow{ID: fieldID(r), Name: strings.SplitAfter(r.Field, "_"), Written: r.Written(), Needed: r.Needed(), Default: r.Default, Bounds: r.Bounds(), Means: r.Means}
	if r.Default != "" && r.Basis.Mark != 0 {
		row.Basis = r.Basis.BriefIn(b.words.Mark)
	}
	switch {
	case r.TakesWords():
		row.WordsID = wordsID(r.Of)
		if list := shop.Words(r.Of); len(list) <= mostWords {
			for _, w := range list {
				row.Words = append(row.Words, w.Word)
			}
		}
	case r.Holds():
		row.TableID = tableID(r.Of)
		row.Examples = r.Examples()
	default:
		row.Examples = r.Examples()
	}
	return row
}

func tableID(table string) string { return "table-" + shop.Slug(table) }

func wordsID(group string) string { return "words-" + shop.Slug(group) }

// fieldID is the place of a field on its sheet.
func fieldID(r *shop.Row) string { return "field-" + shop.Slug(r.Table) + "-" + r.Field }

// fieldPath is where a field, named with its table as in "hose.material", is
// described; its table, where that has no such field, as of what a material
// brings; empty where there is no such table.
func fieldPath(name string) string {
	table, field, _ := strings.Cut(name, ".")
	if r := shop.FindRow(table, field); r != nil {
		return "fields.html#" + fieldID(r)
	}
	for _, t := range shop.Tables() {
		if t.Name == table {
			return "fields.html#" + tableID(table)
		}
	}
	return ""
}

// raised is a name as a heading.
func raised(name string) string { return strings.ToUpper(name[:1]) + name[1:] }
