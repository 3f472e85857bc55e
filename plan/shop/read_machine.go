package shop

import (
	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readMachines reads [[machine]] with its ports.
func (r *reader) readMachines(top *scope) {
	for _, s := range top.several("machine") {
		m := &Machine{At: s.t.At}
		m.Name = s.name("machine").Name
		m.Kind = s.word("kind").V
		kind := findKind(m.Kind)
		m.Place = s.point("at")
		r.refer(s, "room", func(thing any) { m.Room = thing.(*Room) })
		s.readMakes(m, kind)
		m.Motor, m.Circuit = s.motor("motor"), s.circuit("circuit")
		m.Amps = measure[unit.Current](s, "amps")
		m.Restarts = s.yes("restarts")
		m.Coast = measure[unit.Time](s, "coast")
		m.Noise = measure[unit.Sound](s, "noise")
		m.Hours, m.Starts, m.Blower = s.number("hours"), s.count("starts"), s.yes("blower")
		m.Transport = measure[unit.Velocity](s, "transport")
		s.refers("also_open", func(thing any) { m.AlsoOpen = append(m.AlsoOpen, thing.(*Gate)) })
		m.Cut = s.cut("cut")
		r.readPorts(s, m, kind)
		r.shop.Machines = append(r.shop.Machines, m)
		s.close()
	}
}

// readMakes reads what the machine throws; left out, what its kind throws.
func (s *scope) readMakes(m *Machine, kind *Kind) {
	makes := s.word("makes")
	m.Makes, m.MakesStated = makes.V, makes.Stated()
	if kind == nil {
		return
	}
	m.Waste = kind.Waste
	if s.t.Get("makes") == nil {
		m.Makes = kind.Makes
		s.assume("makes", kind.Makes, source.Basis{Mark: source.Practice})
	}
}

// readPorts reads the machine's ports, or takes those of its kind. Where the
// kind or the list of ports is wrong, the ports are read for their own
// mistakes and not held against what names them.
func (r *reader) readPorts(s *scope, m *Machine, kind *Kind) {
	node := s.t.Get("port")
	if kind == nil || s.misspelt("port") {
		r.broken[m.Name] = true
	}
	if kind == nil {
		kind = findKind(anyKind)
	}
	scopes := s.inlines("port")
	if node == nil {
		m.Ports = s.kindPorts(m, kind)
		return
	}
	if items, isList := s.listIn("port"); isList && len(items) == 0 {
		s.wrong(node, "one port at least", "take port out for the ports of its kind, or describe one: port = { … }")
	}
	slugs := map[string]bool{}
	for _, p := range scopes {
		port := &Port{Machine: m, At: p.t.At}
		p.about = m.Name
		port.Name = p.portName(kind, len(scopes))
		if slug := Slug(port.Name); port.Name != "" && slugs[slug] {
			s.r.problem(p.nameAt(), "the port "+entry.Quote(port.Name)+" again", "ports that differ in letters or digits of their names", "give one of the two another name")
		} else {
			slugs[slug] = true
		}
		if port.Name == "" {
			r.broken[m.Name] = true
		}
		p.about = m.Name + "/" + port.Name
		p.fillPort(port, kind)
		p.close()
		m.Ports = append(m.Ports, port)
	}
	if len(m.Ports) == 0 {
		r.broken[m.Name] = true
	}
}

// anyKind is the kind of a machine that is of none of the others.
const anyKind = "other"

// nameAt is where the table's name stands, or the table.
func (s *scope) nameAt() entry.Place {
	if node := s.t.Get("name"); node != nil {
		return node.At
	}
	return s.t.At
}

// portName is the port's name; a lone port may leave it to its kind.
func (p *scope) portName(kind *Kind, count int) string {
	node := p.node("name")
	if node == nil {
		if count == 1 {
			return kind.Ports[0].Name
		}
		if !p.misspelt("name") {
			p.r.problem(p.t.At, `a port of `+entry.Quote(p.about)+` without "name"`, "a name, since the machine has several ports", `add name = "…"`)
		}
		return ""
	}
	name, ok := p.str(node, "a name in quotes")
	if ok {
		p.checkName("port", name, node)
	}
	return name
}

// fillPort reads size, need and hood loss, from the file or from the kind.
func (p *scope) fillPort(port *Port, kind *Kind) {
	stock := kind.port(port.Name)
	units := p.r.shop.Units
	size := measure[unit.Length](p, "size")
	flow := measure[unit.Flow](p, "flow")
	port.FlowFrom = p.text("flow_from").V
	hood := p.number("hood_loss")
	port.Size, port.Flow = size.V, flow.V
	port.Need = source.Basis{Mark: source.Given, Clause: port.FlowFrom}
	port.HoodLoss, port.Hood = hood.V, source.Basis{Mark: source.Given}
	if p.t.Get("size") == nil {
		port.Size = stock.Size[units]
		p.assume("size", unit.Size.Print(units, port.Size), stock.Need[units])
	}
	if p.t.Get("flow") == nil {
		port.Flow, port.Need = stock.Flow[units], source.Basis{}
		if port.Flow > 0 { // an open end needs nothing
			port.Need = stock.Need[units]
			p.assume("flow", unit.Air.Print(units, port.Flow), port.Need)
		}
	}
	if p.t.Get("hood_loss") == nil {
		port.HoodLoss, port.Hood = stock.HoodLoss, stock.Hood
		p.assume("hood_loss", unit.Short(stock.HoodLoss), stock.Hood)
	}
}

// port is the kind's port of that name, else its first.
func (k *Kind) port(name string) KindPort {
	for _, p := range k.Ports {
		if p.Name == name {
			return p
		}
	}
	return k.Ports[0]
}

// kindPorts are the ports a kind brings when the file lists none.
func (s *scope) kindPorts(m *Machine, kind *Kind) []*Port {
	var list []*Port
	for _, stock := range kind.Ports {
		if !stock.Standard {
			continue
		}
		port := &Port{Machine: m, Name: stock.Name, At: s.t.At}
		p := s.r.open(&entry.Table{At: s.t.At}, "port", m.Name+"/"+stock.Name)
		p.fillPort(port, kind)
		list = append(list, port)
	}
	return list
}

func (s *scope) motor(field string) *Motor {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	m := &Motor{At: t.t.At, Power: measure[unit.Power](t, "power").V, Volts: measure[unit.Voltage](t, "volts"), Phase: t.count("phase"), Poles: t.count("poles"), ServiceFactor: t.number("service_factor")}
	if m.Phase.V == 2 {
		t.wrong(t.t.Get("phase"), "1 or 3", "write 1 for a single phase, 3 for three")
	}
	if m.Poles.V%2 != 0 {
		t.wrong(t.t.Get("poles"), "an even count of poles: 2, 4, 6 …", "read it off the nameplate, or take it out")
	}
	t.close()
	return m
}

func (s *scope) circuit(field string) *Circuit {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	c := &Circuit{Breaker: measure[unit.Current](t, "breaker"), Wire: measure[unit.Wire](t, "wire"), Length: measure[unit.Length](t, "length"), Terminals: measure[unit.Temperature](t, "terminals")}
	t.close()
	return c
}

func (s *scope) cut(field string) *Cut {
	t := s.inline(field)
	if t == nil {
		return nil
	}
	c := &Cut{Width: measure[unit.Length](t, "width").V, Depth: measure[unit.Length](t, "depth").V, Feed: measure[unit.Velocity](t, "feed").V}
	t.close()
	return c
}
