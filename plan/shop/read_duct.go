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
		d.Hose = s.hose(d)
		r.readServes(s, d)
		d.Bonded = measure[unit.Resistance](s, "bonded")
		r.shop.Ducts = append(r.shop.Ducts, d)
		s.close()
	}
}

func (r *reader) readTarget(s *scope, d *Duct) {
	if node := s.node("to"); node != nil {
		if name, ok := s.str(node, "the name of a duct or a collector"); ok {
			d.To = Ref{name, node.At}
			r.later(d.To, "duct or collector", func(thing any) {
				switch into := thing.(type) {
				case *Duct:
					d.Into = into
				case *Collector:
					d.Collector = into
				}
			})
		}
	}
}

func (r *reader) readSize(s *scope, d *Duct) {
	if node := s.t.Get("size"); node != nil && node.Value == "choose" {
		s.seen["size"] = true
		d.Choose = true
		return
	}
	d.Size = measure[unit.Length](s, "size").V
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
	if d.Wall.Known() && d.Gauge.Known() {
		r.problem(d.Wall.At, "wall beside gauge", "one of the two", "leave out one")
	}
	d.Rings, d.Hangers = measure[unit.Length](s, "rings"), measure[unit.Length](s, "hangers")
	d.Elbows = s.word("elbows").V
	if d.Elbows != "" {
		elbow := findElbow(d.Elbows)
		d.ElbowLoss, d.ElbowBasis = elbow.K90, elbow.Basis
	}
	d.CleanOuts = s.lengths("clean_outs")
	d.Conductive = s.yes("conductive")
	d.Conducts = stuff.Conducts
	if d.Conductive.Known() {
		d.Conducts = d.Conductive.V
	}
	rough := measure[unit.Length](s, "roughness")
	d.Roughness, d.Rough = rough.V, source.Basis{Mark: source.Given}
	if !rough.Known() {
		d.Roughness, d.Rough = stuff.Roughness, stuff.Basis
		s.assume("roughness", unit.Thin.Print(r.shop.Units, stuff.Roughness), &Row{Basis: stuff.Basis})
	}
	d.Loss = s.number("loss").V
}

func (s *scope) gauge(field string) Field[unit.Gauge] {
	node := s.node(field)
	if node == nil {
		return Field[unit.Gauge]{}
	}
	text, ok := s.str(node, `a sheet gauge such as "26 ga"`)
	if !ok {
		return Field[unit.Gauge]{}
	}
	g, err := unit.ReadGauge(text)
	if err != nil {
		s.unitProblem(node, err)
		return Field[unit.Gauge]{}
	}
	if !s.inBounds(field, float64(g), node, parseNumber) {
		return Field[unit.Gauge]{}
	}
	return Field[unit.Gauge]{g, Stated, node.At}
}

// readRun reads the route, or the length and fittings in words, and how the
// duct joins. The join itself is found once every duct is known.
func (r *reader) readRun(s *scope, d *Duct) {
	route, length := s.t.Get("route"), s.t.Get("length")
	if route == nil && length == nil {
		r.problem(s.t.At, s.title()+` without "route" or "length"`, "one of the two", `add route = [[x, y, height], …] from the hood end on, or length = "…"`)
	}
	if route != nil && length != nil {
		r.problem(length.Key, "length beside route", "one of the two", "leave out length: the route says it")
	}
	d.Route = s.route("route")
	d.Length = measure[unit.Length](s, "length").V
	angles := s.fittings("fittings")
	if route != nil && s.t.Get("fittings") != nil {
		r.problem(s.t.Get("fittings").Key, "fittings beside route", "elbows from the route alone", "leave out fittings; put anything else into loss")
	}
	if d.Route != nil {
		d.Length, d.Turns = measureRoute(d.Route)
	}
	for _, angle := range angles {
		d.Turns = append(d.Turns, Turn{Angle: angle})
	}
	if len(angles) > 0 {
		s.assume("fittings", "all at the upstream end", &Row{Basis: source.Basis{Mark: source.Practice}})
	}
	r.readJoin(s, d)
}

// readJoin reads entry and joins; resolving the join needs the other duct.
func (r *reader) readJoin(s *scope, d *Duct) {
	entryAngle := s.entry("entry")
	joins := measure[unit.Length](s, "joins")
	r.joins = append(r.joins, join{s: s, duct: d, entry: entryAngle, joins: joins})
}

func (s *scope) entry(field string) Field[unit.Angle] {
	node := s.node(field)
	if node == nil {
		return Field[unit.Angle]{}
	}
	if node.Value == "straight" {
		return Field[unit.Angle]{0, Stated, node.At}
	}
	angle, ok := quantity[unit.Angle](s, node)
	if !ok {
		return Field[unit.Angle]{}
	}
	if angle < 0 || angle > 90 {
		s.wrong(node, `an angle from 0 to 90 degrees, or "straight"`, `write "45 deg"`)
		return Field[unit.Angle]{}
	}
	return Field[unit.Angle]{angle, Stated, node.At}
}

func (s *scope) hose(d *Duct) *Hose {
	t := s.inline("hose")
	if t == nil {
		return nil
	}
	h := &Hose{At: t.t.At, Times: 1}
	size := measure[unit.Length](t, "size")
	h.Size = size.V
	if !size.Known() && t.t.Get("size") == nil {
		h.Size = d.Bore
		t.assume("size", unit.Size.Print(s.r.shop.Units, d.Bore), &Row{Basis: source.Basis{Mark: source.Practice}})
	}
	h.Length = measure[unit.Length](t, "length").V
	material := t.word("material")
	h.Material, h.MaterialStated = material.V, material.Stated()
	if h.Material != "" {
		kind := findHose(h.Material)
		h.Conducts, h.Roughness, h.Rough = kind.Conducts, kind.Roughness, kind.Basis
		t.assume("roughness", unit.Thin.Print(s.r.shop.Units, kind.Roughness), &Row{Basis: kind.Basis})
	}
	h.Stretched = t.yes("stretched")
	name := "hose not said"
	if h.Stretched.Known() && !h.Stretched.V {
		name = "hose not stretched"
	}
	if !h.Stretched.Known() || !h.Stretched.V {
		row := factor(name)
		h.Times = row.Number("value")
		t.assume("stretched", unit.Short(h.Times)+" times the friction of the hose pulled out", &Row{Basis: row.Basis})
	}
	t.close()
	return h
}

// readServes reads the ports the duct takes air from.
func (r *reader) readServes(s *scope, d *Duct) {
	refs := s.strings("serves")
	for _, ref := range refs {
		r.later(ref, "machine port", func(thing any) {
			port := thing.(*Port)
			if port.Duct != nil {
				r.problem(ref.At, entry.Quote(ref.Name), "a port that no other duct serves; "+entry.Quote(port.Duct.Name)+" serves it", "leave it out here or there")
				return
			}
			port.Duct = d
			d.Serves = append(d.Serves, port)
		})
	}
	if len(refs) == 0 && d.Hose != nil {
		r.problem(d.Hose.At, "a hose on a duct that serves nothing", "serves with the machine's port", `add serves = ["Machine/port"], or leave out the hose`)
	}
}
