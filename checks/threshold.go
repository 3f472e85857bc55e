package checks

import (
	"strconv"

	"dustbook/plan"
	"dustbook/plan/control/timing"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var threshold = &Check{
	ID:    "threshold",
	Name:  say("check.threshold.name"),
	Title: say("check.threshold.title"),
	Needs: "trigger.standby, trigger.no_load, trigger.readings, trigger.threshold, trigger.turns, trigger.range, machine.amps",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, of := range p.Times.Triggers {
			if of.Threshold.Stand != timing.NoCurrent {
				report(tells(p, of.Trigger, of.Threshold))
			}
		}
	},
}

// tells words how one current trigger stands.
func tells(p *plan.Plan, t *shop.Trigger, x timing.Threshold) Finding {
	f := Finding{About: t.Name, Kind: "trigger", At: t.At, By: ByGiven, Weight: Know, Basis: ownFile(say("finding-threshold.given"))}
	s, units := x.Sensed, p.Shop.Units
	amps := func(i unit.Current) string { return unit.Amps.Print(units, i) }
	practice := say("finding-threshold.practice", amps(x.Low), amps(x.High))
	switch {
	case x.NoRoom:
		practice = sayOf(x.Turns, "finding-threshold.no-room.says", amps(x.Low), amps(x.High), strconv.Itoa(x.Turns), amps(x.RangeLow), amps(x.RangeHigh))
	case x.Low > x.High: // the two currents lie too near together
		practice = say("finding-threshold.practice-none.says")
	case x.Best > 0:
		practice = say("finding-threshold.practice-best", amps(x.Low), amps(x.High), amps(x.Best))
	}
	switch x.Stand {
	case timing.CurrentsMissing:
		f.State = NotGiven
		f.Says, f.Do = currentsMissing(t, s)
	case timing.NotApart:
		f.State, f.Weight = NotMet, Mend
		off, on := unit.Amps.Pair(units, s.Off, s.On)
		f.Says = say("finding-threshold.not-apart.says", off, on)
		f.Do = say("finding-threshold.not-apart.do")
	case timing.BelowRange, timing.AboveRange:
		f.State, f.Weight, f.Basis = NotMet, Mend, ownFile(say("finding-threshold.sensor.given"))
		f.Says, f.Do = outOfRange(units, t, x)
	case timing.ThresholdNotSet:
		f.State = NotGiven
		f.Says = join(say("finding-threshold.not-given.says"), practice)
		f.Do = say("finding-threshold.not-given.do")
	default:
		if f.setThreshold(units, x, practice); f.State == Met && !t.Range.Known() {
			f.State = NotGiven
			f.Says, f.Do = join(f.Says, say("finding-threshold.no-range.says")), say("finding-threshold.no-range.do")
		}
	}
	if x.NoRoom && (x.Stand == timing.Misses || x.Stand == timing.NeverStops) {
		f.Do = join(f.Do, mendSensor(units, x))
	}
	switch {
	case !x.Set.Known() || x.Stand == timing.BelowRange || x.Stand == timing.AboveRange || x.Stand == timing.NotApart || x.Stand == timing.NeverStops:
	case x.NoLetGo:
		f.Says = join(f.Says, say("finding-threshold.no-let-go.says", amps(x.OffHigh), amps(s.Off)))
	case x.AboveOff():
		f.Says = join(f.Says, say("finding-threshold.lets-go-above.says", amps(s.Off)))
	}
	return f
}

// setThreshold words how a threshold that is set stands between the two
// currents, with the margins of practice, which a sentence says.
func (f *Finding) setThreshold(units unit.System, x timing.Threshold, practice string) {
	s, set := x.Sensed, x.Set.V
	onFigure, offFigure := float64(s.On), float64(s.Off)
	f.Figures = []Figure{
		{Name: say("finding-threshold.under-idling"), Value: float64(set), Unit: "A", Limit: &onFigure, Basis: given(say("finding-threshold.idling.given"))},
		{Name: say("finding-threshold.over-off"), Value: float64(set), Unit: "A", Limit: &offFigure, Basis: given(say("finding-threshold.off.given"))},
	}
	at, off, on := unit.Amps.Print(units, set), unit.Amps.Figure(units, s.Off), unit.Amps.Figure(units, s.On)
	switch x.Stand {
	case timing.Misses:
		f.State, f.Weight = NotMet, Mend
		a, b := unit.Amps.Pair(units, set, s.On)
		f.Says = say("finding-threshold.misses.says", a, b)
		f.Do = join(practice, say("finding-threshold.misses.do"))
		return
	case timing.NeverStops:
		f.State, f.Weight = NotMet, Mend
		a, b := unit.Amps.Pair(units, set, s.Off)
		f.Says = say("finding-threshold.never-stops.says", a, b)
		f.Do = join(say("finding-threshold.never-stops.do"), practice)
		return
	case timing.Near:
		f.State = Thin
		f.Says = say("finding-threshold.near.says", at, off, on, unit.Short(timing.FarApart()))
		f.Do = say("finding-threshold.near.do")
	case timing.LittleMargin:
		f.State = Thin
		f.Says = join(say("finding-threshold.little-margin.says", at, off, on), practice)
		f.Do = say("finding-threshold.little-margin.do")
		if x.NoRoom {
			f.Do = mendSensor(units, x)
		}
	default:
		f.State = Met
		f.Says = say("finding-threshold.met.says", at, off, on)
		f.Do = say("finding-threshold.met.do")
	}
	f.Basis = append(f.Basis, timing.BasisOf("threshold above off"))
	if s.Unused > 0 {
		f.Says = join(f.Says, english.Count("finding-threshold.unused", s.Unused))
	}
}

// currentsMissing says which current is not given.
func currentsMissing(t *shop.Trigger, s timing.Sensed) (says, do string) {
	switch {
	case s.OnKnown:
		return say("finding-threshold.no-off.says"), say("finding-threshold.no-off.do")
	case s.OffKnown:
		says, do = say("finding-threshold.no-idle.says"), say("finding-threshold.no-idle.do")
	default:
		says, do = say("finding-threshold.no-both.says"), say("finding-threshold.no-both.do")
	}
	if t.Machine != nil && t.Machine.Amps.Known() {
		says = join(says, say("finding-threshold.nameplate.says"))
	}
	return says, do
}

// outOfRange says how what the sensor sees, turns counted, lies beside its
// range, and what brings it in with the least work.
func outOfRange(units unit.System, t *shop.Trigger, x timing.Threshold) (says, do string) {
	turns, key, end := strconv.Itoa(x.Turns), "finding-threshold.below-range.says", t.Range.V.Low
	if x.Stand == timing.AboveRange {
		key, end = "finding-threshold.above-range.says", t.Range.V.High
	}
	a, b := unit.Amps.Pair(units, x.Sees, end)
	return sayOf(x.Turns, key, a, turns, b), mendSensor(units, x)
}

// mendSensor says what lets a sensor act where practice puts a threshold: the
// threshold set anew, which needs no work at the conductor, before turns, and
// both before another sensor.
func mendSensor(units unit.System, x timing.Threshold) string {
	m, then := x.Mend, ""
	if m.Turns > 0 && (m.Moves || !x.Set.Known() || m.Turns == x.Turns) {
		then = say("finding-threshold.then-set.do", unit.Amps.Print(units, m.Low), unit.Amps.Print(units, m.High))
	}
	switch {
	case m.Turns == 0 && x.Stand == timing.AboveRange:
		return say("finding-threshold.higher-range.do")
	case m.Turns == 0:
		return say("finding-threshold.lower-range.do")
	case m.Turns == x.Turns:
		return join(then, say("finding-threshold.raise.do"))
	case m.Turns > x.Turns:
		return join(say("finding-threshold.loop.do", strconv.Itoa(m.Turns)), then)
	}
	return join(sayOf(m.Turns, "finding-threshold.take-out.do", strconv.Itoa(m.Turns)), then)
}
