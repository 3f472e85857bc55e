package shop

import (
	"strings"

	"dustbook/plan/entry"
)

// refer reads a field that names one other thing; set is called with it once
// everything is read.
func (r *reader) refer(s *scope, field, kind string, set func(any)) {
	node := s.node(field)
	if node == nil {
		return
	}
	if name, ok := s.str(node, "the name of "+article(kind)); ok {
		r.later(Ref{name, node.At}, kind, set)
	}
}

// later resolves a name at the end of the reading.
func (r *reader) later(ref Ref, kind string, set func(any)) {
	r.pending = append(r.pending, func() {
		if thing := r.find(ref, kind); thing != nil {
			set(thing)
		}
	})
}

// find finds the thing a name means, or reports that there is none.
func (r *reader) find(ref Ref, kind string) any {
	if kind == "machine port" {
		return r.findPort(ref)
	}
	for _, k := range strings.Split(kind, " or ") {
		if thing := r.things()[k][ref.Name]; thing != nil {
			return thing
		}
	}
	r.unknown(ref, kind)
	return nil
}

// unknown reports a name that means nothing of the kind wanted.
func (r *reader) unknown(ref Ref, kind string) {
	var known []string
	for _, n := range r.names {
		if n.ref.Name == ref.Name {
			r.problem(ref.At, entry.Quote(ref.Name)+", "+article(n.kind), "the name of "+article(kind), "name "+article(kind)+" here")
			return
		}
		for _, k := range strings.Split(kind, " or ") {
			if n.kind == k {
				known = append(known, n.ref.Name)
			}
		}
	}
	do := "add the " + kind + ", or take the name out"
	if len(known) > 0 {
		do = nearest(ref.Name, known)
		if len(known) > 12 && !strings.HasPrefix(do, "write") {
			do = "add the " + kind + ", or take the name out"
		}
	}
	r.problem(ref.At, entry.Quote(ref.Name), "the name of "+article(kind)+" in this file", do)
}

// things are the things of the file by kind and name. Of two with the same
// name the first counts; the second is a problem of its own.
func (r *reader) things() map[string]map[string]any {
	if r.known != nil {
		return r.known
	}
	r.known = map[string]map[string]any{}
	put := func(kind, name string, thing any) {
		if r.known[kind] == nil {
			r.known[kind] = map[string]any{}
		}
		if r.known[kind][name] == nil {
			r.known[kind][name] = thing
		}
	}
	for _, v := range r.shop.Rooms {
		put("room", v.Name, v)
	}
	for _, v := range r.shop.Machines {
		put("machine", v.Name, v)
	}
	for _, v := range r.shop.Collectors {
		put("collector", v.Name, v)
	}
	for _, v := range r.shop.Ducts {
		put("duct", v.Name, v)
	}
	for _, v := range r.shop.Gates {
		put("gate", v.Name, v)
	}
	return r.known
}

// findPort finds "Machine/port", or the only port of "Machine".
func (r *reader) findPort(ref Ref) any {
	machineName, portName, named := strings.Cut(ref.Name, "/")
	thing := r.things()["machine"][machineName]
	if thing == nil {
		if !named {
			r.unknown(ref, "machine")
		} else {
			r.unknown(Ref{machineName, ref.At}, "machine")
		}
		return nil
	}
	m := thing.(*Machine)
	if r.broken[m.Name] {
		return nil
	}
	var ports []string
	for _, p := range m.Ports {
		if p.Name == portName || !named && len(m.Ports) == 1 {
			return p
		}
		ports = append(ports, p.Full())
	}
	r.problem(ref.At, entry.Quote(ref.Name), "a port of "+entry.Quote(m.Name)+": "+strings.Join(quoteAll(ports), ", "), nearest(ref.Name, ports))
	return nil
}
