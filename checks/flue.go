package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var openFlue = &Check{
	Stops:   true,
	ID:      "open-flue",
	Name:    say("check.open-flue.name"),
	Title:   say("check.open-flue.title"),
	Whom:    Technician,
	Needs:   "appliance.kind, appliance.room, collector.exhaust, collector.returns_to, machine.room, room.open_to",
	Answers: settledBy("open-flue", say("check.open-flue.settles")),
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			flue(p, c, report)
		}
	},
}

// flueBasis are the texts on flues in rooms that fans draw air from.
var flueBasis = basesOf("open-flue")

func flue(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Basis: flueBasis, Weight: Know}
	notGiven := func(says, do string) {
		f.State, f.Says, f.Do = NotGiven, says, do
		report(f)
	}
	rooms, lost := drawsFrom(p, c)
	switch {
	case !c.Exhaust.Known():
		notGiven(say("finding-open-flue.no-exhaust.says"), say("finding-open-flue.no-exhaust.do"))
		return
	case c.Exhaust.V == "returns to room" && c.ReturnsTo == nil:
		notGiven(say("finding-open-flue.no-return.says"), say("finding-open-flue.no-return.do"))
		return
	case lost != "":
		notGiven(say("finding-open-flue.no-room.says", lost), say("finding-common.room.do"))
		return
	case len(rooms) == 0:
		return // it draws from nowhere
	case len(p.Shop.Appliances) == 0:
		notGiven(say("finding-open-flue.no-appliance.says"), say("finding-open-flue.no-appliance.do"))
		return
	}
	space := airSpace(p.Shop, rooms)
	if c.Exhaust.V == "returns to room" && slices.Contains(space, c.ReturnsTo) {
		f.State = Met
		f.Says = say("finding-open-flue.returns.says")
		f.Do = say("finding-open-flue.returns.do")
		report(f)
		return
	}
	var burning []string
	for _, a := range p.Shop.Appliances {
		if name, burns := burnsRoomAir(a); burns && slices.Contains(space, a.Room) {
			burning = append(burning, name)
		}
	}
	if len(burning) == 0 {
		f.State = Met
		f.Says = say("finding-open-flue.none.says")
		f.Do = say("finding-open-flue.none.do")
		report(f)
		return
	}
	f.State, f.Weight = NotMet, Stop
	f.Do = say("finding-open-flue.draws.do")
	if flow := greatest(p, c); flow > 0 {
		f.Figures = []Figure{{Name: say("finding-open-flue.drawn-out"), Value: float64(flow), Unit: "m3/s"}}
		f.Says = sayOf(len(burning), "finding-open-flue.draws.says", unit.Air.Print(p.Shop.Units, flow), listed(burning))
		f.Asks = say("finding-open-flue.draws.asks", c.Name, unit.Air.Print(p.Shop.Units, flow), listed(burning))
	} else {
		f.Says = sayOf(len(burning), "finding-open-flue.draws-unknown.says", listed(burning))
		f.Asks = say("finding-open-flue.draws-unknown.asks", c.Name, listed(burning))
	}
	report(f)
}

// burnsRoomAir reports whether an appliance burns the air of its room, and
// names one that does in a sentence.
func burnsRoomAir(a *shop.Appliance) (name string, burns bool) {
	if a.Room == nil {
		return "", false
	}
	switch a.Kind {
	case "open-flue gas":
		return say("finding-open-flue.gas", a.Room.Name), true
	case "open-flue oil":
		return say("finding-open-flue.oil", a.Room.Name), true
	case "wood stove":
		return say("finding-open-flue.stove", a.Room.Name), true
	}
	return "", false
}

// drawsFrom lists the rooms a collector draws air from, and names a machine
// whose room is not known.
func drawsFrom(p *plan.Plan, c *shop.Collector) (rooms []*shop.Room, lost string) {
	for _, m := range served(p, c) {
		if m.Room == nil {
			return nil, m.Name
		}
		if !slices.Contains(rooms, m.Room) {
			rooms = append(rooms, m.Room)
		}
	}
	return rooms, ""
}

// airSpace is every room that shares the air of some rooms. An open doorway
// counts whichever of its two rooms tells of it.
func airSpace(s *shop.Shop, rooms []*shop.Room) []*shop.Room {
	space := slices.Clone(rooms)
	for i := 0; i < len(space); i++ {
		for _, next := range s.Rooms {
			joined := slices.Contains(space[i].OpenTo, next) || slices.Contains(next.OpenTo, space[i])
			if joined && !slices.Contains(space, next) {
				space = append(space, next)
			}
		}
	}
	return space
}

// greatest is the largest flow a collector draws in any use of machines or
// with everything open; nought where none is known.
func greatest(p *plan.Plan, c *shop.Collector) unit.Flow {
	var most unit.Flow
	for _, u := range p.Air.Uses {
		for _, r := range u.Results {
			if r.Collector == c && r.OnCurve && u.Kind != duct.DuctOff {
				most = max(most, r.Flow)
			}
		}
	}
	return most
}
