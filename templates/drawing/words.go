package drawing

// placeFixed finds places for the labels that stand on every plan of the shop,
// before any others, so that they stand at the same place on all of them.
func (s *sheet) placeFixed() {
	for _, w := range s.shop.Walls {
		if w.Rating.Known() {
			a, c := s.band(w)
			s.words = append(s.words, s.ratingLabel(w.Rating.V, a, c))
		}
	}
	for _, m := range s.gates {
		m.says = s.gateLabel(m)
		s.words = append(s.words, m.says)
	}
	for _, m := range s.collectors {
		m.says = s.collectorLabel(m)
		s.words = append(s.words, m.says)
	}
	for _, d := range s.doors {
		s.words = append(s.words, exitLabel(d))
	}
	for _, m := range s.fixtures {
		s.words = append(s.words, m.label())
	}
	for _, m := range s.taps {
		s.words = append(s.words, m.label())
	}
	for _, r := range s.shop.Rooms {
		if o := s.outline(r); len(o) > 2 {
			s.words = append(s.words, s.roomLabel(s.roomSays(r), o))
		}
	}
	s.settle(s.words, 2)
}

// placeOwn finds places for what this plan says beside them, unless it did.
func (s *sheet) placeOwn() {
	if s.complete {
		return
	}
	s.complete = true
	var own []*label
	for _, m := range s.leaks {
		own = append(own, s.leakLabel(m))
	}
	if s.use == nil {
		own = append(own, s.ductLabels()...)
	} else {
		own = append(own, s.flowTags()...)
	}
	s.settle(own, 2)
	s.words = append(s.words, own...)
}

// ratingLabel stands in a break of its wall.
func (s *sheet) ratingLabel(says string, a, c spot) *label {
	l := &label{block: writing(says, true, plainText, 1200, 3), pad: 45, frame: look{fill: paper, line: dark, weight: 11}, near: 1, onWall: true}
	l.anchors = []anchor{{at: spot{(a.x + c.x) / 2, (a.y + c.y) / 2}, clear: wallThick/2 + 30, cost: 2500}}
	w, long := towards(a, c), span(a, c)
	half := spot{l.width() / 2, l.height() / 2}
	if long < max(l.width(), l.height())+100 {
		return l // no room for a break
	}
	for i, share := range [9]int{50, 35, 65, 42, 58, 25, 75, 15, 85} {
		at := a.step(w, long*share/100, 0)
		l.fixed = append(l.fixed, option{box: box{at.x - half.x, at.y - half.y, at.x - half.x + l.width(), at.y - half.y + l.height()}, cost: i * 20, hang: centred})
	}
	return l
}

// exitLabel is the word at a door, outside it where it can be.
func exitLabel(d door) *label {
	middle := spot{(d.hinge.x + d.jamb.x) / 2, (d.hinge.y + d.jamb.y) / 2}
	wide := span(d.hinge, d.jamb)
	at := func(out int) spot { return middle.step(d.outward, out, 0) }
	return &label{block: writing(wording.Text("drawing.exit"), true, plainText, 2000, 1), near: 500, anchors: []anchor{
		{at: at(wide), clear: 50}, {at: at(wallThick / 2), clear: 50, cost: 40}, {at: at(-wallThick / 2), clear: 50, cost: 200},
	}}
}

// roomLabel stands inside its room, near a corner; a room too small for it
// is named from outside.
func (s *sheet) roomLabel(b block, o path) *label {
	l := &label{block: b, pad: 20, near: 1, only: true, dot: true}
	all := boxOf(o...)
	middle := spot{}
	for _, c := range o {
		middle = spot{middle.x + c.x/len(o), middle.y + c.y/len(o)}
	}
	l.anchors = []anchor{{at: middle, clear: 0}}
	in := wallThick/2 + 60
	w, h := l.width(), l.height()
	stepX, stepY := max(100, (all.width()-w)/24), max(100, (all.height()-h)/24)
	for y := all.top + in; y+h <= all.bottom-in; y += stepY {
		for x := all.left + in; x+w <= all.right-in; x += stepX {
			if place := (box{x, y, x + w, y + h}); holdsBox(o, place.grown(in-20)) {
				l.fixed = append(l.fixed, option{box: place, cost: fromCorner(all, place), hang: fromStart})
			}
		}
	}
	return l
}

// fromCorner is what a place costs a room's name: least near the corner at
// the top left, then near the others.
func fromCorner(all, place box) int {
	corners := [4][2]spot{
		{{all.left, all.top}, {place.left, place.top}}, {{all.right, all.top}, {place.right, place.top}},
		{{all.left, all.bottom}, {place.left, place.bottom}}, {{all.right, all.bottom}, {place.right, place.bottom}},
	}
	best := 0
	for i, c := range corners {
		if cost := span(c[0], c[1])/3 + 40*i; i == 0 || cost < best {
			best = cost
		}
	}
	return best
}

// holdsBox reports whether an outline holds a whole box.
func holdsBox(o path, b box) bool {
	if !inside(o, b.centre()) {
		return false
	}
	for i, a := range o {
		if b.crossed(a, o[(i+1)%len(o)]) || b.holds(a) {
			return false
		}
	}
	return true
}
