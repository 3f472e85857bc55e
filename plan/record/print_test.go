package record

import (
	"math"
	"testing"

	"dustbook/plan/unit"
)

// What is printed can be read again, and is what was meant, for everything
// that can be measured and in both systems of units.
func TestPrintReadsBack(t *testing.T) {
	for _, m := range Measures() {
		if m.Kind == 0 {
			if m.Unit(unit.US) != "" || m.SIUnit() != "" {
				t.Errorf("%s has a unit", m.Word)
			}
			continue
		}
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			for _, si := range []float64{7.5, 412.3, 1890} {
				text := m.Print(sys, si)
				q, err := m.Read(text)
				if err != nil {
					t.Errorf("%s: %s: %v", m.Word, text, err)
					continue
				}
				if math.Abs(q.SI-si) > 0.02*si+3 {
					t.Errorf("%s: %g printed as %s is read as %g", m.Word, si, text, q.SI)
				}
				if q.Foreign(sys) {
					t.Errorf("%s: %s is of another unit than %s", m.Word, text, m.Unit(sys))
				}
			}
		}
		if at, err := unit.ReadKind(m.Kind, "1 "+m.SIUnit()); m.Kind != unit.KindTemperature && (err != nil || at != 1) {
			t.Errorf("%s: 1 %s is %g, %v", m.Word, m.SIUnit(), at, err)
		}
	}
}

func TestForeign(t *testing.T) {
	for _, c := range []struct {
		of, value  string
		us, metric bool
	}{
		{"hood pressure", "4.1 inwg", false, true},
		{"hood pressure", "2 1/2 in wg", false, true},
		{"hood pressure", "-600 Pa", true, false},
		{"hood pressure", "0.6 kPa", true, true},
		{"flow", "1,200 cfm", false, true},
		{"flow", "820 m3/h", true, false},
		{"stop", "4 mm", false, false},
		{"time", "2 min", true, true},
		{"resistance", "3 ohm", false, false},
		{"resistance", "50 Mohm", false, false},
		{"resistance", "1500 ohm", false, false},
		{"resistance", "0.05 Mohm", true, true},
	} {
		m, _ := FindMeasure(c.of)
		q, err := m.Read(c.value)
		if err != nil {
			t.Errorf("%s: %v", c.value, err)
			continue
		}
		if us, metric := q.Foreign(unit.US), q.Foreign(unit.Metric); us != c.us || metric != c.metric {
			t.Errorf("%s: foreign in US units %v, in metric %v", c.value, us, metric)
		}
	}
}
