package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var dustScope = &Check{
	ID:       "dust-scope",
	Name:     say("check.dust-scope.name"),
	Title:    say("check.dust-scope.title"),
	Needs:    "room.outline, machine.room, port.flow, shop.rules, shop.editions",
	Whom:     Authority,
	Compares: []string{"dust-scope-area", "dust-scope-flow"},
	Run: func(p *plan.Plan, report func(Finding)) {
		if s := sizeOf(p.Shop); s.machines > 0 {
			report(scoped(p.Shop, s))
		}
	},
}

// woodSize is how large a shop is where wood is worked: the floor of those rooms
// and the air that all its machines need at once.
type woodSize struct {
	machines int
	floor    unit.Area
	needs    unit.Flow
	stated   unit.Flow // the part of it that the file gives; the rest is by kind of machine
	lost     []string  // machines whose room is not known
}

func sizeOf(s *shop.Shop) woodSize {
	var is woodSize
	for _, m := range s.Machines {
		if !throwsWood(m) {
			continue
		}
		is.machines++
		if m.Room == nil {
			is.lost = append(is.lost, m.Name)
		}
		for _, port := range m.Ports {
			is.needs += port.Flow
			if port.Need.Mark == source.Given {
				is.stated += port.Flow
			}
		}
	}
	for _, r := range dustyRooms(s) {
		is.floor += r.Area()
	}
	is.floor, is.needs, is.stated = unit.SixOf(is.floor), unit.SixOf(is.needs), unit.SixOf(is.stated)
	return is
}

// throwsWood reports whether a machine makes dust or chips of wood.
func throwsWood(m *shop.Machine) bool {
	switch m.Makes {
	case "wood", "fine wood", "wet wood", "mixed":
		return true
	}
	return false
}

// dustyRooms are the rooms in which wood is worked, in file order.
func dustyRooms(s *shop.Shop) []*shop.Room {
	var list []*shop.Room
	for _, r := range s.Rooms {
		if slices.ContainsFunc(s.Machines, func(m *shop.Machine) bool { return m.Room == r && throwsWood(m) }) {
			list = append(list, r)
		}
	}
	return list
}

// scoped holds the shop's size against both figures, either of which brings the
// text into play.
func scoped(s *shop.Shop, is woodSize) Finding {
	f := Finding{By: ByRule, Weight: Know}
	area, flow := rulesOn(s, "dust-scope-area"), rulesOn(s, "dust-scope-flow")
	most, air := measureOf[unit.Area](area), measureOf[unit.Flow](flow)
	moved := basesOf("dust-scope")
	f.Basis = append([]source.Basis{area.Basis, flow.Basis}, moved...)
	f.Figures = []Figure{
		{Name: say("finding-dust-scope.floor"), Value: float64(is.floor), Unit: "m2", Limit: limitOf(most), Basis: area.Basis},
		{Name: say("finding-dust-scope.needs"), Value: float64(is.needs), Unit: "m3/s", Limit: limitOf(air), Basis: flow.Basis},
	}
	wide, strong := exceeds(is.floor, most), exceeds(is.needs, air)
	got, want := unit.Floor.Pair(s.Units, is.floor, most)
	needs, scope := unit.Air.Pair(s.Units, is.needs, air)
	f.Says = say("finding-dust-scope.size.says", got, want, unit.Floor.Unit(s.Units), needs, scope, unit.Air.Unit(s.Units), briefly(area, flow))
	if newer := shortOf(moved[0]); !area.Confirmed && !flow.Confirmed && newer != shortOf(flow.Basis) {
		f.Says = join(f.Says, say("finding-dust-scope.moved.says", newer))
	}
	f.Asks = say("finding-dust-scope.size.asks", s.Name, got, unit.Floor.Unit(s.Units), needs, unit.Air.Unit(s.Units))
	byArea, byFlow := area.plays(wide), flow.plays(strong)
	switch {
	case byArea == InPlay || byFlow == InPlay && exceeds(is.stated, air):
		f.State, f.Do = InPlay, say("finding-dust-scope.passed.do")
		f.Says = join(f.Says, say("finding-dust-scope.passed.says"))
	case byFlow == InPlay:
		f.State, f.Do = Thin, say("finding-dust-scope.by-kind.do")
		f.Says = join(f.Says, say("finding-dust-scope.by-kind.says", unit.Air.Print(s.Units, is.stated)))
	case wide || strong:
		f.State, f.Do = Ask, say("finding-dust-scope.passed.do")
		f.Says = join(f.Says, say("finding-dust-scope.passed-elsewhere.says"), either(area, flow, wide).remark())
	case len(is.lost) > 0:
		f.State, f.By, f.Asks = NotGiven, ByGiven, ""
		f.Says = sayOf(len(is.lost), "finding-dust-scope.no-room.says", listed(firstFew(is.lost)))
		f.Do = say("finding-common.room.do")
	default:
		f.State, f.Do = Ask, say("finding-dust-scope.below.do")
		f.Says = join(f.Says, say("finding-dust-scope.below.says"), either(area, flow, flow.Decides).remark())
	}
	return f
}

// either is the first of two figures where it is to be, else the second.
func either(a, b ruled, first bool) ruled {
	if first {
		return a
	}
	return b
}

// exceeds reports whether a quantity is more than a figure, both rounded once.
func exceeds[Q unit.Measure](got, most Q) bool { return unit.Compare(float64(got), float64(most)) > 0 }

// shortOf is the short name of a text.
func shortOf(b source.Basis) string {
	d, _ := source.FindDocument(b.Document)
	return d.Short
}

// limitOf is a figure as the limit beside a number.
func limitOf[Q unit.Measure](q Q) *float64 {
	limit := float64(q)
	return &limit
}
