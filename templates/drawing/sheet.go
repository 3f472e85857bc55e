package drawing

import (
	"slices"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// sheet is one plan while it is drawn.
type sheet struct {
	pen
	field
	scale   scale
	placed  bool // something has a place
	board   *Board
	shop    *shop.Shop
	sys     unit.System
	use     *duct.Use      // nil on the neutral plan
	results []*duct.Result // of the use, one for each collector that runs
	why     string         // why the use has no figures at all; empty where it has
	wider   float64        // by how much ducts are drawn wider than to scale

	pipes      []*pipe // ducts with a route, in file order
	doors      []door
	machines   []*machineMark
	collectors []*collectorMark
	gates      []*gateMark
	leaks      []*leakMark
	hoses      []*hoseMark
	fixtures   []*fixtureMark
	taps       []*tapMark
	words      []*label // every label that is not a machine
	open       map[*shop.Stretch]bool
	complete   bool // the words of this plan alone are among them
	brief      bool // drops and their gates are not named: the machine beside them is
	known      usedSigns
	numbers    map[*shop.Stretch]int // of the stretches on an isometric; nil on a plan
}

// setUse takes over the use to be drawn.
func (s *sheet) setUse(r *duct.Result) {
	runs := map[*shop.Collector]bool{}
	if r != nil {
		s.use, s.results = r.Use, together(s.shop, r)
		for _, one := range s.results {
			runs[one.Collector] = true
		}
		if r.Collector == nil {
			s.why = wording.Because(r.Why)
		}
	}
	s.open = openStretches(s.shop, s.use, runs)
}

// together are the results of the use on all collectors it runs, with the
// filter in the same state where there is one.
func together(s *shop.Shop, r *duct.Result) []*duct.Result {
	var list []*duct.Result
	for _, c := range s.Collectors {
		if c == r.Collector {
			list = append(list, r)
			continue
		}
		for _, other := range r.Use.Results {
			if other.Collector == c && (other.Filter == r.Filter || other.Filter == duct.NoFilter || r.Filter == duct.NoFilter && other.Filter == duct.Clean) {
				list = append(list, other)
				break
			}
		}
	}
	return list
}

// runs reports whether a collector runs in the use drawn.
func (s *sheet) runs(c *shop.Collector) bool { return s.resultOf(c) != nil }

func (s *sheet) resultOf(c *shop.Collector) *duct.Result {
	for _, r := range s.results {
		if r.Collector == c {
			return r
		}
	}
	return nil
}

// inUse reports whether a machine runs in the use drawn.
func (s *sheet) inUse(m *shop.Machine) bool {
	return s.use != nil && slices.Contains(s.use.Machines, m)
}

// pathOf is where the use of a machine alone is shown; empty where that is
// here, or nowhere.
func (s *sheet) pathOf(m *shop.Machine) string {
	u := s.board.plan.Air.Alone(m)
	if u == s.use {
		return ""
	}
	return s.board.paths.of(u)
}

// layPipes lays every duct that has a route.
func (s *sheet) layPipes() {
	s.wider = widening(s.shop, s.scale)
	for _, d := range s.shop.Ducts {
		if len(d.Route) > 1 {
			s.pipes = append(s.pipes, newPipe(d, s.scale, s.wider))
		}
	}
	s.closeJoins()
}

// pipeOf is the pipe of a duct; nil where it has no route.
func (s *sheet) pipeOf(d *shop.Duct) *pipe {
	for _, p := range s.pipes {
		if p.duct == d {
			return p
		}
	}
	return nil
}

// Costs of writing on things, in tenths of a unit of distance.
const (
	pipeCost = 1200
	doorCost = 500
	bandCost = 900
	linkCost = 500
	hoseCost = 500
)

// addStrips makes walls, doors and ducts cost labels that lie on them.
func (s *sheet) addStrips() {
	for _, r := range s.shop.Rooms {
		o := s.outline(r)
		for i := range o {
			s.strips = append(s.strips, strip{a: o[i], c: o[(i+1)%len(o)], half: wallThick / 2, cost: wallCost, wall: true})
		}
	}
	for _, w := range s.shop.Walls {
		a, c := s.band(w)
		s.strips = append(s.strips, strip{a: a, c: c, half: wallThick / 2, cost: bandCost, wall: true})
	}
	for _, d := range s.doors {
		s.strips = append(s.strips, strip{a: d.hinge, c: d.tip, half: 10, cost: doorCost}, strip{a: d.tip, c: d.jamb, half: 30, cost: doorCost})
	}
	for _, p := range s.pipes {
		for i := 1; i < len(p.path); i++ {
			s.strips = append(s.strips, strip{a: p.path[i-1], c: p.path[i], half: p.width/2 + edge, cost: pipeCost, of: p.duct})
		}
	}
}
