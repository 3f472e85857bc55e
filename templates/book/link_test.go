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
		err := checkLinks(map[string][]byte{c.page: []byte(c.text), "note-p.png": nil}, outside)
		if c.fault == "" && err != nil || c.fault != "" && (err == nil || !strings.Contains(err.Error(), c.fault)) {
			t.Errorf("%s with %s: %v, want %q", c.page, c.text, err, c.fault)
		}
	}
}
