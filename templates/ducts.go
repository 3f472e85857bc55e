package templates

import (
	"strconv"
	"strings"

	"dustbook/checks"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// ductVerdict says how many ducts stand in a finding.
func (b *Book) ductVerdict() Verdict {
	if b.unsized(nil) {
		return b.openSizes(nil)
	}
	open := 0
	do := ""
	for _, f := range b.Findings {
		if f.Kind == "duct" && f.State != checks.Met {
			open++
			if do == "" {
				do = b.words.Text("ducts.about", f.About, f.Do)
			}
		}
	}
	if open == 0 {
		return Verdict{Words: []Word{{"met", b.words.Text("ducts.nothing-open")}}, Says: b.words.Text("ducts.none-stands")}
	}
	return Verdict{Words: []Word{{"notmet", b.words.Text("ducts.look")}}, Says: b.words.Count("ducts.open", open), Do: do}
}

type ductsView struct {
	Ducts []ductRow
	Gates []gateRow
	Leaks []leakRow
}

type ductRow struct {
	ID, Name, To, ToPath, At, Size, Length, Turns string
	Material, Rough, Elbows, Entry                sourced
	Hose                                          []sourced // length and size, material, how it lies
	Serves, Gates                                 []string
	Stretches                                     int
}

// LeakFigure is what it lets through, with the assumption behind it.
func (r gateRow) LeakFigure() sourced { return sourced{r.Leak, r.Assumed} }

type leakRow struct{ Duct, Path, Hole, Where string }

func (b *Book) ductsView() ductsView {
	var v ductsView
	for _, d := range b.Plan.Shop.Ducts {
		v.Ducts = append(v.Ducts, b.ductRow(d))
	}
	for _, g := range b.Plan.Shop.Gates {
		v.Gates = append(v.Gates, gateRow{ID: "gate-" + shop.Slug(g.Name), Name: g.Name, Duct: g.On.Name, DuctPath: b.Path("duct", g.On.Name), Where: unit.Run.Print(b.units, g.Where), Leak: b.leakWords(g), Assumed: b.assumed("gate", g.Name, "leak")})
	}
	for _, l := range b.Plan.Shop.Leaks {
		v.Leaks = append(v.Leaks, leakRow{l.On.Name, b.Path("duct", l.On.Name), unit.Size.Print(b.units, l.Hole), unit.Run.Print(b.units, l.Where)})
	}
	return v
}

func (b *Book) ductRow(d *shop.Duct) ductRow {
	row := ductRow{ID: "duct-" + shop.Slug(d.Name), Name: d.Name, Size: b.sizeWords(d.Size), Length: unit.Run.Print(b.units, d.Length), Stretches: len(d.Stretches)}
	if unit.Compare(float64(d.Bore), float64(d.Size)) != 0 {
		row.Size = b.words.Text("ducts.bore", row.Size, unit.Size.Print(b.units, d.Bore))
	}
	material := d.Material
	if d.Gauge.Known() {
		material = b.words.Text("ducts.gauge", material, d.Gauge.V.String())
	}
	row.Material = b.sourced(material, "duct", d.Name, "material")
	row.Rough = b.sourced(b.words.Text("ducts.rough", unit.Thin.Print(b.units, d.Roughness)), "duct", d.Name, "roughness")
	if d.Into != nil {
		row.To, row.ToPath, row.At = d.Into.Name, b.Path("duct", d.Into.Name), b.words.Text("ducts.at", unit.Run.Print(b.units, d.JoinAt))
		if d.JoinAt == 0 {
			row.At = b.words.Text("ducts.at-start")
		}
	} else {
		row.To, row.ToPath = d.Collector.Name, b.Path("collector", d.Collector.Name)
	}
	row.Entry = sourced{Text: b.words.Text("ducts.straight")}
	if d.Entry > 0 {
		row.Entry = b.sourced(unit.Degrees.Print(b.units, d.Entry), "duct", d.Name, "entry")
	}
	row.Turns = b.turnWords(d.Turns)
	if len(d.Turns) > 0 {
		row.Elbows = b.sourced(d.Elbows, "duct", d.Name, "elbows")
	}
	row.Hose = b.hoseFigures(d)
	for _, p := range d.Serves {
		row.Serves = append(row.Serves, p.Full())
	}
	for _, g := range d.Gates {
		row.Gates = append(row.Gates, g.Name)
	}
	return row
}

// hoseFigures say what a duct's hose is: its length and size, its make, and how
// it lies; nothing where it has none.
func (b *Book) hoseFigures(d *shop.Duct) []sourced {
	h := d.Hose
	if h == nil {
		return nil
	}
	lies := "ducts.not-stretched"
	switch {
	case !h.Stretched.Known():
		lies = "ducts.stretched-not-given"
	case h.Stretched.V:
		lies = "ducts.stretched"
	}
	hose := "ducts.hose"
	if h.Size == 0 {
		hose = "ducts.hose-open"
	}
	return []sourced{
		b.sourced(b.words.Text(hose, unit.Run.Print(b.units, h.Length), b.sizeWords(h.Size)), "hose", d.Name, "size"),
		b.sourced(h.Material, "hose", d.Name, "material"),
		b.sourced(b.words.Text("ducts.rough", unit.Thin.Print(b.units, h.Roughness)), "hose", d.Name, "roughness"),
		b.sourced(b.words.Text(lies), "hose", d.Name, "stretched"),
	}
}

// turnWords counts elbows by angle: "2 × 90°, 45°".
func (b *Book) turnWords(turns []shop.Turn) string {
	var order []string
	counts := map[string]int{}
	for _, t := range turns {
		angle := unit.Significant(float64(t.Angle), 2) + "°"
		if counts[angle] == 0 {
			order = append(order, angle)
		}
		counts[angle]++
	}
	for i, angle := range order {
		if n := counts[angle]; n > 1 {
			order[i] = b.words.Text("ducts.times", strconv.Itoa(n), angle)
		}
	}
	if len(order) == 0 {
		return b.words.Text("ducts.none")
	}
	return strings.Join(order, ", ")
}

// leakWords says what a shut gate lets through.
func (b *Book) leakWords(g *shop.Gate) string {
	switch {
	case g.Leak.None:
		return b.words.Text("ducts.nothing")
	case g.Leak.Share > 0:
		return b.words.Text("ducts.of-bore", unit.Short(100*g.Leak.Share))
	}
	return b.words.Text("collector.at", unit.Air.Print(b.units, g.Leak.Flow), unit.Press.Print(b.units, g.Leak.Press))
}
