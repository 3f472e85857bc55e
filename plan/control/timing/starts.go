package timing

import (
	"math"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Rate is how often a machine starts in its busiest hour.
type Rate struct {
	Machine *shop.Machine
	PerHour float64 // while it is used, its starts spread evenly over its hours
	Hour    float64 // its part of the busiest hour of the shop
	Missing []Missing
}

// StartsVerdict holds the starts that a day asks for against the limit.
type StartsVerdict uint8

const (
	StartsUnknown StartsVerdict = iota
	ByHand                      // no trigger of a machine starts it
	Within                      // in every hour that was tried, or whatever anyone does
	OnlyBusiest                 // in the busiest hour; there are too many quieter ones to try each
	Over
)

// Starts is how often a collector's fan may start, and how often it is asked
// to.
type Starts struct {
	Limit    Limit
	Machines []Rate // whose triggers start it, in file order
	Asked    float64
	Missing  []Missing // of what is asked
	RunOn    unit.Time // the shortest run-on that its triggers work with
	Counted  int       // most starts of the fan in an hour that was tried, with that run-on

	Worst     []*shop.Machine // at work in an hour with that many, where the limit is passed
	WorstAsks float64         // starts of that hour
	Hold      unit.Time       // run-on with which the limit holds in every hour, where it is passed
	HoldKnown bool            // false where not even one start an hour is left
	Sure      unit.Time       // run-on with which the limit holds whatever anyone does; nought without a limit
	Verdict   StartsVerdict
}

// IsSure reports whether the run-on holds the limit whatever anyone does.
func (x *Starts) IsSure() bool {
	return x.Sure > 0 && unit.AtLeast(float64(x.RunOn), float64(x.Sure))
}

// startsOf reckons the starts of one collector. The shop's busiest hour is
// made of the machines that start most often, no more of them at once than
// people work at machines; within it the starts of each are spread evenly,
// the machines out of step, and every run is taken for a moment. That is
// common practice, no source. A quieter hour, in which some machines or people
// rest, has longer gaps, so a run-on that covers those of the busiest may fail
// in it: every one of them is tried.
func startsOf(s *shop.Shop, c *shop.Collector, triggers []*OfTrigger) Starts {
	x, started := Starts{Limit: limitOf(c)}, false
	for _, t := range triggers {
		m := t.Trigger.Machine
		if !slices.Contains(t.Trigger.Starts, c) {
			continue
		}
		if !started || t.RunOn.Used < x.RunOn {
			x.RunOn, started = t.RunOn.Used, true
		}
		if m != nil && !slices.ContainsFunc(x.Machines, func(r Rate) bool { return r.Machine == m }) {
			x.Machines = append(x.Machines, rateOf(m))
		}
	}
	for _, r := range x.Machines {
		x.Missing = append(x.Missing, r.Missing...)
	}
	people := max(s.PeopleAtMachines.V, 1)
	full := busiest(x.Machines, people)
	x.Asked, x.Counted = full.asked(), Counted(full.times(), x.RunOn)
	for i, part := range full.parts() {
		x.Machines[i].Hour = part
	}
	x.judge(full, people)
	return x
}

// judge holds the hours against the limit: every one that can be, or the
// busiest alone where there are too many. What is known of some machines may
// pass the limit for sure; the run-on advised then, and where not every hour
// was tried, is the one that needs to know nothing.
func (x *Starts) judge(full busyHour, people int) {
	if x.Limit.Known() && x.Limit.PerHour > 0 {
		x.Sure = unit.SixOf(unit.Time(float64(hour) / x.Limit.PerHour))
	}
	switch {
	case len(x.Machines) == 0:
		x.Verdict = ByHand
		return
	case !x.Limit.Known():
		return
	case x.IsSure():
		x.Verdict = Within
		return
	}
	all := []busyHour{full}
	tried := unit.Compare(x.Asked, x.Limit.PerHour) <= 0
	if !tried {
		if list := hoursOf(x.Machines, people); list != nil {
			all, tried = list, true
		}
	}
	switch over := x.tryEach(all); {
	case over:
		x.Verdict = Over
		if x.HoldKnown && (!tried || len(x.Missing) > 0) {
			x.Hold = x.Sure
		}
	case !tried:
		x.Verdict = OnlyBusiest
	case len(x.Missing) == 0:
		x.Verdict = Within
	}
}

// tryEach holds hours against the limit and reports whether one passes it: the
// one with most starts of the fan is noted, and the run-on that would hold all
// of them.
func (x *Starts) tryEach(all []busyHour) bool {
	allowed := int(math.Floor(unit.Six(x.Limit.PerHour)))
	x.HoldKnown = allowed >= 1
	over, hold := false, unit.Time(0)
	for _, h := range all {
		if unit.Compare(h.asked(), x.Limit.PerHour) <= 0 {
			continue // no more runs than the motor may start
		}
		times := h.times()
		n := Counted(times, x.RunOn)
		if n > allowed && (!over || n > x.Counted) {
			over, x.Worst, x.WorstAsks = true, h.machines(), h.asked()
			x.Counted = n
		}
		x.Counted = max(x.Counted, n)
		if needed, ok := Hold(times, allowed); ok {
			hold = max(hold, needed)
		}
	}
	if over && x.HoldKnown {
		x.Hold = min(hold, x.Sure)
	}
	return over
}

// rateOf is how often a machine starts while it is used.
func rateOf(m *shop.Machine) Rate {
	r := Rate{Machine: m}
	if !m.Starts.Known() {
		r.Missing = append(r.Missing, Missing{m.Name, "machine.starts"})
	}
	if !m.Hours.Known() {
		r.Missing = append(r.Missing, Missing{m.Name, "machine.hours"})
	}
	if len(r.Missing) == 0 && m.Starts.V > 0 {
		r.PerHour = unit.Six(float64(m.Starts.V) / max(m.Hours.V, 1/float64(hour)))
	}
	return r
}

// Counted is how often a fan starts that runs on for a time after each of a
// row of starts, given in order: once, and again after every gap that is
// longer.
func Counted(times []unit.Time, runOn unit.Time) int {
	if len(times) == 0 {
		return 0
	}
	n := 1
	for _, gap := range gaps(times) {
		if unit.Compare(float64(gap), float64(runOn)) > 0 {
			n++
		}
	}
	return n
}

// Hold is the least run-on with which a row of starts, given in order, starts
// the fan no more often than allowed: the gaps sorted, it covers all but the
// longest, which with the first start make up what is allowed. It is false
// where not even one start is.
func Hold(times []unit.Time, allowed int) (unit.Time, bool) {
	if allowed < 1 {
		return 0, false
	}
	list := gaps(times)
	slices.Sort(list)
	if covered := len(list) - (allowed - 1); covered > 0 {
		return list[covered-1], true
	}
	return 0, true
}

// gaps are the times between one start and the next.
func gaps(times []unit.Time) []unit.Time {
	var list []unit.Time
	for i := 1; i < len(times); i++ {
		list = append(list, unit.SixOf(times[i]-times[i-1]))
	}
	return list
}
