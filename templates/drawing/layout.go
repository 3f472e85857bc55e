package drawing

import (
	"slices"
	"sync"

	"dustbook/plan/duct"
)

// usualSize is about what a plan takes, in bytes.
const usualSize = 48 << 10

// layout is a plan at one size with what stands on every plan of the shop. It
// is made once, and every plan of that size begins as a copy of it.
type layout struct {
	once  sync.Once
	sheet *sheet
}

// layouts are the layouts of all sizes.
type layouts [len(growths)]layout

// layout lays out a plan at a size, unless that is done.
func (b *Board) layout(step int, brief bool) *sheet {
	l := &b.layoutsOf(brief)[step]
	l.once.Do(func() { l.sheet = lay(b, growths[step], brief, nil) })
	return l.sheet
}

// layoutsOf are the layouts of plans that name everything, or of brief ones.
func (b *Board) layoutsOf(brief bool) *layouts {
	if brief {
		return &b.brief
	}
	return &b.whole
}

// layoutWithin is layout for a size that may turn out hopeless: then it says
// so, and the size is as if never tried.
func (b *Board) layoutWithin(step int, brief bool, wait *patience) (s *sheet, ok bool) {
	l := &b.layoutsOf(brief)[step]
	if l.sheet != nil {
		return l.sheet, true
	}
	if s = lay(b, growths[step], brief, wait); wait.lost() {
		return nil, false
	}
	l.once.Do(func() { l.sheet = s })
	return l.sheet, true
}

// lay lays out a plan at a growth.
func lay(b *Board, growth float64, brief bool, wait *patience) *sheet {
	s := &sheet{board: b, brief: brief, shop: b.plan.Shop, sys: b.plan.Shop.Units}
	s.scale, s.placed = scaleFor(s.shop, growth)
	s.layPipes()
	s.findDoors()
	s.placeCollectors()
	s.addStrips()
	s.placeFixtures()
	s.placeMachines()
	s.placeGates()
	s.placeLeaks()
	s.placeTaps()
	s.placeHoses()
	if s.wait = wait; wait != nil {
		wait.strained = s.strained
	}
	s.placeFixed()
	return s
}

// with is a copy of a layout for a use, or for the neutral plan. The layout
// stays as it is: a copy adds labels of its own and has its own state of each
// gate.
func (s *sheet) with(r *duct.Result) *sheet {
	c := *s
	c.find, c.wait, c.out = nil, nil, make([]byte, 0, usualSize)
	c.solids, c.strips, c.labels, c.words = slices.Clip(s.solids), slices.Clip(s.strips), slices.Clone(s.labels), slices.Clone(s.words)
	if c.setUse(r); c.use == nil {
		c.words, c.labels = slices.DeleteFunc(c.words, (*label).silent), slices.DeleteFunc(c.labels, (*label).silent)
		return &c
	}
	says := map[*label]*label{}
	c.gates, c.collectors = nil, nil
	for _, m := range s.gates {
		own, l := *m, *m.says
		own.state, own.onWay, own.says = c.stateOf(m.gate), c.open[m.gate.Stretch], &l
		f := l.forms[l.form]
		f.shown = c.gateSays(&own, own.state, f.most)
		l.forms, l.form = []form{f}, 0
		c.gates, says[m.says] = append(c.gates, &own), &l
	}
	for _, m := range s.collectors {
		own, l := *m, *m.says
		own.says, l.light = &l, !c.runs(m.collector)
		c.collectors, says[m.says] = append(c.collectors, &own), &l
	}
	for _, list := range [2][]*label{c.words, c.labels} {
		for i, l := range list {
			if own := says[l]; own != nil {
				list[i] = own
			}
		}
	}
	return &c
}
