package checks

import (
	"math"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var stopOnTheWay = &Check{
	ID:    "stop-on-way-out",
	Name:  say("check.stop-on-way-out.name"),
	Title: say("check.stop-on-way-out.title"),
	Needs: "stop.at, stop.stops, room.exits, machine.room",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if len(served(p, c)) > 0 {
				report(stopFor(p, c))
			}
		}
	},
}

// stopsOf are the stop buttons that stop a collector, in file order.
func stopsOf(s *shop.Shop, c *shop.Collector) []*shop.StopButton {
	var list []*shop.StopButton
	for _, b := range s.Stops {
		for _, stopped := range b.Collectors {
			if stopped == c {
				list = append(list, b)
				break
			}
		}
	}
	return list
}

// stopFor judges the stops of one collector: one by an exit of each room
// whose machines it serves.
func stopFor(p *plan.Plan, c *shop.Collector) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Mend, Basis: []source.Basis{figure("stop at the exit").Basis}}
	stops := stopsOf(p.Shop, c)
	rooms, lost := drawsFrom(p, c)
	switch {
	case len(stops) == 0:
		f.State = NotGiven
		f.Says = say("finding-stop-on-way-out.none.says")
		f.Do = say("finding-stop-on-way-out.none.do")
		return f
	case lost != "":
		f.State, f.Weight = NotGiven, Know
		f.Says = say("finding-stop-on-way-out.no-room.says", lost)
		f.Do = say("finding-common.room.do")
		return f
	}
	reach := unit.Must[unit.Length](figure("stop at the exit").Text("value"))
	var without, far []string
	for _, r := range rooms {
		if len(r.Exits) == 0 {
			without = append(without, r.Name)
			continue
		}
		if b, near := nearestStop(stops, r); b == nil {
			f.State, f.Weight = NotGiven, Know
			f.Says = say("finding-stop-on-way-out.no-place.says")
			f.Do = say("finding-stop-on-way-out.no-place.do")
			return f
		} else if unit.Compare(float64(near), float64(reach)) > 0 {
			far = append(far, say("finding-stop-on-way-out.away", b.Name, unit.Run.Print(p.Shop.Units, near), r.Name))
		}
	}
	switch {
	case len(far) > 0:
		f.State = Advice
		f.Says = say("finding-stop-on-way-out.far.says", listed(far), unit.Run.Print(p.Shop.Units, reach))
		f.Do = say("finding-stop-on-way-out.far.do")
	case len(without) > 0:
		f.State, f.Weight = NotGiven, Know
		f.Says = say("finding-stop-on-way-out.no-exits.says", listed(without))
		f.Do = say("finding-stop-on-way-out.no-exits.do")
	default:
		f.State, f.Weight = Met, Know
		f.Says = say("finding-stop-on-way-out.met.says")
		f.Do = say("finding-stop-on-way-out.met.do")
	}
	return f
}

// nearestStop is the stop nearest to any exit of a room; nil where no stop's
// place is given.
func nearestStop(stops []*shop.StopButton, r *shop.Room) (best *shop.StopButton, near unit.Length) {
	for _, b := range stops {
		if !b.Place.Known() {
			continue
		}
		for _, exit := range r.Exits {
			far := unit.Length(unit.Six(math.Hypot(exit.X-b.Place.V.X, exit.Y-b.Place.V.Y)))
			if best == nil || far < near {
				best, near = b, far
			}
		}
	}
	return best, near
}
