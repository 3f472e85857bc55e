package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/control/chain"
	"dustbook/plan/unit"
)

var chainVolts = &Check{
	Whom:  Electrician,
	ID:    "chain-volts",
	Name:  say("check.chain-volts.name"),
	Title: say("check.chain-volts.title"),
	Needs: "chain.cable, chain.stops, chain.temperature, control.supply, control.lowest, control.moves_together, gate.stall, gate.holding, gate.takes, gate.lowest, trigger.draws, sensor.draws",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, a := range p.Chains.Chains {
			if a.Worst >= 0 {
				report(outOfReach(p, voltsOf(p, a)))
			}
		}
	},
}

// voltsOf words how one chain stands.
func voltsOf(p *plan.Plan, a *chain.Answer) Finding {
	f := Finding{About: a.Chain.Name, Kind: "chain", At: a.Chain.At, By: ByGiven, Weight: Know,
		Basis: append(ownFile(say("finding-chain-volts.given")), chain.BasisOf("contact"))}
	_, cable := chain.PerMetre(a.Chain.Cable, a.Chain.Temperature.V)
	f.Basis = append(f.Basis, cable)
	units, worst := p.Shop.Units, a.Nodes[a.Worst]
	if worst.Solved && worst.Need > 0 {
		need := float64(worst.Need)
		f.Figures = []Figure{{Name: say("finding-chain-volts.figure", worst.Device.Name), Value: float64(worst.Volts), Unit: "V", Limit: &need, Basis: given(say("finding-chain-volts.lowest.given"))}}
	}
	switch a.Verdict {
	case chain.Short:
		f.State, f.Weight = NotMet, Mend
		f.Says, f.Do = join(shortVolts(units, a), heat(units, a)), mendsOf(p, a)
	case chain.Thin:
		f.State = Thin
		f.Says = join(gets(units, worst), thinBy(units, a), heat(units, a))
		f.Do = thinDo(p, a)
	case chain.Holds:
		f.State = Met
		f.Says, f.Do = join(gets(units, worst), whileMoving(worst), heat(units, a)), say("finding-chain-volts.met.do", worst.Device.Name)
		if a.Fuse.Heat {
			f.State, f.Do = Ask, say("finding-chain-volts.heat.do")
			f.Asks = say("finding-chain-volts.heat.asks", a.Chain.CableText, unit.Amps.Print(units, a.Fuse.Least))
		}
	default:
		f.State = NotGiven
		if len(a.Missing) == 0 {
			f.State, f.Asks = Ask, say("finding-chain-volts.unsure.asks", a.Chain.Name)
			f.Says, f.Do = say("finding-chain-volts.unsure.says"), say("finding-chain-volts.unsure.do")
			break
		}
		f.Says = join(missed(a.Missing), byAssumption(a), lost(a))
		f.Do = say("finding-chain-volts.not-given.do", listed(inputFields(a.Missing)))
	}
	return f
}

// gets says what the worst device gets and needs.
func gets(units unit.System, n chain.Node) string {
	volts, need := unit.Volts.Pair(units, n.Volts, n.Need)
	return say("finding-chain-volts.gets.says", n.Device.Name, volts, need)
}

// whileMoving says whose moving brings the worst about.
func whileMoving(n chain.Node) string {
	if len(n.Movers) == 0 {
		return ""
	}
	return sayOf(len(n.Movers), "finding-chain-volts.moved", listed(namesOf(n.Movers)))
}

// shortVolts says what the chain lacks.
func shortVolts(units unit.System, a *chain.Answer) string {
	switch {
	case a.NoSolution && a.Asks > 0:
		return say("finding-chain-volts.converters.says", watts(a.Asks), watts(a.Limit))
	case a.NoSolution:
		return say("finding-chain-volts.none-left.says")
	}
	worst := a.Nodes[a.Worst]
	return join(gets(units, worst), whileMoving(worst))
}

// watts prints a power.
func watts(p unit.Power) string { return unit.Watts.Figure(unit.Metric, p) }

// thinBy says why a chain that holds is thin.
func thinBy(units unit.System, a *chain.Answer) string {
	var says []string
	if worst := a.Nodes[a.Worst]; !a.Wide(worst.Margin) {
		left, usual := unit.Volts.Pair(units, worst.Margin, a.Usual())
		says = append(says, say("finding-chain-volts.margin.says", left, usual))
	}
	if names := assumedNames(a.Assumed); len(names) > 0 {
		says = append(says, sayOf(len(names), "finding-chain-volts.assumed.says", listed(firstFew(names))))
	}
	if a.Guessed {
		says = append(says, say("finding-chain-volts.guessed.says"))
	}
	if !a.Exact {
		says = append(says, say("finding-chain-volts.floor.says"))
	}
	return join(says...)
}

// thinDo says what would make more of a thin chain.
func thinDo(p *plan.Plan, a *chain.Answer) string {
	var gaps []chain.Gap
	for _, s := range a.Assumed {
		gaps = append(gaps, s.Gap)
	}
	if a.Guessed {
		gaps = append(gaps, chain.Gap{Input: chain.MovesTogether})
	}
	switch {
	case len(gaps) > 0:
		return say("finding-chain-volts.not-given.do", listed(inputFields(gaps)))
	case !a.Wide(a.Nodes[a.Worst].Margin):
		return mendsOf(p, a)
	}
	return say("finding-chain-volts.met.do", a.Nodes[a.Worst].Device.Name)
}

// heat says where a chain may draw more than its conductor carries, by figures
// from memory.
func heat(units unit.System, a *chain.Answer) string {
	if !a.Fuse.Heat {
		return ""
	}
	least, most := unit.Amps.Pair(units, a.Fuse.Least, a.Fuse.Most)
	return say("finding-chain-volts.heat.says", least, a.Chain.CableText, most)
}

// byAssumption says that only what is assumed makes the volts too few.
func byAssumption(a *chain.Answer) string {
	for _, s := range a.Assumed {
		if slices.Contains(a.Missing, s.Gap) {
			return say("finding-chain-volts.by-assumption.says")
		}
	}
	return ""
}

// lost says how much is lost on the way, where nobody says what is needed.
func lost(a *chain.Answer) string {
	share := 0.0
	for _, n := range a.Nodes {
		if n.Judged && n.Solved {
			share = max(share, n.Share)
		}
	}
	switch chain.LossOf(share) {
	case chain.GreatLoss:
		return say("finding-chain-volts.great-loss.says", unit.Percent(share))
	case chain.MuchLoss:
		return say("finding-chain-volts.much-loss.says", unit.Percent(share))
	}
	return ""
}
