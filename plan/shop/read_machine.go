package shop

import (
	"fmt"
	"slices"

	"dustbook/plan/entry"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// readMachines reads [[machine]] with its ports.
func (r *reader) readMachines(top *scope) {
	for _, s := range top.several("machine") {
		m := &Machine{At: s.t.At}
		ref := s.name("machine")
		m.Name = ref.Name
		m.Kind = s.word("kind").V
		kind := findKind(m.Kind)
		m.Place = s.point("at")
		r.refer(s, "room", "room", func(thing any) { m.Room = thing.(*Room) })
		makes := s.word("makes")
		m.Makes, m.MakesStated = makes.V, makes.Stated()
		if kind != nil {
			m.Waste = kind.Waste
			if m.Makes == "" {
				m.Makes = kind.Makes
			}
		}
		m.Motor, m.Circuit = s.motor("motor"), s.circuit("circuit")
		m.Amps = measure[unit.Current](s, "amps")
		m.Restarts = s.yes("restarts")
		m.Coast = measure[unit.Time](s, "coast")
		m.Noise = measure[unit.Sound](s, "noise")
		m.Hours, m.Starts, m.Blower = s.number("hours"), s.count("starts"), s.yes("blower")
		m.Transport = measure[unit.Velocity](s, "transport")
		for _, gate := range s.strings("also_open") {
			r.later(gate, "gate", func(thing any) { m.AlsoOpen = append(m.AlsoOpen, thing.(*Gate)) })
		}
		m.Cut = s.cut("cut")
		if kind != nil {
			m.Ports = s.ports(m, kind)
		} else {
			s.node("port") // without a kind there is nothing to hold them against
		}
		if ref.Name != "" && (kind == nil || m.Ports == nil) {
			r.broken[m.Name] = true
		}
		r.shop.Machines = append(r.shop.Machines, m)
		s.close()
	}
}

// ports reads the machine's ports, or takes those of its kind.
func (s *scope) ports(m *Machine, kind *Kind) []*Port {
	scopes := s.inlines("port")
	if len(scopes) == 0 {
		if s.t.Get("port") != nil {
			return nil // it was there and wrong
		}
		return s.kindPorts(m, kind)
	}
	var list []*Port
	for _, p := range scopes {
		p.about = m.Name
		port := &Port{Machine: m, At: p.t.At}
		if port.Name = p.portName(kind, len(scopes)); port.Name == "" {
			continue
		}
		if slices.ContainsFunc(list, func(other *Port) bool { return other.Name == port.Name }) {
			s.r.problem(p.t.At, "the port "+entry.Quote(port.Name)+" twice", "names that differ within a machine", "rename one of them")
		}
		p.about = m.Name + "/" + port.Name
		p.fillPort(port, kind)
		p.close()
		list = append(list, port)
	}
	return list
}

// portName is the port's name; a lone port may leave it to its kind.
func (p *scope) portName(kind *Kind, count int) string {
	node := p.node("name")
	if node == nil {
		if count == 1 {
			return kind.Ports[0].Name
		}
		p.r.problem(p.t.At, "a port without name", "a name, since the machine has several ports", `add name = "…"`)
		return ""
	}
	name, ok := p.str(node, "a name in quotes")
	if !ok {
		return ""
	}
	if fault := nameFault(name); fault != "" {
		p.r.problem(node.At, "name = "+entry.Quote(name), fault, "choose a plain name")
		return ""
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
	if !size.Known() && p.t.Get("size") == nil {
		if port.Size = stock.Size[units]; port.Size == 0 {
			p.missing("size", port, kind)
		} else {
			p.assumePort("size", unit.Size.Print(units, port.Size), stock.Need[units])
		}
	}
	if !flow.Known() && p.t.Get("flow") == nil {
		port.Flow, port.Need = stock.Flow[units], stock.Need[units]
		if port.Flow == 0 && kind.Name != "open end" {
			p.missing("flow", port, kind)
		} else if port.Flow > 0 {
			p.assumePort("flow", unit.Air.Print(units, port.Flow), stock.Need[units])
		}
	}
	if !hood.Known() {
		port.HoodLoss, port.Hood = stock.HoodLoss, stock.Hood
		p.assumePort("hood_loss", unit.Short(stock.HoodLoss), stock.Hood)
	}
}

func (p *scope) missing(field string, port *Port, kind *Kind) {
	p.r.problem(p.t.At, fmt.Sprintf("the port %s without %s", entry.Quote(port.Full()), field), fmt.Sprintf("a %s: the kind %s brings none for it", field, entry.Quote(kind.Name)), "add "+field)
}

func (p *scope) assumePort(field, value string, basis source.Basis) {
	p.assume(field, value, &Row{Table: "port", Field: field, Basis: basis})
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
