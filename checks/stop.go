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
	Name:  "Stop on the way out",
	Title: "Is there a stop for every collector on the way out of the rooms it serves",
	Needs: "stop.at, stop.stops, room.exits, machine.room",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if len(served(p, c)) > 0 {
				report(stopFor(p, c))
			}
		}
	},
}

// StopsOf are the stop buttons that stop a collector, in file order.
func StopsOf(s *shop.Shop, c *shop.Collector) []*shop.StopButton {
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
	stops := StopsOf(p.Shop, c)
	rooms, lost := drawsFrom(p, c)
	switch {
	case len(stops) == 0:
		f.State = NotGiven
		f.Says = "No stop for it is placed. A fan that runs on feeds a fire and carries the embers along, and nobody goes back for the switch."
		f.Do = "Have a stop fitted on the way out, then add [[stop]] with at and stops. Its wiring is an electrician's work."
		return f
	case lost != "":
		f.State, f.Weight = NotGiven, Know
		f.Says = "Which room " + lost + " stands in is not given, so nobody can tell which way out its user takes."
		f.Do = "Add room to the machine, or rooms whose outlines hold it."
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
			f.Says = "Where its stop is, is not given."
			f.Do = "Add at to the stop."
			return f
		} else if unit.Compare(float64(near), float64(reach)) > 0 {
			far = append(far, b.Name+" is "+unit.Run.Print(p.Shop.Units, near)+" from the nearest exit of "+r.Name)
		}
	}
	switch {
	case len(far) > 0:
		f.State = Advice
		f.Says = "Is its stop on the way out? " + capital(listed(far)) + "; common practice is within " + unit.Run.Print(p.Shop.Units, reach) + " of an exit."
		f.Do = "Walk the way out from each machine. Where it does not pass a stop, have one fitted; if the stop is not on the way out, it is left alone."
	case len(without) > 0:
		f.State, f.Weight = NotGiven, Know
		f.Says = "Where the exits of " + listed(without) + " are is not given."
		f.Do = "Add exits to the room."
	default:
		f.State, f.Weight = Met, Know
		f.Says = "A stop for it is placed by an exit of every room whose machines it serves."
		f.Do = "Press it once a month with the fan running."
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
