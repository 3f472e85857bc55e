package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var ductCleanOuts = &Check{
	ID:       "duct-clean-outs",
	Name:     say("check.duct-clean-outs.name"),
	Title:    say("check.duct-clean-outs.title"),
	Needs:    "duct.clean_outs, duct.route or duct.length, duct.size, shop.rules",
	Whom:     Authority,
	Compares: []string{"duct-clean-outs"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := cleanable(p.Shop, c); told {
				report(f)
			}
		}
	},
}

// cleanOutsTo is the largest duct that the figure is for.
var cleanOutsTo = unit.Must[unit.Length](figure("clean-outs of ducts").Text("value"))

// cleanable judges the ducts of a collector that run level for longer than the
// text lets them without a clean-out.
func cleanable(s *shop.Shop, c *shop.Collector) (f Finding, told bool) {
	rule := rulesOn(s, "duct-clean-outs")
	most := measureOf[unit.Length](rule)
	given := func(d *shop.Duct) []unit.Length { return d.CleanOuts }
	var list []ductHeld
	longest := unit.Length(0)
	for _, d := range ductsOn(s, c) {
		level, _ := withoutCleanOut(d, noCleanOuts)
		if !unit.AtLeast(float64(cleanOutsTo), float64(d.Size)) || unit.AtLeast(float64(most), float64(level)) {
			continue
		}
		h := ductHeld{duct: d, state: NotGiven, rule: rule, got: say("finding-duct.with", d.Name, unit.Run.Print(s.Units, level))}
		if way, _ := withoutCleanOut(d, given); d.CleanOuts != nil {
			longest = max(longest, way)
			h.state = softly(rule, unit.AtLeast(float64(most), float64(way)))
			h.got = say("finding-duct.with", d.Name, unit.Run.Print(s.Units, way))
		}
		list = append(list, h)
	}
	if len(list) == 0 {
		return f, false
	}
	f, worst := ductsOf(c, list)
	limit, what, text := unit.Run.Print(s.Units, most), gotOf(worst), textOf(rule)
	if longest > 0 {
		at := float64(most)
		f.Figures = []Figure{{Name: say("finding-duct-clean-outs.figure"), Value: float64(longest), Unit: "m", Limit: &at, Basis: rule.Basis}}
	}
	switch f.State {
	case NotGiven:
		f.Says = sayOf(len(worst), "finding-duct-clean-outs.not-given.says", what)
		f.Do = say("finding-duct-clean-outs.not-given.do", limit)
		return f, true
	case Met, Advice:
		f.Says, f.Do = say("finding-duct-clean-outs.kept.says", limit, text, what), say("finding-duct-clean-outs.kept.do")
	default:
		f.Says = sayOf(len(worst), "finding-duct-clean-outs.far.says", what, limit, text)
		f.Do, f.Asks = say("finding-duct-clean-outs.far.do", limit), say("finding-duct-clean-outs.asks", what, limit)
	}
	f.Says = join(f.Says, rule.remark())
	if missing := ductsIn(list, NotGiven); len(missing) > 0 {
		f.Says = join(f.Says, sayOf(len(missing), "finding-duct-clean-outs.not-given.says", gotOf(missing)))
	}
	weigh(s, &f, rule)
	return f, true
}
