package control

import (
	"embed"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed setting.csv
var data embed.FS

var settingTable = source.MustTable(data, "control", "setting", "name", "value", "unit", "about")

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table { return []source.Table{settingTable} }

// TimeOut is how long a gate's drive may push before it is switched off, as
// multiples of its travel time. Common practice, no source.
func TimeOut() (least, most float64) {
	return settingTable.Figure("time-out least"), settingTable.Figure("time-out most")
}

// LeakOfASetGate is the share of its duct's flow that a shut gate may draw
// before it is set again. Common practice, no source.
func LeakOfASetGate() float64 { return settingTable.Figure("leak of a set gate") }

// BoreTolerance is how far a slide at its open stop may stand in the bore
// before it counts as not open, and where that comes from.
func BoreTolerance() (unit.Length, source.Basis) {
	return unit.Must[unit.Length](settingTable.Measure("bore tolerance")), settingTable.Row("bore tolerance").Basis
}
