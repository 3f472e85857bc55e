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
	Within
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
	Counted  int       // starts of the fan in that hour, with that run-on

	Hold      unit.Time // run-on with which the limit holds in that hour, where it is passed
	HoldKnown bool      // false where not even one start an hour is left
	Sure      unit.Time // run-on with which the limit holds whatever anyone does; nought without a limit
	Verdict   StartsVerdict
}

// startsOf reckons the starts of one collector. The shop's busiest hour is
// made of the machines that start most often, no more of them at once than
// people work at machines; within it the starts of each are spread evenly,
// the machines out of step, and every run is taken for a moment. That is
// common practice, no source.
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
	times := busiest(x.Machines, s.PeopleAtMachines.V)
	for _, r := range x.Machines {
		x.Asked += r.Hour
	}
	x.Asked, x.Counted = unit.Six(x.Asked), Counted(times, x.RunOn)
	x.judge(times)
	return x
}

func (x *Starts) judge(times []unit.Time) {
	limit := x.Limit.PerHour
	if x.Limit.Known() && limit > 0 {
		x.Sure = unit.SixOf(unit.Time(float64(hour) / limit))
	}
	allowed := int(math.Floor(limit))
	over := x.Limit.Known() && unit.Compare(x.Asked, limit) > 0 && x.Counted > allowed
	switch {
	case len(x.Machines) == 0:
		x.Verdict = ByHand
	case over:
		x.Verdict = Over
		x.Hold, x.HoldKnown = Hold(times, allowed)
	case x.Limit.Known() && len(x.Missing) == 0:
		x.Verdict = Within
	}
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

// busiest fills an hour with the machines that start most often, writes down
// the part of each, and gives the times of its starts in order.
func busiest(rates []Rate, people int) []unit.Time {
	var order []*Rate
	for i := range rates {
		if rates[i].PerHour > 0 {
			order = append(order, &rates[i])
		}
	}
	slices.SortStableFunc(order, func(a, b *Rate) int { return unit.Compare(b.PerHour, a.PerHour) })
	left := float64(max(people, 1))
	for _, r := range order {
		part := min(left, 1, float64(r.Machine.Starts.V)/r.PerHour)
		r.Hour = unit.Six(part * r.PerHour)
		left -= part
	}
	var times []unit.Time
	for i, r := range order {
		step := (float64(i) + 0.5) / float64(len(order))
		n := math.Ceil(r.Hour)
		for j := 0.0; j < n; j++ {
			times = append(times, unit.SixOf(unit.Time(float64(hour)*(j+step)/n)))
		}
	}
	slices.Sort(times)
	return times
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
