package plan

import (
	"dustbook/plan/duct"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// FirstDay is the sheet for whoever is new, as a reading of its wording names
// it.
const FirstDay = "first day"

// Names lists what a shop has that a reading can be taken at. A duct goes by
// its name and, where it is cut, by the names of its stretches as well.
func Names(s *shop.Shop) record.Names {
	n := record.Names{Sheets: []string{FirstDay}}
	for _, m := range s.Machines {
		n.Machines = append(n.Machines, m.Name)
		for _, p := range m.Ports {
			n.Ports = append(n.Ports, p.Full())
		}
	}
	for _, d := range s.Ducts {
		n.Ducts = append(n.Ducts, d.Name)
		if len(d.Stretches) > 1 {
			for _, stretch := range d.Stretches {
				n.Ducts = append(n.Ducts, stretch.Name())
			}
		}
	}
	for _, g := range s.Gates {
		n.Gates = append(n.Gates, g.Name)
	}
	for _, t := range s.Taps {
		if t.Name != "" {
			n.Taps = append(n.Taps, t.Name)
		}
	}
	for _, c := range s.Collectors {
		n.Collectors = append(n.Collectors, c.Name)
		if c.Filter != nil {
			n.Filters = append(n.Filters, c.Name)
		}
	}
	for _, r := range s.Rooms {
		n.Rooms = append(n.Rooms, r.Name)
	}
	for _, u := range duct.Uses(s) {
		n.Uses = append(n.Uses, u.Name)
	}
	addControl(s, &n)
	return n
}

// addControl adds the devices: gates, triggers and sensors, on a chain or
// not.
func addControl(s *shop.Shop, n *record.Names) {
	n.Devices = append(n.Devices, n.Gates...)
	for _, t := range s.Triggers {
		n.Devices = append(n.Devices, t.Name)
	}
	for _, v := range s.Sensors {
		if v.Name != "" {
			n.Devices = append(n.Devices, v.Name)
		}
	}
	for _, c := range s.Chains {
		n.Chains = append(n.Chains, c.Name)
	}
}

// CheckRecords lists the readings that are for a thing or use the shop does
// not have. A record from before the shop's newest revision may name what is
// gone since.
func CheckRecords(s *shop.Shop, records []*record.Record) entry.Problems {
	names, changed := Names(s), latest(s, nil)
	var problems entry.Problems
	for _, r := range records {
		if r.Date.String() < changed.String() {
			continue
		}
		for _, p := range r.Check(names) {
			p.Do += "; if it is gone since, add a [[revision]] of a later day"
			problems = append(problems, p)
		}
	}
	return problems
}
