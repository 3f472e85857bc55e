package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var collectorPlace = &Check{
	ID:       "collector-place",
	Name:     say("check.collector-place.name"),
	Title:    say("check.collector-place.title"),
	Needs:    "collector.room, collector.at, collector.to_combustible, room.outline, shop.rules",
	Whom:     Authority,
	Compares: []string{"collector-outdoors"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			report(placed(p.Shop, c))
		}
	},
}

// stands is where a collector stands by the file.
type stands uint8

const (
	nowhere  stands = iota // the file does not say
	indoors                // in a room that is drawn
	outdoors               // on the plan, and in no room of those that are drawn
)

func standing(s *shop.Shop, c *shop.Collector) stands {
	switch {
	case c.Room != nil:
		return indoors
	case c.Place.Known() && len(s.Rooms) > 0:
		return outdoors
	}
	return nowhere
}

// placed judges where one collector stands: outdoors by its distance to what
// burns or opens; indoors it is a question.
func placed(s *shop.Shop, c *shop.Collector) Finding {
	rule := rulesOn(s, "collector-outdoors")
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: []source.Basis{rule.Basis}}
	switch at := standing(s, c); {
	case at == nowhere:
		f.Says, f.Do = say("finding-collector-place.nowhere.says"), say("finding-collector-place.nowhere.do")
		return f
	case at == indoors:
		f.State, f.By = Ask, ByTopology
		f.Says, f.Do = say("finding-collector-place.indoors.says", c.Room.Name, shortOf(rowsOf(rule.Figure)[0].Basis)), say("finding-collector-place.indoors.do")
		f.Asks = say("finding-collector-place.indoors.asks", c.Name, c.Room.Name)
		f.Says = join(f.Says, unread(rule))
		return f
	case !c.ToCombustible.Known():
		f.Says, f.Do = say("finding-collector-place.no-distance.says"), say("finding-collector-place.no-distance.do")
		return f
	}
	least := measureOf[unit.Length](rule)
	kept := unit.AtLeast(float64(c.ToCombustible.V), float64(least))
	got, want := unit.Run.Pair(s.Units, c.ToCombustible.V, least)
	f.By = ByRule
	f.Figures = []Figure{{Name: say("finding-collector-place.distance"), Value: float64(c.ToCombustible.V), Unit: "m", Limit: limitOf(least), Basis: rule.Basis}}
	f.State = rule.holds(kept)
	f.Says, f.Do = say("finding-collector-place.far.says", got, unit.Run.Unit(s.Units), want), say("finding-collector-place.far.do")
	if !kept {
		f.Weight = Mend
		f.Says, f.Do = say("finding-collector-place.near.says", got, unit.Run.Unit(s.Units), want), say("finding-collector-place.near.do")
	}
	f.Asks = unlessMet(f.State, say("finding-collector-place.outdoors.asks", c.Name, got+" "+unit.Run.Unit(s.Units)))
	f.Says = join(f.Says, rule.remark())
	weigh(s, &f, rule)
	return f
}
