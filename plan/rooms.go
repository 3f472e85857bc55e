package plan

import (
	"dustbook/plan/air"
	"dustbook/plan/duct"
	"dustbook/plan/room"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

// rooms asks package room, which knows no ducts: it is told what every use
// draws, and through which ends.
func rooms(s *shop.Shop, k *duct.Reckoning) *room.Reckoning {
	var uses []room.Use
	for _, u := range k.Uses {
		if u.Kind == duct.DuctOff {
			continue // nothing of it runs while people work
		}
		to := room.Use{Name: u.Name, Machines: u.Machines, Stated: u.Stated}
		for _, r := range u.Results {
			if r.Collector != nil && r.Filter != duct.ChangeOut {
				to.Draws = append(to.Draws, draw(u, r))
			}
		}
		uses = append(uses, to)
	}
	return room.Reckon(s, room.Air{Density: k.State.Density, Discharge: air.Discharge()}, uses)
}

// draw is what one collector draws in a use, by the ends of its ducts.
func draw(u *duct.Use, r *duct.Result) room.Draw {
	d := room.Draw{Collector: r.Collector, Why: r.Why}
	if !r.OnCurve {
		return d
	}
	d.Flow = r.Flow
	flow := map[*shop.Stretch]unit.Flow{}
	for _, at := range r.Stretches {
		flow[at.Stretch] = at.Flow
	}
	for _, at := range r.Stretches {
		of := at.Stretch.Duct
		if at.Stretch.Number != 1 || len(of.Serves) == 0 {
			continue
		}
		own := at.Flow
		for _, other := range of.Joined {
			if other.JoinNode == 0 {
				own -= flow[other.Stretches[len(other.Stretches)-1]]
			}
		}
		for _, l := range r.Leaks {
			if l.Leak.On == of && l.Leak.Node == 0 {
				own -= l.Flow
			}
		}
		port, _ := u.Served(of)
		d.Ends = append(d.Ends, room.End{Machine: port.Machine, Flow: max(own, 0)})
	}
	return d
}

// drawn is what each collector moves in every use of machines, with a clean
// filter.
func drawn(k *duct.Reckoning) []takeoff.Draw {
	var list []takeoff.Draw
	for _, u := range k.Uses {
		for _, r := range u.Results {
			if len(u.Machines) > 0 && r.OnCurve && r.Filter != duct.ChangeOut {
				list = append(list, takeoff.Draw{Collector: r.Collector, Use: u.Name, Flow: r.Flow})
			}
		}
	}
	return list
}
