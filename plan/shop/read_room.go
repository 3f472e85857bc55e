package shop

import (
	"math"

	"dustbook/plan/unit"
)

// readRooms reads [[room]], [[appliance]] and [[wall]].
func (r *reader) readRooms(top *scope) {
	for _, s := range top.several("room") {
		room := &Room{At: s.t.At}
		room.Name = s.name("room").Name
		room.Outline = s.points("outline")
		if node := s.t.Get("outline"); node != nil && len(room.Outline) > 0 && (len(room.Outline) < 3 || polygonArea(room.Outline) < 0.1) {
			s.wrong(node, "an outline of at least three corners with an area", "give the corners in order")
		}
		room.Height = measure[unit.Length](s, "height")
		room.Exits = s.points("exits")
		for _, ref := range s.strings("open_to") {
			r.later(ref, "room", func(thing any) { room.OpenTo = append(room.OpenTo, thing.(*Room)) })
		}
		room.Opening = measure[unit.Area](s, "opening")
		room.Sprinklers = s.yes("sprinklers")
		r.shop.Rooms = append(r.shop.Rooms, room)
		s.close()
	}
	for _, s := range top.several("appliance") {
		a := &Appliance{Kind: s.word("kind").V, At: s.t.At}
		r.refer(s, "room", "room", func(thing any) { a.Room = thing.(*Room) })
		r.shop.Appliances = append(r.shop.Appliances, a)
		s.close()
	}
	for _, s := range top.several("wall") {
		w := &Wall{From: s.point("from").V, To: s.point("to").V, Rating: s.text("rating"), Divides: s.word("divides"), At: s.t.At}
		if from, to := s.t.Get("from"), s.t.Get("to"); from != nil && to != nil && math.Hypot(w.To.X-w.From.X, w.To.Y-w.From.Y) < 0.01 {
			s.wrong(to, "a wall with a length", "give its two ends")
		}
		r.shop.Walls = append(r.shop.Walls, w)
		s.close()
	}
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
