package checks

import "slices"

// Family is a group of checks about one side of a shop, as the book and the
// packet group them. Each stands in a file of its own, family_….go.
type Family struct {
	ID     string
	Name   string
	Checks []*Check
}

// Families lists the families in the order of the book.
var Families = []*Family{
	captureFamily, collectorFamily, dustFamily, bondingFamily, ductFamily, buildingFamily,
	airFamily, electricalFamily, controlFamily, peopleFamily, paperFamily,
}

// All lists every check, family by family in the order of the book.
var All = allOf(Families)

func allOf(families []*Family) []*Check {
	var list []*Check
	for _, f := range families {
		list = append(list, f.Checks...)
	}
	return list
}

// Family is the group that a check stands in.
func (c *Check) Family() *Family {
	i := slices.IndexFunc(Families, func(f *Family) bool { return slices.Contains(f.Checks, c) })
	return Families[i]
}
