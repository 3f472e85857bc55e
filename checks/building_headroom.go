package checks

import (
	"math"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var ductHeadroom = &Check{
	ID:       "duct-headroom",
	Name:     say("check.duct-headroom.name"),
	Title:    say("check.duct-headroom.title"),
	Whom:     Authority,
	Compares: []string{"way-out-headroom"},
	Needs:    "duct.route, duct.size, room.outline, room.exits, machine.at, shop.setting, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if len(p.Shop.Ducts) > 0 && len(workRooms(p.Shop)) > 0 && !atHome(p.Shop) {
			report(headroom(p.Shop))
		}
	},
}

// low is a piece of a duct that hangs lower than a figure and runs sideways.
type low struct {
	duct  *shop.Duct
	path  []shop.Spot
	under unit.Length // its lowest underside
}

// headroom holds the underside of every duct against the text. One walks round a
// drop; a low piece counts where it runs sideways farther than a way out is wide.
// It stands in the way where it crosses the straight line from a machine to the
// nearest exit of its room; elsewhere whether people pass under it is asked.
func headroom(s *shop.Shop) Finding {
	rule := rulesOn(s, "way-out-headroom")
	clear, wide := measureOf[unit.Length](rule), measureOf[unit.Length](rulesOn(s, "way-out-width"))
	f := Finding{State: NotGiven, By: ByGiven, Weight: Know, Basis: partsBasis(part{rule: rule})}
	var lows []low
	var lost []string
	for _, d := range s.Ducts {
		if d.Route == nil || d.Choose {
			lost = append(lost, d.Name)
			continue
		}
		for _, piece := range lowPieces(d, clear) {
			if unit.Compare(sideways(piece.path), float64(wide)) > 0 && underRoof(s, piece.path) {
				lows = append(lows, piece)
			}
		}
	}
	print := func(l unit.Length) string { return unit.Size.Print(s.Units, l) }
	var blocked, hanging []string
	for _, l := range lows {
		got, _ := unit.Size.Pair(s.Units, l.under, clear)
		if m := blockedFor(s, l, wide); m != nil {
			blocked = append(blocked, say("finding-duct-headroom.blocks", l.duct.Name, got, unit.Size.Unit(s.Units), m.Name))
			f.At = l.duct.At
		}
		hanging = append(hanging, say("finding-duct-headroom.hangs", l.duct.Name, got, unit.Size.Unit(s.Units)))
	}
	hanging = firstFew(unique(hanging))
	switch {
	case len(blocked) > 0:
		f.State, f.By = rule.holds(false), ByRule
		f.Says, f.Do = say("finding-duct-headroom.blocked.says", listed(firstFew(unique(blocked))), print(clear)), say("finding-duct-headroom.blocked.do")
		f.Asks = say("finding-duct-headroom.asks", listed(hanging), print(clear))
	case len(hanging) > 0:
		f.State, f.By = Ask, ByRule
		f.Says, f.Do = say("finding-duct-headroom.low.says", listed(hanging), print(clear)), say("finding-duct-headroom.low.do")
		f.Asks = say("finding-duct-headroom.asks", listed(hanging), print(clear))
	case len(lost) > 0:
		f.Says, f.Do = sayOf(len(lost), "finding-duct-headroom.lost.says", listed(firstFew(lost))), say("finding-duct-headroom.lost.do")
		return f
	default:
		f.State, f.By = rule.holds(true), ByRule
		f.Says, f.Do = say("finding-duct-headroom.kept.says", print(clear)), say("finding-duct-headroom.kept.do")
		if f.State == Ask {
			f.Asks = say("finding-duct-headroom.kept.asks", print(clear))
		}
	}
	f.Says = join(f.Says, rule.remark())
	weigh(s, &f, rule)
	return f
}

// lowPieces are the pieces of a duct whose underside is lower than a height, each
// as long as it stays so.
func lowPieces(d *shop.Duct, clear unit.Length) []low {
	var list []low
	var now *low
	half := float64(d.Size) / 2
	for i := 1; i < len(d.Route); i++ {
		a, b := d.Route[i-1], d.Route[i]
		from, to, is := lowPart(a.Z-half, b.Z-half, float64(clear))
		if !is {
			now = nil
			continue
		}
		if now == nil || from > 0 {
			list = append(list, low{duct: d, path: []shop.Spot{between(a, b, from)}, under: unit.Length(math.Inf(1))})
			now = &list[len(list)-1]
		}
		now.path = append(now.path, between(a, b, to))
		if unit.Six(straight(shop.Point{X: a.X, Y: a.Y}, shop.Point{X: b.X, Y: b.Y})) > 0 { // nobody walks under what stands upright
			now.under = min(now.under, unit.Length(math.Max(0, math.Min(a.Z, b.Z)-half)))
		}
		if to < 1 {
			now = nil
		}
	}
	return list
}

// lowPart is the part of a straight piece, as shares of its length, whose height
// is under a limit.
func lowPart(a, b, limit float64) (from, to float64, is bool) {
	lowA, lowB := !unit.AtLeast(a, limit), !unit.AtLeast(b, limit)
	switch {
	case lowA && lowB:
		return 0, 1, true
	case lowA:
		return 0, (limit - a) / (b - a), true
	case lowB:
		return (limit - a) / (b - a), 1, true
	}
	return 0, 0, false
}

func between(a, b shop.Spot, share float64) shop.Spot {
	return shop.Spot{X: a.X + (b.X-a.X)*share, Y: a.Y + (b.Y-a.Y)*share, Z: a.Z + (b.Z-a.Z)*share}
}

// sideways is how far a path runs, seen from above.
func sideways(path []shop.Spot) float64 {
	sum := 0.0
	for i := 1; i < len(path); i++ {
		sum += math.Hypot(path[i].X-path[i-1].X, path[i].Y-path[i-1].Y)
	}
	return sum
}

// underRoof reports whether an end or a middle of a path lies in a room.
func underRoof(s *shop.Shop, path []shop.Spot) bool {
	for i := 1; i < len(path); i++ {
		middle := between(path[i-1], path[i], 0.5)
		for _, r := range s.Rooms {
			if r.Holds(shop.Point{X: middle.X, Y: middle.Y}) {
				return true
			}
		}
	}
	return false
}

// blockedFor is the first machine whose straight way to the nearest exit of its
// room a low piece crosses; nil where it crosses none. The way starts a little off
// the machine, where its own pipe comes down.
func blockedFor(s *shop.Shop, l low, off unit.Length) *shop.Machine {
	for _, m := range s.Machines {
		if m.Room == nil || !m.Place.Known() {
			continue
		}
		from := m.Place.V
		exit, known := nearestExit(m.Room, from)
		long := straight(from, exit)
		if !known || unit.AtLeast(float64(off), long) {
			continue
		}
		share := float64(off) / long
		start := shop.Point{X: from.X + (exit.X-from.X)*share, Y: from.Y + (exit.Y-from.Y)*share}
		if crosses(l.path, &shop.Wall{From: start, To: exit}) {
			return m
		}
	}
	return nil
}

// nearestExit is the exit of a room that is nearest to a place.
func nearestExit(r *shop.Room, from shop.Point) (exit shop.Point, known bool) {
	near := math.Inf(1)
	for _, e := range r.Exits {
		if far := unit.Six(straight(from, e)); far < near {
			exit, near, known = e, far, true
		}
	}
	return exit, known
}
