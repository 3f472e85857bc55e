package drawing

import "dustbook/plan/shop"

// fixtureMark is what hangs on a wall or a post for an emergency: an
// extinguisher or a stop.
type fixtureMark struct {
	at   spot
	stop *shop.StopButton // nil at an extinguisher
	says string
}

const (
	bottleHalf = 52 // tenths: half an extinguisher's width
	bottleHigh = 98 // half its height
	buttonOut  = 80 // from a stop's middle to its corners
)

// placeFixtures puts every extinguisher and stop that has a place.
func (s *sheet) placeFixtures() {
	for _, e := range s.shop.Extinguishers {
		if !e.Place.Known() {
			continue
		}
		s.fixtures = append(s.fixtures, &fixtureMark{at: s.scale.at(e.Place.V), says: extinguisherSays(e)})
	}
	for _, b := range s.shop.Stops {
		if b.Place.Known() {
			s.fixtures = append(s.fixtures, &fixtureMark{at: s.scale.at(b.Place.V), stop: b, says: b.Name})
		}
	}
	for i, m := range s.fixtures {
		m.at = s.besideOthers(m, s.fixtures[:i])
		s.solids = append(s.solids, m.extent())
	}
}

// extinguisherSays is the word with the rating.
func extinguisherSays(e *shop.Extinguisher) string {
	if e.Rating.Known() {
		return wording.Text("drawing.extinguisher") + " " + e.Rating.V
	}
	return wording.Text("drawing.extinguisher")
}

// fixturesNotShown are the stops and extinguishers without a place and the
// taps on ducts without a route.
func (s *sheet) fixturesNotShown() []string {
	var list []string
	for _, b := range s.shop.Stops {
		if !b.Place.Known() {
			list = append(list, b.Name)
		}
	}
	for _, e := range s.shop.Extinguishers {
		if !e.Place.Known() {
			list = append(list, extinguisherSays(e))
		}
	}
	for _, t := range s.shop.Taps {
		if s.pipeOf(t.On) == nil {
			list = append(list, t.Name)
		}
	}
	return list
}

// besideOthers moves a mark along until it lies on no earlier one: two that
// hang together stand side by side.
func (s *sheet) besideOthers(m *fixtureMark, others []*fixtureMark) spot {
	try := *m
	for step := 0; ; step += 20 {
		for _, w := range sides {
			try.at = m.at.step(w, step, 0)
			free := true
			for _, o := range others {
				free = free && !try.extent().grown(10).meets(o.extent())
			}
			if free {
				return try.at
			}
		}
	}
}

// extent is the box around the mark.
func (m *fixtureMark) extent() box {
	if m.stop != nil {
		return around(m.at, buttonOut, buttonOut)
	}
	return around(m.at, bottleHalf, bottleHigh)
}

// drawFixture draws a stop as an eight-sided button with a heavy middle, an
// extinguisher as a bottle with its neck.
func (p *pen) drawFixture(m *fixtureMark) {
	if m.stop == nil {
		p.area(look{fill: dark, line: paper, weight: 10}, m.says,
			m.at.moved(-bottleHalf, bottleHigh), m.at.moved(-bottleHalf, -20), m.at.moved(-18, -55), m.at.moved(-18, -bottleHigh),
			m.at.moved(18, -bottleHigh), m.at.moved(18, -55), m.at.moved(bottleHalf, -20), m.at.moved(bottleHalf, bottleHigh))
		p.line(look{line: paper, weight: 16}, "", m.at.moved(-bottleHalf, 25), m.at.moved(bottleHalf, 25))
		return
	}
	out, in := buttonOut, buttonOut*41/100
	p.area(look{fill: paper, line: dark, weight: 18}, m.says,
		m.at.moved(-in, -out), m.at.moved(in, -out), m.at.moved(out, -in), m.at.moved(out, in),
		m.at.moved(in, out), m.at.moved(-in, out), m.at.moved(-out, in), m.at.moved(-out, -in))
	p.circle(look{fill: stop}, "", m.at, 42)
}

// label says what it is.
func (m *fixtureMark) label() *label {
	e := m.extent()
	l := &label{near: 170, pad: 20, anchors: []anchor{{at: m.at, clear: max(e.width(), e.height())/2 + 25}}}
	for i, most := range [3]int{1300, 800, 2600} {
		if b := writing(m.says, m.stop != nil, smallText, most, 3); whole(m.says, m.stop != nil, smallText, most) && b.full == "" || i == 2 && len(l.forms) == 0 {
			l.forms = append(l.forms, form{b, b, i * 50, most})
		}
	}
	l.block = l.forms[0].block
	return l
}

// tapMark is a tap for a gauge: a stub out of the duct's side.
type tapMark struct {
	tap       *shop.Tap
	foot, end spot // at the duct's edge, and at the end of the stub
}

const tapLong = 90 // tenths

// placeTaps puts every tap of a routed duct, to the side that is free.
func (s *sheet) placeTaps() {
	for _, t := range s.shop.Taps {
		p := s.pipeOf(t.On)
		if p == nil {
			continue
		}
		at, w := p.path.at(p.planAt(t.Where))
		m := &tapMark{tap: t}
		ends := func(left int) (foot, end spot) {
			return at.step(w, 0, left*p.width/2), at.step(w, 0, left*(p.width/2+tapLong))
		}
		m.foot, m.end = ends(s.freeSide(p.duct, func(left int) box { return boxOf(ends(left)).grown(40) }))
		s.taps = append(s.taps, m)
		s.solids = append(s.solids, boxOf(m.foot, m.end).grown(40))
	}
}

// drawTap draws the stub with a ring at its end.
func (p *pen) drawTap(m *tapMark) {
	p.line(look{line: dark, weight: 20}, "", m.foot, m.end)
	title := ""
	if m.tap != nil {
		title = m.tap.Name
	}
	p.circle(look{fill: paper, line: dark, weight: 13}, title, m.end, 32)
}

// label is the tap's name.
func (m *tapMark) label() *label {
	return &label{block: writing(m.tap.Name, false, smallText, 1600, 3), anchors: []anchor{{at: m.end, clear: 50}}, near: 170, pad: 20}
}
