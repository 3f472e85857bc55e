package drawing

import "dustbook/plan/shop"

// singleRow is a line to the right: a stretch with its gates, and what stands
// at its end. Without a stretch it is the end alone.
type singleRow struct {
	stretch    *shop.Stretch
	duct       *shop.Duct
	from       spot
	name, says block // over the line and under it
	gates      []*gateMark
	gateNames  []block
}

// singleBand is a stretch on an upright: its words, and its gates under them.
type singleBand struct {
	stretch   *shop.Stretch
	words     block
	at        box
	gates     []*gateMark
	gateNames []block
}

// gateOn is a gate on a line that runs against a direction.
func (s *single) gateOn(g *shop.Gate, along way) *gateMark {
	return &gateMark{gate: g, state: s.stateOf(g), along: along, half: singleHalf + frameOver, left: true, onWay: s.open[g.Stretch]}
}

// row lays out a line to the right, where there is room.
func (s *single) row(stretch *shop.Stretch, d *shop.Duct, x int, from free) (at int, under free) {
	r := &singleRow{stretch: stretch, duct: d}
	half := s.endHalf(d)
	over, low := free{openWire, half}, free{openWire, half}
	if stretch != nil {
		r.name, r.says = s.nameSays(stretch), s.figureSays(stretch)
		over.left = r.name.height() + singleRise
		if len(r.says.lines) > 0 {
			low.left = r.says.height() + singleRise + 50
		}
		for i := len(stretch.Gates) - 1; i >= 0; i-- {
			m := s.gateOn(stretch.Gates[i], way{-1, 0})
			b := gateSays(m, m.state, 1300)
			over.right = max(over.right, m.half+b.height()+20)
			low.right = max(low.right, m.half+10)
			if m.state == openGate {
				low.right = max(low.right, m.half+bladeOut+10)
			}
			r.gates, r.gateNames = append(r.gates, m), append(r.gateNames, b)
		}
	}
	r.from = spot{x, max(from.left+over.left, from.right+over.right)}
	s.rows = append(s.rows, r)
	return r.from.y, free{r.from.y + low.left + 20, r.from.y + low.right + singleGap}
}

// endHalf is half the height of what stands at the end of a duct.
func (s *single) endHalf(d *shop.Duct) int {
	half := treePipe
	for _, port := range d.Serves {
		b := writing(portName(port), true, machineText, 2200, 3)
		half = max(half, b.height()/2+75)
	}
	return half
}

// band lays out a stretch on an upright under a height, and returns the
// height under it.
func (s *single) band(stretch *shop.Stretch, x, top int) int {
	b := &singleBand{stretch: stretch, words: s.nameSays(stretch)}
	figures := s.figureSays(stretch)
	b.words.lines = append(b.words.lines, figures.lines...)
	y, left := top+50, x+singleText
	b.at = box{left, y, left + b.words.width(), y + b.words.height()}
	y = b.at.bottom
	for i := len(stretch.Gates) - 1; i >= 0; i-- {
		m := s.gateOn(stretch.Gates[i], way{0, -1})
		says := gateSays(m, m.state, 1300)
		half := max(says.height()/2, frameHalf+30)
		m.at = spot{x, y + 50 + half}
		y = m.at.y + half
		b.gates, b.gateNames = append(b.gates, m), append(b.gateNames, says)
	}
	s.bands = append(s.bands, b)
	return y + 75
}

// leak lays out a leak on an upright under a height.
func (s *single) leak(l *shop.Leak, u *upright, top int, open bool) int {
	m := &leakMark{leak: l}
	b := s.leakLabel(m).block
	half := b.height()/2 + 40
	at := top + half
	s.extend(u, at+half, open)
	m.tip, m.tail = spot{u.x + openWire/2, at}, spot{u.x + openWire/2 + leakLong, at}
	s.leaks = append(s.leaks, m)
	return at + half
}

// columns finds where the gates of all rows begin, right of all words beside
// the line, and where machines stand.
func (s *single) columns() {
	wide := func(right int) { s.gatesAt = max(s.gatesAt, right+80) }
	for _, b := range s.bands {
		wide(b.at.right)
		for i := range b.gates {
			wide(b.at.left - singleText + b.gates[i].half + 60 + b.gateNames[i].width())
		}
	}
	for _, m := range s.leaks {
		b := s.leakLabel(m).block
		wide(m.tail.x + 50 + b.width())
	}
	for _, r := range s.rows {
		if r.stretch != nil {
			wide(r.from.x + singleText + max(r.name.width(), r.says.width()))
		}
	}
	for _, r := range s.rows {
		s.endsAt = max(s.endsAt, s.placeGates(r)+80, r.from.x+singleText)
	}
}

// placeGates puts the gates of a row and returns where they end.
func (s *single) placeGates(r *singleRow) int {
	x := s.gatesAt
	for i, m := range r.gates {
		wide := max(r.gateNames[i].width(), 2*frameHalf+120)
		m.at = spot{x + frameHalf + 60, r.from.y}
		x += wide + 120
	}
	return x
}

// draw draws all that was laid out: the lines, thin ones first, then what
// stands on them.
func (s *single) draw() {
	ends := map[*singleRow]int{}
	for _, r := range s.rows {
		ends[r] = s.endsAt
		if len(r.duct.Serves) == 0 {
			ends[r] = s.placeGates(r)
		}
		open := s.open[r.duct.Stretches[0]]
		if r.stretch != nil {
			open = s.open[r.stretch]
		}
		s.wires = append(s.wires, wire{path{r.from, {ends[r], r.from.y}}, open})
	}
	for _, open := range [2]bool{false, true} {
		var runs []path
		for _, w := range s.wires {
			if run := straight(tidy(w.spots)); w.open == open && len(run) > 1 {
				runs = append(runs, run)
			}
		}
		s.lines(wireLook(open), "", runs...)
	}
	for _, n := range s.nodes {
		radius := shutNode
		if n.open {
			radius = openNode
		}
		s.circle(look{fill: dark}, "", n.at, radius)
	}
	s.drawHead()
	s.drawSingleGates()
	s.drawSingleArrows()
	for _, b := range s.bands {
		s.drawBand(b)
	}
	t := &tree{sheet: s.sheet}
	for _, r := range s.rows {
		s.drawSingleRow(r)
		t.rowEnd(r.duct, spot{ends[r], r.from.y})
	}
	for _, sign := range t.signs {
		sign()
	}
	for _, m := range s.leaks {
		s.drawLeak(m)
		b := s.leakLabel(m).block
		s.write(&b, box{m.tail.x + 50, m.tail.y - b.height()/2, m.tail.x + 50 + b.width(), m.tail.y + b.height()/2}, fromStart)
	}
	s.foot(s.singleKey(), s.singleNotes())
}

// wireLook is how the line is drawn.
func wireLook(open bool) look {
	if open {
		return look{line: air, weight: openWire}
	}
	return look{line: soft, weight: shutWire}
}

// drawHead draws the collector with its name and what its fan does.
func (s *single) drawHead() {
	s.body(s.collector, spot{}, treeRoot)
	b := s.headSays()
	s.write(&b, box{treeRoot + 100, -b.height() / 2, treeRoot + 100 + b.width(), b.height() / 2}, fromStart)
}

// drawSingleGates draws all gates, frames first.
func (s *single) drawSingleGates() {
	var list []*gateMark
	for _, b := range s.bands {
		list = append(list, b.gates...)
	}
	for _, r := range s.rows {
		list = append(list, r.gates...)
	}
	for _, m := range list {
		s.gateFrame(m)
	}
	for _, m := range list {
		s.gateBlade(m)
	}
}

// drawSingleArrows draws the arrows of all stretches on the open way.
func (s *single) drawSingleArrows() {
	for _, b := range s.bands {
		if s.open[b.stretch] {
			s.arrow(spot{b.at.left - singleText, b.at.centre().y - 60}, way{0, -1}, 60, s.tooSlow(b.stretch))
		}
	}
	for _, r := range s.rows {
		if r.stretch != nil && s.open[r.stretch] {
			s.arrow(spot{r.from.x + singleText + 200, r.from.y}, way{-1, 0}, 60, s.tooSlow(r.stretch))
		}
	}
}

// drawBand writes the words of a stretch on an upright and of its gates.
func (s *single) drawBand(b *singleBand) {
	x := b.at.left - singleText
	s.write(&b.words, b.at, fromStart)
	for i, m := range b.gates {
		says := b.gateNames[i]
		left := x + m.half + 60
		s.write(&says, box{left, m.at.y - says.height()/2, left + says.width(), m.at.y + says.height()/2}, fromStart)
	}
}

// drawSingleRow writes the words of a row and of its gates.
func (s *single) drawSingleRow(r *singleRow) {
	if r.stretch == nil {
		return
	}
	left, y := r.from.x+singleText, r.from.y
	s.write(&r.name, box{left, y - singleRise - r.name.height(), left + r.name.width(), y - singleRise}, fromStart)
	if len(r.says.lines) > 0 {
		s.write(&r.says, box{left, y + singleRise, left + r.says.width(), y + singleRise + r.says.height()}, fromStart)
	}
	for i, m := range r.gates {
		b := r.gateNames[i]
		left, low := m.at.x-frameHalf-60, y-m.half-15
		s.write(&b, box{left, low - b.height(), left + b.width(), low}, fromStart)
	}
}
