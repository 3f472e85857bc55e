package checks

import (
	"fmt"
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var openFlue = &Check{
	ID:       "open-flue",
	Name:     "Open flue",
	Title:    "Does a fan that blows outdoors draw air from a room where a flue stands open to it",
	Needs:    "appliance, collector.exhaust, machine.room, room.open_to",
	Confirms: settledBy("open-flue", "that a technician has tested the flue with every fan running"),
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			flue(p, c, report)
		}
	},
}

var flueBasis = []source.Basis{
	{Document: "building-science-guide", Clause: "worst-case test", Mark: source.Reported},
	{Document: "caz-list", Clause: "depressurization limits", Mark: source.Verified},
}

// openFlues are the kinds of appliance that burn the room's air.
var openFlues = []string{"open-flue gas", "open-flue oil", "wood stove"}

func flue(p *plan.Plan, c *shop.Collector, report func(Finding)) {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Basis: flueBasis, Weight: Know}
	notGiven := func(says, do string) {
		f.State, f.Says, f.Do = NotGiven, says, do
		report(f)
	}
	rooms, lost := drawsFrom(p, c)
	switch {
	case !c.Exhaust.Known():
		notGiven("Where its air goes is not given.", `Add exhaust = "outside" or "returns to room".`)
		return
	case c.Exhaust.V == "returns to room" && c.ReturnsTo == nil:
		notGiven("Which room gets the air back is not given.", "Add returns_to.")
		return
	case lost != "":
		notGiven("Which room "+lost+" stands in is not given.", "Add room to the machine, or rooms whose outlines hold it.")
		return
	case len(rooms) == 0:
		return // it draws from nowhere
	case len(p.Shop.Appliances) == 0:
		notGiven("No appliance is listed, so nobody can tell whether a flue stands in the air it draws.", `List what heats each room: [[appliance]] kind = "electric" and so on.`)
		return
	}
	space := airSpace(rooms)
	if c.Exhaust.V == "returns to room" && slices.Contains(space, c.ReturnsTo) {
		f.State = Met
		f.Says = "Its air comes back into the rooms it draws from, so it takes none away from a flue there."
		f.Do = "Ask again if the exhaust is ever led outdoors."
		report(f)
		return
	}
	var burning []string
	for _, a := range p.Shop.Appliances {
		if slices.Contains(openFlues, a.Kind) && slices.Contains(space, a.Room) {
			burning = append(burning, applianceWords(a))
		}
	}
	if len(burning) == 0 {
		f.State = Met
		f.Says = "No appliance with an open flue is listed in the rooms it draws air from."
		f.Do = "List every new heater in the file before it is lit."
		report(f)
		return
	}
	f.State, f.Weight = NotMet, Stop
	flow := greatest(p, c)
	f.Figures = []Figure{{Name: "air drawn out", Value: float64(flow), Unit: "m3/s"}}
	f.Says = fmt.Sprintf("It takes up to %s out of the air that %s burns. The flue can turn and fill the room with carbon monoxide.", unit.Air.Print(p.Shop.Units, flow), strings.Join(burning, " and "))
	f.Do = "Do not run it while anything burns there. Hang a carbon monoxide alarm. Have a heating technician test the flue with every fan running before first use."
	f.Asks = fmt.Sprintf("With %s drawing up to %s out of the air of %s: does the flue still draw in the worst case, and how large must the opening for make-up air be?", c.Name, unit.Air.Print(p.Shop.Units, flow), burning[0])
	report(f)
}

// applianceWords names an appliance in a sentence.
func applianceWords(a *shop.Appliance) string {
	name := a.Kind
	if strings.HasPrefix(name, "open-flue") {
		name += " appliance"
	}
	return "the " + name + " in " + a.Room.Name
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

// airSpace is every room that shares the air of some rooms.
func airSpace(rooms []*shop.Room) []*shop.Room {
	space := slices.Clone(rooms)
	for i := 0; i < len(space); i++ {
		for _, next := range space[i].OpenTo {
			if !slices.Contains(space, next) {
				space = append(space, next)
			}
		}
	}
	return space
}

// greatest is the largest flow a collector draws in any use of machines or
// with everything open.
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
	ID:       "garage-separation",
	Name:     "Wall between garage and dwelling",
	Title:    "Does a duct cross the wall between garage and dwelling",
	Needs:    "wall.divides, duct.route, duct.material, duct.gauge or duct.wall, shop.rules",
	Confirms: settledBy("garage-separation", "what the authority accepts where a duct crosses between garage and dwelling"),
	Run: func(p *plan.Plan, report func(Finding)) {
		separation(p, report)
	},
}

var garageBasis = []source.Basis{{Document: "irc", Clause: "R302.5.2", Mark: source.Reported}}

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
			f.Says = "Whether a wall divides a garage from living space is not given."
			f.Do = `Add [[wall]] with divides = "garage from dwelling", if there is one.`
			report(f)
		}
		return
	}
	crossed := false
	for _, d := range p.Shop.Ducts {
		if d.Route == nil {
			f := f
			f.About, f.Kind, f.At, f.State = d.Name, "duct", d.At, NotGiven
			f.Says = "It has no route, so nobody can tell whether it crosses the wall."
			f.Do = "Give it a route."
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
		f.Says = "No duct crosses the wall between garage and dwelling, by the routes in the file."
		f.Do = "Fill every other hole in that wall as the local code wants it."
		report(f)
	}
}

// crossing judges one duct that crosses the wall.
func crossing(p *plan.Plan, d *shop.Duct) Finding {
	f := Finding{About: d.Name, Kind: "duct", At: d.At, By: ByRule, Basis: garageBasis, Weight: Stop}
	f.Asks = fmt.Sprintf("The dust duct %s crosses the wall between garage and dwelling. The text reported to us wants sheet steel of %s and no openings into the garage; a dust duct has openings by its nature. What do you accept?", d.Name, steelWords())
	f.Do = "Keep the whole system on one side of the wall, or ask the building official before anything is cut."
	enough, known := steelEnough(d)
	switch {
	case p.Shop.Rules != "us":
		f.State = Ask
		f.Says = "It crosses the wall between garage and dwelling. Your rules setting compares with no text on it here."
	case !d.MaterialStated:
		f.State, f.By = NotGiven, ByGiven
		f.Says = "It crosses the wall between garage and dwelling, and its material is not given."
		f.Do = "Add material and gauge. " + f.Do
	case !strings.Contains(d.Material, "steel"):
		f.State = NotMet
		f.Says = "It crosses the wall between garage and dwelling and is " + d.Material + "; the text reported wants sheet steel of " + steelWords() + "."
	case !known:
		f.State, f.By = NotGiven, ByGiven
		f.Says = "It crosses the wall between garage and dwelling, and its gauge is not given."
		f.Do = "Add gauge. " + f.Do
	case !enough:
		f.State = NotMet
		f.Says = "It crosses the wall between garage and dwelling with thinner steel than the text reported wants: " + steelWords() + "."
	default:
		f.State = Ask
		f.Says = "It crosses the wall between garage and dwelling. Its steel is thick enough for the text reported, which also allows no openings into the garage: a dust duct has openings."
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
	return "at least " + figure("garage duct gauge").Text("value") + " gauge (" + figure("garage duct thickness").Text("value") + ")"
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
