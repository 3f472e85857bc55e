package drawing

import (
	"slices"
	"strings"

	"dustbook/plan/control/trace"
	"dustbook/plan/unit"
)

// Sizes of a timing diagram, in tenths.
const (
	laneTall   = 460  // from lane to lane
	laneRise   = 230  // from off to on
	laneNames  = 2300 // room for the names
	laneLong   = 7200 // for the time at least
	secondLong = 300  // for a second at least, so that a gate's travel is seen
	mostShown  = 4000 // milliseconds of a time in which nothing changes; the rest is left out
	stampLine  = 150  // from one line of times to the next
)

// The lines of a timing diagram.
var (
	laneLook  = look{line: dark, weight: 26}
	restLook  = look{line: rule, weight: 9}
	guideLook = look{line: soft, weight: 7, dash: "2 4"}
	waitLook  = look{line: dark, weight: 30, dash: "3 3"}
)

// LaneNames are the names that a timing diagram writes beside its lanes, by
// their numbers in the head of a trace.
type LaneNames struct{ Triggers, Gates, Collectors []string }

// Lanes draws the story of a run as lanes under each other, time from left to
// right: everything in it that ever changes, inputs first, then gates, fans
// and the signal. A thin line stands wherever something changes, with its time
// in seconds. What the story is called is its title.
func Lanes(t *trace.Trace, names LaneNames, title, id string) SVG {
	d := &lanePen{story: t}
	d.gather(names)
	d.draw()
	d.foot(d.key(), nil)
	return d.frame(id, title, d.desc(title), margin)
}

// lanePen is a timing diagram while it is drawn.
type lanePen struct {
	pen
	story *trace.Trace
	lanes []lane
	long  int                // of the whole time
	place map[trace.Time]int // of every moment
	cuts  [][2]trace.Time    // times of which only a piece is shown

	unproven, waits, coasts bool // drawn somewhere
}

// lane is one line of the diagram.
type lane struct {
	name  string
	kind  trace.Kind
	spans []trace.Span
	waits []trace.Span // of an input: when what it asks for waits
}

// gather makes a lane of everything that changes.
func (d *lanePen) gather(names LaneNames) {
	add := func(name string, kind trace.Kind, spans, waits []trace.Span) {
		if len(spans) > 1 || len(spans) == 1 && spans[0].State != 0 {
			d.lanes = append(d.lanes, lane{name, kind, spans, waits})
		}
	}
	power := d.story.Power()
	if len(power) > 1 {
		d.lanes = append(d.lanes, lane{wording.Text("lanes.power"), trace.Happens, power, nil})
	}
	add(wording.Text("lanes.lockout"), trace.Happens, d.story.Lockout(), nil)
	for i, name := range names.Triggers {
		var waits []trace.Span
		for _, s := range d.story.Lane(trace.RequestIs, i) {
			if trace.RequestState(s.State) == trace.Waits {
				waits = append(waits, s)
			}
		}
		add(name, trace.Happens, d.story.Input(i), waits)
	}
	for i, name := range names.Gates {
		if spans := d.story.Lane(trace.GateIs, i); leavesShut(spans) {
			add(name, trace.GateIs, spans, nil)
		}
	}
	for i, name := range names.Collectors {
		add(name, trace.FanIs, d.story.Lane(trace.FanIs, i), nil)
	}
	add(wording.Text("lanes.signal"), trace.SignalIs, d.story.Lane(trace.SignalIs, 0), nil)
}

// leavesShut reports whether a gate is ever anything but shut: one that only
// looks for its shut stop has no lane.
func leavesShut(spans []trace.Span) bool {
	return slices.ContainsFunc(spans, func(s trace.Span) bool {
		state := trace.GateState(s.State)
		return state != trace.Shut && state != trace.Homing
	})
}

// draw draws everything above the key.
func (d *lanePen) draw() {
	d.fitTime()
	d.drawGuides()
	for i := range d.lanes {
		d.drawLane(i)
	}
}

// fitTime gives every moment its place: a second is long enough to see a gate
// travel, and of a long time in which nothing changes only a piece is shown.
func (d *lanePen) fitTime() {
	moments := append(d.moments(), d.story.End)
	var last, shown trace.Time
	at := map[trace.Time]trace.Time{0: 0}
	for _, t := range moments {
		if t-last > mostShown {
			d.cuts = append(d.cuts, [2]trace.Time{last, t})
		}
		shown += min(t-last, mostShown)
		at[t], last = shown, t
	}
	d.long = max(laneLong, int(shown)*secondLong/1000)
	d.place = map[trace.Time]int{}
	for t, to := range at {
		d.place[t] = laneNames
		if shown > 0 {
			d.place[t] += int(int64(to) * int64(d.long) / int64(shown))
		}
	}
}

// at is the place of a moment at which something changes.
func (d *lanePen) at(t trace.Time) int { return d.place[t] }

// low is the height of a lane's off.
func (d *lanePen) low(i int) int { return i*laneTall + laneRise }

// moments are the times at which a lane changes, rising; its start is none.
func (d *lanePen) moments() []trace.Time {
	var list []trace.Time
	for _, l := range d.lanes {
		for _, spans := range [2][]trace.Span{l.spans, l.waits} {
			for _, s := range spans {
				list = append(list, s.From)
			}
		}
	}
	slices.Sort(list)
	return slices.DeleteFunc(slices.Compact(list), func(t trace.Time) bool { return t == 0 })
}

// drawGuides draws a line at each moment of change with its time above it, on
// as many lines as keep the figures apart.
func (d *lanePen) drawGuides() {
	bottom := d.low(len(d.lanes)-1) + 90
	var ends []int // of the last figure of each line of figures
	for _, t := range d.moments() {
		x := d.at(t)
		says := writing(unit.Fixed(float64(t)/1000, 1), false, smallText, 1200, 1)
		half := says.width() / 2
		level := slices.IndexFunc(ends, func(end int) bool { return end+60 < x-half })
		if level < 0 {
			level = len(ends)
			ends = append(ends, 0)
		}
		ends[level] = x + half
		top := -laneRise - level*stampLine
		d.line(guideLook, "", spot{x, top}, spot{x, bottom})
		d.write(&says, around(spot{x, top - 80}, half, says.height()/2), centred)
	}
	axis := -laneRise + 20
	d.line(restLook, "", spot{laneNames, axis}, spot{laneNames + d.long, axis})
	for _, c := range d.cuts {
		drawBreak(&d.pen, spot{(d.at(c[0]) + d.at(c[1])) / 2, axis})
	}
	unitSays := writing(wording.Text("lanes.seconds"), false, smallText, laneNames, 1)
	d.write(&unitSays, box{0, -laneRise - 80 - unitSays.height()/2, unitSays.width(), -laneRise - 80 + unitSays.height()/2}, fromStart)
}

// drawBreak marks that a piece of time is left out.
func drawBreak(p *pen, at spot) {
	for _, x := range [2]int{-40, 40} {
		p.line(strandLook, "", at.moved(x-30, 80), at.moved(x+30, -80))
	}
}

// drawLane draws one lane: its name, its off, and what it does.
func (d *lanePen) drawLane(i int) {
	l, low := &d.lanes[i], d.low(i)
	says := writing(l.name, false, plainText, laneNames-160, 2)
	d.write(&says, box{0, low - laneRise/2 - says.height()/2, says.width(), low - laneRise/2 + says.height()/2}, fromStart)
	d.line(restLook, "", spot{laneNames, low}, spot{laneNames + d.long, low})
	var way path
	var rings []spot
	for _, s := range l.spans {
		from, to := d.at(s.From), d.at(s.To)
		if l.kind == trace.FanIs && trace.FanState(s.State) == trace.Coasting {
			d.coasts = true
			d.line(strandLook, "", spot{from, low - laneRise}, spot{to, low})
			way = d.put(way, low, from, to, 0, 0)
			continue
		}
		begin, end := heights(l.kind, s.State)
		if l.kind == trace.GateIs && trace.GateState(s.State) == trace.Homing && len(way) > 0 {
			begin = 100 * (low - way[len(way)-1].y) / laneRise // from where it was
		}
		way = d.put(way, low, from, to, begin, end)
		if l.kind == trace.GateIs && trace.GateState(s.State) == trace.Open && s.Why != 0 {
			d.unproven = true
			rings = append(rings, spot{from, low - laneRise})
		}
	}
	d.line(laneLook, "", way...)
	for _, at := range rings {
		d.circle(look{fill: paper, line: dark, weight: 14}, "", at, 55)
	}
	for _, s := range l.waits {
		d.waits = true
		d.line(waitLook, "", spot{d.at(s.From), low + 70}, spot{max(d.at(s.To), d.at(s.From)+60), low + 70})
	}
}

// put adds a span to a lane's way, from one height to another, in percent of
// on.
func (d *lanePen) put(way path, low, from, to, begin, end int) path {
	for _, s := range [2]spot{{from, low - laneRise*begin/100}, {to, low - laneRise*end/100}} {
		if n := len(way); n == 0 || way[n-1] != s {
			way = append(way, s)
		}
	}
	return way
}

// heights are how high a lane stands at the start and the end of a span, in
// percent of on.
func heights(kind trace.Kind, state uint8) (begin, end int) {
	if kind != trace.GateIs {
		return 100 * min(int(state), 1), 100 * min(int(state), 1)
	}
	switch trace.GateState(state) {
	case trace.Opening:
		return 0, 100
	case trace.Open:
		return 100, 100
	case trace.Shutting:
		return 100, 0
	case trace.Homing:
		return 50, 0
	case trace.Between, trace.Faulted:
		return 50, 50
	}
	return 0, 0
}

// key is what the marks in use mean.
func (d *lanePen) key() []sign {
	names := []string{"lane-on", "lane-moves", "lane-guide"}
	for _, m := range [...]struct {
		used bool
		name string
	}{{d.unproven, "lane-unproven"}, {d.coasts, "lane-coasts"}, {d.waits, "lane-waits"}, {len(d.cuts) > 0, "lane-break"}} {
		if m.used {
			names = append(names, m.name)
		}
	}
	return signsOf(names)
}

// desc says in words which lanes there are; what happens when stands in the
// table beside the drawing.
func (d *lanePen) desc(title string) string {
	var list []string
	for _, l := range d.lanes {
		list = append(list, drawable(l.name))
	}
	return wording.Text("lanes.desc", title, unit.Fixed(float64(d.story.End)/1000, 1), strings.Join(list, ", "))
}
