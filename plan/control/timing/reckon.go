package timing

import (
	"dustbook/plan/control"
	"dustbook/plan/shop"
)

// Reckoning is everything this package finds out about a shop.
type Reckoning struct {
	Triggers   []*OfTrigger   // in file order
	Collectors []*OfCollector // in file order
}

// OfTrigger are the times of one trigger.
type OfTrigger struct {
	Trigger   *shop.Trigger
	Delay     Delay
	RunOn     RunOn
	Dust      *Dust // nil of a trigger that starts no fan, or is pressed
	Threshold Threshold

	pressed bool
}

// OfCollector are the times of one collector.
type OfCollector struct {
	Collector *shop.Collector
	Fan       Fan
	Starts    Starts
}

// Reckon reckons the times of a shop's control half, from what is known of
// the moving air.
func Reckon(s *shop.Shop, k *control.Reckoning, air Air) *Reckoning {
	r := &Reckoning{}
	for _, a := range k.Ways {
		t := a.Trigger
		r.Triggers = append(r.Triggers, &OfTrigger{
			Trigger: t, Delay: delayOf(s, k, a), RunOn: runOnOf(a, air.Paths), Threshold: thresholdOf(t), pressed: control.Pressed(t)})
	}
	fans := map[*shop.Collector]*OfCollector{}
	for _, c := range s.Collectors {
		of := &OfCollector{Collector: c, Fan: fanOf(c), Starts: startsOf(s, c, r.Triggers)}
		r.Collectors = append(r.Collectors, of)
		fans[c] = of
	}
	for _, t := range r.Triggers {
		t.Dust = dustOf(t, fans, air.Chips)
	}
	return r
}

// Of are the times of a trigger; nil for one of another shop.
func (r *Reckoning) Of(t *shop.Trigger) *OfTrigger {
	for _, of := range r.Triggers {
		if of.Trigger == t {
			return of
		}
	}
	return nil
}

// On are the times of a collector; nil for one of another shop.
func (r *Reckoning) On(c *shop.Collector) *OfCollector {
	for _, of := range r.Collectors {
		if of.Collector == c {
			return of
		}
	}
	return nil
}
