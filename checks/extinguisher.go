package checks

import (
	"math"
	"slices"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var extinguisherReach = &Check{
	ID:       "extinguisher-reach",
	Name:     say("check.extinguisher-reach.name"),
	Title:    say("check.extinguisher-reach.title"),
	Whom:     Authority,
	Compares: []string{"extinguisher-reach"},
	Needs:    "extinguisher.at, room.outline, room.open_to, machine.room, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, r := range workRooms(p.Shop) {
			report(reached(p.Shop, r))
		}
		if lost := roomless(p.Shop); len(lost) > 0 {
			report(noRoomFor(p.Shop, lost, say("finding-extinguisher.no-room.says", listed(firstFew(lost)))))
		}
	},
}

// hangsWithin is how near to a room's outline an extinguisher counts as in it.
var hangsWithin = float64(unit.Must[unit.Length](figure("hangs on a wall").Text("value")))

// reached judges how far the farthest place of a room is from an extinguisher.
// The way on foot is at least the straight line; where it keeps the figure along
// square walls too, that is enough.
func reached(s *shop.Shop, r *shop.Room) Finding {
	rule := rulesOn(s, "extinguisher-reach")
	most := measureOf[unit.Length](rule)
	f := Finding{About: r.Name, Kind: "room", At: r.At, State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: rule})}
	here, elsewhere, placeless := hanging(s, r)
	limit, want := float64(most), unit.Run.Print(s.Units, most)
	switch {
	case len(s.Extinguishers) == 0:
		f.Weight = Mend
		f.Says, f.Do = say("finding-extinguisher.none.says"), say("finding-extinguisher.none.do")
		return f
	case len(here) == 0 && placeless:
		f.Says, f.Do = say("finding-extinguisher-reach.no-place.says"), say("finding-extinguisher-reach.no-place.do")
		return f
	case len(here) == 0:
		near := unit.Run.Print(s.Units, unit.Length(farthest(r, elsewhere, straight)))
		f.State, f.By, f.Weight = Ask, ByTopology, Mend
		f.Says, f.Do = say("finding-extinguisher-reach.elsewhere.says", near), say("finding-extinguisher-reach.elsewhere.do", want)
		f.Asks = say("finding-extinguisher-reach.elsewhere.asks", r.Name, near)
		weigh(s, &f)
		return f
	}
	direct, walked := farthest(r, here, straight), farthest(r, here, roundCorners)
	f.By, f.State = ByRule, rule.holds(unit.AtLeast(limit, direct))
	f.Figures = []Figure{{Name: say("finding-extinguisher-reach.direct"), Value: direct, Unit: "m", Limit: &limit, Basis: rule.Basis}}
	got, figure := unit.Run.Pair(s.Units, unit.Length(direct), most)
	switch {
	case !unit.AtLeast(limit, direct):
		f.Says, f.Do = say("finding-extinguisher-reach.far.says", got, figure, unit.Run.Unit(s.Units)), say("finding-extinguisher-reach.far.do")
	case !unit.AtLeast(limit, walked):
		if f.State == Met {
			f.State = Thin
		}
		f.Says, f.Do = say("finding-extinguisher-reach.thin.says", got, figure, unit.Run.Unit(s.Units), unit.Run.Print(s.Units, unit.Length(walked))), say("finding-extinguisher-reach.thin.do", want)
	default:
		f.Says, f.Do = say("finding-extinguisher-reach.kept.says", got, figure, unit.Run.Unit(s.Units)), say("finding-extinguisher-reach.kept.do")
	}
	if f.State == Ask {
		f.Asks = say("finding-extinguisher-reach.asks", r.Name, got, unit.Run.Unit(s.Units))
	}
	f.Says = join(f.Says, rule.remark())
	weigh(s, &f, rule)
	return f
}

// hanging are the places of the extinguishers that hang in a room or in one that
// stands open to it, those of all others, and whether one has no place.
func hanging(s *shop.Shop, r *shop.Room) (here, elsewhere []shop.Point, placeless bool) {
	space := airSpace(s, []*shop.Room{r})
	for _, e := range s.Extinguishers {
		switch p := e.Place.V; {
		case !e.Place.Known():
			placeless = true
		case slices.ContainsFunc(space, func(r *shop.Room) bool { return hangsIn(r, p) }):
			here = append(here, p)
		default:
			elsewhere = append(elsewhere, p)
		}
	}
	return here, elsewhere, placeless
}

// hangsIn reports whether a place is in a room or on its walls.
func hangsIn(r *shop.Room, p shop.Point) bool {
	return r.Holds(p) || unit.AtLeast(hangsWithin, toOutline(r, p))
}

// nearestTo are the least straight and square ways from a place to some of the
// extinguishers; infinite where none of them has a place.
func nearestTo(from shop.Point, list []*shop.Extinguisher) (direct, walked float64) {
	direct, walked = math.Inf(1), math.Inf(1)
	for _, e := range list {
		if e.Place.Known() {
			direct = math.Min(direct, straight(from, e.Place.V))
			walked = math.Min(walked, roundCorners(from, e.Place.V))
		}
	}
	return direct, walked
}
