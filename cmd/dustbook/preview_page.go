package main

import (
	"bytes"
	"errors"
	"html"
	"regexp"
	"strconv"
	"strings"

	"dustbook/content"
	"dustbook/plan/entry"
)

// policy is the rule of a page on what it may load.
var policy = regexp.MustCompile(`(http-equiv="?Content-Security-Policy"? content=")([^"]*)(")`)

// withPreview is a page of the book with the preview's script, the rule that
// lets it run, and what is wrong with the files. The page itself is not touched.
func withPreview(page []byte, faults error, version int64) []byte {
	out := policy.ReplaceAllFunc(page, func(found []byte) []byte {
		m := policy.FindSubmatch(found)
		return []byte(string(m[1]) + allowed(string(m[2])) + string(m[3]))
	})
	out = before(out, "</head>", `<link rel="stylesheet" href="`+addedFolder+`preview.css">`+script(version))
	if faults != nil {
		out = before(out, "</body>", faultList(faults))
	}
	return out
}

// allowed is a rule that lets the preview's script run and ask for changes as
// well.
func allowed(rule string) string {
	var list []string
	has := map[string]bool{}
	for part := range strings.SplitSeq(rule, ";") {
		part = strings.TrimSpace(part)
		name, _, _ := strings.Cut(part, " ")
		if name == "script-src" || name == "connect-src" {
			if part = strings.ReplaceAll(part, " 'none'", ""); !strings.Contains(part, "'self'") {
				part += " 'self'"
			}
			has[name] = true
		}
		if part != "" {
			list = append(list, part)
		}
	}
	for _, name := range []string{"script-src", "connect-src"} {
		if !has[name] {
			list = append(list, name+" 'self'")
		}
	}
	return strings.Join(list, "; ")
}

// before puts a text before the last place of another, or at the end.
func before(page []byte, end, text string) []byte {
	at := bytes.LastIndex(page, []byte(end))
	if at < 0 {
		at = len(page)
	}
	return append(append(bytes.Clone(page[:at]), text...), page[at:]...)
}

// script asks for changes from the version that the page is of.
func script(version int64) string {
	return `<script src="` + addedFolder + `preview.js" data-version="` + strconv.FormatInt(version, 10) + `" defer></script>`
}

// words are the texts of the preview.
var previewWords = content.WordsIn(content.English)

// text is a text of the preview as HTML.
func previewText(key string, about ...string) string { return string(previewWords.HTML(key, about...)) }

// faultList is what is wrong with the files, each with its place.
func faultList(faults error) string {
	var list strings.Builder
	var problems entry.Problems
	n := 1
	if errors.As(faults, &problems) {
		n = len(problems)
		for _, f := range problems {
			list.WriteString("<li>" + html.EscapeString(clean(f.Error())) + "</li>")
		}
	} else {
		list.WriteString("<li>" + html.EscapeString(clean(faults.Error())) + "</li>")
	}
	return `<aside class="preview-faults" role="alert"><h2>` + html.EscapeString(previewWords.Count("preview.faults", n)) + `</h2><p>` + previewText("preview.last-good") + `</p><ol>` + list.String() + `</ol></aside>`
}

// missingPage stands where the book has no sheet of a name, or no book could be
// made yet.
func missingPage(name string, book bool, faults error, version int64) []byte {
	title, says := "preview.no-sheet", previewText("preview.no-sheet-says", name)+` <a href="/">`+previewText("preview.first-sheet")+`</a>`
	if !book {
		title, says = "preview.no-book", previewText("preview.no-book-says")
	}
	page := `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'"><title>` +
		previewText(title) + `</title><link rel="icon" href="data:,"></head><body class="preview-missing"><main><h1>` + previewText(title) + `</h1><p>` + says + `</p></main></body></html>`
	return withPreview([]byte(page), faults, version)
}
