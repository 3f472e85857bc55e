package shop

import (
	"math"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readRooms reads [[room]], [[appliance]] and [[wall]].
func (r *reader) readRooms(top *scope) {
	for _, s := range top.several("room") {
		room := &Room{At: s.t.At}
		room.Name = s.name("room").Name
		room.Outline = s.points("outline")
		if room.Outline != nil && (len(room.Outline) < 3 || polygonArea(room.Outline) < leastFloor) {
			s.wrong(s.t.Get("outline"), "an outline of at least three corners with an area", "give the corners in order")
		}
		room.Height = measure[unit.Length](s, "height")
		room.Exits = s.points("exits")
		s.refers("open_to", func(thing any) { room.OpenTo = append(room.OpenTo, thing.(*Room)) })
		room.Opening = measure[unit.Area](s, "opening")
		room.Chosen = measure[unit.Pressure](s, "depressurisation")
		room.Sprinklers = s.yes("sprinklers")
		room.WayOut = measure[unit.Length](s, "way_out")
		room.Layer = s.layer("layer")
		room.Cleaned = s.word("cleaned")
		r.shop.Rooms = append(r.shop.Rooms, room)
		s.close()
	}
	for _, s := range top.several("appliance") {
		r.readAppliance(s)
	}
	for _, s := range top.several("wall") {
		from, to := s.point("from"), s.point("to")
		w := &Wall{From: from.V, To: to.V, Rating: s.text("rating"), Divides: s.word("divides"), Door: s.door("door"), NoDoor: s.yes("no_door"), Board: measure[unit.Length](s, "board"), At: s.t.At}
		if from.Known() && to.Known() && math.Hypot(w.To.X-w.From.X, w.To.Y-w.From.Y) < leastWall {
			s.wrong(s.t.Get("to"), "a wall with a length", "give its two ends")
		}
		r.shop.Walls = append(r.shop.Walls, w)
		s.close()
	}
}

// layer reads the table of a measured layer of dust.
func (s *scope) layer(field string) *Layer {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	l := &Layer{Depth: measure[unit.Length](t, "depth").V, Area: measure[unit.Area](t, "area"), Density: measure[unit.Density](t, "density"), At: t.t.At}
	t.close()
	return l
}

// door reads the table of a door.
func (s *scope) door(field string) *Door {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	d := &Door{Thick: measure[unit.Length](t, "thick"), Rating: measure[unit.Time](t, "rating"), Closes: t.yes("closes"), IntoBedroom: t.yes("into_bedroom"), At: t.t.At}
	t.close()
	return d
}

// The least area of a room and the least length of a wall that are taken for
// one: below them the points are a slip of the pen.
const (
	leastFloor = 0.1  // square metres
	leastWall  = 0.01 // metres
)

// readAppliance reads [[appliance]]. Its kind and its room may be left out;
// the worst is taken then: an open flue, in every room.
func (r *reader) readAppliance(s *scope) {
	a := Appliance{Kind: s.word("kind").V, At: s.t.At}
	r.refer(s, "room", func(thing any) {
		a.Room = thing.(*Room)
		r.shop.Appliances = append(r.shop.Appliances, &a)
	})
	if s.t.Get("room") == nil {
		s.assume("room", phrase("no room"), source.Basis{Mark: source.Practice})
		for _, room := range r.shop.Rooms {
			anywhere := a
			anywhere.Room = room
			r.shop.Appliances = append(r.shop.Appliances, &anywhere)
		}
	}
	s.close()
}

func polygonArea(outline []Point) float64 {
	sum := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}

// Holds reports whether a place lies in the room's outline.
func (r *Room) Holds(p Point) bool {
	in := false
	for i, a := range r.Outline {
		b := r.Outline[(i+1)%len(r.Outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < (b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y)+a.X {
			in = !in
		}
	}
	return in
}

// Area is the room's floor area.
func (r *Room) Area() unit.Area { return unit.Area(polygonArea(r.Outline)) }
