package checks

import (
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
)

var plasticBin = &Check{
	ID:    "fine-dust-in-bin",
	Name:  say("check.fine-dust-in-bin.name"),
	Title: say("check.fine-dust-in-bin.title"),
	Needs: "bin.material, collector.bonded, machine.makes, shop.rules, shop.setting",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, look := intoBin(p, c); look {
				report(f)
			}
		}
	},
}

// binBasis are the texts on charge in such a system.
var binBasis = basesOf("fine-dust-in-bin")

// intoBin judges the bin of one collector that takes fine dust: what it is made
// of, then its resistance to earth.
func intoBin(p *plan.Plan, c *shop.Collector) (f Finding, look bool) {
	var fine []string
	for _, m := range served(p, c) {
		if m.Makes == "fine wood" {
			fine = append(fine, m.Name)
		}
	}
	if len(fine) == 0 || c.Bin == nil {
		return f, false
	}
	f = Finding{About: c.Name, Kind: "collector", At: c.At, By: ByTopology, Weight: Know, Basis: binBasis}
	called := c.Bin.Called
	switch {
	case !c.Bin.Material.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-fine-dust-in-bin.no-material.says", listed(firstFew(fine)), called)
		f.Do = say("finding-fine-dust-in-bin.no-material.do")
	case !conductingBin(c.Bin):
		f.State, f.Weight = Thin, Mend
		f.Says = say("finding-fine-dust-in-bin.keeps-charge.says", listed(firstFew(fine)), called, c.Bin.Material.V)
		f.Do = say("finding-fine-dust-in-bin.keeps-charge.do")
	case !c.Bonded.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says = say("finding-fine-dust-in-bin.no-bond.says", called, c.Bin.Material.V)
		f.Do = say("finding-fine-dust-in-bin.no-bond.do")
	default:
		f.Says = say("finding-fine-dust-in-bin.measured.says", called)
		judgeBond(p.Shop, &f, c.Bonded.V)
	}
	return f, true
}

// conductingBin reports whether a bin is of metal by what the file says.
func conductingBin(b *shop.Bin) bool {
	text := strings.ToLower(b.Material.V)
	return slices.ContainsFunc(words("metals of a bin"), func(metal string) bool { return strings.Contains(text, metal) })
}
