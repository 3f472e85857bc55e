package checks

import (
	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var panelSpace = &Check{
	ID:       "panel-space",
	Name:     say("check.panel-space.name"),
	Title:    say("check.panel-space.title"),
	Needs:    "control.working_space, motor.volts, machine.circuit, collector.circuit, shop.rules",
	Whom:     Electrician,
	Compares: []string{"panel-space", "panel-space-high"},
	Run: func(p *plan.Plan, report func(Finding)) {
		if len(p.Circuits.Circuits) > 0 || p.Shop.Control.WorkingSpace.Known() {
			report(beforePanel(p.Shop))
		}
	},
}

// lowPanel is the most volts between lines of a supply whose volts to ground
// belong to the first row of the table.
var lowPanel = unit.Must[unit.Voltage](figure("low panel").Text("value"))

// highest are the most volts of a motor in the shop; nought where none is given.
func highest(s *shop.Shop) (most unit.Voltage) {
	note := func(m *shop.Motor) {
		if m != nil && m.Volts.Known() {
			most = max(most, m.Volts.V)
		}
	}
	for _, m := range s.Machines {
		note(m.Motor)
	}
	for _, c := range s.Collectors {
		note(c.Motor)
	}
	return most
}

// beforePanel judges the free depth before the panel. Above low volts the text
// asks for more by what stands opposite, which the file does not say: less than
// the most it asks for is a question.
func beforePanel(s *shop.Shop) Finding {
	rule, high := rulesOn(s, "panel-space"), rulesOn(s, "panel-space-high")
	f := Finding{At: s.Control.At, By: ByRule, Weight: Know, Basis: []source.Basis{rule.Basis}}
	if !f.At.Known() {
		f.At = placeOfCircuit(s)
	}
	least, depth := measureOf[unit.Length](rule), s.Control.WorkingSpace
	volts, limit := highest(s), unit.Run.Print(s.Units, least)
	if !depth.Known() {
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-panel-space.not-given.says"), say("finding-panel-space.not-given.do")
		return f
	}
	got, at := unit.Run.Print(s.Units, depth.V), float64(least)
	f.Figures = []Figure{{Name: say("finding-panel-space.figure"), Value: float64(depth.V), Unit: "m", Limit: &at, Basis: rule.Basis}}
	enough := unit.AtLeast(float64(depth.V), float64(least))
	counts := rule
	switch {
	case enough && volts > lowPanel:
		counts = high
		most := measureOf[unit.Length](high)
		f.Basis, at = []source.Basis{high.Basis}, float64(most)
		f.Figures[0].Basis = high.Basis
		if unit.AtLeast(float64(depth.V), float64(most)) {
			f.State = softly(high, true)
			f.Says, f.Do = say("finding-panel-space.kept.says", got, unit.Run.Print(s.Units, most), textOf(high)), say("finding-panel-space.kept.do")
			break
		}
		f.State = Ask
		f.Says, f.Do = say("finding-panel-space.high.says", got, unit.Volts.Print(s.Units, volts), unit.Run.Print(s.Units, most)), say("finding-panel-space.high.do")
	case enough && volts == 0 && !unit.AtLeast(float64(depth.V), float64(measureOf[unit.Length](high))):
		f.State, f.By = NotGiven, ByGiven
		f.Says, f.Do = say("finding-panel-space.no-volts.says", got, limit, unit.Run.Print(s.Units, measureOf[unit.Length](high))), say("finding-panel-space.no-volts.do")
		return f
	case enough:
		f.State = softly(rule, true)
		f.Says, f.Do = say("finding-panel-space.kept.says", got, limit, textOf(rule)), say("finding-panel-space.kept.do")
	default:
		if f.State = rule.holds(false); f.State == NotMet {
			f.Weight = Mend
		}
		f.Says, f.Do = say("finding-panel-space.short.says", got, limit, textOf(rule)), say("finding-panel-space.short.do")
	}
	if f.State == Ask || f.State == NotMet {
		f.Asks = say("finding-panel-space.asks", got)
	}
	f.Says = join(f.Says, counts.remark())
	return f
}

// placeOfCircuit is where the file tells of the first circuit.
func placeOfCircuit(s *shop.Shop) entry.Place {
	for _, m := range s.Machines {
		if m.Circuit != nil {
			return m.At
		}
	}
	for _, c := range s.Collectors {
		if c.Circuit != nil {
			return c.At
		}
	}
	return entry.Place{}
}
