package content

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func anywhere(link string) (string, bool) { return link + ".html", link != "nowhere" }

func TestHTML(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"a link goes through the resolver", "See [the sources](sources).", `<p>See <a href="sources.html">the sources</a>.</p>`},
		{"a table", "| a | b |\n|---|--:|\n| 1 | 2 |\n", "<td>2</td>"},
		{"a definition", "gate\n: a shutter\n", "<dd>a shutter</dd>"},
		{"feet and inches stay as they are", "A pipe of 6' 4\" and --json.", `6' 4&quot; and --json`},
	} {
		got, err := HTML([]byte(c.in), anywhere)
		if err != nil || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, %v; want %q", c.name, got, err, c.want)
		}
	}
}

func TestHTMLIsHarmless(t *testing.T) {
	for _, in := range []string{"<script>alert(1)</script>", "a <img src=x onerror=alert(1)> b", "[x](javascript:alert(1))", "[x](JaVaScRiPt&colon;alert(1))", "![x](javascript:alert(1))", "<javascript:alert(1)>"} {
		got, err := HTML([]byte(in), func(link string) (string, bool) { return link, true })
		if err != nil {
			t.Errorf("%q: %v", in, err)
		}
		for _, bad := range []string{"<script", "<img src=x", `href="javascript`, `href="JaVaScRiPt`, `src="javascript`} {
			if strings.Contains(got, bad) {
				t.Errorf("%q became %q", in, got)
			}
		}
	}
}

func TestBrokenLinksNameTheirLine(t *testing.T) {
	_, err := HTML([]byte("One.\n\nTwo [x](nowhere).\n\n- three [y](somewhere) [z](nowhere)\n"), anywhere)
	if err == nil || !strings.Contains(err.Error(), `"nowhere" (line 3)`) || !strings.Contains(err.Error(), `(line 5)`) || strings.Contains(err.Error(), "somewhere") {
		t.Errorf("broken links: %v", err)
	}
}

// The example shops are what the rules ask for: small in at most forty lines.
func TestExamples(t *testing.T) {
	if n := bytes.Count(Small(), []byte("\n")); n > 40 {
		t.Errorf("the small example has %d lines, want at most 40", n)
	}
	for name, text := range map[string][]byte{"example": Example(), "small": Small(), "starter": Starter()} {
		if len(text) == 0 || !bytes.Contains(text, []byte("[shop]")) {
			t.Errorf("%s is no shop file", name)
		}
	}
	if CheckProse("no-such-check") != nil {
		t.Error("prose of a check that is not there")
	}
}

// Every text that lies here is embedded, and the other way round.
func TestEmbeddedByList(t *testing.T) {
	count := 0
	err := fs.WalkDir(files, ".", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			count++
		}
		return err
	})
	if err != nil || count < 11 {
		t.Errorf("%d files, %v", count, err)
	}
}

// The records of the example are those that lie in its folder, named as
// records are.
func TestExampleRecords(t *testing.T) {
	embedded, err := fs.ReadDir(ExampleRecords(), ".")
	if err != nil || len(embedded) < 4 {
		t.Fatalf("%d records, %v", len(embedded), err)
	}
	lying, err := os.ReadDir(filepath.Join("example", "school-records"))
	if err != nil {
		t.Fatal(err)
	}
	names := func(list []fs.DirEntry) (names []string) {
		for _, e := range list {
			names = append(names, e.Name())
		}
		return names
	}
	if has, want := names(embedded), names(lying); !slices.Equal(has, want) {
		t.Errorf("embedded are %q, in the folder lie %q", has, want)
	}
}
