package drawing

import (
	"slices"

	"dustbook/plan/shop"
)

// field is the ground on which labels find their places: boxes nothing may
// lie on, strips that cost, and the labels already placed.
type field struct {
	solids []box
	strips []strip
	labels []*label
}

// strip is a line of some width that a label should not lie on, with what
// that costs in tenths of a unit of distance.
type strip struct {
	a, c       spot
	half, cost int
	of         *shop.Duct // nil where it is no duct
	wall       bool
}

// owns reports whether a label may lie on a strip.
func (l *label) owns(s *strip) bool {
	return s.wall && l.onWall || s.of != nil && slices.Contains(l.mine, s.of)
}

// What a place costs beside its distance, in tenths of a unit.
const (
	gapAround    = 20   // room that labels keep from each other and from boxes
	leaderCost   = 150  // a leader is drawn
	leaderOver   = 3000 // a leader runs through a label or a box
	leadersCross = 1200 // two leaders cross
	onLeader     = 2000 // a label lies on a leader
)

// free reports whether a box lies on no solid box and no other label.
func (f *field) free(b box, mine *label) bool {
	wide := b.grown(gapAround)
	for _, s := range f.solids {
		if wide.meets(s) {
			return false
		}
	}
	for _, l := range f.labels {
		if l != mine && wide.meets(l.box) {
			return false
		}
	}
	return true
}

// lie is what lying on strips and leaders costs a box. It stops adding once
// the cost reaches a limit.
func (f *field) lie(b box, mine *label, limit int) int {
	cost := 0
	for i := range f.strips {
		s := &f.strips[i]
		if wide := b.grown(s.half + 10); wide.crossed(s.a, s.c) && !mine.owns(s) {
			if cost += s.cost; cost >= limit {
				return cost
			}
		}
	}
	for _, l := range f.labels {
		if l != mine && len(l.leader) > 1 && b.grown(10).crossed(l.leader[0], l.leader[1]) {
			cost += onLeader
		}
	}
	return cost
}

// run is what a leader costs on its way. It stops adding once the cost
// reaches a limit.
func (f *field) run(a, c spot, mine *label, limit int) int {
	cost := leaderCost
	for _, s := range f.solids {
		if s.crossed(a, c) && !s.holds(a) {
			cost += leaderOver
		}
	}
	for _, l := range f.labels {
		if l == mine {
			continue
		}
		if l.box.grown(10).crossed(a, c) {
			cost += leaderOver
		}
		if len(l.leader) > 1 && cross(a, c, l.leader[0], l.leader[1]) {
			cost += leadersCross
		}
		if cost >= limit {
			return cost
		}
	}
	for i := range f.strips {
		if s := &f.strips[i]; cross(a, c, s.a, s.c) && !mine.owns(s) {
			cost += s.cost / 5
		}
	}
	return cost
}

// search is the look for a label's best place.
type search struct {
	*field
	label *label
	best  label // the label as it stands at the best place found
	found bool
}

// limit is the cost from which a place is no better than the best found.
func (f *search) limit() int {
	if f.found {
		return f.best.cost
	}
	return never
}

// try weighs one place, with a leader from a spot where one is needed; the
// first of equals counts.
func (f *search) try(o option, base int, from *spot) {
	l, cost := f.label, base+o.cost
	if cost >= f.limit() || !f.free(o.box, l) {
		return
	}
	if cost += f.lie(o.box, l, f.limit()-cost); cost >= f.limit() {
		return
	}
	if l.stay != nil {
		if cost += l.stay(o); cost >= f.limit() {
			return
		}
	}
	var lead []spot
	if from != nil {
		lead = l.lead(o.box, *from)
		if cost += f.run(lead[0], lead[1], l, f.limit()-cost); cost >= f.limit() {
			return
		}
	}
	f.found, f.best = true, *l
	f.best.box, f.best.text, f.best.hang, f.best.cost, f.best.leader = o.box, o.text, o.hang, cost, lead
	if o.text == (box{}) {
		f.best.text = o.box.grown(-l.pad)
	}
}

// around tries the places around the label's anchors, ring by ring, until
// the distance alone costs more than the best place found.
func (f *search) around(base int) {
	l := f.label
	for _, ring := range rings {
		if f.found && base+ring >= f.best.cost {
			return
		}
		for _, a := range l.anchors {
			if f.found && base+a.cost+ring >= f.best.cost {
				continue
			}
			var from *spot
			if ring >= l.near {
				from = &a.at
			}
			l.places(a, ring, func(o option) { f.try(o, base+a.cost, from) })
		}
	}
}

// place finds the best place for a label among the free ones and puts it
// there, in the form that suits it best.
func (f *field) place(l *label) {
	find := &search{field: f, label: l}
	for i := range max(1, len(l.forms)) {
		base := 0
		if len(l.forms) > 0 {
			l.form, l.block, base = i, l.forms[i].block, l.forms[i].cost
		}
		for _, o := range l.fixed {
			find.try(o, base, nil)
		}
		if !l.only || !find.found {
			find.around(base)
		}
	}
	*l = find.best
}

// settle places every label in order, then lets each move once more now that
// it knows the others.
func (f *field) settle(labels []*label, passes int) {
	for _, l := range labels {
		f.place(l)
		f.labels = append(f.labels, l)
	}
	for range passes {
		for _, l := range labels {
			f.place(l)
		}
	}
}
