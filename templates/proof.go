package templates

import (
	"slices"
	"strconv"

	"dustbook/checks"
	"dustbook/plan/duct"
	"dustbook/plan/record"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// addProof adds the sheets of proof: commissioning and records.
func (b *Book) addProof() {
	b.recordAt = map[*record.Record]string{}
	b.add(&Sheet{Part: partProof, Path: "commissioning.html", Title: b.words.Text("order.commissioning-the-order"), Kind: "proof", Lede: b.words.Text("order.what-to-do-between-the"),
		Verdict: b.proofVerdict(), Script: fillScript, name: "proof-order.html", view: func() any { return b.orderView() }})
	b.add(&Sheet{Part: partProof, Path: "commissioning-readings.html", Title: b.words.Text("order.commissioning-readings"), Kind: "proof", Lede: b.words.Text("order.what-a-gauge-should-say"),
		Verdict: b.proofVerdict(), Script: fillScript, name: "proof-readings.html", view: func() any { return b.readingsView() }})
	b.add(&Sheet{Part: partProof, Path: "commissioning-controls.html", Title: b.words.Text("order.commissioning-controls"), Kind: "proof", Lede: b.words.Text("order.every-trigger-on-and-off-b"),
		Verdict: b.controlsVerdict(), Script: fillScript, name: "proof-controls.html", view: func() any { return b.controlsView() }})
	b.addRecords()
	b.addTraverse()
}

// proofVerdict says how far the plan has been held against a gauge.
func (b *Book) proofVerdict() Verdict {
	hoods := b.Plan.Air.HoodGauges(b.units)
	done := 0
	for _, g := range hoods {
		if b.measured("hood pressure", g.Port.Full()) {
			done++
		}
	}
	v := Verdict{Words: []Word{{"blank", b.words.Text("order.not-proved")}}, Says: b.countWith("order.measured", len(hoods), strconv.Itoa(done)), Do: b.words.Text("order.prove-the-figures")}
	if done > 0 {
		v.Words = []Word{{"advice", b.words.Text("order.begun")}}
	}
	if done == len(hoods) && done > 0 {
		v.Words, v.Do = []Word{{"advice", b.words.Text("order.hoods-measured")}}, b.words.Text("order.how-each-stands")
	}
	if n := checks.Standing(b.Findings); n > 0 {
		v.Words = append([]Word{{"stop", b.words.Text("order.stop")}}, v.Words...)
		v.Says = b.words.Count("order.stops", n) + " " + v.Says
	}
	return v
}

// measured reports whether something was ever measured somewhere.
func (b *Book) measured(of, at string) bool {
	return slices.ContainsFunc(b.Plan.Records, func(r *record.Record) bool {
		return slices.ContainsFunc(r.Readings, func(reading record.Reading) bool { return reading.Of == of && reading.At == at })
	})
}

// orderView is the order of work of commissioning.
type orderView struct {
	Stops               []findingRow
	Collectors          []firstRow
	DuctOff             []string
	Flues               []string
	Smoke               []smokeRow
	Longest             string
	Least, Most, Agrees string // shares of the repeated readings
	Faster              string
	Curve               string // where the first fan is shown
	Returns             []string
	HasTriggers         bool
	Fill                fillView
}

// firstRow is the first start of one collector.
type firstRow struct {
	Name, Path, Shut string // Shut is the suction with every gate shut
	Use, UsePath     string
	Gates            []string
	Static, RunUp    string
	Wide, WidePath   string
	WideGates        []string
	Power, Rated     string
	Blank            blank
}

type smokeRow struct {
	Port, Path string
	Blank      blank
}

func (b *Book) orderView() orderView {
	v := orderView{Least: figure("repeat least"), Most: figure("repeat most"), Agrees: figure("repeat agrees"), Faster: figure("faster"), HasTriggers: len(b.Plan.Shop.Triggers) > 0}
	for _, f := range b.Findings {
		if f.Weight == checks.Stop {
			v.Stops = append(v.Stops, b.findingRow(f))
		}
	}
	for i, c := range b.Plan.Shop.Collectors {
		if i == 0 {
			v.Curve = b.Path("collector", c.Name)
		}
		load := b.Plan.Air.Loads[i]
		v.Collectors = append(v.Collectors, b.firstRow(c, load))
		if load.DuctOffKnown && load.Known {
			v.DuctOff = append(v.DuctOff, b.words.Text("order.duct-off", c.Name, unit.Shaft.Print(b.units, load.DuctOff), unit.Shaft.Print(b.units, load.Rated)))
		}
		if c.Exhaust.V == "returns to room" {
			v.Returns = append(v.Returns, c.Name)
		}
	}
	for _, a := range b.Plan.Shop.Appliances {
		if a.Kind != "electric" && a.Room != nil {
			v.Flues = append(v.Flues, b.words.Text("order.flue", a.Kind, a.Room.Name))
		}
	}
	v.Fill = b.fillView("commissioning.html", byAmmeter)
	var far unit.Length
	for _, m := range b.Plan.Shop.Machines {
		for _, p := range m.Ports {
			if p.Duct == nil {
				continue
			}
			v.Smoke = append(v.Smoke, smokeRow{p.Full(), b.Path("use", m.Name), b.blankFor(record.Reading{Of: "smoke", At: p.Full(), Use: m.Name}, "")})
			if long := runOf(p); long > far {
				far, v.Longest = long, p.Full()
			}
		}
	}
	return v
}

// figure is a share of the data of commissioning, as printed.
func figure(name string) string {
	x, _ := duct.ProofFigure(name)
	return unit.Short(x)
}

// runOf is how far it is from a port to its collector.
func runOf(p *shop.Port) (long unit.Length) {
	for _, s := range p.Path() {
		long += s.Length()
	}
	if p.Duct.Hose != nil {
		long += p.Duct.Hose.Length
	}
	return long
}

// firstRow finds the gates for the first start of a fan, those of the use that
// draws least, and the ones for reading amps, those of the use that draws
// most.
func (b *Book) firstRow(c *shop.Collector, load duct.Load) firstRow {
	row := firstRow{Name: c.Name, Path: b.Path("collector", c.Name), Shut: b.notKnown(), Static: "—", RunUp: b.notGiven(), Power: b.notGiven(), Rated: b.notGiven()}
	var least, most *duct.Result
	for _, u := range b.Plan.Air.Uses {
		for _, r := range u.On(c) {
			switch {
			case !r.OnCurve || r.Filter == duct.ChangeOut:
			case u.Kind == duct.AllShut:
				row.Shut = unit.Press.Print(b.units, r.Inlet)
			case len(u.Machines) == 0:
			default:
				if least == nil || r.Flow < least.Flow {
					least = r
				}
				if most == nil || r.Flow > most.Flow {
					most = r
				}
			}
		}
	}
	if c.RunUp.Known() {
		row.RunUp = unit.Seconds.Print(b.units, c.RunUp.V)
	}
	if load.Rated > 0 {
		row.Rated = unit.Shaft.Print(b.units, load.Rated)
	}
	amps := record.Reading{Of: "current", At: c.Name}
	row.Blank = b.blankFor(amps, "")
	if least == nil {
		return row
	}
	amps.Use = most.Use.Name
	row.Blank = b.blankFor(amps, "")
	row.Use, row.UsePath, row.Gates = least.Use.Name, b.Path("use", least.Use.Name), b.gateNames(least)
	row.Static = unit.Press.Print(b.units, least.Static)
	row.Wide, row.WidePath, row.WideGates = most.Use.Name, b.Path("use", most.Use.Name), b.gateNames(most)
	if most.PowerKnown {
		row.Power = unit.Shaft.Print(b.units, most.Power)
	}
	return row
}

// gateNames are the gates open in a result.
func (b *Book) gateNames(r *duct.Result) []string {
	var names []string
	for _, g := range r.OpenGates(b.Plan.Shop) {
		names = append(names, g.Name)
	}
	return names
}
