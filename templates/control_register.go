package templates

import (
	"dustbook/plan/control"
	"dustbook/plan/shop"
)

// registerView is the device register.
type registerView struct {
	Rows []registerRow
	Open []findingRow
}

type registerRow struct {
	ID, Tag, Name, Kind, Pair string
	Place                     string
	On                        tagged // duct or machine it sits at
	Room                      string
	Chains                    []chainAt
	Open, Shut, Proves        string
}

// chainAt is a device's place on a chain.
type chainAt struct {
	Name, Path string
	Position   int
}

func (b *Book) registerView() registerView {
	v := registerView{Open: b.rowsOf("chain-devices", true)}
	for _, d := range b.Plan.Control.Devices {
		v.Rows = append(v.Rows, b.registerRow(d))
	}
	return v
}

func (b *Book) registerRow(d *control.Device) registerRow {
	row := registerRow{ID: deviceID(d), Tag: d.Tag, Name: d.Name, Kind: b.words.Text("device." + d.Kind.Key()), Pair: d.Pair(), Open: "—", Shut: "—", Proves: "—"}
	if d.Kind == control.Supply { // it has no name in the file
		row.Name = b.words.Text("wiring.control-supply")
		row.Pair = d.Tag + " " + row.Name
	}
	if d.Room != nil {
		row.Room = d.Room.Name
	}
	for _, at := range d.Chains {
		row.Chains = append(row.Chains, chainAt{at.Chain.Name, b.Path("chain", at.Chain.Name), at.Position})
	}
	switch {
	case d.Gate != nil:
		b.gateCells(&row, d)
	case d.Trigger != nil:
		if d.Kind != control.HandSwitch {
			row.Kind += ", " + d.Trigger.Senses
		}
		if m := d.Trigger.Machine; m != nil {
			row.On = tagged{Name: m.Name, Path: b.Path("machine", m.Name)}
		}
	case d.Sensor != nil:
		row.Kind += ", " + d.Sensor.Senses
		row.Place = b.words.Text("register.high", b.level(d.Sensor.High))
	case d.Stop != nil:
		var stops []string
		for _, c := range d.Stop.Collectors {
			stops = append(stops, c.Name)
		}
		for _, m := range d.Stop.Machines {
			stops = append(stops, m.Name)
		}
		row.Place = b.words.Text("register.stops", b.list(stops))
		if d.Stop.Place.Known() {
			row.Place = b.words.Text("register.stops-at", b.list(stops), b.point(d.Stop.Place.V))
		}
	case d.Switches != nil:
		row.On = tagged{Name: d.Switches.Name, Path: b.Path("collector", d.Switches.Name)}
		row.Place = b.words.Text("register.starter", b.given(d.Switches.Starter))
	case d.Kind == control.Supply:
		row.Place = b.supplyWords()
	}
	return row
}

// gateCells fills the cells of a gate: where it sits, what moves it, its stops
// and how it is known to have arrived.
func (b *Book) gateCells(row *registerRow, d *control.Device) {
	row.On = tagged{Name: d.Duct.Name, Path: b.Path("duct", d.Duct.Name)}
	row.Place = b.words.Text("register.from-its-start", b.run(d.Where))
	row.Kind += ", " + b.words.Text([...]string{control.DriveNotGiven: "register.drive-not-given", control.Powered: "register.powered", control.ByHand: "register.by-hand"}[b.Plan.Control.Drive(d.Gate)])
	row.Open, row.Shut, row.Proves = b.given(d.Gate.OpenStop), b.given(d.Gate.ShutStop), b.given(d.Gate.Proves)
}

// given is a text of the file, or that it is not given.
func (b *Book) given(f shop.Field[string]) string {
	if f.Known() {
		return f.V
	}
	return b.notGiven()
}
