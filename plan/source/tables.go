package source

import (
	"io/fs"
	"strings"
)

// Table is one embedded data table of a package, one fact a row.
type Table struct {
	Name string // the file's name without its ending
	Rows []Row

	file string
}

// MustTable reads NAME.csv among the embedded files of a package, which must
// have the columns. A missing or malformed table is a fault of the program,
// found when it starts. What the table holds is said by a row of the words of
// the pages, by the table's key.
func MustTable(files fs.FS, folder, name string, columns ...string) Table {
	text, err := fs.ReadFile(files, name+".csv")
	if err != nil {
		panic("source: " + folder + ": " + err.Error())
	}
	file := folder + "/" + name + ".csv"
	return Table{Name: name, Rows: MustRows(file, text, columns...), file: file}
}

// Key is the name of the table with that of its package: "air.friction".
func (t Table) Key() string {
	return strings.ReplaceAll(strings.TrimSuffix(t.file, ".csv"), "/", ".")
}

// Row is the row of a name, of a table with a column name. A missing row is a
// fault of the program, found when it starts.
func (t Table) Row(name string) Row {
	for _, r := range t.Rows {
		if r.Text("name") == name {
			return r
		}
	}
	panic("source: " + t.file + " has no row " + name)
}

// Figure is the value of a named row as a plain number.
func (t Table) Figure(name string) float64 { return t.Row(name).Number("value") }

// Measure is the value of a named row with its unit, as a text to be read.
func (t Table) Measure(name string) string { return t.Row(name).Measure() }
