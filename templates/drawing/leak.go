package drawing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// leakMark is a leak as drawn: an arrow from outside into the duct's side.
type leakMark struct {
	leak  *shop.Leak
	at    spot // on the duct's axis
	tip   spot // at the duct's edge
	tail  spot
	along way
}

const leakLong = 150 // tenths

// placeLeaks puts every leak of a routed duct.
func (s *sheet) placeLeaks() {
	for _, p := range s.pipes {
		for _, l := range p.duct.Leaks {
			at, w := p.path.at(p.planAt(l.Where))
			m := &leakMark{leak: l, at: at, along: w}
			ends := func(left int) (tip, tail spot) {
				return at.step(w, 0, left*(p.width/2+edge)), at.step(w, 0, left*(p.width/2+edge+leakLong))
			}
			m.tip, m.tail = ends(s.freeSide(p.duct, func(left int) box { return boxOf(ends(left)).grown(30) }))
			s.leaks = append(s.leaks, m)
			s.solids = append(s.solids, boxOf(m.tip, m.tail).grown(30))
		}
	}
}

// freeSide is the side of a duct, 1 for left and -1 for right, on which what
// sticks out of it lies on the least.
func (s *sheet) freeSide(d *shop.Duct, reach func(left int) box) int {
	cost := func(left int) int {
		c := s.lie(reach(left), &label{mine: []*shop.Duct{d}}, never)
		if !s.free(reach(left), nil) {
			c += 5000
		}
		return c
	}
	if cost(-1) < cost(1) {
		return -1
	}
	return 1
}

// drawLeak draws the arrow.
func (p *pen) drawLeak(m *leakMark) {
	w := towards(m.tail, m.tip)
	head := m.tip.step(w, -60, 0)
	p.line(look{line: dark, weight: 13}, "", m.tail, head)
	p.area(look{fill: paper, line: dark, weight: 11}, "", m.tip, head.step(w, 0, 32), head.step(w, 0, -32))
}

// leakLabel says how large the hole is and, in a use, what it draws.
func (s *sheet) leakLabel(m *leakMark) *label {
	says := wording.Text("drawing.leak", unit.Size.Print(s.sys, m.leak.Hole))
	if r := s.resultOf(m.leak.On.Collector); r != nil && r.OnCurve {
		for _, v := range r.Leaks {
			if v.Leak == m.leak {
				says += " · " + unit.Air.Print(s.sys, v.Flow)
			}
		}
	}
	return &label{block: writing(says, false, smallText, 2400, 2), anchors: []anchor{{at: m.tail, clear: 35}}, near: 150, pad: 35}
}
