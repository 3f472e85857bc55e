package checks

import "dustbook/plan"

var papersInHand = &Check{
	ID:    "papers-in-hand",
	Name:  say("check.papers-in-hand.name"),
	Title: say("check.papers-in-hand.title"),
	Needs: "record.kind, document.kind, document.held, document.date, shop.setting, shop.employees, shop.pupils, shop.rules",
	Run: func(p *plan.Plan, report func(Finding)) {
		if len(p.Shop.Collectors) > 0 {
			report(inHand(p))
		}
	},
}

// papersBasis are the texts that most of the papers are of.
var papersBasis = basesOf("papers-in-hand")

// inHand lists the papers that are asked for and neither in hand nor in the book:
// those of which the file says so, and those of which it says nothing. A paper that
// a check of its own looks at is left to it.
func inHand(p *plan.Plan) Finding {
	f := Finding{By: ByGiven, Basis: papersBasis, Weight: Know}
	var lacking, silent []string
	for _, paper := range Papers(p) {
		switch {
		case paper.State != Missing || paper.Check != "":
		case paper.Document != nil && paper.Document.Held.Known():
			lacking = append(lacking, paper.Name)
			if !f.At.Known() {
				f.At = paper.Document.At
			}
		default:
			silent = append(silent, paper.Name)
		}
	}
	if len(lacking)+len(silent) == 0 {
		f.State = Met
		f.Says, f.Do = say("finding-papers-in-hand.met.says"), say("finding-papers-in-hand.met.do")
		return f
	}
	if len(lacking) > 0 {
		f.State, f.Weight = NotMet, Mend
		f.Says, f.Do = say("finding-papers-in-hand.lacking.says", listed(lacking)), say("finding-papers-in-hand.lacking.do")
	} else {
		f.State = NotGiven
	}
	if len(silent) > 0 {
		f.Says = join(f.Says, say("finding-papers-in-hand.silent.says", listed(silent)))
		f.Do = join(f.Do, say("finding-papers-in-hand.silent.do"))
	}
	return f
}
