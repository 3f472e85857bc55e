package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var sprinklerArea = &Check{
	ID:       "sprinkler-area",
	Name:     say("check.sprinkler-area.name"),
	Title:    say("check.sprinkler-area.title"),
	Whom:     Authority,
	Compares: []string{"sprinkler-area"},
	Needs:    "room.outline, room.sprinklers, machine.room, machine.makes, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if !atHome(p.Shop) && len(dustyRooms(p.Shop)) > 0 {
			report(sprinklered(p.Shop))
		}
	},
}

// sprinklered holds the floor of the rooms in which wood is worked against the
// area from which a building code wants sprinklers.
func sprinklered(s *shop.Shop) Finding {
	rule := rulesOn(s, "sprinkler-area")
	most := measureOf[unit.Area](rule)
	limit := float64(most)
	var floor unit.Area
	var without, silent []string
	for _, r := range dustyRooms(s) {
		floor += r.Area()
		switch {
		case !r.Sprinklers.Known():
			silent = append(silent, r.Name)
		case !r.Sprinklers.V:
			without = append(without, r.Name)
		}
	}
	passed := unit.Compare(float64(floor), limit) > 0
	f := Finding{At: dustyRooms(s)[0].At, By: ByRule, State: rule.plays(passed), Weight: Know, Basis: partsBasis(part{rule: rule})}
	f.Figures = []Figure{{Name: say("finding-sprinkler-area.floor"), Value: float64(floor), Unit: "m2", Limit: &limit, Basis: rule.Basis}}
	got, want := unit.Floor.Pair(s.Units, floor, most)
	in := unit.Floor.Unit(s.Units)
	if lost := sizeOf(s).lost; !passed && len(lost) > 0 {
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = sayOf(len(lost), "finding-dust-scope.no-room.says", listed(firstFew(lost))), say("finding-common.room.do")
		return f
	}
	if !passed {
		f.Says, f.Do = say("finding-sprinkler-area.under.says", got, want, in, briefly(rule)), say("finding-sprinkler-area.under.do")
		f.Asks = say("finding-sprinkler-area.under.asks", got, in)
	} else {
		f.Says, f.Do = say("finding-sprinkler-area.over.says", got, want, in, briefly(rule)), say("finding-sprinkler-area.over.do")
		f.Asks = say("finding-sprinkler-area.over.asks", got, in)
		switch {
		case len(without) > 0:
			f.Says = join(f.Says, say("finding-sprinkler-area.without.says", listed(firstFew(without))))
		case len(silent) > 0:
			f.Says = join(f.Says, say("finding-sprinkler-area.silent.says", listed(firstFew(silent))))
		default:
			f.Says = join(f.Says, say("finding-sprinkler-area.with.says"))
		}
	}
	if f.State == InPlay && len(without)+len(silent) > 0 {
		f.Weight = Mend
	}
	f.Says = join(f.Says, rule.remark())
	return f
}
