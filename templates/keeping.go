package templates

import (
	"math"
	"strings"

	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/takeoff"
	"dustbook/plan/unit"
)

// keeping is what a collector's sheet says of its bin, its filter, and of the
// ducts when every gate is shut.
type keeping struct {
	Bin    *binView
	Filter *filterView
	Shut   *shutView
}

type binView struct {
	Lede  string // empty where the file gives no bin
	Rows  []binRow
	Days  string
	Waits string
}

type binRow struct{ Machine, Path, Throws, Until, Least, Waits string }

type filterView struct {
	Says string
	Unit string
	Rows []filterRow
	Uses *filterUses
}

type filterRow struct {
	About, Speed string
	Over         bool
	Source       citation
}

type shutView struct {
	Says   string
	Rows   []shutRow
	Relief []string
}

type shutRow struct {
	Duct, Path, Wall, Bears string
	Waits                   string // the field that is missing; empty where it is judged
	State                   Word
}

func (b *Book) keeping(c *shop.Collector) keeping {
	return keeping{b.binView(c), b.filterView(c), b.shutView(c)}
}

func (b *Book) binView(c *shop.Collector) *binView {
	f := b.Plan.Takeoff.Bin(c)
	if f == nil {
		return nil
	}
	v := &binView{}
	if c.Bin != nil {
		mark, _ := takeoff.FillMark()
		v.Lede = b.words.Text("keep.bin-lede", unit.Bin.Print(b.units, c.Bin.Size)+" "+c.Bin.Called, unit.Fixed(100*mark, 0))
	}
	for _, at := range f.Machines {
		v.Rows = append(v.Rows, b.binRow(at))
	}
	switch {
	case f.Known() && f.Days < 1:
		v.Days = b.words.Text("keep.one-day", unit.Fixed(100*f.Days, 0)+" %")
	case f.Known():
		v.Days = b.words.Text("keep.days", unit.Fixed(f.Days, 0))
	}
	if open := b.waitsFor(f.Open); f.Known() && open != "" {
		v.Waits = b.words.Text("keep.days-open", open)
	}
	return v
}

// waitsFor lists the fields that something waits for, each with the things it
// is missing of; empty where nothing is.
func (b *Book) waitsFor(list []takeoff.Missing) string {
	var fields, parts []string
	things := map[string][]string{}
	for _, m := range list {
		if things[m.Field] == nil {
			fields = append(fields, m.Field)
		}
		things[m.Field] = append(things[m.Field], m.Thing)
	}
	for _, field := range fields {
		parts = append(parts, b.words.Text("keep.waits", field, strings.Join(things[field], ", ")))
	}
	return strings.Join(parts, "; ")
}

func (b *Book) binRow(at *takeoff.Fill) binRow {
	row := binRow{Machine: at.Machine.Name, Path: b.Path("machine", at.Machine.Name), Throws: b.words.Text("keep.throws." + at.Residue.Name), Until: "—", Least: "—"}
	if at.Known() {
		row.Until, row.Least = unit.Minutes.Print(b.units, at.Until), unit.Minutes.Print(b.units, at.Least)
		return row
	}
	row.Waits = b.words.Text("keep.waiting", b.waitsFor(at.Missing))
	return row
}

func (b *Book) filterView(c *shop.Collector) *filterView {
	f := b.Plan.Takeoff.Filter(c)
	if f == nil {
		return nil
	}
	v := &filterView{Uses: b.filterUses(c), Unit: unit.Feed.Unit(b.units), Says: b.words.Text("keep.filter-waits")}
	if f.Known() {
		v.Says = b.words.Text("keep.filter-lede", f.Use, unit.Air.Print(b.units, f.Flow), unit.Floor.Print(b.units, c.Filter.Area.V), unit.Feed.Print(b.units, f.Speed))
	}
	for _, l := range f.Against {
		row := filterRow{About: l.About, Speed: unit.Feed.Figure(b.units, l.Speed), Over: f.Known() && unit.Compare(float64(f.Speed), float64(l.Speed)) > 0, Source: b.citedOne(l.Basis)}
		v.Rows = append(v.Rows, row)
	}
	return v
}

// shutView shows whether every duct of a collector that has a size bears the
// fan's greatest suction; one whose wall is not known says so.
func (b *Book) shutView(c *shop.Collector) *shutView {
	v := &shutView{}
	var weakest *duct.Collapse
	for _, at := range b.Plan.Air.Collapses() {
		if at.Duct.Collector != c {
			continue
		}
		if v.Says == "" {
			v.Says = b.words.Text("keep.shut-open")
		}
		if at.Missing == "collector.fan_curve" {
			v.Says = b.words.Text("keep.shut-unknown")
		}
		if !at.Known() {
			v.Rows = append(v.Rows, b.shutOpen(at))
			continue
		}
		v.Says = b.words.Text("keep.shut-lede", unit.Press.Print(b.units, at.Suction), unit.Short(duct.CollapseFactor()))
		row := shutRow{Duct: at.Duct.Name, Path: b.Path("duct", at.Duct.Name), Wall: unit.Thin.Print(b.units, at.Wall), Bears: unit.Press.Print(b.units, at.Bears), State: Word{"met", b.words.Text("keep.holds.yes")}}
		if !at.Holds {
			row.State = Word{"notmet", b.words.Text("keep.holds.no")}
		}
		v.Rows = append(v.Rows, row)
		if weakest == nil || at.Bears < weakest.Bears {
			weakest = at
		}
	}
	if v.Says == "" {
		return nil
	}
	if weakest != nil && !weakest.Holds {
		v.Relief = b.relief(c, weakest)
	}
	return v
}

// shutOpen is the row of a duct that is not judged, with what it waits for.
func (b *Book) shutOpen(at *duct.Collapse) shutRow {
	row := shutRow{Duct: at.Duct.Name, Path: b.Path("duct", at.Duct.Name), Wall: "—", Bears: "—", State: Word{"blank", b.words.Text("keep.holds.open")}, Waits: at.Missing}
	if at.Wall > 0 {
		row.Wall = unit.Thin.Print(b.units, at.Wall)
	}
	return row
}

// relief says what keeps the weakest duct of a collector from going flat.
func (b *Book) relief(c *shop.Collector, weakest *duct.Collapse) []string {
	var list []string
	flow, hole, known := b.trees[c].Relief(weakest.Bears)
	if known && hole > 0 {
		round := unit.Length(math.Sqrt(float64(hole) * 4 / math.Pi))
		list = append(list, b.words.Text("keep.relief", b.words.Text("keep.round", unit.Size.Print(b.units, round)), unit.Floor.Print(b.units, hole), unit.Air.Print(b.units, flow)))
	}
	var uses []string
	for _, u := range b.Plan.Air.LeastOpen(b.trees[c], weakest.Bears) {
		uses = append(uses, u.Name)
	}
	if len(uses) > 0 {
		list = append(list, b.words.Text("keep.relief-uses", strings.Join(uses, ", ")))
	}
	return list
}

// binOnCard says what to do about a bin, and how soon this machine fills it.
func (b *Book) binOnCard(m *shop.Machine, c *shop.Collector) string {
	look := b.words.Text("card.bin-look", c.Bin.Called, c.Name)
	if f := b.Plan.Takeoff.Bin(c); f != nil {
		for _, at := range f.Machines {
			if at.Machine == m && at.Known() {
				look += " " + b.words.Text("keep.card-full", unit.Minutes.Figure(b.units, at.Until), unit.Minutes.Figure(b.units, at.Least))
			}
		}
	}
	return look
}
