package book

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"dustbook/plan/export"
	"dustbook/templates"
)

// tablesOf are the tables of a sheet as files for a spreadsheet, by path, in the
// order in which they stand. A table without anything in its cells, which is
// there to be written on, is none.
func tablesOf(s *templates.Sheet, page []byte) (paths []string, files map[string][]byte, err error) {
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		return nil, nil, err
	}
	var tables [][][]string
	for n := range root.Descendants() {
		if n.DataAtom == atom.Table {
			if rows := rowsOf(n); len(rows) > 1 && !empty(rows[1:]) {
				tables = append(tables, rows)
			}
		}
	}
	files = map[string][]byte{}
	base := strings.TrimSuffix(s.Path, ".html")
	for i, rows := range tables {
		path := base + ".csv"
		if len(tables) > 1 {
			path = fmt.Sprintf("%s-%d.csv", base, i+1)
		}
		paths = append(paths, path)
		files[path] = export.Table(rows)
	}
	return paths, files, nil
}

// rowsOf are the rows of a table, each with a cell for every column: one that
// spans several stands in the first of them, one that spans rows in each.
func rowsOf(table *html.Node) [][]string {
	var rows [][]string
	below := map[int]span{} // by column, what reaches down from a row above
	for tr := range table.Descendants() {
		if tr.DataAtom != atom.Tr {
			continue
		}
		var row []string
		down := func() {
			for below[len(row)].rows > 0 {
				s := below[len(row)]
				below[len(row)] = span{s.rows - 1, s.text}
				row = append(row, s.text)
			}
		}
		for cell := range tr.ChildNodes() {
			if cell.DataAtom != atom.Td && cell.DataAtom != atom.Th {
				continue
			}
			down()
			text := textOf(cell)
			for i := range number(cell, "colspan") {
				if more := number(cell, "rowspan") - 1; more > 0 {
					below[len(row)] = span{more, text}
				}
				if i > 0 {
					text = ""
				}
				row = append(row, text)
			}
		}
		down()
		rows = append(rows, row)
	}
	wide := 0
	for _, row := range rows {
		wide = max(wide, len(row))
	}
	for i := range rows {
		rows[i] = append(rows[i], make([]string, wide-len(rows[i]))...)
	}
	return rows
}

// span is a cell that reaches down.
type span struct {
	rows int
	text string
}

// number is an attribute that counts; one where it is left out.
func number(n *html.Node, name string) int {
	count, err := strconv.Atoi(attribute(n, name))
	if err != nil {
		return 1
	}
	return max(count, 1)
}

// textOf is the text of a cell on one line, without the heads that stand in it
// for a narrow screen.
func textOf(cell *html.Node) string {
	var text strings.Builder
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		switch {
		case n.Type == html.TextNode:
			text.WriteString(n.Data)
		case hasClass(n, "of") || attribute(n, "aria-hidden") == "true":
			return
		case slices.Contains([]atom.Atom{atom.Br, atom.Small, atom.Li, atom.P, atom.Div}, n.DataAtom):
			text.WriteString(" ")
		}
		for c := range n.ChildNodes() {
			walk(c)
		}
		if n.DataAtom == atom.Li || n.DataAtom == atom.P || n.DataAtom == atom.Div {
			text.WriteString(" ")
		}
	}
	walk(cell)
	return strings.Join(strings.Fields(text.String()), " ")
}

func hasClass(n *html.Node, class string) bool {
	return slices.Contains(strings.Fields(attribute(n, "class")), class)
}

// attribute is the value of an attribute; empty where there is none.
func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// empty reports whether no cell of some rows but the first of each says
// anything.
func empty(rows [][]string) bool {
	for _, row := range rows {
		for i, text := range row {
			if i > 0 && text != "" {
				return false
			}
		}
	}
	return true
}

// withTables is a page with links to its tables as files, before it turns to its
// neighbours.
func withTables(page []byte, links []byte) []byte {
	at := bytes.Index(page, []byte(`<nav class="turn"`))
	if at < 0 {
		return page
	}
	return slices.Concat(page[:at], links, page[at:])
}
