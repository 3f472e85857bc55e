package templates

import (
	"dustbook/content"
	"dustbook/plan/unit"
)

// block is the title block of a sheet.
type block struct {
	Shop, Title  string
	Number       string // part and place
	At, Total    int    // which sheet of how many
	Scale, Units string
	AsOf         string
	Revision     string // the newest, in a line
	Revisions    []revisionRow
	Earlier      int // how many more revisions there are
}

// revisionRow is a line of the revisions.
type revisionRow struct{ Mark, Date, Note string }

// mostRevisions is how many revisions a title block shows.
const mostRevisions = 3

// block fills the title block of the sheet at a place of the book.
func (b *Book) block(s *Sheet, at int) block {
	v := block{Shop: b.Plan.Shop.Name, Title: s.Title, Number: s.Number(), At: at + 1, Total: len(b.Sheets), Scale: s.scale(content.WordsIn(s.language())), Units: b.unitWords(), AsOf: b.asOf(), Revision: "—"}
	list := b.Plan.Shop.Revisions
	for i := len(list) - 1; i >= 0; i-- {
		r := list[i]
		switch {
		case r.Date.String() > b.Plan.AsOf.String():
		case len(v.Revisions) == mostRevisions:
			v.Earlier++
		default:
			v.Revisions = append(v.Revisions, revisionRow{r.Mark, r.Date.String(), r.Note})
		}
	}
	if r, ok := b.Plan.Revision(); ok {
		v.Revision = r.Mark + " · " + r.Date.String()
	}
	return v
}

// scale is what a sheet's drawing is drawn to. Sheets are scaled by browsers
// and printers, so a plan is measured by its own bar and by nothing else.
func (s *Sheet) scale(words content.Words) string {
	switch {
	case s.Scale != "":
		return s.Scale
	case s.Kind == "plan" || s.Kind == "overview":
		return words.Text("block.by-bar")
	}
	return words.Text("block.none")
}

// unitWords are the units the book is printed in.
func (b *Book) unitWords() string {
	return unit.Run.Unit(b.units) + ", " + unit.Size.Unit(b.units) + ", " + unit.Air.Unit(b.units) + ", " + unit.Press.Unit(b.units)
}

// asOf is the day the book is reckoned as of.
func (b *Book) asOf() string {
	if b.Plan.AsOf.Year == 0 {
		return b.words.Text("block.no-date")
	}
	return b.Plan.AsOf.String()
}
