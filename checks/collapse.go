package checks

import (
	"math"
	"slices"

	"dustbook/plan"
	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var ductCollapse = &Check{
	ID:    "duct-collapse",
	Name:  say("check.duct-collapse.name"),
	Title: say("check.duct-collapse.title"),
	Needs: "duct.size, duct.material, duct.gauge or duct.wall, duct.rings, collector.fan_curve",
	Run: func(p *plan.Plan, report func(Finding)) {
		list := p.Air.Collapses()
		for _, c := range p.Shop.Collectors {
			for _, field := range missingOf(list, c) {
				report(unknownWall(list, c, field))
			}
		}
		for _, c := range list {
			if c.Known() {
				report(flattened(p, c))
			}
		}
	},
}

// collapseBasis are the marks of the figures that the formula is made of.
var collapseBasis = marksOf(duct.CollapseTables()[1])

// marksOf are the bases of a table's rows, each once.
func marksOf(t source.Table) []source.Basis {
	var list []source.Basis
	for _, r := range t.Rows {
		if !slices.Contains(list, r.Basis) {
			list = append(list, r.Basis)
		}
	}
	return list
}

// missingOf lists the fields that ducts of a collector wait for.
func missingOf(list []*duct.Collapse, c *shop.Collector) []string {
	var fields []string
	for _, at := range list {
		if at.Duct.Collector == c && !at.Known() {
			fields = append(fields, at.Missing)
		}
	}
	return unique(fields)
}

// unknownWall says which ducts of a collector wait for a field.
func unknownWall(list []*duct.Collapse, c *shop.Collector, field string) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know}
	var names []string
	for _, at := range list {
		if at.Duct.Collector == c && at.Missing == field {
			names = append(names, at.Duct.Name)
		}
	}
	what := listed(firstFew(names))
	switch field {
	case "duct.gauge":
		f.Says, f.Do = sayOf(len(names), "finding-duct-collapse.no-gauge.says", what), say("finding-duct-collapse.no-gauge.do")
	case "duct.wall":
		f.Says, f.Do = sayOf(len(names), "finding-duct-collapse.no-wall.says", what), say("finding-duct-collapse.no-wall.do")
	default:
		f.Says, f.Do = say("finding-duct-collapse.no-curve.says", what), say("finding-duct-collapse.no-curve.do")
	}
	return f
}

// flattened holds what a duct bears against the greatest suction of its fan.
func flattened(p *plan.Plan, c *duct.Collapse) Finding {
	units, d := p.Shop.Units, c.Duct
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByModel, Weight: Know}
	f.Basis = slices.Concat([]source.Basis{c.Basis}, collapseBasis)
	if math.IsInf(float64(c.Bears), 1) {
		f.State = Met
		f.Says, f.Do = say("finding-duct-collapse.rings-touch.says"), say("finding-duct-collapse.met.do")
		return f
	}
	limit := float64(c.Bears)
	f.Figures = []Figure{{Name: say("finding-duct-collapse.suction"), Value: float64(c.Suction), Unit: "Pa", Limit: &limit, Basis: c.Basis}}
	bears, pulls := unit.Press.Pair(units, c.Bears, c.Suction)
	if c.Holds {
		if !d.MaterialStated {
			f.State, f.By = NotGiven, ByGiven
			f.Says = say("finding-duct-collapse.no-material.says", d.Material, bears, pulls, unit.Press.Unit(units))
			f.Do = say("finding-conductive-duct.no-duct-material.do")
			return f
		}
		f.State = Met
		f.Says = say("finding-duct-collapse.met.says", bears, pulls, unit.Press.Unit(units))
		f.Do = say("finding-duct-collapse.met.do")
		if len(d.Collector.Curve) == 0 {
			f.State = Thin
			f.Says, f.Do = join(f.Says, say("finding-common.two-claims.says")), say("finding-common.ask-curve.do")
		}
		return f
	}
	f.State, f.Weight = NotMet, Mend
	f.Says = say("finding-duct-collapse.flat.says", bears, pulls, unit.Press.Unit(units))
	if !d.Rings.Known() {
		f.Says = join(f.Says, say("finding-duct-collapse.no-rings.says"))
	}
	f.Do = join(say("finding-duct-collapse.flat.do"), relieved(p, c), leastOpen(p, c))
	return f
}

// relieved is the relief gate that keeps the suction within what a duct bears.
func relieved(p *plan.Plan, c *duct.Collapse) string {
	flow, hole, known := p.Air.TreeOf(c.Duct.Collector).Relief(c.Bears)
	if !known || hole <= 0 {
		return ""
	}
	units := p.Shop.Units
	return say("finding-duct-collapse.relief.do", unit.Press.Print(units, c.Bears), unit.Air.Print(units, flow), unit.Size.Print(units, air.Diameter(hole)))
}

// leastOpen names the uses that pass what a duct bears while they run.
func leastOpen(p *plan.Plan, c *duct.Collapse) string {
	var names []string
	for _, u := range p.Air.LeastOpen(p.Air.TreeOf(c.Duct.Collector), c.Bears) {
		names = append(names, u.Name)
	}
	if len(names) == 0 {
		return say("finding-duct-collapse.shut-only.do")
	}
	return sayOf(len(names), "finding-duct-collapse.least-open.do", listed(firstFew(names)))
}
