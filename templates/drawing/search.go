package drawing

import "sync"

// search is the look for a label's best place. A field keeps one, so that its
// lists are made once.
type search struct {
	field   *field
	label   *label
	width   int // of the label, in the form looked at
	height  int
	widest  int // of all its forms
	highest int
	bars    []bar    // the field's strips
	fixed   ground   // where its fixed places are
	near    []ground // around each anchor
	seen    box      // all that mattered where places were tried
	looked  bool
	best    found
	found   bool
	bar     int // a place that costs as much or more is not taken
}

// found is a place found for a label.
type found struct {
	taken
	form, cost int
	end        spot // of its leader
}

// searches are looks that are over, kept for their lists.
var searches = sync.Pool{New: func() any { return new(search) }}

// rest gives the look back once no label is to be placed.
func (f *field) rest() {
	if f.find != nil {
		f.find.bars = f.find.bars[:0]
		searches.Put(f.find)
		f.find = nil
	}
}

// place finds the best place for a label among the free ones and puts it
// there, in the form that suits it best.
func (f *field) place(l *label) {
	if f.find == nil {
		f.find = searches.Get().(*search)
	}
	find := f.find
	find.start(f, l)
	find.setBar()
	for i := range max(1, len(l.forms)) {
		base := 0
		if len(l.forms) > 0 {
			l.form, l.block, base = i, l.forms[i].block, l.forms[i].cost
		}
		find.width, find.height = l.width(), l.height()
		find.tryFixed(base)
		if !l.only || !find.found {
			find.around(base)
		}
	}
	find.put()
}

// start makes the search ready for a label.
func (f *search) start(on *field, l *label) {
	f.field, f.label, f.bar, f.found, f.looked, f.fixed.taken = on, l, never, false, false, false
	if len(f.bars) != len(on.strips) { // none is ever changed or left out
		f.bars = on.barsOf(f.bars[:0])
	}
	f.widest, f.highest = l.width(), l.height()
	for i := range l.forms {
		b := &l.forms[i].block
		f.widest, f.highest = max(f.widest, b.width()+2*l.pad), max(f.highest, b.height()+2*l.pad)
	}
	for len(f.near) < len(l.anchors) {
		f.near = append(f.near, ground{})
	}
	for i := range l.anchors {
		f.near[i].taken = false
	}
}

// put puts the label at the best place found.
func (f *search) put() {
	l, b := f.label, &f.best
	if !f.found {
		return // it has no anchor and no fixed place that is free
	}
	if l.form = b.form; len(l.forms) > 0 {
		l.block = l.forms[b.form].block
	}
	l.box, l.text, l.hang, l.cost, l.leader = b.box, b.text, b.hang, b.cost, nil
	if b.text == (box{}) {
		l.text = b.box.grown(-l.pad)
	}
	if b.from != nil {
		l.leader = []spot{*b.from, b.end}
	}
	t := b.taken
	l.taken, l.seen = &t, f.seen
}

// setBar sets the bar for a label that stands somewhere already, by what its
// place costs now: most others are then passed over at once. The bar lies one
// higher, so that of equals the first still counts. A label that takes what
// costs more as long as it is one of the fixed places gets no bar.
func (f *search) setBar() {
	if f.label.taken == nil || f.label.only {
		return
	}
	if cost, ok := f.costNow(); ok {
		f.bar = cost + 1
	}
}

// costNow is what the label's place costs by now, if it is free.
func (f *search) costNow() (cost int, ok bool) {
	was := *f.label.taken
	area := was.box
	if was.from != nil {
		area = area.with(boxOf(*was.from))
	}
	f.fixed.take(f.field, f.bars, f.label, area)
	f.fixed.taken = false // it is for this place alone
	f.try(&f.fixed, was.option, was.base, was.from)
	ok, f.found = f.found, false
	return f.best.cost, ok
}

// look marks an area as one that mattered.
func (f *search) look(area box) {
	if !f.looked {
		f.seen, f.looked = area, true
	}
	f.seen = f.seen.with(area)
}

// tryFixed tries the label's fixed places.
func (f *search) tryFixed(base int) {
	l := f.label
	if len(l.fixed) == 0 {
		return
	}
	if !f.fixed.taken {
		area := l.fixed[0].box
		for i := range l.fixed {
			area = area.with(l.fixed[i].box)
		}
		f.fixed.take(f.field, f.bars, l, area)
		f.look(area)
	}
	for i := range l.fixed {
		f.try(&f.fixed, l.fixed[i], base, nil)
	}
}

// try weighs one place, with a leader from a spot where one is needed; the
// first of equals counts.
func (f *search) try(on *ground, o option, base int, from *spot) {
	if base+o.cost < f.bar && on.free(o.box, 0) {
		f.weigh(on, o, base, from)
	}
}

// weigh weighs a place that is free.
func (f *search) weigh(on *ground, o option, base int, from *spot) {
	l, cost := f.label, base+o.cost
	if cost += on.lie(o.box, f.bar-cost); cost >= f.bar {
		return
	}
	if l.stay != nil {
		if cost += l.stay(o); cost >= f.bar {
			return
		}
	}
	var end spot
	if from != nil {
		end = l.lead(o.box, *from)
		if cost += on.run(*from, end, f.bar-cost); cost >= f.bar {
			return
		}
	}
	f.found, f.bar = true, cost
	f.best = found{taken: taken{o, base, from}, form: l.form, cost: cost, end: end}
}

// around tries the places around the label's anchors, ring by ring, until
// the distance alone, with the leader it asks for, costs too much.
func (f *search) around(base int) {
	l := f.label
	for _, ring := range rings {
		cost := base + ring
		if ring >= l.near {
			cost += leaderCost
		}
		if cost >= f.bar {
			return
		}
		for i := range l.anchors {
			a := &l.anchors[i]
			if cost+a.cost >= f.bar {
				continue
			}
			var from *spot
			if ring >= l.near {
				from = &a.at
			}
			f.ring(f.groundAt(i, ring), a, ring, cost+a.cost, from)
		}
	}
}

// groundAt is the ground around an anchor for places up to a distance.
func (f *search) groundAt(i, ring int) *ground {
	a, g := &f.label.anchors[i], &f.near[i]
	if far := a.clear + ring; !g.taken || a.at.x-far-f.width < g.area.left || a.at.y-far-f.height < g.area.top {
		far = a.clear + 2*ring + 300
		area := around(a.at, far+f.widest, far+f.highest)
		g.take(f.field, f.bars, f.label, area)
		f.look(area)
	}
	return g
}

// ring tries the boxes around an anchor at one distance, which costs so much:
// on its right and left, above and below, each slid along that side until
// sliding costs too much.
func (f *search) ring(on *ground, a *anchor, ring, base int, from *spot) {
	w, h := f.width, f.height
	d := a.clear + ring
	slide := max(130, ring/4)
	put := func(side, left, top, cost int, h2 hang) {
		if b := (box{left, top, left + w, top + h}); base+cost < f.bar && on.free(b, side) {
			f.weigh(on, option{box: b, cost: cost, hang: h2}, base, from)
		}
	}
	for off := 0; off <= h/2+d && base+off/4 < f.bar; off += slide {
		for k, dy := range [2]int{off, -off} {
			put(k, a.at.x+d, a.at.y-h/2+dy, off/4, fromStart)
			put(2+k, a.at.x-d-w, a.at.y-h/2+dy, off/4+10, fromEnd)
			if off == 0 {
				break
			}
		}
	}
	for off := 0; off <= w/2+d && base+off/4 < f.bar; off += slide {
		for k, dx := range [2]int{off, -off} {
			h2 := centred
			if dx > w/6 {
				h2 = fromStart
			} else if dx < -w/6 {
				h2 = fromEnd
			}
			put(4+k, a.at.x-w/2+dx, a.at.y-d-h, off/4+25, h2)
			put(6+k, a.at.x-w/2+dx, a.at.y+d, off/4+35, h2)
			if off == 0 {
				break
			}
		}
	}
}
