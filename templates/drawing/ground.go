package drawing

// ground is the part of a field that matters for one label within an area,
// made ready for asking about many places.
type ground struct {
	area   box
	taken  bool
	blocks []box // solids and other labels with the room kept from them
	bars   []bar // strips the label may not lie on, and other labels' leaders
	solids []box
	labels []*label
	last   [8]int // on each side, the block that was in the way last: often it is again
	worst  int    // the same of what cost too much to lie on
}

// bar is a strip or a leader with the box outside which nothing touches it.
type bar struct {
	a, c   spot
	half   int // with the room around it
	reach  box
	cost   int
	level  bool // it runs along x or y
	leader bool
}

func newBar(a, c spot, half, cost int) bar {
	return bar{a: a, c: c, half: half, cost: cost, level: (a.x == c.x) != (a.y == c.y),
		reach: box{min(a.x, c.x) - half, min(a.y, c.y) - half, max(a.x, c.x) + half, max(a.y, c.y) + half}}
}

// barsOf adds the strips of a field as bars.
func (f *field) barsOf(list []bar) []bar {
	for i := range f.strips {
		s := &f.strips[i]
		list = append(list, newBar(s.a, s.c, s.half+closeBy, s.cost))
	}
	return list
}

// take makes the ground for a label within an area, from a field and its
// strips as bars: what no place and no leader there can touch is left out. No margin around a box or a leader is
// wider than gapAround.
func (g *ground) take(f *field, bars []bar, mine *label, area box) {
	g.area, g.taken, g.last, g.worst = area, true, [8]int{}, 0
	g.blocks, g.bars, g.solids, g.labels = g.blocks[:0], g.bars[:0], g.solids[:0], g.labels[:0]
	wide := area.grown(gapAround)
	for _, s := range f.solids {
		if wide.meets(s) {
			g.blocks, g.solids = append(g.blocks, s.grown(gapAround)), append(g.solids, s)
		}
	}
	for i := range bars {
		if one := &bars[i]; one.reach.meets(area) && !mine.owns(&f.strips[i]) {
			g.bars = append(g.bars, *one)
		}
	}
	for _, l := range f.labels {
		if l == mine {
			continue
		}
		near := wide.meets(l.box)
		if near {
			g.blocks = append(g.blocks, l.box.grown(gapAround))
		}
		if len(l.leader) > 1 {
			if one := newBar(l.leader[0], l.leader[1], closeBy, onLeader); one.reach.meets(area) {
				one.leader, near = true, true
				g.bars = append(g.bars, one)
			}
		}
		if near {
			g.labels = append(g.labels, l)
		}
	}
}

// free reports whether a box on a side lies on no solid box and no other label.
func (g *ground) free(b box, side int) bool {
	if last := g.last[side]; last < len(g.blocks) && g.blocks[last].meets(b) {
		return false
	}
	for i := range g.blocks {
		if g.blocks[i].meets(b) {
			g.last[side] = i
			return false
		}
	}
	return true
}

// under reports whether a box lies on a bar.
func (one *bar) under(b box) bool {
	return one.reach.meets(b) && (one.level || b.grown(one.half).crossed(one.a, one.c))
}

// lie is what lying on strips and leaders costs a box. It stops adding once
// the cost reaches a limit.
func (g *ground) lie(b box, limit int) int {
	if g.worst < len(g.bars) {
		if one := &g.bars[g.worst]; one.cost >= limit && one.under(b) {
			return one.cost
		}
	}
	cost := 0
	for i := range g.bars {
		if one := &g.bars[i]; one.under(b) {
			if cost += one.cost; cost >= limit {
				g.worst = i
				return cost
			}
		}
	}
	return cost
}

// run is what a leader costs on its way, beside being one. It stops adding
// once the cost reaches a limit.
func (g *ground) run(a, c spot, limit int) int {
	cost := 0
	for _, s := range g.solids {
		if s.crossed(a, c) && !s.holds(a) {
			if cost += leaderOver; cost >= limit {
				return cost
			}
		}
	}
	for _, l := range g.labels {
		if cost >= limit {
			return cost
		}
		if l.box.grown(closeBy).crossed(a, c) {
			cost += leaderOver
		}
		if len(l.leader) > 1 && cross(a, c, l.leader[0], l.leader[1]) {
			cost += leadersCross
		}
	}
	for i := range g.bars {
		if one := &g.bars[i]; !one.leader && cross(a, c, one.a, one.c) {
			cost += one.cost / 5
		}
	}
	return cost
}
