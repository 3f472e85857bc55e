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
}

type workingPart struct {
	Collector, Filter           string
	PressUnit, SpeedUnit        string
	RunUnit, FlowUnit, SizeUnit string
	Stretches                   []workingStretch
	Ends                        []workingEnd
	Why                         string
}

type workingStretch struct {
	Name, Flow, Start, End, Loss string
	Terms                        []workingTerm
}

type workingTerm struct {
	Name, Size, Speed, Dynamic string
	Friction                   bool
	Length, Reynolds, Factor   string
	K, Loss, Hand, Basis       string
}

type workingEnd struct{ Name, Loss string }

func (b *Book) addWorking(u *duct.Use) {
	b.add(&Sheet{Part: partAir, Path: b.Path("working", u.Name), Title: u.Name + ": the working", Kind: "table", Lede: b.words.Text("working.every-loss-between-the-port"),
		Verdict: b.workingVerdict(u), name: "working.html", view: func() any { return b.workingView(u) }})
}

func (b *Book) workingView(u *duct.Use) workingView {
	v := workingView{Air: b.airFacts()}
	for _, c := range u.Collectors(b.Plan.Shop) {
		v.Parts = append(v.Parts, b.workingPart(lastOn(u, c)))
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
	if worst == nil || !of.OnCurve {
		return Verdict{Words: []Word{{"blank", b.words.Text("working.not-known")}}, Says: b.words.Text("working.off-the-fans-curve-there")}
	}
	return Verdict{Words: []Word{{"advice", worst.Stretch.Name()}}, Says: "costs most: " + unit.Press.Figure(b.units, worst.Loss) + " of the fan's " + unit.Press.Print(b.units, of.Static) + ", " + filterPhrase(of.Filter) + ".", Do: b.words.Text("working.look-there-first-a-hose")}
}

// lastOn is the last result of a use on a collector: with the filter due for
// change where there is one.
func lastOn(u *duct.Use, c *shop.Collector) *duct.Result {
	var last *duct.Result
	for _, r := range u.Results {
		if r.Collector == c {
			last = r
		}
	}
	return last
}

func (b *Book) airFacts() [][2]string {
	s := b.Plan.Air.State
	return [][2]string{
		{"Density", unit.Weight.Print(b.units, s.Density)},
		{"Viscosity", unit.Viscous.Print(b.units, s.Viscosity)},
		{"Density against standard air", unit.Fixed(s.Ratio(), 3)},
		{"Speed needed against standard air", unit.Fixed(air.CarryRaise(s), 3)},
	}
}

func (b *Book) workingPart(r *duct.Result) workingPart {
	v := workingPart{Collector: r.Collector.Name, Filter: filterPhrase(r.Filter), PressUnit: unit.Press.Unit(b.units), SpeedUnit: unit.Speed.Unit(b.units), RunUnit: unit.Run.Unit(b.units), FlowUnit: unit.Air.Unit(b.units), SizeUnit: unit.Size.Unit(b.units), Why: r.Why}
	if !r.OnCurve {
		return v
	}
	tree := b.trees[r.Collector]
	for _, i := range onTheWay(r) {
		at := r.Stretches[i]
		row := workingStretch{Name: at.Stretch.Name(), Flow: unit.Air.Print(b.units, at.Flow), Start: b.below(at.Start), End: b.below(at.End), Loss: unit.Press.Figure(b.units, at.Loss)}
		for _, term := range tree.Working(r, at.Stretch) {
			row.Terms = append(row.Terms, b.workingTerm(term))
		}
		v.Stretches = append(v.Stretches, row)
	}
	v.Ends = []workingEnd{
		{"Suction at the inlet: what the ducts cost", unit.Press.Figure(b.units, r.Inlet)},
		{"Separator", unit.Press.Figure(b.units, r.Separator)},
		{"Filter, in proportion to the flow", unit.Press.Figure(b.units, r.FilterLoss)},
		{"Outlet pipe; the velocity pressure at its mouth is not charged", unit.Press.Figure(b.units, r.Outlet)},
		{"Fan static pressure, on the curve", unit.Press.Figure(b.units, r.Static)},
	}
	return v
}

// below writes a total pressure as so much below the room.
func (b *Book) below(p unit.Pressure) string { return unit.Press.Figure(b.units, -p) }

func (b *Book) workingTerm(t duct.Term) workingTerm {
	v := workingTerm{Name: t.Name, Size: unit.Size.Figure(b.units, t.Size), Speed: unit.Speed.Figure(b.units, t.Velocity), Dynamic: unit.Press.Figure(b.units, t.Dynamic), K: unit.Fixed(t.K, 3), Loss: unit.Press.Figure(b.units, t.Loss), Basis: t.Basis.Brief(), Friction: t.Friction}
	if t.Friction {
		v.Length, v.Reynolds, v.Factor = unit.Run.Print(b.units, t.Length), unit.Significant(t.Reynolds, 3), unit.Fixed(t.Factor, 4)
		v.Hand = unit.Press.Figure(b.units, t.Hand)
		v.Name += ", " + v.Length + ", roughness " + unit.Thin.Print(b.units, t.Roughness)
	}
	return v
}
