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
	singleRise   = 75   // from a line to what is written over or under it
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

// Radii of a node, in tenths: where no air comes in, and where some does.
const (
	shutNode = 28
	openNode = 48
)

type node struct {
	at   spot
	open bool
}

// upright is a line that is being laid downwards, against the air.
type upright struct {
	x, y int
	lead path // what comes before it, on the way from the collector
}

// free is the height from which there is room: at the left, where words stand
// beside the line, and at the right, in the columns of gates and machines.
type free struct{ left, right int }

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
	low := max(treeRoot, head.height()/2) + singleGap
	s.branches(u, roots, false, free{low, low})
	s.columns()
}

// branches lays what leaves an upright at one place, where there is room, and
// returns the room under it all. Beyond says whether air comes from farther
// on.
func (s *single) branches(u *upright, list []*shop.Duct, beyond bool, from free) free {
	for i, d := range list {
		open := beyond || slices.ContainsFunc(list[i:], func(d *shop.Duct) bool { return s.open[lastOf(d)] })
		at := 0
		at, from = s.duct(d, u.x, from)
		s.extend(u, at, open)
		s.nodes = append(s.nodes, node{spot{u.x, at}, open && s.open[lastOf(d)]})
	}
	return from
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

// duct lays out a duct with all that empties into it, from an upright, where
// there is room. It returns where it leaves the upright and the room under it.
func (s *single) duct(d *shop.Duct, x int, from free) (at int, under free) {
	n := len(d.Stretches)
	if n == 1 && len(d.Joined) == 0 {
		return s.row(d.Stretches[0], d, x, from)
	}
	at = from.left + singleGap
	u := &upright{x: x + singleIndent, y: at, lead: path{{x, at}}}
	under = s.leaves(d, n, u, free{at, from.right}, s.open[lastOf(d)])
	for i := n; i > 0; i-- {
		stretch := d.Stretches[i-1]
		open, low := s.open[stretch], 0
		if i == 1 && len(joinedAt(d, 0)) == 0 {
			low, under = s.row(stretch, d, u.x, under)
			s.extend(u, low, open)
			return at, under
		}
		under.left = s.band(stretch, u.x, under.left)
		s.extend(u, under.left, open)
		beyond := false
		if i > 1 {
			beyond = s.open[d.Stretches[i-2]]
		} else if len(d.Serves) > 0 {
			beyond = open
		}
		under = s.leaves(d, i-1, u, under, beyond)
	}
	if len(d.Serves) > 0 {
		low := 0
		low, under = s.row(nil, d, u.x, under)
		s.extend(u, low, s.open[d.Stretches[0]])
	}
	return at, under
}

// leaves lays what comes in at a node of a duct: leaks, then other ducts, the
// last of the file's order first, as they are numbered.
func (s *single) leaves(d *shop.Duct, at int, u *upright, from free, beyond bool) free {
	list := joinedAt(d, at)
	for _, l := range d.Leaks {
		if l.Node == at {
			from.left = s.leak(l, u, from.left, beyond || slices.ContainsFunc(list, func(d *shop.Duct) bool { return s.open[lastOf(d)] }))
		}
	}
	return s.branches(u, list, beyond, from)
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
