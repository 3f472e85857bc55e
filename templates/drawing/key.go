package drawing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// usedSigns are marks whose use is only known while labels are written.
type usedSigns struct{ slow, short bool }

// sign is one entry of the key: a sample and what it means.
type sign struct {
	means string
	draw  func(p *pen, at spot) // at the middle of the sample's left edge
}

// Sizes of the key, in tenths.
const (
	sampleWide = 420
	keyLine    = 340
	keyGap     = 300
	leastFoot  = 9000 // the foot is set at least this wide
)

// drawFoot draws the key and the notes of a plan.
func (s *sheet) drawFoot() {
	key, notes := s.signs(), s.notes()
	if !s.drawn && len(notes) == 0 {
		notes = []string{"Nothing to draw: the shop file has no room, machine, collector or duct."}
	}
	s.foot(key, notes)
}

// foot draws a key and notes under everything drawn so far.
func (p *pen) foot(key []sign, notes []string) {
	if !p.drawn {
		p.reach(box{0, 0, leastFoot, 0})
	}
	all := p.extent
	right := max(all.right, all.left+leastFoot)
	at := spot{all.left, all.bottom + 300}
	for _, e := range key {
		long := sampleWide + 80 + textWidth(e.means, false, smallText)
		if at.x > all.left && at.x+long > right {
			at = spot{all.left, at.y + keyLine}
		}
		e.draw(p, at)
		p.note(e.means, at.moved(sampleWide+80, 0), fromStart)
		at.x += long + keyGap
	}
	if len(key) > 0 {
		at = spot{all.left, at.y + keyLine}
	}
	for _, text := range notes {
		b := writing(text, false, smallText, right-all.left, 60)
		p.write(&b, box{at.x, at.y - 78, at.x + b.width(), at.y - 78 + b.height()}, fromStart)
		at.y += b.height() + 40
	}
}

// signs are the entries that this drawing needs.
func (s *sheet) signs() []sign {
	var list []sign
	add := func(when bool, means string, draw func(p *pen, at spot)) {
		if when {
			list = append(list, sign{means, draw})
		}
	}
	anyDuct, someOpen, someShut := len(s.shop.Ducts) > 0, false, false
	for _, d := range s.shop.Ducts {
		for _, stretch := range d.Stretches {
			someOpen, someShut = someOpen || s.open[stretch], someShut || !s.open[stretch]
		}
	}
	add(anyDuct && someOpen, "open way, air moves with the arrow", func(p *pen, at spot) { samplePipe(p, at, true) })
	add(s.known.slow, "too slow for its dust", func(p *pen, at spot) {
		samplePipe(p, at, true)
		p.rect(look{fill: airSoft}, "", around(at.moved(sampleWide/2, 0), 60, 43))
		p.arrow(at.moved(sampleWide/2+34, 0), way{1, 0}, 34, true)
	})
	add(anyDuct && someShut && s.use != nil, "off the open way", func(p *pen, at spot) { samplePipe(p, at, false) })
	states := map[gateState]bool{}
	for _, g := range s.shop.Gates {
		states[s.stateOf(g)] = true
	}
	for _, state := range [3]gateState{openGate, shutGate, notSaid} {
		means := map[gateState]string{openGate: "gate open: blade drawn out", shutGate: "gate shut: blade across", notSaid: "gate"}[state]
		add(states[state], means, func(p *pen, at spot) { sampleGate(p, at, state) })
	}
	up, down := false, false
	for _, p := range s.pipes {
		for _, r := range p.risers {
			up, down = up || r.up, down || !r.up
		}
	}
	add(up, "duct rises, going with the air", func(p *pen, at spot) { p.drawRiser(riser{at.moved(sampleWide/2, 0), true, 70}) })
	add(down, "duct drops", func(p *pen, at spot) { p.drawRiser(riser{at.moved(sampleWide/2, 0), false, 70}) })
	stands, could, fixed := false, false, false
	for _, h := range s.hoses {
		stands, could, fixed = stands || h.stands, could || h.movable && !h.stands, fixed || !h.movable
	}
	add(stands, "movable end, where it stands", func(p *pen, at spot) {
		p.line(look{line: dark, weight: 38, dash: "7 4"}, "", at, at.moved(sampleWide, 0))
	})
	elsewhere := "movable end, where else it goes"
	if s.use == nil {
		elsewhere = "movable end, where it can go"
	}
	add(could, elsewhere, func(p *pen, at spot) {
		p.line(look{line: dark, weight: 9, dash: "4 4"}, "", at, at.moved(sampleWide, 0))
	})
	add(fixed, "hose", sampleHose)
	add(len(s.shop.Walls) > 0, "wall that keeps apart, with its rating", sampleBand)
	add(len(s.leaks) > 0, "leak", func(p *pen, at spot) {
		p.drawLeak(&leakMark{tip: at.moved(300, 0), tail: at.moved(120, 0)})
	})
	return list
}

func samplePipe(p *pen, at spot, open bool) {
	for _, inside := range [2]bool{false, true} {
		p.line(pipeLook(90, open, inside), "", at, at.moved(sampleWide, 0))
	}
	if open {
		p.arrow(at.moved(sampleWide/2+34, 0), way{1, 0}, 34, false)
	}
}

func sampleGate(p *pen, at spot, state gateState) {
	middle := at.moved(sampleWide/2, 0)
	for _, inside := range [2]bool{false, true} {
		p.line(pipeLook(70, false, inside), "", at.moved(60, 0), at.moved(sampleWide-60, 0))
	}
	p.gateShape(&gateMark{gate: &shop.Gate{}, state: state, at: middle, along: way{1, 0}, half: 35 + frameOver, left: true})
}

func sampleHose(p *pen, at spot) {
	p.line(look{line: soft, weight: 80 + 2*edge}, "", at, at.moved(sampleWide, 0))
	p.line(look{line: paper, weight: 80}, "", at, at.moved(sampleWide, 0))
	var ribs []path
	for x := 30; x < sampleWide; x += 40 {
		ribs = append(ribs, path{at.moved(x, -40), at.moved(x, 40)})
	}
	p.lines(look{line: dark, weight: 8}, "", ribs...)
}

func sampleBand(p *pen, at spot) {
	half := wallThick / 2
	p.area(look{fill: paper, line: dark, weight: 16, mitre: true}, "", at.moved(0, -half), at.moved(sampleWide, -half), at.moved(sampleWide, half), at.moved(0, half))
	var hatch []path
	for x := hatchStep / 2; x+wallThick < sampleWide; x += hatchStep {
		hatch = append(hatch, path{at.moved(x, half), at.moved(x+wallThick, -half)})
	}
	p.lines(look{line: dark, weight: 9}, "", hatch...)
}

// notes are what else has to be said of the drawing.
func (s *sheet) notes() []string {
	var list []string
	for _, r := range s.results {
		if !r.OnCurve {
			list = append(list, "No figures for "+r.Collector.Name+": "+r.Why+".")
		}
	}
	if s.why != "" {
		list = append(list, "No figures: "+s.why+".")
	}
	if s.known.slow {
		list = append(list, slowMark+"slow: under the speed its dust needs, dust settles there.")
	}
	if s.known.short {
		list = append(list, slowMark+"needs: the port gets less than this.")
	}
	if len(s.pipes) > 0 && s.wider > 1 {
		list = append(list, "Ducts are drawn "+unit.Short(s.wider)+" times as wide as to scale.")
	}
	if len(s.machines) > 0 {
		list = append(list, "Machine boxes are not to scale: the shop file gives a point for each.")
	}
	if s.scale.turned {
		list = append(list, "Turned a quarter to the left: what runs right in the shop file runs up here.")
	}
	if missing := s.notShown(); len(missing) > 0 {
		list = append(list, "Not drawn, for want of a place or a duct in the shop file: "+listed(missing, func(name string) string { return name })+".")
	}
	return list
}
