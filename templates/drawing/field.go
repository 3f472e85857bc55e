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
	find   *search   // kept for its lists
	wait   *patience // nil where there is no end to it
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

// patience is how many strained labels are borne with before a size is given
// up as hopeless.
type patience struct {
	left     int
	strained func(*label) bool
}

// lost reports whether the size was given up.
func (p *patience) lost() bool { return p != nil && p.left < 0 }

// after counts a label that was placed for the first time.
func (p *patience) after(l *label) {
	if p != nil && p.strained(l) {
		p.left--
	}
}

// settle places every label in order, then lets each move once more, in so
// many passes, now that it knows the others. It ends at once where patience is
// lost.
func (f *field) settle(labels []*label, passes int) {
	defer f.rest()
	for _, l := range labels {
		f.place(l)
		l.freed = false
		f.labels = append(f.labels, l)
		if f.wait.after(l); f.wait.lost() {
			return
		}
	}
	still := 0 // labels in a row that stayed where they were
	for range passes {
		for _, l := range labels {
			if still == len(labels)-1 {
				return // no other has moved since this one looked
			}
			if f.stays(l) {
				still++
				continue
			}
			was := *l
			f.place(l)
			l.freed = false
			if l.box == was.box && slices.Equal(l.leader, was.leader) {
				still++
				continue
			}
			still = 0
			for _, o := range labels {
				o.freed = o.freed || was.box.grown(gapAround).meets(o.seen) || was.leads(o.seen.grown(closeBy))
			}
		}
	}
}

// stays reports whether a label need not look for a place again: nothing went
// away where it looked, so that no other place can have become cheaper, and
// its own costs what it did.
func (f *field) stays(l *label) bool {
	if l.freed || l.taken == nil {
		return false
	}
	f.find.start(f, l)
	cost, ok := f.find.costNow()
	return ok && cost == l.cost
}
