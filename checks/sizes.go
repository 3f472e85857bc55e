package checks

import (
	"slices"

	"dustbook/plan"
	"dustbook/plan/room"
	"dustbook/plan/shop"
)

// unsized names the ducts of a collector whose size is still to be chosen;
// empty where all have one.
func unsized(p *plan.Plan, of *shop.Collector) string {
	var names []string
	for _, d := range p.Shop.Unsized(of) {
		names = append(names, d.Name)
	}
	return listed(firstFew(names))
}

// addIt says what to do about what a figure of the rooms waits for: a field to
// add, or sizes to choose, where a collector waits for those; the finding then
// waits for them too.
func addIt(p *plan.Plan, f *Finding, missing []room.Missing) string {
	sizes, fields := "", ""
	for _, m := range missing {
		if waitsForSizes(p, m) {
			f.Sizes = true
			sizes = say("finding-common.sizes.do")
		} else {
			fields = say("finding-common.add-it.do")
		}
	}
	return join(sizes, fields)
}

func waitsForSizes(p *plan.Plan, m room.Missing) bool {
	return m.Field == "" && slices.ContainsFunc(p.Shop.Unsized(nil), func(d *shop.Duct) bool { return d.Collector.Name == m.Thing })
}

// mayReturn reports whether a finding about a thing is only gone because sizes
// are still to be chosen: the thing is there, and so is a duct without a size.
// With the sizes written in, the finding may be back.
func mayReturn(p *plan.Plan, about string) bool {
	if len(p.Shop.Unsized(nil)) == 0 {
		return false
	}
	names := plan.Names(p.Shop)
	for _, list := range [][]string{{""}, names.Machines, names.Uses, names.Collectors, names.Ducts, names.Devices, names.Rooms} {
		if slices.Contains(list, about) {
			return true
		}
	}
	return false
}
