package checks

import (
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var openFlue = &Check{
	Stops:    true,
	ID:       "open-flue",
	Name:     say("check.open-flue.name"),
	Title:    say("check.open-flue.title"),
	Needs:    "appliance.kind, appliance.room, collector.exhaust, collector.returns_to, machine.room, room.open_to",
	Confirms: settledBy("open-flue", say("check.open-flue.settles")),
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

var garageSeparation = &Check{
	Stops:    true,
	ID:       "garage-separation",
	Name:     say("check.garage-separation.name"),
	Title:    say("check.garage-separation.title"),
	Needs:    "wall.divides, duct.route, duct.material, duct.gauge or duct.wall, shop.rules, shop.setting",
	Confirms: settledBy("garage-separation", say("check.garage-separation.settles")),
	Run: func(p *plan.Plan, report func(Finding)) {
		separation(p, report)
	},
}

// garageBasis is the text on ducts between garage and dwelling.
var garageBasis = basesOf("garage-separation")

func separation(p *plan.Plan, report func(Finding)) {
	var walls []*shop.Wall
	for _, w := range p.Shop.Walls {
		if w.Divides.V == "garage from dwelling" {
			walls = append(walls, w)
		}
	}
	f := Finding{By: ByTopology, Basis: garageBasis, Weight: Know}
	if len(walls) == 0 {
		if p.Shop.Setting.V == "home" {
			f.State = NotGiven
			f.Says = say("finding-garage-separation.no-wall.says")
			f.Do = say("finding-garage-separation.no-wall.do")
			report(f)
		}
		return
	}
	crossed := false
	for _, d := range p.Shop.Ducts {
		if d.Route == nil {
			f := f
			f.About, f.Kind, f.At, f.State = d.Name, "duct", d.At, NotGiven
			f.Says = say("finding-garage-separation.no-route.says")
			f.Do = say("finding-garage-separation.no-route.do")
			report(f)
			crossed = true
			continue
		}
		for _, w := range walls {
			if crosses(d.Route, w) {
				report(crossing(p, d))
				crossed = true
				break
			}
		}
	}
	if !crossed {
		f.At = walls[0].At
		f.State = Met
		f.Says = say("finding-garage-separation.none.says")
		f.Do = say("finding-garage-separation.none.do")
		report(f)
	}
}

// crossing judges one duct that crosses the wall.
func crossing(p *plan.Plan, d *shop.Duct) Finding {
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByRule, Basis: garageBasis, Weight: Stop}
	f.Asks = say("finding-garage-separation.crosses.asks", d.Name, steelWords())
	f.Do = say("finding-garage-separation.crosses.do")
	enough, known := steelEnough(d)
	switch {
	case p.Shop.Rules != "us":
		f.State = Ask
		f.Says = say("finding-garage-separation.no-rules.says")
	case !d.MaterialStated:
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-garage-separation.no-material.says")
		f.Do = join(say("finding-garage-separation.no-material.do"), f.Do)
	case !strings.Contains(d.Material, "steel"):
		f.State = NotMet
		f.Says = say("finding-garage-separation.not-steel.says", d.Material, steelWords())
	case !known:
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-garage-separation.no-gauge.says")
		f.Do = join(say("finding-garage-separation.no-gauge.do"), f.Do)
	case !enough:
		f.State = NotMet
		f.Says = say("finding-garage-separation.thin.says", steelWords())
	default:
		f.State = Ask
		f.Says = say("finding-garage-separation.thick.says")
	}
	return f
}

// steelEnough compares a duct's gauge or thickness with the text's.
func steelEnough(d *shop.Duct) (enough, known bool) {
	switch {
	case d.Gauge.Known():
		return float64(d.Gauge.V) <= figure("garage duct gauge").Number("value"), true
	case d.Wall.Known():
		least := unit.Must[unit.Length](figure("garage duct thickness").Text("value"))
		return unit.AtLeast(float64(d.Wall.V), float64(least)), true
	}
	return false, false
}

// steelWords says what the text wants.
func steelWords() string {
	return say("finding-garage-separation.steel", figure("garage duct gauge").Text("value"), figure("garage duct thickness").Text("value"))
}

// crosses reports whether a route passes through a wall, seen from above. A
// route that only touches it counts as crossing.
func crosses(route []shop.Spot, w *shop.Wall) bool {
	for i := 1; i < len(route); i++ {
		a, b := shop.Point{X: route[i-1].X, Y: route[i-1].Y}, shop.Point{X: route[i].X, Y: route[i].Y}
		if left(a, b, w.From) != left(a, b, w.To) && left(w.From, w.To, a) != left(w.From, w.To, b) {
			return true
		}
	}
	return false
}

// left tells whether a point lies to the left of the line from a to b, or on
// it.
func left(a, b, p shop.Point) bool {
	return unit.Six((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X)) >= 0
}
