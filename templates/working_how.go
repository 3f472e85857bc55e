package templates

import (
	"html/template"

	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// termName is what a loss is called.
func (b *Book) termName(t duct.Term) template.HTML { return trusted(b.namedTerm(t)) }

func (b *Book) namedTerm(t duct.Term) string {
	angle := unit.Degrees.Print(b.units, t.Angle)
	switch t.Kind {
	case duct.HoodTerm:
		return b.words.HTML("working.term-hood", t.Name)
	case duct.HoseTerm:
		return b.words.HTML("working.term-hose", t.Name)
	case duct.ElbowTerm:
		if t.Join {
			return b.words.HTML("working.term-elbow-join", angle)
		}
		return b.words.HTML("working.term-elbow", angle)
	case duct.GateTerm:
		return b.words.HTML("working.term-gate", t.Name)
	case duct.ExtraTerm:
		return b.words.HTML("working.term-extra")
	case duct.EntryTerm:
		return b.words.HTML("working.term-entry", angle)
	case duct.WideningTerm:
		return b.words.HTML("working.term-widening", unit.Size.Print(b.units, t.Other))
	case duct.NarrowingTerm:
		return b.words.HTML("working.term-narrowing", unit.Size.Print(b.units, t.Other))
	case duct.JunctionTerm:
		return b.words.HTML("working.term-junction")
	}
	return b.words.HTML("working.term-friction")
}

// howTerm is the formula of a coefficient with its numbers.
func (b *Book) howTerm(t duct.Term) string {
	switch t.Kind {
	case duct.FrictionTerm, duct.HoseTerm:
		return b.howFriction(t)
	case duct.HoodTerm:
		return b.words.Text("working.how-hood")
	case duct.ElbowTerm:
		if t.Whole == t.K || t.Whole == 0 {
			return b.words.Text("working.how-elbow-whole")
		}
		return b.words.Text("working.how-elbow", unit.Fixed(t.Whole, 3), unit.Fixed(t.K/t.Whole, 3))
	case duct.GateTerm:
		if leak := t.Gate.Leak; leak.Share == 0 {
			return b.words.Text("working.how-gate-flow", unit.Air.Print(b.units, leak.Flow), unit.Press.Print(b.units, leak.Press))
		}
		return b.words.Text("working.how-gate-share", unit.Short(t.Gate.Leak.Share))
	case duct.ExtraTerm:
		return b.words.Text("working.how-extra")
	case duct.EntryTerm:
		return b.words.Text("working.how-entry")
	case duct.WideningTerm:
		lost := (1 - t.Ratio) * (1 - t.Ratio)
		return b.words.Text("working.widening."+t.How.String(), unit.Fixed(t.Ratio, 3), unit.Fixed(t.K/lost, 3))
	case duct.NarrowingTerm:
		return b.words.Text("working.narrowing."+t.How.String(), unit.Fixed(t.Ratio, 3), unit.Fixed(t.K/(1-t.Ratio*t.Ratio), 3))
	case duct.JunctionTerm:
		return b.howJunction(t)
	}
	return ""
}

// howFriction is f by its law, and K from it.
func (b *Book) howFriction(t duct.Term) string {
	law := "working.how-colebrook"
	switch laminar, turbulent := air.Laws(); {
	case t.Reynolds <= laminar:
		law = "working.how-laminar"
	case t.Reynolds < turbulent:
		law = "working.how-between"
	}
	f := unit.Significant(t.Factor, 4)
	how := b.words.Text(law, unit.Significant(t.Reynolds, 4), unit.Significant(float64(t.Roughness/t.Size), 3), f)
	if t.Times != 1 {
		f = b.words.Text("working.how-times", f, unit.Short(t.Times))
	}
	return b.words.Text("working.how-friction", how, f, b.long(t.Length), b.long(t.Size))
}

// long prints a length to four digits in the unit of runs.
func (b *Book) long(x unit.Length) string { return four(b, unit.Run, x) }

// howJunction is the converging wye's formula with its numbers.
func (b *Book) howJunction(t duct.Term) string {
	area, turn, run, share := t.Wye.Parts(t.Share)
	x, f := unit.Fixed(t.Share, 4), unit.Significant(turn, 3)
	all, speed := four(b, unit.Air, t.All), four(b, unit.Speed, t.Velocity)
	if t.Branch {
		return b.words.Text("working.how-branch", x, unit.Fixed(area, 4), f, unit.Fixed(share, 3), all, speed)
	}
	return b.words.Text("working.how-run", x, unit.Fixed(area, 4), f, unit.Significant(run, 3), all, speed)
}

// workingLaws are the formulas that every stretch goes by.
func (b *Book) workingLaws() []workingLaw {
	velocity := b.words.Text("working.law-dynamic-metric")
	if b.units != unit.Metric {
		velocity = b.words.Text("working.law-dynamic-us", b.oneUnit())
	}
	brief := func(document, clause string, mark source.Mark) string {
		return source.Basis{Document: document, Clause: clause, Mark: mark}.BriefIn(b.words.Mark)
	}
	notes := brief("vent-notes", "", source.Verified)
	return []workingLaw{
		{b.words.Text("working.law-speed"), b.words.Text("working.law-speed-is"), notes},
		{b.words.Text("working.law-dynamic"), velocity, notes},
		{b.words.Text("working.law-loss"), b.words.Text("working.law-loss-is"), notes},
		{b.words.Text("working.law-friction"), b.words.Text("working.law-friction-is"), notes},
		{b.words.Text("working.law-factor"), b.words.Text("working.law-factor-is"), brief("colebrook-1939", "", source.Reported)},
		{b.words.Text("working.law-node"), b.words.Text("working.law-node-is"), brief("method-r", "", source.Computed)},
	}
}
