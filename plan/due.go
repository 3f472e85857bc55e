package plan

import (
	"slices"

	"dustbook/plan/entry"
	"dustbook/plan/record"
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

// lastDone is the latest day on which a job was done: a record says so, or holds
// the readings that only the job gives. Of extinguishers the one counts that was
// serviced first.
func (p *Plan) lastDone(s takeoff.Service) entry.Date {
	var last entry.Date
	for _, r := range p.Records {
		if (slices.Contains(r.Done, s.Job) || shows(r, s.Job)) && r.Date.String() > last.String() {
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

// shows reports whether the readings of a record show that a job was done.
func shows(r *record.Record, job string) bool {
	of := map[string]string{"bonds": "resistance", "test": "hood pressure", "stops": "stop"}[job]
	if of == "" || job == "test" && r.Kind != "commissioning" && r.Kind != "inspection" {
		return false
	}
	return slices.ContainsFunc(r.Readings, func(v record.Reading) bool { return v.Of == of })
}
