package duct

import (
	"embed"
	"math"
	"strings"

	"dustbook/plan/air"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed sheet.csv collapse.csv
var collapseData embed.FS

var (
	sheetTable    = source.MustTable(collapseData, "duct", "sheet", "name", "value", "unit", "nominal", "about")
	collapseTable = source.MustTable(collapseData, "duct", "collapse", "name", "value", "unit", "about")
)

// CollapseTables are the data of the collapse of ducts, for a page of sources.
func CollapseTables() []source.Table { return []source.Table{sheetTable, collapseTable} }

// CollapseFactor is how many times the greatest suction a duct's wall has to
// bear; common practice, no source.
func CollapseFactor() float64 { return collapseTable.Figure("factor") }

// Collapse is whether the greatest suction of its fan flattens a round duct:
// buckling under outside pressure, with the least wall its gauge allows.
type Collapse struct {
	Duct    *shop.Duct
	Suction unit.Pressure // the greatest that the fan's curve reaches
	Wall    unit.Length
	Rings   unit.Length   // spacing of stiff rings; nought where the file states none
	Buckles unit.Pressure // by the formula, of a perfect tube
	Bears   unit.Pressure // what is left of that for seam and shape, and by the factor
	Holds   bool

	// Missing is the field that it waits for: "duct.gauge" or
	// "collector.fan_curve"; empty where it is reckoned.
	Missing string
	Basis   source.Basis // of the wall
}

// Known reports whether it is reckoned.
func (c *Collapse) Known() bool { return c.Missing == "" }

// Collapses judges every duct of the shop that has a size, in file order.
func (k *Reckoning) Collapses() []*Collapse {
	var list []*Collapse
	for _, t := range k.Trees {
		most, reaches := greatest(NewFan(t.Collector, t.State, States(t.Collector)[0]))
		for _, d := range t.shop.Ducts {
			if d.Collector == t.Collector && d.Size > 0 {
				list = append(list, collapse(d, most, reaches))
			}
		}
	}
	return list
}

// greatest is the greatest static pressure on a fan's curve; reaches is false
// where the curve does not say what the fan does without flow.
func greatest(f *Fan) (most unit.Pressure, reaches bool) {
	low, high := f.Range()
	const samples = 256
	best := math.Inf(-1)
	for i := range samples + 1 {
		best = math.Max(best, f.Static(low+(high-low)*float64(i)/samples))
	}
	return unit.Pressure(unit.Six(best)), low <= 0
}

func collapse(d *shop.Duct, most unit.Pressure, reaches bool) *Collapse {
	c := &Collapse{Duct: d, Suction: most}
	var known bool
	c.Wall, c.Basis, known = wallOf(d)
	elastic, cross, stiff := stiffness(d.Material)
	switch {
	case !known || !stiff:
		c.Missing = "duct.wall"
		if strings.HasSuffix(d.Material, "steel") {
			c.Missing = "duct.gauge"
		}
		return c
	case !reaches:
		c.Missing = "collector.fan_curve"
		return c
	}
	if d.Rings.Known() {
		c.Rings = d.Rings.V
	}
	c.Buckles = unit.Pressure(unit.Six(float64(Buckling(elastic, cross, c.Wall, d.Bore, c.Rings))))
	c.Bears = unit.Pressure(unit.Six(float64(c.Buckles) * collapseTable.Figure("knock-down") / CollapseFactor()))
	c.Holds = unit.AtLeast(float64(c.Bears), float64(most))
	return c
}

// wallOf is the least wall of a duct: as stated, else as its gauge allows.
func wallOf(d *shop.Duct) (wall unit.Length, basis source.Basis, known bool) {
	if d.Wall.Known() {
		return d.Wall.V, source.Basis{Mark: source.Given}, true
	}
	if d.Gauge.Known() {
		for _, r := range sheetTable.Rows {
			if r.Text("name") == d.Gauge.V.String() {
				return unit.Must[unit.Length](sheetTable.Measure(r.Text("name"))), r.Basis, true
			}
		}
	}
	return 0, source.Basis{}, false
}

// stiffness is the elastic modulus in Pa and the cross contraction of a
// material of the shop file.
func stiffness(material string) (elastic, cross float64, known bool) {
	of := ""
	switch {
	case strings.Contains(material, "steel"):
		of = "steel"
	case strings.Contains(material, "plastic"):
		of = "plastic"
	default:
		return 0, 0, false
	}
	return collapseTable.Figure(of + " elastic"), collapseTable.Figure(of + " cross"), true
}

// Buckling is the outside pressure, in Pa, that buckles a thin round tube with
// elastic modulus E in Pa, cross contraction ν, wall t and bore D: between
// stiff rings at a spacing L
//
//	2.42 E (t/D)^2.5 / ((1 − ν²)^0.75 (L/D − 0.45 √(t/D)))
//
// and never less than that of a long tube, 2 E (t/D)³ / (1 − ν²), which is all
// where L is nought: no rings. Range: t/D up to 0.1. Both from memory.
func Buckling(elastic, cross float64, wall, bore, rings unit.Length) unit.Pressure {
	slim, free := float64(wall/bore), 1-cross*cross
	long := collapseTable.Figure("long tube") * elastic * math.Pow(slim, 3) / free
	if rings <= 0 {
		return unit.Pressure(long)
	}
	apart := float64(rings/bore) - collapseTable.Figure("rings less")*math.Sqrt(slim)
	if apart <= 0 { // rings that touch: the formula has no figure
		return unit.Pressure(math.Inf(1))
	}
	short := collapseTable.Figure("rings") * elastic * math.Pow(slim, 2.5) / (math.Pow(free, 0.75) * apart)
	return unit.Pressure(math.Max(long, short))
}

// Relief is what keeps the suction at the inlet from passing a limit with
// every gate shut: the flow that has to come in, and the hole near the
// inlet that lets it in at that suction. Both are nought where the fan does
// not pass the limit; known is false where its curve does not tell.
func (t *Tree) Relief(limit unit.Pressure) (flow unit.Flow, hole unit.Area, known bool) {
	fan := NewFan(t.Collector, t.State, States(t.Collector)[0])
	low, high := fan.Range()
	over := func(q float64) float64 { p, _ := fan.Suction(q); return p - float64(limit) }
	const samples = 256
	last := -1 // the last sample that passes the limit
	for i := range samples + 1 {
		if over(low+(high-low)*float64(i)/samples) > 0 {
			last = i
		}
	}
	switch {
	case low > 0 || last == samples:
		return 0, 0, false
	case last < 0:
		return 0, 0, true
	}
	step := (high - low) / samples
	q := bisect(over, low+step*float64(last), low+step*float64(last+1))
	atOne := float64(air.Orifice(1, air.Discharge(), limit, t.State))
	return unit.Flow(unit.Six(q)), unit.Area(unit.Six(q / atOne)), true
}

// LeastOpen lists the uses of machines in which the suction at the inlet
// passes a limit, with the filter in the state that draws most there: those
// are the uses that want another gate open as well.
func (k *Reckoning) LeastOpen(t *Tree, limit unit.Pressure) []*Use {
	var list []*Use
	for _, u := range k.Uses {
		for _, r := range u.Results {
			if r.Collector == t.Collector && r.OnCurve && len(u.Machines) > 0 && unit.Compare(float64(r.Inlet), float64(limit)) > 0 {
				list = append(list, u)
				break
			}
		}
	}
	return list
}
