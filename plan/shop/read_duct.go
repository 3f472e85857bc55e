package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readDucts reads [[duct]].
func (r *reader) readDucts(top *scope) {
	for _, s := range top.several("duct") {
		d := &Duct{At: s.t.At}
		d.Name = s.name("duct").Name
		r.readTarget(s, d)
		r.readSize(s, d)
		r.readMake(s, d)
		r.readRun(s, d)
		d.CleanOuts = s.placesOn(d, "clean_outs")
		d.Hose = s.hose(d)
		r.readServes(s, d)
		d.Bonded = measure[unit.Resistance](s, "bonded")
		d.Clearance = measure[unit.Length](s, "clearance")
		r.shop.Ducts = append(r.shop.Ducts, d)
		s.close()
	}
}

func (r *reader) readTarget(s *scope, d *Duct) {
	r.refer(s, "to", func(thing any) {
		switch into := thing.(type) {
		case *Duct:
			d.Into = into
		case *Collector:
			d.Collector = into
		}
	})
	if node := s.t.Get("to"); node != nil {
		name, _ := node.Value.(string)
		d.To = Ref{name, node.At}
	}
}

func (r *reader) readSize(s *scope, d *Duct) {
	size := orWord[unit.Length](s, "size", "choose")
	d.Size, d.Choose = size.V, size.Known() && size.V == 0
}

// readMake reads what the pipe and its elbows are.
func (r *reader) readMake(s *scope, d *Duct) {
	material := s.word("material")
	d.Material, d.MaterialStated = material.V, material.Stated()
	if d.Material == "" {
		d.Material = rowOf[[2]string{"duct", "material"}].Default // it was there and wrong
	}
	stuff := findMaterial(d.Material)
	d.Bore, d.BoreBasis = Bore(d.Material, d.Size)
	d.Gauge = s.gauge("gauge")
	d.Wall = measure[unit.Length](s, "wall")
	if wall := s.t.Get("wall"); wall != nil && s.t.Get("gauge") != nil {
		r.problem(wall.Key, "wall beside gauge", "one of the two", "take one of the two out")
	}
	d.Rings, d.Hangers = measure[unit.Length](s, "rings"), measure[unit.Length](s, "hangers")
	d.Elbows = s.word("elbows").V
	if d.Elbows != "" {
		elbow := findElbow(d.Elbows)
		d.ElbowLoss, d.ElbowBasis = elbow.K90, elbow.Basis
	}
	d.Conductive = s.yes("conductive")
	d.Conducts = stuff.Conducts
	if d.Conductive.Known() {
		d.Conducts = d.Conductive.V
	}
	rough := measure[unit.Length](s, "roughness")
	d.Roughness, d.Rough = rough.V, source.Basis{Mark: source.Given}
	if !rough.Known() {
		d.Roughness, d.Rough = stuff.Roughness, stuff.Basis
		s.assume("roughness", unit.Thin.Print(r.shop.Units, stuff.Roughness), stuff.Basis)
	}
	d.Loss = s.number("loss").V
}

// readRun reads the route, or the length and fittings in words, and how the
// duct joins. The join itself is found once every duct is known.
func (r *reader) readRun(s *scope, d *Duct) {
	route, length, fittings := s.t.Get("route"), s.t.Get("length"), s.t.Get("fittings")
	switch {
	case route == nil && length == nil && !s.misspelt("route") && !s.misspelt("length"):
		r.problem(s.t.At, s.title()+` without "route" or "length"`, "one of the two", "add route = [[x, y, height], …] from the hood end on, or length = "+s.row("length").sample())
	case route != nil && length != nil:
		r.problem(length.Key, "length beside route", "one of the two", "take length out: the route says it")
	case route != nil && fittings != nil:
		r.problem(fittings.Key, "fittings beside route", "elbows from the route alone", "take fittings out, and put anything else into loss")
	}
	d.Route = s.route("route")
	inWords := measure[unit.Length](s, "length")
	d.Length, d.run = inWords.V, inWords.Known() || d.Route != nil
	angles := s.fittings("fittings")
	if route != nil {
		d.Length, d.Turns = measureRoute(d.Route)
	}
	for _, angle := range angles {
		d.Turns = append(d.Turns, Turn{Angle: angle})
	}
	if len(angles) > 0 {
		s.assume("fittings", phrase("fittings unplaced"), source.Basis{Mark: source.Practice})
	}
	r.readJoin(s, d)
}

// readJoin reads entry and joins; resolving the join needs the other duct.
func (r *reader) readJoin(s *scope, d *Duct) {
	angle := orWord[unit.Angle](s, "entry", "straight")
	joins := measure[unit.Length](s, "joins")
	r.joins = append(r.joins, join{s: s, duct: d, entry: angle, joins: joins})
}

func (s *scope) hose(d *Duct) *Hose {
	t := s.inline("hose")
	if t == nil {
		return nil
	}
	h := &Hose{At: t.t.At, Times: 1}
	size := measure[unit.Length](t, "size")
	h.Size = size.V
	if t.t.Get("size") == nil {
		h.Size = d.Bore
		t.assume("size", t.hoseSize(d), source.Basis{Mark: source.Practice})
	}
	h.Length = measure[unit.Length](t, "length").V
	material := t.word("material")
	h.Material, h.MaterialStated = material.V, material.Stated()
	if h.Material != "" {
		kind := findHose(h.Material)
		h.Conducts, h.Roughness, h.Rough = kind.Conducts, kind.Roughness, kind.Basis
		t.assume("roughness", unit.Thin.Print(s.r.shop.Units, kind.Roughness), kind.Basis)
	}
	h.Stretched = t.yes("stretched")
	if !h.Stretched.V {
		row := factor("hose not said")
		if h.Stretched.Known() {
			row = factor("hose not stretched")
		}
		h.Times = row.Number("value")
		t.assume("stretched", phrase("hose drawn", unit.Short(h.Times)), row.Basis)
	}
	t.close()
	return h
}

// hoseSize says the size of a hose that is taken from its duct.
func (s *scope) hoseSize(d *Duct) string {
	if d.Choose {
		return phrase("hose of a duct to be chosen")
	}
	return unit.Size.Print(s.r.shop.Units, d.Bore)
}

// readServes reads the ports the duct takes air from.
func (r *reader) readServes(s *scope, d *Duct) {
	for _, ref := range s.strings("serves") {
		r.later(ref, s.row("serves").Of, func(thing any) {
			port := thing.(*Port)
			switch {
			case port.Duct == d:
				r.problem(ref.At, entry.Quote(ref.Name)+" again", "each port once", "take one of the two out")
			case port.Duct != nil:
				if !r.twice[port.Machine.Name] && !r.twice[d.Name] {
					r.problem(ref.At, entry.Quote(ref.Name), "a port of its own: "+entry.Quote(port.Duct.Name)+" serves this one", "take it out here or there")
				}
			default:
				port.Duct = d
				d.Serves = append(d.Serves, port)
			}
		})
	}
}
