package templates

import (
	"html/template"
	"strconv"
	"strings"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/control"
	"dustbook/plan/control/chain"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// wiringView is the sheet of one chain.
type wiringView struct {
	Drawing  template.HTML
	Facts    [][2]string
	RunUnit  string
	Runs     []runRow
	Total    string
	Findings []findingRow
	Chain    chainView
	AboveLow bool   // the supply lies above low voltage
	Circuits string // the sheet of the mains circuits; empty where there is none
}

// runRow is one run of cable between two devices.
type runRow struct {
	Number    int
	From, To  tagged
	Length    string
	Cut       string
	Conductor string
	Label     string
	Poles     []string
}

// addWiring adds the sheet of a chain; its place in the file gives the letter
// of its runs.
func (b *Book) addWiring(c *shop.Chain, place int) {
	b.add(&Sheet{Part: partControl, Path: b.Path("chain", c.Name), Title: b.words.Text("wiring.title", c.Name), Kind: "matrix", Lede: b.words.Text("wiring.the-chain-from-the-supply"),
		Verdict: b.wiringVerdict(c), name: "control-wiring.html", view: func() any { return b.wiringView(c, place) }})
}

// labelsOf are what stands on the labels of a run's conductors.
func labelsOf(w chain.Wire) []string {
	var labels []string
	for _, p := range w.Poles {
		labels = append(labels, p.Label)
	}
	return labels
}

// onChain are the findings against a chain: its volts, its supply, its
// devices; the supply first where it lies above low voltage.
func (b *Book) onChain(c *shop.Chain) []findingRow {
	device := map[string]bool{}
	for _, s := range c.Stops {
		device[s.Device()] = true
	}
	var volts, rest []findingRow
	for _, f := range b.Findings {
		switch {
		case f.State == checks.Met:
		case f.Check == "chain-volts" && f.About == c.Name:
			volts = append(volts, b.findingRow(f))
		case f.Check == "supply-margin", f.Check == "chain-devices" && (device[f.About] || f.Kind == "chain" && f.About == c.Name):
			rest = append(rest, b.findingRow(f))
		}
	}
	if b.aboveLow() {
		return append(rest, volts...)
	}
	return append(volts, rest...)
}

func (b *Book) wiringVerdict(c *shop.Chain) Verdict {
	if rows := b.onChain(c); len(rows) > 0 {
		for i, row := range rows {
			if row.About != "" && row.About != c.Name {
				rows[i].Says = b.about(row)
			}
		}
		return b.worstOf(rows)
	}
	for _, f := range b.findingsAbout("chain", c.Name) {
		if f.Check == "chain-volts" {
			return Verdict{Words: []Word{stateWord(f.State)}, Says: f.Says, Do: f.Do, Language: content.English}
		}
	}
	return Verdict{Words: []Word{{"blank", b.words.Text("wiring.to-prove")}}, Says: b.words.Count("wiring.devices", len(c.Stops)), Do: b.words.Text("wiring.check-polarity-and-pull-each")}
}

func (b *Book) wiringView(c *shop.Chain, place int) wiringView {
	v := wiringView{Drawing: trusted(drawing.Chain(b.Plan, c, "chain")), RunUnit: unit.Run.Unit(b.units), Findings: b.onChain(c)}
	total := unit.Length(0)
	for _, w := range b.Plan.Chains.Of(c).Wires {
		conductor := b.words.Text("wiring.conductors", strconv.Itoa(w.Conductors), w.Size)
		v.Runs = append(v.Runs, runRow{w.Number, b.endOf(w.From), b.endOf(w.To), unit.Run.Figure(b.units, w.Length), unit.Run.Figure(b.units, w.Cut()), conductor, runLabel(place, w.Number), labelsOf(w)})
		total += w.Length
	}
	v.Total = unit.Run.Print(b.units, unit.Length(unit.Six(float64(total))))
	v.Facts = b.chainFacts(c)
	v.Chain, v.AboveLow = b.chainView(c), b.aboveLow()
	if len(b.circuitRows()) > 0 {
		v.Circuits = circuitsPath
	}
	return v
}

// endOf is the device at an end of a run.
func (b *Book) endOf(d *control.Device) tagged {
	end := tagged{d.Tag, d.Name, devicePath(d)}
	if d.Kind == control.Supply {
		end.Name = b.words.Text("wiring.control-supply")
	}
	return end
}

func (b *Book) chainFacts(c *shop.Chain) [][2]string {
	temperature := b.notGiven()
	if c.Temperature.Known() {
		temperature = b.wireHeat(c.Temperature.V)
		if !c.Temperature.Stated() {
			temperature = b.words.Text("wiring.assumed", temperature)
		}
	}
	return [][2]string{
		{b.words.Text("wiring.supply"), b.supplyWords()},
		{b.words.Text("wiring.cable"), b.words.Text("wiring.two-conductors", c.CableText)},
		{b.words.Text("wiring.cable-temperature"), temperature},
		{b.words.Text("wiring.devices"), strconv.Itoa(len(c.Stops))},
	}
}

// supplyWords says what the file gives of the control supply.
func (b *Book) supplyWords() string {
	s := b.Plan.Shop.Control
	says := []string{b.words.Text("wiring.voltage-not-given")}
	if s.Supply.Known() {
		says[0] = unit.Volts.Print(b.units, s.Supply.V)
	}
	if s.SupplyPower.Known() {
		says = append(says, b.words.Text("wiring.watts", unit.Short(float64(s.SupplyPower.V))))
	}
	switch {
	case s.SupplyListed.V == "class 2":
		says = append(says, b.words.Text("wiring.class-2"))
	case s.SupplyListed.Known():
		says = append(says, b.words.Text("wiring.listing", s.SupplyListed.V))
	default:
		says = append(says, b.words.Text("wiring.listing-not-given"))
	}
	return strings.Join(says, ", ")
}

// wireHeat is a temperature of wire or terminals: in °C, as cable and terminals
// are marked, and in a US book in °F too.
func (b *Book) wireHeat(t unit.Temperature) string {
	marked := unit.Heat.Print(unit.Metric, t)
	if b.units == unit.Metric {
		return marked
	}
	return b.words.Text("wiring.both", marked, unit.Heat.Print(b.units, t))
}

// run prints a length of duct or cable.
func (b *Book) run(l unit.Length) string { return unit.Run.Print(b.units, l) }
