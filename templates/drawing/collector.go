package drawing

import "dustbook/plan/shop"

// collectorMark is a collector as drawn: a round body with its outlet inside.
type collectorMark struct {
	collector *shop.Collector
	at        spot
	radius    int
	says      *label
}

// placeCollectors puts every collector that has a place: its own, else the
// end of the first routed duct that empties into it.
func (s *sheet) placeCollectors() {
	radius := min(max(s.scale.long(0.5), 220), 330)
	for _, c := range s.shop.Collectors {
		at, ok := s.collectorPlace(c)
		if !ok {
			continue
		}
		s.collectors = append(s.collectors, &collectorMark{collector: c, at: at, radius: radius})
		s.solids = append(s.solids, around(at, radius, radius))
	}
}

func (s *sheet) collectorPlace(c *shop.Collector) (spot, bool) {
	if c.Place.Known() {
		return s.scale.at(c.Place.V), true
	}
	for _, p := range s.pipes {
		if p.duct.Into == nil && p.duct.Collector == c {
			return p.path.end(), true
		}
	}
	return spot{}, false
}

// drawCollector draws one, with a thin line from a duct that ends short of it.
func (s *sheet) drawCollector(m *collectorMark) {
	for _, p := range s.pipes {
		if end := p.path.end(); p.duct.Into == nil && p.duct.Collector == m.collector && span(end, m.at) > m.radius {
			s.line(look{line: dark, weight: 13}, "", end, m.at)
		}
	}
	s.body(m.collector, m.at, m.radius)
}

// body draws the round body of a collector: heavier and filled where it runs.
func (s *sheet) body(c *shop.Collector, at spot, radius int) {
	body := look{fill: tint, line: dark, weight: 13}
	if s.runs(c) {
		body = look{fill: airSoft, line: dark, weight: 24}
	}
	s.circle(body, c.Name, at, radius)
	s.circle(look{fill: paper, line: dark, weight: 13}, "", at, radius*45/100)
}

// collectorLabel is a collector's name beside it.
func (s *sheet) collectorLabel(m *collectorMark) *label {
	return &label{
		block:   writing(m.collector.Name, true, machineText, 1500, 3),
		anchors: []anchor{{at: m.at, clear: m.radius + 50}},
		near:    200,
		stay: func(o option) int {
			// under or over it reads best
			if o.box.left <= m.at.x && o.box.right >= m.at.x {
				return 0
			}
			return 60
		},
	}
}
