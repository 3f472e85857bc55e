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
	closeBy      = 10   // what is no farther from a line or a leader lies on it
	leaderCost   = 150  // a leader is drawn
	leaderOver   = 3000 // a leader runs through a label or a box
	leadersCross = 1200 // two leaders cross
	onLeader     = 2000 // a label lies on a leader
)

// take makes a field of the part of another that matters within an area: what
// no label and no leader there can touch is left out, so that it is not asked
// about for every place. No margin around a box or a leader is wider than
// gapAround.
func (f *field) take(all *field, area box) {
	f.solids, f.strips, f.labels = f.solids[:0], f.strips[:0], f.labels[:0]
	wide := area.grown(gapAround)
	for _, s := range all.solids {
		if wide.meets(s) {
			f.solids = append(f.solids, s)
		}
	}
	for i := range all.strips {
		if s := &all.strips[i]; s.crosses(area) {
			f.strips = append(f.strips, *s)
		}
	}
	for _, l := range all.labels {
		if wide.meets(l.box) || l.leads(wide) {
			f.labels = append(f.labels, l)
		}
	}
}

// crosses reports whether a strip runs through a box or close by.
func (s *strip) crosses(b box) bool { return b.grown(s.half+closeBy).crossed(s.a, s.c) }

// leads reports whether a label's leader runs through a box.
func (l *label) leads(b box) bool { return len(l.leader) > 1 && b.crossed(l.leader[0], l.leader[1]) }

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
		if s.crosses(b) && !mine.owns(s) {
			if cost += s.cost; cost >= limit {
				return cost
			}
		}
	}
	wide := b.grown(closeBy)
	for _, l := range f.labels {
		if l != mine && l.leads(wide) {
			cost += onLeader
		}
	}
	return cost
}

// run is what a leader costs on its way, beside being one. It stops adding
// once the cost reaches a limit.
func (f *field) run(a, c spot, mine *label, limit int) int {
	cost := 0
	for _, s := range f.solids {
		if s.crossed(a, c) && !s.holds(a) {
			cost += leaderOver
		}
	}
	for _, l := range f.labels {
		if l == mine {
			continue
		}
		if l.box.grown(closeBy).crossed(a, c) {
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

// settle places every label in order, then lets each move once more, in so
// many passes, now that it knows the others.
func (f *field) settle(labels []*label, passes int) {
	for _, l := range labels {
		f.place(l)
		f.labels = append(f.labels, l)
	}
	still := 0 // labels in a row that stayed where they were
	for range passes {
		for _, l := range labels {
			if still == len(labels)-1 {
				return // no other has moved since this one looked
			}
			was := *l
			if f.place(l); l.box == was.box && slices.Equal(l.leader, was.leader) {
				still++
			} else {
				still = 0
			}
		}
	}
}
