package shop

import "dustbook/plan/unit"

// readRest reads what hangs on walls and ducts, the control half and the
// paper.
func (r *reader) readRest(top *scope) {
	for _, s := range top.several("extinguisher") {
		r.shop.Extinguishers = append(r.shop.Extinguishers, &Extinguisher{At: s.t.At, Place: s.point("at"), Rating: s.text("rating"), Serviced: s.date("serviced")})
		s.close()
	}
	for _, s := range top.several("stop") {
		r.readStop(s)
	}
	for _, s := range top.several("tap") {
		r.readTap(s)
	}
	r.readControls(top)
	for _, s := range top.several("accepted") {
		a := &Accepted{At: s.t.At, Check: s.text("check").V, About: s.text("about").V, Reason: s.text("reason").V, Role: s.text("role").V, Until: s.date("until")}
		r.shop.Accepted = append(r.shop.Accepted, a)
		s.close()
	}
	for _, s := range top.several("document") {
		r.shop.Documents = append(r.shop.Documents, &Document{At: s.t.At, Kind: s.text("kind").V, Held: s.yes("held"), Date: s.date("date"), By: s.text("by")})
		s.close()
	}
}

func (r *reader) readStop(s *scope) {
	b := &StopButton{At: s.t.At, Name: s.name("stop").Name, Place: s.point("at")}
	s.refers("stops", func(thing any) {
		switch t := thing.(type) {
		case *Collector:
			b.Collectors = append(b.Collectors, t)
		case *Machine:
			b.Machines = append(b.Machines, t)
		}
	})
	r.shop.Stops = append(r.shop.Stops, b)
	s.close()
}

func (r *reader) readTap(s *scope) {
	tap := &Tap{At: s.t.At, Name: s.name("tap").Name}
	at := measure[unit.Length](s, "at")
	r.refer(s, "on", func(thing any) {
		tap.On = thing.(*Duct)
		tap.Where = s.along(tap.On, at)
	})
	r.shop.Taps = append(r.shop.Taps, tap)
	s.close()
}
