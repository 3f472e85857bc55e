package duct

import (
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// form is a part for every size of its own duct and of the one below.
type form struct {
	own, below int // places of the ducts; -1 where the size is fixed
	edges      [][]Edge
	shut       [][]float64 // of its gates, by own size
	numbers    []int
}

// boundUse is a use with the places that count in it.
type boundUse struct {
	open   []bool
	stands []int
	spots  []spot
}

// spot is a group of places that the same ways lead through.
type spot struct {
	ways   []bool // parts whose loss hurts
	counts []count
	above  []int // gates upstream that are shut
}

// count is one figure to reach: a flow, or a speed in a bore.
type count struct {
	part  int
	need  float64
	bore  unit.Length // fixed; nought where it is the duct's
	duct  int         // -1: a flow
	speed bool
}

func newBounds(c *chooser) *bounds {
	b := &bounds{c: c, net: &Network{}, solver: NewSolver(&Network{})}
	states := States(c.tree.Collector)
	b.fan = NewFan(c.tree.Collector, c.tree.State, states[len(states)-1])
	first := c.sized(make([]int, len(c.ducts)))
	n := len(first.parts)
	b.net.Edges = make([]Edge, n)
	b.low, b.high = make([]Edge, n), make([]Edge, n)
	b.lowShut, b.highShut = make([][]float64, n), make([][]float64, n)
	for i := range first.parts {
		b.forms = append(b.forms, b.formOf(first, &first.parts[i]))
	}
	b.usesOf = make([][]int, len(c.ducts))
	x := newTrial(first)
	for i, u := range c.uses {
		b.uses = append(b.uses, b.useOf(x, u, i))
	}
	return b
}

// formOf makes a part anew for every size of its duct and the one below.
func (b *bounds) formOf(t *Tree, p *part) form {
	f := form{own: -1, below: -1, numbers: p.numbers}
	var owner *shop.Duct
	switch {
	case p.end != nil:
		owner = p.end
	case p.stretch != nil:
		owner = p.stretch.Duct
		if into := owner.Into; p.stretch.Last() && into != nil {
			f.below = b.placeOf(into)
		}
	}
	if owner != nil {
		f.own = b.placeOf(owner)
	}
	for own := range b.count(f.own) {
		as := alteration{bore: map[*shop.Stretch]unit.Length{}, hose: map[*shop.Duct]*shop.Hose{}}
		b.take(&as, f.own, own)
		var row []Edge
		for below := range b.count(f.below) {
			b.take(&as, f.below, below)
			w := &Tree{Collector: t.Collector, State: t.State, shop: t.shop, how: t.how, as: as, byEdge: map[*shop.Stretch]int{}, byEnd: map[*shop.Duct]int{}, number: t.number}
			switch {
			case p.end != nil:
				w.addEnd(p.end)
			case p.stretch != nil:
				w.addStretch(p.stretch)
			default:
				w.add(part{edge: p.edge})
			}
			made := w.parts[0]
			made.edge.Down = p.edge.Down
			row = append(row, made.edge)
			if below == 0 {
				f.shut = append(f.shut, made.gates)
			}
		}
		f.edges = append(f.edges, row)
	}
	return f
}

func (b *bounds) placeOf(d *shop.Duct) int {
	if at, chosen := b.c.place[d]; chosen {
		return at
	}
	return -1
}

// count is how many sizes a duct may have; one where it is fixed.
func (b *bounds) count(d int) int {
	if d < 0 {
		return 1
	}
	return len(b.c.sizes[d])
}

func (b *bounds) take(as *alteration, d, size int) {
	if d >= 0 {
		as.size(b.c.ducts[d], b.c.sizes[d][size].bore)
	}
}

// useOf finds the places that count in a use.
func (b *bounds) useOf(x *trial, u *Use, number int) boundUse {
	v := boundUse{open: make([]bool, len(x.tree.gates)), stands: make([]int, len(b.forms))}
	for g := range u.Open {
		if at, here := x.tree.number[g]; here {
			v.open[at] = true
		}
	}
	members := x.members(u.Machines)
	for _, m := range members {
		for _, p := range m.ports {
			v.stands[p.part] = p.form
			if p.port.Flow > 0 {
				ways := make([]bool, len(b.forms))
				b.down(ways, p.part)
				v.add(ways, count{part: p.part, need: float64(p.port.Flow), duct: -1}, nil)
			}
		}
		for i := range m.path {
			b.addPassed(&v, x, members, &m.path[i])
			if d := b.placeOf(m.path[i].stretch.Duct); d >= 0 && !slices.Contains(b.usesOf[d], number) {
				b.usesOf[d] = append(b.usesOf[d], number)
			}
		}
	}
	return v
}

// addPassed adds a stretch that dust passes, and its hose.
func (b *bounds) addPassed(v *boundUse, x *trial, members []*member, at *passed) {
	d := at.stretch.Duct
	need, own := float64(needOf(members, at)), b.placeOf(d)
	ways := make([]bool, len(b.forms))
	b.down(ways, at.part)
	b.up(ways, at.part)
	var above []int
	for g := range x.tree.gates {
		if !v.open[g] && x.feeds(g, at) {
			above = append(above, g)
		}
	}
	c := count{part: at.part, need: need, duct: own, speed: true}
	if own < 0 {
		c.bore = d.Bore
	}
	v.add(ways, c, above)
	if at.hose >= 0 {
		ways := make([]bool, len(b.forms))
		b.down(ways, at.hose)
		c := count{part: at.hose, need: need, duct: own, speed: true}
		if d.Hose.Size > 0 {
			c.bore, c.duct = d.Hose.Size, -1
		}
		v.add(ways, c, nil)
	}
}

// down marks a part and all it empties into; up all that feeds it.
func (b *bounds) down(ways []bool, part int) {
	for ; part >= 0; part = b.forms[part].edges[0][0].Down {
		ways[part] = true
	}
}

func (b *bounds) up(ways []bool, part int) {
	feeds := make([]bool, len(b.forms))
	feeds[part] = true
	for i := part; i >= 0; i-- {
		if down := b.forms[i].edges[0][0].Down; down >= 0 && feeds[down] {
			feeds[i], ways[i] = true, true
		}
	}
}

// add puts a figure to the spot with the same ways, or a new one.
func (v *boundUse) add(ways []bool, c count, above []int) {
	for i := range v.spots {
		if slices.Equal(v.spots[i].ways, ways) && slices.Equal(v.spots[i].above, above) {
			v.spots[i].counts = append(v.spots[i].counts, c)
			return
		}
	}
	v.spots = append(v.spots, spot{ways, []count{c}, above})
}
