package templates

import (
	"dustbook/plan/unit"
)

// gaugeView is the sheet on what gauges mean in this shop.
type gaugeView struct {
	Press, Flow, Speed, Size string // units
	Hoods                    []hoodRow
	Pitot                    []pitotRow
	Fans                     []fanReadingRow
}

type hoodRow struct {
	Port, Path, Expected, Need, Entry, Largest, Carry, Hand string
	Readings                                                []readingRow
}

type readingRow struct{ Press, Flow string }

type pitotRow struct{ Press, Speed, Hand string }

type fanReadingRow struct{ Collector, Path, Use, Inlet, Dynamic, Outlet, Static string }

// addGauges adds the sheet on gauges.
func (b *Book) addGauges() {
	press := func(p unit.Pressure) string { return unit.Press.Figure(b.units, p) }
	v := gaugeView{Press: unit.Press.Unit(b.units), Flow: unit.Air.Unit(b.units), Speed: unit.Speed.Unit(b.units), Size: unit.Size.Unit(b.units)}
	for _, g := range b.Plan.Air.HoodGauges(b.units) {
		row := hoodRow{Port: g.Port.Full(), Path: b.Path("use", g.Port.Machine.Name), Expected: press(g.Expected), Need: "—", Entry: unit.Fixed(g.Entry, 2), Largest: "—", Carry: "—"}
		if g.Port.Flow > 0 {
			row.Need = press(g.Need)
			row.Largest, row.Carry = unit.Size.Print(b.units, g.Largest), unit.Speed.Print(b.units, g.Speed)
		}
		for _, r := range g.Readings {
			row.Readings = append(row.Readings, readingRow{press(r.Press), unit.Air.Figure(b.units, r.Flow)})
			if r.Press == g.Expected {
				row.Hand = unit.Air.Figure(b.units, r.Hand)
			}
		}
		v.Hoods = append(v.Hoods, row)
	}
	for _, r := range b.Plan.Air.Pitot(b.units, pitotPressures(b.units)) {
		v.Pitot = append(v.Pitot, pitotRow{press(r.Press), unit.Speed.Figure(b.units, r.Speed), unit.Speed.Figure(b.units, r.Hand)})
	}
	for _, r := range b.Plan.Air.FanReadings() {
		v.Fans = append(v.Fans, fanReadingRow{r.Collector.Name, b.Path("collector", r.Collector.Name), r.Use.Name, press(r.Inlet), press(r.Dynamic), press(r.Outlet), press(r.Static)})
	}
	b.add(&Sheet{Part: partAir, Path: "gauges.html", Title: b.words.Text("gauges.reading-a-gauge"), Kind: "table", Lede: b.words.Text("gauges.what-a-water-gauge-at"),
		Verdict: Verdict{Words: []Word{{"advice", b.words.Text("gauges.prove-it")}}, Says: b.words.Text("gauges.hand-in-front"), Do: b.words.Text("gauges.drill-the-taps")}, name: "gauges.html", view: func() any { return v }})
}

// pitotPressures are round velocity pressures in the shop's own units.
func pitotPressures(sys unit.System) []unit.Pressure {
	texts := []string{"0.25 inwg", "0.5 inwg", "0.75 inwg", "1 inwg", "1.25 inwg", "1.5 inwg", "2 inwg", "2.5 inwg", "3 inwg", "4 inwg"}
	if sys == unit.Metric {
		texts = []string{"50 Pa", "100 Pa", "150 Pa", "200 Pa", "250 Pa", "300 Pa", "400 Pa", "500 Pa", "700 Pa", "1000 Pa"}
	}
	var list []unit.Pressure
	for _, text := range texts {
		list = append(list, unit.Must[unit.Pressure](text))
	}
	return list
}
