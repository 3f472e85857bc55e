package templates

import (
	"strconv"

	"dustbook/checks"
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// circuitsPath is the sheet of the mains circuits.
const circuitsPath = "circuits.html"

// circuitRow is the mains circuit of a machine or collector, by its motor's
// nameplate and what the file gives of the circuit.
type circuitRow struct {
	Name, Path                       string
	Motor, Volts, Phase              string
	Breaker, Wire, Length, Terminals string
}

// circuitsView is the sheet of the mains circuits that the file gives.
type circuitsView struct {
	Rows      []circuitRow
	Held      []circuitHeld
	CheckPath string
	Chains    []linked
}

// linked is a sheet to go to.
type linked struct{ Name, Path string }

// addCircuits adds the sheet of the mains circuits; none where the file gives
// no circuit.
func (b *Book) addCircuits() {
	v := circuitsView{Rows: b.circuitRows(), Held: b.circuitsHeld(), CheckPath: b.Path("check", "motor-circuit")}
	if len(v.Rows) == 0 {
		return
	}
	for _, c := range b.Plan.Shop.Chains {
		v.Chains = append(v.Chains, linked{b.words.Text("wiring.title", c.Name), b.Path("chain", c.Name)})
	}
	b.add(&Sheet{Part: partControl, Path: circuitsPath, Title: b.words.Text("circuits.title"), Kind: "matrix", Lede: b.words.Text("circuits.lede"),
		Verdict: Verdict{Words: b.circuitsWords(v.Held), Says: b.words.Count("circuits.says", len(v.Rows)), Do: b.words.Text("circuits.do")},
		name:    "control-circuits.html", view: func() any { return v }})
}

// circuitsWords says who does the work, and that something does not hold where
// that is so.
func (b *Book) circuitsWords(list []circuitHeld) []Word {
	words := []Word{{"ask", b.words.Text("circuits.word")}}
	for _, c := range list {
		if c.State.Class == classOf(checks.NotMet) {
			return append([]Word{{c.State.Class, b.words.Text("circuits.fails")}}, words...)
		}
	}
	return words
}

// circuitRows are the circuits of collectors and machines, in file order.
func (b *Book) circuitRows() []circuitRow {
	var rows []circuitRow
	for _, c := range b.Plan.Shop.Collectors {
		if c.Circuit != nil {
			rows = append(rows, b.circuitRow(c.Name, b.Path("collector", c.Name), c.Motor, c.Circuit))
		}
	}
	for _, m := range b.Plan.Shop.Machines {
		if m.Circuit != nil {
			rows = append(rows, b.circuitRow(m.Name, b.Path("machine", m.Name), m.Motor, m.Circuit))
		}
	}
	return rows
}

func (b *Book) circuitRow(name, path string, m *shop.Motor, c *shop.Circuit) circuitRow {
	none := b.notGiven()
	row := circuitRow{Name: name, Path: path, Motor: none, Volts: none, Phase: none, Breaker: none, Wire: none, Length: none, Terminals: none}
	if m != nil {
		row.Motor, row.Volts, row.Phase = unit.Shaft.Print(b.units, m.Power), printedWith(unit.Volts, b.units, m.Volts, none), b.phaseWord(m.Phase)
	}
	row.Breaker, row.Length = printedWith(unit.Amps, b.units, c.Breaker, none), printedWith(unit.Run, b.units, c.Length, none)
	if c.Terminals.Known() {
		row.Terminals = b.wireHeat(c.Terminals.V)
	}
	if c.Wire.Known() {
		row.Wire = b.wireWord(c.Wire.V)
	}
	return row
}

// printedWith prints a field that the file may leave out.
func printedWith[Q unit.Measure](s unit.Scale[Q], sys unit.System, f shop.Field[Q], none string) string {
	if !f.Known() {
		return none
	}
	return s.Print(sys, f.V)
}

// phaseWord says one phase or three.
func (b *Book) phaseWord(f shop.Field[int]) string {
	switch {
	case !f.Known():
		return b.notGiven()
	case f.V == 1:
		return b.words.Text("circuits.single-phase")
	case f.V == 3:
		return b.words.Text("circuits.three-phase")
	}
	return b.words.Text("circuits.phases", strconv.Itoa(f.V))
}

// wireWord is a conductor by its gauge number where it has one, else by its
// area.
func (b *Book) wireWord(w unit.Wire) string {
	if number, ok := w.Number(); ok {
		return b.words.Text("circuits.gauge", number)
	}
	return unit.Conductor.Print(b.units, w)
}

// circuitHeld is a circuit beside what its motor asks for by the tables.
type circuitHeld struct {
	Name, Path    string
	Current       string // of the motor, by the table
	Carry         string // what conductors have to carry
	Least, Wire   string
	Most, Breaker string
	Drop          string // what is lost on the way at full load
	State         Word
}

// circuitsHeld are the circuits beside what the tables ask for, in file order.
func (b *Book) circuitsHeld() []circuitHeld {
	var list []circuitHeld
	untold := b.words.Text("circuits.untold")
	for _, o := range b.Plan.Circuits.Circuits {
		kind := "collector"
		if o.Machine != nil {
			kind = "machine"
		}
		row := circuitHeld{Name: o.Name(), Path: b.Path(kind, o.Name()), Current: untold, Carry: untold, Least: untold, Most: untold, Drop: untold, Wire: b.notGiven()}
		row.Breaker = printedWith(unit.Amps, b.units, o.Circuit.Breaker, b.notGiven())
		if o.Circuit.Wire.Known() {
			row.Wire = b.wireWord(o.Circuit.Wire.V)
		}
		if o.Told {
			row.Current, row.Carry = unit.Amps.Print(b.units, o.Table.Current), unit.Amps.Print(b.units, o.Carry)
		}
		if o.Least > 0 {
			row.Least = b.wireWord(o.Least)
		}
		if o.Largest.Known {
			row.Most = unit.Amps.Print(b.units, o.Largest.Size)
		}
		if o.DropKnown {
			row.Drop = b.words.Text("circuits.drop-of", unit.Volts.Print(b.units, o.Drop.Volts), unit.Fixed(100*o.Drop.Share, 1))
		}
		if f := b.finding("motor-circuit", kind, o.Name()); f != nil {
			row.State = stateWord(f.State)
		}
		list = append(list, row)
	}
	return list
}
