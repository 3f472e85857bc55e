package drawing

// search is the look for a label's best place.
type search struct {
	field         *field
	near          field // the part of it that matters where places are tried
	label         *label
	width, height int   // of the label, in the form looked at
	best          label // the label as it stands at the best place found
	found         bool
	bar           int // a place that costs as much or more is not taken
}

// place finds the best place for a label among the free ones and puts it
// there, in the form that suits it best.
func (f *field) place(l *label) {
	find := &search{field: f, label: l, bar: never}
	find.setBar()
	for i := range max(1, len(l.forms)) {
		base := 0
		if len(l.forms) > 0 {
			l.form, l.block, base = i, l.forms[i].block, l.forms[i].cost
		}
		find.width, find.height = l.width(), l.height()
		for k := range l.fixed {
			find.try(f, &l.fixed[k], base, nil)
		}
		if !l.only || !find.found {
			find.around(base)
		}
	}
	*l = find.best
}

// setBar sets the bar for a label that stands somewhere already, by what its
// place costs now: most others are then passed over at once. The bar lies one
// higher, so that of equals the first still counts. A label that takes what
// costs more as long as it is one of the fixed places gets no bar.
func (f *search) setBar() {
	was := f.label.taken
	if was == nil || f.label.only {
		return
	}
	if f.try(f.field, &was.option, was.base, was.from); f.found {
		f.found, f.bar = false, f.best.cost+1
	}
}

// try weighs one place, with a leader from a spot where one is needed; the
// first of equals counts.
func (f *search) try(on *field, o *option, base int, from *spot) {
	l, cost := f.label, base+o.cost
	if cost >= f.bar || !on.free(o.box, l) {
		return
	}
	if cost += on.lie(o.box, l, f.bar-cost); cost >= f.bar {
		return
	}
	if l.stay != nil {
		if cost += l.stay(*o); cost >= f.bar {
			return
		}
	}
	var lead []spot
	if from != nil {
		lead = l.lead(o.box, *from)
		if cost += on.run(lead[0], lead[1], l, f.bar-cost); cost >= f.bar {
			return
		}
	}
	f.found, f.bar, f.best = true, cost, *l
	f.best.box, f.best.text, f.best.hang, f.best.cost, f.best.leader = o.box, o.text, o.hang, cost, lead
	f.best.taken = &taken{*o, base, from}
	if o.text == (box{}) {
		f.best.text = o.box.grown(-l.pad)
	}
}

// around tries the places around the label's anchors, ring by ring, until
// the distance alone, with the leader it asks for, costs too much.
func (f *search) around(base int) {
	l, reach := f.label, -1
	for _, ring := range rings {
		cost := base + ring
		if ring >= l.near {
			cost += leaderCost
		}
		if cost >= f.bar {
			return
		}
		if ring > reach { // seldom, for it goes through the whole field
			reach = 2*ring + 300
			f.near.take(f.field, f.area(reach))
		}
		for i := range l.anchors {
			a := &l.anchors[i]
			var from *spot
			if ring >= l.near {
				from = &a.at
			}
			f.ring(a, ring, cost+a.cost, from)
		}
	}
}

// area is what places up to a distance from the label's anchors, and leaders
// to them, can touch.
func (f *search) area(reach int) box {
	var area box
	for i, a := range f.label.anchors {
		far := a.clear + reach
		one := around(a.at, far+f.width, far+f.height)
		if i == 0 {
			area = one
		}
		area = area.with(one)
	}
	return area
}

// ring tries the boxes around an anchor at one distance, which costs so much:
// on its right and left, above and below, each slid along that side until
// sliding costs too much.
func (f *search) ring(a *anchor, ring, base int, from *spot) {
	w, h := f.width, f.height
	d := a.clear + ring
	slide := max(120, ring/6)
	put := func(left, top, cost int, h2 hang) {
		f.try(&f.near, &option{box: box{left, top, left + w, top + h}, cost: cost, hang: h2}, base, from)
	}
	for off := 0; off <= h/2+d && base+off/4 < f.bar; off += slide {
		for _, dy := range [2]int{off, -off} {
			put(a.at.x+d, a.at.y-h/2+dy, off/4, fromStart)
			put(a.at.x-d-w, a.at.y-h/2+dy, off/4+10, fromEnd)
			if off == 0 {
				break
			}
		}
	}
	for off := 0; off <= w/2+d && base+off/4 < f.bar; off += slide {
		for _, dx := range [2]int{off, -off} {
			h2 := centred
			if dx > w/6 {
				h2 = fromStart
			} else if dx < -w/6 {
				h2 = fromEnd
			}
			put(a.at.x-w/2+dx, a.at.y-d-h, off/4+25, h2)
			put(a.at.x-w/2+dx, a.at.y+d, off/4+35, h2)
			if off == 0 {
				break
			}
		}
	}
}
