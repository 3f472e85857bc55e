package templates

import (
	"html/template"
	"strings"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
	"dustbook/templates/drawing"
)

// starterView is the sheet on triggers that watch a contact of a starter.
type starterView struct {
	Drawing   template.HTML
	Terminals []starterTerminal
	Triggers  []starterTrigger
	Tests     []string
	Spoils    []string
}

type starterTerminal struct{ Does, Mark, Use string }

type starterTrigger struct {
	tagged
	Machine, MachinePath, Motor, Circuit string
}

// What the sheet says of a starter, in its order.
var (
	starterTerminals = []string{"spare", "holding", "coil", "overload", "power"}
	starterTests     = []string{"dead", "live", "own", "overload", "cut", "wire"}
	starterSpoils    = []string{"clamp", "two-pole", "drive", "shared", "secondary"}
)

// onContacts are the triggers that watch a contact of their machine.
func (b *Book) onContacts() []*shop.Trigger {
	var list []*shop.Trigger
	for _, t := range b.Plan.Shop.Triggers {
		if t.Senses == "contact" {
			list = append(list, t)
		}
	}
	return list
}

// addStarter adds the sheet on watching a starter; none where no trigger does.
func (b *Book) addStarter() {
	n := len(b.onContacts())
	if n == 0 {
		return
	}
	b.add(&Sheet{Part: partControl, Path: "starter.html", Title: b.words.Text("starter.title"), Kind: "table", Lede: b.words.Text("starter.lede"),
		Verdict: Verdict{Words: []Word{{"ask", b.words.Text("starter.verdict")}}, Says: b.words.Count("starter.says", n), Do: b.words.Text("starter.verdict-do")},
		name:    "control-starter.html", view: func() any { return b.starterView() }})
}

func (b *Book) starterView() starterView {
	var v starterView
	var watching []string
	for _, t := range b.onContacts() {
		row := starterTrigger{tagged: b.tagged(t), Machine: b.notGiven(), Motor: b.notGiven(), Circuit: b.notGiven()}
		watching = append(watching, row.label())
		if m := t.Machine; m != nil {
			row.Machine, row.MachinePath = m.Name, b.Path("machine", m.Name)
			row.Motor, row.Circuit = b.orNotGiven(b.motorParts(m.Motor)), b.orNotGiven(b.circuitParts(m.Circuit))
		}
		v.Triggers = append(v.Triggers, row)
	}
	v.Drawing = trusted(drawing.Starter(watching, "starter"))
	for _, row := range starterTerminals {
		say := func(part string) string { return b.words.Text("starter.row." + row + part) }
		v.Terminals = append(v.Terminals, starterTerminal{say(""), say("-mark"), say("-use")})
	}
	for _, test := range starterTests {
		v.Tests = append(v.Tests, b.words.Text("starter.test."+test))
	}
	for _, way := range starterSpoils {
		v.Spoils = append(v.Spoils, b.words.Text("starter.spoils."+way))
	}
	return v
}

// motorParts are the figures of a nameplate that the file gives.
func (b *Book) motorParts(m *shop.Motor) []string {
	if m == nil {
		return nil
	}
	parts := []string{unit.Shaft.Print(b.units, m.Power)}
	if m.Volts.Known() {
		parts = append(parts, unit.Volts.Print(b.units, m.Volts.V))
	}
	return parts
}

// circuitParts are the figures of a circuit that the file gives.
func (b *Book) circuitParts(c *shop.Circuit) []string {
	if c == nil {
		return nil
	}
	var parts []string
	if c.Breaker.Known() {
		parts = append(parts, unit.Amps.Print(b.units, c.Breaker.V))
	}
	return parts
}

func (b *Book) orNotGiven(parts []string) string {
	if len(parts) == 0 {
		return b.notGiven()
	}
	return strings.Join(parts, ", ")
}
