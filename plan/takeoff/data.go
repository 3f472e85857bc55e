package takeoff

import (
	"embed"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed residue.csv filter.csv service.csv
var data embed.FS

var (
	residueTable = source.MustTable(data, "takeoff", "residue", "name", "value", "unit", "about")
	filterTable  = source.MustTable(data, "takeoff", "filter", "name", "value", "unit", "about", "returns")
)

// Tables lists the data tables of this package, for a page of sources.
func Tables() []source.Table { return []source.Table{residueTable, filterTable, serviceTable} }

// Residue is what a machine throws: how much room it takes, loose, for each
// volume of solid wood.
type Residue struct {
	Name      string
	Expansion float64 // the figure that was read
	Most      float64 // at its bulkiest, by common practice
	Basis     source.Basis
	MostBasis source.Basis
}

// ResidueOf is what a kind's waste takes up: "dust" or "chips".
func ResidueOf(waste string) Residue {
	usual, most := residueTable.Row(waste), residueTable.Row(waste+" most")
	return Residue{Name: waste, Expansion: usual.Number("value"), Most: most.Number("value"), Basis: usual.Basis, MostBasis: most.Basis}
}

// FillMark is the share of a bin at which it is emptied, and where that comes
// from.
func FillMark() (share float64, basis source.Basis) {
	r := residueTable.Row("fill mark")
	return r.Number("value"), r.Basis
}

// Load is one figure that a filter's load is held against.
type Load struct {
	Name     string
	Speed    unit.Velocity // air through each area of filter
	Returned bool          // speaks of air that goes back into the room
	About    string
	Basis    source.Basis
}

// Loads lists the figures for filters, in the order of the data.
func Loads() []Load {
	var list []Load
	for _, r := range filterTable.Rows {
		l := Load{Name: r.Text("name"), Returned: r.Has("returns"), About: r.Text("about"), Basis: r.Basis}
		switch r.Text("unit") {
		case "m3/(m2 h)":
			l.Speed = unit.Velocity(r.Number("value") / float64(hour))
		default:
			l.Speed = unit.Must[unit.Velocity](filterTable.Measure(l.Name))
		}
		list = append(list, l)
	}
	return list
}

var hour = unit.Must[unit.Time]("1 h")
