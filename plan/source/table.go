package source

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// Row is one row of a data table: one fact, with its source and mark.
type Row struct {
	table   string
	line    int
	order   []string // column names as they stand
	columns map[string]string
	Basis   Basis
}

// MustRows reads an embedded data table. Its first line names the columns;
// among them stand document, clause and mark. A malformed table is a fault of
// the program, found by its first test, so it panics.
func MustRows(table string, data []byte, columns ...string) []Row {
	rows, err := readRows(table, data, columns)
	if err != nil {
		panic("source: " + err.Error())
	}
	return rows
}

func readRows(table string, data []byte, want []string) ([]Row, error) {
	in := csv.NewReader(bytes.NewReader(data))
	in.Comment = '#'
	head, err := in.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", table, err)
	}
	place := map[string]int{}
	for i, name := range head {
		place[name] = i
	}
	for _, name := range append([]string{"document", "clause", "mark"}, want...) {
		if _, ok := place[name]; !ok {
			return nil, fmt.Errorf("%s: no column %q", table, name)
		}
	}
	records, err := in.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", table, err)
	}
	rows := make([]Row, 0, len(records))
	for i, record := range records {
		r := Row{table: table, line: i + 2, order: head, columns: map[string]string{}}
		for name, at := range place {
			r.columns[name] = record[at]
		}
		if r.Basis, err = rowBasis(r); err != nil {
			return nil, fmt.Errorf("%s: row %d: %w", table, i+1, err)
		}
		rows = append(rows, r)
	}
	return rows, nil
}

func rowBasis(r Row) (Basis, error) { return r.BasisOf("") }

// BasisOf reads the source columns whose names start with prefix, for a row
// that carries more than one figure: prefix "us_" reads us_document,
// us_clause and us_mark.
func (r Row) BasisOf(prefix string) (Basis, error) {
	b := Basis{Document: r.columns[prefix+"document"], Clause: r.columns[prefix+"clause"], Of: r.columns[prefix+"edition"]}
	text := r.columns[prefix+"mark"]
	if text == "" && b.Document == "" {
		return b, nil
	}
	mark, err := ReadMark(text)
	if err != nil {
		return b, err
	}
	b.Mark = mark
	if b.Document == "" && mark != Practice && mark != Computed && mark != Memory {
		return b, fmt.Errorf("mark %s names no document", text)
	}
	if _, ok := FindDocument(b.Document); b.Document != "" && !ok {
		return b, fmt.Errorf("unknown document %q", b.Document)
	}
	return b, nil
}

// MustBasis is BasisOf for embedded tables.
func (r Row) MustBasis(prefix string) Basis {
	b, err := r.BasisOf(prefix)
	if err != nil {
		panic(fmt.Sprintf("source: %s: line %d: %v", r.table, r.line, err))
	}
	return b
}

// Text is the cell of a column, as it stands.
func (r Row) Text(column string) string {
	text, ok := r.columns[column]
	if !ok {
		panic(fmt.Sprintf("source: %s has no column %q", r.table, column))
	}
	return text
}

// Has reports whether the cell of a column is filled.
func (r Row) Has(column string) bool { return r.Text(column) != "" }

// Number is the cell of a column as a plain number.
func (r Row) Number(column string) float64 {
	x, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		panic(fmt.Sprintf("source: %s: line %d: column %s: %v", r.table, r.line, column, err))
	}
	return x
}

// Measure is the value of a row with its unit, as a text to be read.
func (r Row) Measure() string { return r.Text("value") + " " + r.Text("unit") }

// Named is a row of a plain table in two texts: what it gives, from the
// columns before the source columns, and the figure itself. The last column
// that holds a number is the figure; its unit column follows it where there
// is one.
func (r Row) Named() (what, value string) {
	for _, name := range r.order {
		text := r.columns[name]
		switch name {
		case "document", "clause", "mark":
		case "about":
			if text != "" {
				what += ": " + text
			}
		case "unit":
			if text != "" && text != "1" {
				value += " " + text
			}
		default:
			if _, err := strconv.ParseFloat(text, 64); err == nil && what != "" {
				if value != "" {
					what += ", " + value
				}
				value = text
			} else if what == "" {
				what = label(name, text)
			} else if text != "" {
				what += ", " + label(name, text)
			}
		}
	}
	return what, value
}

// label names a cell: a name stands for itself, a figure with its column.
func label(column, text string) string {
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return strings.ReplaceAll(column, "_", " ") + " " + text
	}
	return text
}
