package templates

import (
	"fmt"
	"html/template"
	"strings"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// addAir adds the schedule of ducts, a sheet for each collector and the
// working of each use.
func (b *Book) addAir() {
	b.add(&Sheet{Part: partAir, Path: "ducts.html", Title: "Ducts and gates", Kind: "table", Lede: "The schedule: what each duct is, where it goes, what sits on it.",
		Verdict: b.ductVerdict(), name: "ducts.html", view: func() any { return b.ductsView() }})
	for i, c := range b.Plan.Shop.Collectors {
		b.addIsometric(c)
		b.addCollector(c, b.Plan.Air.Loads[i])
	}
	b.addGauges()
	for _, u := range b.Plan.Air.Uses {
		if len(u.Machines) > 0 && u.Results[0].Collector != nil {
			b.addWorking(u)
		}
	}
}

// ductVerdict says how many ducts stand in a finding.
func (b *Book) ductVerdict() Verdict {
	open := 0
	do := ""
	for _, f := range b.Findings {
		if f.Kind == "duct" && f.State != checks.Met {
			open++
			if do == "" {
				do = f.About + ": " + f.Do
			}
		}
	}
	if open == 0 {
		return Verdict{Words: []Word{{"met", "nothing open"}}, Says: "No duct stands in a finding of its own. Speeds are judged use by use."}
	}
	return Verdict{Words: []Word{{"notmet", "look here"}}, Says: count(open, "finding is", "findings are") + " about ducts themselves; speeds are judged use by use.", Do: do}
}

type ductsView struct {
	Ducts []ductRow
	Gates []gateRow
	Leaks []leakRow
}

type ductRow struct {
	ID, Name, To, ToPath, At, Size, Material, Length, Turns, Entry, Hose string
	Serves, Gates                                                        []string
	Stretches                                                            int
}

type leakRow struct{ Duct, Path, Hole, Where string }

func (b *Book) ductsView() ductsView {
	var v ductsView
	for _, d := range b.Plan.Shop.Ducts {
		v.Ducts = append(v.Ducts, b.ductRow(d))
	}
	for _, g := range b.Plan.Shop.Gates {
		v.Gates = append(v.Gates, gateRow{ID: "gate-" + shop.Slug(g.Name), Name: g.Name, Duct: g.On.Name, DuctPath: b.Path("duct", g.On.Name), Where: unit.Run.Print(b.units, g.Where), Leak: b.leakWords(g)})
	}
	for _, l := range b.Plan.Shop.Leaks {
		v.Leaks = append(v.Leaks, leakRow{l.On.Name, b.Path("duct", l.On.Name), unit.Size.Print(b.units, l.Hole), unit.Run.Print(b.units, l.Where)})
	}
	return v
}

func (b *Book) ductRow(d *shop.Duct) ductRow {
	row := ductRow{ID: "duct-" + shop.Slug(d.Name), Name: d.Name, Size: unit.Size.Print(b.units, d.Size), Material: d.Material, Length: unit.Run.Print(b.units, d.Length), Stretches: len(d.Stretches)}
	if unit.Compare(float64(d.Bore), float64(d.Size)) != 0 {
		row.Size += " (bore " + unit.Size.Print(b.units, d.Bore) + ")"
	}
	if d.Gauge.Known() {
		row.Material += ", " + d.Gauge.V.String()
	}
	if d.Into != nil {
		row.To, row.ToPath, row.At = d.Into.Name, b.Path("duct", d.Into.Name), "at "+unit.Run.Print(b.units, d.JoinAt)
		if d.JoinAt == 0 {
			row.At = "at its start"
		}
	} else {
		row.To, row.ToPath = d.Collector.Name, b.Path("collector", d.Collector.Name)
	}
	row.Entry = "straight"
	if d.Entry > 0 {
		row.Entry = unit.Degrees.Print(b.units, d.Entry)
	}
	row.Turns = turnWords(d.Turns)
	if h := d.Hose; h != nil {
		row.Hose = unit.Run.Print(b.units, h.Length) + " of " + unit.Size.Print(b.units, h.Size) + " " + h.Material
	}
	for _, p := range d.Serves {
		row.Serves = append(row.Serves, p.Full())
	}
	for _, g := range d.Gates {
		row.Gates = append(row.Gates, g.Name)
	}
	return row
}

// turnWords counts elbows by angle: "2 × 90°, 45°".
func turnWords(turns []shop.Turn) string {
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
			order[i] = fmt.Sprintf("%d × %s", n, angle)
		}
	}
	if len(order) == 0 {
		return "none"
	}
	return strings.Join(order, ", ")
}

// leakWords says what a shut gate lets through.
func (b *Book) leakWords(g *shop.Gate) string {
	switch {
	case g.Leak.None:
		return "nothing"
	case g.Leak.Share > 0:
		return unit.Short(100*g.Leak.Share) + " % of the bore"
	}
	return unit.Air.Print(b.units, g.Leak.Flow) + " at " + unit.Press.Print(b.units, g.Leak.Press)
}

// collectorView is the sheet of one collector.
type collectorView struct {
	Name              string
	Chart             template.HTML
	FlowUnit, PressUn string
	PowerUnit         string
	Points            []pointRow
	Off               []string
	Facts             [][2]string
	Measured          *measuredView
	Findings          []findingRow
}

type pointRow struct {
	Number                          int
	Use, Path, Filter               string
	Flow, Static, Inlet, Own, Power string
	Remark                          string
}

func (b *Book) addCollector(c *shop.Collector, load duct.Load) {
	b.add(&Sheet{Part: partAir, Path: b.Path("collector", c.Name), Title: c.Name, Kind: "table", Lede: b.words.Text("collector.lede"),
		Verdict: b.worstOf(b.rowsAbout("collector", c.Name)), name: "collector.html", view: func() any { return b.collectorView(c, load) }})
}

func (b *Book) collectorView(c *shop.Collector, load duct.Load) collectorView {
	chart, points := b.board.FanChart(c, "fan")
	v := collectorView{Name: c.Name, Chart: trusted(chart), FlowUnit: unit.Air.Unit(b.units), PressUn: unit.Press.Unit(b.units), PowerUnit: unit.Shaft.Unit(b.units)}
	numbers := map[[2]string]int{}
	for _, p := range points {
		numbers[[2]string{p.Use, p.Filter}] = p.Number
	}
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.Results {
			if r.Collector != c {
				continue
			}
			if !r.OnCurve {
				v.Off = append(v.Off, b.words.Text("collector.off-of", u.Name, filterPhrase(r.Filter), r.Why))
				continue
			}
			v.Points = append(v.Points, b.pointRow(u, r, numbers[[2]string{u.Name, r.Filter}]))
		}
	}
	v.Facts = b.collectorFacts(c, load)
	v.Measured = b.measuredAt(c)
	v.Findings = b.rowsAbout("collector", c.Name)
	return v
}

// rowsAbout shows the findings about one thing.
func (b *Book) rowsAbout(kind, name string) []findingRow {
	var rows []findingRow
	for _, f := range b.findingsAbout(kind, name) {
		rows = append(rows, b.findingRow(f))
	}
	return rows
}

// worstOf is the verdict of a sheet that shows findings: its heaviest.
func (b *Book) worstOf(rows []findingRow) Verdict {
	for _, want := range []string{"stop", "mend", "know"} {
		for _, row := range rows {
			if row.Weight == want && row.State.Class != "met" {
				w := row.State
				if want == "stop" {
					w = Word{"stop", b.words.Text("collector.stop")}
				}
				return Verdict{Words: []Word{w}, Says: row.Says, Do: row.Do, Language: content.English}
			}
		}
	}
	return Verdict{Words: []Word{{"met", b.words.Text("collector.met")}}, Says: b.words.Text("collector.nothing-against"), Do: b.words.Text("collector.first-start")}
}

func (b *Book) pointRow(u *duct.Use, r *duct.Result, number int) pointRow {
	row := pointRow{Number: number, Use: u.Name, Filter: filterHead(r.Filter), Flow: unit.Air.Figure(b.units, r.Flow), Static: unit.Press.Figure(b.units, r.Static),
		Inlet: unit.Press.Figure(b.units, r.Inlet), Own: unit.Press.Figure(b.units, unit.Pressure(unit.Six(float64(r.Separator+r.FilterLoss+r.Outlet)))), Power: "—"}
	if len(u.Machines) > 0 {
		row.Path = b.Path("use", u.Name)
	}
	if r.PowerKnown {
		row.Power = unit.Shaft.Figure(b.units, r.Power)
	}
	switch {
	case len(r.Crossings) > 1:
		row.Remark = b.words.Text("collector.crosses")
	case r.LeftOfPeak:
		row.Remark = b.words.Text("collector.left-of-peak")
	}
	return row
}

func (b *Book) collectorFacts(c *shop.Collector, load duct.Load) [][2]string {
	row := b.collectorRow(c)
	var facts [][2]string
	add := func(of, says string) { facts = append(facts, [2]string{b.words.Text("collector.fact." + of), says}) }
	at := func(p string, q unit.Flow) string { return b.words.Text("collector.at", p, unit.Air.Print(b.units, q)) }
	add("claimed", row.Claimed+", "+row.Suction)
	add("delivered", row.Delivered)
	add("inlet", unit.Size.Print(b.units, c.Inlet))
	add("exhaust", row.Exhaust)
	if len(c.Curve) == 0 {
		add("curve", b.words.Text("collector.parabola"))
	} else {
		add("curve", b.words.Text("collector.at", b.words.Count("collector.points", len(c.Curve)), unit.Weight.Print(b.units, c.CurveDensity.V)))
	}
	if f := c.Filter; f != nil {
		add("filter", b.words.Text("collector.filter-loss", unit.Press.Print(b.units, f.Clean), unit.Press.Print(b.units, f.Change), unit.Air.Print(b.units, f.Flow)))
	}
	if c.Separator != nil {
		add("separator", at(unit.Press.Print(b.units, c.Separator.Loss), c.Separator.Flow))
	}
	if load.Known {
		add("greatest", b.words.Text("collector.motor-carries", at(unit.Shaft.Print(b.units, load.Greatest), load.At), unit.Shaft.Print(b.units, load.Rated)))
		if load.DuctOffKnown {
			add("duct-off", at(unit.Shaft.Print(b.units, load.DuctOff), load.DuctOffFlow))
		}
	}
	if c.Bin != nil {
		add("bin", unit.Bin.Print(b.units, c.Bin.Size)+" "+c.Bin.Called)
	}
	return facts
}
