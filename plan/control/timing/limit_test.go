package timing

import (
	"testing"

	"dustbook/plan/unit"
)

// The table of NEMA MG 10 by its published example, by examples worked out
// beforehand, and by its own columns.
func TestByTheTable(t *testing.T) {
	for _, row := range []struct {
		name  string
		power string
		poles int
		wheel string
		want  string
		rest  unit.Time
	}{
		{"published example", "25 hp", 4, "50 lb ft2", "2.44", 58},
		{"computed", "3 hp", 2, "2.1 lb ft2", "1.67", 80},
		{"computed", "5 hp", 2, "4 lb ft2", "1.43", 83},
		{"computed", "5 hp", 4, "10 lb ft2", "2.70", 42},
		{"a light wheel leaves the first column", "3 hp", 2, "0.1 lb ft2", "9.90", 80},
		{"first row", "1 hp", 6, "15 lb ft2", "1.00", 33},
		{"last row", "30 hp", 6, "384 lb ft2", "1.00", 53},
		{"metric rating", "2.2 kW", 2, "2.1 lb ft2", "1.67", 80},
		{"metric rating as 7.5 hp, not between rows", "5.5 kW", 2, "5 lb ft2", "1.66", 88},
		{"metric rating between rows", "4 kW", 2, "5 lb ft2", "1.14", 88},
		{"between rows: starts of the upper, inertia of the lower", "4 hp", 2, "1 lb ft2", "3.50", 83},
		{"between rows, a light wheel", "4 hp", 2, "0.1 lb ft2", "8.10", 83},
	} {
		l := ByTheTable(unit.Must[unit.Power](row.power), row.poles, unit.Must[unit.Inertia](row.wheel))
		if got := unit.Fixed(l.PerHour, 2); l.By != ByTable || got != row.want || l.Rest != row.rest || l.Basis.Document != "nema-mg10" {
			t.Errorf("%s: %s %d poles: %s starts, rest %v, want %s, %v", row.name, row.power, row.poles, got, l.Rest, row.want, row.rest)
		}
	}
	for _, off := range []struct {
		power string
		poles int
	}{{"0.75 hp", 2}, {"31 hp", 2}, {"5 hp", 8}} {
		if l := ByTheTable(unit.Must[unit.Power](off.power), off.poles, 1); l.By != OffTable || l.Known() {
			t.Errorf("%v: %+v", off, l)
		}
	}
}

// Starts and inertia of the table change one way along each column, as the
// physics does: a slip of a digit in the data shows here.
func TestTableRuns(t *testing.T) {
	if len(startsTable.Rows) != 33 {
		t.Fatalf("%d rows", len(startsTable.Rows))
	}
	for i, r := range startsTable.Rows[1:] {
		last := startsTable.Rows[i]
		if last.Text("poles") != r.Text("poles") {
			continue
		}
		inertia := func(text string) float64 { return float64(unit.Must[unit.Inertia](text)) }
		time := func(text string) float64 { return float64(unit.Must[unit.Time](text)) }
		if r.Number("most") >= last.Number("most") || inertia(r.Text("with inertia")) <= inertia(last.Text("with inertia")) || time(r.Text("rest")) < time(last.Text("rest")) {
			t.Errorf("%s, %s poles, after %s", r.Text("power"), r.Text("poles"), last.Text("power"))
		}
	}
}

// Who decides the limit, and what is missing where nobody does.
func TestLimit(t *testing.T) {
	motor := `motor = { power = "3 hp", volts = "230 V", phase = 3, poles = 2 }`
	for _, row := range []struct {
		name, old, new string
		by             LimitBy
		missing        string
	}{
		{"by the table", motor, motor, ByTable, ""},
		{"by the maker", motor, motor + "\nstarts_per_hour = 6", ByMaker, ""},
		{"no motor", motor, "", NoMotor, "Cyclone collector.motor"},
		{"no poles", motor, `motor = { power = "3 hp", volts = "230 V", phase = 3 }`, FieldMissing, "Cyclone motor.poles"},
		{"no phase", motor, `motor = { power = "3 hp", volts = "230 V", poles = 2 }`, FieldMissing, "Cyclone motor.phase"},
		{"single phase", motor, `motor = { power = "3 hp", volts = "230 V", phase = 1, poles = 2 }`, SinglePhase, "Cyclone collector.starts_per_hour"},
		{"single phase by the maker", motor, `motor = { power = "3 hp", volts = "230 V", phase = 1, poles = 2 }` + "\nstarts_per_hour = 5", ByMaker, ""},
		{"off the table", motor, `motor = { power = "0.5 hp", volts = "230 V", phase = 3, poles = 2 }`, OffTable, ""},
		{"no wheel", `wheel_inertia = "2.1 lb ft2"`, "", FieldMissing, "Cyclone collector.wheel_inertia"},
	} {
		_, r := yard(t, Air{}, row.old, row.new)
		l := collector(t, r, "Cyclone").Starts.Limit
		if l.By != row.by || missing(l.Missing) != row.missing || l.Known() != (row.by == ByTable || row.by == ByMaker) {
			t.Errorf("%s: by %v, missing %q: %+v", row.name, l.By, missing(l.Missing), l)
		}
	}
}
