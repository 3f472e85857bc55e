package templates

import (
	"strings"

	"dustbook/plan/control"
	"dustbook/plan/unit"
)

// matrixView is the cause-and-effect matrix.
type matrixView struct {
	Columns []matrixColumn
	Groups  []matrixGroup
	Key     []matrixSign
	Notes   []string
	Lockout string
	File    string // the same as a table for a spreadsheet
	Open    []findingRow
}

type matrixColumn struct {
	tagged
	Kind  string
	First bool // the first of its kind, ruled off
}

type matrixGroup struct {
	Name string // its key
	Rows []matrixRow
}

type matrixRow struct {
	tagged
	Comes string // comes on, is pressed …
	Says  string
	Hand  []tagged
	Cells []matrixCell
}

type matrixCell struct {
	Sign, Word string
	First      bool
}

type matrixSign struct{ Sign, Word, Means string }

func (b *Book) matrixView() matrixView {
	m := b.Plan.Control.Matrix
	v := matrixView{}
	last := ""
	for _, c := range m.Columns {
		col := b.matrixColumn(c)
		col.First = last != "" && col.Kind != last
		last = col.Kind
		v.Columns = append(v.Columns, col)
	}
	for _, r := range m.Rows {
		group := groupOf(r.Cause)
		if n := len(v.Groups); n == 0 || v.Groups[n-1].Name != group {
			v.Groups = append(v.Groups, matrixGroup{Name: group})
		}
		at := &v.Groups[len(v.Groups)-1]
		row := b.matrixRow(r)
		for i, cell := range r.Cells {
			row.Cells = append(row.Cells, matrixCell{cell.String(), b.actWord(cell.Act), v.Columns[i].First})
		}
		at.Rows = append(at.Rows, row)
	}
	for _, a := range m.Acts() {
		v.Key = append(v.Key, matrixSign{a.Letter(), b.actWord(a), b.words.Text("act-means." + a.Name())})
	}
	v.Notes, v.Lockout, v.File = b.matrixNotes(m), b.Plan.Shop.Control.Lockout.V, matrixFile
	for _, id := range []string{"trigger-path", "trigger-opens", "power-cut", "blow-back"} {
		v.Open = append(v.Open, b.rowsOf(id, true)...)
	}
	return v
}

func (b *Book) matrixColumn(c control.Column) matrixColumn {
	switch {
	case c.Gate != nil:
		return matrixColumn{tagged: b.tagged(c.Gate), Kind: "gates"}
	case c.Collector != nil:
		col := matrixColumn{tagged: tagged{Name: c.Collector.Name, Path: b.Path("collector", c.Collector.Name)}, Kind: "collectors"}
		if relay := b.Plan.Control.RelayOf(c.Collector); relay != nil {
			col.Tag = relay.Tag
		}
		return col
	}
	return matrixColumn{tagged: tagged{Name: b.words.Text("matrix.signal")}, Kind: "signal"}
}

// groupOf is the key of the head that a cause stands under.
func groupOf(c control.Cause) string {
	switch c {
	case control.TriggerOn, control.TriggerOff, control.PurgePressed:
		return "matrix.triggers-and-switches"
	case control.LockoutOn, control.PowerReturned, control.SupplyLow:
		return "matrix.lockout-and-power"
	case control.LevelHigh, control.LevelVeryHigh:
		return "matrix.sensors"
	}
	return "matrix.stops-and-faults"
}

// matrixRow is the head of a row: what the cause is, and the figure it acts
// at.
func (b *Book) matrixRow(r *control.Row) matrixRow {
	row := matrixRow{Hand: b.taggedGates(r.ByHand)}
	if r.Trigger != nil {
		row.tagged = b.tagged(r.Trigger)
		b.triggerHead(&row, r)
		return row
	}
	switch r.Cause {
	case control.LockoutOn:
		row.Name, row.Comes, row.Says = b.words.Text("matrix.lockout"), b.words.Text("matrix.on"), b.Plan.Shop.Control.Lockout.V
	case control.PowerReturned:
		row.Name, row.Comes = b.words.Text("matrix.power"), b.words.Text("matrix.returns")
		row.Says = b.words.Text("matrix.by-the-file", b.given(b.Plan.Shop.Control.AfterPowerCut))
		if b.Plan.Control.RestartsByItself() {
			row.Says = b.words.Text("matrix.by-the-file-but", b.Plan.Shop.Control.AfterPowerCut.V)
		}
	case control.PurgePressed:
		row.Name, row.Comes, row.Says = b.words.Text("matrix.purge"), b.words.Text("matrix.is-pressed"), b.Plan.Shop.Control.Purge.V
	case control.SupplyLow:
		row.Name, row.Comes, row.Says = b.words.Text("matrix.supply"), b.words.Text("matrix.low"), b.words.Text("matrix.low-where")
		if lowest := b.Plan.Shop.Control.Lowest; lowest.Known() {
			row.Comes = b.words.Text("matrix.low-below", unit.Volts.Print(b.units, lowest.V))
		}
	case control.LevelHigh, control.LevelVeryHigh:
		row.tagged = b.tagged(r.Sensor)
		comes, says, level := "matrix.high", "matrix.level", r.Sensor.High
		if r.Cause == control.LevelVeryHigh {
			comes, level = "matrix.very-high", r.Sensor.VeryHigh
		}
		if len(r.Watched) > 1 {
			says = "matrix.level-anywhere"
		}
		row.Comes, row.Says = b.words.Text(comes), b.words.Text(says, r.Sensor.Senses, b.level(level))
	case control.StopPressed:
		row.tagged, row.Comes = b.tagged(r.Stop), b.words.Text("matrix.is-pressed")
		if machines := names(r.Stop.Machines); len(machines) > 0 {
			row.Says = b.words.Text("matrix.also-stops", strings.Join(machines, ", "))
		}
	case control.NotArrived:
		row.Name, row.Comes, row.Says = b.words.Text("matrix.gate-on-the-way", r.Collector.Name), b.words.Text("matrix.does-not-arrive"), b.words.Text("matrix.by-its-switch")
	case control.GateLocked:
		row.Name, row.Comes, row.Says = b.words.Text("matrix.gate-on-the-way", r.Collector.Name), b.words.Text("matrix.is-locked-shut"), b.words.Text("matrix.who-locked-it")
	case control.StartsUsed:
		row.tagged = tagged{Name: r.Collector.Name, Path: b.Path("collector", r.Collector.Name)}
		row.Comes, row.Says = b.words.Text("matrix.has-had-its-starts"), b.words.Text("matrix.starts-of-an-hour")
	}
	return row
}

// actWord is an act in a word or two; empty for nothing.
func (b *Book) actWord(a control.Act) string {
	if a == control.Nothing {
		return ""
	}
	return b.words.Text("act." + a.Name())
}

func (b *Book) triggerHead(row *matrixRow, r *control.Row) {
	t := r.Trigger
	pressed := control.Pressed(t)
	switch {
	case r.Cause == control.TriggerOn && pressed:
		row.Comes = b.words.Text("matrix.is-pressed")
	case r.Cause == control.TriggerOn:
		row.Comes = b.words.Text("matrix.comes-on")
	case pressed:
		row.Comes = b.words.Text("matrix.is-pressed-again")
	default:
		row.Comes = b.words.Text("matrix.goes-off")
	}
	if r.Cause == control.TriggerOn {
		row.Says = b.sensing(t)
		if len(t.Starts) > 0 && t.StartDelay.Known() {
			row.Says = b.words.Text("matrix.fan-after", row.Says, b.delay(t.StartDelay))
		}
		return
	}
	if len(t.Starts) > 0 {
		row.Says = b.words.Text("matrix.run-on", b.delay(t.RunOn))
	}
}

// matrixNotes are what has to be said beside the cells.
func (b *Book) matrixNotes(m *control.Matrix) []string {
	moves := b.words.Text("matrix.all-at-once")
	if powered := len(b.Plan.Control.Powered()); powered > m.Moves {
		moves = b.words.Count("matrix.moves", m.Moves)
		if !b.Plan.Shop.Control.MovesTogether.Stated() {
			moves += " " + b.words.Text("matrix.moves-not-given")
		}
	}
	notes := []string{moves, b.words.Text("matrix.never-starts")}
	missing := []string{}
	for _, senses := range []string{"filter pressure", "bin level", "air quality"} {
		found := false
		for _, s := range b.Plan.Shop.Sensors {
			found = found || s.Senses == senses
		}
		if !found {
			missing = append(missing, senses)
		}
	}
	if len(missing) > 0 {
		notes = append(notes, b.words.Text("matrix.no-sensor", b.list(missing)))
	}
	if !b.Plan.Shop.Control.Lockout.Known() {
		notes = append(notes, b.words.Text("matrix.no-lockout"))
	}
	if !b.Plan.Shop.Control.Supply.Known() && len(b.Plan.Shop.Chains) == 0 {
		notes = append(notes, b.words.Text("matrix.no-supply"))
	}
	if !b.Plan.Shop.Control.Purge.Known() {
		notes = append(notes, b.words.Text("matrix.no-purge"))
	}
	if len(b.Plan.Shop.Stops) == 0 {
		notes = append(notes, b.words.Text("matrix.no-stop"))
	}
	return notes
}
