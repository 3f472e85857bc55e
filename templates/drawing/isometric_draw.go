package drawing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// trunkCost is what writing on a duct costs in an isometric, where a leader
// does less harm than a broken duct.
const trunkCost = 2 * pipeCost

// addStripes makes ducts and the edges of floors cost labels that lie on them.
func (s *isometric) addStripes() {
	for _, o := range s.floors {
		for i := range o {
			s.strips = append(s.strips, strip{a: o[i], c: o[(i+1)%len(o)], half: 5, cost: floorCost})
		}
	}
	for _, p := range s.pipes {
		for i := 1; i < len(p.path); i++ {
			s.strips = append(s.strips, strip{a: p.path[i-1], c: p.path[i], half: p.width/2 + edge, cost: trunkCost, of: p.duct})
		}
	}
}

// placeWords finds places for the collector's name, taps, leaks and
// stretches.
func (s *isometric) placeWords() {
	var labels []*label
	for _, m := range s.collectors {
		l := s.collectorLabel(m)
		foot := s.can.foot
		l.anchors = append(l.anchors, anchor{at: foot, clear: s.can.wide + 40, cost: 20})
		labels = append(labels, l)
	}
	for _, m := range s.taps {
		labels = append(labels, m.label())
	}
	for _, m := range s.leaks {
		labels = append(labels, s.leakLabel(m))
	}
	for _, p := range s.pipes {
		for i := range p.pieces {
			labels = append(labels, s.stretchLabel(p, &p.pieces[i]))
		}
	}
	s.settle(labels, 2)
	s.words = labels
}

// bareCost is what it costs to leave a stretch's length out: more than any
// place near by, less than a leader across the sheet or a broken duct.
const bareCost = 1200

// stretchLabel is a stretch's number, size and length, on one line or two;
// where there is no room for the length, without it.
func (s *isometric) stretchLabel(p *pipe, piece *stretchPiece) *label {
	number := run{s.numberOf(piece.stretch) + ": ", true, ""}
	set := func(lines ...[]run) block { return block{size: smallText, ink: dark, lines: lines} }
	size, long := run{s.sizeOf(p.duct), false, ""}, run{s.longOf(piece.stretch), false, ""}
	one := set([]run{number, {s.lengthOf(piece.stretch), false, ""}})
	two := set([]run{number, size}, []run{long})
	bare := set([]run{number, size})
	// The bare form is tried first: what it costs bounds the search for the others.
	return &label{near: 120, dot: true, pad: 25, block: bare, bare: 1,
		forms:   []form{{block: bare, shown: bare, cost: bareCost}, {block: one, shown: one}, {block: two, shown: two, cost: 60}},
		anchors: s.alongPiece(p, piece.from, piece.to, p.width/2+20)}
}

// draw draws the whole isometric, from the floor up.
func (s *isometric) draw(turned bool) {
	for _, o := range s.floors {
		s.area(look{line: rule, weight: 9}, "", o...)
	}
	for _, e := range s.ends {
		if e.label != nil && e.foot != e.at {
			s.line(look{line: soft, weight: 7, dash: "3 3"}, "", e.at, e.foot)
		}
	}
	if s.can != nil && !s.can.over {
		s.drawCan()
	}
	s.drawTrunks()
	if s.can != nil && s.can.over {
		s.drawCan()
	}
	s.drawOnDucts()
	s.drawWays()
	s.drawLabels(&s.pen, s.labels)
	if len(s.pipes) > 0 {
		s.drawScaleBar(spot{s.extent.left + 120, s.extent.bottom + 260})
	}
	s.drawTree([]*shop.Collector{s.collector})
	s.foot(s.isoSigns(), s.isoNotes(turned))
}

// trunkLook is how a duct's edge and inside are drawn: heavily where it takes
// in others.
func trunkLook(p *pipe, inside bool) look {
	switch {
	case inside:
		return look{line: paper, weight: p.width, round: true}
	case len(p.duct.Joined) > 0:
		return look{line: dark, weight: p.width + 2*openEdge, round: true}
	}
	return look{line: dark, weight: p.width + 2*lightEdge, round: true}
}

// lightEdge is the weight, in tenths, of the edge of a duct that takes in no
// other.
const lightEdge = 9

// drawTrunks draws all ducts, edges first, so that joins run together, then
// what passes before others, the farthest first.
func (s *isometric) drawTrunks() {
	for _, inside := range [2]bool{false, true} {
		for _, p := range s.pipes {
			s.drawTrunk(p, inside)
		}
	}
	for _, one := range s.eye.passes(s.pipes) {
		p, long := one.pipe, one.pipe.path.long()
		bit := p.path.part(max(one.from, 0), min(one.to, long))
		if len(bit) < 2 {
			continue
		}
		s.line(look{line: paper, weight: p.width + 2*openEdge + 60, round: true}, "", bit...)
		s.line(trunkLook(p, false), "", bit...)
		s.line(trunkLook(p, true), "", p.path.part(max(one.from-10, 0), min(one.to+10, long))...)
	}
}

// drawTrunk draws the edges of one duct, closed at its upstream end, or its
// inside.
func (s *isometric) drawTrunk(p *pipe, inside bool) {
	if len(p.path) < 2 {
		return
	}
	l, title := trunkLook(p, inside), ""
	body := s.cornerBody(p)
	if inside {
		title = p.duct.Name + ", " + s.sizeOf(p.duct)
	} else {
		body += (l.weight - p.width) / 2
	}
	run := append(path{}, p.path...)
	run[0] = run[0].step(p.path.first(), -body, 0)
	if end := p.path.end(); !inside && p.duct.Into == nil {
		run[len(run)-1] = end.step(p.path.last(), (l.weight-p.width)/2, 0) // its end shows at a can
	}
	s.line(l, title, run...)
}

// drawWays puts an arrow in every stretch that is long enough, in the
// direction of the air.
func (s *isometric) drawWays() {
	const least = 500 // tenths
	for _, p := range s.pipes {
		for _, piece := range p.pieces {
			if long := piece.to - piece.from; long >= least {
				s.drawArrow(p, piece.from+long*2/5, false)
			}
		}
	}
}

// isoSigns are the entries of the key that this drawing needs.
func (s *isometric) isoSigns() []sign {
	var list []sign
	add := func(when bool, name string) {
		if when {
			list = append(list, signOf(name))
		}
	}
	trunk, branch := false, false
	for _, p := range s.pipes {
		trunk, branch = trunk || len(p.duct.Joined) > 0, branch || len(p.duct.Joined) == 0
	}
	gates, leaks, serves := false, false, false
	for _, d := range ductsOf(s.shop, s.collector) {
		gates, leaks = gates || len(d.Gates) > 0, leaks || len(d.Leaks) > 0
		serves = serves || len(d.Serves) > 0 && len(d.Route) > 1
	}
	add(trunk, "trunk")
	add(branch, "branch")
	add(gates, "gate")
	add(serves, "end")
	add(s.can != nil, "can")
	add(len(s.floors) > 0, "floor")
	add(len(s.taps) > 0, "tap")
	add(leaks, "leak")
	return list
}

// isoNotes are what else has to be said.
func (s *isometric) isoNotes(turned bool) []string {
	if len(s.numbers) == 0 {
		return []string{wording.Text("drawing.iso.none", drawable(s.collector.Name))}
	}
	list := []string{wording.Text("drawing.iso.numbers")}
	if bare := s.bare(); bare > 0 {
		list[0] = wording.Count("drawing.iso.bare", bare)
	}
	if len(s.pipes) > 0 {
		list = append(list, wording.Text("drawing.iso.eye", wording.Text("drawing.iso.corner."+s.eye.from(turned))))
	}
	if len(s.pipes) > 0 && s.wider > 1 {
		list = append(list, wording.Text("drawing.wider", unit.Short(s.wider)))
	}
	return list
}
