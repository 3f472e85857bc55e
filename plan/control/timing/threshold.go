package timing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Stand says how a current trigger tells a machine that runs from one that
// only has power. The first that holds counts.
type Stand uint8

const (
	NoCurrent       Stand = iota // the trigger senses no current
	CurrentsMissing              // one of the two currents is not given
	NotApart                     // no threshold is right
	BelowRange                   // the sensor sees less than its range
	AboveRange                   // the sensor sees more than its range
	ThresholdNotSet
	Misses     // not under the current idling: it misses a machine that runs
	NeverStops // not over the current off: the fan would never stop
	Near       // the two currents lie nearer together than practice asks
	LittleMargin
	Stands
)

// Threshold is where the threshold of a current trigger can stand. All
// currents are those of the conductor, not what the sensor sees of them with
// several turns, but for Sees.
type Threshold struct {
	Sensed          Sensed
	Low, Best, High unit.Current // by common practice; Best is nought where nothing is drawn with the spindle off
	Set             shop.Field[unit.Current]
	OffLow, OffHigh unit.Current // where the sensor should let go, below the threshold set, else below the best

	Turns       int          // through the sensor
	TurnsNeeded int          // with which it would see enough; nought where no count of turns does it
	Sees        unit.Current // of what has to act on it, turns counted; the most there is, where Stand is AboveRange
	RangeLow    unit.Current // the sensor's range, in current of the conductor: divided by the turns
	RangeHigh   unit.Current

	Stand    Stand
	Contact  bool // a contact of the machine's starter is the surer trigger
	Cautions []Caution
}

// thresholdOf judges the threshold of a trigger.
func thresholdOf(t *shop.Trigger) Threshold {
	if t.Senses != "current" {
		return Threshold{}
	}
	x := Threshold{Sensed: SensedBy(t), Set: t.Threshold, Turns: max(1, t.Turns.V)}
	x.Cautions = cautionsOf(t, x.Sensed)
	if x.Sensed.Apart() {
		x.Low, x.Best, x.High = x.Sensed.Band()
	}
	if at := used(t.Threshold, x.Best); x.Sensed.Apart() || t.Threshold.Known() {
		x.OffLow, x.OffHigh = LetsGo(at)
	}
	x.Stand = x.stand(t)
	x.Contact = x.Stand == NotApart || x.Stand == Near
	return x
}

func (x *Threshold) stand(t *shop.Trigger) Stand {
	s := x.Sensed
	switch {
	case !s.Known():
		return CurrentsMissing
	case !s.Apart():
		return NotApart
	}
	if out := x.ranged(t); out != NoCurrent {
		return out
	}
	set := float64(x.Set.V)
	switch {
	case !x.Set.Known():
		return ThresholdNotSet
	case unit.Compare(set, float64(s.On)) >= 0:
		return Misses
	case unit.Compare(set, float64(s.Off)) <= 0:
		return NeverStops
	case !s.Usable():
		return Near
	case unit.Compare(set, float64(x.Low)) < 0 || unit.Compare(set, float64(x.High)) > 0:
		return LittleMargin
	}
	return Stands
}

// ranged holds what the sensor sees, turns counted, against its range: what
// has to act is the lesser of the current idling and the threshold; the most
// is the nameplate's where it is given.
func (x *Threshold) ranged(t *shop.Trigger) Stand {
	if !t.Range.Known() {
		return NoCurrent
	}
	turns := unit.Current(x.Turns)
	x.RangeLow, x.RangeHigh = unit.SixOf(t.Range.V.Low/turns), unit.SixOf(t.Range.V.High/turns)
	acts, most := x.Sensed.On, x.Sensed.On
	if x.Set.Known() {
		acts = min(acts, x.Set.V)
	}
	x.Sees, x.TurnsNeeded = unit.SixOf(turns*acts), TurnsFor(acts, t.Range.V.Low)
	if unit.Compare(float64(x.Sees), float64(t.Range.V.Low)) < 0 {
		return BelowRange
	}
	if t.Machine != nil && t.Machine.Amps.Known() {
		most = max(most, t.Machine.Amps.V)
	}
	if all := unit.SixOf(turns * most); unit.Compare(float64(all), float64(t.Range.V.High)) > 0 {
		x.Sees = all
		return AboveRange
	}
	return NoCurrent
}

// TurnsFor is how many turns of a conductor through a sensor bring a current
// up to the least that it acts on, with turns to spare: 1 where the current
// does it by itself, nought where more turns than practice winds would be
// needed.
func TurnsFor(current, least unit.Current) int {
	if unit.AtLeast(float64(current), float64(least)) {
		return 1
	}
	turns := math.Ceil(unit.Six(float64(least)/float64(current))) + share("turns to spare")
	if current <= 0 || turns > share("turns most") {
		return 0
	}
	return int(turns)
}
