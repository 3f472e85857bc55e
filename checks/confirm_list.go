package checks

import (
	"dustbook/plan/export"
	"dustbook/plan/source"
)

// Confirmable is one id that [[confirmed]] may name, with the check it is for.
type Confirmable struct {
	Confirm
	Check  *Check
	Source []source.Basis // the texts it stands in for or answers; empty where none is read
}

// Confirmables lists what [[confirmed]] may give, check by check in the order
// of the book.
func Confirmables() []Confirmable {
	var list []Confirmable
	for _, c := range All {
		for _, f := range c.Confirms() {
			list = append(list, Confirmable{f, c, confirmSource(c, f)})
		}
	}
	return list
}

// confirmSource are the texts that a figure takes the place of: the rows of the
// rules with its id, or what the check asks by.
func confirmSource(c *Check, f Confirm) []source.Basis {
	var list []source.Basis
	for _, r := range ruleRows {
		if r.Figure == f.ID {
			list = append(list, r.Basis)
		}
	}
	for _, r := range basisRows {
		if f.Settles && r.Text("check") == c.ID {
			list = append(list, r.Basis)
		}
	}
	return append(list, f.From...)
}

// confirmables is what inspect --figures --json prints.
type confirmables struct {
	Format  string            `json:"format"`
	Figures []confirmableJSON `json:"figures"`
}

// confirmableJSON is one id. What settles takes the weight off a stop.
type confirmableJSON struct {
	Check    string      `json:"check"`
	ID       string      `json:"id"`
	Confirms string      `json:"confirms"`
	Value    string      `json:"value"`
	Settles  bool        `json:"settles"`
	Source   []basisJSON `json:"source"`
}

// ConfirmablesJSON writes the ids as inspect --figures --json prints them.
func ConfirmablesJSON(list []Confirmable) ([]byte, error) {
	doc := confirmables{Format: "dustbook-figures/1", Figures: []confirmableJSON{}}
	for _, f := range list {
		v := confirmableJSON{f.Check.ID, f.ID, f.Means, f.Wants(), f.Settles, []basisJSON{}}
		for _, b := range f.Source {
			v.Source = append(v.Source, basisJSON{b.Title(), b.Edition(), b.Clause, b.Mark.String()})
		}
		doc.Figures = append(doc.Figures, v)
	}
	return export.JSON(doc)
}
