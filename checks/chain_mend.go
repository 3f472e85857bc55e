package checks

import (
	"dustbook/plan"
	"dustbook/plan/control/chain"
	"dustbook/plan/unit"
)

// mendsOf lists the changes that would do, and what they leave undone.
func mendsOf(p *plan.Plan, a *chain.Answer) string {
	if above := a.Above(); len(above) > 0 {
		return aboveSupply(p, a, above)
	}
	var list []string
	for _, m := range a.Mends {
		list = append(list, Mended(m))
	}
	switch {
	case len(list) > 1:
		list = append([]string{say("finding-chain-volts.any.do")}, list...)
	case len(list) == 0 && a.Splits:
		list = []string{say("finding-chain-volts.no-mend.do")}
	case len(list) == 0:
		list = []string{say("finding-chain-volts.no-split.do")}
	}
	return join(append(list, MendsLeave(p, a))...)
}

// MendsLeave says what else falls short, so that what mends the volts of a
// chain is not all there is to do: the current of the supply, and what the
// conductor carries. Empty where neither does.
func MendsLeave(p *plan.Plan, a *chain.Answer) string {
	var says []string
	if s := p.Chains.Supply; s != nil && s.Verdict == chain.Short {
		says = append(says, say("finding-chain-volts.supply-too.do"))
	}
	if a.Fuse.Heat {
		says = append(says, say("finding-chain-volts.heat-too.do"))
	}
	return join(says...)
}

// aboveSupply says that devices ask for all of the supply's volts or more.
func aboveSupply(p *plan.Plan, a *chain.Answer, above []chain.Node) string {
	var names []string
	least := above[0].Need
	for _, n := range above {
		names, least = append(names, n.Device.Name), min(least, n.Need)
	}
	need, has := unit.Volts.Pair(p.Shop.Units, least, a.Supply)
	return join(sayOf(len(unique(names)), "finding-chain-volts.above.do", listed(firstFew(unique(names))), need, has), MendsLeave(p, a))
}

// Mended is one change that would let a chain hold, in words.
func Mended(m chain.Mend) string {
	switch {
	case m.Conductor != "":
		return say("finding-chain-volts.conductor.do", m.Conductor)
	case m.Feed != nil && m.Last:
		return say("finding-chain-volts.last.do", m.Feed.Name)
	case m.Feed != nil:
		return say("finding-chain-volts.feed.do", m.Feed.Name)
	}
	return english.Count("finding-chain-volts.together.do", m.Together)
}
