package checks

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var threshold = &Check{
	ID:    "threshold",
	Name:  "Threshold of a trigger",
	Title: "Does every current trigger tell a machine that runs from one that only has power",
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
	f := Finding{About: t.Name, Kind: "trigger", At: t.At, By: ByGiven, Weight: Know, Basis: ownFile("currents of the machine and range of the sensor")}
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
		f.Says = "The currents cannot be told apart: up to " + off + " A with the spindle off, from " + on + " A idling, with the spread of the readings. No threshold is right."
		f.Do = "Use a contact of the machine's starter instead. That is an electrician's work: lock the supply out first."
		return f
	}
	if says, do := outOfRange(p, t, s); says != "" {
		f.State, f.Weight, f.Says, f.Do = NotMet, Mend, says, do
		f.Basis = ownFile("the sensor's range and turns")
		return f
	}
	low, best, high := s.Band()
	by := "Common practice puts it between " + amps(low) + " and " + amps(high)
	if best > 0 {
		by += ", best at " + amps(best)
	}
	if !t.Threshold.Known() {
		f.State = NotGiven
		f.Says = "Its threshold is not given. " + by + "."
		f.Do = "Set it, prove it by switching the machine on and off five times, and put it into the file."
		return f
	}
	set := t.Threshold.V
	onFigure, offFigure := float64(s.On), float64(s.Off)
	f.Figures = []Figure{
		{Name: "threshold, under the current idling", Value: float64(set), Unit: "A", Limit: &onFigure, Basis: source.Basis{Mark: source.Given, Clause: "current idling"}},
		{Name: "threshold, over the current off", Value: float64(set), Unit: "A", Limit: &offFigure, Basis: source.Basis{Mark: source.Given, Clause: "current with the spindle off"}},
	}
	switch {
	case unit.Compare(float64(set), float64(s.On)) >= 0:
		f.State, f.Weight = NotMet, Mend
		a, b := unit.Amps.Pair(p.Shop.Units, set, s.On)
		f.Says = "At " + a + " A it is not under the " + b + " A that the machine draws idling: it misses a machine that runs without a cut."
		f.Do = by + ". Set it from the measured idle, not from the nameplate."
	case unit.Compare(float64(set), float64(s.Off)) <= 0:
		f.State, f.Weight = NotMet, Mend
		a, b := unit.Amps.Pair(p.Shop.Units, set, s.Off)
		f.Says = "At " + a + " A it is not over the " + b + " A that the machine draws with the spindle off: the fan would never stop."
		f.Do = by + "."
	default:
		f.margins(p, t, s, by)
	}
	return f
}

// margins compares a threshold that lies between with the margins of
// practice.
func (f *Finding) margins(p *plan.Plan, t *shop.Trigger, s Sensed, by string) {
	low, _, high := s.Band()
	set, units := t.Threshold.V, p.Shop.Units
	f.Basis = append(f.Basis, figure("threshold above off").Basis)
	between := "At " + unit.Amps.Print(units, set) + " it lies between " + unit.Amps.Figure(units, s.Off) + " A with the spindle off and " + unit.Amps.Figure(units, s.On) + " A idling"
	apart := figure("idling against off").Number("value")
	switch {
	case unit.Compare(float64(s.On), apart*float64(s.Off)) < 0:
		f.State = Thin
		f.Says = between + ". The two are less than " + unit.Short(apart) + " times apart, so a warm motor or a low mains may upset it."
		f.Do = "Read both again, hot and cold. A contact of the starter is the surer trigger."
	case unit.Compare(float64(set), float64(low)) < 0 || unit.Compare(float64(set), float64(high)) > 0:
		f.State = Thin
		f.Says = between + ", with little margin. " + by + "."
		f.Do = "Move it there, and prove it by switching the machine on and off five times."
	default:
		f.State = Met
		f.Says = between + ", with the margins of common practice."
		f.Do = "Prove it by switching the machine on and off five times."
	}
	if s.Unused > 0 {
		f.Says += " " + strconv.Itoa(s.Unused) + " of the readings " + plural(make([]string, s.Unused), "is", "are") + " of another state and not used."
	}
}

// currentsMissing says which current is not given.
func currentsMissing(t *shop.Trigger, s Sensed) (says, do string) {
	var missing, fields []string
	if !s.OffKnown {
		missing, fields = append(missing, "the current with the spindle off"), append(fields, "standby")
	}
	if !s.OnKnown {
		missing, fields = append(missing, "the current idling"), append(fields, "no_load")
	}
	says = capital(listed(missing)) + plural(missing, " is", " are") + " not given."
	if !s.OnKnown && t.Machine != nil && t.Machine.Amps.Known() {
		says += " The nameplate's amps do not stand in for it: an idling motor draws far less."
	}
	return says, "Read it with a clamp meter around one conductor and add " + listed(fields) + ", or readings. Whoever opens a box for it is a licensed electrician."
}

// outOfRange compares what the sensor sees, turns counted, with its range.
func outOfRange(p *plan.Plan, t *shop.Trigger, s Sensed) (says, do string) {
	if !t.Range.Known() {
		return "", ""
	}
	units, turns := p.Shop.Units, float64(max(t.Turns.V, 1))
	through := " with " + strconv.Itoa(int(turns)) + plural(make([]string, int(turns)), " turn", " turns") + " through it"
	sees := unit.Current(unit.Six(turns * float64(s.On)))
	if t.Threshold.Known() {
		sees = min(sees, unit.Current(unit.Six(turns*float64(t.Threshold.V))))
	}
	if unit.Compare(float64(sees), float64(t.Range.V.Low)) < 0 {
		a, b := unit.Amps.Pair(units, sees, t.Range.V.Low)
		says = "The sensor sees " + a + " A where it has to act" + through + ", and its range starts at " + b + " A."
		least := math.Ceil(unit.Six(float64(t.Range.V.Low)/(float64(sees)/turns))) + figure("turns to spare").Number("value")
		if float64(sees) > 0 && least <= 20 {
			return says, "Loop the conductor " + strconv.Itoa(int(least)) + " times through the sensor, the power locked out, and put turns into the file. The top of the range falls by as much."
		}
		return says, "Use a sensor with a lower range, or a contact of the starter."
	}
	most := s.On
	if t.Machine != nil && t.Machine.Amps.Known() {
		most = max(most, t.Machine.Amps.V)
	}
	if most = unit.Current(unit.Six(turns * float64(most))); unit.Compare(float64(most), float64(t.Range.V.High)) > 0 {
		a, b := unit.Amps.Pair(units, most, t.Range.V.High)
		return "The sensor sees up to " + a + " A" + through + ", and its range ends at " + b + " A.", "Take turns out, or use a sensor with a higher range."
	}
	return "", ""
}
