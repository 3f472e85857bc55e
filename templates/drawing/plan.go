package drawing

import (
	"strconv"
	"strings"
	"sync"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// margin around a drawing, in tenths.
const margin = 140

// Board draws one shop. Every use starts at the size the neutral plan takes,
// so the board draws that one once and keeps it. Any number of goroutines may
// draw on a board.
type Board struct {
	plan    *plan.Plan
	paths   paths
	whole   layouts                     // that name everything
	brief   layouts                     // that leave out what the machine beside it says
	neutral func() (s *sheet, step int) // drawn at the first call, only read after it
}

// paths says where the sheet of a use is; nil, or an empty path, where none is.
type paths func(*duct.Use) string

// of is the path of a use; empty where it has none.
func (p paths) of(u *duct.Use) string {
	if p == nil || u == nil {
		return ""
	}
	return p(u)
}

// NewBoard is a board for the drawings of a shop.
func NewBoard(p *plan.Plan) *Board {
	b := &Board{plan: p}
	b.neutral = sync.OnceValues(func() (*sheet, int) {
		s, step := b.neutralSize()
		s.draw()
		return s, step
	})
	return b
}

// LinkUses makes what stands for a use in a drawing lead to the sheet at its
// path; an empty path leads nowhere. It comes before the first drawing.
func (b *Board) LinkUses(path func(*duct.Use) string) { b.paths = path }

// Plan draws one plan as Board.Plan does, where no other of the shop is wanted.
func Plan(p *plan.Plan, r *duct.Result, id string) SVG { return NewBoard(p).Plan(r, id) }

// Plan draws the floor plan. With a result it shows that use: the open way
// filled, gates open and shut, flows and speeds at the ports and where dust
// may settle; on every collector the use runs, with the filter in the same
// state. With nil it is the neutral plan with every size. What the shop file
// gives no route for is drawn as a tree below, to no scale. The id is the
// start of every id in the drawing; no two drawings of a page share it.
func (b *Board) Plan(r *duct.Result, id string) SVG {
	return b.sheet(r).frame(id, planTitle(b.plan, r), planDesc(b.plan, r), margin)
}

// draw draws the whole plan, from the floor up.
func (s *sheet) draw() {
	s.drawWalls()
	for _, m := range s.machines {
		s.drawLinks(m)
	}
	s.drawDucts()
	for _, h := range s.hoses {
		s.drawHose(h)
	}
	for _, m := range s.collectors {
		s.drawCollector(m)
	}
	for _, m := range s.machines {
		s.drawMachine(m)
	}
	s.drawRisers()
	s.drawOnDucts()
	for _, m := range s.fixtures {
		s.drawFixture(m)
	}
	s.drawArrows()
	s.drawLabels(&s.pen, s.words)
	s.drawSizes()
	s.drawTree(s.shop.Collectors)
	s.drawFoot()
	s.apart()
}

// drawOnDucts draws what sits on ducts: gates, leaks and taps.
func (s *sheet) drawOnDucts() {
	s.drawGates()
	for _, m := range s.leaks {
		s.drawLeak(m)
	}
	for _, m := range s.taps {
		s.drawTap(m)
	}
}

// planTitle names the drawing.
func planTitle(p *plan.Plan, r *duct.Result) string {
	switch {
	case r == nil:
		return wording.Text("drawing.plan.title", p.Shop.Name)
	case r.Filter == duct.NoFilter:
		return wording.Text("drawing.plan.title-use", p.Shop.Name, r.Use.Name)
	}
	return wording.Text("drawing.plan.title-filter", p.Shop.Name, r.Use.Name, r.Filter)
}

// planDesc says in words what the plan shows.
func planDesc(p *plan.Plan, r *duct.Result) string {
	s := p.Shop
	name := func(g *shop.Gate) string { return g.Name }
	says := []string{wording.Text("drawing.plan.desc", listed(s.Rooms, func(r *shop.Room) string { return r.Name }),
		listed(s.Machines, func(m *shop.Machine) string { return m.Name }), listed(s.Collectors, func(c *shop.Collector) string { return c.Name }))}
	if len(s.Stops) > 0 {
		says = append(says, wording.Text("drawing.plan.stops", listed(s.Stops, func(b *shop.StopButton) string { return b.Name })))
	}
	if n := len(s.Extinguishers); n > 0 {
		says = append(says, wording.Text("drawing.plan.extinguishers", strconv.Itoa(n)))
	}
	if r == nil {
		says = append(says, wording.Text("drawing.plan.ducts", listed(s.Ducts, func(d *shop.Duct) string { return d.Name }), listed(s.Gates, name)))
		if len(s.Taps) > 0 {
			says = append(says, wording.Text("drawing.plan.taps", listed(s.Taps, func(t *shop.Tap) string { return t.Name })))
		}
		return strings.Join(says, " ")
	}
	var open, shut []*shop.Gate
	for _, g := range s.Gates {
		if r.Use.Open[g] {
			open = append(open, g)
		} else {
			shut = append(shut, g)
		}
	}
	says = append(says, wording.Text("drawing.plan.gates", listed(open, name), listed(shut, name)))
	if !r.OnCurve {
		says = append(says, wording.Text("drawing.off", wording.Because(r.Why)))
	}
	return strings.Join(says, " ")
}

// listed is a list of names with commas; "none" where it is empty.
func listed[T any](list []T, name func(T) string) string {
	if len(list) == 0 {
		return wording.Text("drawing.none")
	}
	names := make([]string, len(list))
	for i, item := range list {
		names[i] = drawable(name(item))
	}
	return strings.Join(names, ", ")
}
