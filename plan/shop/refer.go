package shop

import (
	"slices"
	"strings"

	"dustbook/plan/entry"
)

// refer reads a field that names one other thing; set is called with it once
// everything is read.
func (r *reader) refer(s *scope, field string, set func(any)) {
	node := s.node(field)
	if node == nil {
		return
	}
	kind := s.row(field).Of
	if name, ok := s.strOr(node, "the name of "+article(kind), "write the name in quotes"); ok {
		r.later(Ref{name, node.At}, kind, set)
	}
}

// refers reads a field that names several other things, each once.
func (s *scope) refers(field string, set func(any)) {
	kind, named := s.row(field).Of, map[any]bool{}
	for _, ref := range s.strings(field) {
		s.r.later(ref, kind, func(thing any) {
			if named[thing] {
				s.r.problem(ref.At, entry.Quote(ref.Name)+" again", "each "+kind+" once", "take one of the two out")
				return
			}
			named[thing] = true
			set(thing)
		})
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
	for _, k := range kindsIn(kind) {
		if thing := r.things()[k][ref.Name]; thing != nil {
			return thing
		}
	}
	r.unknown(ref, kind)
	return nil
}

// kindsIn are the kinds that a field may name: "duct or collector".
func kindsIn(kind string) []string { return strings.Split(kind, " or ") }

// unknown reports a name that means nothing of the kind wanted. Where a
// table of that kind has no name that can be read, or could not be found at
// all, that is said elsewhere and is likely to be the cause.
func (r *reader) unknown(ref Ref, kind string) {
	nameless := false
	for _, k := range kindsIn(kind) {
		if r.lost[k] {
			return
		}
		nameless = nameless || r.nameless[k]
	}
	known := r.namesOf(kind)
	if nameless && len(r.search.near(kind, ref.Name, known)) == 0 {
		return
	}
	read := entry.Quote(ref.Name)
	for _, k := range topTables {
		if r.things()[k][ref.Name] != nil {
			read += ", " + article(k)
			break
		}
	}
	add := "add the " + kindsIn(kind)[0]
	do := r.nearest(kind, ref.Name, known, add+", or take the name out")
	if strings.HasPrefix(do, "use ") {
		do += ", or " + add
	}
	r.problem(ref.At, read, "the name of "+article(kind)+" in this file", do)
}

// namesOf lists the names that a field of a kind may hold, in file order.
func (r *reader) namesOf(kind string) []string {
	if list, done := r.nameLists[kind]; done {
		return list
	}
	var list []string
	for _, n := range r.names {
		if slices.Contains(kindsIn(kind), n.kind) {
			list = append(list, n.ref.Name)
		}
	}
	r.nameLists[kind] = list
	return list
}

// things are the things of the file by kind and name. Of two with the same
// name the first counts; the second is a problem of its own. Of the kinds
// that this package keeps no model of, the name itself stands for the thing.
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
	for _, v := range r.shop.Triggers {
		put("trigger", v.Name, v)
	}
	for _, v := range r.shop.Sensors {
		put("sensor", v.Name, v)
	}
	for _, n := range r.names {
		put(n.kind, n.ref.Name, n.ref)
	}
	return r.known
}

// findPort finds "Machine/port", or the only port of "Machine".
func (r *reader) findPort(ref Ref) any {
	machineName, portName, named := strings.Cut(ref.Name, "/")
	m, found := r.things()["machine"][machineName].(*Machine)
	if !found {
		r.unknown(Ref{machineName, ref.At}, "machine")
		return nil
	}
	if !named && len(m.Ports) == 1 {
		return m.Ports[0]
	}
	if p := r.portsOf(m)[portName]; p != nil && named {
		return p
	}
	if r.broken[m.Name] || r.twice[m.Name] {
		return nil // its ports, or which machine is meant, is a problem of its own
	}
	names := r.portNames(m)
	expected := "one of its ports"
	if len(names) <= 6 {
		expected = "a port of " + entry.Quote(m.Name) + ": " + strings.Join(quoteAll(names), ", ")
	}
	r.problem(ref.At, entry.Quote(ref.Name), expected, r.nearest("ports of "+m.Name, ref.Name, names, "name one of its ports, as in the file"))
	return nil
}

// portsOf are a machine's ports by name.
func (r *reader) portsOf(m *Machine) map[string]*Port {
	if r.ports[m] == nil {
		r.ports[m] = map[string]*Port{}
		for _, p := range m.Ports {
			r.ports[m][p.Name] = p
		}
	}
	return r.ports[m]
}

// portNames are the full names of a machine's ports.
func (r *reader) portNames(m *Machine) []string {
	key := "ports of " + m.Name
	if r.nameLists[key] == nil {
		for _, p := range m.Ports {
			r.nameLists[key] = append(r.nameLists[key], p.Full())
		}
	}
	return r.nameLists[key]
}
