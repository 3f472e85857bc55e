package air

import (
	"embed"

	"dustbook/plan/source"
)

//go:embed atmosphere.csv friction.csv hand.csv elbow.csv entry.csv narrowing_step.csv narrowing_taper.csv wye.csv fitting.csv
var data embed.FS

var (
	atmosphereTable = source.MustTable(data, "air", "atmosphere", "name", "value", "unit", "about")
	frictionTable   = source.MustTable(data, "air", "friction", "name", "value", "unit", "about")
	handTable       = source.MustTable(data, "air", "hand", "name", "value", "unit", "about")
	elbowTable      = source.MustTable(data, "air", "elbow", "turn_deg", "share")
	entryTable      = source.MustTable(data, "air", "entry", "angle_deg", "k")
	stepTable       = source.MustTable(data, "air", "narrowing_step", "area_ratio", "k")
	taperTable      = source.MustTable(data, "air", "narrowing_taper", "cone_deg", "share")
	wyeTable        = source.MustTable(data, "air", "wye", "angle_deg", "f", "run")
	fittingTable    = source.MustTable(data, "air", "fitting", "name", "value", "unit", "about")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table {
	return []source.Table{atmosphereTable, frictionTable, handTable, elbowTable, entryTable, stepTable, taperTable, wyeTable, fittingTable}
}

// curve is a tabled function: straight between its points, which stand in
// rising order.
type curve struct{ at, value []float64 }

func curveOf(t source.Table, at, value string) curve {
	var c curve
	for i, r := range t.Rows {
		if x := r.Number(at); i > 0 && x <= c.at[i-1] {
			panic("air: " + t.Name + ".csv: " + at + " does not rise")
		}
		c.at = append(c.at, r.Number(at))
		c.value = append(c.value, r.Number(value))
	}
	return c
}

// read is the value at x; beyond its ends the curve keeps its end value.
func (c curve) read(x float64) float64 {
	last := len(c.at) - 1
	if x <= c.at[0] {
		return c.value[0]
	}
	for i := 1; i <= last; i++ {
		if x <= c.at[i] {
			return c.value[i-1] + (c.value[i]-c.value[i-1])*(x-c.at[i-1])/(c.at[i]-c.at[i-1])
		}
	}
	return c.value[last]
}

func (c curve) first() (at, value float64) { return c.at[0], c.value[0] }

func (c curve) last() (at, value float64) {
	end := len(c.at) - 1
	return c.at[end], c.value[end]
}
