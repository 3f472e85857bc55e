package drawing

import (
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
		notes = []string{wording.Text("drawing.nothing")}
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
func (s *sheet) signs() []sign { return signsOf(s.marksUsed()) }

// marksUsed are the names of the marks this drawing needs explained, in the
// order of the key. What carries its own name or word is left to Key.
func (s *sheet) marksUsed() []string {
	used := map[string]bool{"slow": s.known.slow, "rated-wall": len(s.shop.Walls) > 0, "leak": len(s.leaks) > 0, "tap": len(s.taps) > 0}
	for _, d := range s.shop.Ducts {
		for _, stretch := range d.Stretches {
			open := s.open[stretch]
			used["way"], used["off"] = used["way"] || open, used["off"] || !open && s.use != nil
		}
	}
	for _, g := range s.shop.Gates {
		used[map[gateState]string{openGate: "gate-open", shutGate: "gate-shut", notSaid: "gate"}[s.stateOf(g)]] = true
	}
	for _, p := range s.pipes {
		for _, r := range p.risers {
			used["rise"], used["drop"] = used["rise"] || r.up, used["drop"] || !r.up
		}
	}
	elsewhere := "end-elsewhere"
	if s.use == nil {
		elsewhere = "end-can"
	}
	for _, h := range s.hoses {
		used["end-here"], used["hose"] = used["end-here"] || s.stands(h), used["hose"] || !h.movable
		used[elsewhere] = used[elsewhere] || h.movable && !s.stands(h)
	}
	for _, m := range s.fixtures {
		used["stop"], used["extinguisher"] = used["stop"] || m.stop != nil, used["extinguisher"] || m.stop == nil
	}
	var list []string
	for _, m := range marks {
		if used[m.name] {
			list = append(list, m.name)
		}
	}
	return list
}

// notes are what else has to be said of the drawing.
func (s *sheet) notes() []string {
	var list []string
	for _, r := range s.results {
		if !r.OnCurve {
			list = append(list, wording.Text("drawing.off-of", r.Collector.Name, wording.Because(r.Why)))
		}
	}
	if s.why != "" {
		list = append(list, wording.Text("drawing.off", s.why))
	}
	if s.known.slow {
		list = append(list, slowMark+wording.Text("drawing.slow-note"))
	}
	if s.known.short {
		list = append(list, slowMark+wording.Text("drawing.needs-note"))
	}
	if len(s.pipes) > 0 && s.wider > 1 {
		list = append(list, wording.Text("drawing.wider", unit.Short(s.wider)))
	}
	if len(s.machines) > 0 {
		list = append(list, wording.Text("drawing.boxes"))
	}
	if s.brief {
		list = append(list, wording.Text("drawing.brief"))
	}
	if s.scale.turned {
		list = append(list, wording.Text("drawing.turned"))
	}
	if missing := s.notShown(); len(missing) > 0 {
		list = append(list, wording.Text("drawing.missing", listed(missing, func(name string) string { return name })))
	}
	return list
}
