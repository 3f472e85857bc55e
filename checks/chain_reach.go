package checks

import (
	"dustbook/plan"
	"dustbook/plan/control/chain"
	"dustbook/plan/unit"
)

// reachBasis is the text that the edge of low voltage is from.
var reachBasis = basesOf("supply-margin")

// reachOf is the finding about the volts of the supply, where they lie above
// what a cited text calls low. The edge above all rows is known from memory, so
// it is a question; it weighs as much as one can.
func reachOf(p *plan.Plan) (f Finding, told bool) {
	units, edge := p.Shop.Units, p.Chains.Edge
	f = Finding{At: p.Shop.Control.At, By: ByRule, State: Ask}
	if p.Chains.Reach == chain.Reached {
		return f, false
	}
	limit := float64(edge.Volts)
	f.Basis = append(ownFile(say("finding-supply-margin.volts.given")), reachBasis...)
	if p.Chains.Reach == chain.HalfWay {
		f.Basis = append(f.Basis, edge.Basis)
	}
	f.Figures = []Figure{{Name: say("finding-supply-margin.reach.figure"), Value: float64(p.Shop.Control.Supply.V), Unit: "V", Limit: &limit, Basis: edge.Basis}}
	volts, ends := unit.Volts.Pair(units, p.Shop.Control.Supply.V, edge.Volts)
	if p.Chains.Reach == chain.HalfWay {
		f.Weight = Mend
		f.Says = say("finding-supply-margin.half-way.says", volts, ends)
		f.Do, f.Asks = say("finding-supply-margin.half-way.do"), say("finding-supply-margin.listing.asks", supplyText(p))
		return f, true
	}
	f.Weight = Stop
	f.Says = say("finding-supply-margin.out-of-reach.says", volts, ends)
	f.Do, f.Asks = say("finding-supply-margin.out-of-reach.do"), outOfReachAsks(p)
	return f, true
}

func outOfReachAsks(p *plan.Plan) string {
	return say("finding-supply-margin.out-of-reach.asks", unit.Volts.Print(p.Shop.Units, p.Shop.Control.Supply.V))
}

// outOfReach keeps a finding about a control above low voltage from reading as
// harmless: what would hold there becomes a question, and nothing is advised
// but to leave it off.
func outOfReach(p *plan.Plan, f Finding) Finding {
	if p.Chains.Reach != chain.OutOfReach {
		return f
	}
	f.Says = join(say("finding-supply-margin.not-low.says"), f.Says)
	f.Do = say("finding-supply-margin.out-of-reach.do")
	if f.State == Met || f.State == Thin {
		f.State, f.Weight, f.Asks = Ask, Mend, outOfReachAsks(p)
	}
	return f
}
