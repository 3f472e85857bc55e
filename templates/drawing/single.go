package drawing

import (
	"slices"

	"dustbook/plan"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// Sizes of a single-line diagram, in tenths.
const (
	singleIndent = 380  // between two uprights
	singleText   = 160  // from an upright to what is written beside it
	singleLabel  = 2600 // names are set no wider than this
	singleRise   = 80   // from a line to what is written over or under it
	singleGap    = 90   // between two rows
	singleHalf   = 30   // half the bore a gate is drawn for
	openWire     = 46
	shutWire     = 12
)

// Single draws one single-line diagram as Board.Single does, without links.
func Single(p *plan.Plan, r *duct.Result, id string) SVG { return NewBoard(p).Single(r, id) }

// Single draws the ducts of a result's collector as a single-line diagram, in
// order and to no scale: the collector at the top left, from it the ducts
// against the air, machines at the right. The open way is heavy, with arrows
// and, at every stretch, its number (see InOrder), flow, speed and pressures;
// what is shut is thin. Gates stand on their stretch, the blade drawn out or
// across. A machine leads to its use. The id is the start of every id in the
// drawing. Range: a result on a collector.
func (b *Board) Single(r *duct.Result, id string) SVG {
	s := newSingle(b, r)
	s.lay()
	s.draw()
	return s.frame(id, s.title(), s.desc(), margin)
}

// single is a single-line diagram while it is drawn: what is laid out first
// and written down once the columns are known.
type single struct {
	*sheet
	result    *duct.Result
	collector *shop.Collector
	wires     []wire
	nodes     []node
	rows      []*singleRow
	bands     []*singleBand
	gatesAt   int // where the gates of rows begin
	endsAt    int // where machines stand
}

// wire is a piece of the line, and node a join on it.
type wire struct {
	spots path
	open  bool
}

type node struct {
	at   spot
	open bool
}

// upright is a line that is being laid downwards, against the air.
type upright struct {
	x, y int
	lead path // what comes before it, on the way from the collector
}

func newSingle(b *Board, r *duct.Result) *single {
	s := &single{sheet: &sheet{board: b, shop: b.plan.Shop, sys: b.plan.Shop.Units}, result: r, collector: r.Collector}
	s.setUse(r)
	s.numbers = numbering(s.shop, r.Collector)
	return s
}

// lay lays out everything under the collector, which stands at nought.
func (s *single) lay() {
	var roots []*shop.Duct
	for _, d := range s.shop.Ducts {
		if d.Into == nil && d.Collector == s.collector {
			roots = append(roots, d)
		}
	}
	u := &upright{y: treeRoot}
	head := s.headSays()
	s.branches(u, roots, false, max(treeRoot, head.height()/2)+singleGap)
	s.columns()
}

// branches lays what leaves an upright at one place, under a height, and
// returns the height under it all. Beyond says whether air comes from farther
// on.
func (s *single) branches(u *upright, list []*shop.Duct, beyond bool, top int) int {
	for i, d := range list {
		open := beyond || slices.ContainsFunc(list[i:], func(d *shop.Duct) bool { return s.open[lastOf(d)] })
		at := 0
		at, top = s.duct(d, u.x, top)
		s.extend(u, at, open)
		s.nodes = append(s.nodes, node{spot{u.x, at}, open && s.open[lastOf(d)]})
	}
	return top
}

// extend lays an upright down to a height.
func (s *single) extend(u *upright, to int, open bool) {
	weight := shutWire
	if open {
		weight = openWire
	}
	// it ends flush with the line that leaves it there
	s.wires = append(s.wires, wire{append(u.lead, spot{u.x, u.y}, spot{u.x, to + weight/2}), open})
	u.y, u.lead = to, nil
}

// duct lays out a duct with all that empties into it, from an upright, under
// a height. It returns where it leaves the upright and the height under it.
func (s *single) duct(d *shop.Duct, x, top int) (at, bottom int) {
	n := len(d.Stretches)
	if n == 1 && len(d.Joined) == 0 {
		return s.row(d.Stretches[0], d, x, top)
	}
	at = top + singleGap
	u := &upright{x: x + singleIndent, y: at, lead: path{{x, at}}}
	bottom = s.leaves(d, n, u, at, s.open[lastOf(d)])
	for i := n; i > 0; i-- {
		stretch := d.Stretches[i-1]
		open, low := s.open[stretch], 0
		if i == 1 && len(joinedAt(d, 0)) == 0 {
			low, bottom = s.row(stretch, d, u.x, bottom)
			s.extend(u, low, open)
			return at, bottom
		}
		bottom = s.band(stretch, u.x, bottom)
		s.extend(u, bottom, open)
		beyond := false
		if i > 1 {
			beyond = s.open[d.Stretches[i-2]]
		} else if len(d.Serves) > 0 {
			beyond = open
		}
		bottom = s.leaves(d, i-1, u, bottom, beyond)
	}
	if len(d.Serves) > 0 {
		low := 0
		low, bottom = s.row(nil, d, u.x, bottom)
		s.extend(u, low, s.open[d.Stretches[0]])
	}
	return at, bottom
}

// leaves lays what comes in at a node of a duct: leaks, then other ducts, the
// last of the file's order first, as they are numbered.
func (s *single) leaves(d *shop.Duct, at int, u *upright, top int, beyond bool) int {
	list := joinedAt(d, at)
	for _, l := range d.Leaks {
		if l.Node == at {
			top = s.leak(l, u, top, beyond || slices.ContainsFunc(list, func(d *shop.Duct) bool { return s.open[lastOf(d)] }))
		}
	}
	return s.branches(u, list, beyond, top)
}

// joinedAt are the ducts that join another at a node.
func joinedAt(d *shop.Duct, at int) []*shop.Duct {
	var list []*shop.Duct
	for i := len(d.Joined) - 1; i >= 0; i-- {
		if d.Joined[i].JoinNode == at {
			list = append(list, d.Joined[i])
		}
	}
	return list
}
