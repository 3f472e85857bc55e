// Package checks knows what to ask of a plan. One check is one value: a
// question, what it needs, and a function from the plan to findings. A
// finding says what is so, by what it was decided, what to do and whom to
// ask. No finding says that a shop is within the law.
//
// Every text a reader sees is a row of a file finding-….csv of the words of
// content; figures are rows of figures.csv, the texts that a check asks by are
// rows of bases.csv.
package checks

import (
	"cmp"
	"path"
	"slices"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/source"
)

// State is what a check found.
type State string

const (
	Met      State = "met"
	NotMet   State = "not met"
	Thin     State = "thin"      // the figures straddle the limit, or rest on memory or practice
	InPlay   State = "in play"   // a threshold that brings a text into play is passed
	Ask      State = "ask"       // only the authority, an electrician or an engineer can answer
	NotGiven State = "not given" // an input is missing
	Advice   State = "advice"    // common practice without a source
)

// By is what a finding was decided by.
type By string

const (
	ByRule     By = "rule"     // a figure of a cited text
	ByGiven    By = "given"    // the owner's or maker's own figure
	ByTopology By = "topology" // a path, a name, a sequence
	ByModel    By = "model"    // the sizing method
)

// Weight is how much a finding matters.
type Weight string

const (
	Stop Weight = "stop" // do not run until settled
	Mend Weight = "mend"
	Know Weight = "know"
)

// Figure is one number of a finding beside its limit, in SI units.
type Figure struct {
	Name  string
	Value float64
	Unit  string
	Limit *float64 // nil where there is none
	Basis source.Basis
}

// Finding is what one check found about one thing.
type Finding struct {
	Check   string
	State   State
	By      By
	Weight  Weight
	About   string // the thing's name, empty for the shop
	Kind    string // what the thing is: machine, use, collector, duct, room; empty for the shop
	File    string // the file it stands in, beside the shop file; empty for the shop file itself
	At      entry.Place
	Says    string
	Do      string
	Asks    string // the question in words that can be sent; empty where nobody is asked
	Whom    Person // whom it goes to; empty where nobody is asked
	Figures []Figure
	Basis   []source.Basis
	Settled string // by whom a stop was settled
	Slow    *Slow  // what Do is about, where that is the speed of one stretch

	Sizes    bool        // it waits for sizes that are still to be chosen
	Accepted *Acceptance // nil where nobody has accepted it, or not any more
}

// FileBeside is the path of the file that the finding stands in, where that of
// the shop file is given.
func (f Finding) FileBeside(shopFile string) string {
	if f.File == "" {
		return shopFile
	}
	return path.Join(path.Dir(shopFile), f.File)
}

// Check is one question to a plan.
type Check struct {
	ID       string    // a readable slug
	Name     string    // a few words, for the head of a sheet
	Title    string    // the question, without its mark
	Needs    string    // the fields it reads
	Stops    bool      // a finding of it may say stop
	Whom     Person    // whom its questions go to, where a finding names nobody else
	Compares []string  // the figures of rules that it asks for
	Answers  []Confirm // what settles it, and other figures that [[confirmed]] may give
	Run      func(p *plan.Plan, report func(Finding))
}

// Find finds a check by its id.
func Find(id string) *Check {
	for _, c := range All {
		if c.ID == id {
			return c
		}
	}
	return nil
}

// Run asks every check and returns the findings by weight, check and line.
// What the file says of each is noted on it: by whom a stop was settled, and
// by whom and until when it is accepted.
func Run(p *plan.Plan) []Finding {
	ahead(p)
	var list []Finding
	for _, c := range All {
		c.Run(p, func(f Finding) {
			f.Check = c.ID
			if f.Asks != "" {
				f.Whom = cmp.Or(f.Whom, c.Whom)
			}
			settle(p, c, &f)
			accept(p, &f)
			list = append(list, f)
		})
	}
	slices.SortStableFunc(list, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(rank(a.Weight), rank(b.Weight)),
			cmp.Compare(a.Check, b.Check),
			cmp.Compare(a.At.Line, b.At.Line),
			cmp.Compare(a.At.Column, b.At.Column))
	})
	return list
}

func rank(w Weight) int {
	return map[Weight]int{Stop: 0, Mend: 1, Know: 2}[w]
}

// Standing counts the findings that say: do not run until settled. A stop
// cannot be accepted, so none of them is.
func Standing(list []Finding) int {
	n := 0
	for _, f := range list {
		if f.Weight == Stop {
			n++
		}
	}
	return n
}
