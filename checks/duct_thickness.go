package checks

import (
	"math"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var ductThickness = &Check{
	ID:       "duct-thickness",
	Name:     say("check.duct-thickness.name"),
	Title:    say("check.duct-thickness.title"),
	Needs:    "duct.size, duct.material, duct.gauge or duct.wall, machine.makes, shop.rules",
	Whom:     Authority,
	Compares: []string{"duct-thickness-8", "duct-thickness-18", "duct-thickness-30", "duct-thickness-more"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := thickEnough(p, c); told {
				report(f)
			}
		}
	},
}

// The sizes to which the rows of the table count, and the step that it is
// printed to.
var (
	smallDucts  = unit.Must[unit.Length](figure("thickness of small ducts").Text("value"))
	middleDucts = unit.Must[unit.Length](figure("thickness of middle ducts").Text("value"))
	largeDucts  = unit.Must[unit.Length](figure("thickness of large ducts").Text("value"))
	sheetStep   = unit.Must[unit.Length](figure("step of thickness").Text("value"))
)

// thicknessRule is the row of the table for a size.
func thicknessRule(s *shop.Shop, size unit.Length) ruled {
	switch {
	case unit.AtLeast(float64(smallDucts), float64(size)):
		return rulesOn(s, "duct-thickness-8")
	case unit.AtLeast(float64(middleDucts), float64(size)):
		return rulesOn(s, "duct-thickness-18")
	case unit.AtLeast(float64(largeDucts), float64(size)):
		return rulesOn(s, "duct-thickness-30")
	}
	return rulesOn(s, "duct-thickness-more")
}

// thickness judges the sheet of one duct. The table is printed to a thousandth
// of an inch and names what sheet is sold as, so that is rounded to the same;
// where the least that the gauge allows is under the figure, it is thin.
func thickness(s *shop.Shop, d *shop.Duct) ductHeld {
	h := ductHeld{duct: d, state: NotGiven, rule: thicknessRule(s, d.Size), got: d.Name}
	sheet, known := duct.SheetOf(d)
	if !known {
		return h
	}
	least := measureOf[unit.Length](h.rule)
	sold := math.Round(unit.Six(float64(sheet.Nominal/sheetStep))) * float64(sheetStep)
	h.state = softly(h.rule, unit.AtLeast(sold, float64(least)))
	if h.state == Met && !unit.AtLeast(float64(sheet.Least), float64(least)) {
		h.state = Thin
	}
	h.got = say("finding-duct-thickness.of", d.Name, unit.Size.Print(s.Units, d.Size), sheetWords(s, d, sheet), unit.Depth.Print(s.Units, least))
	return h
}

// sheetWords is a duct's sheet: its gauge and what that is sold as, or its wall.
func sheetWords(s *shop.Shop, d *shop.Duct, sheet duct.Sheet) string {
	if d.Wall.Known() {
		return unit.Depth.Print(s.Units, sheet.Nominal)
	}
	return say("finding-duct-thickness.gauge", d.Gauge.V.String(), unit.Depth.Print(s.Units, sheet.Nominal))
}

// thickEnough judges the steel ducts of a collector.
func thickEnough(p *plan.Plan, c *shop.Collector) (f Finding, told bool) {
	s := p.Shop
	var list []ductHeld
	for _, d := range ductsOn(s, c) {
		if d.Size > 0 && d.MaterialStated && strings.Contains(d.Material, "steel") {
			list = append(list, thickness(s, d))
		}
	}
	if len(list) == 0 {
		return f, false
	}
	wears := slices.ContainsFunc(served(p, c), func(m *shop.Machine) bool { return m.Makes == "metal" || m.Makes == "mixed" })
	f, worst := ductsOf(c, list)
	what := gotOf(worst)
	f.Basis = append(f.Basis, sheetBases(worst)...)
	switch f.State {
	case NotGiven:
		f.Says, f.Do = sayOf(len(worst), "finding-duct-thickness.not-given.says", what), say("finding-duct-thickness.not-given.do")
		return f, true
	case Met, Advice:
		f.Says, f.Do = say("finding-duct-thickness.kept.says", what), say("finding-duct-thickness.kept.do")
		if wears {
			f.State, f.Says = Ask, join(f.Says, say("finding-duct-thickness.wears.says"))
			f.Asks = say("finding-duct-thickness.wears.asks", what)
		}
	case Thin:
		f.Says, f.Do = say("finding-duct-thickness.thin.says", what), say("finding-duct-thickness.thin.do")
	default:
		f.Says, f.Do = say("finding-duct-thickness.under.says", what), say("finding-duct-thickness.under.do")
		f.Asks = say("finding-duct-thickness.under.asks", what)
	}
	f.Says = join(f.Says, remarkOf(worst))
	if missing := ductsIn(list, NotGiven); len(missing) > 0 {
		f.Says = join(f.Says, sayOf(len(missing), "finding-duct-thickness.not-given.says", gotOf(missing)))
	}
	weigh(s, &f, worst[0].rule)
	return f, true
}

// sheetBases are the bases of what gauges are, each once.
func sheetBases(list []ductHeld) []source.Basis {
	var bases []source.Basis
	for _, h := range list {
		if sheet, known := duct.SheetOf(h.duct); known && !h.duct.Wall.Known() && !slices.Contains(bases, sheet.Basis) {
			bases = append(bases, sheet.Basis)
		}
	}
	return bases
}
