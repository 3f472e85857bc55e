package checks

import (
	_ "embed"

	"dustbook/plan/source"
)

//go:embed figures.csv
var figuresData []byte

var figureRows = source.MustRows("figures.csv", figuresData, "figure", "value", "unit", "about")

// FigureRows are the figures the checks compare with, for the page of
// sources.
func FigureRows() []source.Row { return figureRows }

// figure finds a row of figures.csv; a missing row is a fault of the program.
func figure(name string) source.Row {
	for _, r := range figureRows {
		if r.Text("figure") == name {
			return r
		}
	}
	panic("checks: figures.csv has no row " + name)
}

// farBelow is the share of a need below which a shortfall is to be mended.
var farBelow = figure("mend below").Number("value")
