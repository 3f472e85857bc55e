package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var bondedDuct = &Check{
	ID:    "bonded-duct",
	Name:  say("check.bonded-duct.name"),
	Title: say("check.bonded-duct.title"),
	Needs: "duct.bonded, duct.material, duct.conductive, shop.rules, shop.setting",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			unmeasured(p, c, report)
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

// unmeasured names the conducting ducts of a collector whose resistance to
// earth is not given.
func unmeasured(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	var names []string
	for _, d := range p.Shop.Ducts {
		if d.Collector == c && conducts(d) && !d.Bonded.Known() {
			names = append(names, d.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	report(Finding{
		About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: bondBasis(),
		Says: sayOf(len(names), "finding-bonded-duct.not-given.says", listed(firstFew(names))), Do: say("finding-bonded-duct.not-given.do"),
	})
}

// The resistances a path to earth is held against: below the one it drains
// charge, up to the other its metal joints are good.
var (
	bondDrains = unit.Must[unit.Resistance](figure("bond drains below").Text("value"))
	bondJoint  = unit.Must[unit.Resistance](figure("bond of metal most").Text("value"))
)

// bondBasis are the texts with those figures.
func bondBasis() []source.Basis {
	return []source.Basis{figure("bond drains below").Basis, figure("bond of metal most").Basis}
}

// judgeBond holds a resistance to earth against both figures. They decide
// where their texts are in play: under the rules they belong to, where people
// work or are taught. Elsewhere they are shown, and asked once passed.
func judgeBond(s *shop.Shop, f *Finding, r unit.Resistance) {
	people, known := peopleEmployedOrTaught(s)
	home := known && !people
	decides := s.Rules == "us" && !home
	drains := unit.Compare(float64(r), float64(bondDrains)) < 0
	joint := unit.AtLeast(float64(bondJoint), float64(r))
	f.By, f.Basis = ByRule, bondBasis()
	limit, from := float64(bondDrains), f.Basis[0]
	if drains {
		limit, from = float64(bondJoint), f.Basis[1]
	}
	f.Figures = []Figure{{Name: say("finding-bonded-duct.ohms"), Value: float64(r), Unit: "ohm", Limit: &limit, Basis: from}}
	got, most := unit.Ohms.Print(s.Units, r), unit.Ohms.Print(s.Units, unit.Resistance(limit))
	switch {
	case !drains:
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
	if decides {
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
