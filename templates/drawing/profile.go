package drawing

import (
	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Profile draws how the suction grows along the run from a port to the fan,
// in the use and with the filter of the result: the total pressure below the
// room at the end of every stretch, against the length of duct and hose up to
// there, joined by straight lines; then what separator, filter and outlet
// take, up to the fan's static pressure. A port that no duct serves, or a use
// that is off the curve, gives a drawing that says so.
func Profile(p *plan.Plan, r *duct.Result, port *shop.Port, id string) SVG {
	c := &profile{}
	c.sys = p.Shop.Units
	title := "Suction from " + port.Full() + " to the fan"
	if r != nil {
		title += ": " + r.Use.Name
		if r.Filter != duct.NoFilter {
			title += ", filter " + r.Filter
		}
	}
	if why := c.take(p, r, port); why != "" {
		c.note(why, spot{0, 0}, fromStart)
		c.reach(box{0, -200, 6000, 200})
		return c.frame(id, title, why, margin)
	}
	c.setAxes()
	c.drawAxes("length of duct and hose, "+unit.Run.Unit(c.sys), "suction, "+unit.Press.Unit(c.sys))
	c.drawRun()
	c.drawParts()
	return c.finish(id, title, c.desc(), nil, []string{"Dots: ends of stretches. Between them the line is straight; the duct's own fall is not."})
}

// profile is the chart of one run while it is drawn.
type profile struct {
	chart
	steps []step
	inlet unit.Pressure
	parts []part
}

// step is one stretch of the run: where it ends and what the air has lost.
type step struct {
	name string
	far  unit.Length   // from the port
	at   unit.Pressure // suction at its end
	loss unit.Pressure
}

// part is something on the fan's own side.
type part struct {
	name string
	loss unit.Pressure
}

// take gathers the figures; it returns why there are none.
func (c *profile) take(p *plan.Plan, r *duct.Result, port *shop.Port) string {
	if port.Duct == nil {
		return "No duct serves " + port.Full() + "."
	}
	if r != nil && r.Collector != port.Duct.Collector {
		found := r
		for _, other := range together(p.Shop, r) {
			if other.Collector == port.Duct.Collector {
				found = other
			}
		}
		r = found
	}
	switch {
	case r == nil:
		return "No use is given."
	case r.Collector != port.Duct.Collector:
		return "The use does not run " + port.Duct.Collector.Name + "."
	case !r.OnCurve:
		return "No figures: " + r.Why + "."
	}
	far := unit.Length(0)
	if h := port.Duct.Hose; h != nil {
		far = h.Length
	}
	for _, s := range port.Path() {
		v := stretchOf(r, s)
		if v == nil {
			return "No figures for " + s.Name() + "."
		}
		far += s.Length()
		c.steps = append(c.steps, step{s.Name(), far, -v.End, v.Loss})
	}
	c.inlet = r.Inlet
	for _, one := range [3]part{{"separator", r.Separator}, {"filter", r.FilterLoss}, {"outlet", r.Outlet}} {
		if one.loss > 0 {
			c.parts = append(c.parts, one)
		}
	}
	return ""
}

const partWide = 700 // tenths: room for one of the fan's own parts

// setAxes leaves room at the right for the fan's own parts.
func (c *profile) setAxes() {
	top := c.inlet
	for _, p := range c.parts {
		top += p.loss
	}
	for _, s := range c.steps {
		top = max(top, s.at)
	}
	last := c.steps[len(c.steps)-1].far
	c.x = newAxis(unit.Six(unit.Run.In(c.sys, last)), 8, plotWide-partWide*(len(c.parts)+1))
	if last > 0 {
		c.x.end = unit.Six(unit.Run.In(c.sys, last)) // the fan's own parts follow at once
	}
	c.y = newAxis(unit.Six(unit.Press.In(c.sys, top)*1.06), 6, plotDeep)
}

func (c *profile) spotOf(far unit.Length, at unit.Pressure) spot {
	return c.point(unit.Run.In(c.sys, far), unit.Press.In(c.sys, at))
}

// drawRun draws the stretches from the port to the inlet.
func (c *profile) drawRun() {
	from := c.spotOf(0, 0)
	points := []spot{from}
	for _, s := range c.steps {
		to := c.spotOf(s.far, s.at)
		b := writing(s.name, false, smallText, 1500, 3)
		b.under(unit.Press.Print(c.sys, s.loss), true)
		middle := spot{(from.x + to.x) / 2, (from.y + to.y) / 2}
		c.lines = append(c.lines, &label{block: b, pad: 15, near: 260, anchors: []anchor{{at: middle, clear: 60}}})
		points = append(points, to)
		from = to
	}
	c.curve(look{line: air, weight: 24}, 500, tidy(points))
	for _, at := range points {
		c.circle(look{fill: paper, line: dark, weight: 14}, "", at, 38)
		c.solids = append(c.solids, around(at, 45, 45))
	}
}

// drawParts draws what the fan's own parts take, one step each, and the sum.
func (c *profile) drawParts() {
	last := c.steps[len(c.steps)-1]
	at := c.spotOf(last.far, last.at)
	c.line(look{line: dark, weight: 9, dash: "4 4"}, "", spot{at.x, 0}, spot{at.x, -plotDeep})
	c.strips = append(c.strips, strip{a: spot{at.x, 0}, c: spot{at.x, -plotDeep}, half: 10, cost: 300})
	sum := c.inlet
	for _, p := range c.parts {
		sum += p.loss
		up := spot{at.x + partWide, c.spotOf(0, sum).y}
		c.curve(look{line: air, weight: 24, dash: "8 4", mitre: true}, 500, tidy([]spot{at, {at.x + partWide/2, at.y}, {at.x + partWide/2, up.y}, up}))
		b := writing(p.name, false, smallText, 1200, 1)
		b.under(unit.Press.Print(c.sys, p.loss), true)
		c.lines = append(c.lines, &label{block: b, pad: 15, near: 260, anchors: []anchor{{at: spot{at.x + partWide/2, (at.y + up.y) / 2}, clear: 60}}})
		at = up
	}
	c.circle(look{fill: dark}, "", at, 45)
	c.solids = append(c.solids, around(at, 50, 50))
	b := writing("fan static", false, smallText, 1500, 1)
	b.under(unit.Press.Print(c.sys, unit.Pressure(unit.Six(float64(sum)))), true)
	inlet := writing("inlet", false, smallText, 1500, 1)
	inlet.under(unit.Press.Print(c.sys, c.inlet), true)
	c.lines = append(c.lines,
		&label{block: b, pad: 15, near: 260, anchors: []anchor{{at: at, clear: 70}}},
		&label{block: inlet, pad: 15, near: 260, anchors: []anchor{{at: c.spotOf(last.far, last.at), clear: 70}}})
}

// desc says in words what the chart shows.
func (c *profile) desc() string {
	text := "Suction below the room:"
	for _, s := range c.steps {
		text += " after " + drawable(s.name) + ", " + unit.Run.Print(c.sys, s.far) + " from the port, " + unit.Press.Print(c.sys, s.at) + ";"
	}
	sum := c.inlet
	for _, p := range c.parts {
		sum += p.loss
		text += " " + p.name + " takes " + unit.Press.Print(c.sys, p.loss) + ";"
	}
	return text + " fan static pressure " + unit.Press.Print(c.sys, unit.Pressure(unit.Six(float64(sum)))) + "."
}
