package book_test

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/templates/book"
)

func planOf(t testing.TB, text []byte) *plan.Plan {
	t.Helper()
	s, problems := shop.Read("shop.toml", text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(s, recordsOf(t, text), entry.Date{})
}

// recordsOf are the records that come with a shop file: those of the example,
// which is published with them.
func recordsOf(t testing.TB, text []byte) []*record.Record {
	t.Helper()
	if !bytes.Equal(text, content.Example()) {
		return nil
	}
	records, problems := record.ReadFolder(content.ExampleRecords())
	if len(problems) > 0 || len(records) == 0 {
		t.Fatalf("%d records, %v", len(records), problems)
	}
	return records
}

func bookOf(t testing.TB, text []byte, workers int) map[string][]byte {
	t.Helper()
	return bookWith(t, text, nil, workers)
}

func bookWith(t testing.TB, text []byte, notes fs.FS, workers int) map[string][]byte {
	t.Helper()
	p := planOf(t, text)
	files, err := book.Make(p, checks.Run(p), notes, workers)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// embedded are the shops the program carries, with the least number of
// sheets each must make.
var embedded = []struct {
	name   string
	text   []byte
	sheets int
}{
	{"school", content.Example(), 50},
	{"small", content.Small(), 20},
	{"starter", content.Starter(), 20},
}

func TestBooks(t *testing.T) {
	for _, c := range embedded {
		t.Run(c.name, func(t *testing.T) {
			files := bookOf(t, c.text, 2)
			sheets := 0
			for _, path := range slices.Sorted(maps.Keys(files)) {
				if !strings.HasSuffix(path, ".html") {
					continue
				}
				sheets++
				checkPage(t, path, files[path])
			}
			if sheets < c.sheets {
				t.Errorf("%d sheets, want at least %d", sheets, c.sheets)
			}
		})
	}
}

var (
	elsewhere = regexp.MustCompile(`(?i)(https?:)?//[a-z0-9]`)
	claims    = regexp.MustCompile(`(?i)\b(compliant|exempt|safe)\b`)
	leftovers = regexp.MustCompile(`NaN|ZgotmplZ|%!|<nil>|\+Inf|0000-00-00|\{\{`)
)

func checkPage(t *testing.T, path string, data []byte) {
	text, headings := readText(t, path, data)
	if len(text) < 400 {
		t.Errorf("%s is a near-empty page: %d characters", path, len(text))
	}
	if headings["h1"] != 1 {
		t.Errorf("%s has %d first headings", path, headings["h1"])
	}
	for _, want := range []string{"authority having jurisdiction", "Local codes decide"} {
		if !strings.Contains(text, want) {
			t.Errorf("%s lacks %q in its title block", path, want)
		}
	}
	if m := claims.FindString(text); m != "" {
		t.Errorf("%s says %q", path, m)
	}
	if m := leftovers.Find(data); m != nil {
		t.Errorf("%s holds %q", path, m)
	}
	if m := elsewhere.Find(bytes.ReplaceAll(data, []byte("http://www.w3.org/2000/svg"), nil)); m != nil {
		t.Errorf("%s speaks to another place: %q", path, m)
	}
	if still := withoutItsScript(path, data); bytes.Contains(still, []byte(" style=")) || bytes.Contains(still, []byte("<style")) || bytes.Contains(still, []byte("<script")) {
		t.Errorf("%s has styles or scripts of its own, which its policy forbids", path)
	}
	labels := map[string]bool{}
	for _, m := range region.FindAllSubmatch(data, -1) {
		if labels[string(m[1])] {
			t.Errorf("%s has two regions %q", path, m[1])
		}
		labels[string(m[1])] = true
	}
	if len(data) > 150_000 {
		t.Errorf("%s is %d bytes", path, len(data))
	}
}

// region is a region that scrolls, with its name, which none on its page may
// share.
var region = regexp.MustCompile(`role="?region"? aria-label="([^"]*)"`)

// scripted are the sheets that have a script of their own, which is a file of
// the book.
var scripted = map[string]string{"find.html": "find.js", "upkeep.html": "upkeep.js", "commissioning.html": "fill.js", "commissioning-readings.html": "fill.js", "commissioning-controls.html": "fill.js", "traverse.html": "fill.js"}

// withoutItsScript is a page without the one script that it may load, and that
// its policy then allows.
func withoutItsScript(path string, data []byte) []byte {
	script := scripted[path]
	if script == "" || !bytes.Contains(data, []byte("; script-src 'self'; base-uri")) {
		return data
	}
	return bytes.Replace(data, []byte(`<script src="`+script+`" defer></script>`), nil, 1)
}

// void elements of HTML, which have no end tag.
var void = map[string]bool{"meta": true, "link": true, "br": true, "hr": true, "img": true, "input": true, "wbr": true}

// readText takes a page's words, and checks that every element is closed in
// turn.
func readText(t *testing.T, path string, data []byte) (text string, headings map[string]int) {
	headings = map[string]int{}
	var open []string
	var words strings.Builder
	tokens := html.NewTokenizer(bytes.NewReader(data))
	for {
		switch tokens.Next() {
		case html.ErrorToken:
			if len(open) > 0 {
				t.Errorf("%s: never closed: %v", path, open)
			}
			return strings.Join(strings.Fields(words.String()), " "), headings
		case html.TextToken:
			words.Write(tokens.Text())
			words.WriteByte(' ')
		case html.StartTagToken:
			name, _ := tokens.TagName()
			headings[string(name)]++
			if !void[string(name)] {
				open = append(open, string(name))
			}
		case html.EndTagToken:
			name, _ := tokens.TagName()
			if len(open) == 0 || open[len(open)-1] != string(name) {
				t.Errorf("%s: </%s> closes %v", path, name, open)
				return "", headings
			}
			open = open[:len(open)-1]
		}
	}
}

func sums(files map[string][]byte) string {
	var out strings.Builder
	for _, path := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&out, "%x %s\n", sha256.Sum256(files[path]), path)
	}
	return out.String()
}

// The book is the same bytes built twice, with one and with two workers.
func TestSameBytes(t *testing.T) {
	for _, c := range embedded {
		first := sums(bookOf(t, c.text, 1))
		for _, workers := range []int{1, 2, 7} {
			if again := sums(bookOf(t, c.text, workers)); again != first {
				t.Errorf("%s with %d workers differs", c.name, workers)
			}
		}
	}
}

func TestManifest(t *testing.T) {
	files := bookOf(t, content.Small(), 2)
	lines := strings.Split(strings.TrimSpace(string(files[book.Manifest])), "\n")
	if len(lines) != len(files)-1 {
		t.Errorf("%d lines for %d files", len(lines), len(files))
	}
	var paths []string
	for _, line := range lines {
		sum, path, _ := strings.Cut(line, "  ")
		if want := fmt.Sprintf("%x", sha256.Sum256(files[path])); sum != want || files[path] == nil {
			t.Errorf("%s: sum %s, want %s", path, sum, want)
		}
		paths = append(paths, path)
	}
	if !slices.IsSorted(paths) {
		t.Error("the manifest is not in order")
	}
}

func BenchmarkPublish(b *testing.B) {
	text := content.Example()
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprintf("%d workers", workers), func(b *testing.B) {
			for b.Loop() {
				bookOf(b, text, workers)
			}
		})
	}
}
