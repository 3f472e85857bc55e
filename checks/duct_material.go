package checks

import (
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
)

var ductMaterial = &Check{
	ID:       "duct-material",
	Name:     say("check.duct-material.name"),
	Title:    say("check.duct-material.title"),
	Needs:    "duct.material, shop.setting, shop.employees, shop.rules",
	Whom:     Authority,
	Compares: []string{"duct-material"},
	Run: func(p *plan.Plan, report func(Finding)) {
		people, known := peopleEmployedOrTaught(p.Shop)
		if known && !people {
			return // the text is not for a home
		}
		for _, c := range p.Shop.Collectors {
			if f, told := ofListed(p.Shop, c, known); told {
				report(f)
			}
		}
	},
}

// materialBases are texts of other places on the material of a duct.
var materialBases = basesOf("duct-material")

// ofListed judges what the ducts of a collector are made of against the list of
// the rules, on which there is no plastic for dust.
func ofListed(s *shop.Shop, c *shop.Collector, settled bool) (f Finding, told bool) {
	rule := rulesOn(s, "duct-material")
	var list []ductHeld
	var materials []string
	for _, d := range ductsOn(s, c) {
		h := ductHeld{duct: d, state: NotGiven, rule: rule, got: d.Name}
		if plastic := strings.Contains(d.Material, "plastic"); d.MaterialStated {
			if h.state = softly(rule, !plastic); plastic {
				materials = append(materials, d.Material)
			}
			h.got = say("finding-duct.with", d.Name, d.Material)
		}
		list = append(list, h)
	}
	if len(list) == 0 || !settled && len(materials) == 0 {
		return f, false
	}
	f, worst := ductsOf(c, list)
	f.Basis = slices.Concat(f.Basis, materialBases)
	what := gotOf(worst)
	switch {
	case !settled:
		f.State, f.By, f.Weight = NotGiven, ByGiven, Know
		f.Says, f.Do = say("finding-duct-material.no-setting.says", what), say("finding-conductive-duct.no-setting.do")
		return f, true
	case f.State == NotGiven:
		f.Says, f.Do = sayOf(len(worst), "finding-duct-material.not-given.says", what), say("finding-conductive-duct.no-duct-material.do")
		return f, true
	case f.State == Met || f.State == Advice:
		f.Says, f.Do = say("finding-duct-material.kept.says"), say("finding-duct-material.kept.do")
	default:
		f.Says, f.Do = say("finding-duct-material.plastic.says", what, textOf(rule)), say("finding-duct-material.plastic.do")
		f.Asks = say("finding-duct-material.plastic.asks", listed(unique(materials)))
	}
	f.Says = join(f.Says, unread(rule))
	return f, true
}
