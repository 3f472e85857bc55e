package checks

import (
	"slices"
	"strings"

	"dustbook/plan"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

var plasticBin = &Check{
	ID:    "fine-dust-in-bin",
	Name:  "Fine dust in a bin",
	Title: "Does fine dust fall into a bin that conducts and is bonded",
	Needs: "bin.material, collector.bonded, machine.makes",
	Run: func(p *plan.Plan, report func(Finding)) {
		for _, c := range p.Shop.Collectors {
			if f, look := intoBin(p, c); look {
				report(f)
			}
		}
	},
}

// binBasis are the texts on charge in such a system.
var binBasis = []source.Basis{
	{Document: "nfpa-91", Clause: "5-2.1, 5-2.2", Mark: source.Verified},
	{Document: "nfpa-77", Clause: "bonding", Mark: source.Reported},
}

// intoBin judges the bin of one collector that takes fine dust.
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
		f.Says = "Fine dust of " + listed(firstFew(fine)) + " falls into its " + called + ", and what that is made of is not given."
		f.Do = `Add material to the bin, such as bin = { size = "30 gal", material = "steel" }.`
	case !conductingBin(c.Bin):
		f.State, f.Weight = Thin, Mend
		f.Says = "Fine dust of " + listed(firstFew(fine)) + " falls into a " + called + " of " + c.Bin.Material.V + ". Dust in it keeps its charge, and so does whoever stirs it. A wire or foil on it drains only what is near."
		f.Do = "Use a metal bin, bonded to an earthed point. Until then let the dust stand before you touch it, do not stir it, and empty it outdoors with no flame near."
	case !c.Bonded.Known():
		f.State, f.By = NotGiven, ByGiven
		f.Says = "Its " + called + " is of " + c.Bin.Material.V + ", and its resistance to earth is not given."
		f.Do = "Bond it, measure the resistance to earth with the bin in place, and add bonded to the collector."
	default:
		f.State = Met
		f.Says = "Its " + called + " conducts by what the file says, and its resistance to earth is measured."
		f.Do = "Measure again after every change, and each time the clip was off."
	}
	return f, true
}

// conductingBin reports whether a bin is of metal by what the file says.
func conductingBin(b *shop.Bin) bool {
	text := strings.ToLower(b.Material.V)
	return slices.ContainsFunc(words("metals of a bin"), func(metal string) bool { return strings.Contains(text, metal) })
}
