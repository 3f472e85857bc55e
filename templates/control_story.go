package templates

import (
	"html/template"
	"slices"

	"dustbook/plan/control/trace"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// storyView is one story of the control: its lanes, and what happens when.
type storyView struct {
	Title, Says string
	Drawing     template.HTML
	Rows        []storyRow
}

// storyRow is a moment and what happens in it.
type storyRow struct {
	At   string // in seconds
	What []string
}

// storyView draws a story and tells it; the id is that of its drawing.
func (b *Book) storyView(t *trace.Trace, title, says, id string) storyView {
	names := b.laneNames()
	v := storyView{Title: title, Says: says, Drawing: trusted(drawing.Lanes(t, names, title, id))}
	var last trace.Time
	for i := range t.Records {
		r := &t.Records[i]
		what := b.happening(r, names)
		if what == "" {
			continue
		}
		if len(v.Rows) == 0 || r.At != last {
			v.Rows = append(v.Rows, storyRow{At: unit.Fixed(float64(r.At)/1000, 1)})
			last = r.At
		}
		row := &v.Rows[len(v.Rows)-1]
		row.What = append(row.What, what)
	}
	return v
}

// laneNames are the tags and names of what a story may move.
func (b *Book) laneNames() drawing.LaneNames {
	var names drawing.LaneNames
	for _, t := range b.Plan.Shop.Triggers {
		names.Triggers = append(names.Triggers, b.tagged(t).label())
	}
	for _, g := range b.Plan.Shop.Gates {
		names.Gates = append(names.Gates, b.tagged(g).label())
	}
	for _, c := range b.Plan.Shop.Collectors {
		names.Collectors = append(names.Collectors, c.Name)
	}
	return names
}

// happening is a record in words; empty for what the reader need not know.
func (b *Book) happening(r *trace.Record, names drawing.LaneNames) string {
	name := func(list []string) string {
		if int(r.Thing) < len(list) {
			return list[r.Thing]
		}
		return ""
	}
	switch r.Kind {
	case trace.Happens:
		about := ""
		if r.Is(trace.On) || r.Is(trace.Off) {
			about = name(names.Triggers)
		}
		if r.What() <= trace.PowerBack {
			return b.words.Text("lanes.happens."+r.Name(), about)
		}
	case trace.GateIs:
		of := r.Name()
		if r.GateState() == trace.Open && !r.Proven() {
			of += "-unproven"
		}
		return b.words.Text("lanes.gate."+of, name(names.Gates))
	case trace.FanIs:
		return b.words.Text("lanes.fan."+r.Name(), name(names.Collectors))
	case trace.SignalIs:
		return b.words.Text("lanes.signal-is." + r.Name())
	case trace.RequestIs:
		switch trace.RequestState(r.State) {
		case trace.Waits:
			return b.words.Text("lanes.request."+r.Name(), name(names.Triggers), b.words.Text("lanes.why."+trace.Why(r.Why).String()))
		case trace.Served, trace.RunsOn:
			return b.words.Text("lanes.request."+r.Name()+b.requestEnd(r), name(names.Triggers))
		}
	}
	return ""
}

// requestEnd is what the key of a request ends in: for a trigger that starts no
// fan, and for a machine whose hose has to be moved to it.
func (b *Book) requestEnd(r *trace.Record) string {
	if int(r.Thing) >= len(b.Plan.Shop.Triggers) {
		return ""
	}
	switch t := b.Plan.Shop.Triggers[r.Thing]; {
	case len(t.Starts) == 0:
		return "-no-fan"
	case trace.RequestState(r.State) == trace.Served && t.Machine != nil && sharesHose(t.Machine):
		return "-hose"
	}
	return ""
}

// sharesHose reports whether a port of a machine is served by an end that is
// moved.
func sharesHose(m *shop.Machine) bool {
	return slices.ContainsFunc(m.Ports, func(p *shop.Port) bool {
		return p.Duct != nil && p.Duct.Movable()
	})
}
