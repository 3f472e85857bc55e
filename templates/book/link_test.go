package book

import (
	"strings"
	"testing"
)

// A sheet links outside the book only where it may, and shows nothing from
// outside wherever it may link to.
func TestLinksOutside(t *testing.T) {
	const address = "https://example.org/p.png"
	outside := map[string][]string{"a.html": {address}}
	for _, c := range []struct{ page, text, fault string }{
		{"a.html", `<a href="` + address + `">a</a>`, ""},
		{"b.html", `<a href="` + address + `">a</a>`, "leaves the book"},
		{"a.html", `<a href="https://example.org/other">a</a>`, "leaves the book"},
		{"a.html", `<img src="` + address + `" alt="">`, "leaves the book"},
		{"a.html", `<link rel="stylesheet" href="` + address + `">`, "leaves the book"},
		{"a.html", `<img src="note-p.png" alt="">`, ""},
		{"a.html", `<img src="note-q.png" alt="">`, "leads to no file"},
	} {
		err := checkLinks(map[string][]byte{c.page: []byte(c.text), "note-p.png": nil}, map[string]page{c.page: readPage([]byte(c.text))}, outside)
		if c.fault == "" && err != nil || c.fault != "" && (err == nil || !strings.Contains(err.Error(), c.fault)) {
			t.Errorf("%s with %s: %v, want %q", c.page, c.text, err, c.fault)
		}
	}
}

// A link that many sheets share is reported on each, and one within a sheet is
// looked up on its own sheet.
func TestSharedLinks(t *testing.T) {
	files, pages := map[string][]byte{}, map[string]page{}
	for path, text := range map[string]string{
		"a.html": `<p id="here"><a href="gone.html">a</a><a href="#here">b</a><a href="b.html#there">c</a>`,
		"b.html": `<p id="there"><a href="gone.html">a</a><a href="#here">b</a><a href="a.html#here">c</a>`,
	} {
		files[path], pages[path] = []byte(text), readPage([]byte(text))
	}
	err := checkLinks(files, pages, nil)
	const want = "a.html: the link \"gone.html\" leads to no file\nb.html: the link \"gone.html\" leads to no file\nb.html: the link \"#here\" leads to no place on its sheet"
	if err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}
