package templates

import (
	"html/template"

	"dustbook/content"
	"dustbook/plan/duct"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// addAir adds the schedule of ducts, a sheet for each collector and the
// working of each use.
func (b *Book) addAir() {
	b.add(&Sheet{Part: partAir, Path: "ducts.html", Title: b.words.Text("ducts.title"), Kind: "table", Lede: b.words.Text("ducts.lede"),
		Verdict: b.ductVerdict(), name: "ducts.html", view: func() any { return b.ductsView() }})
	for i, c := range b.Plan.Shop.Collectors {
		b.addIsometric(c)
		b.addCollector(c, b.Plan.Air.Loads[i])
	}
	b.addGauges()
	for _, u := range b.Plan.Air.Uses {
		if hasWorking(u) || stands(u) {
			b.addWorking(u)
		}
	}
}

// collectorView is the sheet of one collector.
type collectorView struct {
	Name              string
	Chart             template.HTML
	FlowUnit, PressUn string
	PowerUnit         string
	Points            []pointRow
	Off               []string
	Open              string // says that the uses wait for sizes; empty where they do not
	Facts             []fact
	Rests             []sourced
	Measured          *measuredView
	Findings          []findingRow
	Keeping           keeping
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
			if !r.OnCurve && b.unsized(c) {
				continue
			}
			if !r.OnCurve {
				v.Off = append(v.Off, b.words.Text("collector.off-of", u.Name, filterPhrase(r.Filter), b.words.Because(r.Why)))
				continue
			}
			v.Points = append(v.Points, b.pointRow(u, r, numbers[[2]string{u.Name, r.Filter}]))
		}
	}
	if b.unsized(c) {
		v.Open = b.words.Text("sizes.open.uses", b.list(b.unsizedNames(c)))
	}
	v.Facts, v.Rests = append(b.collectorFacts(c, load), b.fanFacts(c)...), b.restsOn(b.thingsAt(c))
	v.Measured, v.Keeping = b.measuredAt(c), b.keeping(c)
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
				return Verdict{Words: []Word{w}, Says: row.Says, Do: row.Do, Sizes: row.Sizes, Language: content.English}
			}
		}
	}
	return Verdict{Words: []Word{{"met", b.words.Text("collector.met")}}, Says: b.words.Text("collector.nothing-against"), Do: b.words.Text("collector.first-start")}
}

func (b *Book) pointRow(u *duct.Use, r *duct.Result, number int) pointRow {
	row := pointRow{Number: number, Use: u.Name, Filter: filterHead(r.Filter), Flow: unit.Air.Figure(b.units, r.Flow), Static: unit.Press.Figure(b.units, r.Static),
		Inlet: unit.Press.Figure(b.units, r.Inlet), Own: unit.Press.Figure(b.units, unit.Pressure(unit.Six(float64(r.Separator+r.FilterLoss+r.Outlet)))), Power: "—"}
	row.Path = b.Path("use", u.Name)
	if stands(u) {
		row.Path = b.Path("working", u.Name)
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

// fact is what is so of a thing.
type fact struct {
	Of   string
	Says sourced
}

func (b *Book) collectorFacts(c *shop.Collector, load duct.Load) []fact {
	row := b.collectorRow(c)
	var facts []fact
	add := func(of, says string) {
		facts = append(facts, fact{b.words.Text("collector.fact." + of), sourced{Text: says}})
	}
	rests := func(kind, field string) { facts[len(facts)-1].Says.Assumed = b.assumed(kind, c.Name, field) }
	at := func(p string, q unit.Flow) string { return b.words.Text("collector.at", p, unit.Air.Print(b.units, q)) }
	add("claimed", b.words.Text("collector.both", row.Claimed, row.Suction))
	add("delivered", row.Delivered)
	add("inlet", unit.Size.Print(b.units, c.Inlet))
	add("exhaust", row.Exhaust)
	if len(c.Curve) == 0 {
		add("curve", b.words.Text("collector.parabola"))
	} else {
		add("curve", b.words.Text("collector.at", b.words.Count("collector.points", len(c.Curve)), unit.Weight.Print(b.units, c.CurveDensity.V)))
		rests("collector", "curve_density")
	}
	if f := c.Filter; f != nil {
		add("filter", b.words.Text("collector.filter-loss", unit.Press.Print(b.units, f.Clean), unit.Press.Print(b.units, f.Change), unit.Air.Print(b.units, f.Flow)))
	}
	if c.Separator != nil {
		add("separator", at(unit.Press.Print(b.units, c.Separator.Loss), c.Separator.Flow))
	}
	if load.Known {
		add("greatest", b.words.Text("collector.motor-carries", at(unit.Shaft.Print(b.units, load.Greatest), load.At), unit.Shaft.Print(b.units, load.Rated)))
		rests("motor", "service_factor")
		if load.DuctOffKnown {
			add("duct-off", at(unit.Shaft.Print(b.units, load.DuctOff), load.DuctOffFlow))
		}
	}
	if c.Bin != nil {
		add("bin", b.words.Text("collector.bin", unit.Bin.Print(b.units, c.Bin.Size), c.Bin.Called))
	}
	return facts
}
