package book_test

import (
	"bytes"
	"html/template"
	"io/fs"
	"maps"
	"os"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	minhtml "github.com/tdewolff/minify/v2/html"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"golang.org/x/net/html"

	"dustbook/checks"
	"dustbook/templates/book"
)

// piece is a stretch of markup of a page, and the text that follows it.
type piece struct {
	Markup template.HTML
	Text   string
}

// layout is a plain layout: it writes a page from its pieces.
var layout = template.Must(template.New("").Parse(`{{range .}}{{.Markup}}{{.Text}}{{end}}`))

// reference is the work that general libraries alone need for the same pages:
// goldmark for the prose, html/template for the pages, minify for their bytes.
type reference struct {
	prose    [][]byte
	pages    [][]piece
	markdown goldmark.Markdown
	squeezer *minify.M
}

// newReference takes the pages of a finished book apart, and the Markdown of
// the checks' prose.
func newReference(b *testing.B, files map[string][]byte) *reference {
	b.Helper()
	r := &reference{
		markdown: goldmark.New(goldmark.WithExtensions(extension.Table, extension.DefinitionList)),
		squeezer: minify.New(),
	}
	r.squeezer.Add("text/html", &minhtml.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true})
	r.squeezer.AddFunc("text/css", css.Minify)
	prose, err := fs.Glob(os.DirFS("../../content/checks"), "*.md")
	if err != nil || len(prose) == 0 {
		b.Fatalf("%d texts of checks: %v", len(prose), err)
	}
	for _, name := range prose {
		text, err := os.ReadFile("../../content/checks/" + name)
		if err != nil {
			b.Fatal(err)
		}
		r.prose = append(r.prose, text)
	}
	for _, path := range slices.Sorted(maps.Keys(files)) {
		if strings.HasSuffix(path, ".html") {
			r.pages = append(r.pages, apart(files[path]))
		}
	}
	return r
}

// apart takes a page apart into markup and text.
func apart(page []byte) []piece {
	var pieces []piece
	var markup strings.Builder
	tokens := html.NewTokenizer(bytes.NewReader(page))
	for kind := tokens.Next(); kind != html.ErrorToken; kind = tokens.Next() {
		if kind != html.TextToken {
			markup.Write(tokens.Raw())
			continue
		}
		pieces = append(pieces, piece{template.HTML(markup.String()), string(tokens.Text())})
		markup.Reset()
	}
	return append(pieces, piece{Markup: template.HTML(markup.String())})
}

// run makes every page with one worker, to memory, and counts their bytes.
func (r *reference) run(b *testing.B) int {
	for _, text := range r.prose {
		var out bytes.Buffer
		if err := r.markdown.Convert(text, &out); err != nil {
			b.Fatal(err)
		}
	}
	size := 0
	for _, pieces := range r.pages {
		var page, small bytes.Buffer
		if err := layout.Execute(&page, pieces); err != nil {
			b.Fatal(err)
		}
		if err := r.squeezer.Minify("text/html", &small, &page); err != nil {
			b.Fatal(err)
		}
		size += small.Len()
	}
	return size
}

// BenchmarkBook makes the book of a shop with twenty-four machines, with one
// worker and with two, turn about with the reference. It reports medians, and
// their ratio to the reference. Ask for ten rounds or more with -benchtime 10x,
// on a machine that does nothing else.
func BenchmarkBook(b *testing.B) {
	text := worksText(b)
	p := planOf(b, text)
	findings := checks.Run(p)
	size := 0
	build := func(workers int) func() {
		return func() {
			files, err := book.Make(p, findings, nil, workers)
			if err != nil {
				b.Fatal(err)
			}
			size = bookSize(files)
		}
	}
	files := bookOf(b, text, 2)
	r := newReference(b, files)
	pages := 0
	for path, data := range files {
		if strings.HasSuffix(path, ".html") {
			pages += len(data)
		}
	}
	// The reference must do the work on the same bytes, give or take how a
	// sign is escaped.
	if got := r.run(b); got < pages*95/100 || got > pages*105/100 {
		b.Fatalf("the reference makes %d bytes of %d", got, pages)
	}
	works := []struct {
		name string
		run  func()
		took []time.Duration
	}{{"reference", func() { r.run(b) }, nil}, {"one", build(1), nil}, {"two", build(2), nil}}
	for b.Loop() {
		for i := range works {
			start := time.Now()
			works[i].run()
			works[i].took = append(works[i].took, time.Since(start))
		}
	}
	base := median(works[0].took)
	for _, w := range works {
		b.ReportMetric(median(w.took)*1000, w.name+"-ms")
	}
	b.ReportMetric(median(works[1].took)/base, "one/reference")
	b.ReportMetric(median(works[2].took)/base, "two/reference")
	b.ReportMetric(mallocs(works[1].run)/mallocs(works[0].run), "mallocs/reference")
	b.ReportMetric(float64(size)/1e6, "MB")
	b.ReportMetric(float64(len(r.pages)), "sheets")
}

// median is the middle of some durations, in seconds.
func median(took []time.Duration) float64 {
	sorted := slices.Sorted(slices.Values(took))
	return sorted[len(sorted)/2].Seconds()
}

// mallocs counts the allocations of a run.
func mallocs(run func()) float64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	run()
	runtime.ReadMemStats(&after)
	return float64(after.Mallocs - before.Mallocs)
}
