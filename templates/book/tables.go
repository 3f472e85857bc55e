package book

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"dustbook/plan/export"
)

// tablesOf are the tables of a page as one file for a spreadsheet, in the order
// in which they stand: each under its name, with an empty line between, and as
// many fields in every line. A table without anything in its cells, which is
// there to be written on, and that of the title block are left out; nil where
// nothing is left.
func tablesOf(page []byte) ([]byte, error) {
	if from, to := bytes.Index(page, []byte("<main")), bytes.LastIndex(page, []byte("</main>")); from >= 0 && from < to {
		page = page[from:to] // the rest is the frame of every sheet
	}
	if !bytes.Contains(page, []byte("<table")) {
		return nil, nil
	}
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		return nil, err
	}
	var lines [][]string
	wide := 1
	for n := range root.Descendants() {
		if n.DataAtom != atom.Table || inTitleBlock(n) {
			continue
		}
		rows := rowsOf(n)
		if len(rows) < 2 || empty(rows[1:]) {
			continue
		}
		if len(lines) > 0 {
			lines = append(lines, nil)
		}
		lines = append(append(lines, []string{nameOf(n)}), rows...)
		wide = max(wide, len(rows[0]))
	}
	if len(lines) == 0 {
		return nil, nil
	}
	for i := range lines {
		lines[i] = append(lines[i], make([]string, wide-len(lines[i]))...)
	}
	return export.Table(lines), nil
}

// inTitleBlock reports whether a table stands in the title block of its sheet,
// which says the same on every sheet.
func inTitleBlock(n *html.Node) bool {
	for ; n != nil; n = n.Parent {
		if n.DataAtom == atom.Footer {
			return true
		}
	}
	return false
}

// nameOf is what a table is called: by its caption, by the region that scrolls
// it, or by the last heading before it.
func nameOf(table *html.Node) string {
	for n := range table.Descendants() {
		if n.DataAtom == atom.Caption {
			return textOf(n)
		}
	}
	if name := attribute(table.Parent, "aria-label"); name != "" {
		return name
	}
	for at := table; at != nil; at = at.Parent {
		for n := at.PrevSibling; n != nil; n = n.PrevSibling {
			if n.DataAtom == atom.H2 || n.DataAtom == atom.H3 {
				return textOf(n)
			}
		}
	}
	return ""
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

// withTables is a page with the link to its tables as a file, at the end of what
// it says.
func withTables(page []byte, link []byte) []byte {
	at := bytes.LastIndex(page, []byte("</main>"))
	if at < 0 {
		return page
	}
	return slices.Concat(page[:at], link, page[at:])
}
