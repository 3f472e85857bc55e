package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// readAbout reads [shop]. It comes first: its units say what points are in.
func (r *reader) readAbout(top *scope) {
	s := top.single("shop")
	if s == nil {
		if top.t.Get("shop") == nil && !top.misspelt("shop") {
			r.problem(entry.Place{Line: 1, Column: 1}, "no table [shop]", "a table [shop] with the shop's name", `add [shop] and name = "…" at the top`)
		}
		return
	}
	shop := r.shop
	shop.Name = s.name("shop").Name
	s.about = ""
	if s.word("units").V == "metric" {
		shop.Units = unit.Metric
	}
	shop.Setting = s.word("setting")
	shop.Employees, shop.Pupils = s.count("employees"), s.count("pupils")
	shop.Language, shop.Rules = s.word("language").V, s.word("rules").V
	shop.Editions = s.editions("editions")
	r.readAir(s)
	shop.Coldest = measure[unit.Temperature](s, "coldest")
	shop.OutdoorDesign = measure[unit.Temperature](s, "outdoor_design")
	shop.PeopleAtMachines = s.count("people_at_machines")
	shop.Envelope = s.envelope("envelope")
	shop.Address = s.text("address")
	s.close()
}

// readAir reads the air's state: altitude and temperature, or density and
// viscosity, which count instead of both.
func (r *reader) readAir(s *scope) {
	shop := r.shop
	air := s.inline("air")
	if air != nil {
		shop.AirDensity = measure[unit.Density](air, "density")
		shop.AirViscosity = measure[unit.Viscosity](air, "viscosity")
		air.close()
	}
	s.seen["altitude"], s.seen["air_temperature"] = true, true
	if air == nil || s.t.Get("altitude") != nil {
		shop.Altitude = measure[unit.Length](s, "altitude")
	}
	if air == nil || s.t.Get("air_temperature") != nil {
		shop.AirTemperature = measure[unit.Temperature](s, "air_temperature")
	}
}

// envelope reads a flow at a pressure.
func (s *scope) envelope(field string) Field[Envelope] {
	node := s.node(field)
	if node == nil {
		return Field[Envelope]{}
	}
	flow, press, ok := two(s, node, "", unit.ReadAt[unit.Flow, unit.Pressure])
	if ok && (flow <= 0 || press <= 0) {
		s.wrong(node, "a flow and a pressure above zero", "check the figures")
	}
	return Field[Envelope]{Envelope{flow, press}, Stated, node.At}
}

// editions reads the adopted editions, text by text.
func (s *scope) editions(field string) []Edition {
	node := s.node(field)
	if node == nil {
		return nil
	}
	t, ok := node.Value.(*entry.Table)
	if !ok {
		s.wrong(node, "texts with their editions in braces", `write editions = { "IMC" = "2018" }`)
		return nil
	}
	var list []Edition
	for _, item := range t.Nodes {
		if v, ok := s.str(item, "an edition in quotes"); ok {
			list = append(list, Edition{item.Name, v, item.Key})
		}
	}
	return list
}

// readMethod reads [method].
func (r *reader) readMethod(top *scope) {
	s := top.single("method")
	if s == nil { // its defaults hold
		s = r.open(&entry.Table{}, "method", "")
	}
	r.shop.Junctions = s.word("junctions").V
	r.shop.SizeChanges = s.word("size_changes").V
	s.close()
}

// readPaper reads [[confirmed]] and [[revision]].
func (r *reader) readPaper(top *scope) {
	for _, s := range top.several("confirmed") {
		c := Confirmed{Figure: s.text("figure").V, Value: s.text("value").V, By: s.text("by").V, At: s.t.At}
		r.shop.Confirmed = append(r.shop.Confirmed, c)
		s.close()
	}
	for _, s := range top.several("revision") {
		v := Revision{Mark: s.text("mark").V, Date: s.date("date"), Note: s.text("note").V, At: s.t.At}
		r.shop.Revisions = append(r.shop.Revisions, v)
		s.close()
	}
}
