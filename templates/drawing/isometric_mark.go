package drawing

import (
	"math"

	"dustbook/plan/shop"
)

// canMark is a collector as the eye sees it: an upright can on the floor.
type canMark struct {
	foot, top spot // the middles of its two ends
	wide      int  // half its width in the drawing
	over      bool // its ducts come from behind it
}

// Sizes of a can.
const (
	canRadius = 0.4  // metres
	canOver   = 0.3  // metres it stands over a duct that comes in at its side
	leastCan  = 0.8  // metres it is high at least
	narrowCan = 170  // tenths, half its width in the drawing at least
	wideCan   = 380  // and at most
	flat      = 577  // an end's height to its width, in thousandths: 1 to √3
	floorCost = 200  // of writing on a floor's edge
	standCost = 4000 // of hiding the foot of an end
)

// placeCan puts the collector's can where it stands, else where the first duct
// ends that empties into it, as high as the highest of them.
func (s *isometric) placeCan() {
	var at *shop.Spot
	high, level, behind := leastCan, false, 0
	for _, p := range s.pipes {
		if p.duct.Into != nil {
			continue
		}
		n := len(p.duct.Route)
		before, end := p.duct.Route[n-2], p.duct.Route[n-1]
		if at == nil {
			at = &shop.Spot{X: end.X, Y: end.Y}
		}
		if end.Z >= high {
			high, level = end.Z, math.Hypot(end.X-before.X, end.Y-before.Y) > leastRise
		}
		if s.eye.near(shop.Spot{X: before.X, Y: before.Y}) < s.eye.near(shop.Spot{X: end.X, Y: end.Y}) {
			behind++
		} else {
			behind--
		}
	}
	if at == nil {
		return
	}
	if c := s.collector; c.Place.Known() {
		at.X, at.Y = c.Place.V.X, c.Place.V.Y
	}
	if level {
		high += canOver
	}
	m := &canMark{foot: s.eye.spot(*at), top: s.eye.spot(shop.Spot{X: at.X, Y: at.Y, Z: high}), over: level && behind > 0}
	m.wide = min(max(s.scale.long(canRadius*1.22), narrowCan), wideCan)
	s.can = m
	if level && !m.over {
		s.stopAtCan(m)
	}
	s.collectors = []*collectorMark{{collector: s.collector, at: m.top, radius: m.wide}}
	s.solids = append(s.solids, m.extent())
}

// stopAtCan lets the ducts that come in from the near side end at the can's
// skin, which they would otherwise hide.
func (s *isometric) stopAtCan(m *canMark) {
	skin := m.wide * 816 / 1000 // half the width to the can's radius along an axis: √3 to √2
	for _, p := range s.pipes {
		last := &p.pieces[len(p.pieces)-1]
		if long := p.path.long(); p.duct.Into == nil && m.extent().holds(p.path.end()) && last.from < long-2*skin {
			p.path = p.path.part(0, long-skin)
			last.to = p.path.long()
		}
	}
}

// extent is the box around a can.
func (m *canMark) extent() box {
	deep := m.wide * flat / 1000
	return box{m.top.x - m.wide, m.top.y - deep, m.top.x + m.wide, m.foot.y + deep}
}

// drawCan draws the can, with a thin line from a duct that ends short of it.
func (s *isometric) drawCan() {
	m := s.can
	for _, p := range s.pipes {
		if end := p.path.end(); p.duct.Into == nil && !m.extent().holds(end) {
			s.line(look{line: dark, weight: 13}, "", end, m.extent().nearest(end))
		}
	}
	s.canShape(m, s.collector.Name)
}

// canShape draws a can on a drawing or in a key.
func (p *pen) canShape(m *canMark, title string) {
	deep := m.wide * flat / 1000
	l := look{fill: tint, line: dark, weight: 13}
	p.reach(m.extent().grown(l.weight / 2))
	a, b := m.top.moved(-m.wide, 0), m.foot.moved(-m.wide, 0)
	curve := " A" + figure(m.wide) + " " + figure(deep) + " 0 0 "
	to := func(s spot) string { return figure(s.x) + " " + figure(s.y) }
	d := trail([]spot{a, b}, false) + curve + "0 " + to(m.foot.moved(m.wide, 0)) + " L" + to(m.top.moved(m.wide, 0)) + curve + "0 " + to(a) + "Z"
	p.curved(l, title, d)
	p.curved(look{line: dark, weight: 9}, "", trail([]spot{a}, false)+curve+"0 "+to(m.top.moved(m.wide, 0)))
}

// endMark is the hood end of a duct with what it serves.
type endMark struct {
	pipe  *pipe
	at    spot
	foot  spot // under it on the floor
	label *label
}

// placeEnds puts a framed label at every end that serves a machine.
func (s *isometric) placeEnds() {
	var labels []*label
	for _, p := range s.pipes {
		start := p.duct.Route[0]
		e := &endMark{pipe: p, at: p.path[0], foot: s.eye.spot(shop.Spot{X: start.X, Y: start.Y})}
		s.ends = append(s.ends, e)
		if len(p.duct.Serves) == 0 {
			continue
		}
		l := &label{pad: 45, near: 130, dot: true, frame: look{fill: tint, line: dark, weight: 13}}
		for i, most := range [3]int{1500, 1000, 2400} {
			if b := s.endSays(p.duct, most); b.full == "" && wholeNames(p.duct, most) || i == 2 && len(l.forms) == 0 {
				l.forms = append(l.forms, form{b, b, i * 40, most})
			}
		}
		l.block = l.forms[0].block
		l.anchors = []anchor{{at: e.at, clear: p.width/2 + 30}}
		e.label = l
		labels = append(labels, l)
	}
	s.settle(labels, 2)
}

// endSays names what an end serves, each leading to its use.
func (s *isometric) endSays(d *shop.Duct, most int) block {
	var b block
	for i, port := range d.Serves {
		one := writing(portName(port), true, plainText, most, 3)
		if i == 0 {
			b = block{size: one.size, ink: one.ink}
		} else {
			b.under(wording.Text("drawing.or"), false)
		}
		if one.full != "" {
			b.full += one.full + " "
		}
		for _, line := range one.lines {
			for k := range line {
				line[k].path = s.pathOf(port.Machine)
			}
			b.lines = append(b.lines, line)
		}
	}
	return b
}

// wholeNames reports whether no name of what a duct serves is cut in a word.
func wholeNames(d *shop.Duct, most int) bool {
	for _, port := range d.Serves {
		if !whole(portName(port), true, plainText, most) {
			return false
		}
	}
	return true
}
