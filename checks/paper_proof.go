package checks

import (
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
	"dustbook/plan/shop"
)

var commissioningRecord = &Check{
	ID:    "commissioning-record",
	Name:  say("check.commissioning-record.name"),
	Title: say("check.commissioning-record.title"),
	Needs: "duct.serves, machine.port, record.kind, reading.of, reading.at, document.kind, document.held",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if len(served(p, c)) > 0 {
				report(proved(p, c))
			}
		}
	},
}

// proofBasis are the texts on what a commissioning is and that smoke comes first.
var proofBasis = basesOf("commissioning-record")

// Words of readings that a commissioning is held against.
const (
	ofSmoke        string = "smoke"
	ofHoodPressure string = "hood pressure"
	ofFlow         string = "flow"
	ofVelocity     string = "velocity"
)

// proved judges the records of commissioning and inspection of one collector:
// smoke and air at every hood, and no change since.
func proved(p *plan.Plan, c *shop.Collector) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Basis: proofBasis, Weight: Know}
	smoked, measured, last := readAt(p)
	if last == (entry.Date{}) {
		if paper := paperNamed(p, commissioningPaper); paper.Document != nil && paper.Document.Held.V {
			f.State, f.By, f.At = Met, ByGiven, paper.Document.At
			f.Says, f.Do = say("finding-commissioning-record.held.says", paper.Document.Kind), say("finding-commissioning-record.held.do")
			return f
		}
		f.State = NotGiven
		f.Says, f.Do = say("finding-commissioning-record.none.says"), say("finding-commissioning-record.none.do")
		return f
	}
	var noSmoke, noAir []string
	for _, m := range served(p, c) {
		for _, port := range m.Ports {
			if port.Duct == nil || port.Duct.Collector != c {
				continue
			}
			if !smoked[port.Full()] {
				noSmoke = append(noSmoke, port.Full())
			}
			if !measured[port.Full()] {
				noAir = append(noAir, port.Full())
			}
		}
	}
	changed := changedAfter(p, last)
	if len(noSmoke)+len(noAir) == 0 && changed == nil {
		f.State = Met
		f.Says, f.Do = say("finding-commissioning-record.met.says", last.String()), say("finding-commissioning-record.met.do")
		return f
	}
	f.State, f.Weight = NotMet, Mend
	if len(noSmoke) > 0 {
		f.Says = say("finding-commissioning-record.no-smoke.says", listed(firstFew(noSmoke)))
		f.Do = say("finding-commissioning-record.no-smoke.do")
	}
	if len(noAir) > 0 {
		f.Says = join(f.Says, say("finding-commissioning-record.no-air.says", listed(firstFew(noAir))))
		f.Do = join(f.Do, say("finding-commissioning-record.no-air.do"))
	}
	if changed != nil {
		f.Says = join(f.Says, say("finding-commissioning-record.changed.says", changed.Date.String(), last.String()))
		f.Do = join(f.Do, say("finding-commissioning-record.changed.do"))
	}
	return f
}

// readAt gathers where the records of commissioning and inspection have smoke and
// where they have a figure of the air, and the day of the last one with readings;
// no day where there is none.
func readAt(p *plan.Plan) (smoked, measured map[string]bool, last entry.Date) {
	smoked, measured = map[string]bool{}, map[string]bool{}
	for _, r := range p.Records {
		if r.Kind != commissioningKind && r.Kind != inspectionKind || len(r.Readings) == 0 {
			continue
		}
		if r.Date.String() > last.String() {
			last = r.Date
		}
		for _, reading := range r.Readings {
			switch reading.Of {
			case ofSmoke:
				smoked[reading.At] = true
			case ofHoodPressure, ofFlow, ofVelocity:
				measured[reading.At] = true
			}
		}
	}
	return smoked, measured, last
}

// changedAfter is the first record of a change after a day; nil where there is
// none.
func changedAfter(p *plan.Plan, day entry.Date) *record.Record {
	for _, r := range p.Records {
		if r.Kind == changedKind && r.Date.String() > day.String() {
			return r
		}
	}
	return nil
}
