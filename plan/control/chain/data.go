package chain

import (
	"embed"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed figures.csv stall.csv metric.csv ampacity.csv pull.csv class2.csv
var data embed.FS

var (
	figureTable   = source.MustTable(data, "control/chain", "figures", "name", "value", "unit", "about")
	stallTable    = source.MustTable(data, "control/chain", "stall", "name", "up_to", "value", "unit", "about")
	metricTable   = source.MustTable(data, "control/chain", "metric", "size", "value", "unit")
	ampacityTable = source.MustTable(data, "control/chain", "ampacity", "size", "value", "unit")
	pullTable     = source.MustTable(data, "control/chain", "pull", "size", "pounds", "value", "unit")
	class2Table   = source.MustTable(data, "control/chain", "class2", "name", "above", "up_to", "value", "unit")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table {
	return []source.Table{figureTable, stallTable, metricTable, ampacityTable, pullTable, class2Table}
}

// figures are the rows of figures.csv in SI.
var figures = struct {
	resistivity, coefficient, contacts, conductors float64
	thin, small, great, share                      float64
	reference                                      unit.Temperature
	contact                                        unit.Resistance
	holding, draws, controller, relay              unit.Current
	slack, stripLeast, stripMost                   unit.Length
}{
	resistivity: figureTable.Figure("resistivity") * squareMillimetre,
	coefficient: figureTable.Figure("temperature coefficient"),
	contacts:    figureTable.Figure("contacts"),
	conductors:  figureTable.Figure("conductors"),
	thin:        figureTable.Figure("thin margin"),
	small:       figureTable.Figure("small loss"),
	great:       figureTable.Figure("great loss"),
	share:       figureTable.Figure("supply share"),
	reference:   measured[unit.Temperature]("reference temperature"),
	contact:     measured[unit.Resistance]("contact"),
	holding:     measured[unit.Current]("holding"),
	draws:       measured[unit.Current]("draws"),
	controller:  measured[unit.Current]("controller"),
	relay:       measured[unit.Current]("relay"),
	slack:       measured[unit.Length]("slack"),
	stripLeast:  measured[unit.Length]("strip least"),
	stripMost:   measured[unit.Length]("strip most"),
}

// squareMillimetre is in square metres, a kilometre in metres: definitions.
const (
	squareMillimetre = 1e-6
	kilometre        = 1e3
)

func measured[Q unit.Measure](name string) Q { return unit.Must[Q](figureTable.Measure(name)) }

// BasisOf is where a figure of figures.csv comes from.
func BasisOf(name string) source.Basis { return figureTable.Row(name).Basis }
