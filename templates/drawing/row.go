package drawing

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// rowPen lays out one row of the tree from left to right.
type rowPen struct {
	*tree
	y      int
	line   treeLine // the pipe being laid
	cursor int
	arrow  int // where the next arrow may stand
}

// words stand above the pipe.
func (r *rowPen) words(b *block) {
	r.write(b, box{r.cursor, r.y - 70 - b.height(), r.cursor + b.width(), r.y - 70}, fromStart)
	r.cursor += b.width()
}

// pipeTo lays the pipe of a stretch up to the cursor, with an arrow on the
// open way.
func (r *rowPen) pipeTo(s *shop.Stretch) {
	open := r.sheet.open[s]
	if open != r.line.open {
		start := r.line.spots.end()
		r.endLine()
		r.line = treeLine{path{start}, open}
	}
	if tip := (spot{r.arrow, r.y}); open && r.arrow+100 < r.cursor {
		slow, t := r.tooSlow(s), r.tree
		t.signs = append(t.signs, func() { t.sheet.arrow(tip, way{-1, 0}, 34, slow) })
	}
	r.line.spots = append(r.line.spots, spot{r.cursor, r.y})
	r.arrow = r.cursor + 100
}

// endLine adds the pipe laid so far to the tree. One that goes on otherwise
// ends beyond the join of the branch that brings the air.
func (r *rowPen) endLine() {
	t, l := r.tree, r.line
	l.spots = straight(tidy(l.spots))
	if n := len(l.spots); r.line.open && n > 1 && r.cursor > l.spots[n-1].x {
		l.spots[n-1].x += treePipe / 2
	}
	t.reach(boxOf(l.spots...).grown(treePipe))
	t.pipes = append(t.pipes, l)
}

// straight leaves out spots on a straight run.
func straight(p path) path {
	var out path
	for i, s := range p {
		if i == 0 || i == len(p)-1 || side(p[i-1], s, p[i+1]) != 0 {
			out = append(out, s)
		}
	}
	return out
}

func (r *rowPen) gate(g *shop.Gate) {
	at := spot{r.cursor + 100 + frameHalf, r.y}
	m := &gateMark{gate: g, state: r.stateOf(g), at: at, along: way{-1, 0}, half: treePipe/2 + frameOver, left: true, onWay: r.sheet.open[g.Stretch]}
	t := r.tree
	t.signs = append(t.signs, func() { t.gateShape(m) })
	b := gateSays(m, m.state, 1300)
	r.cursor = at.x + frameHalf + 70
	r.arrow = r.cursor + 60
	r.words(&b)
}

func (r *rowPen) leak(l *shop.Leak) {
	x, edge := r.cursor+120, r.y+treePipe/2+edge
	m := &leakMark{leak: l, tip: spot{x, edge}, tail: spot{x, edge + leakLong}}
	t := r.tree
	t.signs = append(t.signs, func() { t.drawLeak(m) })
	b := r.leakLabel(m).block
	in := box{x + 70, r.y + 75, x + 70 + b.width(), r.y + 75 + b.height()}
	r.write(&b, in, fromStart)
	r.cursor = in.right + 60
}

// rowLabel is what a row says of its duct: name, size and length; in a use
// also what passes its downstream end.
func (s *sheet) rowLabel(d *shop.Duct) block {
	name := d.Name
	if s.numbers != nil {
		name = numbersOf(d, s.numbers) + " · " + name
	}
	b := writing(name, true, plainText, treeLabel, 3)
	says := s.sizeOf(d)
	if d.Length > 0 {
		says += " · " + unit.Run.Print(s.sys, d.Length)
	}
	if d.Into != nil && len(d.Into.Route) > 1 {
		says += " · " + wording.Text("drawing.joins", unit.Run.Print(s.sys, d.JoinAt))
	}
	b.under(says, false)
	r := s.resultOf(d.Collector)
	if r == nil || !r.OnCurve {
		return b
	}
	if v := stretchOf(r, lastOf(d)); v != nil && s.open[v.Stretch] {
		b.under(unit.Air.Print(s.sys, v.Flow)+" · "+s.speedOf(v), false)
	}
	return b
}

// speedOf prints a stretch's speed, and says where it is too slow.
func (s *sheet) speedOf(v *duct.StretchResult) string {
	if v.Carries {
		return unit.Speed.Print(s.sys, v.Velocity)
	}
	s.known.slow = true
	first, _ := unit.Speed.Pair(s.sys, v.Velocity, v.Transport)
	return first + " " + unit.Speed.Unit(s.sys) + " " + slowMark + wording.Text("drawing.slow")
}

// rowEnd draws the machines at the upstream end of a row; with a movable end
// all that it may serve, by turns.
func (t *tree) rowEnd(d *shop.Duct, at spot) {
	if len(d.Serves) == 0 {
		t.signs = append(t.signs, func() {
			t.line(look{line: dark, weight: 13}, "", at.moved(0, -treePipe/2-edge), at.moved(0, treePipe/2+edge))
		})
		return
	}
	for i, port := range d.Serves {
		stands := t.inUse(port.Machine)
		if stands && d.Movable() {
			served, _ := t.use.Served(d)
			stands = served == port
		}
		if d.Movable() && i == 0 {
			t.line(look{line: dark, weight: 9, dash: "4 4"}, "", at, at.moved(240, 0))
			at.x += 240
		} else if i > 0 {
			t.note(wording.Text("drawing.or"), at.moved(80, 0), fromStart)
			at.x += 160 + textWidth(wording.Text("drawing.or"), false, smallText)
		}
		name := port.Machine.Name
		if len(port.Machine.Ports) > 1 {
			name = port.Full()
		}
		l := look{fill: tint, line: dark, weight: 13}
		if stands {
			l = look{fill: airSoft, line: dark, weight: 26}
		}
		b := writing(name, t.use == nil || stands, machineText, 2200, 3)
		in := box{at.x, at.y - b.height()/2 - 60, at.x + b.width() + 200, at.y + b.height()/2 + 60}
		t.link(t.pathOf(port.Machine), func() {
			t.rect(l, port.Full(), in)
			t.write(&b, in, centred)
		})
		at.x = in.right
	}
}

// notShown are the names of what the drawing cannot place: machines,
// collectors, stops, extinguishers and taps.
func (s *sheet) notShown() []string {
	var list []string
	for _, m := range s.shop.Machines {
		shown := s.machineOf(m) != nil
		for _, p := range m.Ports {
			shown = shown || p.Duct != nil && len(p.Duct.Route) < 2
		}
		if !shown {
			list = append(list, m.Name)
		}
	}
	for _, c := range s.shop.Collectors {
		_, shown := s.collectorPlace(c)
		for _, d := range s.shop.Ducts {
			shown = shown || d.Into == nil && d.Collector == c && len(d.Route) < 2
		}
		if !shown {
			list = append(list, c.Name)
		}
	}
	return append(list, s.fixturesNotShown()...)
}
