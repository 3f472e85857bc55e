package templates

import (
	"slices"
	"strconv"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// dayPlace is a kind of thing that a new user has to find: those of the
// shop, with their rooms, what the shop file leaves out, and what to know.
type dayPlace struct {
	What    string
	Items   []dayItem
	Missing string // what the shop file does not say, with what to do instead
	Says    string
}

// dayItem is one thing with its room.
type dayItem struct{ Which, Path, Room, Says string }

// mostDayItems is how many things of a kind the guide lists.
const mostDayItems = 5

// dayPlaces lists stops, ways out, extinguishers, bins and gauges with their
// rooms. What the file leaves out says so, and what to do.
func (b *Book) dayPlaces() []dayPlace {
	list := []dayPlace{b.dayStops(), b.dayExits(), b.dayExtinguishers()}
	if len(b.Plan.Shop.Collectors) > 0 {
		list = append(list, b.dayBins())
	}
	list = append(list, b.dayGauges())
	if l := b.Plan.Shop.Control.Lockout; l.Known() {
		list = append(list, dayPlace{What: b.words.Text("card.lockout"), Items: []dayItem{{Which: l.V}}, Says: b.words.Text("day.lockout")})
	}
	for i := range list {
		if more := len(list[i].Items) - mostDayItems; more > 0 {
			list[i].Items = append(list[i].Items[:mostDayItems:mostDayItems], dayItem{Which: b.words.Text("day.more-places", strconv.Itoa(more)), Path: "plan.html"})
		}
	}
	return list
}

// dayStops lists the stops, and the collectors without one.
func (b *Book) dayStops() dayPlace {
	v := dayPlace{What: b.words.Text("day.what.stop")}
	stopped := map[*shop.Collector]bool{}
	for _, s := range b.Plan.Shop.Stops {
		item := dayItem{Which: s.Name, Room: b.roomNameAt(s.Place)}
		if d := b.Plan.Control.DeviceOf(s); d != nil {
			item.Which, item.Path = d.Name, b.Path("stop", d.Name)
		}
		var stops []string
		for _, c := range s.Collectors {
			stopped[c] = true
			stops = append(stops, c.Name)
		}
		for _, m := range s.Machines {
			stops = append(stops, m.Name)
		}
		if len(stops) > 0 {
			item.Says = b.words.Text("day.stops", b.list(stops))
		}
		v.Items = append(v.Items, item)
	}
	var without []string
	for _, c := range b.Plan.Shop.Collectors {
		if !stopped[c] {
			without = append(without, c.Name)
		}
	}
	if len(without) > 0 {
		v.Missing = b.words.Text("day.missing.stop", b.list(without))
	}
	return v
}

// dayExits counts the ways out of each room, and names the rooms with
// machines of which none is given.
func (b *Book) dayExits() dayPlace {
	v := dayPlace{What: b.words.Text("day.what.exit"), Says: b.words.Text("day.exits-on-plan")}
	var without []string
	for _, r := range b.Plan.Shop.Rooms {
		switch {
		case len(r.Exits) > 0:
			v.Items = append(v.Items, dayItem{Which: b.words.Count("day.exits", len(r.Exits)), Room: r.Name, Path: b.Path("room", r.Name)})
		case slices.ContainsFunc(b.Plan.Shop.Machines, func(m *shop.Machine) bool { return m.Room == r }):
			without = append(without, r.Name)
		}
	}
	switch {
	case len(without) > 0:
		v.Missing = b.words.Text("day.missing.exit-of", b.list(without))
	case len(v.Items) == 0:
		v.Missing = b.words.Text("day.missing.exit")
	}
	return v
}

// dayExtinguishers lists the extinguishers.
func (b *Book) dayExtinguishers() dayPlace {
	v := dayPlace{What: b.words.Text("day.what.extinguisher"), Says: b.words.Text("day.extinguisher")}
	for _, e := range b.Plan.Shop.Extinguishers {
		item := dayItem{Which: b.words.Text("day.rating-not-given"), Room: b.roomNameAt(e.Place)}
		if e.Rating.Known() {
			item.Which = e.Rating.V
		}
		v.Items = append(v.Items, item)
	}
	if len(v.Items) == 0 {
		v.Missing = b.words.Text("day.missing.extinguisher")
	}
	return v
}

// dayBins lists what the dust falls into.
func (b *Book) dayBins() dayPlace {
	v := dayPlace{What: b.words.Text("day.what.bin"), Says: b.words.Text("day.bin")}
	var without []string
	for _, c := range b.Plan.Shop.Collectors {
		if c.Bin == nil {
			without = append(without, c.Name)
			continue
		}
		item := dayItem{Which: unit.Bin.Print(b.units, c.Bin.Size) + " " + c.Bin.Called, Path: b.Path("collector", c.Name), Says: b.words.Text("day.bin-of", c.Name)}
		if c.Room != nil {
			item.Room = c.Room.Name
		}
		v.Items = append(v.Items, item)
	}
	if len(without) > 0 {
		v.Missing = b.words.Text("day.missing.bin", b.list(without))
	}
	return v
}

// dayGauges says where to read pressures: at every hood, and what else the
// shop has.
func (b *Book) dayGauges() dayPlace {
	v := dayPlace{What: b.words.Text("day.what.gauge"), Says: b.words.Text("day.gauge-band"), Items: []dayItem{{Which: b.words.Text("day.gauge-at-hood"), Path: "gauges.html"}}}
	for _, s := range b.Plan.Shop.Sensors {
		if s.Senses == "filter pressure" && s.Name != "" {
			v.Items = append(v.Items, dayItem{Which: s.Name, Path: b.Path("sensor", s.Name), Says: b.words.Text("day.gauge-filter")})
		}
	}
	for _, t := range b.Plan.Shop.Taps {
		if t.Name == "" {
			continue
		}
		item := dayItem{Which: t.Name, Says: b.words.Text("day.gauge-tap", t.On.Name), Path: b.Path("duct", t.On.Name)}
		if t.On.Route != nil {
			at := shop.Along(t.On.Route, t.Where)
			item.Room = b.roomNameAt(shop.Field[shop.Point]{V: shop.Point{X: at.X, Y: at.Y}, How: shop.Stated})
		}
		v.Items = append(v.Items, item)
	}
	return v
}

// roomNameAt is the room that holds a place; empty where none does.
func (b *Book) roomNameAt(place shop.Field[shop.Point]) string {
	if place.Known() {
		for _, r := range b.Plan.Shop.Rooms {
			if r.Holds(place.V) {
				return r.Name
			}
		}
	}
	return ""
}
