package timing

import (
	"math"
	"strings"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Sensed is what a trigger sees of its machine: the most with the spindle off
// and the least with it on and idling, the spread of the readings taken off.
type Sensed struct {
	Off, On           unit.Current
	OffKnown, OnKnown bool
	Slowly            bool // one of the readings is of the lowest speed
	Unused            int  // readings of a state that is neither
}

// SensedBy gathers what the file gives of a trigger's machine. The cautious
// end of each counts.
func SensedBy(t *shop.Trigger) Sensed {
	var s Sensed
	if t.Standby.Known() {
		s.off(t.Standby.V)
	}
	if t.NoLoad.Known() {
		s.on(t.NoLoad.V)
	}
	spreads := share("reading spreads")
	for _, r := range t.Readings {
		wide := unit.Current(spreads * float64(r.Spread.V))
		switch meaning(r.State) {
		case "off":
			s.off(r.Mean + wide)
		case "idling slowly":
			s.Slowly = true
			s.on(max(0, r.Mean-wide))
		case "idling":
			s.on(max(0, r.Mean-wide))
		default:
			s.Unused++
		}
	}
	s.Off, s.On = unit.SixOf(s.Off), unit.SixOf(s.On)
	return s
}

func (s *Sensed) off(i unit.Current) { s.Off, s.OffKnown = max(s.Off, i), true }

func (s *Sensed) on(i unit.Current) {
	if !s.OnKnown || i < s.On {
		s.On, s.OnKnown = i, true
	}
}

// meaning is what the words of a reading's state mean; empty for other words.
func meaning(state string) string {
	state = strings.ToLower(strings.TrimSpace(state))
	for _, r := range stateTable.Rows {
		if r.Text("word") == state {
			return r.Text("means")
		}
	}
	return ""
}

// Known reports whether both currents are.
func (s Sensed) Known() bool { return s.OffKnown && s.OnKnown }

// Apart reports whether the two can be told apart at all.
func (s Sensed) Apart() bool {
	return s.Known() && unit.Compare(float64(s.On), float64(s.Off)) > 0
}

// FarApart is how many times the current off a machine idles at where a
// current trigger is sure; common practice, no source.
func FarApart() float64 { return share("idling against off") }

// Usable reports whether they lie as far apart as common practice asks.
func (s Sensed) Usable() bool {
	return s.Apart() && unit.AtLeast(float64(s.On), FarApart()*float64(s.Off))
}

// Band is where a threshold is put by common practice: between the multiple
// of the current off and the share of the current idling, at the geometric
// mean of the two where that lies between.
func (s Sensed) Band() (low, best, high unit.Current) {
	low = unit.SixOf(unit.Current(share("threshold above off")) * s.Off)
	high = unit.SixOf(unit.Current(share("threshold below idling")) * s.On)
	best = unit.SixOf(unit.Current(math.Sqrt(float64(s.Off) * float64(s.On))))
	return low, min(max(best, low), high), high
}

// LetsGo is the band of the current at which a sensor with a threshold should
// let go again; common practice, no source.
func LetsGo(threshold unit.Current) (low, high unit.Current) {
	return unit.SixOf(unit.Current(share("switch off least")) * threshold), unit.SixOf(unit.Current(share("switch off most")) * threshold)
}
