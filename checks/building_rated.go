package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
)

var ratedWall = &Check{
	ID:    "rated-wall",
	Name:  say("check.rated-wall.name"),
	Title: say("check.rated-wall.title"),
	Whom:  Authority,
	Needs: "wall.rating, wall.divides, duct.route",
	Run: func(p *plan.Plan, report func(Finding)) {
		rated(p, report)
	},
}

// ratedBasis are the texts on ducts that pass walls built to hold back fire.
var ratedBasis = basesOf("rated-wall")

// rated asks about every duct that crosses a wall built to hold back fire. The
// wall between garage and dwelling has a check of its own.
func rated(p *plan.Plan, report func(Finding)) {
	var walls []*shop.Wall
	for _, w := range p.Shop.Walls {
		if w.Divides.V != "garage from dwelling" && (w.Rating.Known() || w.Divides.Known()) {
			walls = append(walls, w)
		}
	}
	if len(walls) == 0 {
		return
	}
	var crossing bool
	var lost []string
	for _, d := range p.Shop.Ducts {
		if d.Route == nil {
			lost = append(lost, d.Name)
			continue
		}
		for _, w := range walls {
			if crosses(d.Route, w) {
				crossing = true
				report(through(d, w))
			}
		}
	}
	f := Finding{At: walls[0].At, By: ByTopology, Weight: Know, Basis: ratedBasis}
	switch {
	case len(lost) > 0:
		f.State = NotGiven
		f.Says, f.Do = sayOf(len(lost), "finding-rated-wall.no-route.says", listed(firstFew(lost))), say("finding-rated-wall.no-route.do")
	case !crossing:
		f.State = Met
		f.Says, f.Do = say("finding-rated-wall.none.says"), say("finding-rated-wall.none.do")
	default:
		return
	}
	report(f)
}

// through is what is asked of one duct that crosses one wall.
func through(d *shop.Duct, w *shop.Wall) Finding {
	var what string
	switch {
	case w.Rating.Known() && w.Divides.Known():
		what = say("finding-rated-wall.rated-divides", w.Rating.V, dividesWords(w))
	case w.Rating.Known():
		what = say("finding-rated-wall.rated", w.Rating.V)
	default:
		what = say("finding-rated-wall.unrated", dividesWords(w))
	}
	return Finding{About: d.Name, Kind: "duct", At: d.At, State: Ask, By: ByTopology, Weight: Mend, Basis: ratedBasis,
		Says: say("finding-rated-wall.crosses.says", what), Do: say("finding-rated-wall.crosses.do"), Asks: say("finding-rated-wall.crosses.asks", d.Name, what)}
}

// dividesWords says what a wall keeps apart.
func dividesWords(w *shop.Wall) string {
	switch w.Divides.V {
	case "shop from dwelling":
		return say("finding-rated-wall.shop")
	case "tenant from tenant":
		return say("finding-rated-wall.tenant")
	}
	return say("finding-rated-wall.area")
}
