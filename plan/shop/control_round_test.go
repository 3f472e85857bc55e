package shop

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// printer writes the control half of a shop as a file, with every figure as
// the book prints it.
type printer struct {
	text  strings.Builder
	units unit.System
}

func (p *printer) table(header string) { fmt.Fprintln(&p.text, header) }

func (p *printer) line(key string, value any) { fmt.Fprintf(&p.text, "%s = %v\n", key, value) }

// texts writes a field of text, if it is stated.
func (p *printer) texts(key string, f Field[string]) {
	if f.Stated() {
		p.line(key, fmt.Sprintf("%q", f.V))
	}
}

// figure writes a quantity by a scale of the book, if it is stated.
func figure[Q unit.Measure](p *printer, key string, f Field[Q], scale unit.Scale[Q]) {
	if f.Stated() {
		p.line(key, fmt.Sprintf("%q", scale.Print(p.units, f.V)))
	}
}

// point writes a place on the plan.
func (p *printer) point(key string, f Field[Point]) {
	if !f.Stated() {
		return
	}
	per := 1.0
	if p.units == unit.US {
		per = foot
	}
	p.line(key, fmt.Sprintf("[%s, %s]", unit.Short(f.V.X/per), unit.Short(f.V.Y/per)))
}

// names writes a list of names.
func (p *printer) names(key string, names []string) {
	p.line(key, "["+strings.Join(quoteAll(names), ", ")+"]")
}

// namesOf takes the names of things.
func namesOf[T any](list []T, name func(T) string) []string {
	var all []string
	for _, v := range list {
		all = append(all, name(v))
	}
	return all
}

func collectorName(c *Collector) string { return c.Name }

func (p *printer) trigger(v *Trigger) {
	p.table("[[trigger]]")
	p.line("name", fmt.Sprintf("%q", v.Name))
	p.texts("tag", v.Tag)
	p.line("senses", fmt.Sprintf("%q", v.Senses))
	if v.Machine != nil {
		p.line("machine", fmt.Sprintf("%q", v.Machine.Name))
	}
	figure(p, "standby", v.Standby, unit.Amps)
	figure(p, "no_load", v.NoLoad, unit.Amps)
	figure(p, "threshold", v.Threshold, unit.Amps)
	if v.Turns.Stated() {
		p.line("turns", v.Turns.V)
	}
	if v.Range.Stated() {
		p.line("range", fmt.Sprintf("%q", unit.Amps.Print(p.units, v.Range.V.Low)+" to "+unit.Amps.Print(p.units, v.Range.V.High)))
	}
	figure(p, "draws", v.Draws, unit.Amps)
	var readings []string
	for _, r := range v.Readings {
		text := fmt.Sprintf("{ state = %q, mean = %q", r.State, unit.Amps.Print(p.units, r.Mean))
		if r.Spread.Stated() {
			text += fmt.Sprintf(", spread = %q", unit.Amps.Print(p.units, r.Spread.V))
		}
		readings = append(readings, text+" }")
	}
	if readings != nil {
		p.line("readings", "["+strings.Join(readings, ", ")+"]")
	}
	p.names("opens", namesOf(v.Opens, func(g *Gate) string { return g.Name }))
	p.names("starts", namesOf(v.Starts, collectorName))
	figure(p, "start_delay", v.StartDelay, unit.Seconds)
	figure(p, "run_on", v.RunOn, unit.Seconds)
}

func (p *printer) control(c Control) {
	if !c.Given {
		return
	}
	p.table("[control]")
	figure(p, "supply", c.Supply, unit.Volts)
	if c.SupplyPower.Stated() {
		p.line("supply_power", fmt.Sprintf("%q", unit.Short(float64(c.SupplyPower.V))+" W"))
	}
	p.texts("supply_listed", c.SupplyListed)
	figure(p, "lowest", c.Lowest, unit.Volts)
	if c.MovesTogether.Stated() {
		p.line("moves_together", c.MovesTogether.V)
	}
	p.texts("after_power_cut", c.AfterPowerCut)
	p.texts("enclosure_type", c.EnclosureType)
	figure(p, "working_space", c.WorkingSpace, unit.Run)
	p.texts("lockout", c.Lockout)
	p.texts("purge", c.Purge)
}

func (p *printer) chain(c *Chain) {
	p.table("[[chain]]")
	p.line("name", fmt.Sprintf("%q", c.Name))
	p.line("cable", fmt.Sprintf("%q", c.CableText))
	figure(p, "temperature", c.Temperature, unit.Heat)
	var stops []string
	for _, s := range c.Stops {
		stops = append(stops, fmt.Sprintf("{ device = %q, cable = %q }", s.Device(), unit.Run.Print(p.units, s.Cable)))
	}
	p.line("stops", "["+strings.Join(stops, ", ")+"]")
}

func (p *printer) sensor(v *Sensor) {
	p.table("[[sensor]]")
	if v.Name != "" {
		p.line("name", fmt.Sprintf("%q", v.Name))
	}
	p.texts("tag", v.Tag)
	if v.Senses != "" {
		p.line("senses", fmt.Sprintf("%q", v.Senses))
	}
	figure(p, "draws", v.Draws, unit.Amps)
	for key, l := range map[string]Level{"high": v.High, "very_high": v.VeryHigh} {
		figure(p, key, l.Press, unit.Press)
		if l.Text != "" {
			p.line(key, fmt.Sprintf("%q", l.Text))
		}
	}
}

// date writes a date that the file gives.
func (p *printer) date(key string, d entry.Date) {
	if d != (entry.Date{}) {
		p.line(key, d)
	}
}

func (p *printer) rest(s *Shop) {
	for _, b := range s.Stops {
		p.table("[[stop]]")
		p.line("name", fmt.Sprintf("%q", b.Name))
		p.point("at", b.Place)
		p.names("stops", append(namesOf(b.Collectors, collectorName), namesOf(b.Machines, func(m *Machine) string { return m.Name })...))
	}
	for _, e := range s.Extinguishers {
		p.table("[[extinguisher]]")
		p.point("at", e.Place)
		p.texts("rating", e.Rating)
		p.date("serviced", e.Serviced)
	}
	for _, v := range s.Taps {
		p.table("[[tap]]")
		p.line("name", fmt.Sprintf("%q", v.Name))
		p.line("on", fmt.Sprintf("%q", v.On.Name))
		p.line("at", fmt.Sprintf("%q", unit.Run.Print(p.units, v.Where)))
	}
	for _, a := range s.Accepted {
		p.table("[[accepted]]")
		for _, f := range [][2]string{{"check", a.Check}, {"about", a.About}, {"reason", a.Reason}, {"role", a.Role}} {
			p.line(f[0], fmt.Sprintf("%q", f[1]))
		}
		p.date("until", a.Until)
	}
	for _, d := range s.Documents {
		p.table("[[document]]")
		p.line("kind", fmt.Sprintf("%q", d.Kind))
		if d.Held.Stated() {
			p.line("held", d.Held.V)
		}
		p.date("date", d.Date)
		p.texts("by", d.By)
	}
}

// controlTables are the tables that a printer writes.
var controlTables = []string{"trigger", "control", "chain", "sensor", "stop", "extinguisher", "tap", "accepted", "document"}

// TestControlReadBack prints the control half as the book prints it, reads
// that in its place, and has the same shop.
func TestControlReadBack(t *testing.T) {
	for name, text := range map[string]string{"panel": panel, "contract": file(t, "testdata/contract.toml"), "every": file(t, "testdata/every.toml"), "school": file(t, shops[0])} {
		s := sound(t, text)
		p := &printer{units: s.Units}
		for _, v := range s.Triggers {
			p.trigger(v)
		}
		p.control(s.Control)
		for _, c := range s.Chains {
			p.chain(c)
		}
		for _, v := range s.Sensors {
			p.sensor(v)
		}
		p.rest(s)
		head, blocks := inBlocks(text)
		left := slices.DeleteFunc(blocks, func(block string) bool {
			header, _, _ := strings.Cut(block, "]")
			return slices.Contains(controlTables, strings.Trim(header, "["))
		})
		if len(left) == len(blocks) {
			t.Errorf("%s: nothing was printed anew", name)
		}
		again := sound(t, head+strings.Join(left, "")+p.text.String())
		if got, want := describe(again), describe(s); got != want {
			t.Errorf("%s: read back it is another shop:\n%s", name, firstDifference(got, want))
		}
	}
}
