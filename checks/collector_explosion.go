package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var explosionProtection = &Check{
	ID:       "explosion-protection",
	Name:     say("check.explosion-protection.name"),
	Title:    say("check.explosion-protection.title"),
	Needs:    "collector.dirty_volume, collector.room, collector.exhaust, shop.rules",
	Whom:     Authority,
	Compares: []string{"dirty-volume"},
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if carriesWood(p, c) {
				report(protected(p.Shop, c))
			}
		}
	},
}

// carriesWood reports whether a machine that makes wood dust is on a collector.
func carriesWood(p *plan.Plan, c *shop.Collector) bool {
	for _, m := range served(p, c) {
		if throwsWood(m) {
			return true
		}
	}
	return false
}

// protected tells whether the volume on the dusty side brings a text on
// protection into play. What protection a collector has to have is a question
// for an engineer in every case, and nothing here sizes it.
func protected(s *shop.Shop, c *shop.Collector) Finding {
	rule := rulesOn(s, "dirty-volume")
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: Ask, By: ByRule, Weight: Know}
	f.Basis = append([]source.Basis{rule.Basis}, basesOf("explosion-protection")...)
	f.Asks = say("finding-explosion-protection.asks", c.Name)
	if c.Exhaust.V == "returns to room" {
		f.Asks = join(f.Asks, say("finding-explosion-protection.sparks.asks"))
	}
	switch {
	case standing(s, c) != indoors:
		f.By = ByTopology
		f.Says, f.Do = say("finding-explosion-protection.outdoors.says"), say("finding-explosion-protection.outdoors.do")
		return f
	case !c.DirtyVolume.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-explosion-protection.no-volume.says"), say("finding-explosion-protection.no-volume.do")
		return f
	}
	most := measureOf[unit.Volume](rule)
	reached := unit.AtLeast(float64(c.DirtyVolume.V), float64(most))
	got, want := unit.Room.Pair(s.Units, c.DirtyVolume.V, most)
	f.Figures = []Figure{{Name: say("finding-explosion-protection.volume"), Value: float64(c.DirtyVolume.V), Unit: "m3", Limit: limitOf(most), Basis: rule.Basis}}
	f.State = rule.plays(reached)
	f.Says, f.Do = say("finding-explosion-protection.small.says", got, unit.Room.Unit(s.Units), want), say("finding-explosion-protection.small.do")
	if reached {
		f.Says, f.Do = say("finding-explosion-protection.large.says", got, unit.Room.Unit(s.Units), want), say("finding-explosion-protection.large.do")
	}
	f.Says = join(f.Says, rule.remark())
	return f
}
