package duct

import (
	"math"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// hoseChanges pulls the port's hose straight, cuts it, or puts one of the next
// stock size in its place.
func (t *Tree) hoseChanges(r *Result, p *shop.Port) (list []Change) {
	hose := p.Duct.Hose
	if hose == nil {
		return nil
	}
	with := func(name string, made shop.Hose) *Change {
		c := change(name, r)
		c.Duct, c.as.hose = p.Duct, map[*shop.Duct]*shop.Hose{p.Duct: &made}
		list = append(list, c)
		return &list[len(list)-1]
	}
	if hose.Times > 1 {
		made := *hose
		made.Times = 1
		with("hose straight", made)
	}
	least := "least hose us"
	if t.shop.Units == unit.Metric {
		least = "least hose metric"
	}
	length := hose.Length * unit.Length(changeTable.Figure("shorter hose"))
	length = max(length, unit.Must[unit.Length](changeTable.Measure(least)))
	if unit.Compare(float64(length), float64(hose.Length)) < 0 {
		made := *hose
		made.Length = length
		with("shorter hose", made).Length = length
	}
	nominal := hose.Size
	if nominal == p.Duct.Bore {
		nominal = p.Duct.Size
	}
	if size, known := nextOver(t.shop, nominal); known && hose.Size > 0 {
		made := *hose
		made.Size = size
		with("wider hose", made).Size = size
	}
	return list
}

// elbowChanges puts elbows of a longer radius on a duct that has elbows on the
// way.
func (t *Tree) elbowChanges(r *Result, w leg) []Change {
	long, known := longElbow(w.duct.Elbows)
	turns := slices.ContainsFunc(w.stretches, func(s *shop.Stretch) bool { return len(s.Turns) > 0 })
	if !known || !turns || long.K90 >= w.duct.ElbowLoss {
		return nil
	}
	c := change("long elbows", r)
	c.Duct, c.Elbows, c.as.elbow = w.duct, long.Name, map[*shop.Duct]float64{w.duct: long.K90}
	return []Change{c}
}

// wyeChanges puts a branch fitting of a lesser angle where a duct joins by a
// steeper one.
func (t *Tree) wyeChanges(name string, r *Result, d *shop.Duct) []Change {
	angle := unit.Must[unit.Angle](changeTable.Measure(name))
	if d.Into == nil || !d.Wye || t.shop.Junctions == "none" || unit.Compare(float64(d.Entry), float64(angle)) <= 0 {
		return nil
	}
	c := change(name, r)
	c.Duct, c.Angle = d, angle
	c.as.entry = map[*shop.Duct]unit.Angle{d: angle}
	c.as.turns = map[*shop.Stretch][]shop.Turn{last(d): joinedAt(d, angle)}
	return []Change{c}
}

// joinedAt are the elbows of a duct's last stretch where it joins at another
// angle: the one that makes up what the route's angle leaves is another.
func joinedAt(d *shop.Duct, entry unit.Angle) []shop.Turn {
	turns := slices.DeleteFunc(slices.Clone(last(d).Turns), func(t shop.Turn) bool { return t.Join })
	route, known := routeAngle(d)
	left := unit.Angle(max(route-entry, entry-route))
	if known && shop.IsElbow(left) {
		turns = append(turns, shop.Turn{Angle: unit.Angle(unit.Six(float64(left))), At: d.Length, Join: true})
	}
	return turns
}

// aside is how far past a place the run that goes on from there is looked at.
const aside unit.Length = 0.001

// routeAngle is the angle at which a duct's route meets the other's, where
// both have routes.
func routeAngle(d *shop.Duct) (angle unit.Angle, known bool) {
	into := d.Into
	if len(d.Route) < 2 || len(into.Route) < 2 {
		return 0, false
	}
	n, m := len(d.Route), len(into.Route)
	from, to := into.Route[m-2], into.Route[m-1]
	if at := d.JoinAt + aside; at < into.Length {
		rest := shop.Part(into.Route, at, into.Length)
		from, to = rest[0], rest[1]
	}
	return shop.Turned(d.Route[n-2], d.Route[n-1], from, to), true
}

// pipeChanges replaces pipe by the next stock size: each stretch on the way,
// and the whole duct where it has several.
func (t *Tree) pipeChanges(r *Result, w leg) (list []Change) {
	size, known := nextSize(t.shop, w.duct)
	if !known {
		return nil
	}
	bore, _ := shop.Bore(w.duct.Material, size)
	one := func(of *shop.Stretch, replaced []*shop.Stretch) {
		c := change("wider pipe", r)
		c.Duct, c.Stretch, c.Size, c.as.bore = w.duct, of, size, map[*shop.Stretch]unit.Length{}
		for _, s := range replaced {
			c.as.bore[s] = bore
		}
		list = append(list, c)
	}
	if len(w.duct.Stretches) > 1 {
		for _, s := range w.stretches {
			one(s, []*shop.Stretch{s})
		}
	}
	one(nil, w.duct.Stretches)
	return list
}

// moveChanges moves the collector to where the last run of its only main
// began. The elbow there goes too.
func (t *Tree) moveChanges(r *Result, main *shop.Duct) []Change {
	for _, d := range t.shop.Ducts {
		if d.Into == nil && d.Collector == t.Collector && d != main {
			return nil // another main would have to follow
		}
	}
	n, s := len(main.Route), last(main)
	if n < 3 {
		return nil
	}
	run := unit.Length(spotsApart(main.Route[n-2], main.Route[n-1]))
	corner := main.Length - run
	if corner <= s.From+aside {
		return nil // something joins on the run that would go
	}
	c := change("collector nearer", r)
	c.Length = unit.Length(unit.Six(float64(run)))
	c.as.length = map[*shop.Stretch]unit.Length{s: s.Length() - run}
	c.as.turns = map[*shop.Stretch][]shop.Turn{s: slices.DeleteFunc(slices.Clone(s.Turns), func(t shop.Turn) bool { return t.At >= corner-aside })}
	return []Change{c}
}

// spotsApart is the distance between two spots, in metres.
func spotsApart(a, b shop.Spot) float64 {
	x, y, z := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	return math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z))
}
