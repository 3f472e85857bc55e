package checks

import (
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var garageSeparation = &Check{
	Stops:    true,
	ID:       "garage-separation",
	Name:     say("check.garage-separation.name"),
	Title:    say("check.garage-separation.title"),
	Whom:     Authority,
	Compares: []string{"garage-duct-gauge", "garage-duct-thickness"},
	Needs:    "wall.divides, duct.route, duct.material, duct.gauge or duct.wall, shop.rules, shop.setting",
	Answers:  settledBy("garage-separation", say("check.garage-separation.settles")),
	Run: func(p *plan.Plan, report func(Finding)) {
		separation(p, report)
	},
}

// garageBasis is the text on ducts between garage and dwelling.
var garageBasis = basesOf("garage-separation")

func separation(p *plan.Plan, report func(Finding)) {
	var walls []*shop.Wall
	for _, w := range p.Shop.Walls {
		if w.Divides.V == "garage from dwelling" {
			walls = append(walls, w)
		}
	}
	f := Finding{By: ByTopology, Basis: garageBasis, Weight: Know}
	if len(walls) == 0 {
		if p.Shop.Setting.V == "home" {
			f.State = NotGiven
			f.Says = say("finding-garage-separation.no-wall.says")
			f.Do = say("finding-garage-separation.no-wall.do")
			report(f)
		}
		return
	}
	crossed := false
	var lost []*shop.Duct
	for _, d := range p.Shop.Ducts {
		if d.Route == nil {
			lost = append(lost, d)
			continue
		}
		for _, w := range walls {
			if crosses(d.Route, w) {
				report(crossing(p, d))
				crossed = true
				break
			}
		}
	}
	switch {
	case len(lost) > 0:
		report(routeless(f, lost))
	case !crossed:
		f.At = walls[0].At
		f.State = Met
		f.Says = say("finding-garage-separation.none.says")
		f.Do = say("finding-garage-separation.none.do")
		report(f)
	}
}

// routeless says which ducts have no route: of one alone, or of all at once.
func routeless(f Finding, lost []*shop.Duct) Finding {
	f.At, f.State = lost[0].At, NotGiven
	f.Do = say("finding-garage-separation.no-route.do")
	if len(lost) == 1 {
		f.About, f.Kind = lost[0].Name, "duct"
		f.Says = say("finding-garage-separation.no-route.says")
		return f
	}
	var names []string
	for _, d := range lost {
		names = append(names, d.Name)
	}
	f.Says = say("finding-garage-separation.no-routes.says", listed(firstFew(names)))
	return f
}

// crossing judges one duct that crosses the wall. What it is held against is
// the text's gauge, or its thickness where the file gives that.
func crossing(p *plan.Plan, d *shop.Duct) Finding {
	s := p.Shop
	rule, enough, known := steelEnough(s, d)
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByRule, Basis: []source.Basis{rule.Basis}, Weight: Stop}
	f.Asks = say("finding-garage-separation.crosses.asks", d.Name, steelWords(s))
	f.Do = say("finding-garage-separation.crosses.do")
	switch {
	case !rule.Decides && rule.Elsewhere:
		f.State = Ask
		f.Says = say("finding-garage-separation.no-rules.says")
	case !rule.Decides:
		f.State = Ask
		f.Says = join(say("finding-garage-separation.crosses.says"), rule.remark())
	case !d.MaterialStated:
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-garage-separation.no-material.says")
		f.Do = join(say("finding-garage-separation.no-material.do"), f.Do)
	case !strings.Contains(d.Material, "steel"):
		f.State = NotMet
		f.Says = say("finding-garage-separation.not-steel.says", d.Material, steelWords(s))
	case !known:
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-garage-separation.no-gauge.says")
		f.Do = join(say("finding-garage-separation.no-gauge.do"), f.Do)
	case !enough:
		f.State = NotMet
		f.Says = say("finding-garage-separation.thin.says", steelWords(s))
	default:
		f.State = Ask
		f.Says = join(say("finding-garage-separation.thick.says"), otherGauge(d))
	}
	return f
}

// steelEnough holds a duct's steel against the text. Its gauge is held against
// the gauge, its thickness against the thickness; where neither is given,
// the figure counts that was confirmed.
func steelEnough(s *shop.Shop, d *shop.Duct) (rule ruled, enough, known bool) {
	gauge, thick := rulesOn(s, "garage-duct-gauge"), rulesOn(s, "garage-duct-thickness")
	switch {
	case d.Wall.Known():
		return thick, unit.AtLeast(float64(d.Wall.V), float64(measureOf[unit.Length](thick))), true
	case d.Gauge.Known():
		least, err := unit.ReadGauge(gauge.Value)
		return gauge, err == nil && d.Gauge.V <= least, true
	case thick.Confirmed:
		return thick, false, false
	}
	return gauge, false, false
}

// otherGauge says that another page has a thicker gauge, where the duct's is
// thinner than that; empty where it is not.
func otherGauge(d *shop.Duct) string {
	other := figure("garage duct gauge on another page").Text("value")
	if g, err := unit.ReadGauge(other); err == nil && d.Gauge.Known() && d.Gauge.V > g {
		return say("finding-garage-separation.other-gauge.says", other)
	}
	return ""
}

// steelWords says what the text wants.
func steelWords(s *shop.Shop) string {
	return say("finding-garage-separation.steel", rulesOn(s, "garage-duct-gauge").Value, rulesOn(s, "garage-duct-thickness").Value)
}

// crosses reports whether a route passes through a wall, seen from above. A
// route that only touches it counts as crossing.
func crosses(route []shop.Spot, w *shop.Wall) bool {
	for i := 1; i < len(route); i++ {
		a, b := shop.Point{X: route[i-1].X, Y: route[i-1].Y}, shop.Point{X: route[i].X, Y: route[i].Y}
		if left(a, b, w.From) != left(a, b, w.To) && left(w.From, w.To, a) != left(w.From, w.To, b) {
			return true
		}
	}
	return false
}

// left tells whether a point lies to the left of the line from a to b, or on
// it.
func left(a, b, p shop.Point) bool {
	return unit.Six((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X)) >= 0
}
