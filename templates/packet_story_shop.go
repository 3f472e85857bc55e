package templates

import (
	"html/template"
	"slices"
	"strconv"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// settings are the keys of what a shop is.
var settings = map[string]string{"home": "packet.shop-is.home", "business": "packet.shop-is.business", "school": "packet.shop-is.school", "makerspace": "packet.shop-is.makerspace"}

// tellShop says what the shop is and who works there.
func (b *Book) tellShop() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.the-shop")
	if s.Setting.Stated() {
		p.say(settings[s.Setting.V], s.Name)
	} else {
		p.say("packet.shop-named", s.Name)
		p.lack("packet.lack-setting")
	}
	if s.Employees.Stated() {
		p.count("packet.employs", s.Employees.V)
	} else {
		p.lack("packet.lack-employees")
	}
	switch {
	case s.Pupils.Stated():
		p.count("packet.pupils", s.Pupils.V)
	case s.Setting.V == "school":
		p.lack("packet.lack-pupils")
	}
	known(p, s.PeopleAtMachines, "packet.at-machines", "packet.lack-at-machines", strconv.Itoa)
	return p
}

// tellBuilding says what rooms it has and what keeps them apart.
func (b *Book) tellBuilding() *passage {
	s := b.Plan.Shop
	p := b.passage("packet.building")
	if len(s.Rooms) == 0 {
		p.lack("packet.lack-rooms")
	} else {
		var rooms []template.HTML
		for _, r := range s.Rooms {
			rooms = append(rooms, b.roomClause(r))
		}
		p.count("packet.rooms", len(rooms), b.clausesOf(rooms))
	}
	p.sayOf("packet.sprinklers", roomNames(s, func(r *shop.Room) bool { return r.Sprinklers.Stated() && r.Sprinklers.V }))
	p.sayOf("packet.no-sprinklers", roomNames(s, func(r *shop.Room) bool { return r.Sprinklers.Stated() && !r.Sprinklers.V }))
	p.lackOf("packet.lack-sprinklers", roomNames(s, func(r *shop.Room) bool { return !r.Sprinklers.Stated() }))
	p.lackOf("packet.lack-height", roomNames(s, func(r *shop.Room) bool { return !r.Height.Stated() }))
	p.lackOf("packet.lack-exits", roomNames(s, func(r *shop.Room) bool { return len(r.Exits) == 0 }))
	for _, w := range s.Walls {
		b.tellWall(p, w)
	}
	for _, a := range s.Appliances {
		if a.Room != nil {
			p.say("packet.appliance", a.Kind, a.Room.Name)
		} else {
			p.say("packet.appliance-somewhere", a.Kind)
		}
	}
	if len(s.Appliances) == 0 {
		p.lack("packet.lack-appliances")
	}
	if len(s.Rooms) > 0 {
		p.see("plan.title", "plan.html")
	}
	return p
}

// tellWall says what a wall keeps apart.
func (b *Book) tellWall(p *passage, w *shop.Wall) {
	from, to := b.point(w.From), b.point(w.To)
	switch {
	case w.Divides.Stated() && w.Rating.Stated():
		p.say("packet.wall-rated", from, to, w.Divides.V, w.Rating.V)
	case w.Divides.Stated():
		p.say("packet.wall", from, to, w.Divides.V)
		p.lack("packet.lack-wall-rating", from, to)
	case w.Rating.Stated():
		p.say("packet.wall-rating", from, to, w.Rating.V)
		p.lack("packet.lack-wall-divides", from, to)
	default:
		p.lack("packet.lack-wall", from, to)
	}
}

// roomClause is a room with its floor and height.
func (b *Book) roomClause(r *shop.Room) template.HTML {
	floor := unit.Floor.Print(b.units, r.Area())
	if r.Height.Stated() {
		return b.sentence("packet.room-high", r.Name, floor, unit.Run.Print(b.units, r.Height.V))
	}
	return b.sentence("packet.room", r.Name, floor)
}

// roomNames are the names of the rooms that something holds for.
func roomNames(s *shop.Shop, holds func(*shop.Room) bool) []string {
	var list []string
	for _, r := range s.Rooms {
		if holds(r) {
			list = append(list, r.Name)
		}
	}
	return list
}

// worked are the keys of what is worked on machines.
var worked = map[string]string{
	"wood": "packet.works-wood", "fine wood": "packet.works-fine", "wet wood": "packet.works-wet",
	"metal": "packet.works-metal", "mixed": "packet.works-mixed", "finish overspray": "packet.works-finish",
}

// tellDust says which machines make what dust.
func (b *Book) tellDust() *passage {
	machines := b.Plan.Shop.Machines
	p := b.passage("packet.dust")
	p.count("packet.machines", len(machines))
	var kinds []string
	for _, m := range machines {
		if !slices.Contains(kinds, m.Makes) {
			kinds = append(kinds, m.Makes)
		}
	}
	for _, makes := range kinds {
		if key := worked[makes]; key != "" {
			p.sayOf(key, machineNames(machines, func(m *shop.Machine) bool { return m.Makes == makes }))
		}
	}
	p.sayOf("packet.throws-chips", machineNames(machines, func(m *shop.Machine) bool { return m.Waste == "chips" }))
	p.sayOf("packet.own-blower", machineNames(machines, func(m *shop.Machine) bool { return m.Blower.Stated() && m.Blower.V }))
	p.lackOf("packet.lack-makes", machineNames(machines, func(m *shop.Machine) bool { return !m.MakesStated }))
	p.lackOf("packet.lack-hours", machineNames(machines, func(m *shop.Machine) bool { return !m.Hours.Stated() }))
	p.lackOf("packet.lack-cut", machineNames(machines, func(m *shop.Machine) bool { return m.Cut == nil }))
	return p
}

// machineNames are the names of the machines that something holds for.
func machineNames(machines []*shop.Machine, holds func(*shop.Machine) bool) []string {
	return names(slices.DeleteFunc(slices.Clone(machines), func(m *shop.Machine) bool { return !holds(m) }))
}
