package templates

import "dustbook/plan/control"

// matrixView is the cause-and-effect matrix.
type matrixView struct {
	Columns []matrixColumn
	Groups  []matrixGroup
	Key     []matrixSign
	Notes   []string
	Lockout string
	Open    []findingRow
}

type matrixColumn struct {
	tagged
	Kind  string
	First bool // the first of its kind, ruled off
}

type matrixGroup struct {
	Name string
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
			row.Cells = append(row.Cells, matrixCell{cell.String(), cell.Act.Word(), v.Columns[i].First})
		}
		at.Rows = append(at.Rows, row)
	}
	for _, a := range m.Acts() {
		v.Key = append(v.Key, matrixSign{a.Letter(), a.Word(), a.Means()})
	}
	v.Notes, v.Lockout = b.matrixNotes(m), b.Plan.Shop.Control.Lockout.V
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
		return matrixColumn{tagged: tagged{Name: c.Collector.Name, Path: b.Path("collector", c.Collector.Name)}, Kind: "collectors"}
	}
	return matrixColumn{tagged: tagged{Name: "Signal"}, Kind: "signal"}
}

// groupOf is the head that a cause stands under.
func groupOf(c control.Cause) string {
	switch c {
	case control.TriggerOn, control.TriggerOff:
		return "Triggers and switches"
	case control.LockoutOn, control.PowerReturned:
		return "Lockout and power"
	case control.LevelHigh, control.LevelVeryHigh:
		return "Sensors"
	}
	return "Stops and faults"
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
		row.Name, row.Comes, row.Says = "Lockout", "on", b.Plan.Shop.Control.Lockout.V
	case control.PowerReturned:
		row.Name, row.Comes, row.Says = "Power", "returns after a cut", "by the file: not given"
		if after := b.Plan.Shop.Control.AfterPowerCut; after.Known() {
			row.Says = "by the file: " + after.V
		}
	case control.LevelHigh, control.LevelVeryHigh:
		row.tagged = b.tagged(r.Sensor)
		row.Comes, row.Says = "high", r.Sensor.Senses+" at "+b.level(r.Sensor.High)
		if r.Cause == control.LevelVeryHigh {
			row.Comes, row.Says = "very high", r.Sensor.Senses+" at "+b.level(r.Sensor.VeryHigh)
		}
		if len(r.Watched) > 1 {
			row.Says += "; at which collector is not given"
		}
	case control.StopPressed:
		row.tagged, row.Comes = b.tagged(r.Stop), "is pressed"
		for i, m := range r.Stop.Machines {
			if i == 0 {
				row.Says = "also stops "
			} else {
				row.Says += ", "
			}
			row.Says += m.Name
		}
	case control.NotArrived:
		row.Name, row.Comes, row.Says = "A gate on the way to "+r.Collector.Name, "does not arrive", "by its switch, or by its travel time with a margin"
	}
	return row
}

func (b *Book) triggerHead(row *matrixRow, r *control.Row) {
	t := r.Trigger
	pressed := control.Pressed(t)
	switch {
	case r.Cause == control.TriggerOn && pressed:
		row.Comes = "is pressed"
	case r.Cause == control.TriggerOn:
		row.Comes = "comes on"
	case pressed:
		row.Comes = "is pressed again"
	default:
		row.Comes = "goes off"
	}
	if r.Cause == control.TriggerOn {
		row.Says = b.sensing(t)
		if len(t.Starts) > 0 && t.StartDelay.Known() {
			row.Says += "; fan after " + b.delay(t.StartDelay)
		}
		return
	}
	if len(t.Starts) > 0 {
		row.Says = "run-on " + b.delay(t.RunOn)
	}
}

// matrixNotes are what has to be said beside the cells.
func (b *Book) matrixNotes(m *control.Matrix) []string {
	moves := "All gates may move at once."
	if powered := len(b.Plan.Control.Powered()); powered > m.Moves {
		moves = count(m.Moves, "gate moves", "gates move") + " at a time; the others of a row wait their turn."
		if !b.Plan.Shop.Control.MovesTogether.Stated() {
			moves += " How many may move together is not given: one is taken."
		}
	}
	notes := []string{moves, "A trigger never starts, stops or enables a machine. Gates that a person moves have no column: the card of the machine names them."}
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
		notes = append(notes, "No row, because the file has no sensor: "+b.list(missing)+".")
	}
	if len(b.Plan.Shop.Stops) == 0 {
		notes = append(notes, "No row, because the file has no stop button.")
	}
	return notes
}
