package timing

import (
	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// Dust is what a machine makes before its air is there, after a start with the
// duct at rest. Where the fan runs already, only the gates are waited for.
type Dust struct {
	Debounce Span // of a current trigger; nought of others
	Delay    unit.Time
	RunUp    Span            // of the fan that takes longest
	Fan      *shop.Collector // that one
	Time     Span            // all of it; of what is known where something is missing
	Missing  []Missing

	Solid, Loose Bulk // how much the heaviest usual cut throws in that time; nought where it is not given
}

// Bulk is the least and the most of a volume.
type Bulk struct{ Least, Most unit.Volume }

// Known reports whether every part of the time is.
func (d *Dust) Known() bool { return len(d.Missing) == 0 && d.Fan != nil }

// dustOf adds up a trigger's delay and the run-up of what it starts. A machine
// makes it only where it is the machine that starts the fan, so a switch that
// someone presses first has none: it is nil then.
func dustOf(t *OfTrigger, fans map[*shop.Collector]*OfCollector, chips map[*shop.Machine]Chips) *Dust {
	m := t.Trigger.Machine
	if m == nil || t.pressed || len(t.Trigger.Starts) == 0 {
		return nil
	}
	d := &Dust{Delay: t.Delay.Used}
	if !t.Delay.Set.Known() {
		d.Missing = append(d.Missing, t.Delay.Missing...)
	}
	if t.Trigger.Senses == "current" {
		d.Debounce = DebounceOn()
	}
	for _, c := range t.Trigger.Starts {
		fan := &fans[c].Fan
		up, known := fan.Takes()
		if !known {
			d.Missing = append(d.Missing, Missing{c.Name, "collector.run_up"})
			continue
		}
		if d.Fan == nil || up.Most > d.RunUp.Most {
			d.Fan, d.RunUp = c, up
		}
	}
	d.Time = Span{d.Delay, d.Delay}.plus(d.Debounce).plus(d.RunUp)
	if thrown := chips[m]; thrown.Solid > 0 {
		d.Solid, d.Loose = over(thrown.Solid, d.Time), over(thrown.Loose, d.Time)
	}
	return d
}

// over is what a flow brings in a span of time.
func over(flow unit.Flow, s Span) Bulk {
	return Bulk{unit.SixOf(unit.Volume(float64(flow) * float64(s.Least))), unit.SixOf(unit.Volume(float64(flow) * float64(s.Most)))}
}
