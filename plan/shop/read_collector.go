package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readCollectors reads [[collector]].
func (r *reader) readCollectors(top *scope) {
	for _, s := range top.several("collector") {
		c := &Collector{At: s.t.At}
		c.Name = s.name("collector").Name
		c.Place = s.point("at")
		r.refer(s, "room", func(thing any) { c.Room = thing.(*Room) })
		c.Inlet = measure[unit.Length](s, "inlet").V
		r.readFan(s, c)
		c.Motor, c.Circuit = s.motor("motor"), s.circuit("circuit")
		c.WheelInertia = measure[unit.Inertia](s, "wheel_inertia")
		c.StartsHour = s.number("starts_per_hour")
		c.Starter = s.word("starter")
		c.RunUp = measure[unit.Time](s, "run_up")
		c.Separator, c.Filter = s.separator("separator"), s.filter("filter")
		c.Bin, c.Outlet = s.bin("bin"), s.outlet("outlet", c)
		c.Exhaust = s.word("exhaust")
		r.refer(s, "returns_to", func(thing any) { c.ReturnsTo = thing.(*Room) })
		c.ReturnOpening = measure[unit.Area](s, "return_opening")
		c.Enclosure = s.word("enclosure")
		c.DirtyVolume = measure[unit.Volume](s, "dirty_volume")
		c.Bonded = measure[unit.Resistance](s, "bonded")
		c.ToCombustible = measure[unit.Length](s, "to_combustible")
		c.Labelled = s.yes("labelled")
		r.shop.Collectors = append(r.shop.Collectors, c)
		s.close()
	}
}

// readFan reads the curve or the claims, and the power.
func (r *reader) readFan(s *scope, c *Collector) {
	if s.t.Get("fan_curve") == nil && s.t.Get("claims") == nil && !s.misspelt("fan_curve") && !s.misspelt("claims") {
		r.problem(s.t.At, s.title()+` without "fan_curve" or "claims"`, "one of the two", `add fan_curve = [["0 cfm", "11 inwg"], …] from the maker's curve, or claims = { flow = "…", suction = "…" } from the label`)
	}
	flows, pressures := pairs[unit.Flow, unit.Pressure](s, "fan_curve")
	for i := range flows {
		c.Curve = append(c.Curve, CurvePoint{flows[i], pressures[i]})
	}
	if node := s.t.Get("fan_curve"); node != nil {
		c.CurveAt = node.Key
	}
	c.CurveDensity = measure[unit.Density](s, "curve_density")
	c.Includes = s.words("curve_includes")
	if t := s.inline("claims"); t != nil {
		c.Claims = &Claims{Flow: measure[unit.Flow](t, "flow").V, Suction: measure[unit.Pressure](t, "suction").V, At: t.t.At}
		t.close()
	}
	flows, powers := pairs[unit.Flow, unit.Power](s, "fan_power")
	for i := range flows {
		c.FanPower = append(c.FanPower, PowerPoint{flows[i], powers[i]})
	}
	c.Efficiency = s.number("efficiency")
	if node := s.t.Get("efficiency"); node != nil && s.t.Get("fan_power") != nil {
		r.problem(node.Key, "efficiency beside fan_power", "one of the two", "take efficiency out: the curve says more")
	}
	c.Wheel = s.word("wheel")
}

func (s *scope) separator(field string) *Separator {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	v := &Separator{Kind: t.text("kind").V, Loss: measure[unit.Pressure](t, "loss").V, Flow: measure[unit.Flow](t, "at").V}
	t.close()
	return v
}

func (s *scope) filter(field string) *Filter {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	f := &Filter{Area: measure[unit.Area](t, "area"), Clean: measure[unit.Pressure](t, "clean").V, Change: measure[unit.Pressure](t, "change").V, Flow: measure[unit.Flow](t, "at").V, Side: t.word("side"),
		Removes: t.number("removes"), RemovesAt: measure[unit.Length](t, "removes_at"), Residual: measure[unit.Density](t, "residual")}
	if f.Change > 0 && f.Clean > 0 && !unit.AtLeast(float64(f.Change), float64(f.Clean)) {
		t.wrong(t.t.Get("change"), "a pressure no lower than the clean filter's", "check the two figures")
	}
	t.close()
	return f
}

// bin reads a bin: a table, or its volume alone.
func (s *scope) bin(field string) *Bin {
	node := s.node(field)
	if node == nil {
		return nil
	}
	if _, ok := node.Value.(*entry.Table); !ok {
		size := measureOr[unit.Volume](s, field, ", or a table { size = …, called = … }")
		return &Bin{Size: size.V, Called: rowOf[[2]string{"bin", "called"}].Default}
	}
	t := s.inline(field)
	b := &Bin{Size: measure[unit.Volume](t, "size").V, Called: t.text("called").V, Material: t.text("material")}
	t.close()
	return b
}

func (s *scope) outlet(field string, c *Collector) *Outlet {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	o := &Outlet{Size: measure[unit.Length](t, "size").V, Length: measure[unit.Length](t, "length").V}
	if t.t.Get("size") == nil {
		o.Size = c.Inlet
		t.assume("size", phrase("outlet as inlet", unit.Size.Print(s.r.shop.Units, c.Inlet)), source.Basis{Mark: source.Practice})
	}
	material := t.word("material").V
	rough := measure[unit.Length](t, "roughness")
	o.Elbows, o.Loss = t.fittings("fittings"), t.number("loss").V
	o.Roughness = rough.V
	o.ToProperty, o.ToOpening, o.AboveGround = measure[unit.Length](t, "to_property"), measure[unit.Length](t, "to_opening"), measure[unit.Length](t, "above_ground")
	if !rough.Known() && material != "" {
		stuff := findMaterial(material)
		o.Roughness = stuff.Roughness
		t.assume("roughness", unit.Thin.Print(s.r.shop.Units, stuff.Roughness), stuff.Basis)
	}
	t.close()
	return o
}
