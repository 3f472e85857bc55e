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
	"dustbook/templates"
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

// The schedule as a file gives back the ducts of the plan, and the sheet of a use
// its flows.
func TestTablesReadBack(t *testing.T) {
	p := planOf(t, content.Example())
	files := bookOf(t, content.Example(), 2)
	rows := rowsIn(t, files, "ducts-1.csv")
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
		ports := rowsIn(t, files, "use-planer-1.csv")
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

// Every table of the sheets that people take into a spreadsheet lies beside
// them, is linked on its sheet, and has as many fields in each line; no field
// can run.
func TestEveryTableIsAFile(t *testing.T) {
	files := bookOf(t, content.Example(), 2)
	seen := 0
	for path, data := range files {
		if !strings.HasSuffix(path, ".html") || !(&templates.Sheet{Path: path}).Spread() {
			continue
		}
		root, err := html.Parse(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		tables, links := 0, 0
		for n := range root.Descendants() {
			if n.DataAtom == atom.Table && saysSomething(n) {
				tables++
			}
			if to := hrefOf(n); strings.HasSuffix(to, ".csv") && to != "cause-and-effect.csv" {
				links++
				for _, row := range rowsIn(t, files, to) {
					for _, field := range row {
						if field != "" && strings.ContainsRune("=@\t\r", rune(field[0])) {
							t.Errorf("%s: the field %q can run", to, field)
						}
					}
				}
			}
		}
		if tables != links {
			t.Errorf("%s: %d tables, %d files", path, tables, links)
		}
		seen += tables
	}
	if seen < 100 {
		t.Errorf("only %d tables were seen", seen)
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

func hrefOf(n *html.Node) string {
	for _, a := range n.Attr {
		if n.DataAtom == atom.A && a.Key == "href" {
			return a.Val
		}
	}
	return ""
}
