package drawing

import (
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Point is one operating point of a fan's chart, for the table beside it.
type Point struct {
	Number int    // as printed beside its mark; nought where it is off the curve and not drawn
	Use    string // the use's name
	Filter string // clean, change-out or none
	Flow   unit.Flow
	Static unit.Pressure
	Why    string // why it is off the curve; empty where it is on it
	Result *duct.Result
}

// FanChart draws one chart as Board.FanChart does, without links.
func FanChart(p *plan.Plan, c *shop.Collector, id string) (SVG, []Point) {
	return NewBoard(p).FanChart(c, id)
}

// FanChart draws a collector's fan static pressure against air flow at the
// shop's own air, only where the curve is known; the operating point of every
// use, a circle with the filter clean and a square at change-out, numbered by
// use; through each a system curve from nought, its losses taken as the
// square of the flow; and on the axes what the maker claims. The points, in
// the order of the uses, belong in a table beside it. A number leads to the
// sheet of its use.
func (b *Board) FanChart(c *shop.Collector, id string) (SVG, []Point) {
	p := b.plan
	f := &fanChart{collector: c, paths: b.paths, fan: duct.NewFan(c, p.Air.State, duct.States(c)[0])}
	f.sys = p.Shop.Units
	f.points = pointsOf(p, c)
	flows, statics := f.fan.Curve(96)
	f.setAxes(flows, statics)
	f.drawAxes(wording.Text("chart.fan.flow", unit.Air.Unit(f.sys)), wording.Text("chart.fan.static", unit.Press.Unit(f.sys)))
	f.drawSystems()
	f.drawCurve(flows, statics)
	f.drawClaims()
	f.drawPoints()
	title := wording.Text("chart.fan.title", drawable(c.Name))
	return f.finish(id, title, f.desc(), f.key(), f.notes()), f.points
}

// fanChart is a fan's chart while it is drawn.
type fanChart struct {
	chart
	collector *shop.Collector
	paths     paths
	fan       *duct.Fan
	points    []Point
	marked    []marked
}

// pointsOf are the operating points of every use on a collector; uses that
// are on the curve in any state of the filter are numbered in order.
func pointsOf(p *plan.Plan, c *shop.Collector) []Point {
	var list []Point
	number := 0
	for _, u := range p.Air.Uses {
		counted := false
		for _, r := range u.Results {
			if r.Collector != c {
				continue
			}
			v := Point{Use: u.Name, Filter: r.Filter, Flow: r.Flow, Static: r.Static, Why: wording.Because(r.Why), Result: r}
			if r.OnCurve {
				if !counted {
					number, counted = number+1, true
				}
				v.Number = number
			}
			list = append(list, v)
		}
	}
	return list
}

func (f *fanChart) flow(q unit.Flow) float64      { return unit.Air.In(f.sys, q) }
func (f *fanChart) press(p unit.Pressure) float64 { return unit.Press.In(f.sys, p) }
func (f *fanChart) spotOf(p Point) spot           { return f.point(f.flow(p.Flow), f.press(p.Static)) }
func (f *fanChart) claims() (c *shop.Claims, ok bool) {
	return f.collector.Claims, f.collector.Claims != nil
}

// setAxes makes both axes reach to everything that is drawn.
func (f *fanChart) setAxes(flows []unit.Flow, statics []unit.Pressure) {
	x, y := 0.0, 0.0
	for i := range flows {
		x, y = max(x, f.flow(flows[i])), max(y, f.press(statics[i]))
	}
	for _, p := range f.points {
		if p.Number > 0 {
			x, y = max(x, f.flow(p.Flow)), max(y, f.press(p.Static))
		}
	}
	if c, ok := f.claims(); ok {
		x, y = max(x, f.flow(c.Flow)), max(y, f.press(c.Suction))
	}
	f.x, f.y = newAxis(unit.Six(x), 8, plotWide), newAxis(unit.Six(y), 6, plotDeep)
}

// drawCurve draws the fan's curve; dashed where it is only a parabola through
// the two claims.
func (f *fanChart) drawCurve(flows []unit.Flow, statics []unit.Pressure) {
	var points []spot
	for i := range flows {
		points = append(points, f.point(f.flow(flows[i]), f.press(statics[i])))
	}
	l := fanLook
	if f.fan.Claimed {
		l = parabolaLook
	}
	f.curve(l, 500, tidy(points))
}

// mostSystems is for how many uses system curves are drawn; with more of
// them, only for those with the least and the most air.
const mostSystems = 5

// shown are the points that get a system curve.
func (f *fanChart) shown() []Point {
	var list []Point
	least, most, count := Point{}, Point{}, 0
	for _, p := range f.points {
		if p.Number == 0 || !(p.Flow > 0) || !(p.Static > 0) {
			continue
		}
		list = append(list, p)
		count = p.Number
		if len(p.Result.Use.Machines) == 0 {
			continue
		}
		if least.Number == 0 || p.Flow < least.Flow {
			least = p
		}
		if most.Number == 0 || p.Flow > most.Flow {
			most = p
		}
	}
	if count <= mostSystems {
		return list
	}
	var few []Point
	for _, p := range list {
		if p.Number == least.Number || p.Number == most.Number {
			few = append(few, p)
		}
	}
	return few
}

// drawSystems draws system curves through points: losses as the square of
// the flow, from nought to the point and no farther.
func (f *fanChart) drawSystems() {
	for _, p := range f.shown() {
		const samples = 24
		var points []spot
		for i := range samples + 1 {
			share := float64(i) / samples
			points = append(points, f.point(unit.Six(f.flow(p.Flow)*share), unit.Six(f.press(p.Static)*share*share)))
		}
		f.curve(systemLook(p.Filter), 40, tidy(points))
	}
}

// systemLook is how a system curve is drawn: dashed with the filter due for
// change.
func systemLook(filter string) look {
	l := look{line: soft, weight: 7}
	if filter == duct.ChangeOut {
		l.dash = "4 4"
	}
	return l
}

// drawPoints draws the marks with their numbers, and small crosses where a
// system meets the curve once more.
func (f *fanChart) drawPoints() {
	for _, p := range f.points {
		if p.Number == 0 {
			continue
		}
		for _, c := range p.Result.Crossings {
			if c.Flow != p.Flow {
				drawCrossing(&f.pen, f.point(f.flow(c.Flow), f.press(c.Static)))
			}
		}
		at := f.spotOf(p)
		drawMark(&f.pen, at, p.Filter)
		f.keep(around(at, 60, 60))
		number := run{strconv.Itoa(p.Number), true, f.paths.of(p.Result.Use)}
		if l := f.labelAt(at, p.Filter); l != nil {
			l.block.follow(number, 500)
			continue
		}
		numbers := block{size: smallText, ink: dark, lines: [][]run{{number}}}
		f.lines = append(f.lines, &label{block: numbers, pad: 12, near: 1, anchors: []anchor{{at: at, clear: 70}}})
		f.marked = append(f.marked, marked{at, p.Filter, f.lines[len(f.lines)-1]})
	}
}

// overlapping is how near, in tenths, two marks lie so much on each other that
// they share a label.
const overlapping = 50

// marked is a mark with its label; uses with the same point, or nearly, share it.
type marked struct {
	at     spot
	filter string
	label  *label
}

func (f *fanChart) labelAt(at spot, filter string) *label {
	for _, m := range f.marked {
		if m.filter == filter && closer(m.at, at, overlapping) {
			return m.label
		}
	}
	return nil
}

// drawMark draws an operating point: a circle, or a square at change-out.
func drawMark(p *pen, at spot, filter string) {
	l := look{fill: paper, line: dark, weight: 18}
	if filter == duct.ChangeOut {
		p.rect(l, "", around(at, 45, 45))
		return
	}
	p.circle(l, "", at, 50)
}

func drawCrossing(p *pen, at spot) {
	p.lines(look{line: dark, weight: 14}, "", path{at.moved(-40, -40), at.moved(40, 40)}, path{at.moved(-40, 40), at.moved(40, -40)})
}

// drawClaim marks a claim by a wedge with its tip on the axis.
func drawClaim(p *pen, tip spot, w way) {
	p.area(look{fill: dark}, "", tip, tip.step(w, 110, 55), tip.step(w, 110, -55))
}

// drawClaims marks on each axis what the maker prints.
func (f *fanChart) drawClaims() {
	c, ok := f.claims()
	if !ok {
		return
	}
	x, y := f.point(f.flow(c.Flow), 0), f.point(0, f.press(c.Suction))
	drawClaim(&f.pen, x, way{0, -1})
	drawClaim(&f.pen, y, way{1, 0})
	f.keep(around(x.moved(0, -55), 60, 60))
	f.keep(around(y.moved(55, 0), 60, 60))
	says := func(text string) block {
		return writing(wording.Text("chart.fan.claimed", text), false, smallText, 2500, 1)
	}
	f.lines = append(f.lines,
		&label{block: says(unit.Air.Print(f.sys, c.Flow)), near: 200, anchors: []anchor{{at: x.moved(0, -110), clear: 40}}},
		&label{block: says(unit.Press.Print(f.sys, c.Suction)), near: 200, anchors: []anchor{{at: y.moved(110, 0), clear: 40}}})
}

// key is what the marks mean.
func (f *fanChart) key() []sign {
	names := []string{"fan-curve"}
	if f.fan.Claimed {
		names[0] = "fan-parabola"
	}
	used, crossings := map[string]bool{}, false
	for _, p := range f.points {
		if p.Number > 0 {
			used[p.Filter] = true
			crossings = crossings || len(p.Result.Crossings) > 1
		}
	}
	for _, one := range [3]struct{ filter, name string }{{duct.NoFilter, "fan-use"}, {duct.Clean, "fan-clean"}, {duct.ChangeOut, "fan-due"}} {
		if used[one.filter] {
			names = append(names, one.name)
		}
	}
	if crossings {
		names = append(names, "fan-crossing")
	}
	return signsOf(names)
}

func (f *fanChart) notes() []string {
	says := wording.Text("chart.fan.systems")
	if len(f.shown()) < f.onCurve() {
		says = wording.Text("chart.fan.few-systems")
	}
	list := []string{says}
	for _, p := range f.points {
		if p.Number == 0 {
			return append(list, wording.Text("chart.fan.off"))
		}
	}
	return list
}

// onCurve counts the points that a system curve could go through.
func (f *fanChart) onCurve() int {
	count := 0
	for _, p := range f.points {
		if p.Number > 0 && p.Flow > 0 && p.Static > 0 {
			count++
		}
	}
	return count
}

// desc says in words what the chart shows.
func (f *fanChart) desc() string {
	low, high := f.fan.Range()
	at := func(q unit.Flow, p unit.Pressure) string {
		return wording.Text("chart.fan.at", unit.Air.Print(f.sys, q), unit.Press.Print(f.sys, p))
	}
	var points []string
	for _, p := range f.points {
		if p.Number > 0 {
			key := map[string]string{duct.NoFilter: "chart.fan.point", duct.Clean: "chart.fan.point-clean", duct.ChangeOut: "chart.fan.point-due"}[p.Filter]
			points = append(points, wording.Text(key, strconv.Itoa(p.Number), drawable(p.Use), at(p.Flow, p.Static)))
		}
	}
	if len(points) == 0 {
		points = append(points, wording.Text("drawing.none"))
	}
	says := []string{
		wording.Text("chart.fan.desc", at(unit.Flow(low), unit.Pressure(f.fan.Static(low))), at(unit.Flow(high), unit.Pressure(f.fan.Static(high)))),
		wording.Text("chart.fan.points", strings.Join(points, "; ")),
	}
	if c, ok := f.claims(); ok {
		says = append(says, wording.Text("chart.fan.claims", unit.Air.Print(f.sys, c.Flow), unit.Press.Print(f.sys, c.Suction)))
	}
	return strings.Join(says, " ")
}
