package templates

import (
	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// written lists the stretches of a result that the working writes out: those
// between a running port and the collector; in a use that every shop has, all
// that carry air.
func written(u *duct.Use, r *duct.Result) []int {
	if !stands(u) {
		return onTheWay(r)
	}
	var list []int
	for i, at := range r.Stretches {
		if at.Flow > 0 {
			list = append(list, i)
		}
	}
	return list
}

// cleanTerms writes out the state of the filter in which more air flows: term
// by term where the sheet has room for both states, else a line a stretch.
func (b *Book) cleanTerms(v *workingPart, u *duct.Use, clean *duct.Result) {
	title, list := b.words.Text("working.same-with", filterPhrase(clean.Filter), clean.Collector.Name), written(u, clean)
	v.CleanTitle, v.CleanEnds = title, b.workingEnds(clean)
	terms := b.workingTerms(title, v.Units, clean, list)
	if 2*terms.lines() > b.roomFor(u, clean) {
		v.Clean = b.workingTable(title, v.Units, clean, list)
		return
	}
	if terms != nil {
		terms.Again = true
	}
	v.CleanTerms = terms
}

// standingPart is the rest of a part in a use that every shop has. No port has
// a need there, so there is no hand method and there are no other ways.
func (b *Book) standingPart(v *workingPart, u *duct.Use, r *duct.Result) {
	v.Both = len(v.CleanEnds) > 0
	if v.Terms.lines() > b.roomFor(u, r) {
		v.Other, v.Terms, v.TooMany = b.workingTable(v.Terms.Title, v.Units, r, written(u, r)), nil, true
	}
	v.Ends, v.Symbols = b.workingEnds(r), b.symbols(v.Terms)
	v.NoHand = b.words.Text("working.no-hand")
	switch {
	case u.Kind == duct.DuctOff:
		v.NoWays = b.words.Text("working.duct-off")
	case len(written(u, r)) == 0:
		v.NoWays = b.words.Text("working.no-air")
	}
}

// standingSays are the rows of what is said of each use that every shop has,
// and of what to do.
var standingSays = map[duct.UseKind]struct{ says, do string }{
	duct.AllShut: {"working.shut-says", "working.shut-do"},
	duct.AllOpen: {"working.open-says", "working.open-do"},
	duct.DuctOff: {"working.off-says", "working.off-do"},
}

// standingVerdict is the verdict of a use that every shop has: what the fans
// move in it.
func (b *Book) standingVerdict(u *duct.Use) Verdict {
	var moves []string
	for _, c := range u.Collectors(b.Plan.Shop) {
		if r := lastOn(u, c); r != nil && r.OnCurve {
			moves = append(moves, b.words.Text("working.moves", c.Name, unit.Air.Print(b.units, r.Flow)))
		}
	}
	if len(moves) == 0 {
		return Verdict{Words: []Word{{"blank", b.words.Text("working.not-known")}}, Says: b.words.Text("working.no-figures-here")}
	}
	say := standingSays[u.Kind]
	return Verdict{Words: []Word{{"advice", b.words.Text("working.reckoned")}}, Says: b.words.Text(say.says, b.list(moves)), Do: b.words.Text(say.do)}
}

// symbol is a letter of a formula in words.
type symbol struct{ Letter, Means string }

// symbolsView explains the letters of the flow-split formulas, with their
// source.
type symbolsView struct {
	Source string
	List   []symbol
}

// symbols explain the letters, where a stretch goes by them; nil elsewhere.
func (b *Book) symbols(lists ...*workingTerms) *symbolsView {
	for _, list := range lists {
		if list == nil {
			continue
		}
		for _, row := range list.Rows {
			for _, x := range row.Terms {
				if x.Split {
					return &symbolsView{x.Basis, b.splitSymbols()}
				}
			}
		}
	}
	return nil
}

func (b *Book) splitSymbols() []symbol {
	var list []symbol
	for _, letter := range []string{"x", "b", "F", "C", "R"} {
		list = append(list, symbol{letter, b.words.Text("working.symbol." + letter)})
	}
	return list
}
