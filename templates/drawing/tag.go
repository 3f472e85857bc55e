package drawing

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// slowMark stands before a figure's verdict: a word with a shape.
const slowMark = "▲ "

// sizeOf prints a duct's size.
func (s *sheet) sizeOf(d *shop.Duct) string {
	if d.Choose || d.Size <= 0 {
		return wording.Text("drawing.choose")
	}
	return unit.Size.Print(s.sys, d.Size)
}

// ductLabels are the names and sizes of the ducts, for the neutral plan. On a
// crowded one a drop has its size alone: the machine beside it says which it is.
func (s *sheet) ductLabels() []*label {
	var list []*label
	for _, p := range s.pipes {
		l := &label{near: 120, dot: true, pad: 30, anchors: s.alongPiece(p, 0, p.path.long(), p.width/2+25)}
		list = append(list, l)
		if s.brief && s.isDrop(p.duct) {
			l.block = writing(s.sizeOf(p.duct), false, smallText, 2600, 1)
			continue
		}
		for i, most := range [4]int{2000, 1300, 900, 2600} {
			b := writing(p.duct.Name, false, smallText, most, 3)
			if size := " · " + s.sizeOf(p.duct); b.runWidth(b.lines[len(b.lines)-1])+textWidth(size, false, smallText) <= most {
				b.lines[len(b.lines)-1][0].text += size
			} else {
				b.under(s.sizeOf(p.duct), false)
			}
			if b.full == "" || i == 3 && len(l.forms) == 0 {
				l.forms = append(l.forms, form{b, b, i * 60, most})
			}
		}
	}
	return list
}

// isDrop reports whether a duct leads from machines of this plan and takes in
// no other.
func (s *sheet) isDrop(d *shop.Duct) bool {
	for _, port := range d.Serves {
		if s.machineOf(port.Machine) == nil {
			return false
		}
	}
	return len(d.Serves) > 0 && len(d.Joined) == 0
}

// alongPiece are anchors along a part of a pipe: its middle first.
func (s *sheet) alongPiece(p *pipe, from, to, clear int) []anchor {
	var list []anchor
	for i, share := range [7]int{50, 38, 62, 26, 74, 14, 86} {
		along := from + (to-from)*share/100
		at, _ := p.path.at(along)
		cost := i * 12
		if !s.visible(at) {
			cost += 2500
		}
		list = append(list, anchor{at: at, clear: clear, cost: cost})
	}
	return list
}

// visible reports whether no machine, gate or collector covers a spot.
func (s *sheet) visible(at spot) bool {
	for _, b := range s.solids {
		if b.holds(at) {
			return false
		}
	}
	for _, m := range s.machines {
		if m.label.box.holds(at) {
			return false
		}
	}
	return true
}

// flowTags are the figures of a use: at each port, at the stretch that is
// farthest below its speed and at the collector.
func (s *sheet) flowTags() []*label {
	var list []*label
	for _, r := range s.results {
		if r.Collector == nil || !r.OnCurve {
			continue
		}
		tagged := map[*shop.Stretch]bool{}
		tag := func(v *duct.StretchResult, port *duct.PortResult) {
			if v == nil || tagged[v.Stretch] {
				return
			}
			p := s.pipeOf(v.Stretch.Duct)
			if p == nil {
				return
			}
			tagged[v.Stretch] = true
			list = append(list, s.flowTag(p, v, port))
		}
		for i := range r.Ports {
			if port := r.Ports[i].Port; port.Duct != nil && port.Duct.Collector == r.Collector {
				if served, _ := r.Use.Served(port.Duct); served == port {
					tag(stretchOf(r, port.Duct.Stretches[0]), &r.Ports[i])
				}
			}
		}
		slowest, _ := r.Slowest()
		tag(slowest, nil)
		for _, v := range lastStretches(r) {
			tag(v, nil)
		}
	}
	return list
}

// stretchOf is the result of one stretch.
func stretchOf(r *duct.Result, s *shop.Stretch) *duct.StretchResult {
	for i := range r.Stretches {
		if r.Stretches[i].Stretch == s {
			return &r.Stretches[i]
		}
	}
	return nil
}

// lastStretches are those that empty into the collector and carry air.
func lastStretches(r *duct.Result) []*duct.StretchResult {
	var list []*duct.StretchResult
	for i := range r.Stretches {
		if v := &r.Stretches[i]; v.Stretch.Below() == nil && v.Stretch.Last() && v.Flow > 0 {
			list = append(list, v)
		}
	}
	return list
}

// flowTag is a framed tag with a leader: size and flow, speed, and what falls
// short.
func (s *sheet) flowTag(p *pipe, v *duct.StretchResult, port *duct.PortResult) *label {
	piece := p.pieceOf(v.Stretch)
	l := &label{pad: 55, frame: look{fill: paper, line: dark, weight: 9}, near: 0, dot: true}
	l.block = block{size: smallText, ink: dark}
	l.block.under(s.sizeOf(p.duct)+" · "+unit.Air.Print(s.sys, v.Flow), true)
	l.block.under(s.speedOf(v), false)
	if !v.HoseCarries {
		first, _ := unit.Speed.Pair(s.sys, v.HoseVelocity, v.Transport)
		l.block.under(wording.Text("drawing.hose-speed", first+" "+unit.Speed.Unit(s.sys))+" "+slowMark+wording.Text("drawing.slow"), false)
		s.known.slow = true
	}
	if port != nil && !port.Captured {
		_, need := unit.Air.Pair(s.sys, port.Flow, port.Port.Flow)
		l.block.under(slowMark+wording.Text("drawing.needs", need+" "+unit.Air.Unit(s.sys)), false)
		s.known.short = true
	}
	l.anchors = s.alongPiece(p, piece.from, piece.to, p.width/2+130)
	return l
}
