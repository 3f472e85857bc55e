package templates

import (
	"strconv"

	"dustbook/checks"
	"dustbook/plan/control"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// addControl adds the sheets of the control half; none for a shop without one.
func (b *Book) addControl() {
	if !b.Plan.Control.Given {
		return
	}
	b.add(&Sheet{Part: partControl, Path: "matrix.html", Title: b.words.Text("control.cause-and-effect"), Kind: "matrix", Lede: b.words.Text("control.what-every-cause-does-to"),
		Verdict: b.controlVerdict("trigger-path", "trigger-opens", "power-cut", "blow-back"), name: "control-matrix.html", view: func() any { return b.matrixView() }})
	b.file(matrixFile, b.matrixTable())
	if len(b.Plan.Shop.Triggers) > 0 {
		b.add(&Sheet{Part: partControl, Path: "triggers.html", Title: b.words.Text("control.triggers"), Kind: "table", Lede: b.words.Text("control.what-each-trigger-senses-where"),
			Verdict: b.controlVerdict("threshold", "trigger-path", "trigger-opens", "start-delay", "run-on", "shared-hose"), name: "control-triggers.html", view: func() any { return b.triggersView() }})
	}
	b.add(&Sheet{Part: partControl, Path: "register.html", Title: b.words.Text("control.device-register"), Kind: "matrix", Lede: b.words.Text("control.every-device-with-the-tag"),
		Verdict: b.controlVerdict("chain-devices"), name: "control-register.html", view: func() any { return b.registerView() }})
	b.addStories()
	b.addStarter()
	b.addSetting()
	for i, c := range b.Plan.Shop.Chains {
		b.addWiring(c, i)
	}
}

// controlPath is where a thing of the control half is shown.
func (b *Book) controlPath(kind, name string) string {
	if !b.Plan.Control.Given {
		return ""
	}
	switch kind {
	case "trigger":
		return "triggers.html#trigger-" + shop.Slug(name)
	case "chain":
		return "wiring-" + shop.Slug(name) + ".html"
	case "sensor", "stop":
		for _, d := range b.Plan.Control.Devices {
			if d.Name == name && (kind == "sensor") == (d.Sensor != nil) && d.Gate == nil && d.Trigger == nil {
				return "register.html#" + deviceID(d)
			}
		}
	}
	return ""
}

// devicePath is a device's row in the register.
func devicePath(d *control.Device) string { return "register.html#" + deviceID(d) }

func deviceID(d *control.Device) string { return "device-" + shop.Slug(d.Tag) }

// controlVerdict is the heaviest finding of some checks, with what it is
// about.
func (b *Book) controlVerdict(ids ...string) Verdict {
	var rows []findingRow
	for _, id := range ids {
		rows = append(rows, b.rowsOf(id, false)...)
	}
	for i := range rows {
		if rows[i].About != "" {
			rows[i].Says = b.about(rows[i])
		}
	}
	if len(rows) == 0 {
		return Verdict{Words: []Word{{"blank", b.words.Text("control.nothing-to-look-at")}}, Says: b.words.Text("control.no-check-found-anything-to"), Do: b.words.Text("control.prove-it-row-by-row")}
	}
	v := b.worstOf(rows)
	if v.Words[0].Class == "met" {
		v.Do = b.words.Text("control.prove-by-watching")
	}
	return v
}

// rowsOf shows the findings of a check; with open alone, those that are not
// met.
func (b *Book) rowsOf(id string, open bool) []findingRow {
	var rows []findingRow
	for _, f := range b.Findings {
		if f.Check == id && !(open && f.State == checks.Met) {
			rows = append(rows, b.findingRow(f))
		}
	}
	return rows
}

// tagged is a device with its tag and where it is shown.
type tagged struct{ Tag, Name, Path string }

func (b *Book) tagged(thing any) tagged {
	d := b.Plan.Control.DeviceOf(thing)
	if d == nil {
		return tagged{}
	}
	return tagged{d.Tag, d.Name, devicePath(d)}
}

func (b *Book) taggedGates(gates []*shop.Gate) []tagged {
	var list []tagged
	for _, g := range gates {
		list = append(list, b.tagged(g))
	}
	return list
}

// sensing says what a trigger senses, with its threshold.
func (b *Book) sensing(t *shop.Trigger) string {
	what := "control.contact"
	var about []string
	switch {
	case control.Pressed(t):
		what = "control.switch"
	case t.Senses == "contact":
	case t.Threshold.Known():
		what, about = "control.current-above", []string{unit.Amps.Print(b.units, t.Threshold.V)}
	default:
		what = "control.current"
	}
	if t.Machine != nil {
		what, about = what+"-of", append(about, t.Machine.Name)
	}
	return b.words.Text(what, about...)
}

// delay prints a time that the file may leave out.
func (b *Book) delay(t shop.Field[unit.Time]) string {
	if !t.Known() {
		return b.notGiven()
	}
	return unit.Seconds.Print(b.units, t.V)
}

// chainLetter is the letter of a chain, by its place in the file: A to Z, then
// AA.
func chainLetter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return chainLetter(i/26-1) + string(rune('A'+i%26))
}

// runLabel is the label at both ends of a run: the chain's letter and the
// run's number.
func runLabel(chain, run int) string { return chainLetter(chain) + strconv.Itoa(run) }

// about is what a finding says, with what it is about before it.
func (b *Book) about(row findingRow) string {
	return b.words.Text("control.about", row.About, row.Says)
}
