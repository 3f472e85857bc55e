package duct

import (
	"maps"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// An alteration is what a tree takes in place of what the shop file says. The
// empty one takes everything as it stands.
type alteration struct {
	bore   map[*shop.Stretch]unit.Length // inside diameter
	length map[*shop.Stretch]unit.Length
	turns  map[*shop.Stretch][]shop.Turn
	elbow  map[*shop.Duct]float64 // coefficient of its elbows at 90°
	entry  map[*shop.Duct]unit.Angle
	hose   map[*shop.Duct]*shop.Hose
	closed map[*shop.Leak]bool
}

// bore is the inside diameter of a stretch.
func (t *Tree) bore(s *shop.Stretch) unit.Length {
	if v, altered := t.as.bore[s]; altered {
		return v
	}
	return s.Duct.Bore
}

func (t *Tree) length(s *shop.Stretch) unit.Length {
	if v, altered := t.as.length[s]; altered {
		return v
	}
	return s.Length()
}

func (t *Tree) turns(s *shop.Stretch) []shop.Turn {
	if v, altered := t.as.turns[s]; altered {
		return v
	}
	return s.Turns
}

func (t *Tree) elbow(d *shop.Duct) float64 {
	if v, altered := t.as.elbow[d]; altered {
		return v
	}
	return d.ElbowLoss
}

// angle is the angle of the fitting a duct joins by.
func (t *Tree) angle(d *shop.Duct) unit.Angle {
	if v, altered := t.as.entry[d]; altered {
		return v
	}
	return d.Entry
}

func (t *Tree) hose(d *shop.Duct) *shop.Hose {
	if v, altered := t.as.hose[d]; altered {
		return v
	}
	return d.Hose
}

// below is the bore a stretch empties into: that of its duct's next stretch,
// of the duct it joins, or of the collector's inlet.
func (t *Tree) below(s *shop.Stretch) unit.Length {
	d := s.Duct
	switch into := d.Into; {
	case !s.Last():
		return t.bore(d.Stretches[s.Number])
	case into != nil:
		return t.bore(into.Stretches[min(d.JoinNode, len(into.Stretches)-1)])
	}
	return t.Collector.Inlet
}

// last is a duct's last stretch.
func last(d *shop.Duct) *shop.Stretch { return d.Stretches[len(d.Stretches)-1] }

// also takes another alteration in, where it says nothing itself.
func (as *alteration) also(o alteration) {
	as.bore, as.length, as.turns = joinedWith(as.bore, o.bore), joinedWith(as.length, o.length), joinedWith(as.turns, o.turns)
	as.elbow, as.entry = joinedWith(as.elbow, o.elbow), joinedWith(as.entry, o.entry)
	as.hose, as.closed = joinedWith(as.hose, o.hose), joinedWith(as.closed, o.closed)
}

func joinedWith[K comparable, V any](m, more map[K]V) map[K]V {
	out := maps.Clone(m)
	for key, v := range more {
		if out == nil {
			out = map[K]V{}
		}
		if _, has := out[key]; !has {
			out[key] = v
		}
	}
	return out
}
