package templates

import (
	"html/template"
	"math"

	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/unit"
)

// workingTerms is stretches written out term by term.
type workingTerms struct {
	Title string
	Units workingUnits
	Rows  []workingStretch
	Again bool // of stretches that stand above in another state: without their sources
}

// lines is how many rows they take.
func (w *workingTerms) lines() (n int) {
	if w == nil {
		return 0
	}
	for _, s := range w.Rows {
		n += 2 + len(s.Terms)
	}
	return n
}

// workingStretch is one stretch on the sheet, from its flow to the pressure at
// its end.
type workingStretch struct {
	Name, Flow, Start, End, Loss string
	Speed, Dynamic               string // how the velocity pressure comes about
	Terms                        []workingTerm
}

// workingTerm is one loss: how its coefficient comes about, and how far below
// the room the total pressure is behind it.
type workingTerm struct {
	Name                                template.HTML
	How, Dynamic, K, Loss, Below, Basis string
	Split                               bool // by the flow-split formulas
}

// workingTable is stretches in one line each, their losses taken together.
type workingTable struct {
	Title string
	Units workingUnits
	Rows  []workingBrief
}

type workingBrief struct {
	Name, Flow, Size, Speed, Dynamic, K, Loss, Start, End string
}

// four prints a quantity with four digits and its unit, finer than the rest of
// the book; five with one more, where the working goes on with it.
func four[Q unit.Measure](b *Book, s unit.Scale[Q], x Q) string { return digits(b, s, x, 4) }

func five[Q unit.Measure](b *Book, s unit.Scale[Q], x Q) string { return digits(b, s, x, 5) }

func digits[Q unit.Measure](b *Book, s unit.Scale[Q], x Q, count int) string {
	return unit.Significant(s.In(b.units, x), count) + " " + s.Unit(b.units)
}

// fineness is to how many decimals the working prints pressures.
func (b *Book) fineness() int {
	if b.units == unit.Metric {
		return 1
	}
	return 3
}

// fine prints a pressure as finely as the working goes.
func (b *Book) fine(p unit.Pressure) string {
	return unit.Fixed(unit.Press.In(b.units, p), b.fineness())
}

// fineOrSmall is fine, with three digits where that leaves fewer: a velocity
// pressure that a great coefficient goes on with.
func (b *Book) fineOrSmall(p unit.Pressure) string {
	if x := unit.Press.In(b.units, p); math.Abs(unit.Six(x)) < 100/math.Pow10(b.fineness()) {
		return unit.Significant(x, 3)
	}
	return b.fine(p)
}

// factor prints a coefficient to three decimals, a great one to four digits.
func factor(k float64) string {
	if math.Abs(unit.Six(k)) >= 10 {
		return unit.Significant(k, 4)
	}
	return unit.Fixed(k, 3)
}

// ladder prints pressures that add up from a start, so that they do so as
// printed: each as the difference of the levels before and behind it. It
// returns the parts, the levels behind them, and the last level.
func (b *Book) ladder(start unit.Pressure, steps ...unit.Pressure) (parts, levels []string, end string) {
	grain := math.Pow10(b.fineness())
	count := func(p unit.Pressure) float64 { return math.Round(unit.Six(unit.Press.In(b.units, p)) * grain) }
	level, before := start, count(start)
	for _, step := range steps {
		level += step
		at := count(level)
		parts = append(parts, unit.Fixed((at-before)/grain, b.fineness()))
		levels = append(levels, unit.Fixed(at/grain, b.fineness()))
		before = at
	}
	return parts, levels, unit.Fixed(before/grain, b.fineness())
}

// workingTerms writes out stretches term by term; nil without any.
func (b *Book) workingTerms(title string, units workingUnits, r *duct.Result, list []int) *workingTerms {
	if len(list) == 0 {
		return nil
	}
	v := &workingTerms{Title: title, Units: units}
	for _, i := range list {
		v.Rows = append(v.Rows, b.workingStretch(b.trees[r.Collector], r, r.Stretches[i]))
	}
	return v
}

// workingStretch writes out one stretch.
func (b *Book) workingStretch(tree *duct.Tree, r *duct.Result, at duct.StretchResult) workingStretch {
	terms := tree.Working(r, at.Stretch)
	var steps []unit.Pressure
	for _, t := range terms {
		steps = append(steps, t.Loss)
	}
	giveRest(steps, at.Loss)
	parts, levels, end := b.ladder(-at.Start, steps...)
	loss, _, _ := b.ladder(-at.Start, at.Loss)
	v := workingStretch{Name: at.Stretch.Name(), Flow: four(b, unit.Air, at.Flow), Start: b.fine(-at.Start), End: end, Loss: loss[0]}
	size := at.Stretch.Duct.Bore
	velocity := air.SpeedIn(at.Flow, size)
	dynamic := b.Plan.Air.State.VelocityPressure(velocity)
	v.Speed, v.Dynamic = b.howFast(at.Flow, size), b.fineOrSmall(dynamic)
	for i, t := range terms {
		x := workingTerm{Name: b.termName(t), How: b.howTerm(t), Dynamic: b.fineOrSmall(t.Dynamic), K: factor(t.K), Loss: parts[i], Below: levels[i], Basis: t.Basis.BriefIn(b.words.Mark), Split: t.Kind == duct.JunctionTerm}
		if unit.Compare(float64(t.Size), float64(size)) != 0 && t.Kind != duct.JunctionTerm {
			x.How = b.words.Text("working.how-elsewhere", unit.Size.Print(b.units, t.Size), four(b, unit.Speed, t.Velocity), x.How)
		}
		v.Terms = append(v.Terms, x)
	}
	return v
}

// giveRest gives the greatest step what is missing from a sum: a small flow is
// rounded by the collector's, and its losses are off by that.
func giveRest(steps []unit.Pressure, sum unit.Pressure) {
	if len(steps) == 0 {
		return
	}
	greatest := 0
	for i, p := range steps {
		sum -= p
		if math.Abs(float64(p)) > math.Abs(float64(steps[greatest])) {
			greatest = i
		}
	}
	steps[greatest] += sum
}

// howFast is how the velocity pressure comes about from flow and bore.
func (b *Book) howFast(q unit.Flow, size unit.Length) string {
	state := b.Plan.Air.State
	text := []string{unit.Size.Print(b.units, size), five(b, unit.Floor, air.Bore(size)), five(b, unit.Air, q), five(b, unit.Speed, air.SpeedIn(q, size))}
	if b.units == unit.Metric {
		return b.words.Text("working.speed-metric", append(text, five(b, unit.Weight, state.Density))...)
	}
	return b.words.Text("working.speed-us", append(text, b.oneUnit())...)
}

// oneUnit is the speed, in the shop's air, of one unit of velocity pressure.
func (b *Book) oneUnit() string {
	one := unit.Pressure(1 / unit.Press.In(b.units, 1))
	return unit.Significant(unit.Speed.In(b.units, b.Plan.Air.State.Speed(one)), 5)
}

// workingTable writes stretches in one line each; nil without any.
func (b *Book) workingTable(title string, units workingUnits, r *duct.Result, list []int) *workingTable {
	if len(list) == 0 {
		return nil
	}
	v := &workingTable{Title: title, Units: units}
	for _, i := range list {
		v.Rows = append(v.Rows, b.workingBrief(r.Stretches[i]))
	}
	return v
}

// workingBrief writes a stretch in one line.
func (b *Book) workingBrief(at duct.StretchResult) workingBrief {
	size := at.Stretch.Duct.Bore
	dynamic := b.Plan.Air.State.VelocityPressure(at.Velocity)
	v := workingBrief{Name: at.Stretch.Name(), Flow: unit.Significant(unit.Air.In(b.units, at.Flow), 4), Size: unit.Size.Figure(b.units, size), Speed: unit.Significant(unit.Speed.In(b.units, at.Velocity), 4), Dynamic: b.fineOrSmall(dynamic)}
	loss, levels, _ := b.ladder(-at.Start, at.Loss)
	v.Start, v.Loss, v.End = b.fine(-at.Start), loss[0], levels[0]
	if dynamic > 0 {
		v.K = factor(float64(at.Loss / dynamic))
	}
	return v
}
