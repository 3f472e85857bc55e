// Package source knows facts: a value with the document, edition and clause
// it comes from and a mark that says how it was read, and what a mark allows
// the book to claim.
//
// It knows no machine, no duct and no formula. Data tables stand beside the
// package that reads them; this package reads their rows and keeps the list
// of documents they name.
package source

import "fmt"

// Mark says how a figure was come by.
type Mark uint8

const (
	Verified Mark = iota + 1 // read in a copy of the document itself
	Reported                 // read on a page that reports the document
	Memory                   // known to the trade, not seen in a copy
	Practice                 // rule of thumb, no published source
	Computed                 // our own arithmetic from a stated formula
	Given                    // stated in the shop file by its owner
)

var marks = map[string]Mark{"V": Verified, "V2": Reported, "M": Memory, "P": Practice, "C": Computed, "G": Given}

// ReadMark reads the short form used in data files: V, V2, M, P, C or G.
func ReadMark(text string) (Mark, error) {
	if m, ok := marks[text]; ok {
		return m, nil
	}
	return 0, fmt.Errorf("%q is no mark: want V, V2, M, P, C or G", text)
}

// String is the word used in JSON and in tables.
func (m Mark) String() string {
	switch m {
	case Verified:
		return "verified"
	case Reported:
		return "as reported"
	case Memory:
		return "memory"
	case Practice:
		return "practice"
	case Computed:
		return "computed"
	case Given:
		return "given"
	}
	return "unmarked"
}

// Says is what a page adds behind a figure with this mark; nothing for a
// figure that was read in the document or given by the owner.
func (m Mark) Says() string {
	switch m {
	case Reported:
		return "as reported"
	case Memory:
		return "from memory, confirm"
	case Practice:
		return "common practice"
	case Computed:
		return "computed"
	}
	return ""
}

// Decides reports whether a rule figure with this mark may decide met or not
// met. A figure from memory becomes a question, one from practice advice.
func (m Mark) Decides() bool { return m == Verified || m == Reported || m == Given }

// Weak reports whether a need that rests on this mark keeps a verdict at
// thin: the figure is from memory or from practice.
func (m Mark) Weak() bool { return m == Memory || m == Practice }

// Basis is where a figure stands: a document of the list, its edition, the
// clause, and the mark.
type Basis struct {
	Document string // id of a row of documents.csv; empty for common practice
	Clause   string
	Mark     Mark
}

// Title is the document's name, or what stands in its place.
func (b Basis) Title() string {
	if d, ok := FindDocument(b.Document); ok {
		return d.Title
	}
	switch b.Mark {
	case Given:
		return "the shop file"
	case Practice:
		return "common practice, no source"
	}
	return "no document"
}

// Edition is the document's edition, empty where it has none.
func (b Basis) Edition() string {
	d, _ := FindDocument(b.Document)
	return d.Edition
}

// String is one line for a table: title, edition, clause, and what the mark
// adds.
func (b Basis) String() string {
	text := b.Title()
	for _, part := range []string{b.Edition(), b.Clause, b.Mark.Says()} {
		if part != "" && part != text && !(part == "common practice" && b.Document == "") {
			text += ", " + part
		}
	}
	return text
}

// Brief is a few words for a narrow column: the document's short name and
// what the mark adds.
func (b Basis) Brief() string {
	d, ok := FindDocument(b.Document)
	if !ok {
		return b.Mark.String()
	}
	if says := b.Mark.Says(); says != "" {
		return d.Short + ", " + says
	}
	return d.Short
}
