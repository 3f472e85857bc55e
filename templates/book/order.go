package book

import (
	"io/fs"

	"dustbook/checks"
	"dustbook/plan"
	"dustbook/templates"
)

// Order is what a book is made of, and how. Plan alone has to be there.
type Order struct {
	Plan     *plan.Plan
	Findings []checks.Finding
	Beside   []templates.Layout // another layout to set beside this one; one at most
	Notes    fs.FS              // the shop's own notes
	Workers  int                // how many sheets are made at a time

	// Told hears how many sheets of how many are made. It may be called by
	// several workers at a time.
	Told func(made, all int)
}

// tell counts one more sheet.
func (o Order) tell(made, all int) {
	if o.Told != nil {
		o.Told(made, all)
	}
}
