package checks

import (
	"net/url"
	"strings"

	"dustbook/plan"
)

// locationOf is where a finding stands: the line of the file where it has one,
// and the thing by kind and name.
func locationOf(p *plan.Plan, f Finding, uri string) sarifLocation {
	l := sarifLocation{Logical: []sarifLogical{logical(p, f)}}
	l.Physical.Artifact.URI = artifactURI(f.FileBeside(uri))
	if f.At.Known() {
		l.Physical.Region = &sarifRegion{f.At.Line, f.At.Column}
	}
	return l
}

// logical is the thing a finding is about. One about no single thing is about
// the shop.
func logical(p *plan.Plan, f Finding) sarifLogical {
	kind, name := f.Kind, f.About
	if name == "" {
		name = p.Shop.Name
	}
	if kind == "" {
		kind = wholeShop
	}
	return sarifLogical{name, kind + "/" + name, kind}
}

// artifactURI is a relative path as a URI: slashes forward, what a URI cannot
// hold percent-encoded.
func artifactURI(path string) string {
	return (&url.URL{Path: path}).String()
}

// messageText writes a text so that a reader of messages shows it as it is: a
// brace stands for a place to fill and is doubled (section 3.11.5 of the
// standard), and a bracket that could open a link gets a backslash (3.11.6).
func messageText(text string) string {
	text = strings.NewReplacer("{", "{{", "}", "}}").Replace(text)
	if strings.Contains(text, "](") {
		text = strings.NewReplacer("[", `\[`, "]", `\]`).Replace(text)
	}
	return text
}
