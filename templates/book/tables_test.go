package book_test

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"dustbook/content"
	"dustbook/plan/unit"
)

// rowsIn are the rows of a file of the book, read by the standard library.
func rowsIn(t *testing.T, files map[string][]byte, path string) [][]string {
	t.Helper()
	if files[path] == nil {
		t.Fatalf("no file %s", path)
	}
	if bytes.Count(files[path], []byte("\n")) != bytes.Count(files[path], []byte("\r\n")) {
		t.Errorf("%s: a line does not end with CR and LF", path)
	}
	rows, err := csv.NewReader(bytes.NewReader(files[path])).ReadAll() // which wants as many fields in each line
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return rows
}

// table is one table of a file: the lines under its name, up to an empty one.
func table(t *testing.T, files map[string][]byte, path, name string) [][]string {
	t.Helper()
	rows := rowsIn(t, files, path)
	for i, row := range rows {
		if row[0] != name {
			continue
		}
		end := i + 1
		for end < len(rows) && strings.Join(rows[end], "") != "" {
			end++
		}
		return rows[i+1 : end]
	}
	t.Fatalf("%s has no table %q", path, name)
	return nil
}

// The schedule as a file gives back the ducts of the plan, and the sheet of a use
// its flows.
func TestTablesReadBack(t *testing.T) {
	p := planOf(t, content.Example())
	files := bookOf(t, content.Example(), 2)
	rows := table(t, files, "ducts.csv", "Ducts")
	if len(rows)-1 != len(p.Shop.Ducts) {
		t.Fatalf("%d rows for %d ducts", len(rows)-1, len(p.Shop.Ducts))
	}
	for i, d := range p.Shop.Ducts {
		row := rows[i+1]
		if row[0] != d.Name || row[3] != unit.Size.Print(p.Shop.Units, d.Size) || !strings.HasPrefix(row[5], unit.Run.Print(p.Shop.Units, d.Length)) {
			t.Errorf("%s: %q", d.Name, row)
		}
	}
	compared := 0
	for _, u := range p.Air.Uses {
		if u.Name != "Planer" {
			continue
		}
		ports := table(t, files, "use-planer.csv", "Ports of Cyclone")
		for _, r := range u.Results {
			if r.Filter != "clean" {
				continue
			}
			for i, port := range r.Ports {
				got, _, _ := strings.Cut(ports[i+1][2], " ")
				flow, err := strconv.ParseFloat(got, 64)
				if want := unit.Air.Figure(p.Shop.Units, port.Flow); err != nil || got != want || flow <= 0 {
					t.Errorf("%s: %q, want %s", port.Port.Full(), got, want)
				}
				compared++
			}
		}
	}
	if compared == 0 {
		t.Error("no flow was compared")
	}
}

// Every table of every sheet but cards and signs stands in the file beside it,
// under a name; the sheet links to the file, and no field of it can run.
func TestEveryTableIsInAFile(t *testing.T) {
	files := bookOf(t, content.Example(), 2)
	seen, linked := 0, 0
	for path, data := range files {
		if !strings.HasSuffix(path, ".html") {
			continue
		}
		root, err := html.Parse(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		tables, to := 0, ""
		for n := range root.Descendants() {
			if n.DataAtom == atom.Table && n.Parent.DataAtom != atom.Footer && rowsOf(n) > 1 && saysSomething(n) {
				tables++
			}
			if file := strings.TrimSuffix(path, ".html") + ".csv"; hrefOf(n) == file {
				to = file
			}
		}
		hung := strings.Contains(string(data), `class="sheet kind-card`) || strings.Contains(string(data), "kind-cards") || strings.Contains(string(data), " card ")
		switch {
		case to == "" && tables > 0 && !hung:
			t.Errorf("%s has %d tables and no file", path, tables)
		case to == "":
			continue
		}
		linked++
		named := 0
		before := ""
		for _, row := range rowsIn(t, files, to) {
			if whole := strings.Join(row, ""); before == "" && whole == row[0] && row[0] != "" {
				named++
			}
			before = strings.Join(row, "")
			for _, field := range row {
				if field != "" && strings.ContainsRune("=@\t\r", rune(field[0])) {
					t.Errorf("%s: the field %q can run", to, field)
				}
			}
		}
		if named != tables {
			t.Errorf("%s: %d tables on the sheet, %d in the file", path, tables, named)
		}
		seen += tables
	}
	if seen < 300 || linked < 80 {
		t.Errorf("only %d tables of %d sheets were seen", seen, linked)
	}
}

// saysSomething reports whether a cell of a table that does not lead its row
// holds a text.
func saysSomething(table *html.Node) bool {
	for cell := range table.Descendants() {
		if cell.DataAtom != atom.Td || cell.PrevSibling == nil {
			continue
		}
		for n := range cell.Descendants() {
			if n.Type == html.TextNode && strings.TrimSpace(n.Data) != "" {
				return true
			}
		}
	}
	return false
}

// rowsOf counts the rows of a table.
func rowsOf(table *html.Node) int {
	rows := 0
	for n := range table.Descendants() {
		if n.DataAtom == atom.Tr {
			rows++
		}
	}
	return rows
}

func hrefOf(n *html.Node) string {
	for _, a := range n.Attr {
		if n.DataAtom == atom.A && a.Key == "href" {
			return a.Val
		}
	}
	return ""
}
