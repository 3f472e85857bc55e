package duct

import (
	_ "embed"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed transport.csv
var transportData []byte

var transportRows = source.MustRows("transport.csv", transportData, "case", "speed", "about")

// TransportRows are the rows of the transport data, for the page of sources.
func TransportRows() []source.Row { return transportRows }

// transport finds a row of the transport data.
func transport(name string) (unit.Velocity, source.Basis) {
	for i, r := range transportRows {
		if r.Text("case") == name {
			return transportSpeeds[i], r.Basis
		}
	}
	panic("duct: transport.csv has no row " + name)
}

// transportSpeeds are the speeds of the rows, read once.
var transportSpeeds = func() (list []unit.Velocity) {
	for _, r := range transportRows {
		list = append(list, unit.Must[unit.Velocity](r.Text("speed")))
	}
	return list
}()

// Need is the transport velocity a stretch needs when a machine runs whose
// dust passes it, at standard air, with the row that says so.
func Need(s *shop.Stretch, m *shop.Machine) (v unit.Velocity, name string, basis source.Basis) {
	if m.Transport.Known() {
		return m.Transport.V, "given", source.Basis{Mark: source.Given}
	}
	cases := []string{"own duct"}
	if Shared(s) {
		cases = []string{"main"}
		if s.Rises {
			cases = append(cases, "rising main")
		}
	}
	if m.Waste == "chips" {
		cases = append(cases, "chips")
	}
	if m.Makes == "wet wood" {
		cases = append(cases, "wet")
	}
	for _, c := range cases {
		if speed, b := transport(c); speed > v {
			v, name, basis = speed, c, b
		}
	}
	return v, name, basis
}

// Shared reports whether dust of more than one machine may meet in a stretch:
// then it is a main, else a machine's own duct. Two ports of one machine share
// its own duct; a movable end counts once, since it stands at one machine at a
// time.
func Shared(s *shop.Stretch) bool {
	var first any
	return manyOwners(s.Duct, s.Number-1, &first)
}

// manyOwners walks the ends upstream of a duct's node and reports whether
// they belong to more than one owner: a machine, or a movable end.
func manyOwners(d *shop.Duct, node int, first *any) bool {
	if owner := ownerOf(d); owner != nil {
		if *first != nil && *first != owner {
			return true
		}
		*first = owner
	}
	for _, other := range d.Joined {
		if other.JoinNode <= node && manyOwners(other, len(other.Stretches), first) {
			return true
		}
	}
	return false
}

func ownerOf(d *shop.Duct) any {
	switch len(d.Serves) {
	case 0:
		return nil
	case 1:
		return d.Serves[0].Machine
	}
	return d
}

// judge decides captured and carried.
func (t *Tree) judge(r *Result) {
	raise := air.CarryRaise(t.State)
	for i := range r.Stretches {
		v := &r.Stretches[i]
		for _, m := range r.Use.Machines {
			if !t.passes(r.Use, m, v.Stretch) {
				continue
			}
			need, name, basis := Need(v.Stretch, m)
			if name != "given" {
				need = unit.Velocity(unit.Six(float64(need) * raise))
			}
			if !v.Judged || need > v.Transport {
				v.Transport, v.Case, v.Basis = need, name, basis
			}
			v.Judged = true
		}
		v.Carries = !v.Judged || r.OnCurve && unit.AtLeast(float64(v.Velocity), float64(v.Transport))
		v.HoseCarries = !v.Judged || !v.Hose || r.OnCurve && unit.AtLeast(float64(v.HoseVelocity), float64(v.Transport))
	}
	r.Captured, r.Carried = r.OnCurve, r.OnCurve
	for _, p := range r.Ports {
		r.Captured = r.Captured && p.Captured
		r.Carried = r.Carried && (p.Port.Duct != nil)
	}
	for _, v := range r.Stretches {
		r.Carried = r.Carried && v.Carries && v.HoseCarries
	}
}

// passes reports whether a machine's dust passes a stretch in a use.
func (t *Tree) passes(u *Use, m *shop.Machine, s *shop.Stretch) bool {
	for _, p := range m.Ports {
		if p.Duct == nil || p.Duct.Collector != t.Collector {
			continue
		}
		if served, _ := u.Served(p.Duct); served != p {
			continue
		}
		for _, at := range p.Path() {
			if at == s {
				return true
			}
		}
	}
	return false
}
