package drawing

import (
	"dustbook/plan/shop"
)

// hoseMark is the hose between a duct's end and a machine's box.
type hoseMark struct {
	duct     *shop.Duct
	port     *shop.Port
	from, to spot // at the duct's end, at the machine
	movable  bool
	width    int
}

// placeHoses finds the hoses that have a length in plan.
func (s *sheet) placeHoses() {
	for _, p := range s.pipes {
		d := p.duct
		for _, port := range d.Serves {
			m := s.machineOf(port.Machine)
			if m == nil || d.Hose == nil && !d.Movable() {
				continue
			}
			h := &hoseMark{duct: d, port: port, from: p.path[0], movable: d.Movable(), width: p.width * 8 / 10}
			if h.to = m.label.box.nearest(h.from); span(h.from, h.to) < 40 {
				continue
			}
			s.hoses = append(s.hoses, h)
			s.strips = append(s.strips, strip{a: h.from, c: h.to, half: h.width / 2, cost: hoseCost, of: d})
		}
	}
}

func (s *sheet) machineOf(m *shop.Machine) *machineMark {
	for _, mark := range s.machines {
		if mark.machine == m {
			return mark
		}
	}
	return nil
}

// stands reports whether a movable end stands at its machine in this use.
func (s *sheet) stands(h *hoseMark) bool {
	if s.use == nil || !h.movable || !s.inUse(h.port.Machine) {
		return false
	}
	served, _ := s.use.Served(h.duct)
	return served == h.port
}

// drawHose draws a fixed hose as a ribbed line, a movable one dashed: heavy
// to where it stands, thin to where else it can go.
func (s *sheet) drawHose(h *hoseMark) {
	says := wording.Text("drawing.hose", h.port.Full(), h.duct.Name)
	long := span(h.from, h.to)
	if !h.movable {
		w := towards(h.from, h.to)
		s.line(look{line: soft, weight: h.width + 2*edge}, says, h.from, h.to)
		inner := look{line: paper, weight: h.width}
		if s.open[h.duct.Stretches[0]] {
			inner.line = airSoft
		}
		s.line(inner, "", h.from, h.to)
		var ribs []path
		for at := 30; at < long; at += 40 {
			ribs = append(ribs, path{h.from.step(w, at, h.width/2), h.from.step(w, at, -h.width/2)})
		}
		s.lines(look{line: dark, weight: 8}, "", ribs...)
		return
	}
	l := look{line: dark, weight: 9, dash: "4 4"}
	if s.stands(h) {
		l = look{line: dark, weight: 38, dash: "7 4"}
	}
	s.arc(l, says, h.from, h.to, max(long, 10), h.to.x >= h.from.x)
}
