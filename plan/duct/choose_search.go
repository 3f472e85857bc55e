package duct

import (
	"context"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// mostSolves bounds the search for sizes that meet every use, missSolves each
// pass of that for the nearest miss: how often a network is solved.
const (
	mostSolves = 400_000
	missSolves = 60_000
)

// fullSolve is what a use solved in full, with its figures, counts for.
const fullSolve = 20

// chooser searches the sizes of one collector's ducts. Ducts stand in the
// order they are decided in: each after the one it empties into, so that what
// lies upstream is nearly on its own once the mains are decided.
type chooser struct {
	ctx    context.Context
	shop   *shop.Shop
	tree   *Tree
	ducts  []*shop.Duct
	inFile []int // places of the ducts in file order
	place  map[*shop.Duct]int
	sizes  [][]sizeOf
	uses   []*Use
	beyond []*Use
	bounds *bounds // nil where nothing may be left out

	best   *outcome
	least  float64 // score that an answer must reach
	rough  bool    // it only looks for the score, and roughly
	left   int     // solves of this pass; below nought they ran out
	proven bool
	tried  int
}

// sizeOf is one size a duct may have.
type sizeOf struct {
	nominal, bore unit.Length
	area          float64 // m² of sheet
}

func newChooser(ctx context.Context, s *shop.Shop, t *Tree, uses []*Use) *chooser {
	c := &chooser{ctx: ctx, shop: s, tree: t, place: map[*shop.Duct]int{}}
	for _, u := range uses {
		if len(u.Machines) == 0 || !slices.Contains(u.Collectors(s), t.Collector) {
			continue
		}
		if beyond(u) {
			c.beyond = append(c.beyond, u)
		} else {
			c.uses = append(c.uses, u)
		}
	}
	for _, d := range s.Ducts {
		if d.Collector == t.Collector {
			c.add(d)
		}
	}
	for _, d := range s.Ducts {
		if at, chosen := c.place[d]; chosen {
			c.inFile = append(c.inFile, at)
		}
	}
	falls := s.Junctions != "flow split"
	for _, filter := range States(t.Collector) {
		falls = falls && NewFan(t.Collector, t.State, filter).Falls()
	}
	if falls {
		c.bounds = newBounds(c)
	}
	return c
}

// add takes a duct in after what it empties into.
func (c *chooser) add(d *shop.Duct) {
	if _, done := c.place[d]; done || !d.Choose {
		return
	}
	for into := d.Into; into != nil; into = into.Into {
		c.add(into)
	}
	c.place[d] = len(c.ducts)
	c.ducts = append(c.ducts, d)
	var sizes []sizeOf
	for _, nominal := range StockSizes(c.shop.Units) {
		bore, _ := shop.Bore(d.Material, nominal)
		sizes = append(sizes, sizeOf{nominal, bore, sheetOf(d, bore)})
	}
	c.sizes = append(c.sizes, sizes)
}

// beyond reports whether no size meets a use: two of its machines share an
// end, one machine has two ports on one, or no duct serves a port that needs
// air.
func beyond(u *Use) bool {
	if apart(u.Machines) != nil {
		return true
	}
	return slices.ContainsFunc(u.ports(), func(p *shop.Port) bool {
		if p.Duct == nil {
			return true
		}
		served, _ := u.Served(p.Duct)
		return served != p && p.Flow > 0
	})
}

// search looks for sizes that meet every use. Where there are none it looks for
// the nearest miss: first for a score that is nearly the best, then for the
// cheapest sizes that reach it, then for whatever is still better.
func (c *chooser) search() {
	if c.proven = c.pass(1, false); c.best != nil {
		return
	}
	none := c.proven
	if c.bounds != nil {
		c.pass(0, true)
		if c.best != nil {
			c.pass(c.best.score, false)
		}
	}
	c.proven = c.pass(0, false) && none
}

// pass is one search for answers that reach a score. It reports whether it was
// complete.
func (c *chooser) pass(least float64, rough bool) bool {
	c.least, c.rough, c.left = least, rough, mostSolves
	if least < 1 {
		c.left = missSolves
	}
	open := c.fits(c.all())
	var known []bound
	if c.bounds != nil {
		known = make([]bound, len(c.uses))
		for u := range known {
			known[u].score = 1
		}
		for d := range c.ducts {
			c.bounds.narrow(d, open, c.threshold())
		}
	}
	if open.sound() {
		c.step(0, open, known)
	}
	return c.left >= 0 && c.ctx.Err() == nil
}

// choices say for each duct which of its sizes are still open.
type choices [][]bool

func (c *chooser) all() choices {
	open := make(choices, len(c.ducts))
	for d := range open {
		open[d] = make([]bool, len(c.sizes[d]))
		for i := range open[d] {
			open[d][i] = true
		}
	}
	return open
}

func (x choices) clone() choices {
	copied := make(choices, len(x))
	for d := range x {
		copied[d] = slices.Clone(x[d])
	}
	return copied
}

// only leaves one size of a duct open.
func (x choices) only(d, size int) {
	clear(x[d])
	x[d][size] = true
}

// ends are the smallest and the largest size of a duct that is open; -1 where
// none is.
func (x choices) ends(d int) (low, high int) {
	low, high = slices.Index(x[d], true), len(x[d])-1
	for high >= 0 && !x[d][high] {
		high--
	}
	return low, high
}

// fits takes out the sizes that would be wider upstream than downstream,
// whatever else is chosen.
func (c *chooser) fits(open choices) choices {
	for again := true; again; {
		again = false
		for d := range c.ducts {
			low, high := c.limits(d, open)
			for i, size := range c.sizes[d] {
				if open[d][i] && (unit.Compare(float64(size.nominal), float64(low)) < 0 || unit.Compare(float64(size.nominal), float64(high)) > 0) {
					open[d][i], again = false, true
				}
			}
		}
	}
	return open
}

// limits are the sizes that a duct must lie between: the widest of what
// empties into it, and what it empties into.
func (c *chooser) limits(d int, open choices) (low, high unit.Length) {
	size := func(other *shop.Duct, widest bool) unit.Length {
		at, chosen := c.place[other]
		if !chosen {
			return other.Size
		}
		low, high := open.ends(at)
		switch {
		case low < 0:
			return 0
		case widest:
			return c.sizes[at][high].nominal
		}
		return c.sizes[at][low].nominal
	}
	high = c.tree.Collector.Inlet
	if into := c.ducts[d].Into; into != nil {
		high = size(into, true)
	}
	for _, other := range c.ducts[d].Joined {
		low = max(low, size(other, false))
	}
	return low, high
}

// step decides the ducts from one on.
func (c *chooser) step(d int, open choices, known []bound) {
	if c.left < 0 || c.ctx.Err() != nil {
		return
	}
	if d == len(c.ducts) {
		at := make([]int, d)
		for i := range at {
			at[i], _ = open.ends(i)
		}
		c.left -= fullSolve * len(c.uses)
		if c.rough {
			known = nil // it does not look at relief closely
		}
		if o := c.try(at, known); o != nil && o.score >= c.least && c.better(o, c.best) {
			c.best = o
		}
		return
	}
	for _, size := range c.order(d, open) {
		next := open.clone()
		next.only(d, size)
		if c.fits(next); !next.sound() {
			continue
		}
		if c.bounds == nil {
			if c.hopeful(next, nil) {
				c.step(d+1, next, nil)
			}
			continue
		}
		now := c.bounds.update(known, d, next)
		if c.hopeful(next, now) && c.bounds.follow(d, next, c.threshold()) && c.hopeful(next, now) {
			c.step(d+1, next, now)
		}
	}
}

// sound reports whether every duct has a size left.
func (x choices) sound() bool {
	for d := range x {
		if low, _ := x.ends(d); low < 0 {
			return false
		}
	}
	return true
}

// slack is how far a bound may be off by rounding: figures of a small port
// stand on the sixth digit of the fan's.
const slack = 1e-4

// gain is by how much a score must be better to count where a search only
// looks for the score.
const gain = 1e-3

// threshold is the score below which nothing is of use, less what rounding may
// do.
func (c *chooser) threshold() float64 {
	switch {
	case c.best == nil:
		return c.least - slack
	case c.rough:
		return c.best.score + gain
	}
	return max(c.least, c.best.score) - slack
}

// hopeful reports whether what is open may still hold a better answer, by what
// is known of the uses.
func (c *chooser) hopeful(open choices, known []bound) bool {
	score, gates := 1.0, 0
	for _, b := range known {
		score, gates = min(score, b.score), gates+b.gates
	}
	if score < c.threshold() {
		return false
	}
	if c.best == nil || c.rough || c.least == 0 {
		return true // a better score beats any cost
	}
	return c.sheet(open)+float64(gates)*float64(reliefPrice) <= c.best.cost*(1+slack)
}

// sheet is the least sheet of what is open.
func (c *chooser) sheet(open choices) (sum float64) {
	for d := range open {
		low, _ := open.ends(d)
		sum += c.sizes[d][low].area
	}
	return sum
}

// order lists the sizes of a duct that are open: the smallest first where all
// can be met, else the one with the best bound first.
func (c *chooser) order(d int, open choices) (list []int) {
	scores := map[int]float64{}
	for size, is := range open[d] {
		if !is {
			continue
		}
		list = append(list, size)
		if c.least < 1 && c.bounds != nil {
			one := open.clone()
			one.only(d, size)
			if c.fits(one); one.sound() {
				scores[size] = c.bounds.score(d, one)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return unit.Compare(scores[b], scores[a]) })
	return list
}
