package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var outletProperty = &Check{
	ID:       "outlet-property",
	Name:     say("check.outlet-property.name"),
	Title:    say("check.outlet-property.title"),
	Whom:     Authority,
	Compares: []string{"outlet-property"},
	Needs:    "collector.exhaust, outlet.to_property, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if c.Exhaust.V == "outside" {
				report(fromNeighbours(p.Shop, c))
			}
		}
	},
}

// fromNeighbours judges how far the mouth of one collector's outlet is from the
// property line.
func fromNeighbours(s *shop.Shop, c *shop.Collector) Finding {
	rule := rulesOn(s, "outlet-property")
	least := measureOf[unit.Length](rule)
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: rule})}
	if c.Outlet == nil || !c.Outlet.ToProperty.Known() {
		f.Says, f.Do = say("finding-outlet-property.missing.says", unit.Run.Print(s.Units, least), briefly(rule)), say("finding-outlet-property.missing.do")
		return f
	}
	limit, has := float64(least), c.Outlet.ToProperty.V
	kept := unit.AtLeast(float64(has), limit)
	got, want := unit.Run.Pair(s.Units, has, least)
	in := unit.Run.Unit(s.Units)
	f.By, f.State = ByRule, rule.holds(kept)
	f.Figures = []Figure{{Name: say("finding-outlet-property.distance"), Value: float64(has), Unit: "m", Limit: &limit, Basis: rule.Basis}}
	if kept {
		f.Says, f.Do = say("finding-outlet-property.kept.says", got, want, in, briefly(rule)), say("finding-outlet-property.kept.do")
	} else {
		f.Says, f.Do = say("finding-outlet-property.near.says", got, want, in, briefly(rule)), say("finding-outlet-property.near.do")
	}
	if f.State != Met {
		f.Asks = say("finding-outlet-property.asks", c.Name, got, in)
	}
	f.Says = join(f.Says, rule.remark())
	weigh(s, &f, rule)
	return f
}

var outletNear = &Check{
	ID:       "outlet-openings",
	Name:     say("check.outlet-openings.name"),
	Title:    say("check.outlet-openings.title"),
	Whom:     Authority,
	Compares: []string{"outlet-openings", "outlet-ground"},
	Needs:    "collector.exhaust, outlet.to_opening, outlet.above_ground, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if c.Exhaust.V == "outside" {
				report(fromOpenings(p.Shop, c))
			}
		}
	},
}

// fromOpenings judges how far the mouth of one collector's outlet is from doors,
// windows and air intakes, and how high above the ground.
func fromOpenings(s *shop.Shop, c *shop.Collector) Finding {
	opening, ground := rulesOn(s, "outlet-openings"), rulesOn(s, "outlet-ground")
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: opening}, part{rule: ground})}
	print := func(l unit.Length) string { return unit.Run.Print(s.Units, l) }
	figures := say("finding-outlet-openings.figures.says", print(measureOf[unit.Length](opening)), print(measureOf[unit.Length](ground)))
	if c.Outlet == nil || !c.Outlet.ToOpening.Known() || !c.Outlet.AboveGround.Known() {
		f.Says, f.Do = join(say("finding-outlet-openings.missing.says"), figures), say("finding-outlet-openings.missing.do")
		return f
	}
	away, up := c.Outlet.ToOpening.V, c.Outlet.AboveGround.V
	parts := []part{
		{opening, unit.AtLeast(float64(away), float64(measureOf[unit.Length](opening)))},
		{ground, unit.AtLeast(float64(up), float64(measureOf[unit.Length](ground)))},
	}
	kept := parts[0].kept && parts[1].kept
	f.By, f.State = ByRule, partsState(parts...)
	f.Says = join(say("finding-outlet-openings.stands.says", print(away), print(up)), figures, partsRemark(parts...))
	switch {
	case !kept:
		f.Do = say("finding-outlet-openings.near.do")
	case f.State == Ask:
		f.State, f.Do = Advice, join(say("finding-outlet-openings.look-up.do"), say("finding-outlet-openings.kept.do"))
	default:
		f.Do = say("finding-outlet-openings.kept.do")
	}
	if f.State == Ask {
		f.Asks = say("finding-outlet-openings.asks", c.Name, print(away), print(up))
	}
	weigh(s, &f, opening, ground)
	return f
}
