package shop

import (
	"strings"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// readControls reads the control half: what notices, what moves it, what
// watches.
func (r *reader) readControls(top *scope) {
	for _, s := range top.several("trigger") {
		r.readTrigger(s)
	}
	r.readControl(top)
	for _, s := range top.several("chain") {
		r.readChain(s)
	}
	for _, s := range top.several("sensor") {
		v := &Sensor{At: s.t.At, Name: s.name("sensor").Name, Tag: s.tag("tag"), Senses: s.word("senses").V, Draws: measure[unit.Current](s, "draws"), High: s.level("high"), VeryHigh: s.level("very_high")}
		r.shop.Sensors = append(r.shop.Sensors, v)
		s.close()
	}
}

func (r *reader) readTrigger(s *scope) {
	v := &Trigger{At: s.t.At, Name: s.name("trigger").Name, Tag: s.tag("tag"), Senses: s.word("senses").V}
	r.refer(s, "machine", func(thing any) { v.Machine = thing.(*Machine) })
	v.Standby, v.NoLoad = measure[unit.Current](s, "standby"), measure[unit.Current](s, "no_load")
	for _, t := range s.inlines("readings") {
		v.Readings = append(v.Readings, CurrentReading{At: t.t.At, State: t.text("state").V, Mean: measure[unit.Current](t, "mean").V, Spread: measure[unit.Current](t, "spread")})
		t.close()
	}
	v.Threshold, v.Turns = measure[unit.Current](s, "threshold"), s.count("turns")
	v.Range, v.Draws = s.currents("range"), measure[unit.Current](s, "draws")
	s.refers("opens", func(thing any) { v.Opens = append(v.Opens, thing.(*Gate)) })
	s.refers("starts", func(thing any) { v.Starts = append(v.Starts, thing.(*Collector)) })
	v.StartDelay, v.RunOn = measure[unit.Time](s, "start_delay"), measure[unit.Time](s, "run_on")
	r.shop.Triggers = append(r.shop.Triggers, v)
	s.close()
}

func (r *reader) readControl(top *scope) {
	s := top.single("control")
	if s == nil {
		return
	}
	r.shop.Control = Control{
		Given: true, At: s.t.At,
		Supply: measure[unit.Voltage](s, "supply"), SupplyPower: measure[unit.Power](s, "supply_power"), SupplyListed: s.word("supply_listed"),
		Lowest: measure[unit.Voltage](s, "lowest"), MovesTogether: s.count("moves_together"), AfterPowerCut: s.word("after_power_cut"),
		EnclosureType: s.text("enclosure_type"), Lockout: s.text("lockout"), Purge: s.text("purge"), WorkingSpace: measure[unit.Length](s, "working_space"),
	}
	s.close()
}

func (r *reader) readChain(s *scope) {
	c := &Chain{At: s.t.At, Name: s.name("chain").Name, Cable: measure[unit.Wire](s, "cable").V}
	if node := s.t.Get("cable"); node != nil {
		c.CableText, _ = node.Value.(string)
	}
	c.Temperature = measure[unit.Temperature](s, "temperature")
	for _, t := range s.inlines("stops") {
		i := len(c.Stops)
		c.Stops = append(c.Stops, ChainStop{At: t.t.At})
		r.refer(t, "device", func(thing any) {
			switch d := thing.(type) {
			case *Gate:
				c.Stops[i].Gate = d
			case *Trigger:
				c.Stops[i].Trigger = d
			case *Sensor:
				c.Stops[i].Sensor = d
			}
		})
		c.Stops[i].Cable = measure[unit.Length](t, "cable").V
		t.close()
	}
	r.shop.Chains = append(r.shop.Chains, c)
	s.close()
}

// currents reads a range of currents.
func (s *scope) currents(field string) Field[CurrentRange] {
	node := s.node(field)
	if node == nil {
		return Field[CurrentRange]{}
	}
	if full, bare := bareRange(node); bare {
		s.wrong(node, `two currents with "to" between them, each with its unit`, "write the unit: "+entry.Quote(full))
		return Field[CurrentRange]{}
	}
	low, high, ok := two(s, node, "", func(text string) (low, high unit.Current, err error) { return unit.ReadRange[unit.Current](text) })
	if ok && low < 0 {
		s.wrong(node, "currents of zero or more", "take the minus away")
		ok = false
	}
	if !ok {
		return Field[CurrentRange]{}
	}
	return Field[CurrentRange]{CurrentRange{low, high}, Stated, node.At}
}

// bareRange is a range in amperes that only lacks its units, with them.
func bareRange(node *entry.Node) (full string, bare bool) {
	text, _ := nodeText(node)
	low, high, found := strings.Cut(text, " to ")
	if !found {
		return "", false
	}
	reads := func(text string) bool {
		_, _, err := unit.ReadRange[unit.Current](text)
		return err == nil
	}
	for _, full := range []string{low + " A to " + high + " A", low + " A to " + high, low + " to " + high + " A"} {
		if reads(full) {
			return full, !reads(text)
		}
	}
	return "", false
}

// level reads a level of what a sensor senses: a pressure across the filter,
// and free text for what has no unit of its own.
func (s *scope) level(field string) Level {
	if senses := s.t.Get("senses"); senses == nil || senses.Value != "filter pressure" {
		return Level{Text: s.text(field).V}
	}
	v := measure[unit.Pressure](s, field)
	if high := s.t.Get("high"); field == "very_high" && v.Known() && high != nil {
		text, _ := high.Value.(string)
		if below, err := unit.Read[unit.Pressure](text); err == nil && !unit.AtLeast(float64(v.V), float64(below)) {
			s.wrong(s.t.Get(field), "a pressure no lower than high", "check the two figures")
		}
	}
	return Level{Press: v}
}
