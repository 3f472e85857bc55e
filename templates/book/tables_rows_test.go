package book

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
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
}

// All tables of a page stand in one file: each under its name, a line between,
// as many fields everywhere; a name that would run does not.
func TestTablesOfAPage(t *testing.T) {
	table := func(rows string) string { return "<table>" + rows + "</table>" }
	one := table(`<tr><th>n</th><th>m</th></tr><tr><td>a</td><td>=1+1</td></tr>`)
	two := table(`<tr><th>x</th><th>y</th><th>z</th></tr><tr><td>b</td><td>2</td><td>-3</td></tr>`)
	blank := table(`<tr><th>date</th><th>seen</th></tr><tr><td>row</td><td></td></tr>`)
	for text, want := range map[string]string{
		`<p>none</p>`: "",
		`<h2>A</h2><footer class="block">` + one + `</footer>`: "",
		blank:                          "",
		`<h2>First</h2><p>p</p>` + one: "First,\r\nn,m\r\na,'=1+1\r\n",
		`<h2>H</h2><div aria-label="Region">` + one + `</div>` + blank:                        "Region,\r\nn,m\r\na,'=1+1\r\n",
		`<h2>A</h2>` + one + `<section><h3>B</h3>` + two + `</section>`:                       "A,,\r\nn,m,\r\na,'=1+1,\r\n,,\r\nB,,\r\nx,y,z\r\nb,2,-3\r\n",
		`<table><caption>C</caption><tr><th>n</th></tr><tr><td>a</td><td>1</td></tr></table>`: "C,\r\nn,\r\na,1\r\n",
	} {
		got, err := tablesOf([]byte(text))
		if err != nil || string(got) != want {
			t.Errorf("%s: %q, %v; want %q", text, got, err, want)
		}
	}
	if got := withTables([]byte(`<main><p>a</p></main><nav></nav>`), []byte("LINK")); string(got) != `<main><p>a</p>LINK</main><nav></nav>` {
		t.Errorf("%s", got)
	}
}
