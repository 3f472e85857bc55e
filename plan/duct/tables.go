package duct

import (
	"slices"

	"dustbook/plan/source"
)

// Tables lists the data tables of this package that are kept as tables, for a
// page of sources; speeds, proof and traverse have pages of their own kind.
func Tables() []source.Table {
	return slices.Concat([]source.Table{spreadTable}, CollapseTables(), AdviceTables(), []source.Table{ChooseTable()})
}
