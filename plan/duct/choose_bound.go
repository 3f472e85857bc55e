package duct

import (
	"math"
	"slices"

	"dustbook/plan/air"
	"dustbook/plan/unit"
)

// bounds say how well a use can fare at best while sizes are still open. On a
// falling fan, with losses that do not hang on how flows split, the flow at a
// place grows where a loss on its way in or out falls, and where a loss on any
// other way grows. So for each place that counts, the ways through it are taken
// with the least loss that open sizes have, all others with the greatest.
type bounds struct {
	c      *chooser
	fan    *Fan // with the filter in its last state, which leaves the least air
	forms  []form
	uses   []boundUse
	usesOf [][]int // uses whose dust passes a duct

	net      *Network
	solver   *Solver
	low      []Edge // of parts, with the least loss, and with the greatest
	high     []Edge
	lowShut  [][]float64
	highShut [][]float64
}

// bound is the best that a use may come to, and how many gates of relief it
// then needs at least.
type bound struct {
	score float64
	gates int
}

// set finds the least and greatest losses of every part for what is open.
func (b *bounds) set(open choices) {
	for i := range b.forms {
		f := &b.forms[i]
		low, high := b.low[i], b.high[i]
		low.Quad, high.Quad = math.Inf(1), math.Inf(-1)
		b.lowShut[i], b.highShut[i] = b.lowShut[i][:0], b.highShut[i][:0]
		from, to := b.ends(open, f.own)
		for own := from; own <= to; own++ {
			if f.own >= 0 && !open[f.own][own] {
				continue
			}
			f.spread(b, open, own, &low, &high)
		}
		small, large := &f.edges[from][0], &f.edges[to][0]
		low.Down, low.Leaf, low.Fric, low.Re, low.Rel, low.Root = large.Down, large.Leaf, large.Fric, large.Re, large.Rel, large.Root
		high.Down, high.Leaf, high.Fric, high.Re, high.Rel, high.Root = small.Down, small.Leaf, small.Fric, small.Re, small.Rel, small.Root
		b.low[i], b.high[i] = low, high
		for g := range f.numbers {
			least, most := math.Inf(1), 0.0
			for own := from; own <= to; own++ {
				least, most = min(least, f.shut[own][g]), max(most, f.shut[own][g])
			}
			b.lowShut[i], b.highShut[i] = append(b.lowShut[i], least), append(b.highShut[i], most)
		}
	}
}

func (b *bounds) ends(open choices, d int) (from, to int) {
	if d < 0 {
		return 0, 0
	}
	return open.ends(d)
}

// spread widens the least and the greatest fixed loss of a part by those of
// one own size.
func (f *form) spread(b *bounds, open choices, own int, low, high *Edge) {
	for below := range f.edges[own] {
		if f.below >= 0 && (!open[f.below][below] || f.own >= 0 && b.c.sizes[f.own][own].nominal > b.c.sizes[f.below][below].nominal) {
			continue
		}
		quad := f.edges[own][below].Quad
		low.Quad, high.Quad = min(low.Quad, quad), max(high.Quad, quad)
	}
}

// bestOf is the best that a use may come to; set was called for what is open.
func (b *bounds) bestOf(u *boundUse, open choices) bound {
	best := bound{score: 1}
	captured := true
	var slow []*spot
	for i := range u.spots {
		s := &u.spots[i]
		share := b.reach(u, s, open, nil)
		if share >= 1-slack {
			continue
		}
		best.score = min(best.score, share)
		captured = captured && s.speeds()
		slow = append(slow, s)
	}
	if best.score == 1 || !captured {
		return best
	}
	if gates := b.relief(u, slow, open); gates > 0 {
		return bound{score: 1, gates: gates}
	}
	return best
}

// relief is the least number of gates with which a use that is too slow may
// carry and still be captured; nought where none of up to mostRelief may.
func (b *bounds) relief(u *boundUse, slow []*spot, open choices) int {
	var above []int
	for _, g := range slow[0].above {
		if b.captured(u, open, []int{g}) {
			above = append(above, g)
		}
	}
	// what lies above one slow place may not be enough for another
	for _, s := range slow[1:] {
		for _, g := range s.above {
			if !slices.Contains(above, g) && b.captured(u, open, []int{g}) {
				above = append(above, g)
			}
		}
	}
	slowWith := func(relief []int) bool {
		return slices.ContainsFunc(slow, func(s *spot) bool { return b.reach(u, s, open, relief) < 1-slack })
	}
	for _, s := range slow {
		// a gate that lies above another place alone takes air from this one
		own := slices.DeleteFunc(slices.Clone(above), func(g int) bool { return !slices.Contains(s.above, g) })
		if len(own) == 0 || b.reach(u, s, open, own) < 1-slack {
			return 0
		}
	}
	most := min(mostRelief, len(above))
	if b.c.least < 1 {
		most = 1 // not worth a closer look
	}
	for size := 1; size <= most; size++ {
		picked := make([]int, size)
		for at, more := first(size), true; more; more = next(at, len(above)) {
			for i, place := range at {
				picked[i] = above[place]
			}
			if !slowWith(picked) && (size == 1 || b.captured(u, open, picked)) {
				return size
			}
		}
	}
	if b.c.least < 1 && !b.c.rough {
		return most + 1
	}
	return 0
}

// captured reports whether every port of a use may get its need with gates
// open as relief.
func (b *bounds) captured(u *boundUse, open choices, relief []int) bool {
	for i := range u.spots {
		if s := &u.spots[i]; !s.speeds() && b.reach(u, s, open, relief) < 1-slack {
			return false
		}
	}
	return true
}

// speeds reports whether a spot asks for speeds alone.
func (s *spot) speeds() bool {
	return !slices.ContainsFunc(s.counts, func(c count) bool { return !c.speed })
}

// reach is the least share of its need that a place of a spot may reach, with
// gates open as relief.
func (b *bounds) reach(u *boundUse, s *spot, open choices, relief []int) float64 {
	for i := range b.forms {
		e, shut := &b.high[i], b.highShut[i]
		if s.ways[i] {
			e, shut = &b.low[i], b.lowShut[i]
		}
		edge := *e
		edge.Dead = false
		for k, g := range b.forms[i].numbers {
			switch {
			case u.open[g] || slices.Contains(relief, g):
			case math.IsInf(shut[k], 1):
				edge.Dead = true
			default:
				edge.Quad += shut[k]
			}
		}
		b.net.Edges[i] = edge
	}
	b.net.MarkDead()
	b.c.left--
	b.solver.Take(b.net)
	_, high := b.fan.Range()
	if _, _, ok := b.solver.Meet(b.fan, high/2); !ok {
		return 1
	}
	share := 1.0
	for _, c := range s.counts {
		got := b.solver.Flow[c.part]
		if c.speed {
			bore := c.bore
			if bore == 0 {
				low, _ := open.ends(c.duct)
				bore = b.c.sizes[c.duct][low].bore
			}
			got = float64(air.SpeedIn(unit.Flow(got), bore))
		}
		share = min(share, got/c.need)
	}
	return share
}

// update bounds anew the uses that pass a duct whose sizes changed.
func (b *bounds) update(known []bound, d int, open choices) []bound {
	now := slices.Clone(known)
	b.set(open)
	for _, u := range b.usesOf[d] {
		now[u] = b.bestOf(&b.uses[u], open)
	}
	return now
}

// score is the bound of the uses that pass a duct.
func (b *bounds) score(d int, open choices) float64 {
	score := 1.0
	b.set(open)
	for _, u := range b.usesOf[d] {
		score = min(score, b.bestOf(&b.uses[u], open).score)
	}
	return score
}

// narrow takes out the sizes of a duct with which a use cannot reach a score.
func (b *bounds) narrow(d int, open choices, least float64) {
	for size, is := range open[d] {
		if !is {
			continue
		}
		one := open.clone()
		one.only(d, size)
		if b.c.fits(one); !one.sound() || b.score(d, one) < least {
			open[d][size] = false
		}
	}
}

// follow narrows the ducts still to be decided that share a use with one just
// decided. It reports false where one of them has no size left.
func (b *bounds) follow(d int, open choices, least float64) bool {
	for other := d + 1; other < len(open); other++ {
		if slices.ContainsFunc(b.usesOf[other], func(u int) bool { return slices.Contains(b.usesOf[d], u) }) {
			if b.narrow(other, open, least); !slices.Contains(open[other], true) {
				return false
			}
		}
	}
	return true
}
