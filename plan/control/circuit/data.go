package circuit

import (
	"embed"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed current.csv system.csv ampacity.csv ambient.csv small.csv device.csv resistance.csv figures.csv
var data embed.FS

var (
	currentTable    = source.MustTable(data, "control/circuit", "current", "phase", "power", "volts", "value", "unit")
	systemTable     = source.MustTable(data, "control/circuit", "system", "volts", "least", "most")
	ampacityTable   = source.MustTable(data, "control/circuit", "ampacity", "size", "terminals", "value", "unit")
	ambientTable    = source.MustTable(data, "control/circuit", "ambient", "up_to", "value")
	smallTable      = source.MustTable(data, "control/circuit", "small", "size", "value", "unit")
	deviceTable     = source.MustTable(data, "control/circuit", "device", "value", "unit")
	resistanceTable = source.MustTable(data, "control/circuit", "resistance", "size", "value", "unit")
	figureTable     = source.MustTable(data, "control/circuit", "figures", "name", "value", "unit", "about")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table {
	return []source.Table{currentTable, systemTable, ampacityTable, ambientTable, smallTable, deviceTable, resistanceTable, figureTable}
}

// BasisOf is where a figure of figures.csv comes from.
func BasisOf(name string) source.Basis { return figureTable.Row(name).Basis }

// times is a current multiplied by a figure of figures.csv.
func times(name string, i unit.Current) unit.Current {
	return unit.SixOf(unit.Current(figureTable.Figure(name) * float64(i)))
}

// cell reads a cell of a row as a quantity.
func cell[Q unit.Measure](r source.Row, column string) Q { return unit.Must[Q](r.Text(column)) }

// value is the figure of a row with its unit.
func value[Q unit.Measure](r source.Row) Q { return unit.Must[Q](r.Measure()) }

// device is a breaker or fuse as it is sold.
type device struct {
	size  unit.Current
	basis source.Basis
}

// devices are the standard sizes, the smallest first.
var devices = func() []device {
	var list []device
	for _, r := range deviceTable.Rows {
		list = append(list, device{value[unit.Current](r), r.Basis})
	}
	return list
}()
