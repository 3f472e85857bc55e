package timing

import (
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
	Low, Best, High unit.Current // by common practice, and within the sensor's range where that leaves a place; Best is nought where nothing is drawn with the spindle off
	Set             shop.Field[unit.Current]
	OffLow, OffHigh unit.Current // where the sensor should let go, below the threshold set, else below the best; never as low as the current off
	NoLetGo         bool         // all of that lies at or under the current off: it may never let go

	Turns     int          // through the sensor
	Sees      unit.Current // of what has to act on it, turns counted; the most there is, where Stand is AboveRange
	RangeLow  unit.Current // the sensor's range, in current of the conductor: divided by the turns
	RangeHigh unit.Current
	NoRoom    bool // the sensor does not act where practice puts a threshold
	Mend      Mend // where that is so, and where Stand is BelowRange or AboveRange

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
	if t.Range.Known() {
		turns := unit.Current(x.Turns)
		x.RangeLow, x.RangeHigh = unit.SixOf(t.Range.V.Low/turns), unit.SixOf(t.Range.V.High/turns)
	}
	if x.Sensed.Apart() {
		x.Low, x.Best, x.High = x.Sensed.Band()
		if low, best, high, ok := x.Sensed.BandOf(t.Range, x.Turns); ok {
			x.Low, x.Best, x.High = low, best, high
		} else if x.NoRoom = x.Low <= x.High; x.NoRoom {
			x.Mend = x.mend(t)
		}
	}
	if at := used(t.Threshold, x.Best); x.Sensed.Apart() || t.Threshold.Known() {
		x.letsGo(at)
	}
	x.Stand = x.stand(t)
	x.Contact = x.Stand == NotApart || x.Stand == Near
	return x
}

// letsGo is where the sensor should let go: by common practice, and above what
// the machine draws with the spindle off, where it would hold on for ever.
func (x *Threshold) letsGo(at unit.Current) {
	x.OffLow, x.OffHigh = LetsGo(at)
	if !x.Sensed.OffKnown || unit.Compare(float64(x.OffLow), float64(x.Sensed.Off)) > 0 {
		return
	}
	x.OffLow = x.Sensed.Off
	x.NoLetGo = unit.Compare(float64(x.OffHigh), float64(x.Sensed.Off)) <= 0
}

// AboveOff reports whether the lower end of where it lets go is the current
// with the spindle off, which it has to stay above.
func (x *Threshold) AboveOff() bool {
	return x.OffHigh > 0 && x.Sensed.OffKnown && x.OffLow == x.Sensed.Off
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
