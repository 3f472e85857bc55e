package drawing

import "dustbook/plan/shop"

// machineMark is a machine as drawn: a box with its name. The shop file gives
// a point, so the box is as large as a common footprint or as the name asks,
// and stands so that its duct leaves it at once.
type machineMark struct {
	machine *shop.Machine
	at      spot // where the file says it stands
	label   *label
	ducts   []*pipe  // that serve it with a fixed end
	moved   []*pipe  // that serve it with a movable end
	steps   [][]spot // of each of its ducts: spots every two units along it
}

// The common footprint of a machine, in metres: common practice, no source.
const (
	footWide = 1.2
	footDeep = 0.9
)

// placeMachines puts a box for every machine that has a place.
func (s *sheet) placeMachines() {
	var labels []*label
	for _, m := range s.shop.Machines {
		mark := &machineMark{machine: m}
		var fixed []*shop.Duct
		for _, port := range m.Ports {
			p := s.pipeOf(port.Duct)
			switch {
			case p == nil:
			case port.Duct.Movable():
				mark.moved = append(mark.moved, p)
			default:
				mark.ducts = append(mark.ducts, p)
				fixed = append(fixed, port.Duct)
			}
		}
		switch {
		case m.Place.Known():
			mark.at = s.scale.at(m.Place.V)
		case len(mark.ducts) > 0:
			mark.at = mark.ducts[0].path[0]
		default:
			continue
		}
		for _, p := range mark.ducts {
			mark.steps = append(mark.steps, p.path.steps(20))
		}
		mark.label = s.machineLabel(mark, fixed)
		s.machines = append(s.machines, mark)
		labels = append(labels, mark.label)
	}
	s.settle(labels, 1)
	for _, m := range s.machines {
		for _, link := range m.links() {
			s.strips = append(s.strips, strip{a: link[0], c: link[1], half: 10, cost: linkCost})
		}
	}
	for _, p := range s.pipes {
		for _, r := range p.risers {
			s.solids = append(s.solids, around(r.at, r.radius, r.radius))
		}
	}
}

// machineLabel is the box with the places it may take.
func (s *sheet) machineLabel(m *machineMark, fixed []*shop.Duct) *label {
	l := &label{pad: 70, near: 1, mine: fixed, frame: look{fill: tint, line: dark, weight: 13}}
	for _, most := range [4]int{1050, 1350, 1800, 2400} {
		l.block = writing(m.machine.Name, true, machineText, most, 3) // as large as when it is in use
		if l.block.full == "" {
			break
		}
	}
	l.anchors = []anchor{{at: m.at, clear: 40, cost: 1500}}
	port, strip := s.portOf(m)
	l.fixed = s.machinePlaces(l, m, port, strip)
	l.stay = func(o option) int { return s.covers(m, o) }
	return l
}

// portOf is where a machine's duct leaves it, and how much room the mark of a
// riser takes there.
func (s *sheet) portOf(m *machineMark) (at spot, strip int) {
	for _, p := range m.ducts {
		for _, r := range p.risers {
			if span(r.at, m.at) <= 150 {
				return r.at, 2*r.radius + 40
			}
		}
	}
	return m.at, 0
}

// sides of a box, as directions.
var sides = [4]way{{0, 1}, {0, -1}, {-1, 0}, {1, 0}}

// machinePlaces are boxes that hold the port near one side: the side that
// faces the way the ducts leave costs least.
func (s *sheet) machinePlaces(l *label, m *machineMark, port spot, strip int) []option {
	var list []option
	leave, known := leaves(m)
	for tight := range 2 {
		pad, wide, deep := 80, min(s.scale.long(footWide), 960), min(s.scale.long(footDeep), 640)
		if tight == 1 {
			pad, wide, deep = 45, 0, 0
		}
		for _, out := range sides {
			w, h := max(l.block.width()+2*pad, wide), max(l.block.height()+2*pad, deep)
			inset := max(strip/2, 60)
			if strip > 0 && out.x != 0 {
				w = max(l.block.width()+2*pad+strip, wide)
			} else if strip > 0 {
				h = max(l.block.height()+2*pad+strip, deep)
			}
			cost := tight * 150
			if known {
				cost += int((1-leave.dot(out))*220 + 0.5)
			}
			for _, slide := range [5]int{50, 30, 70, 12, 88} {
				b := boxAt(port, out, inset, w, h, slide)
				o := option{box: b, cost: cost + (slide-50)*(slide-50)/8, hang: centred, text: without(b, out, strip).grown(-pad / 2)}
				list = append(list, o)
			}
		}
		if strip == 0 {
			w, h := max(l.block.width()+2*pad, wide), max(l.block.height()+2*pad, deep)
			b := around(port, w/2, h/2)
			list = append(list, option{box: b, cost: tight*150 + 30, hang: centred, text: b.grown(-pad / 2)})
		}
	}
	return list
}

// boxAt is a box with the port this far inside the middle, or another share,
// of one of its sides.
func boxAt(port spot, out way, inset, w, h, slide int) box {
	switch {
	case out.y > 0:
		return box{port.x - w*slide/100, port.y + inset - h, port.x - w*slide/100 + w, port.y + inset}
	case out.y < 0:
		return box{port.x - w*slide/100, port.y - inset, port.x - w*slide/100 + w, port.y - inset + h}
	case out.x < 0:
		return box{port.x - inset, port.y - h*slide/100, port.x - inset + w, port.y - h*slide/100 + h}
	}
	return box{port.x + inset - w, port.y - h*slide/100, port.x + inset, port.y - h*slide/100 + h}
}

// without is a box less a strip along one of its sides.
func without(b box, out way, strip int) box {
	switch {
	case out.y > 0:
		b.bottom -= strip
	case out.y < 0:
		b.top += strip
	case out.x < 0:
		b.left += strip
	default:
		b.right -= strip
	}
	return b
}

// leaves is the direction in which a machine's ducts go from it, or from
// which its hose comes.
func leaves(m *machineMark) (way, bool) {
	sum := way{}
	for _, p := range append(m.ducts[:len(m.ducts):len(m.ducts)], m.moved...) {
		for _, at := range p.path {
			if span(m.at, at) > 60 {
				w := towards(m.at, at)
				sum = way{sum.x + w.x, sum.y + w.y}
				break
			}
		}
	}
	if l := sum.x*sum.x + sum.y*sum.y; l < 0.01 {
		return sum, false
	}
	far := spot{tenths(sum.x * 1000), tenths(sum.y * 1000)}
	return towards(spot{}, far), true
}

// covers is what it costs a machine's box to hide its own duct beyond its
// first bit, or the mark of a riser.
func (s *sheet) covers(m *machineMark, o option) int {
	cost := 0
	for _, p := range s.pipes {
		for _, r := range p.risers {
			mark := around(r.at, r.radius+10, r.radius+10)
			if o.text != (box{}) && o.text.meets(mark) {
				cost += 5000
			}
			if !o.box.meets(mark) || mark.within(o.box) {
				continue
			}
			cost += 3000
		}
	}
	for i, p := range m.ducts {
		hidden := 0
		wide := o.box.grown(p.width/2 + edge + 50) // a duct that grazes it counts too
		for _, at := range m.steps[i] {
			if wide.holds(at) {
				hidden++
			}
		}
		cost += 60 * max(0, hidden-10-p.width/40)
	}
	return cost
}

// drawLinks draws a line from a machine to where it stands, where its box is
// elsewhere, and to the ducts that start beside it without a hose.
func (s *sheet) drawLinks(m *machineMark) {
	l := m.label
	if len(l.leader) > 1 {
		s.line(look{line: dark, weight: 13}, "", l.leader...)
	}
	for _, link := range m.links() {
		s.line(look{line: dark, weight: 13}, "", link[:]...)
	}
}

// links are the lines to ducts that start beside the box without a hose.
func (m *machineMark) links() [][2]spot {
	var list [][2]spot
	for _, p := range m.ducts {
		if start := p.path[0]; !m.label.box.holds(start) && p.duct.Hose == nil {
			list = append(list, [2]spot{m.label.box.nearest(start), start})
		}
	}
	return list
}

// drawMachine draws the box and its name.
func (s *sheet) drawMachine(m *machineMark) {
	l := m.label
	b, frame := l.block, l.frame
	if s.inUse(m.machine) {
		frame = look{fill: airSoft, line: dark, weight: 26}
	}
	if s.use != nil && !s.inUse(m.machine) {
		b = b.light()
	}
	s.link(s.pathOf(m.machine), func() {
		s.rect(frame, m.machine.Name, l.box)
		s.write(&b, l.text, centred)
	})
}
