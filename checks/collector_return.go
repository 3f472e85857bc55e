package checks

import (
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var returnedFilter = &Check{
	ID:       "returned-air-filter",
	Name:     say("check.returned-air-filter.name"),
	Title:    say("check.returned-air-filter.title"),
	Needs:    "collector.exhaust, filter.removes, filter.removes_at, shop.rules",
	Whom:     Maker,
	Compares: []string{"returned-air-filter"},
	Run: func(p *plan.Plan, report func(Finding)) {
		rule, other := rulesOn(p.Shop, "returned-air-filter"), rulesOn(p.Shop, "returned-air-residue")
		for _, c := range returning(p.Shop) {
			told := c.Filter != nil && c.Filter.Removes.Known()
			if rule.Decides || told || !other.Decides {
				report(holdsBack(p.Shop, c, rule))
			}
		}
	},
}

var returnedResidue = &Check{
	ID:       "returned-air-residue",
	Name:     say("check.returned-air-residue.name"),
	Title:    say("check.returned-air-residue.title"),
	Needs:    "collector.exhaust, filter.residual, shop.rules",
	Whom:     Maker,
	Compares: []string{"returned-air-residue"},
	Run: func(p *plan.Plan, report func(Finding)) {
		rule := rulesOn(p.Shop, "returned-air-residue")
		for _, c := range returning(p.Shop) {
			if told := c.Filter != nil && c.Filter.Residual.Known(); rule.Decides || told {
				report(leavesIn(p.Shop, c, rule))
			}
		}
	},
}

// returning are the collectors whose air comes back into a room.
func returning(s *shop.Shop) []*shop.Collector {
	var list []*shop.Collector
	for _, c := range s.Collectors {
		if c.Exhaust.V == "returns to room" {
			list = append(list, c)
		}
	}
	return list
}

// holdsBack judges what the maker says that a filter holds back: as large a
// share, of particles as small.
func holdsBack(s *shop.Shop, c *shop.Collector, rule ruled) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: []source.Basis{rule.Basis}}
	share, size := shareAt(rule)
	wanted, at := percent(share), unit.Grain.Print(s.Units, size)
	switch {
	case c.Filter == nil:
		f.Says, f.Do = say("finding-filter-load.no-filter.says"), say("finding-filter-load.no-filter.do")
		return f
	case !c.Filter.Removes.Known() || !c.Filter.RemovesAt.Known():
		f.Says, f.Do = say("finding-returned-air-filter.not-given.says", wanted, at), say("finding-returned-air-filter.not-given.do")
		f.Asks = say("finding-returned-air-filter.not-given.asks", c.Name, at)
		return f
	}
	enough := unit.AtLeast(c.Filter.Removes.V, share)
	fine := !exceeds(c.Filter.RemovesAt.V, size)
	f.By = ByRule
	f.Figures = []Figure{{Name: say("finding-returned-air-filter.share"), Value: c.Filter.Removes.V, Limit: limitOf(unit.Length(share)), Basis: rule.Basis}}
	f.State = rule.holds(enough && fine)
	f.Says = say("finding-returned-air-filter.is.says", percent(c.Filter.Removes.V), unit.Grain.Print(s.Units, c.Filter.RemovesAt.V), wanted, at)
	f.Do, f.Whom = say("finding-returned-air-filter.enough.do"), Authority
	f.Asks = say("finding-returned-air-filter.enough.asks", c.Name, percent(c.Filter.Removes.V), unit.Grain.Print(s.Units, c.Filter.RemovesAt.V))
	switch {
	case !enough:
		f.Weight, f.Do = Mend, say("finding-returned-air-filter.short.do")
	case !fine:
		f.Weight, f.Do, f.Whom = Mend, say("finding-returned-air-filter.coarse.do"), Maker
		f.Asks = say("finding-returned-air-filter.not-given.asks", c.Name, at)
	}
	f.Says = join(f.Says, rule.remark())
	return f
}

// shareAt is the value of the rule: a share, and the size of particles that it
// is meant for.
func shareAt(rule ruled) (share float64, size unit.Length) {
	text, at, _ := strings.Cut(rule.Value, ", ")
	share, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("checks: " + err.Error())
	}
	return share, unit.Must[unit.Length](at)
}

// percent is a share in percent, with the decimals that tell shares near all of
// it apart.
func percent(share float64) string {
	return unit.Short(100 * share)
}

// leavesIn judges what the maker says that a filter leaves in the air.
func leavesIn(s *shop.Shop, c *shop.Collector, rule ruled) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: []source.Basis{rule.Basis}}
	most := measureOf[unit.Density](rule)
	switch {
	case c.Filter == nil:
		f.Says, f.Do = say("finding-filter-load.no-filter.says"), say("finding-filter-load.no-filter.do")
		return f
	case !c.Filter.Residual.Known():
		f.Says, f.Do = say("finding-returned-air-residue.not-given.says", unit.Trace.Print(s.Units, most)), say("finding-returned-air-residue.not-given.do")
		f.Asks = say("finding-returned-air-residue.not-given.asks", c.Name)
		return f
	}
	kept := !exceeds(c.Filter.Residual.V, most)
	got, want := unit.Trace.Pair(s.Units, c.Filter.Residual.V, most)
	f.By = ByRule
	f.Figures = []Figure{{Name: say("finding-returned-air-residue.left"), Value: float64(c.Filter.Residual.V), Unit: "kg/m3", Limit: limitOf(most), Basis: rule.Basis}}
	f.State = rule.holds(kept)
	f.Says = say("finding-returned-air-residue.is.says", got, want, unit.Trace.Unit(s.Units))
	f.Do, f.Whom = say("finding-returned-air-residue.kept.do"), Authority
	f.Asks = say("finding-returned-air-residue.is.asks", c.Name, got+" "+unit.Trace.Unit(s.Units))
	if !kept {
		f.Weight, f.Do = Mend, say("finding-returned-air-residue.over.do")
	}
	f.Says = join(f.Says, rule.remark())
	return f
}
