package drawing

import (
	"cmp"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Sizes of the tree of ducts that have no route, in tenths.
const (
	treeIndent = 320 // between two joins
	treePipe   = 80
	treeLabel  = 2600 // a name's lines are no wider than this
	treeRoot   = 240  // radius of a collector
	treeGap    = 220  // between what stands above a row and its words
)

// tree is the ducts without a route while they are laid out in rows; pipes
// are drawn before everything that stands on them.
type tree struct {
	*sheet
	pipes []treeLine
	signs []func()
}

// treeLine is a piece of pipe in the tree, against the air.
type treeLine struct {
	spots path
	open  bool
}

// draw draws the edges of a piece of pipe, closed at its upstream end, or the
// inside of it.
func (v treeLine) draw(s *sheet, inside bool) {
	l := pipeLook(treePipe, v.open, inside)
	spots := slices.Clone(v.spots)
	if n := len(spots); !inside && n > 1 {
		spots[n-1] = spots[n-1].step(v.spots.last(), (l.weight-treePipe)/2, 0)
	}
	s.line(l, "", spots...)
}

// drawTree draws the ducts of collectors that have no route as a tree in
// order, to no scale: what they empty into at the left, the machines at the right.
func (s *sheet) drawTree(collectors []*shop.Collector) {
	t := &tree{sheet: s}
	for _, c := range collectors {
		ducts := unrouted(s.shop.Ducts, func(d *shop.Duct) bool { return d.Into == nil && d.Collector == c })
		if len(ducts) > 0 {
			t.root(t.top(), c.Name, c, ducts)
		}
	}
	for _, p := range s.pipes {
		if ducts := unrouted(p.duct.Joined, func(*shop.Duct) bool { return true }); len(ducts) > 0 {
			t.root(t.top(), p.duct.Name, nil, ducts)
		}
	}
	for _, open := range [2]bool{false, true} {
		for _, inside := range [2]bool{false, true} {
			for _, line := range t.pipes {
				if line.open == open {
					line.draw(s, inside)
				}
			}
		}
	}
	for _, sign := range t.signs {
		sign()
	}
}

// top is where the next root starts; the first one under a plan stands under
// a line that says what this is.
func (t *tree) top() spot {
	if !t.drawn {
		return spot{0, 0}
	}
	at := spot{t.extent.left, t.extent.bottom + 350}
	if len(t.pipes) == 0 {
		t.note(wording.Text("drawing.unrouted"), at, fromStart)
		at.y += 160
	}
	return at
}

// unrouted are the ducts of a list that have no route.
func unrouted(list []*shop.Duct, also func(*shop.Duct) bool) []*shop.Duct {
	var out []*shop.Duct
	for _, d := range list {
		if len(d.Route) < 2 && also(d) {
			out = append(out, d)
		}
	}
	return out
}

// root lays out what some ducts empty into, a collector or a duct drawn
// above, and the ducts in rows under it.
func (t *tree) root(top spot, name string, c *shop.Collector, ducts []*shop.Duct) {
	b := writing(name, c == nil || t.use == nil || t.runs(c), machineText, treeLabel, 3)
	half := max(treeRoot, b.height()/2)
	middle := top.moved(treeRoot, half)
	if c != nil {
		t.signs = append(t.signs, func() { t.body(c, middle, treeRoot) })
	} else {
		cap := look{fill: paper, line: dark, weight: 13}
		t.signs = append(t.signs, func() { t.rect(cap, "", around(middle, treeRoot, 100)) })
	}
	t.reach(around(middle, treeRoot, treeRoot))
	left := middle.x + treeRoot + 80
	t.write(&b, box{left, middle.y - b.height()/2, left + b.width(), middle.y + b.height()/2}, fromStart)
	for _, d := range ducts {
		t.row(d, middle, t.extent.bottom)
	}
}

func lastOf(d *shop.Duct) *shop.Stretch { return d.Stretches[len(d.Stretches)-1] }

// rowStop is something on a row: a join, a gate or a leak.
type rowStop struct {
	where unit.Length
	gate  *shop.Gate
	leak  *shop.Leak
	child *shop.Duct
}

// stops are what stands along a duct, from its downstream end.
func stops(d *shop.Duct) []rowStop {
	var list []rowStop
	for _, l := range d.Leaks {
		list = append(list, rowStop{where: l.Where, leak: l})
	}
	for _, other := range unrouted(d.Joined, func(*shop.Duct) bool { return true }) {
		list = append(list, rowStop{where: other.JoinAt, child: other})
	}
	for _, g := range d.Gates {
		list = append(list, rowStop{where: g.Where, gate: g})
	}
	slices.SortStableFunc(list, func(a, b rowStop) int { return cmp.Compare(b.where, a.where) })
	return list
}

// row lays out one duct under a height, from where it joins, with everything
// that empties into it.
func (t *tree) row(d *shop.Duct, join spot, top int) {
	b := t.rowLabel(d)
	x, y := join.x, top+b.height()+treeGap
	r := &rowPen{tree: t, y: y, line: treeLine{path{join, {x, y}}, t.open[lastOf(d)]}, cursor: x + 140, arrow: x + 200}
	r.words(&b)
	r.cursor += 60
	var children []*shop.Duct
	var joins []spot
	for _, stop := range stops(d) {
		switch {
		case stop.child != nil:
			r.cursor += treeIndent / 2
			r.pipeTo(stretchOver(d, stop.where))
			children, joins = append(children, stop.child), append(joins, spot{r.cursor, y})
			if stop.where > 0 {
				r.cursor += treeIndent / 2
			} else {
				r.cursor += 40
			}
		case stop.gate != nil:
			r.gate(stop.gate)
		case stop.leak != nil:
			r.leak(stop.leak)
		}
	}
	r.cursor += 100
	if n := len(joins); n > 0 && len(d.Serves) == 0 && r.cursor < joins[n-1].x+treePipe*2 {
		r.cursor = joins[n-1].x + treePipe/2 // it begins where that one joins
	}
	r.pipeTo(d.Stretches[0])
	r.endLine()
	t.rowEnd(d, spot{r.cursor, y})
	t.reach(box{x, y, x, y + 200})
	for i := len(children) - 1; i >= 0; i-- {
		t.row(children[i], joins[i], t.extent.bottom)
	}
}

// stretchOver is the stretch just downstream of a place on a duct.
func stretchOver(d *shop.Duct, where unit.Length) *shop.Stretch {
	for _, s := range d.Stretches {
		if where < s.To {
			return s
		}
	}
	return lastOf(d)
}
