package drawing

import (
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// RunStep is one stretch of a run, or what stands on the fan's own side, for
// the table beside a profile.
type RunStep struct {
	Number  int           // of the stretch, see InOrder; nought on the fan's side
	Stretch *shop.Stretch // nil on the fan's side
	Name    string
	Far     unit.Length   // from the port to its end; nought on the fan's side
	Loss    unit.Pressure // what it takes
	Suction unit.Pressure // behind it: total pressure below the room
}

// Governing is the port that governs a result: of those its collector draws
// from, the one with the least share of the air it needs, the first of them in
// the file where several have it; the first port where none states a need.
// It is nil where no duct leads from a port to the collector.
func Governing(r *duct.Result) *shop.Port {
	var found *shop.Port
	least := 0.0
	for i := range r.Ports {
		p := &r.Ports[i]
		if p.Port.Duct == nil || p.Port.Duct.Collector != r.Collector {
			continue
		}
		share := 0.0
		if p.Port.Flow > 0 {
			share = unit.Six(float64(p.Flow / p.Port.Flow))
		}
		if found == nil || share > 0 && (least == 0 || share < least) {
			found, least = p.Port, share
		}
	}
	return found
}

// Profile draws one run as Board.Profile does.
func Profile(p *plan.Plan, r *duct.Result, port *shop.Port, id string) SVG {
	svg, _ := NewBoard(p).Profile(r, port, id)
	return svg
}

// Profile draws how the suction grows along the run from a port to the fan,
// in the use and with the filter of the result: the total pressure below the
// room at the end of every stretch, against the length of duct and hose up to
// there, joined by straight lines; then what separator, filter and outlet
// take, up to the fan's static pressure. The steps, in the order the air meets
// them, belong in a table beside it. A port that no duct serves, or a use that
// is off the curve, gives a drawing that says so, and no steps.
func (b *Board) Profile(r *duct.Result, port *shop.Port, id string) (SVG, []RunStep) {
	c := &profile{}
	c.sys = b.plan.Shop.Units
	title := wording.Text("chart.run.title", drawable(port.Full()))
	switch {
	case r == nil:
	case r.Filter == duct.NoFilter:
		title = wording.Text("chart.run.title-use", drawable(port.Full()), drawable(r.Use.Name))
	default:
		title = wording.Text("chart.run.title-filter", drawable(port.Full()), drawable(r.Use.Name), r.Filter)
	}
	if why := c.take(b.plan, r, port); why != "" {
		c.note(why, spot{0, 0}, fromStart)
		c.reach(box{0, -200, 6000, 200})
		return c.frame(id, title, why, margin), nil
	}
	c.setAxes()
	c.drawAxes(wording.Text("chart.run.length", unit.Run.Unit(c.sys)), wording.Text("chart.run.suction", unit.Press.Unit(c.sys)))
	c.drawRun()
	c.drawParts()
	notes := []string{wording.Text("chart.run.straight")}
	if c.crowded() {
		notes = append(notes, wording.Text("chart.run.numbers"))
	}
	return c.finish(id, title, c.desc(), c.key(), notes), c.steps
}

// key is what lines and marks mean.
func (c *profile) key() []sign {
	names := []string{"run-way", "run-end", "run-inlet"}
	if len(c.parts()) > 0 {
		names = append(names, "run-part")
	}
	return signsOf(append(names, "run-fan"))
}

// profile is the chart of one run while it is drawn.
type profile struct {
	chart
	steps []RunStep
	inlet unit.Pressure
}

// stretches are the steps of the run itself.
func (c *profile) stretches() []RunStep {
	for i, s := range c.steps {
		if s.Stretch == nil {
			return c.steps[:i]
		}
	}
	return c.steps
}

// parts are the steps on the fan's own side.
func (c *profile) parts() []RunStep { return c.steps[len(c.stretches()):] }

// take gathers the figures; it returns why there are none.
func (c *profile) take(p *plan.Plan, r *duct.Result, port *shop.Port) string {
	if port.Duct == nil {
		return wording.Text("chart.run.no-duct", drawable(port.Full()))
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
		return wording.Text("chart.run.no-use")
	case r.Collector != port.Duct.Collector:
		return wording.Text("chart.run.not-run", drawable(port.Duct.Collector.Name))
	case !r.OnCurve:
		return wording.Text("drawing.off", wording.Because(r.Why))
	}
	far := unit.Length(0)
	if h := port.Duct.Hose; h != nil {
		far = h.Length
	}
	numbers := numbering(p.Shop, r.Collector)
	for _, s := range port.Path() {
		v := stretchOf(r, s)
		if v == nil {
			return wording.Text("chart.run.no-figures", drawable(s.Name()))
		}
		far += s.Length()
		c.steps = append(c.steps, RunStep{numbers[s], s, s.Name(), far, v.Loss, -v.End})
	}
	c.inlet = r.Inlet
	sum := c.inlet
	for _, one := range [3]struct {
		key  string
		loss unit.Pressure
	}{{"chart.run.separator", r.Separator}, {"chart.run.filter", r.FilterLoss}, {"chart.run.outlet", r.Outlet}} {
		if one.loss > 0 {
			sum = unit.Pressure(unit.Six(float64(sum + one.loss)))
			c.steps = append(c.steps, RunStep{Name: wording.Text(one.key), Loss: one.loss, Suction: sum})
		}
	}
	return ""
}

const partWide = 700 // tenths: room for one of the fan's own parts

// setAxes leaves room at the right for the fan's own parts.
func (c *profile) setAxes() {
	top := c.inlet
	for _, s := range c.steps {
		top = max(top, s.Suction)
	}
	last := c.stretches()[len(c.stretches())-1].Far
	c.x = newAxis(unit.Six(unit.Run.In(c.sys, last)), 8, plotWide-partWide*(len(c.parts())+1))
	if last > 0 {
		c.x.end = unit.Six(unit.Run.In(c.sys, last)) // the fan's own parts follow at once
	}
	c.y = newAxis(unit.Six(unit.Press.In(c.sys, top)*1.06), 6, plotDeep)
}

func (c *profile) spotOf(far unit.Length, at unit.Pressure) spot {
	return c.point(unit.Run.In(c.sys, far), unit.Press.In(c.sys, at))
}

// words are a label beside a spot: a name, and a pressure under it.
func (c *profile) words(name string, press unit.Pressure, most, lines, clear int, at spot) {
	b := writing(name, false, smallText, most, lines)
	b.under(unit.Press.Print(c.sys, press), true)
	c.lines = append(c.lines, &label{block: b, pad: 15, near: 260, anchors: []anchor{{at: at, clear: clear}}})
}

// mostNamed is how many stretches of a run are named in the chart; of more,
// only the numbers stand there, and the table has the names.
const mostNamed = 7

func (c *profile) crowded() bool { return len(c.stretches()) > mostNamed }

// drawRunEnd marks the end of a stretch, drawRunFan the fan.
func drawRunEnd(p *pen, at spot) { p.circle(look{fill: paper, line: dark, weight: 14}, "", at, 38) }
func drawRunFan(p *pen, at spot) { p.circle(look{fill: dark}, "", at, 45) }

// drawRun draws the stretches from the port to the inlet.
func (c *profile) drawRun() {
	from := c.spotOf(0, 0)
	points := []spot{from}
	for _, s := range c.stretches() {
		to := c.spotOf(s.Far, s.Suction)
		name := strconv.Itoa(s.Number)
		if !c.crowded() {
			name += " · " + s.Name
		}
		c.words(name, s.Loss, 1500, 3, 60, spot{(from.x + to.x) / 2, (from.y + to.y) / 2})
		points = append(points, to)
		from = to
	}
	c.curve(runLook, 500, tidy(points))
	for _, at := range points {
		drawRunEnd(&c.pen, at)
		c.solids = append(c.solids, around(at, 45, 45))
	}
}

// drawParts draws what the fan's own parts take, one step each, and the sum.
func (c *profile) drawParts() {
	last := c.stretches()[len(c.stretches())-1]
	inlet := c.spotOf(last.Far, last.Suction)
	c.line(inletLook, "", spot{inlet.x, 0}, spot{inlet.x, -plotDeep})
	c.strips = append(c.strips, strip{a: spot{inlet.x, 0}, c: spot{inlet.x, -plotDeep}, half: 10, cost: 300})
	at, sum := inlet, c.inlet
	for _, p := range c.parts() {
		sum = p.Suction
		up := spot{at.x + partWide, c.spotOf(0, sum).y}
		c.curve(partLook, 500, tidy([]spot{at, {at.x + partWide/2, at.y}, {at.x + partWide/2, up.y}, up}))
		c.words(p.Name, p.Loss, 1200, 1, 60, spot{at.x + partWide/2, (at.y + up.y) / 2})
		at = up
	}
	drawRunFan(&c.pen, at)
	c.solids = append(c.solids, around(at, 50, 50))
	c.words(wording.Text("chart.run.fan-static"), sum, 1500, 1, 70, at)
	c.words(wording.Text("chart.run.inlet"), c.inlet, 1500, 1, 70, inlet)
}

// desc says in words what the chart shows.
func (c *profile) desc() string {
	var after, takes []string
	for _, s := range c.stretches() {
		after = append(after, wording.Text("chart.run.after", strconv.Itoa(s.Number)+" "+drawable(s.Name), unit.Run.Print(c.sys, s.Far), unit.Press.Print(c.sys, s.Suction)))
	}
	sum := c.inlet
	for _, p := range c.parts() {
		sum = p.Suction
		takes = append(takes, wording.Text("chart.run.takes", p.Name, unit.Press.Print(c.sys, p.Loss)))
	}
	takes = append(takes, wording.Text("chart.run.ends", unit.Press.Print(c.sys, sum)))
	return wording.Text("chart.run.desc", strings.Join(after, "; "), strings.Join(takes, "; "))
}
