package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
)

var trainingRecord = &Check{
	ID:    "training-record",
	Name:  say("check.training-record.name"),
	Title: say("check.training-record.title"),
	Needs: "document.kind, document.held, document.date, shop.setting, shop.employees, shop.pupils",
	Run: func(p *plan.Plan, report func(Finding)) {
		if people, known := peopleEmployedOrTaught(p.Shop); people || !known {
			report(taught(p, known))
		}
	},
}

// trainingBasis are the texts that want proof of who was taught what.
var trainingBasis = basesOf("training-record")

// taught judges whether a list of who is trained on which machine is in hand.
func taught(p *plan.Plan, known bool) Finding {
	f := Finding{By: ByGiven, Basis: trainingBasis, Weight: Know}
	paper := paperNamed(p, trainingPaper)
	if paper.Document != nil {
		f.At = paper.Document.At
	}
	switch {
	case paper.State == Held:
		f.State = Met
		f.Says = say("finding-training-record.held.says", paper.Document.Kind)
		f.Do = say("finding-training-record.held.do")
	case !known:
		f.State = NotGiven
		f.Says, f.Do = say("finding-training-record.no-setting.says"), say("finding-training-record.no-setting.do")
	case paper.Document != nil && paper.Document.Held.Known():
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-training-record.missing.says", paper.Document.Kind)
		f.Do = say("finding-training-record.missing.do")
	default:
		f.State = NotGiven
		f.Says, f.Do = say("finding-training-record.not-given.says"), say("finding-training-record.not-given.do")
	}
	return f
}

var hoodLabels = &Check{
	ID:    "hood-labels",
	Name:  say("check.hood-labels.name"),
	Title: say("check.hood-labels.title"),
	Needs: "collector.labelled, duct.serves, machine.makes",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if len(served(p, c)) > 0 {
				report(hoodsLabelled(p, c))
			}
		}
	},
}

// labelBasis are the texts that want hoods, gates and test points marked.
var labelBasis = basesOf("hood-labels")

// hoodsLabelled judges whether each hood of a collector says what may go in.
func hoodsLabelled(p *plan.Plan, c *shop.Collector) Finding {
	f := Finding{About: c.Name, Kind: "collector", At: c.At, By: ByGiven, Basis: labelBasis, Weight: Know}
	var names []string
	for _, m := range served(p, c) {
		names = append(names, m.Name)
	}
	hoods := listed(firstFew(unique(names)))
	switch {
	case !c.Labelled.Known():
		f.State = NotGiven
		f.Says, f.Do = say("finding-hood-labels.not-given.says", hoods), say("finding-hood-labels.not-given.do")
	case c.Labelled.V:
		f.State = Met
		f.Says, f.Do = say("finding-hood-labels.met.says", hoods), say("finding-hood-labels.met.do")
	default:
		f.State, f.Weight = NotMet, Mend
		f.Says, f.Do = say("finding-hood-labels.none.says", hoods), say("finding-hood-labels.none.do")
	}
	return f
}
