package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var wayOut = &Check{
	ID:       "way-out",
	Name:     say("check.way-out.name"),
	Title:    say("check.way-out.title"),
	Whom:     Authority,
	Compares: []string{"way-out-width", "way-out-ceiling"},
	Needs:    "room.way_out, room.height, machine.room, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if atHome(p.Shop) {
			return // the text speaks of places where people are employed
		}
		for _, r := range workRooms(p.Shop) {
			report(outOf(p.Shop, r))
		}
		if lost := roomless(p.Shop); len(lost) > 0 {
			report(noRoomFor(p.Shop, lost, say("finding-way-out.no-room.says", listed(firstFew(lost)))))
		}
	},
}

// outOf judges how wide and how high the way out of one room is.
func outOf(s *shop.Shop, r *shop.Room) Finding {
	wide, high := rulesOn(s, "way-out-width"), rulesOn(s, "way-out-ceiling")
	f := Finding{About: r.Name, Kind: "room", At: r.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: wide}, part{rule: high})}
	var parts []part
	var missing, faults, kept []string
	hold := func(rule ruled, has shop.Field[unit.Length], in unit.Scale[unit.Length], lacks, key string) {
		if !has.Known() {
			missing = append(missing, lacks)
			return
		}
		least := measureOf[unit.Length](rule)
		limit := float64(least)
		got, want := in.Pair(s.Units, has.V, least)
		holds := unit.AtLeast(float64(has.V), limit)
		parts = append(parts, part{rule, holds})
		f.Figures = append(f.Figures, Figure{Name: lacks, Value: float64(has.V), Unit: "m", Limit: &limit, Basis: rule.Basis})
		if text := say(key, got, want, in.Unit(s.Units)); holds {
			kept = append(kept, text)
		} else {
			faults = append(faults, text)
		}
	}
	hold(wide, r.WayOut, unit.Size, say("finding-way-out.width"), "finding-way-out.wide")
	hold(high, r.Height, unit.Run, say("finding-way-out.height"), "finding-way-out.high")
	if len(parts) > 0 {
		f.State, f.By = partsState(parts...), ByRule
	}
	switch {
	case len(missing) > 0 && f.State != NotMet:
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-way-out.missing.says", listed(missing)), say("finding-way-out.missing.do")
		return f
	case len(faults) > 0:
		f.Says, f.Do = say("finding-way-out.short.says", listed(faults), briefly(wide, high)), say("finding-way-out.short.do")
		f.Asks = say("finding-way-out.short.asks", r.Name, listed(faults))
	default:
		f.Says, f.Do = say("finding-way-out.kept.says", listed(kept), briefly(wide, high)), say("finding-way-out.kept.do")
		if f.State == Ask {
			f.Asks = say("finding-way-out.short.asks", r.Name, listed(kept))
		}
	}
	f.Says = join(f.Says, partsRemark(parts...))
	weigh(s, &f, wide, high)
	return f
}

var aisleWidth = &Check{
	ID:       "aisle-width",
	Name:     say("check.aisle-width.name"),
	Title:    say("check.aisle-width.title"),
	Whom:     Authority,
	Compares: []string{"aisle-few", "aisle-many"},
	Needs:    "room.way_out, machine.room, shop.setting, shop.employees, shop.pupils, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if !atHome(p.Shop) && len(workRooms(p.Shop)) > 0 {
			report(aisles(p.Shop))
		}
	},
}

// aisles holds the narrowest way out of all rooms against the two widths that
// building codes often want. Which of the two counts goes by how many people
// there are, and is asked.
func aisles(s *shop.Shop) Finding {
	few, many := rulesOn(s, "aisle-few"), rulesOn(s, "aisle-many")
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: few}, part{rule: many})}
	var narrow *shop.Room
	var missing []string
	for _, r := range workRooms(s) {
		switch {
		case !r.WayOut.Known():
			missing = append(missing, r.Name)
		case narrow == nil || r.WayOut.V < narrow.WayOut.V:
			narrow = r
		}
	}
	if len(missing) > 0 {
		f.Says, f.Do = say("finding-aisle-width.missing.says", listed(firstFew(missing))), say("finding-aisle-width.missing.do")
		return f
	}
	has := narrow.WayOut.V
	parts := []part{
		{few, unit.AtLeast(float64(has), float64(measureOf[unit.Length](few)))},
		{many, unit.AtLeast(float64(has), float64(measureOf[unit.Length](many)))},
	}
	f.At, f.By, f.State = narrow.At, ByRule, partsState(parts...)
	size := func(l unit.Length) string { return unit.Size.Print(s.Units, l) }
	f.Says = join(say("finding-aisle-width.has.says", size(has), narrow.Name, size(measureOf[unit.Length](few)), size(measureOf[unit.Length](many))), partsRemark(parts...))
	switch {
	case f.State == Met:
		f.Do = say("finding-way-out.kept.do")
	case f.State == Ask && parts[1].kept:
		f.State, f.Do = Advice, say("finding-aisle-width.wide.do")
	default:
		f.Do = say("finding-aisle-width.narrow.do")
		f.Asks = say("finding-aisle-width.narrow.asks", narrow.Name, size(has))
	}
	weigh(s, &f, few, many)
	return f
}
