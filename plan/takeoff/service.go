package takeoff

import (
	"math"
	"slices"
	"time"

	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// serviceTable has one row for each job of upkeep and the rules that say how
// often: a row without rules is for every shop that has no row of its rules.
var serviceTable = source.MustTable(data, "takeoff", "service", "job", "every", "unit", "rules", "needs")

// Service is one job of upkeep and how often it falls due.
type Service struct {
	Job       string          // its name in a record that says it was done
	Collector *shop.Collector // whose bin or filter it is; nil for the whole shop
	Every     Interval
	Basis     source.Basis
}

// Interval is a count of days or of months.
type Interval struct {
	Count  int
	Months bool // else days
}

// After is the day on which an interval that began on a day is over. Where the
// month has no such day, it is the month's last.
func (i Interval) After(day entry.Date) entry.Date {
	if !i.Months {
		return dateOf(time.Date(day.Year, time.Month(day.Month), day.Day+i.Count, 0, 0, 0, 0, time.UTC))
	}
	last := time.Date(day.Year, time.Month(day.Month+i.Count+1), 0, 0, 0, 0, 0, time.UTC)
	next := dateOf(last)
	next.Day = min(next.Day, day.Day)
	return next
}

func dateOf(t time.Time) entry.Date {
	return entry.Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}
}

// services lists the jobs of upkeep of a shop, in the order of the data: only
// those it has a use for. A bin whose filling is reckoned with every machine is
// emptied as often as they fill it; any other is looked at every day.
func services(s *shop.Shop, bins []*Filling) []Service {
	var list []Service
	seen := map[string]bool{}
	for _, r := range serviceTable.Rows {
		job := r.Text("job")
		if seen[job] || !has(s, r.Text("needs")) {
			continue
		}
		seen[job] = true
		row := rowFor(job, s.Rules)
		every := Interval{Count: int(row.Number("every")), Months: row.Text("unit") == "month"}
		switch job {
		case "bin", "bin look":
			for _, f := range bins {
				if (job == "bin") == f.whole() && f.Collector.Bin != nil {
					list = append(list, Service{job, f.Collector, binEvery(f, every), basisOfBin(f, row.Basis)})
				}
			}
		case "filter", "test":
			for _, c := range s.Collectors {
				if job == "test" || c.Filter != nil {
					list = append(list, Service{job, c, every, row.Basis})
				}
			}
		default:
			list = append(list, Service{Job: job, Every: every, Basis: row.Basis})
		}
	}
	return list
}

// rowFor is the row of a job under rules, or else that of every shop.
func rowFor(job, rules string) source.Row {
	var row source.Row
	for _, r := range serviceTable.Rows {
		if r.Text("job") == job && (r.Text("rules") == rules || r.Text("rules") == "") {
			row = r
			if r.Text("rules") != "" {
				break
			}
		}
	}
	return row
}

// whole reports whether a day's filling is reckoned with every machine in it:
// with one left out the bin is full sooner than the days say.
func (f *Filling) whole() bool { return f.Known() && len(f.Open) == 0 }

// binEvery is the whole days until a bin is at its mark, and no less than the
// least.
func binEvery(f *Filling, least Interval) Interval {
	if !f.whole() {
		return least
	}
	return Interval{Count: max(least.Count, int(math.Floor(unit.Six(f.Days))))}
}

// basisOfBin says that the days of a bin are reckoned.
func basisOfBin(f *Filling, least source.Basis) source.Basis {
	if f.whole() {
		return source.Basis{Mark: source.Computed}
	}
	return least
}

// has reports whether a shop has what a job is for.
func has(s *shop.Shop, needs string) bool {
	switch needs {
	case "bin", "collector":
		return len(s.Collectors) > 0
	case "filter":
		return slices.ContainsFunc(s.Collectors, func(c *shop.Collector) bool { return c.Filter != nil })
	case "gate":
		return len(s.Gates) > 0
	case "hose":
		return slices.ContainsFunc(s.Ducts, func(d *shop.Duct) bool { return d.Hose != nil })
	case "duct":
		return len(s.Ducts) > 0
	case "room":
		return len(s.Rooms) > 0
	case "stop":
		return len(s.Stops) > 0
	case "extinguisher":
		return len(s.Extinguishers) > 0
	case "machine":
		return len(s.Machines) > 0
	}
	panic("takeoff: service.csv: nothing is called " + needs)
}

// JobNames lists the jobs of every shop, each once, in the order of the data.
func JobNames() []string {
	var list []string
	for _, r := range serviceTable.Rows {
		if !slices.Contains(list, r.Text("job")) {
			list = append(list, r.Text("job"))
		}
	}
	return list
}
