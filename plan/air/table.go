package air

import (
	"embed"

	"dustbook/plan/source"
)

//go:embed atmosphere.csv friction.csv hand.csv elbow.csv entry.csv narrowing_step.csv narrowing_taper.csv wye.csv fitting.csv
var data embed.FS

// Table is one data table of this package, one fact a row.
type Table struct {
	Name  string // the file's name without its ending
	About string
	Rows  []source.Row
}

var (
	atmosphereTable = mustTable("atmosphere", "the air: standard atmosphere, viscosity, rated state", "name", "value", "unit", "about")
	frictionTable   = mustTable("friction", "friction of a straight duct", "name", "value", "unit", "about")
	handTable       = mustTable("hand", "the trade's rounded constants and friction fit", "name", "value", "unit", "about")
	elbowTable      = mustTable("elbow", "share of the 90° elbow coefficient by turn", "turn_deg", "share")
	entryTable      = mustTable("entry", "entry coefficient of a branch by angle, on the branch's velocity pressure", "angle_deg", "k")
	stepTable       = mustTable("narrowing_step", "abrupt narrowing by area ratio, on the smaller end's velocity pressure", "area_ratio", "k")
	taperTable      = mustTable("narrowing_taper", "tapered narrowing by included angle, share of the rise in velocity pressure", "cone_deg", "share")
	wyeTable        = mustTable("wye", "converging junction by flow split: parameters by angle", "angle_deg", "f", "run")
	fittingTable    = mustTable("fitting", "other figures of fittings and openings", "name", "value", "unit", "about")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []Table {
	return []Table{atmosphereTable, frictionTable, handTable, elbowTable, entryTable, stepTable, taperTable, wyeTable, fittingTable}
}

func mustTable(name, about string, columns ...string) Table {
	text, err := data.ReadFile(name + ".csv")
	if err != nil {
		panic("air: " + err.Error())
	}
	return Table{Name: name, About: about, Rows: source.MustRows("air/"+name+".csv", text, columns...)}
}

// figure is the value of a named row. A missing row is a fault of the program,
// found when it starts.
func (t Table) figure(name string) float64 {
	for _, r := range t.Rows {
		if r.Text("name") == name {
			return r.Number("value")
		}
	}
	panic("air: " + t.Name + ".csv has no row " + name)
}

// curve is a tabled function: straight between its points, which stand in
// rising order.
type curve struct{ at, value []float64 }

func (t Table) curve(at, value string) curve {
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
