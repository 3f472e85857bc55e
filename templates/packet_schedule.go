package templates

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// packetMachine is a machine in the schedule, with one line for each port.
type packetMachine struct {
	Name, Path, Makes, Motor, Hours string
	Ports                           []packetPort
	Air                             Word
}

type packetPort struct{ Name, Size, Needs, Gets, Duct, DuctPath string }

// packetDuct is a duct in the schedule.
type packetDuct struct {
	Name, Path, To, Size, Length, Made string
	Gates, Serves                      []string
}

// packetTrigger is a line of the cause-and-effect matrix in short.
type packetTrigger struct {
	Name, Path, Senses, Delay, RunOn string
	Opens, Starts                    []string
}

// mostPacketDucts is how many ducts the schedule of the packet holds; more are
// printed from their own sheet.
const mostPacketDucts = 60

func (b *Book) packetUnits() packetUnits {
	return packetUnits{unit.Air.Unit(b.units), unit.Run.Unit(b.units), unit.Size.Unit(b.units)}
}

func (b *Book) packetMachines() []packetMachine {
	var list []packetMachine
	for _, m := range b.Plan.Shop.Machines {
		row := packetMachine{Name: m.Name, Path: b.Path("machine", m.Name), Makes: m.Makes, Motor: b.orNotGiven(b.motorParts(m.Motor)), Hours: b.notGiven(), Air: Word{Class: "blank", Text: b.notGiven()}}
		if m.Hours.Known() {
			row.Hours = unit.Short(m.Hours.V)
		}
		if f := b.finding("air-captured", "machine", m.Name); f != nil {
			row.Air = stateWord(f.State)
		}
		for _, p := range m.Ports {
			row.Ports = append(row.Ports, b.packetPort(p))
		}
		list = append(list, row)
	}
	return list
}

// packetPort is a port with the least air it gets while its machine runs alone.
func (b *Book) packetPort(p *shop.Port) packetPort {
	row := packetPort{Name: p.Name, Size: unit.Size.Figure(b.units, p.Size), Needs: "—", Gets: "—"}
	if p.Flow > 0 {
		row.Needs = unit.Air.Figure(b.units, p.Flow)
	}
	if p.Duct != nil {
		row.Duct, row.DuctPath = p.Duct.Name, b.Path("duct", p.Duct.Name)
	}
	u := b.Plan.Air.Alone(p.Machine)
	if u == nil {
		return row
	}
	var least unit.Flow
	for _, r := range u.Results {
		for _, at := range r.Ports {
			if at.Port == p && r.OnCurve && (row.Gets == "—" || at.Flow < least) {
				least = at.Flow
				row.Gets, _ = unit.Air.Pair(b.units, at.Flow, p.Flow)
			}
		}
	}
	return row
}

// packetDucts is the schedule of ducts, or how many they are where paper would
// not hold them.
func (b *Book) packetDucts() (list []packetDuct, more int) {
	if n := len(b.Plan.Shop.Ducts); n > mostPacketDucts {
		return nil, n
	}
	for _, d := range b.Plan.Shop.Ducts {
		row := packetDuct{Name: d.Name, Path: b.Path("duct", d.Name), Size: b.sizeWords(d.Size), Length: unit.Run.Figure(b.units, d.Length), Made: d.Material}
		if d.Gauge.Known() {
			row.Made = b.words.Text("ducts.gauge", d.Material, d.Gauge.V.String())
		}
		if row.To = d.To.Name; d.Hose != nil {
			row.Made += ", " + b.words.Text("packet.with-hose", unit.Run.Print(b.units, d.Hose.Length))
		}
		for _, g := range d.Gates {
			row.Gates = append(row.Gates, g.Name)
		}
		for _, p := range d.Serves {
			row.Serves = append(row.Serves, p.Full())
		}
		list = append(list, row)
	}
	return list, 0
}

func (b *Book) packetTriggers() []packetTrigger {
	var list []packetTrigger
	for _, t := range b.Plan.Shop.Triggers {
		row := packetTrigger{Name: b.tagged(t).label(), Path: b.Path("trigger", t.Name), Senses: b.sensing(t), Delay: b.delay(t.StartDelay), RunOn: b.delay(t.RunOn)}
		for _, g := range b.Plan.Control.OpensWith(t) {
			row.Opens = append(row.Opens, g.Name)
		}
		for _, c := range t.Starts {
			row.Starts = append(row.Starts, c.Name)
		}
		list = append(list, row)
	}
	return list
}
