package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
)

var unexpectedStart = &Check{
	ID:    "unexpected-start",
	Name:  say("check.unexpected-start.name"),
	Title: say("check.unexpected-start.title"),
	Whom:  Authority,
	Needs: "control.lockout, trigger.starts, gate.drive, document.kind, document.held, shop.setting, shop.employees, shop.pupils",
	Run: func(p *plan.Plan, report func(Finding)) {
		if startsByItself(p) {
			report(keptStill(p))
		}
	},
}

// startBasis are the texts on starts that nobody at the machine made.
var startBasis = basesOf("unexpected-start")

// keptStill judges what keeps gates and fans still while somebody reaches in. The
// switch is told by the file; whether a written procedure is wanted is asked.
func keptStill(p *plan.Plan) Finding {
	f := Finding{At: p.Shop.Control.At, By: ByTopology, Basis: startBasis, Weight: Know}
	movers := listed(firstFew(unique(moversOf(p))))
	if !p.Shop.Control.Lockout.Known() {
		f.State, f.Weight = NotGiven, Mend
		f.Says, f.Do = say("finding-unexpected-start.not-given.says", movers), say("finding-unexpected-start.not-given.do")
		return f
	}
	f.At = p.Shop.Control.Lockout.At
	f.Says = say("finding-unexpected-start.switch.says", movers, p.Shop.Control.Lockout.V)
	f.Do = say("finding-unexpected-start.switch.do")
	people, known := peopleEmployedOrTaught(p.Shop)
	if paper := paperNamed(p, lockoutPaper); known && !people || paper.State == Held {
		f.State = Met
		return f
	}
	f.State, f.By = Ask, ByRule
	f.Says = join(f.Says, say("finding-unexpected-start.procedure.says"))
	f.Do = join(say("finding-unexpected-start.procedure.do"), f.Do)
	f.Asks = say("finding-unexpected-start.asks", movers)
	return f
}

// moversOf names the fans that a trigger starts and the gates that move by power.
func moversOf(p *plan.Plan) []string {
	var fans []*shop.Collector
	for _, c := range p.Shop.Collectors {
		if p.Control.Started(c) {
			fans = append(fans, c)
		}
	}
	return append(collectorNames(fans), gateNames(p.Control.Powered())...)
}
