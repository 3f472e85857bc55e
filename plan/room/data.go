package room

import (
	"embed"
	"strings"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed figures.csv limits.csv noise.csv
var data embed.FS

// Table is one data table of this package, one fact a row.
type Table struct {
	Name  string // the file's name without its ending
	About string
	Rows  []source.Row
}

var (
	figureTable = mustTable("figures", "the air of rooms: leaks, heat, openings, air changes", "name", "value", "unit", "about")
	limitTable  = mustTable("limits", "how far a fan may pull a room below the outdoors where something burns", "limit", "pressure", "kinds", "about")
	rateTable   = mustTable("noise", "rates of noise dose", "rate", "criterion", "exchange", "threshold", "hours", "factor", "limit", "about")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []Table { return []Table{figureTable, limitTable, rateTable} }

func mustTable(name, about string, columns ...string) Table {
	text, err := data.ReadFile(name + ".csv")
	if err != nil {
		panic("room: " + err.Error())
	}
	return Table{Name: name, About: about, Rows: source.MustRows("room/"+name+".csv", text, columns...)}
}

// row finds a row of the figures. A missing row is a fault of the program,
// found when it starts.
func row(name string) source.Row {
	for _, r := range figureTable.Rows {
		if r.Text("name") == name {
			return r
		}
	}
	panic("room: figures.csv has no row " + name)
}

// number is a figure without a unit of the table of units.
func number(name string) float64 { return row(name).Number("value") }

// speed is a figure that is a velocity.
func speed(name string) unit.Velocity {
	r := row(name)
	return unit.Must[unit.Velocity](r.Text("value") + " " + r.Text("unit"))
}

// BasisOf is where a figure of figures.csv comes from.
func BasisOf(name string) source.Basis { return row(name).Basis }

var (
	exponent                    = number("envelope exponent")
	exponentLeast, exponentMost = number("envelope exponent least"), number("envelope exponent most")
	heatCapacity                = number("heat capacity")
	tradeHeat, thermalUnit      = number("trade heat factor"), number("British thermal unit")
	inletSpeed                  = speed("inlet speed most")
	returnSlow, returnFast      = speed("return speed least"), speed("return speed most")
	baffleLeast, baffleMost     = number("baffle area least"), number("baffle area most")
	cleanerLeast, cleanerMost   = number("cleaner changes least"), number("cleaner changes most")
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
			Limit: unit.Must[unit.Sound](r.Text("limit")), Hours: r.Number("hours"), Factor: r.Number("factor"),
		}
		if r.Has("threshold") {
			v.Threshold, v.HasThreshold = unit.Must[unit.Sound](r.Text("threshold")), true
		}
		list = append(list, v)
	}
	return list
}
