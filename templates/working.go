package templates

import (
	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// workingView is the working of one use: every loss between a port and the
// fan, so that someone with a pencil can follow it.
type workingView struct {
	Parts []workingPart
	Air   [][2]string
	Laws  []workingLaw
}

// workingLaw is a formula that every stretch goes by, and where it is from.
type workingLaw struct{ Name, Formula, Basis string }

// workingPart is a use on one collector.
type workingPart struct {
	Collector, Filter string
	Units             workingUnits
	Terms             *workingTerms // the running ways, term by term
	Other             *workingTable // ways nobody runs
	OtherTerms        *workingTerms
	TooMany           bool          // of the other ways' terms for one sheet
	Clean             *workingTable // the running ways with the other filter, a line each: where they are too many for more
	CleanTerms        *workingTerms // the same term by term
	CleanTitle        string
	CleanEnds         []workingEnd
	NoHand            string // why the hand method has no table; empty where it has one or nothing is known
	NoWays            string // why no stretch is written out: the fan runs without its ducts
	Symbols           *symbolsView
	Ends              []workingEnd
	Hand              *handView
	Fallbacks         []sourced
	Both              bool // the other state of the filter stands below
	Why               string
}

// workingUnits are the units in the heads of the tables.
type workingUnits struct{ Press, Flow, Speed, Size string }

type workingEnd struct{ Name, How, Loss, Unit string }

func (b *Book) addWorking(u *duct.Use) {
	b.add(&Sheet{Part: partAir, Path: b.Path("working", u.Name), Title: b.words.Text("working.title", u.Name), Kind: "table", Lede: b.words.Text("working.every-loss-between-the-port"),
		Verdict: b.workingVerdict(u), name: "working.html", view: func() any { return b.workingView(u) }})
}

func (b *Book) workingView(u *duct.Use) workingView {
	v := workingView{Air: b.airFacts(), Laws: b.workingLaws()}
	for _, c := range u.Collectors(b.Plan.Shop) {
		v.Parts = append(v.Parts, b.workingPart(u, lastOn(u, c)))
	}
	return v
}

// workingVerdict names the stretch that costs most.
func (b *Book) workingVerdict(u *duct.Use) Verdict {
	var worst *duct.StretchResult
	var of *duct.Result
	for _, c := range u.Collectors(b.Plan.Shop) {
		r := lastOn(u, c)
		for i := range r.Stretches {
			if at := &r.Stretches[i]; at.Judged && (worst == nil || at.Loss > worst.Loss) {
				worst, of = at, r
			}
		}
	}
	for _, c := range u.Collectors(b.Plan.Shop) {
		if b.unsized(c) {
			return b.openSizes(c)
		}
	}
	if stands(u) {
		return b.standingVerdict(u)
	}
	if worst == nil || !of.OnCurve {
		return Verdict{Words: []Word{{"blank", b.words.Text("working.not-known")}}, Says: b.words.Text("working.off-the-fans-curve-there")}
	}
	return Verdict{Words: []Word{{"advice", b.words.Text("working.reckoned")}}, Says: b.words.Text("working.costs-most", worst.Stretch.Name(), unit.Press.Figure(b.units, worst.Loss), unit.Press.Print(b.units, of.Static), filterPhrase(of.Filter)), Do: b.words.Text("working.look-there-first-a-hose")}
}

// lastOn is the last result of a use on a collector: with the filter due for
// change where there is one.
func lastOn(u *duct.Use, c *shop.Collector) *duct.Result {
	if on := u.On(c); len(on) > 0 {
		return on[len(on)-1]
	}
	return nil
}

// firstOn is the first result of a use on a collector, where that is another
// than the last: with the filter clean.
func firstOn(u *duct.Use, last *duct.Result) *duct.Result {
	for _, r := range u.Results {
		if r.Collector == last.Collector && r != last {
			return r
		}
	}
	return nil
}

func (b *Book) airFacts() [][2]string {
	s := b.Plan.Air.State
	return [][2]string{
		{b.words.Text("working.density"), unit.Weight.Print(b.units, s.Density)},
		{b.words.Text("working.viscosity"), unit.Viscous.Print(b.units, s.Viscosity)},
		{b.words.Text("working.density-ratio"), unit.Fixed(s.Ratio(), 3)},
		{b.words.Text("working.speed-ratio"), unit.Fixed(air.CarryRaise(s), 3)},
	}
}

// mostLines is how many losses are written out on one sheet, so that a
// telephone can load it; two stretches in tables of a line each weigh as much
// as briefLines of them. Past it the ways nobody runs are left out first, then
// the second state of the filter.
const (
	mostLines  = 460
	briefLines = 3
)

// roomFor is how many losses a part of a sheet has room for.
func (b *Book) roomFor(u *duct.Use, r *duct.Result) int {
	return mostLines/len(u.Collectors(b.Plan.Shop)) - briefLines*len(r.Stretches)/2
}

func (b *Book) workingPart(u *duct.Use, r *duct.Result) workingPart {
	v := workingPart{Collector: r.Collector.Name, Filter: filterPhrase(r.Filter), Units: workingUnits{unit.Press.Unit(b.units), unit.Air.Unit(b.units), unit.Speed.Unit(b.units), unit.Size.Unit(b.units)}, Why: b.words.Because(r.Why)}
	tree := b.trees[r.Collector]
	for _, d := range tree.Fallbacks {
		v.Fallbacks = append(v.Fallbacks, b.sourced(d.Name, "method", d.Name, "junctions"))
	}
	if clean := firstOn(u, r); clean != nil && clean.OnCurve {
		b.cleanTerms(&v, u, clean)
	}
	if !r.OnCurve {
		return v
	}
	v.Terms = b.workingTerms(b.words.Text("working.losses-to", r.Collector.Name), v.Units, r, written(u, r))
	if stands(u) {
		b.standingPart(&v, u, r)
		return v
	}
	var other []int
	for i, at := range r.Stretches {
		if !at.Judged && at.Flow > 0 {
			other = append(other, i)
		}
	}
	v.Other = b.workingTable(b.words.Text("working.other-ways"), v.Units, r, other)
	v.OtherTerms = b.workingTerms(b.words.Text("working.other-terms"), v.Units, r, other)
	if v.TooMany = v.Terms.lines()+v.CleanTerms.lines()+v.OtherTerms.lines() > b.roomFor(u, r); v.TooMany {
		v.OtherTerms = nil
	}
	v.Both = len(v.CleanEnds) > 0
	v.Symbols = b.symbols(v.Terms, v.OtherTerms)
	v.Ends = b.workingEnds(r)
	v.Hand = b.handView(tree.CheckByHand(r, b.units))
	return v
}

// workingEnds are the parts of the fan's static pressure. They add up as
// printed.
func (b *Book) workingEnds(r *duct.Result) []workingEnd {
	parts, _, sum := b.ladder(0, r.Inlet, r.Separator, r.FilterLoss, r.Outlet)
	press := unit.Press.Unit(b.units)
	list := []workingEnd{{b.words.Text("working.end-inlet"), b.words.Text("working.how-inlet"), parts[0], press}}
	flow, c := five(b, unit.Air, r.Flow), r.Collector
	if sep := c.Separator; sep != nil && c.Charged("separator") {
		how := b.words.Text("working.how-separator", five(b, unit.Press, sep.Loss), flow, five(b, unit.Air, sep.Flow), unit.Fixed(b.Plan.Air.State.Ratio(), 4))
		list = append(list, workingEnd{b.words.Text("working.end-separator"), how, parts[1], press})
	}
	if c.Filter != nil && r.Flow > 0 {
		how := b.words.Text("working.how-filter", five(b, unit.Press, r.FilterLoss*unit.Pressure(c.Filter.Flow/r.Flow)), flow, five(b, unit.Air, c.Filter.Flow))
		list = append(list, workingEnd{b.words.Text("working.end-filter"), how, parts[2], press})
	}
	if c.Outlet != nil {
		list = append(list, workingEnd{b.words.Text("working.end-outlet"), b.words.Text("working.how-outlet", b.howFast(r.Flow, c.Outlet.Size)), parts[3], press})
	}
	return append(list, workingEnd{b.words.Text("working.end-static"), b.words.Text("working.how-static"), sum, press})
}
