package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var ductSupports = &Check{
	ID:       "duct-supports",
	Name:     say("check.duct-supports.name"),
	Title:    say("check.duct-supports.title"),
	Needs:    "duct.hangers, duct.route or duct.length, shop.rules",
	Whom:     Authority,
	Compares: []string{"duct-supports"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := supported(p.Shop, c); told {
				report(f)
			}
		}
	},
}

// supported judges the supports of the ducts of a collector that run level for
// longer than two supports may stand apart.
func supported(s *shop.Shop, c *shop.Collector) (f Finding, told bool) {
	rule := rulesOn(s, "duct-supports")
	most := measureOf[unit.Length](rule)
	var list []ductHeld
	widest := unit.Length(0)
	for _, d := range ductsOn(s, c) {
		if unit.AtLeast(float64(most), float64(longestLevel(d))) {
			continue
		}
		h := ductHeld{duct: d, state: NotGiven, rule: rule, got: d.Name}
		if d.Hangers.Known() {
			widest = max(widest, d.Hangers.V)
			h.state = softly(rule, unit.AtLeast(float64(most), float64(d.Hangers.V)))
			h.got = say("finding-duct.with", d.Name, unit.Run.Print(s.Units, d.Hangers.V))
		}
		list = append(list, h)
	}
	if len(list) == 0 {
		return f, false
	}
	f, worst := ductsOf(c, list)
	limit, what, text := unit.Run.Print(s.Units, most), gotOf(worst), textOf(rule)
	if widest > 0 {
		at := float64(most)
		f.Figures = []Figure{{Name: say("finding-duct-supports.figure"), Value: float64(widest), Unit: "m", Limit: &at, Basis: rule.Basis}}
	}
	switch f.State {
	case NotGiven:
		f.Says = sayOf(len(worst), "finding-duct-supports.not-given.says", what)
		f.Do = say("finding-duct-supports.not-given.do")
		return f, true
	case Met, Advice:
		f.Says, f.Do = say("finding-duct-supports.kept.says", limit, text, what), say("finding-duct-supports.kept.do")
	default:
		f.Says = sayOf(len(worst), "finding-duct-supports.far.says", what, limit, text)
		f.Do, f.Asks = say("finding-duct-supports.far.do", limit), say("finding-duct-supports.asks", what, limit)
	}
	f.Says = join(f.Says, rule.remark())
	if missing := ductsIn(list, NotGiven); len(missing) > 0 {
		f.Says = join(f.Says, sayOf(len(missing), "finding-duct-supports.not-given.says", gotOf(missing)))
	}
	weigh(s, &f, rule)
	return f, true
}
