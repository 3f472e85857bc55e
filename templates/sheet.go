// Package templates knows the sheets of the book: a function a sheet, from a
// plan and its findings to a page in the drawing-set look. It decides nothing
// and reckons nothing; it chooses what to show and says it.
package templates

import (
	"fmt"
	"html/template"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// Part is a part of the book, a tab on the edge of the binder.
type Part struct {
	Number int
	Name   string // the key of its name
}

// The parts. Their numbers are fixed, so that a sheet keeps its number when
// the book grows; a part without sheets has no tab.
var (
	partStart    = Part{1, "part.start"}
	partPlan     = Part{2, "part.plan"}
	partMachines = Part{3, "part.machines"}
	partAir      = Part{4, "part.air"}
	partControl  = Part{5, "part.control"}
	partProof    = Part{6, "part.proof"}
	partUpkeep   = Part{7, "part.upkeep"}
	partPeople   = Part{8, "part.people"}
	partFindings = Part{10, "part.findings"}
)

// Word is a state in words, with the class that gives its shape.
type Word struct{ Class, Text string }

// Verdict is what a sheet opens with: a word or two, what is so, and the one
// thing to do.
type Verdict struct {
	Words []Word
	Says  string
	Do    string

	Sizes string // the path of the sheet of sizes, where they are what it waits for

	Language string // of what it says, where that may not be the sheet's: findings are in English
}

// Sheet is one page of the book.
type Sheet struct {
	Part    Part
	Place   int // within the part, from 1
	Path    string
	Title   string
	Group   string // the name it stands under in the contents; empty for most
	Lede    string
	Kind    string // a class for the stylesheet: plan, card, table …
	Verdict Verdict
	Uses    []UseTab   // links to the sheets of the uses, where they belong
	Scale   string     // what its drawing is drawn to, where its kind does not say
	Card    *cardFrame // of a card or sign
	Fit     string     // the class of the type of cards on a sheet

	Language string // of its words; empty is English

	Script string // the path of its script, which only adds; empty for most

	Outside []string // the addresses outside the book that it may link to

	name string     // of its template
	view func() any // what the template shows; called when the sheet is rendered
}

// UseTab is a link to the sheet of a use.
type UseTab struct {
	Name, Path string
	Here       bool
}

// Number is the sheet's number: part and place.
func (s *Sheet) Number() string { return fmt.Sprintf("%d.%d", s.Part.Number, s.Place) }

// Book is every sheet of one plan, in order.
type Book struct {
	Plan     *plan.Plan
	Findings []checks.Finding
	Sheets   []*Sheet
	Pictures map[string][]byte // that sheets show, by path
	Tables   map[string][]byte // files for other programs that hold what the sheets show, by path

	units  unit.System
	words  content.Words // those of the sheets that are in English
	prefix string        // of the paths of cards that stand beside English ones
	trees  map[*shop.Collector]*duct.Tree
	board  *drawing.Board // draws every plan of the book

	taken assumptions // defaults in use

	recordAt map[*record.Record]string // where a record is shown
}

// New lays out the book: which sheets there are and where each stands. Of
// another layout to set beside its own, it adds the sheet on both. It fails
// only when the program's own texts do.
func New(p *plan.Plan, findings []checks.Finding, beside ...Layout) (*Book, error) {
	b := &Book{Plan: p, Findings: findings, units: p.Shop.Units, words: content.WordsIn(content.English), trees: map[*shop.Collector]*duct.Tree{}, board: drawing.NewBoard(p)}
	for _, t := range p.Air.Trees {
		b.trees[t.Collector] = t
	}
	b.taken = b.assumptionsOf(p.Shop)
	b.addStart()
	b.addPlans()
	b.addBeside(beside)
	b.addCards()
	b.addAir()
	b.addSizes()
	b.addTogether()
	b.addEnough()
	b.addChanges()
	b.addRooms()
	b.addControl()
	b.addCircuits()
	b.addProof()
	b.addUpkeep()
	b.addTrouble()
	b.addFirstDay()
	b.addTraining()
	b.addBeliefs()
	b.addTradeWords()
	if err := b.addFindings(); err != nil {
		return nil, err
	}
	if err := b.addData(); err != nil {
		return nil, err
	}
	b.addFind()
	b.fillContents()
	return b, nil
}

// add puts a sheet at the end of its part.
func (b *Book) add(s *Sheet) *Sheet {
	s.Place = 1
	for _, other := range b.Sheets {
		if other.Part == s.Part {
			s.Place++
		}
	}
	b.Sheets = append(b.Sheets, s)
	return s
}

// Path is where a thing of the shop is shown. It is empty for what has no
// place of its own.
func (b *Book) Path(kind, name string) string {
	slug := shop.Slug(name)
	switch kind {
	case "machine", "use":
		return "use-" + slug + ".html"
	case "card":
		return "card-" + slug + ".html"
	case "gate card":
		return "gate-" + slug + ".html"
	case "first day":
		return b.prefix + "first-day.html"
	case "collector":
		return "collector-" + slug + ".html"
	case "working":
		return "working-" + slug + ".html"
	case "duct", "gate":
		return "ducts.html#" + kind + "-" + slug
	case "room":
		return "plan.html#room-" + slug
	case "check":
		return "check-" + name + ".html"
	}
	return b.controlPath(kind, name)
}

// findingsAbout lists the findings about one thing.
func (b *Book) findingsAbout(kind, name string) []checks.Finding {
	var list []checks.Finding
	for _, f := range b.Findings {
		if f.Kind == kind && f.About == name {
			list = append(list, f)
		}
	}
	return list
}

// finding is the first finding of a check about a thing; nil where there is
// none.
func (b *Book) finding(check, kind, name string) *checks.Finding {
	for i, f := range b.Findings {
		if f.Check == check && f.Kind == kind && f.About == name {
			return &b.Findings[i]
		}
	}
	return nil
}

// classOf is the class of a state.
func classOf(s checks.State) string {
	switch s {
	case checks.Met:
		return "met"
	case checks.NotMet:
		return "notmet"
	case checks.Thin:
		return "thin"
	case checks.InPlay:
		return "inplay"
	case checks.Ask:
		return "ask"
	case checks.Advice:
		return "advice"
	}
	return "blank"
}

// stateWord is a state with its own word.
func stateWord(s checks.State) Word {
	class := classOf(s)
	if s == "" {
		return Word{Class: class}
	}
	return Word{class, content.WordsIn(content.English).Text("state." + class)}
}

// Trusted marks a drawing of this program as HTML. It is the only way in for
// markup that did not come through a template.
func trusted[S ~string](markup S) template.HTML { return template.HTML(markup) }
