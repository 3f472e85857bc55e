package sequence

import (
	"embed"
	"math"

	"dustbook/plan/control/timing"
	"dustbook/plan/control/trace"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed practice.csv
var practiceData embed.FS

var practiceTable = source.MustTable(practiceData, "control/sequence", "practice", "name", "value", "unit", "about")

// Tables are the data of this package, for a page of sources.
func Tables() []source.Table { return []source.Table{practiceTable} }

var hour = unit.Must[unit.Time]("1 h")

// usual is a time of common practice.
func usual(name string) trace.Time { return whole(unit.Time(practiceTable.Figure(name))) }

// whole is a time in whole milliseconds, rounded up.
func whole(t unit.Time) trace.Time { return trace.Time(math.Ceil(unit.Six(float64(t) * 1000))) }

// margin is what a gate is given on top of its travel.
func margin(travel trace.Time) trace.Time {
	return whole(timing.TimeOut(unit.Time(float64(travel)/1000))) - travel
}
