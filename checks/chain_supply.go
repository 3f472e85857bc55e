package checks

import (
	"dustbook/plan"
	"dustbook/plan/control/chain"
	"dustbook/plan/unit"
)

var supplyMargin = &Check{
	Whom:    Electrician,
	Stops:   true,
	ID:      "supply-margin",
	Name:    say("check.supply-margin.name"),
	Title:   say("check.supply-margin.title"),
	Needs:   "control.supply, control.supply_power, control.supply_listed, control.moves_together, gate.stall, gate.holding, gate.takes, trigger.draws, sensor.draws, trigger.starts",
	Answers: settledBy("supply-margin", say("check.supply-margin.settles")),
	Run: func(p *plan.Plan, report func(Finding)) {
		if f, told := reachOf(p); told {
			report(f)
		}
		if a := p.Chains.Supply; a != nil {
			report(outOfReach(p, supplyGives(p, a)))
			if f, told := listing(p, a); told {
				report(f)
			}
		}
	},
}

// supplyGives words whether the supply gives what is asked.
func supplyGives(p *plan.Plan, a *chain.Supply) Finding {
	units := p.Shop.Units
	amps := func(i unit.Current) string { return unit.Amps.Print(units, i) }
	f := Finding{At: p.Shop.Control.At, By: ByGiven, Weight: Know, Basis: append(ownFile(say("finding-supply-margin.given")), chain.BasisOf("supply share"))}
	asked := say("finding-supply-margin.asks.says", amps(a.Sum), amps(a.Asked))
	if a.Has > 0 {
		limit := float64(a.Sum)
		f.Figures = []Figure{{Name: say("finding-supply-margin.figure"), Value: float64(a.Has), Unit: "A", Limit: &limit, Basis: given(say("finding-supply-margin.given"))}}
		asked = join(asked, say("finding-supply-margin.has.says", amps(a.Has)))
	}
	larger := say("finding-supply-margin.larger.do", watts(a.AskedPower()))
	if !a.Limited.OneServes && a.Limited.Listed != chain.NotListed {
		larger = say("finding-supply-margin.several.do", watts(a.Limited.Tight.Power))
	}
	switch a.Verdict {
	case chain.Short:
		f.State, f.Weight, f.Says, f.Do = NotMet, Mend, asked, larger
	case chain.Thin:
		f.State = Thin
		f.Says, f.Do = supplyThin(a, asked, larger)
	case chain.Holds:
		f.State, f.Says, f.Do = Met, asked, say("finding-supply-margin.met.do")
	default:
		f.State = NotGiven
		f.Says = missed(a.Missing)
		if a.Summed {
			f.Says = join(f.Says, asked)
		}
		f.Do = say("finding-supply-margin.not-given.do", listed(inputFields(a.Missing)))
	}
	return f
}

// supplyThin says why a supply that serves is thin, and what to do.
func supplyThin(a *chain.Supply, asked, larger string) (says, do string) {
	says = asked
	var gaps []chain.Gap
	for _, s := range a.Assumed {
		gaps = append(gaps, s.Gap)
	}
	if names := assumedNames(a.Assumed); len(names) > 0 {
		says = join(says, sayOf(len(names), "finding-chain-volts.assumed.says", listed(firstFew(names))))
	}
	if a.Guessed {
		says = join(says, say("finding-chain-volts.guessed.says"))
		gaps = append(gaps, chain.Gap{Input: chain.MovesTogether})
	}
	if !unit.AtLeast(float64(a.Has), float64(a.Asked)) {
		return says, larger
	}
	return says, say("finding-supply-margin.not-given.do", listed(inputFields(gaps)))
}

// listing is the finding about the words "power limited", where something is
// to be asked or looked at.
func listing(p *plan.Plan, a *chain.Supply) (f Finding, told bool) {
	f = Finding{At: p.Shop.Control.At, By: ByGiven, Weight: Know, Basis: ownFile(say("finding-supply-margin.listing.given"))}
	for _, l := range a.Limited.Limits {
		f.Basis = append(f.Basis, l.Basis)
	}
	f.State, f.Asks = Ask, say("finding-supply-margin.listing.asks", supplyText(p))
	f.Do = say("finding-supply-margin.listing.do")
	if p.Chains.Reach == chain.OutOfReach {
		return f, false // the finding about its volts asks
	}
	switch a.Limited.Listed {
	case chain.ListedWithin, chain.ListedHalfWay:
		return f, false
	case chain.NotListed:
		f.Says = say("finding-supply-margin.not-listed.says")
	case chain.ListedBeyond:
		f.State, f.Weight = NotMet, Mend
		f.Says = say("finding-supply-margin.beyond.says", watts(p.Shop.Control.SupplyPower.V), watts(a.Limited.Tight.Power))
	case chain.ListedDoubted:
		f.Says = say("finding-supply-margin.doubted.says", watts(p.Shop.Control.SupplyPower.V), watts(a.Limited.Tight.Power))
	default:
		f.Says = say("finding-supply-margin.listing.says")
	}
	return f, true
}

// supplyText is the supply as a question names it.
func supplyText(p *plan.Plan) string {
	c := p.Shop.Control
	volts, power := say("finding-supply-margin.unknown"), say("finding-supply-margin.unknown")
	if c.Supply.Known() {
		volts = unit.Volts.Print(p.Shop.Units, c.Supply.V)
	}
	if c.SupplyPower.Known() {
		power = say("finding-supply-margin.watts", watts(c.SupplyPower.V))
	}
	return say("finding-supply-margin.supply", volts, power)
}
