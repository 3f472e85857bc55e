package shop

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"dustbook/plan/entry"
)

var update = flag.Bool("update", false, "write content/fields.md anew")

// fieldsPage is where the fields are described for people who read the
// project's own files.
const fieldsPage = "../../content/fields.md"

const fieldsIntro = `# The shop file, field by field

A shop is one TOML file, ` + "`shop.toml`" + `. This page lists every table and every field it may hold. It is written from the
same rows as the reader reads by, ` + "`plan/shop/*.csv`" + `; the book of any shop has the same list on its sheet of fields.

- A quantity is text with its unit: ` + "`\"4 in\"`, `\"820 m3/h\"`" + `. Inches and millimetres mix freely. A bare number is refused.
- Points are plain numbers, in feet or metres as ` + "`units`" + ` in ` + "`[shop]`" + ` says. A route runs from the hood end to the collector end.
- Things refer to each other by name. A name or a word that means nothing is an error, with the nearest ones.
- What may be left out is either taken from the default named here, and listed as an assumption in the book where it has
  a source or a mark, or shown as *not given*. A missing figure never counts as met.
`

// TestFieldsPage: content/fields.md is what the rows say.
//
//	go test ./plan/shop -run TestFieldsPage -update
func TestFieldsPage(t *testing.T) {
	want := fieldsIntro
	for _, table := range Tables() {
		want += describeTable(table)
	}
	want += "\n## Words\n"
	for _, group := range WordGroups() {
		want += "\n### " + upper(group) + "\n\n"
		for _, w := range Words(group) {
			want += "- `" + w.Word + "`: " + w.Means + "\n"
		}
	}
	if *update {
		if err := os.WriteFile(fieldsPage, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got := file(t, fieldsPage); got != want {
		t.Errorf("content/fields.md is not what the rows say; run go test ./plan/shop -run TestFieldsPage -update\n%s", firstDifference(got, want))
	}
}

// describeTable writes one table of the contract.
func describeTable(table Table) string {
	text := fmt.Sprintf("\n## %s\n\n%s %s\n\n| field | how it is written | needed, or left out | from, to | what it means |\n|---|---|---|---|---|\n", upper(table.Name), table.Means, table.Place())
	for _, row := range table.Rows() {
		text += fmt.Sprintf("| `%s` | %s | %s | %s | %s |\n", row.Field, row.Written()+aside(row), leftOut(row), strings.TrimPrefix(row.Bounds(), "from "), row.Means)
	}
	return text
}

// aside is what follows the way a field is written: its words or examples.
func aside(row *Row) string {
	if row.TakesWords() {
		if _, long := longGroups[row.Of]; long {
			return ": see *" + row.Of + "* below"
		}
		return ": `" + strings.Join(wordNames(row.Of), "`, `") + "`"
	}
	if row.Examples() == nil {
		return ""
	}
	return ": `" + strings.Join(row.Examples(), "` or `") + "`"
}

// leftOut says whether the field may be left out and what stands in then.
func leftOut(row *Row) string {
	switch {
	case row.Needed() != "":
		return row.Needed()
	case row.Default == "":
		return ""
	case row.Basis.Mark == 0:
		return "`" + row.Default + "`"
	}
	return "`" + row.Default + "` (" + row.Basis.String() + ")"
}

func upper(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

// TestTablesFit: the list of tables and the rows of fields name the same
// tables, and an inside table stands after one that holds it.
func TestTablesFit(t *testing.T) {
	seen := map[string]bool{}
	for _, table := range Tables() {
		if seen[table.Name] || len(table.Rows()) == 0 || !strings.HasSuffix(table.Means, ".") || table.Place() == "" {
			t.Errorf("%+v", table)
		}
		seen[table.Name] = true
		holders := table.Holders()
		if (table.Stands == Inside) != (len(holders) > 0) {
			t.Errorf("%s stands %s and is held by %d fields", table.Name, table.Stands, len(holders))
		}
		if len(holders) > 0 && !seen[holders[0].Table] {
			t.Errorf("%s stands before %s, which holds it", table.Name, holders[0].Table)
		}
		switch table.Stands {
		case Once, Many, Inside:
		default:
			t.Errorf("%s stands %q", table.Name, table.Stands)
		}
	}
	for _, row := range Rows() {
		if !seen[row.Table] {
			t.Errorf("no table %q for %s", row.Table, row.Field)
		}
	}
}

// TestForms: every field is written in a way that forms.csv knows, and every
// way is used.
func TestForms(t *testing.T) {
	used := map[[2]string]bool{}
	for i := range rows {
		row := &rows[i]
		key := [2]string{row.Kind, row.Of}
		if _, ok := forms[key]; !ok {
			key[1] = ""
		}
		if _, ok := forms[key]; !ok {
			t.Errorf("%s.%s: no way to write the kind %q", row.Table, row.Field, row.Kind)
		}
		used[key] = true
		if strings.Contains(row.Written(), "%") || row.Written() == "" {
			t.Errorf("%s.%s is written as %q", row.Table, row.Field, row.Written())
		}
	}
	for key := range forms {
		if !used[key] {
			t.Errorf("no field is written as %q of %q", key[0], key[1])
		}
	}
}

// TestExamplesAreRead: each example that the page of fields shows, put into a
// table of its own, is no problem where it stands. One that is, is found.
func TestExamplesAreRead(t *testing.T) {
	count := 0
	for i := range rows {
		row := &rows[i]
		if row.Holds() && row.Kind != "bin" || strings.HasPrefix(row.Kind, "name") && row.Kind != "name" {
			continue // shown with what it holds, or by names of the example's things
		}
		for _, example := range row.Examples() {
			count++
			if p := problemAt(row, example); p != "" {
				t.Errorf("%s.%s = %s: %s", row.Table, row.Field, example, p)
			}
		}
	}
	if count < 150 {
		t.Errorf("%d examples", count)
	}
	for field, example := range map[[2]string]string{{"trigger", "threshold"}: "2.5", {"gate", "leak"}: `"some"`, {"duct", "size"}: `"chosen"`, {"chain", "cable"}: `"18 ga"`} {
		if problemAt(rowOf[field], example) == "" {
			t.Errorf("%v = %s is read", field, example)
		}
	}
}

// problemAt reads a file that holds one field, and returns the problem at
// its value.
func problemAt(row *Row, value string) string {
	table, path, place := row.Table, row.Field+" = ", ""
	for table != "" {
		holders := Table{Name: table, Stands: Inside}.Holders()
		if len(holders) == 0 {
			break
		}
		place += " }"
		path = holders[0].Field + " = { " + path
		table = holders[0].Table
	}
	header := "[[" + table + "]]"
	if onceTables[table] {
		header = "[" + table + "]"
	}
	text := header + "\n" + path + value + place + "\n"
	_, problems := Read("shop.toml", []byte(text))
	for _, p := range problems {
		if p.Line == 2 && p.Column > strings.Index(path, row.Field) && !strings.Contains(p.Read, " without ") {
			return p.Error()
		}
	}
	if root, bad := entry.Read("shop.toml", []byte(text)); root == nil {
		return bad.Error()
	}
	return ""
}
