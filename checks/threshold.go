package checks

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

var threshold = &Check{
	ID:    "threshold",
	Name:  say("check.threshold.name"),
	Title: say("check.threshold.title"),
	Needs: "trigger.standby, trigger.no_load, trigger.readings, trigger.threshold, trigger.turns, trigger.range, machine.amps",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, t := range p.Shop.Triggers {
			if t.Senses == "current" {
				report(tells(p, t))
			}
		}
	},
}

// Sensed is what a trigger sees of its machine: the most with the spindle off
// and the least with it on and idling, the spread of the readings taken off.
type Sensed struct {
	Off, On           unit.Current
	OffKnown, OnKnown bool
	Unused            int // readings of a state that is neither
}

// SensedBy gathers what the file gives of a trigger's machine. The cautious
// end of each counts.
func SensedBy(t *shop.Trigger) Sensed {
	var s Sensed
	off := func(i unit.Current) { s.Off, s.OffKnown = max(s.Off, i), true }
	on := func(i unit.Current) {
		if !s.OnKnown || i < s.On {
			s.On, s.OnKnown = i, true
		}
	}
	if t.Standby.Known() {
		off(t.Standby.V)
	}
	if t.NoLoad.Known() {
		on(t.NoLoad.V)
	}
	spreads := figure("reading spreads").Number("value")
	for _, r := range t.Readings {
		wide := unit.Current(spreads * float64(r.Spread.V))
		switch state := strings.ToLower(strings.TrimSpace(r.State)); {
		case slices.Contains(words("states off"), state):
			off(r.Mean + wide)
		case slices.Contains(words("states idling"), state):
			on(max(0, r.Mean-wide))
		default:
			s.Unused++
		}
	}
	s.Off, s.On = unit.Current(unit.Six(float64(s.Off))), unit.Current(unit.Six(float64(s.On)))
	return s
}

// words are the words in the value of a row.
func words(name string) []string { return strings.Split(figure(name).Text("value"), ", ") }

// Apart reports whether the two can be told apart at all.
func (s Sensed) Apart() bool {
	return s.OffKnown && s.OnKnown && unit.Compare(float64(s.On), float64(s.Off)) > 0
}

// Band is where a threshold is put by common practice: between the multiple
// of the current off and the share of the current idling, at the geometric
// mean of the two where that lies between.
func (s Sensed) Band() (low, best, high unit.Current) {
	low = unit.Current(unit.Six(figure("threshold above off").Number("value") * float64(s.Off)))
	high = unit.Current(unit.Six(figure("threshold below idling").Number("value") * float64(s.On)))
	best = unit.Current(unit.Six(math.Sqrt(float64(s.Off) * float64(s.On))))
	return low, min(max(best, low), high), high
}

// tells judges one current trigger.
func tells(p *plan.Plan, t *shop.Trigger) Finding {
	f := Finding{About: t.Name, Kind: "trigger", At: t.At, By: ByGiven, Weight: Know, Basis: ownFile(say("finding-threshold.given"))}
	s := SensedBy(t)
	amps := func(i unit.Current) string { return unit.Amps.Print(p.Shop.Units, i) }
	switch {
	case !s.OffKnown || !s.OnKnown:
		f.State = NotGiven
		f.Says, f.Do = currentsMissing(t, s)
		return f
	case !s.Apart():
		f.State, f.Weight = NotMet, Mend
		off, on := unit.Amps.Pair(p.Shop.Units, s.Off, s.On)
		f.Says = say("finding-threshold.not-apart.says", off, on)
		f.Do = say("finding-threshold.not-apart.do")
		return f
	}
	if says, do := outOfRange(p, t, s); says != "" {
		f.State, f.Weight, f.Says, f.Do = NotMet, Mend, says, do
		f.Basis = ownFile(say("finding-threshold.sensor.given"))
		return f
	}
	low, best, high := s.Band()
	practice := say("finding-threshold.practice", amps(low), amps(high))
	if best > 0 {
		practice = say("finding-threshold.practice-best", amps(low), amps(high), amps(best))
	}
	if !t.Threshold.Known() {
		f.State = NotGiven
		f.Says = join(say("finding-threshold.not-given.says"), practice)
		f.Do = say("finding-threshold.not-given.do")
		return f
	}
	set := t.Threshold.V
	onFigure, offFigure := float64(s.On), float64(s.Off)
	f.Figures = []Figure{
		{Name: say("finding-threshold.under-idling"), Value: float64(set), Unit: "A", Limit: &onFigure, Basis: given(say("finding-threshold.idling.given"))},
		{Name: say("finding-threshold.over-off"), Value: float64(set), Unit: "A", Limit: &offFigure, Basis: given(say("finding-threshold.off.given"))},
	}
	switch {
	case unit.Compare(float64(set), float64(s.On)) >= 0:
		f.State, f.Weight = NotMet, Mend
		a, b := unit.Amps.Pair(p.Shop.Units, set, s.On)
		f.Says = say("finding-threshold.misses.says", a, b)
		f.Do = join(practice, say("finding-threshold.misses.do"))
	case unit.Compare(float64(set), float64(s.Off)) <= 0:
		f.State, f.Weight = NotMet, Mend
		a, b := unit.Amps.Pair(p.Shop.Units, set, s.Off)
		f.Says = say("finding-threshold.never-stops.says", a, b)
		f.Do = join(say("finding-threshold.never-stops.do"), practice)
	default:
		f.margins(p, t, s, practice)
	}
	return f
}

// margins compares a threshold that lies between with the margins of
// practice, which a sentence says.
func (f *Finding) margins(p *plan.Plan, t *shop.Trigger, s Sensed, practice string) {
	low, _, high := s.Band()
	set, units := t.Threshold.V, p.Shop.Units
	f.Basis = append(f.Basis, figure("threshold above off").Basis)
	at, off, on := unit.Amps.Print(units, set), unit.Amps.Figure(units, s.Off), unit.Amps.Figure(units, s.On)
	apart := figure("idling against off").Number("value")
	switch {
	case unit.Compare(float64(s.On), apart*float64(s.Off)) < 0:
		f.State = Thin
		f.Says = say("finding-threshold.near.says", at, off, on, unit.Short(apart))
		f.Do = say("finding-threshold.near.do")
	case unit.Compare(float64(set), float64(low)) < 0 || unit.Compare(float64(set), float64(high)) > 0:
		f.State = Thin
		f.Says = join(say("finding-threshold.little-margin.says", at, off, on), practice)
		f.Do = say("finding-threshold.little-margin.do")
	default:
		f.State = Met
		f.Says = say("finding-threshold.met.says", at, off, on)
		f.Do = say("finding-threshold.met.do")
	}
	if s.Unused > 0 {
		f.Says = join(f.Says, english.Count("finding-threshold.unused", s.Unused))
	}
}

// currentsMissing says which current is not given.
func currentsMissing(t *shop.Trigger, s Sensed) (says, do string) {
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

// outOfRange compares what the sensor sees, turns counted, with its range.
func outOfRange(p *plan.Plan, t *shop.Trigger, s Sensed) (says, do string) {
	if !t.Range.Known() {
		return "", ""
	}
	units, turns := p.Shop.Units, float64(max(t.Turns.V, 1))
	times := int(turns)
	sees := unit.Current(unit.Six(turns * float64(s.On)))
	if t.Threshold.Known() {
		sees = min(sees, unit.Current(unit.Six(turns*float64(t.Threshold.V))))
	}
	if unit.Compare(float64(sees), float64(t.Range.V.Low)) < 0 {
		a, b := unit.Amps.Pair(units, sees, t.Range.V.Low)
		says = sayOf(times, "finding-threshold.below-range.says", a, strconv.Itoa(times), b)
		least := math.Ceil(unit.Six(float64(t.Range.V.Low)/(float64(sees)/turns))) + figure("turns to spare").Number("value")
		if float64(sees) > 0 && least <= 20 {
			return says, say("finding-threshold.loop.do", strconv.Itoa(int(least)))
		}
		return says, say("finding-threshold.lower-range.do")
	}
	most := s.On
	if t.Machine != nil && t.Machine.Amps.Known() {
		most = max(most, t.Machine.Amps.V)
	}
	if most = unit.Current(unit.Six(turns * float64(most))); unit.Compare(float64(most), float64(t.Range.V.High)) > 0 {
		a, b := unit.Amps.Pair(units, most, t.Range.V.High)
		return sayOf(times, "finding-threshold.above-range.says", a, strconv.Itoa(times), b), say("finding-threshold.above-range.do")
	}
	return "", ""
}
