package book

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"dustbook/templates"
)

// Cells that span columns and rows, heads for a narrow screen, marks that are
// only seen, names that would run.
func TestRowsOfATable(t *testing.T) {
	for text, want := range map[string][][]string{
		`<tr><th>a<small>cfm</small></th><th>b</th></tr><tr><td>1<br>2</td><td><small class="of">b</small>3</td></tr>`:                                 {{"a cfm", "b"}, {"1 2", "3"}},
		`<tr><th colspan="2">a</th><th>b</th></tr><tr><td rowspan="2">1</td><td>2</td><td>3</td></tr><tr><td>4</td><td>5</td></tr><tr><td>6</td></tr>`: {{"a", "", "b"}, {"1", "2", "3"}, {"1", "4", "5"}, {"6", "", ""}},
		`<tr><td>x<sup aria-hidden="true">A</sup><span> (assumed)</span></td></tr>`:                                                                    {{"x (assumed)"}},
		`<tr><td><ul><li>a</li><li>b</li></ul></td></tr>`:                                                                                              {{"a b"}},
	} {
		root, err := html.Parse(strings.NewReader("<table>" + text + "</table>"))
		if err != nil {
			t.Fatal(err)
		}
		for n := range root.Descendants() {
			if n.DataAtom == atom.Table {
				if got := rowsOf(n); !slices.EqualFunc(got, want, slices.Equal) {
					t.Errorf("%s: %q, want %q", text, got, want)
				}
			}
		}
	}
	page := []byte(`<p>a</p><table><tr><th>n</th></tr><tr><td>=1+1</td></tr></table><nav class="turn"></nav>`)
	paths, files, err := tablesOf(&templates.Sheet{Path: "x.html"}, page)
	if err != nil || len(paths) != 0 {
		t.Errorf("a table whose first cells alone say something: %q, %v", paths, err)
	}
	page = bytes.Replace(page, []byte("<td>=1+1</td>"), []byte("<td>a</td><td>=1+1</td>"), 1)
	if paths, files, err = tablesOf(&templates.Sheet{Path: "x.html"}, page); err != nil || !slices.Equal(paths, []string{"x.csv"}) || string(files["x.csv"]) != "n,\r\na,'=1+1\r\n" {
		t.Errorf("%q, %q, %v", paths, files, err)
	}
	if got := withTables(page, []byte("LINKS")); !bytes.Contains(got, []byte(`</table>LINKS<nav class="turn">`)) {
		t.Errorf("%s", got)
	}
}
