// Package source knows facts: a value with the document, edition and clause
// it comes from and a mark that says how it was read, and what a mark allows
// the book to claim; and why a figure that is asked for is not there.
//
// It knows no machine, no duct and no formula. Data tables stand beside the
// package that reads them; this package reads their rows and keeps the list
// of documents they name.
package source

// Basis is where a figure stands: a document of the list, its edition, the
// clause, and the mark.
type Basis struct {
	Document string // id of a row of documents.csv; empty for common practice
	Clause   string
	Mark     Mark
	Of       string // the edition, where it is not that of the document's row
}

// Title is the document's name, or what stands in its place, in plain English.
func (b Basis) Title() string { return b.TitleIn(english) }

// TitleIn is the document's name, or what stands in its place in a language.
func (b Basis) TitleIn(w Wording) string {
	if d, ok := FindDocument(b.Document); ok {
		return d.Title
	}
	if text := b.Mark.in(w, insteadText); text != "" {
		return text
	}
	return Mark(0).in(w, insteadText)
}

// Edition is the document's edition, empty where it has none.
func (b Basis) Edition() string {
	if b.Of != "" {
		return b.Of
	}
	d, _ := FindDocument(b.Document)
	return d.Edition
}

// String is one line in plain English for a table of the terminal: title,
// edition, clause, and what the mark adds.
func (b Basis) String() string { return b.In(english) }

// In is the same line in a language.
func (b Basis) In(w Wording) string {
	text := b.TitleIn(w)
	says := b.Mark.in(w, saysText)
	if b.Mark == Practice && b.Document == "" {
		says = "" // its title says it
	}
	for _, part := range []string{b.Edition(), b.Clause, says} {
		if part != "" && part != text {
			text += ", " + part
		}
	}
	return text
}

// BriefIn is a few words for a narrow column: the document's short name and
// what the mark adds.
func (b Basis) BriefIn(w Wording) string {
	d, ok := FindDocument(b.Document)
	if !ok {
		return b.Mark.in(w, wordText)
	}
	if says := b.Mark.in(w, saysText); says != "" {
		return d.Short + ", " + says
	}
	return d.Short
}
