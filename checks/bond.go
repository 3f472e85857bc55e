package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var bondedDuct = &Check{
	ID:       "bonded-duct",
	Name:     say("check.bonded-duct.name"),
	Title:    say("check.bonded-duct.title"),
	Whom:     Electrician,
	Compares: []string{"bond-drains", "bond-joint"},
	Needs:    "duct.bonded, collector.bonded, duct.material, duct.conductive, shop.rules, shop.setting, shop.employees",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := bondOf(p, c); told {
				report(f)
			}
		}
		for _, d := range p.Shop.Ducts {
			if conducts(d) && d.Bonded.Known() {
				f := Finding{About: d.Name, Kind: "duct", At: d.At, Weight: Know}
				judgeBond(p.Shop, &f, d.Bonded.V)
				report(f)
			}
		}
	},
}

// conducts reports whether a duct conducts by what the file says of it.
func conducts(d *shop.Duct) bool {
	return d.Conducts && (d.MaterialStated || d.Conductive.Known())
}

// bondOfBin reports whether the resistance of a collector is looked at with its
// bin, by the check of fine dust.
func bondOfBin(p *plan.Plan, c *shop.Collector) bool {
	_, look := intoBin(p, c)
	return look && conductingBin(c.Bin)
}

// bondOf is the finding about a collector: its own resistance, and what of it and
// of its ducts is not given.
func bondOf(p *plan.Plan, c *shop.Collector) (f Finding, told bool) {
	f = Finding{About: c.Name, Kind: "collector", At: c.At, Weight: Know}
	missing := unmeasured(p, c)
	if c.Bonded.Known() && !bondOfBin(p, c) {
		if judgeBond(p.Shop, &f, c.Bonded.V); missing == "" || f.State != Met {
			f.Says = join(f.Says, missing)
			return f, true
		}
	}
	f.State, f.By, f.Basis = NotGiven, ByGiven, bondBasis(p.Shop)
	f.Says, f.Do = join(missing, f.Says), say("finding-bonded-duct.not-given.do")
	return f, missing != ""
}

// unmeasured says which conducting ducts of a collector have no resistance to
// earth in the file, and whether the collector on which they hang has none.
func unmeasured(p *plan.Plan, c *shop.Collector) (says string) {
	var names []string
	metal := false
	for _, d := range p.Shop.Ducts {
		if d.Collector == c && conducts(d) {
			if metal = true; !d.Bonded.Known() {
				names = append(names, d.Name)
			}
		}
	}
	if len(names) > 0 {
		says = sayOf(len(names), "finding-bonded-duct.not-given.says", listed(firstFew(names)))
	}
	if metal && !c.Bonded.Known() && !bondOfBin(p, c) {
		says = join(says, say("finding-bonded-duct.collector-not-given.says"))
	}
	return says
}

// bondBasis are the texts with the figures of a path to earth.
func bondBasis(s *shop.Shop) []source.Basis {
	return []source.Basis{rulesOn(s, "bond-drains").Basis, rulesOn(s, "bond-joint").Basis}
}

// judgeBond holds a resistance to earth against both figures. A figure decides
// where its text is in play: under the rules it belongs to, where people work or
// are taught; and wherever the owner has had it confirmed. Elsewhere it is
// shown, and asked once passed.
func judgeBond(s *shop.Shop, f *Finding, r unit.Resistance) {
	people, known := peopleEmployedOrTaught(s)
	home := known && !people
	drainRule, jointRule := rulesOn(s, "bond-drains"), rulesOn(s, "bond-joint")
	bondDrains, bondJoint := measureOf[unit.Resistance](drainRule), measureOf[unit.Resistance](jointRule)
	decides := func(rule ruled) bool { return rule.Confirmed || rule.Decides && !home }
	drains := unit.Compare(float64(r), float64(bondDrains)) < 0
	joint := unit.AtLeast(float64(bondJoint), float64(r))
	f.By, f.Basis = ByRule, bondBasis(s)
	limit, from := float64(bondDrains), f.Basis[0]
	if drains {
		limit, from = float64(bondJoint), f.Basis[1]
	}
	f.Figures = []Figure{{Name: say("finding-bonded-duct.ohms"), Value: float64(r), Unit: "ohm", Limit: &limit, Basis: from}}
	got, most := unit.Ohms.Print(s.Units, r), unit.Ohms.Print(s.Units, unit.Resistance(limit))
	decided := decides(drainRule) || decides(jointRule)
	switch {
	case !drains:
		decided = decides(drainRule)
		f.State, f.Weight = NotMet, Mend
		f.Says = join(f.Says, say("finding-bonded-duct.open.says", got, most))
		f.Do = say("finding-bonded-duct.open.do")
		f.Asks = say("finding-bonded-duct.open.asks", f.About, got)
	case !joint:
		f.State = Thin
		f.Says = join(f.Says, say("finding-bonded-duct.doubtful.says", got, most))
		f.Do = say("finding-bonded-duct.doubtful.do")
	default:
		f.State = Met
		f.Says = join(f.Says, say("finding-bonded-duct.good.says", got, most))
		f.Do = say("finding-bonded-duct.good.do")
	}
	if decided {
		return
	}
	if f.State = Advice; !drains && !home {
		f.State = Ask
	}
	if home {
		f.Asks = ""
	}
	f.Says = join(f.Says, say("finding-bonded-duct.elsewhere.says"))
}
