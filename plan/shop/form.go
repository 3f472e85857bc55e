package shop

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"

	"dustbook/plan/unit"
)

// form is how a kind of field is written.
type form struct {
	quantity unit.Kind // 0 for what is no single quantity
	written  string
	example  string // one or two, as they stand in a file
}

//go:embed forms.csv
var formsData []byte

// forms are the ways fields are written, by kind and, where that matters, by
// what the field is of.
var forms = loadForms()

func loadForms() map[[2]string]form {
	records, err := csv.NewReader(bytes.NewReader(formsData)).ReadAll()
	if err != nil {
		panic("shop: forms.csv: " + err.Error())
	}
	list := map[[2]string]form{}
	for _, r := range records[1:] {
		f := form{written: r[3], example: r[4]}
		for _, k := range unit.Kinds() {
			if k.String() != r[2] {
				continue
			}
			f.quantity, f.written = k, article(k.String())
			if f.example == "" {
				f.example = k.Example()
			}
		}
		if f.written == "" {
			panic("shop: forms.csv: " + r[0] + " is written in no way")
		}
		list[[2]string{r[0], r[1]}] = f
	}
	return list
}

// form finds how the field is written.
func (row *Row) form() form {
	if f, ok := forms[[2]string{row.Kind, row.Of}]; ok {
		return f
	}
	return forms[[2]string{row.Kind, ""}]
}

// sample is what the field may look like, as advice shows it.
func (row *Row) sample() string {
	if example := row.form().example; example != "" {
		first, _, _ := strings.Cut(example, " or ")
		return first
	}
	return `"…"`
}

// Written says how the field is written, in words.
func (row *Row) Written() string {
	written := row.form().written
	switch row.Kind {
	case "names":
		return fmt.Sprintf(written, plurals(kindsIn(row.Of)))
	case "name of":
		kinds := kindsIn(row.Of)
		return fmt.Sprintf(written, article(orList(kinds)))
	}
	return written
}

// plurals joins kinds of things: "collectors or machines".
func plurals(kinds []string) string {
	many := make([]string, len(kinds))
	for i, kind := range kinds {
		many[i] = kind + "s"
	}
	return orList(many)
}

// Examples are one or two values of the field as they stand in a file; none
// where the words of the field say enough.
func (row *Row) Examples() []string {
	text := row.Example
	switch {
	case text != "":
	case row.Kind == "table" || row.Kind == "tables":
		text = "{ " + insides(row.Of) + " }"
	default:
		text = row.form().example
	}
	if text == "" {
		return nil
	}
	return strings.Split(text, " or ")
}

// Needed says whether the field must be given; empty where it may be left
// out.
func (row *Row) Needed() string {
	switch row.Need {
	case "":
		return ""
	case "must":
		return phrase("needed")
	}
	return phrase("needed where", row.Need)
}

// TakesWords reports whether the field holds words of the group Of.
func (row *Row) TakesWords() bool { return row.Kind == "word" || row.Kind == "words" }

// Bounds says the least and the most the field may hold; empty where it has
// no bounds.
func (row *Row) Bounds() string {
	switch {
	case row.Least != "" && row.Most != "":
		return phrase("between", row.Least, row.Most)
	case row.Least != "":
		return phrase("at least", row.Least)
	case row.Most != "":
		return phrase("at most", row.Most)
	}
	return ""
}

// insides shows what a table in braces must hold at least.
func insides(table string) string {
	text := ""
	for _, row := range rowsOf[table] {
		if row.Need == "must" {
			text += row.Field + " = " + row.sample() + ", "
		}
	}
	return text + "…"
}
