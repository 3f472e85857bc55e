package templates

import (
	"dustbook/checks"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// triggersView is the sheet of triggers.
type triggersView struct {
	Triggers []triggerView
	Scales   bool   // at least one has a scale
	Usual    string // what common practice sets
	Times    []triggerTimes
}

type triggerView struct {
	ID            string
	Tag, Name     string
	Machine, Path string
	Senses        string
	Facts         [][2]string
	Opens         []tagged
	Starts        []tagged
	Dust          string
	Cautions      []string
	Scale         *ampScale
	Findings      []findingRow // what is not met
	Met           []findingRow
	Card          string // of its machine
	Story         string // the sheet of what follows when it comes on
}

func (b *Book) triggersView() triggersView {
	v := triggersView{Usual: b.words.Text("timing.usual", b.span(timing.UsualRunOn()), b.span(timing.DebounceOn()), b.span(timing.DebounceOff()))}
	for _, t := range b.Plan.Shop.Triggers {
		one := b.triggerView(t)
		v.Scales = v.Scales || one.Scale != nil
		v.Triggers = append(v.Triggers, one)
		if rows := b.timeRows(b.Plan.Times.Of(t)); len(rows) > 0 {
			v.Times = append(v.Times, triggerTimes{one.ID, one.Tag, one.Name, rows})
		}
	}
	return v
}

func (b *Book) triggerView(t *shop.Trigger) triggerView {
	at := b.tagged(t)
	v := triggerView{ID: "trigger-" + shop.Slug(t.Name), Tag: at.Tag, Name: t.Name, Senses: b.sensing(t), Opens: b.taggedGates(t.Opens)}
	times := b.Plan.Times.Of(t)
	v.Dust, v.Cautions = b.dustBefore(times.Dust), b.cautions(times.Threshold)
	if m := t.Machine; m != nil {
		v.Machine, v.Path, v.Card = m.Name, b.Path("machine", m.Name), b.Path("card", m.Name)
	}
	v.Story = storyPath(t)
	for _, c := range t.Starts {
		v.Starts = append(v.Starts, tagged{Name: c.Name, Path: b.Path("collector", c.Name)})
	}
	if t.Senses == "current" {
		v.Facts, v.Scale = b.currentFacts(t), b.ampScale(t)
	}
	for _, f := range b.findingsAbout("trigger", t.Name) {
		switch {
		case f.State == checks.Met:
			v.Met = append(v.Met, b.findingRow(f))
		case !inTimes(f):
			v.Findings = append(v.Findings, b.findingRow(f))
		}
	}
	return v
}

// currentFacts are what the file gives of a current trigger.
func (b *Book) currentFacts(t *shop.Trigger) [][2]string {
	s := timing.SensedBy(t)
	amps := func(f shop.Field[unit.Current], read unit.Current, known bool) string {
		switch {
		case f.Known():
			return unit.Amps.Print(b.units, f.V)
		case known:
			return b.words.Text("triggers.by-readings", unit.Amps.Print(b.units, read))
		}
		return b.notGiven()
	}
	facts := [][2]string{{b.words.Text("triggers.spindle-off"), amps(t.Standby, s.Off, s.OffKnown)}, {b.words.Text("triggers.idling"), amps(t.NoLoad, s.On, s.OnKnown)}}
	for _, r := range t.Readings {
		text := unit.Amps.Print(b.units, r.Mean)
		if r.Spread.Known() {
			text += " ± " + unit.Amps.Print(b.units, r.Spread.V)
		}
		facts = append(facts, [2]string{b.words.Text("triggers.read", r.State), text})
	}
	turns, sensor := b.words.Count("triggers.turns", max(t.Turns.V, 1)), ""
	if t.Range.Known() {
		sensor = b.words.Text("triggers.sensor-range", turns, unit.Amps.Print(b.units, t.Range.V.Low), unit.Amps.Print(b.units, t.Range.V.High))
	} else {
		sensor = b.words.Text("triggers.sensor-no-range", turns)
	}
	return append(facts, [2]string{b.words.Text("triggers.sensor"), sensor})
}

// ampScale is a small drawing of the currents of a trigger: places on a scale
// of 200.
type ampScale struct {
	Top             string
	Low, High       string // the band of common practice
	Band            bool
	Off, Idle, Set  ampMark
	HasSet, HasIdle bool
	Says            string
}

type ampMark struct{ At, Anchor, Text string }

// ampScale draws what the trigger senses; nil where neither end is known.
func (b *Book) ampScale(t *shop.Trigger) *ampScale {
	s := timing.SensedBy(t)
	if !s.OffKnown || !s.OnKnown {
		return nil
	}
	most := max(float64(s.On), float64(s.Off), float64(t.Threshold.V))
	top := ampTop(most)
	at := func(i unit.Current) string { return unit.Fixed(200*float64(i)/top, 1) }
	mark := func(i unit.Current, key string) ampMark {
		m := ampMark{At: at(i), Anchor: "middle", Text: b.words.Text(key, unit.Amps.Print(b.units, i))}
		switch share := unit.Six(float64(i) / top); {
		case share < 0.25:
			m.Anchor = "start"
		case share > 0.75:
			m.Anchor = "end"
		}
		return m
	}
	x := b.Plan.Times.Of(t).Threshold
	low, high := x.Low, x.High
	v := &ampScale{Top: unit.Short(top) + " A", Low: at(low), High: at(high), Band: high > low && !x.NoRoom, Off: mark(s.Off, "triggers.at-off"), Idle: mark(s.On, "triggers.at-idle"), HasIdle: true, HasSet: t.Threshold.Known()}
	v.Says = b.words.Text("triggers.says", unit.Amps.Print(b.units, s.Off), unit.Amps.Print(b.units, s.On))
	if v.HasSet {
		v.Set = mark(t.Threshold.V, "triggers.at-set")
		v.Says += b.words.Text("triggers.says-set", unit.Amps.Print(b.units, t.Threshold.V))
	}
	if v.Band {
		v.Says += b.words.Text("triggers.says-band", unit.Amps.Print(b.units, low), unit.Amps.Print(b.units, high))
	}
	return v
}

// ampTop is a round current above a value, for the end of a scale.
func ampTop(x float64) float64 {
	for _, top := range []float64{0.1, 0.2, 0.5, 1, 2, 4, 6, 8, 10, 15, 20, 30, 40, 60, 100, 200, 500} {
		if unit.Six(x) <= 0.9*top {
			return top
		}
	}
	return max(1, x*1.2)
}
