package chain

import (
	"math"
	"strings"
	"testing"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

const foot = 0.3048

// The gauge's formula over its whole range, to every printed figure.
func TestGaugeTable(t *testing.T) {
	head, rows, texts := table(t, "gauge.csv")
	for i := range rows {
		text := texts[i]
		area := awg(text[0])
		cold, basis := PerMetre(area, celsius(20))
		warm, _ := PerMetre(area, celsius(75))
		got := []float64{0, 2e3 * math.Sqrt(float64(area)/math.Pi), 1e6 * float64(area), 1e3 * foot * cold, 1e3 * cold, 1e3 * warm}
		for k := 1; k < len(got); k++ {
			if !printed(got[k], text[k]) {
				t.Errorf("%s AWG: %s is %v, the table prints %s", text[0], head[k], got[k], text[k])
			}
		}
		if number, ok := area.Number(); basis.Mark != source.Computed || !ok || number != text[0] {
			t.Errorf("%s AWG: %v, gauge %q %v", text[0], basis, number, ok)
		}
	}
}

// National Electrical Code, chapter 9, table 8, solid uncoated copper at 75 °C
// in ohm a thousand feet (and a kilometre), as a public copy reports it: the
// formula reproduces it within its rounding.
func TestTable8(t *testing.T) {
	for gauge, want := range map[string][2]string{"18": {"7.77", "25.5"}, "16": {"4.89", "16.0"}, "14": {"3.07", "10.1"}, "12": {"1.93", "6.34"}} {
		ohms, _ := PerMetre(awg(gauge), celsius(75))
		if !near(1e3*foot*ohms, mustFloat(want[0]), 0.007) || !near(1e3*ohms, mustFloat(want[1]), 0.06) {
			t.Errorf("%s AWG: %.4f ohm/kft, %.3f ohm/km, the table has %v", gauge, 1e3*foot*ohms, 1e3*ohms, want)
		}
	}
	// The far side: seven strands have about two parts in a hundred more.
	ohms, _ := PerMetre(awg("18"), celsius(75))
	if near(1e3*foot*ohms, 7.95, 0.05) {
		t.Error("solid copper reads like stranded")
	}
}

// IEC 60228, greatest resistance at 20 °C of plain copper, as public pages
// report it; sizes below 0.5 mm² from a national supplement.
func TestMetricRows(t *testing.T) {
	for size, want := range map[string]float64{
		"0.14 mm2": 134, "0.25 mm2": 76, "0.34 mm2": 53, "0.5 mm2": 39, "0.75 mm2": 26, "1 mm2": 19.5, "1.5 mm2": 13.3, "2.5 mm2": 7.98,
		"4 mm2": 4.95, "6 mm2": 3.3, "10 mm2": 1.91, "16 mm2": 1.21,
	} {
		area := unit.Must[unit.Wire](size)
		ohms, basis := PerMetre(area, celsius(20))
		if number, gauge := area.Number(); !near(1e3*ohms, want, 1e-9) || basis.Document != "iec-60228" || gauge {
			t.Errorf("%s: %v ohm/km by %v, want %v; gauge %q", size, 1e3*ohms, basis, want, number)
		}
		if pure := figures.resistivity / float64(area); ohms <= pure {
			t.Errorf("%s: %v ohm/m is less than that of pure copper, %v", size, ohms, pure)
		}
	}
}

// The same standard for solid and stranded conductors: a chain is reckoned
// with the flexible ones, which have more resistance.
func TestFlexibleIsTheWorse(t *testing.T) {
	_, rows, texts := table(t, "solid.csv")
	for i, row := range rows {
		flexible, _ := PerMetre(unit.Must[unit.Wire](texts[i][0]+" mm2"), celsius(20))
		if more := 1e3 * flexible / row[1]; more < 1.03 || more > 1.12 {
			t.Errorf("%s mm2: flexible %v ohm/km, solid %v", texts[i][0], 1e3*flexible, row[1])
		}
	}
}

// A metric size between two rows lies between them; one below all of them is
// taken for solid copper.
func TestMetricBetween(t *testing.T) {
	thin, _ := PerMetre(unit.Must[unit.Wire]("1 mm2"), celsius(20))
	thick, _ := PerMetre(unit.Must[unit.Wire]("1.5 mm2"), celsius(20))
	if got, basis := PerMetre(unit.Must[unit.Wire]("1.2 mm2"), celsius(20)); got >= thin || got <= thick || basis.Document != "iec-60228" {
		t.Errorf("1.2 mm2: %v ohm/m by %v, want between %v and %v", got, basis, thick, thin)
	}
	if got, basis := PerMetre(unit.Must[unit.Wire]("0.1 mm2"), celsius(20)); !near(got, 0.17241, 1e-9) || basis.Mark != source.Computed {
		t.Errorf("0.1 mm2: %v ohm/m by %v", got, basis)
	}
}

// No metric size is taken for a gauge, and neither is an area next to one.
func TestMetricIsNoGauge(t *testing.T) {
	for _, c := range conductors {
		if !c.Metric {
			continue
		}
		for _, off := range []float64{-1e-4, -2e-5, 0, 2e-5, 1e-4} {
			area := c.Area * unit.Wire(1+off)
			if number, gauge := area.Number(); gauge {
				t.Errorf("%s, a share of %v off, is taken for %s AWG", c.Size, off, number)
			}
		}
	}
}

// IEC 60228 gives factors from a temperature to 20 °C, rounded from a
// coefficient of 0.004, as a public page reports it; ours is 0.00393.
func TestWarmth(t *testing.T) {
	for at, want := range map[float64]float64{5: 1.064, 10: 1.042, 15: 1.020, 20: 1, 25: 0.980, 30: 0.962, 40: 0.926} {
		if got := 1 / warm(celsius(at)); !near(got, want, 0.002) {
			t.Errorf("%v °C: factor %v, the table has %v", at, got, want)
		}
	}
	if got := warm(celsius(75)); !near(got, 1.2162, 5e-5) {
		t.Errorf("75 °C: %v, want 1.2162", got)
	}
	if got := warm(celsius(40)); !near(got, 1.0786, 5e-5) {
		t.Errorf("40 °C: %v, want 1.0786", got)
	}
}

// Longest runs for a loss of one part in ten: at the printed length the loss
// is that, and the watts of a row of 5 V go 23 times as far at 24 V, not only as
// many times as the volts.
func TestLongestRun(t *testing.T) {
	head, rows, texts := table(t, "longest.csv")
	compared := 0
	for i, row := range rows {
		for k := 2; k < len(head); k++ {
			ohms, _ := PerMetre(awg(head[k]), celsius(20))
			if got := 0.1 * row[0] / (2 * ohms * row[1]); !printed(got, texts[i][k]) {
				t.Errorf("%v V, %v A, %s AWG: %.2f m, the table prints %s", row[0], row[1], head[k], got, texts[i][k])
			}
			l := Line{[]unit.Resistance{unit.Resistance(2 * ohms * row[k])}, []Load{{}, {Current: unit.Current(row[1])}}}
			volts, err := l.Solve(Feed{0, unit.Voltage(row[0])})
			if err != nil || !near(float64(volts[1]), 0.9*row[0], 0.005*row[0]) {
				t.Errorf("%v V, %v A, %s AWG, %v m: %v, %v", row[0], row[1], head[k], row[k], volts, err)
			}
			if row[0] != 5 {
				continue
			}
			compared++
			for times, want := range map[float64]bool{23: true, 24.0 / 5: false} {
				l := Line{[]unit.Resistance{unit.Resistance(2 * ohms * times * row[k])}, []Load{{}, {Power: unit.Power(0.9 * row[0] * row[1])}}}
				volts, err := l.Solve(Feed{0, 24})
				if err != nil || near(float64(volts[1]), 0.9*24, 0.005*24) != want {
					t.Errorf("%v V, %v A, %s AWG, %v times as far at 24 V: %v, %v", row[0], row[1], head[k], times, volts, err)
				}
			}
		}
	}
	if compared == 0 {
		t.Error("no row of 5 V")
	}
}

// What a conductor carries, and what its crimp has to stand, is never that of
// a thicker one.
func TestThickest(t *testing.T) {
	for _, c := range []struct {
		size      string
		amps      unit.Current
		lbf       string
		n         float64
		noA, noLb bool
	}{
		{"18 AWG", 7, "20 lbf", 89, false, false},
		{"24 AWG", 2, "5 lbf", 22.3, false, false},
		{"23 AWG", 2, "5 lbf", 22.3, false, false},
		{"0.5 mm2", 3, "8 lbf", 35.6, false, false},
		{"0.75 mm2", 8.5, "13 lbf", 57.9, false, false},
		{"26 AWG", 0, "3 lbf", 13.4, true, false},
		{"30 AWG", 0, "", 0, true, true},
	} {
		area := unit.Must[unit.Wire](c.size)
		amps, basis, known := Carries(area)
		if amps != c.amps || known == c.noA || known && basis.Mark != source.Memory {
			t.Errorf("%s carries %v, %v by %v", c.size, amps, known, basis)
		}
		force, _, known := Pull(area)
		if force.Newtons != c.n || force.Pounds != c.lbf || known == c.noLb {
			t.Errorf("%s pulls %+v, %v", c.size, force, known)
		}
	}
	// Public application sheets of crimp contacts, commercial column: the two
	// units agree within the rounding of the pounds.
	for _, r := range pullTable.Rows {
		pounds := mustFloat(strings.TrimSuffix(r.Text("pounds"), " lbf"))
		if got := r.Number("value"); !near(got, pounds*4.44822, 0.35) {
			t.Errorf("%s: %v lbf is not %v N", r.Text("size"), pounds, got)
		}
	}
}

func TestLarger(t *testing.T) {
	names := func(area string) (list []string) {
		for _, c := range Larger(unit.Must[unit.Wire](area)) {
			list = append(list, c.Size)
		}
		return list
	}
	if got := names("14 AWG"); len(got) != 2 || got[0] != "12 AWG" || got[1] != "10 AWG" {
		t.Errorf("above 14 AWG: %v", got)
	}
	if got := names("6 mm2"); len(got) != 2 || got[0] != "10 mm2" || got[1] != "16 mm2" {
		t.Errorf("above 6 mm2: %v", got)
	}
	if got := names("16 mm2"); len(got) != 0 {
		t.Errorf("above 16 mm2: %v", got)
	}
}

// Every row names where it is from.
func TestTablesHaveBases(t *testing.T) {
	for _, table := range Tables() {
		for _, r := range table.Rows {
			if r.Basis.Mark == 0 {
				t.Errorf("%s: a row has no mark", table.Name)
			}
		}
	}
}
