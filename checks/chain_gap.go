package checks

import (
	"slices"

	"dustbook/plan/control"
	"dustbook/plan/control/chain"
)

// missed says what is not given, each input once with its devices.
func missed(gaps []chain.Gap) string {
	var says []string
	for _, input := range inputsOf(gaps) {
		var names []string
		for _, g := range gaps {
			if g.Input == input && g.Device != nil {
				names = append(names, g.Device.Name)
			}
		}
		if len(names) == 0 {
			says = append(says, say(missingKeys[input]))
			continue
		}
		says = append(says, sayOf(len(names), missingKeys[input], listed(firstFew(names))))
	}
	return join(says...)
}

// missingKeys are the rows that say what is missing.
var missingKeys = map[chain.Input]string{
	chain.SupplyVolts: "finding-chain-volts.no-volts.says", chain.SupplyPower: "finding-chain-volts.no-power.says",
	chain.LowestVolts: "finding-chain-volts.no-lowest.says", chain.StallCurrent: "finding-chain-volts.no-stall.says",
	chain.HoldingCurrent: "finding-chain-volts.no-holding.says", chain.DrawnCurrent: "finding-chain-volts.no-draws.says",
}

// inputsOf are the inputs of gaps, each once, in their order.
func inputsOf(gaps []chain.Gap) []chain.Input {
	var list []chain.Input
	for _, g := range gaps {
		if !slices.Contains(list, g.Input) {
			list = append(list, g.Input)
		}
	}
	slices.Sort(list)
	return list
}

// inputFields are the fields of the shop file that gaps name, each once.
func inputFields(gaps []chain.Gap) []string {
	var list []string
	for _, input := range inputsOf(gaps) {
		list = append(list, input.String())
	}
	return list
}

// assumedNames are the devices of which a current is assumed, each once.
func assumedNames(list []chain.Assumed) []string {
	var names []string
	for _, s := range list {
		names = append(names, s.Device.Name)
	}
	return unique(names)
}

// namesOf are the names of devices.
func namesOf(list []*control.Device) []string {
	var names []string
	for _, d := range list {
		names = append(names, d.Name)
	}
	return names
}
