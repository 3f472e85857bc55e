package timing

import (
	"embed"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed figures.csv starts.csv inertia.csv states.csv
var data embed.FS

var (
	figureTable  = source.MustTable(data, "control/timing", "figures", "name", "value", "unit", "about")
	startsTable  = source.MustTable(data, "control/timing", "starts", "power", "poles", "most", "with inertia", "rest")
	inertiaTable = source.MustTable(data, "control/timing", "inertia", "wheel", "about", "least", "most")
	stateTable   = source.MustTable(data, "control/timing", "states", "word", "means")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table {
	return []source.Table{figureTable, startsTable, inertiaTable, stateTable}
}

// BasisOf is where a figure of figures.csv comes from.
func BasisOf(name string) source.Basis { return figureTable.Row(name).Basis }

// share is a plain number of figures.csv.
func share(name string) float64 { return figureTable.Figure(name) }

// seconds is a time of figures.csv.
func seconds(name string) unit.Time { return unit.Must[unit.Time](figureTable.Measure(name)) }

var hour = unit.Must[unit.Time]("1 h")

// Missing is an input that the shop file leaves out.
type Missing struct{ Of, Field string }

// Span is the least and the most of a time.
type Span struct{ Least, Most unit.Time }

// spanOf is the span of two rows of figures.csv: NAME least and NAME most.
func spanOf(name string) Span { return Span{seconds(name + " least"), seconds(name + " most")} }

// plus adds two spans, end to end.
func (s Span) plus(o Span) Span {
	return Span{unit.SixOf(s.Least + o.Least), unit.SixOf(s.Most + o.Most)}
}

// UsualRunOn is the run-on that shops commonly set; common practice, no
// source.
func UsualRunOn() Span { return spanOf("usual run-on") }

// DebounceOn is how long a current has to last before it counts as running;
// common practice, no source.
func DebounceOn() Span { return spanOf("debounce on") }

// DebounceOff is how long a current has to be gone before it counts as
// stopped; common practice, no source.
func DebounceOff() Span { return spanOf("debounce off") }
