package drawing

import (
	"strconv"
	"strings"

	"dustbook/content"
	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// wording is the words of the drawings.
var wording = content.WordsIn(content.English)

// Isometric draws one isometric as Board.Isometric does, without links.
func Isometric(p *plan.Plan, c *shop.Collector, id string) SVG { return NewBoard(p).Isometric(c, id) }

// Isometric draws the ducts of a collector in true isometric, 30 degrees, from
// their routes: ducts to width, those that take in others edged heavily;
// at each stretch its number (see InOrder), size and length; rises and drops
// as they are; gates as marks; machines as labelled ends. Of two ducts that
// cross without joining, the one nearer to the eye is drawn through, with a
// gap in the other. Floors are outlined faintly. Ducts without a route stand
// below as a tree in order, to no scale. A machine leads to its use.
func (b *Board) Isometric(c *shop.Collector, id string) SVG {
	svg, _ := b.IsometricBare(c, id)
	return svg
}

// IsometricBare draws an isometric and counts the stretches that had no room
// for their length, which is left out there.
func (b *Board) IsometricBare(c *shop.Collector, id string) (svg SVG, bare int) {
	s := b.isometric(c)
	return s.frame(id, wording.Text("drawing.iso.title", drawable(c.Name)), s.desc(), margin), s.bare()
}

// isometric is one collector's ducts while they are drawn.
type isometric struct {
	*sheet
	collector *shop.Collector
	eye       eye
	floors    []path
	ends      []*endMark
	can       *canMark
}

// isometric is the drawing at the size that fits its labels.
func (b *Board) isometric(c *shop.Collector) *isometric {
	eye, turned := bestEye(b.plan.Shop, c)
	laid := map[int]*isometric{}
	step := growthFor(func(step int, wait *patience) (int, bool) {
		s := b.newIsometric(c, eye, growths[step], wait)
		if wait.lost() {
			return 0, false
		}
		laid[step] = s
		return s.strain(), true
	})
	best := laid[step]
	best.draw(turned)
	return best
}

func (b *Board) newIsometric(c *shop.Collector, from eye, growth float64, wait *patience) *isometric {
	s := &isometric{sheet: &sheet{board: b, shop: b.plan.Shop, sys: b.plan.Shop.Units}, collector: c, eye: from}
	if s.wait = wait; wait != nil {
		wait.strained = s.strained
	}
	s.numbers = numbering(s.shop, c)
	s.eye.fit(s.shop, c, growth)
	s.scale = scale{units: s.eye.units}
	s.wider = widening(s.shop, s.scale)
	for _, d := range ductsOf(s.shop, c) {
		if len(d.Route) > 1 {
			s.pipes = append(s.pipes, s.eye.pipe(d, s.wider))
		}
	}
	s.closeJoins()
	s.findFloors()
	s.placeCan()
	s.addStripes()
	s.placeGates()
	s.placeLeaks()
	s.placeTaps()
	if s.placeEnds(); !wait.lost() {
		s.placeWords()
	}
	return s
}

// closeJoins lets a route that ends a little beside the duct it joins reach
// its middle.
func (s *sheet) closeJoins() {
	for _, p := range s.pipes {
		into := s.pipeOf(p.duct.Into)
		if into == nil {
			continue
		}
		if at, _ := into.path.at(into.planAt(p.duct.JoinAt)); span(at, p.path.end()) > 10 {
			p.path = append(p.path, at)
			p.pieces[len(p.pieces)-1].to = p.path.long()
		}
	}
}

// findFloors are the floors of the rooms in which the ducts run or end.
func (s *isometric) findFloors() {
	if len(s.pipes) == 0 {
		return
	}
	for _, r := range s.shop.Rooms {
		if !holdsAny(r, s.shop, s.collector) {
			continue
		}
		var o []spot
		for _, p := range r.Outline {
			o = append(o, s.eye.spot(shop.Spot{X: p.X, Y: p.Y}))
		}
		if o = tidy(o); len(o) > 2 {
			s.floors = append(s.floors, o)
		}
	}
}

// bare counts the stretches whose label leaves the length out.
func (s *isometric) bare() int {
	count := 0
	for _, l := range s.words {
		if l.short() {
			count++
		}
	}
	return count
}

// strain counts the labels that lie on a duct, stand far off or leave the
// length out.
func (s *isometric) strain() int {
	count := 0
	for _, l := range s.labels {
		if s.strained(l) {
			count++
		}
	}
	return count
}

// strained reports whether a label lies on a duct, stands far off or leaves
// the length out.
func (s *isometric) strained(l *label) bool {
	return l.short() || l.far() || s.lie(l.box, l, never) >= floorCost*3
}

// desc says in words what the drawing shows.
func (s *isometric) desc() string {
	list := InOrder(s.shop, s.collector)
	if len(list) == 0 {
		return wording.Text("drawing.iso.none", drawable(s.collector.Name))
	}
	var parts []string
	for _, stretch := range list {
		one := strconv.Itoa(s.numbers[stretch]) + " " + drawable(stretch.Name()) + ", " + s.lengthOf(stretch)
		for _, g := range stretch.Gates {
			one += ", " + wording.Text("drawing.iso.gate", drawable(g.Name))
		}
		if stretch.Number == 1 {
			for _, port := range stretch.Duct.Serves {
				one += ", " + wording.Text("drawing.iso.from", drawable(portName(port)))
			}
		}
		parts = append(parts, one)
	}
	return wording.Text("drawing.iso.desc", strings.Join(parts, "; "))
}

// lengthOf is a stretch's size and length: "5 in · 12 ft".
func (s *sheet) lengthOf(stretch *shop.Stretch) string {
	return s.sizeOf(stretch.Duct) + " · " + s.longOf(stretch)
}

// longOf is a stretch's length: "12 ft".
func (s *sheet) longOf(stretch *shop.Stretch) string {
	return unit.Run.Print(s.sys, unit.Length(unit.Six(float64(stretch.Length()))))
}

// portName is a machine's name, with its port where it has several.
func portName(p *shop.Port) string {
	if len(p.Machine.Ports) > 1 {
		return p.Full()
	}
	return p.Machine.Name
}
