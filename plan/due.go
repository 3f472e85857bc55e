package plan

import (
	"slices"

	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
)

// Due is a job of upkeep with the day it was last done, by the records or the
// shop file, and the day it falls due.
type Due struct {
	takeoff.Service
	Last entry.Date // zero where nothing says that it was ever done
	Next entry.Date // the day of the plan where it was never done
}

// Due lists the jobs of upkeep, in their own order.
func (p *Plan) Due() []Due {
	var list []Due
	for _, s := range p.Takeoff.Jobs {
		d := Due{Service: s, Last: p.lastDone(s), Next: p.AsOf}
		if d.Last != (entry.Date{}) {
			d.Next = s.Every.After(d.Last)
		}
		list = append(list, d)
	}
	return list
}

// lastDone is the latest day on which a job was done: a record says so, or, of
// measuring the system again, holds the readings. Of extinguishers the one counts
// that was serviced first.
func (p *Plan) lastDone(s takeoff.Service) entry.Date {
	var last entry.Date
	for _, r := range p.Records {
		done := slices.Contains(r.Done, s.Job) || s.Job == "test" && p.tests(r, s.Collector)
		if done && r.Date.String() > last.String() {
			last = r.Date
		}
	}
	if s.Job != "extinguishers" || last != (entry.Date{}) {
		return last
	}
	for i, e := range p.Shop.Extinguishers {
		if i == 0 || e.Serviced.String() < last.String() {
			last = e.Serviced
		}
	}
	return last
}

// tests reports whether a record holds the air of a collector's system, measured
// at a hood or in a duct to prove it or to look at it again.
func (p *Plan) tests(r *record.Record, c *shop.Collector) bool {
	if r.Kind != "commissioning" && r.Kind != "inspection" {
		return false
	}
	return slices.ContainsFunc(r.Readings, func(v record.Reading) bool {
		return slices.Contains([]string{"hood pressure", "flow", "velocity"}, v.Of) && p.collectorAt(v.At) == c
	})
}

// collectorAt is the collector whose air a port or duct carries; nil where there
// is none of the name.
func (p *Plan) collectorAt(name string) *shop.Collector {
	if port := p.port(name); port != nil && port.Duct != nil {
		return port.Duct.Collector
	}
	if d, _ := p.duct(name); d != nil {
		return d.Collector
	}
	return nil
}
