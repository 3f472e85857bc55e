package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

// shown is what has to be there before the book prints a paper.
type shown string

const (
	shownAlways        shown = "always"
	shownRoutes        shown = "routes"
	shownCommissioning shown = "commissioning"
	shownReadings      shown = "readings"
	shownService       shown = "service"
	shownInspection    shown = "inspection"
	shownBonded        shown = "bonded"
	shownCircuits      shown = "circuits"
	shownExtinguishers shown = "extinguishers"
	shownChanges       shown = "changes"
)

// Words of the record file that the checks ask for.
const (
	commissioningKind string = "commissioning"
	inspectionKind    string = "inspection"
	serviceKind       string = "service"
	changedKind       string = "change"
	letterKind        string = "letter"
	ofResistance      string = "resistance"
)

var shownBy = map[shown]func(*plan.Plan) bool{
	shownAlways:        func(*plan.Plan) bool { return true },
	shownRoutes:        drawn,
	shownCommissioning: func(p *plan.Plan) bool { return hasRecord(p, commissioningKind) },
	shownService:       func(p *plan.Plan) bool { return hasRecord(p, serviceKind) },
	shownInspection:    func(p *plan.Plan) bool { return hasRecord(p, inspectionKind) },
	shownChanges:       func(p *plan.Plan) bool { return len(p.Shop.Revisions) > 0 || hasRecord(p, changedKind) },
	shownReadings: func(p *plan.Plan) bool {
		return hasReading(p, func(record.Reading) bool { return true })
	},
	shownBonded: func(p *plan.Plan) bool {
		return hasReading(p, func(r record.Reading) bool { return r.Of == ofResistance })
	},
	shownCircuits: func(p *plan.Plan) bool {
		return slices.ContainsFunc(p.Shop.Collectors, func(c *shop.Collector) bool { return c.Circuit != nil })
	},
	shownExtinguishers: func(p *plan.Plan) bool {
		unserviced := func(e *shop.Extinguisher) bool { return e.Serviced == (entry.Date{}) }
		return len(p.Shop.Extinguishers) > 0 && !slices.ContainsFunc(p.Shop.Extinguishers, unserviced)
	},
}

// drawn reports whether every duct has a route and every machine and collector a
// place, so that the plan shows them all.
func drawn(p *plan.Plan) bool {
	for _, c := range p.Shop.Collectors {
		if ducts, things := undrawn(p.Shop, c); len(ducts)+len(things) > 0 {
			return false
		}
	}
	return len(p.Shop.Ducts) > 0
}

// undrawn names the ducts of a collector that have no route, and what has no
// place: itself, and the machines that it serves.
func undrawn(s *shop.Shop, c *shop.Collector) (ducts, things []string) {
	if !c.Place.Known() {
		things = append(things, c.Name)
	}
	for _, d := range s.Ducts {
		if d.Collector != c {
			continue
		}
		if d.Route == nil {
			ducts = append(ducts, d.Name)
		}
		for _, port := range d.Serves {
			if m := port.Machine; !m.Place.Known() {
				things = append(things, m.Name)
			}
		}
	}
	return ducts, unique(things)
}

// hasRecord reports whether a record of a kind is there.
func hasRecord(p *plan.Plan, kind string) bool {
	return slices.ContainsFunc(p.Records, func(r *record.Record) bool { return r.Kind == kind })
}

// hasReading reports whether a reading that is looked for is in any record.
func hasReading(p *plan.Plan, look func(record.Reading) bool) bool {
	return slices.ContainsFunc(p.Records, func(r *record.Record) bool { return slices.ContainsFunc(r.Readings, look) })
}

// startsByItself reports whether a gate or a fan of the shop moves without a hand
// on it: a gate is powered, or a trigger starts a fan.
func startsByItself(p *plan.Plan) bool {
	return len(p.Control.Powered()) > 0 || slices.ContainsFunc(p.Shop.Collectors, p.Control.Started)
}

// Rows of papers.csv that a check of their own looks at.
const (
	trainingPaper      string = "training"
	lockoutPaper       string = "lockout"
	examinationPaper   string = "examination"
	commissioningPaper string = "commissioning-report"
)

// paperNamed is the paper of a row; one that no row has is a fault of the program.
func paperNamed(p *plan.Plan, id string) Paper {
	for _, paper := range Papers(p) {
		if paper.ID == id {
			return paper
		}
	}
	panic("checks: papers.csv has no row " + id)
}
