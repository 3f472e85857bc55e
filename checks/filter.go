package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

var filterLoad = &Check{
	ID:       "filter-load",
	Name:     say("check.filter-load.name"),
	Title:    say("check.filter-load.title"),
	Needs:    "collector.exhaust, collector.filter, filter.area, shop.rules",
	Whom:     Maker,
	Compares: []string{"filter-load"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if !c.Exhaust.Known() || c.Exhaust.V == "returns to room" {
				report(loaded(p, c))
			}
		}
	},
}

// loaded judges the filter of one collector whose air goes back into a room.
func loaded(p *plan.Plan, c *shop.Collector) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know}
	load := p.Takeoff.Filter(c)
	switch {
	case !c.Exhaust.Known():
		f.Says, f.Do = say("finding-filter-load.no-exhaust.says"), say("finding-filter-load.no-exhaust.do")
	case load == nil:
		f.Says, f.Do = say("finding-filter-load.no-filter.says"), say("finding-filter-load.no-filter.do")
	case len(load.Missing) > 0:
		f.Says, f.Do = say("finding-filter-load.no-area.says"), say("finding-filter-load.no-area.do")
	case !load.Known():
		f.Says = say("finding-filter-load.no-flow.says")
		f.Do = say("finding-air-captured.off-curve.do", say("check.fan-on-curve.name"))
	default:
		holdLoad(p, &f, load)
	}
	return f
}

// holdLoad holds a filter's load against the figure of the text that was read,
// or the one that the owner has had confirmed. The text is in play under the
// rules it belongs to; elsewhere its figure is shown, and asked once passed.
func holdLoad(p *plan.Plan, f *Finding, load *takeoff.Filter) {
	rule := rulesOn(p.Shop, "filter-load")
	most, basis := measureOf[unit.Velocity](rule), rule.Basis
	units, limit := p.Shop.Units, float64(most)
	got, want := unit.Feed.Pair(units, load.Speed, most)
	f.By, f.Basis = ByRule, []source.Basis{basis}
	f.Figures = []Figure{{Name: say("finding-filter-load.speed"), Value: float64(load.Speed), Unit: "m/s", Limit: &limit, Basis: basis}}
	passed := !unit.AtLeast(limit, float64(load.Speed))
	key := "finding-filter-load.within.says"
	if f.Do = say("finding-filter-load.within.do"); passed {
		key, f.Do = "finding-filter-load.over.says", say("finding-filter-load.over.do")
		f.Asks = say("finding-filter-load.over.asks", load.Collector.Name, got, unit.Feed.Unit(units))
	}
	f.Says = say(key, got, want, unit.Feed.Unit(units), load.Use, basis.TitleIn(english.Mark))
	if f.State = rule.holds(!passed); f.State == Ask && !passed {
		f.State = Advice
	}
	if f.State == NotMet {
		f.Weight = Mend
	}
	if !rule.Decides {
		f.Says = join(f.Says, rule.remark())
	}
}
