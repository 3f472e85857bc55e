package checks

import (
	"dustbook/plan"
	"dustbook/plan/shop"
)

var starterKind = &Check{
	Whom:  Electrician,
	ID:    "starter-kind",
	Name:  say("check.starter-kind.name"),
	Title: say("check.starter-kind.title"),
	Needs: "collector.starter, collector.motor",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, told := starterOf(c); told {
				report(f)
			}
		}
	},
}

// starterBasis is common practice.
var starterBasis = basesOf("starter-kind")

// starterOf says whether what switches a fan is made for a motor. A plain
// switch is not judged; one that is not given, and what comes back after a
// power cut, is said by the check of power cuts.
func starterOf(c *shop.Collector) (f Finding, told bool) {
	f = Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Know, Basis: starterBasis}
	relay := c.Starter.V == "two-wire relay" || c.Starter.V == "plug-in relay"
	switch {
	case held(c):
		f.State = Met
		f.Says, f.Do = say("finding-starter-kind.magnetic.says"), say("finding-starter-kind.magnetic.do")
	case relay && c.Motor == nil:
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-starter-kind.no-motor.says", c.Starter.V), say("finding-starter-kind.no-motor.do")
	case relay:
		f.State, f.Weight = Advice, Mend
		f.Says, f.Do = say("finding-starter-kind.relay.says", c.Starter.V), say("finding-starter-kind.relay.do")
		f.Asks = say("finding-starter-kind.relay.asks", c.Name, c.Starter.V)
	default:
		return f, false
	}
	return f, true
}
