package timing

import (
	"math"
	"strconv"

	"dustbook/plan/shop"
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// LimitBy says where a limit of starts comes from, or why there is none.
type LimitBy uint8

const (
	NoMotor      LimitBy = iota // the collector has no motor in the file
	ByMaker                     // starts_per_hour of the file
	ByTable                     // the published table for polyphase motors
	SinglePhase                 // the table does not speak of it, and the maker's figure is missing
	FieldMissing                // a field that the table needs is left out
	OffTable                    // a motor whose power or poles the table does not have
)

// Limit is how often a motor may start.
type Limit struct {
	By      LimitBy
	PerHour float64   // starts an hour; nought where there is none
	Rest    unit.Time // least rest between two starts, by the table; nought without
	Missing []Missing
	Basis   source.Basis

	// By the table: most starts an hour whatever the wheel, and those that the
	// inertia of the wheel leaves. The lesser is the limit.
	Most, Inertia float64
}

// Known reports whether there is a limit.
func (l Limit) Known() bool { return l.By == ByMaker || l.By == ByTable }

// limitOf finds the limit of a collector's fan. The maker's figure decides
// where it is given; else the table, which speaks of polyphase motors only.
func limitOf(c *shop.Collector) Limit {
	if c.StartsHour.Known() {
		return Limit{By: ByMaker, PerHour: unit.Six(c.StartsHour.V), Basis: source.Basis{Mark: source.Given}}
	}
	m := c.Motor
	if m == nil {
		return Limit{Missing: []Missing{{c.Name, "collector.motor"}}}
	}
	if m.Phase.Known() && m.Phase.V == 1 {
		return Limit{By: SinglePhase, Missing: []Missing{{c.Name, "collector.starts_per_hour"}}}
	}
	l := Limit{By: FieldMissing}
	if !m.Phase.Known() {
		l.Missing = append(l.Missing, Missing{c.Name, "motor.phase"})
	}
	if !m.Poles.Known() {
		l.Missing = append(l.Missing, Missing{c.Name, "motor.poles"})
	}
	if !c.WheelInertia.Known() || c.WheelInertia.V == 0 {
		l.Missing = append(l.Missing, Missing{c.Name, "collector.wheel_inertia"})
	}
	if len(l.Missing) > 0 {
		return l
	}
	return ByTheTable(m.Power, m.Poles.V, c.WheelInertia.V)
}

// ByTheTable is the limit of a polyphase motor by the published table: the
// lesser of its most starts and what the inertia of the wheel leaves. The
// table is not extrapolated. Between two of its rows the stricter figure of
// either counts; a power within a small share of a row's is taken for it.
func ByTheTable(power unit.Power, poles int, wheel unit.Inertia) Limit {
	below, above := rowsAround(power, poles)
	if below == nil || above == nil {
		return Limit{By: OffTable}
	}
	l := Limit{By: ByTable, Basis: above.Basis, Most: math.Inf(1), Inertia: math.Inf(1)}
	for _, r := range []*source.Row{below, above} {
		l.Most = min(l.Most, r.Number("most"))
		l.Inertia = min(l.Inertia, float64(unit.Must[unit.Inertia](r.Text("with inertia")))/float64(wheel))
		l.Rest = max(l.Rest, unit.Must[unit.Time](r.Text("rest")))
	}
	l.Inertia = unit.Six(l.Inertia)
	l.PerHour = min(l.Most, l.Inertia)
	return l
}

// UsualSinglePhase is how often small capacitor-start motors are commonly
// started in an hour. It is common practice, no source, and decides nothing.
func UsualSinglePhase() (least, most float64) {
	return share("single phase starts least"), share("single phase starts most")
}

// rowsAround are the rows of the table next to a power, the same one twice
// where the power is its own; nil where the table has none.
func rowsAround(power unit.Power, poles int) (below, above *source.Row) {
	for i := range startsTable.Rows {
		r := &startsTable.Rows[i]
		if r.Text("poles") != polesText(poles) {
			continue
		}
		switch of := unit.Must[unit.Power](r.Text("power")); {
		case shop.SameRating(power, of):
			return r, r
		case power > of:
			below = r
		case above == nil:
			above = r
		}
	}
	return below, above
}

// polesText is how the data writes a count of poles.
func polesText(poles int) string { return strconv.Itoa(poles) + " poles" }
