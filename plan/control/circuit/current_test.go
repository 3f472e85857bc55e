package circuit

import (
	"testing"

	"dustbook/plan/unit"
)

func power(text string) unit.Power      { return unit.Must[unit.Power](text) }
func volts(text string) unit.Voltage    { return unit.Must[unit.Voltage](text) }
func amps(text string) unit.Current     { return unit.Must[unit.Current](text) }
func wire(text string) unit.Wire        { return unit.Must[unit.Wire](text) }
func heat(text string) unit.Temperature { return unit.Must[unit.Temperature](text) }

// NEC tables 430.248 and 430.250, as public pages reproduce them: rows picked
// over every column, ends of the ranges of supply, and what lies just outside.
func TestTable(t *testing.T) {
	for _, c := range []struct {
		power, volts string
		phase        int
		want         string // empty where there is none
		why          Why
	}{
		{"1/6 hp", "115 V", 1, "4.4 A", Told},
		{"3/4 hp", "200 V", 1, "7.9 A", Told},
		{"1 hp", "208 V", 1, "8.8 A", Told},
		{"3 hp", "230 V", 1, "17 A", Told},
		{"10 hp", "115 V", 1, "100 A", Told},
		{"1/2 hp", "575 V", 3, "0.9 A", Told},
		{"2 hp", "115 V", 3, "13.6 A", Told},
		{"5 hp", "208 V", 3, "16.7 A", Told},
		{"7.5 hp", "200 V", 3, "25.3 A", Told},
		{"25 hp", "460 V", 3, "34 A", Told},
		// the supply's volts stand for a range
		{"1 hp", "110 V", 1, "16 A", Told}, {"1 hp", "120 V", 1, "16 A", Told},
		{"1 hp", "109 V", 1, "", OffVolts}, {"1 hp", "121 V", 1, "", OffVolts},
		{"1 hp", "220 V", 1, "8 A", Told}, {"1 hp", "240 V", 1, "8 A", Told},
		{"1 hp", "219 V", 1, "", OffVolts}, {"1 hp", "241 V", 1, "", OffVolts},
		{"1 hp", "440 V", 3, "2.1 A", Told}, {"1 hp", "480 V", 3, "2.1 A", Told}, {"1 hp", "481 V", 3, "", OffVolts},
		{"1 hp", "600 V", 3, "1.7 A", Told}, {"1 hp", "601 V", 3, "", OffVolts},
		{"1 hp", "460 V", 1, "", OffVolts}, {"1 hp", "400 V", 3, "", OffVolts},
		// nothing beyond the ends
		{"1/8 hp", "115 V", 1, "", TooSmall}, {"10.2 hp", "230 V", 1, "50 A", Told}, {"10.21 hp", "230 V", 1, "", TooLarge}, {"15 hp", "230 V", 3, "42 A", Told}, {"30 hp", "230 V", 3, "", TooLarge},
		{"3 hp", "115 V", 3, "", TooLarge}, {"1/3 hp", "230 V", 3, "", TooSmall},
		{"1 hp", "230 V", 2, "", OffPhase},
		// a nameplate in kilowatts counts as the row it is sold as
		{"1.5 kW", "230 V", 1, "12 A", Told}, {"7.5 kW", "230 V", 3, "28 A", Told},
		{"2.2 kW", "230 V", 3, "9.6 A", Told}, {"5.5 kW", "230 V", 3, "22 A", Told}, {"2.2 kW", "230 V", 1, "17 A", Told},
	} {
		got, why := Table(power(c.power), volts(c.volts), c.phase)
		want := unit.Current(0)
		if c.want != "" {
			want = amps(c.want)
		}
		if why != c.why || got.Current != want || got.Between() {
			t.Errorf("%s %s %d: %+v %v, want %s %v", c.power, c.volts, c.phase, got, why, c.want, c.why)
		}
		if why == Told && (!got.Basis.Mark.Decides() || got.Basis.Document != "nfpa-70") {
			t.Errorf("%s %s: %v", c.power, c.volts, got.Basis)
		}
	}
}

// Between two rows the next larger one counts, and the smaller one is kept.
func TestTableBetweenRows(t *testing.T) {
	for _, c := range []struct{ power, larger, smaller string }{
		{"4 hp", "28 A", "17 A"}, {"3 kW", "28 A", "17 A"}, {"1.021 hp", "10 A", "8 A"}, {"1.02 hp", "8 A", "8 A"}, {"0.98 hp", "8 A", "8 A"}, {"0.979 hp", "8 A", "6.9 A"},
	} {
		got, why := Table(power(c.power), volts("230 V"), 1)
		if why != Told || got.Current != amps(c.larger) || got.Smaller != amps(c.smaller) || got.Between() != (c.larger != c.smaller) {
			t.Errorf("%s: %+v %v", c.power, got, why)
		}
	}
}

// A chart on the web prints an older three-phase table: 3.6, 5.2 and 2.8 A for
// 1, 1.5 and 3/4 hp at 230 V. The table of today has more.
func TestNoOldCurrents(t *testing.T) {
	for of, c := range map[string][2]string{"1 hp": {"4.2 A", "3.6 A"}, "1.5 hp": {"6 A", "5.2 A"}, "3/4 hp": {"3.2 A", "2.8 A"}} {
		got, _ := Table(power(of), volts("230 V"), 3)
		if got.Current != amps(c[0]) || got.Current == amps(c[1]) {
			t.Errorf("%s: %v", of, got.Current)
		}
	}
}

// Old copies of table 310.16 have 20 A and 25 A for 14 and 12 AWG on terminals
// of 60 °C; newer ones print 15 and 20, and 115 A for 3 AWG of 90 °C.
func TestNoOldAmpacities(t *testing.T) {
	for size, want := range map[string]string{"14 AWG": "15 A", "12 AWG": "20 A"} {
		if got, ok := Ampacity(wire(size), Cool, 1); !ok || got.Current != amps(want) {
			t.Errorf("%s: %v", size, got)
		}
	}
	for _, r := range ampacityTable.Rows {
		if r.Text("size") == "3 AWG" && r.Text("terminals") == "90 C" && r.Number("value") != 115 {
			t.Errorf("3 AWG of 90 °C: %s A", r.Text("value"))
		}
	}
}

// The tables grow with power and sink with volts, row by row.
func TestTablesAreMonotone(t *testing.T) {
	for _, phase := range phases {
		for _, v := range []string{"115 V", "200 V", "208 V", "230 V", "460 V", "575 V"} {
			last := unit.Current(0)
			for _, r := range column(phase, volts(v)) {
				if i := value[unit.Current](r); i <= last {
					t.Errorf("%s %s: %s is no more than the row before", phase, v, r.Text("power"))
				} else {
					last = i
				}
			}
		}
	}
	for _, on := range []Terminals{Cool, Warm} {
		last := unit.Current(0)
		for _, size := range []string{"14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "3 AWG", "2 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG"} {
			c, ok := Ampacity(wire(size), on, 1)
			if !ok || c.Current <= last {
				t.Errorf("%s: %v after %v", size, c.Current, last)
			}
			last = c.Current
		}
	}
}
