package checks

import (
	_ "embed"
	"strings"

	"dustbook/plan/source"
)

//go:embed figures.csv
var figuresData []byte

//go:embed bases.csv
var basesData []byte

var (
	figureRows = source.MustRows("figures.csv", figuresData, "figure", "value", "unit", "about")
	basisRows  = source.MustRows("bases.csv", basesData, "check")
)

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

// words are the words in the value of a row.
func words(name string) []string { return strings.Split(figure(name).Text("value"), ", ") }

// basesOf are the texts that a check asks by, in the order of bases.csv; a
// check without any is a fault of the program.
func basesOf(id string) []source.Basis {
	var list []source.Basis
	for _, r := range basisRows {
		if r.Text("check") == id {
			list = append(list, r.Basis)
		}
	}
	if len(list) == 0 {
		panic("checks: bases.csv has no row " + id)
	}
	return list
}

// farBelow is the share of a need below which a shortfall is to be mended.
var farBelow = figure("mend below").Number("value")
