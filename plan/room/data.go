package room

import (
	"embed"
	"strings"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed figures.csv limits.csv noise.csv
var data embed.FS

var (
	figureTable = source.MustTable(data, "room", "figures", "name", "value", "unit", "about")
	limitTable  = source.MustTable(data, "room", "limits", "limit", "pressure", "kinds", "about")
	rateTable   = source.MustTable(data, "room", "noise", "rate", "criterion", "exchange", "threshold", "hours", "factor", "limit", "called", "when", "about")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table {
	return []source.Table{figureTable, limitTable, rateTable}
}

// BasisOf is where a figure of figures.csv comes from.
func BasisOf(name string) source.Basis { return figureTable.Row(name).Basis }

var (
	exponent                    = figureTable.Figure("envelope exponent")
	exponentLeast, exponentMost = figureTable.Figure("envelope exponent least"), figureTable.Figure("envelope exponent most")
	heatCapacity                = figureTable.Figure("heat capacity")
	tradeHeat, thermalUnit      = figureTable.Figure("trade heat factor"), figureTable.Figure("British thermal unit")
	inletSpeed                  = unit.Must[unit.Velocity](figureTable.Measure("inlet speed most"))
	returnSlow, returnFast      = unit.Must[unit.Velocity](figureTable.Measure("return speed least")), unit.Must[unit.Velocity](figureTable.Measure("return speed most"))
	baffleLeast, baffleMost     = figureTable.Figure("baffle area least"), figureTable.Figure("baffle area most")
	cleanerLeast, cleanerMost   = figureTable.Figure("cleaner changes least"), figureTable.Figure("cleaner changes most")
	oneCFM                      = unit.Must[unit.Flow]("1 cfm")
	oneHour                     = unit.Must[unit.Time]("1 h")
	limits                      = loadLimits()
	rates                       = loadRates()
)

// Limit is how far below the outdoors a room may be pulled where something
// burns: one row of the data.
type Limit struct {
	Name  string
	Press unit.Pressure
	Kinds []string // kinds of appliance of the shop file that it is taken for
	About string
	Basis source.Basis
}

// Limits lists the limits, in the order of the data.
func Limits() []Limit { return limits }

func loadLimits() []Limit {
	var list []Limit
	for _, r := range limitTable.Rows {
		l := Limit{Name: r.Text("limit"), Press: unit.Must[unit.Pressure](r.Text("pressure")), About: r.Text("about"), Basis: r.Basis}
		if r.Has("kinds") {
			l.Kinds = strings.Split(r.Text("kinds"), "|")
		}
		list = append(list, l)
	}
	return list
}

func loadRates() []Rate {
	var list []Rate
	for _, r := range rateTable.Rows {
		v := Rate{
			Name: r.Text("rate"), About: r.Text("about"), Basis: r.Basis, LimitBasis: r.MustBasis("limit_"),
			Criterion: unit.Must[unit.Sound](r.Text("criterion")), Exchange: unit.Must[unit.Sound](r.Text("exchange")),
			Limit: unit.Must[unit.Sound](r.Text("limit")), Called: r.Text("called"), Reached: r.Text("when") == "reached", Hours: r.Number("hours"), Factor: r.Number("factor"),
		}
		if r.Has("threshold") {
			v.Threshold, v.HasThreshold = unit.Must[unit.Sound](r.Text("threshold")), true
		}
		list = append(list, v)
	}
	return list
}

// InletSpeed is the greatest speed through a passive opening for make-up air;
// common practice, no source.
func InletSpeed() unit.Velocity { return inletSpeed }

// CleanerChanges are the usual changes of air an hour of a room air cleaner,
// from and to; common practice, no source.
func CleanerChanges() (least, most float64) { return cleanerLeast, cleanerMost }
