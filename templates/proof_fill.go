package templates

import (
	_ "embed"
	"strings"

	"dustbook/plan/record"
)

// The script that turns the blanks of the commissioning sheets into fields,
// and the look of those fields, which only the script asks for.
const (
	fillScript = "fill.js"
	fillStyle  = "fill.css"
)

//go:embed fill.js
var fillCode []byte

//go:embed fill.css
var fillLook []byte

// blank is what a record needs of a reading that is written into a blank.
// Blanks whose values are no readings stand in the record's note instead.
type blank struct {
	Of, At, Use, Filter string
	Expected            string // a figure; empty where nothing is expected
	Unit                string // that the sheet shows; empty for a text
}

// blankFor is the blank of a reading in the unit of the sheet.
func (b *Book) blankFor(r record.Reading, expected string) blank {
	m, _ := record.FindMeasure(r.Of)
	return blank{Of: r.Of, At: r.At, Use: r.Use, Filter: r.Filter, Expected: expected, Unit: m.Unit(b.units)}
}

// Groups of instruments: a sheet asks once for the one that all its pressures,
// speeds, amps or times were read with.
const (
	byGauge   = "pressure"
	byPitot   = "speed"
	byAmmeter = "electric"
	byWatch   = "time"
)

// fillView is what a sheet needs to be filled in on the page.
type fillView struct {
	Key    string // under which the browser keeps what is typed
	Taken  string // the names of the records of commissioning that there are
	Groups []fillGroup
	Note   int // characters that a note may have
	Role   int
	With   int
}

type fillGroup struct{ Key, Label string }

// fillView is that of a sheet with some groups of instruments.
func (b *Book) fillView(sheet string, groups ...string) fillView {
	v := fillView{Key: "dustbook/" + b.Plan.Shop.Name + "/" + sheet, Note: longest("record", "note"), Role: longest("record", "role"), With: longest("reading", "with")}
	var taken []string
	for _, r := range b.Plan.Records {
		if r.Kind == fillKind {
			taken = append(taken, r.File)
		}
	}
	v.Taken = strings.Join(taken, " ")
	for _, g := range groups {
		v.Groups = append(v.Groups, fillGroup{g, b.words.Text("fill.with." + g)})
	}
	return v
}

// fillKind is the kind of record that the sheets make.
const fillKind = "commissioning"

// longest is how many characters the contract lets a field of a record have.
func longest(table, field string) int {
	for _, r := range record.Rows() {
		if r.Table == table && r.Field == field {
			return r.Longest
		}
	}
	panic("templates: a record has no field " + table + "." + field)
}
