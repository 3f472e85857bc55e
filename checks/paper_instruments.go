package checks

import (
	"path"

	"dustbook/plan"
	"dustbook/plan/entry"
	"dustbook/plan/record"
)

var calibratedInstruments = &Check{
	ID:    "calibrated-instruments",
	Name:  say("check.calibrated-instruments.name"),
	Title: say("check.calibrated-instruments.title"),
	Needs: "record.kind, reading.of, reading.with, reading.calibrated",
	Run: func(p *plan.Plan, report func(Finding)) {
		for i := len(p.Records) - 1; i >= 0; i-- {
			if r := p.Records[i]; len(readBy(r)) > 0 {
				report(instruments(r))
				return
			}
		}
	},
}

// instrumentBasis are the texts that want the instruments listed.
var instrumentBasis = basesOf("calibrated-instruments")

// readBy are the readings of a commissioning or an inspection that an instrument
// gave: those with a unit.
func readBy(r *record.Record) []record.Reading {
	var list []record.Reading
	if r.Kind != commissioningKind && r.Kind != inspectionKind {
		return nil
	}
	for _, reading := range r.Readings {
		if m, known := record.FindMeasure(reading.Of); known && m.Kind != 0 {
			list = append(list, reading)
		}
	}
	return list
}

// instruments judges the newest record of measurements: with what each reading
// was taken, and when that was last calibrated.
func instruments(r *record.Record) Finding {
	readings := readBy(r)
	f := Finding{By: ByTopology, Basis: instrumentBasis, Weight: Know, File: path.Join(record.Folder, r.File)}
	var nameless, uncalibrated []string
	for _, reading := range readings {
		switch {
		case reading.With == "":
			nameless = append(nameless, say("finding-common.field", reading.Of, reading.At))
		case reading.Calibrated == entry.Date{}:
			uncalibrated = append(uncalibrated, reading.With)
		default:
			continue
		}
		if !f.At.Known() {
			f.At = reading.Place
		}
	}
	switch {
	case len(nameless) > 0:
		f.State = NotGiven
		f.Says, f.Do = sayOf(len(nameless), "finding-calibrated-instruments.nameless.says", listed(firstFew(nameless)), r.Date.String()), say("finding-calibrated-instruments.nameless.do")
	case len(uncalibrated) > 0:
		f.State = Advice
		f.Says, f.Do = say("finding-calibrated-instruments.uncalibrated.says", listed(firstFew(unique(uncalibrated))), r.Date.String()), say("finding-calibrated-instruments.uncalibrated.do")
	default:
		f.State, f.At = Met, readings[0].Place
		f.Says, f.Do = say("finding-calibrated-instruments.met.says", r.Date.String()), say("finding-calibrated-instruments.met.do")
	}
	return f
}
