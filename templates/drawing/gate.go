package drawing

import (
	"strings"

	"dustbook/plan/shop"
)

// gateState is what a gate's blade shows.
type gateState uint8

const (
	notSaid gateState = iota // on the neutral plan
	openGate
	shutGate
)

func (g gateState) String() string {
	switch g {
	case openGate:
		return wording.Text("drawing.open")
	case shutGate:
		return wording.Text("drawing.shut")
	}
	return ""
}

// gateMark is a slide gate as drawn: a frame across the duct with its blade.
type gateMark struct {
	gate   *shop.Gate
	state  gateState
	at     spot
	along  way
	half   int  // half the frame's length across the duct
	left   bool // the blade is drawn out to the left of the air's way
	onWay  bool // air passes through it
	beside *label
	says   *label
}

// Sizes of a gate's parts, in tenths.
const (
	frameHalf = 45  // half the frame's thickness, along the duct
	frameOver = 50  // the frame beyond the duct's edge
	bladeOut  = 130 // the blade beyond the frame when it is open
	bladeHalf = 24
)

// placeGates puts every gate that sits on a routed duct, each on its own
// stretch and as near to its place as it can be seen.
func (s *sheet) placeGates() {
	var beside []*label
	for _, p := range s.pipes {
		for _, g := range p.duct.Gates {
			m := &gateMark{gate: g, half: p.width/2 + frameOver}
			piece := p.pieceOf(g.Stretch)
			at, cost := s.gatePlace(p, piece, p.planAt(g.Where))
			m.at, m.along = p.path.at(at)
			if cost >= hidden {
				// a gate on a run that is a point in plan: shown beside it
				m.along = way{1, 0}
				m.beside = &label{pad: m.half + 20, anchors: []anchor{{at: m.at, clear: 60}}, near: 1}
				beside = append(beside, m.beside)
			} else {
				m.left = s.leftIsFree(m)
				s.solids = append(s.solids, m.extent())
			}
			s.gates = append(s.gates, m)
		}
	}
	s.settle(beside, 0)
	for _, m := range s.gates {
		if m.beside != nil {
			m.at = m.beside.box.centre()
		}
	}
}

func (s *sheet) stateOf(g *shop.Gate) gateState {
	switch {
	case s.use == nil:
		return notSaid
	case s.use.Open[g]:
		return openGate
	}
	return shutGate
}

// hidden is the cost from which a gate cannot be seen where it is.
const hidden = 20000

// gatePlace finds the place along a stretch nearest to where the gate is that
// is clear of machines, collectors, risers, corners, joins and other gates.
func (s *sheet) gatePlace(p *pipe, piece *stretchPiece, want int) (at, cost int) {
	for here := piece.from; ; here += 20 {
		here = min(here, piece.to)
		if c := max(here-want, want-here); here == piece.from || c < cost {
			if c += s.gateTrouble(p, here); here == piece.from || c < cost {
				at, cost = here, c
			}
		}
		if here >= piece.to {
			return at, cost
		}
	}
}

// gateTrouble is what speaks against a gate at a place.
func (s *sheet) gateTrouble(p *pipe, along int) int {
	at, w := p.path.at(along)
	cost := 0
	frame := boxOf(at.step(w, frameHalf, p.width/2), at.step(w, -frameHalf, -p.width/2), at.step(w, frameHalf, -p.width/2), at.step(w, -frameHalf, p.width/2))
	for _, m := range s.machines {
		if m.label.box.grown(50).meets(frame) {
			cost += hidden
		}
	}
	for _, c := range s.collectors {
		if closer(c.at, at, c.radius+frameHalf+20) {
			cost += hidden
		}
	}
	for _, other := range s.pipes {
		for _, r := range other.risers {
			if closer(r.at, at, r.radius+frameHalf+20) {
				cost += 6000
			}
		}
	}
	for _, corner := range p.path.corners() {
		if far := max(corner-along, along-corner); far < frameHalf+p.width/2 {
			cost += 900
		}
	}
	for _, other := range s.gates {
		if closer(other.at, at, 2*frameHalf+50+max(0, other.half-frameOver)) {
			cost += 8000
		}
	}
	return cost + s.joinTrouble(p, at, along)
}

// joinTrouble is what it costs a gate to stand where ducts join or pass.
func (s *sheet) joinTrouble(p *pipe, at spot, along int) int {
	cost := 0
	if along < frameHalf || along > p.path.long()-frameHalf {
		cost += 500
	}
	for _, other := range s.pipes {
		if other == p {
			continue
		}
		clear := frameHalf + other.width/2 + 15
		for i := 1; i < len(other.path); i++ {
			a, c := other.path[i-1], other.path[i]
			// the box rules out most lines before the costly measuring
			if boxOf(a, c).grown(clear+10).holds(at) && closer(onLine(a, c, at), at, clear) {
				cost += 4000
				break
			}
		}
	}
	return cost
}

// extent is the box around the whole gate, open.
func (m *gateMark) extent() box {
	left, right := m.half, -m.half
	if m.left {
		left += bladeOut
	} else {
		right -= bladeOut
	}
	return boxOf(m.at.step(m.along, frameHalf, left), m.at.step(m.along, -frameHalf, left), m.at.step(m.along, frameHalf, right), m.at.step(m.along, -frameHalf, right))
}

// leftIsFree decides to which side a blade is drawn out: up or to the left
// where nothing is in the way.
func (s *sheet) leftIsFree(m *gateMark) bool {
	out := func(left bool) int {
		try := *m
		try.left = left
		cost := s.lie(try.extent(), &label{mine: []*shop.Duct{m.gate.On}}, never)
		if !s.free(try.extent(), nil) {
			cost += 5000
		}
		return cost
	}
	first := m.along.x > 0.5 || m.along.x > -0.5 && m.along.y > 0 // to the left is up, or right
	if a, b := out(first), out(!first); b < a {
		return !first
	}
	return first
}

// drawGates draws slide gates: the frame across the duct; the blade drawn out
// of it when open, right across the duct when shut; on the neutral plan a
// thin line where the blade runs.
func (s *sheet) drawGates() {
	for _, m := range s.gates {
		if m.beside == nil {
			continue
		}
		l := m.beside
		s.line(look{line: dark, weight: 9}, "", l.leader...)
		duct := m.half - frameOver
		s.line(look{line: soft, weight: 2*duct + 2*edge}, "", m.at.step(m.along, -m.half, 0), m.at.step(m.along, m.half, 0))
		s.line(look{line: paper, weight: 2 * duct}, "", m.at.step(m.along, -m.half, 0), m.at.step(m.along, m.half, 0))
	}
	for _, m := range s.gates {
		s.gateFrame(m)
	}
	for _, m := range s.gates {
		s.gateBlade(m)
	}
}

// gateShape draws the gate itself, on a plan or in a key.
func (p *pen) gateShape(m *gateMark) {
	p.gateFrame(m)
	p.gateBlade(m)
}

// across draws a box across the duct at a gate, so far along the duct and to
// either side of it.
func (p *pen) across(l look, title string, m *gateMark, along, left, right int) {
	p.area(l, title, m.at.step(m.along, along, left), m.at.step(m.along, along, right), m.at.step(m.along, -along, right), m.at.step(m.along, -along, left))
}

func (p *pen) gateFrame(m *gateMark) {
	says := m.gate.Name
	if m.state != notSaid {
		says += " " + m.state.String()
	}
	inner := paper
	if m.state == openGate && m.onWay {
		inner = airSoft
	}
	p.across(look{fill: inner, line: dark, weight: 15}, says, m, frameHalf, m.half, -m.half)
}

func (p *pen) gateBlade(m *gateMark) {
	duct := m.half - frameOver
	switch m.state {
	case shutGate:
		p.across(look{fill: dark}, "", m, bladeHalf, duct+25, -duct-25)
	case openGate:
		left, right := m.half+bladeOut, m.half-10
		if !m.left {
			left, right = -left, -right
		}
		p.across(look{fill: dark}, "", m, bladeHalf, left, right)
	default:
		p.line(look{line: dark, weight: 9}, "", m.at.step(m.along, 0, m.half), m.at.step(m.along, 0, -m.half))
	}
}

// longerState is the state whose word takes more room: what has room for it has
// room for the other.
func longerState() gateState {
	if advance(shutGate.String(), false) > advance(openGate.String(), false) {
		return shutGate
	}
	return openGate
}

// gateSays is a gate's name, set no wider than most where it can be, and in a
// use the word for its state.
func gateSays(m *gateMark, state gateState, most int) block {
	b := writing(m.gate.Name, true, plainText, most, 3)
	if b.full != "" && most < 2400 {
		return gateSays(m, state, 2400)
	}
	if state != notSaid {
		b.add(run{state.String(), false, ""}, longerState().String(), max(most, b.width())+250)
	}
	return b
}

// gateSays is what a gate says on a plan: on a brief one the word for its
// state alone, where the machine beside it says which gate it is.
func (s *sheet) gateSays(m *gateMark, state gateState, most int) block {
	if !s.brief || !s.ownGate(m.gate) {
		return gateSays(m, state, most)
	}
	if state == notSaid {
		return block{}
	}
	return writing(state.String(), state == openGate, plainText, most, 1)
}

// ownGate reports whether a gate bears the name of the one machine whose drop
// it is on.
func (s *sheet) ownGate(g *shop.Gate) bool {
	d := g.On
	return s.isDrop(d) && len(d.Serves) == 1 && len(d.Gates) == 1 && strings.HasPrefix(strings.ToLower(g.Name), strings.ToLower(d.Serves[0].Machine.Name)+" ")
}

// silent reports whether a label says nothing.
func (l *label) silent() bool { return len(l.forms) > 0 && len(l.forms[l.form].shown.lines) == 0 }

// gateLabel is what a gate says, with room for either word, on few lines or
// on more.
func (s *sheet) gateLabel(m *gateMark) *label {
	l := &label{near: 170, pad: 25}
	for i, most := range [3]int{1300, 900, 600} {
		if i > 0 && !whole(m.gate.Name, true, plainText, most) {
			break // narrower would cut a word
		}
		f := form{s.gateSays(m, longerState(), most), s.gateSays(m, m.state, most), i * 60, most}
		if n := len(l.forms); n > 0 && len(f.block.lines) == len(l.forms[n-1].block.lines) {
			continue
		}
		l.forms = append(l.forms, f)
	}
	left, right := m.at.step(m.along, 0, m.half), m.at.step(m.along, 0, -m.half)
	if m.left {
		left = m.at.step(m.along, 0, m.half+bladeOut)
	} else {
		right = m.at.step(m.along, 0, -m.half-bladeOut)
	}
	l.anchors = []anchor{{at: left, clear: 35}, {at: right, clear: 35}}
	if m.beside != nil {
		l.anchors = []anchor{{at: m.at, clear: m.half + 25}}
	}
	return l
}
