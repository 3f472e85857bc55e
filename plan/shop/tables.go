package shop

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"strings"
)

// Table is what the contract says of one table of the shop file.
type Table struct {
	Name   string
	Stands string // Once, Many or Inside
	Means  string
}

// How often a table may stand.
const (
	Once   = "once"   // one table [name]
	Many   = "many"   // any number of tables [[name]]
	Inside = "inside" // within a field of another table
)

//go:embed tables.csv
var tablesData []byte

var tableList = loadTables()

// topTables are the tables a shop file may hold, in the order of the
// contract; onceTables are those that may stand once.
var topTables, onceTables = standing()

func loadTables() []Table {
	records, err := csv.NewReader(bytes.NewReader(tablesData)).ReadAll()
	if err != nil {
		panic("shop: tables.csv: " + err.Error())
	}
	var list []Table
	for _, r := range records[1:] {
		list = append(list, Table{r[0], r[1], r[2]})
	}
	return list
}

func standing() (top []string, once map[string]bool) {
	once = map[string]bool{}
	for _, t := range tableList {
		if t.Stands != Inside {
			top = append(top, t.Name)
		}
		if t.Stands == Once {
			once[t.Name] = true
		}
	}
	return top, once
}

// Tables lists every table of the contract, each inside table after the one
// that holds it.
func Tables() []Table { return tableList }

// Place says where the table stands in the file, as it is written there.
func (t Table) Place() string {
	if t.Stands == Once {
		return phrase("once", t.Name)
	}
	if t.Stands == Many {
		return phrase("many", t.Name)
	}
	var places []string
	for _, r := range t.Holders() {
		name := "inside"
		if r.Kind == "tables" {
			name = "inside or list"
		}
		places = append(places, phrase(name, r.Table, r.Field))
	}
	return strings.ToUpper(places[0][:1]) + strings.Join(places, "; ")[1:] + "."
}

// Rows are the table's fields, in the order of the contract.
func (t Table) Rows() []*Row { return rowsOf[t.Name] }

// Holders are the fields that hold an inside table.
func (t Table) Holders() []*Row {
	var list []*Row
	for i := range rows {
		if r := &rows[i]; r.Holds() && r.Of == t.Name {
			list = append(list, r)
		}
	}
	return list
}

// Holds reports whether the field holds tables of another kind.
func (row *Row) Holds() bool { return row.Kind == "table" || row.Kind == "tables" || row.Kind == "bin" }
