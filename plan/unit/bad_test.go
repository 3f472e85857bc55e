package unit

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

type badText struct {
	kind Kind
	text string
	hint string // what the error must say, among the rest
}

var badTexts = []badText{
	// Nothing to read.
	{KindLength, "", `Write a number and a unit, such as "4 in".`},
	{KindLength, "   ", `Write a number and a unit`},
	{KindLength, "in", `Write a number and a unit`},
	{KindLength, "choose", `Write a number and a unit`},
	{KindLength, "four in", `Write a number and a unit`},
	{KindLength, "NaN in", `Write a number and a unit`},
	{KindLength, "Inf ft", `Write a number and a unit`},
	{KindLength, "-Inf ft", `Write a number before the unit.`},
	{KindLength, "- ft", `Write a number before the unit.`},
	{KindLength, ". in", `Write a number and a unit`},
	{KindLength, "٤ in", `Write a number and a unit`},
	{KindLength, "\xff\xfe", `Write a number and a unit`},
	{KindLength, "4\nin", "a character stands in it that cannot be seen"},
	{KindLength, "4\x00in", "a character stands in it that cannot be seen"},
	{KindLength, "4 \u202ein", "a character stands in it that cannot be seen"},
	{KindLength, "5\nin(0mm)", "a character stands in it that cannot be seen"},
	{KindLength, "0x10 in", `Use one of the units in, ft, yd, mm, cm, m or µm.`},

	// Bare numbers.
	{KindLength, "4", `Write the unit: "4 in".`},
	{KindLength, "1-1/2", `Write the unit: "1-1/2 in".`},
	{KindFlow, "350", `Write the unit: "350 cfm".`},
	{KindFlow, "1,200", `Write the unit: "1,200 cfm".`},
	{KindFlow, " 350 ", `Write the unit: "350 cfm".`},
	{KindPressure, "0.5", `Write the unit: "0.5 inwg".`},
	{KindTemperature, "-40", `Write the unit: "-40 F".`},
	{KindVoltage, "24", `Write the unit: "24 V".`},
	{KindTime, "4", `Write the unit: "4 s".`},
	{KindWire, "18", `Write the unit: "18 AWG".`},
	{KindWire, "2/0", `Write the unit: "2/0 AWG".`},
	{KindWire, "0.75", `Write the unit: "0.75 mm2".`},
	{KindLength, "2/0", `Write a length, such as "4 in".`},
	{KindArea, "1,5 in", "commas only between groups of three figures"},
	{KindVolume, "55", `Write the unit: "55 gal".`},
	{KindInertia, "4", `Write the unit: "4 lb ft2".`},

	// Decimal commas and bad groups.
	{KindLength, "1,5 in", `Write a point for the comma: "1.5 in".`},
	{KindLength, "-1,5 in", `"-1.5 in"`},
	{KindWire, "0,75 mm2", `"0.75 mm2"`},
	{KindLength, "0,750 mm", `"0.750 mm"`},
	{KindLength, "12,34 in", `"12.34 in"`},
	{KindLength, "1234,567 mm", `"1234.567 mm"`},
	{KindLength, "1,2345 mm", `"1.2345 mm"`},
	{KindLength, "1.200,5 mm", `"1200.5 mm"`},
	{KindFlow, "1 200,5 cfm", `"1200.5 cfm"`},
	{KindLength, "1,200,5 mm", "commas only between groups of three figures"},
	{KindLength, "1,20,000 mm", "commas only between groups of three figures"},
	{KindLength, "1.5,2 mm", "commas only between groups of three figures"},
	{KindLength, "0.1.200,5 mm", "Write one number and its unit"},
	{KindLength, "12 34 mm", "Write one number and its unit"},
	{KindLength, "1 2000 mm", "Write one number and its unit"},
	{KindLength, "1,200 000 mm", "Write one number and its unit"},
	{KindLength, "1.2.3 mm", "Write one number and its unit"},
	{KindLength, "0 200 mm", "Write one number and its unit"},
	{KindLength, "4, in", "Write one number and its unit"},
	{KindFlow, "350 - 400 cfm", "Write one number and its unit"},

	// Fractions.
	{KindLength, "1/0 in", "lower figure is not 0"},
	{KindLength, "5/0 in", "lower figure is not 0"},
	{KindLength, "1/ in", "figures under its line"},
	{KindLength, "1 3/2 in", "less than one behind the whole number"},
	{KindLength, "1-2/2 in", "less than one behind the whole number"},
	{KindLength, "1 1/00 in", "lower figure is not 0"},
	{KindLength, "1 1/0 in", "less than one behind the whole number"},
	{KindLength, "1/2/3 in", "Write one number and its unit"},

	// Feet and inches.
	{KindLength, "5' 6", "Write the inches with their unit"},
	{KindLength, "5 ft 6", "Write the inches with their unit"},
	{KindLength, `5' 12"`, "less than twelve inches"},
	{KindLength, `5.5' 6"`, "Write whole feet"},
	{KindLength, `1/0' 6"`, "Write whole feet"},
	{KindPressure, `5' 6"`, "not a length"},
	{KindAngle, `5' 6"`, `Write an angle, such as "45 deg".`},

	// A unit of another kind.
	{KindFlow, "4 in", `expected an air flow with its unit, such as "350 cfm" or "820 m3/h", not a length`},
	{KindFlow, `4"`, "not a length"},
	{KindFlow, "4000 fpm", "not a velocity"},
	{KindFlow, "20 m3", `not a volume. Write "20 m3/h".`},
	{KindFlow, "1600 scfm", `Write "1600 cfm".`},
	{KindVelocity, "350 cfm", "not an air flow"},
	{KindVelocity, "20 m", `Write "20 m/s".`},
	{KindPressure, "4 in", `not a length. Write "4 inwg".`},
	{KindPressure, "4 inches", `Write "4 inwg".`},
	{KindPressure, `4"`, `Write "4 inwg".`},
	{KindPressure, "1-1/2 in", `Write "1-1/2 inwg".`},
	{KindPressure, "4 wg", `Write "4 inwg".`},
	{KindPressure, "2 mm", `Write "2 mmH2O".`},
	{KindTime, "5 m", `not a length. Write "5 min".`},
	{KindTime, "5'", "not a length"},
	{KindAngle, "30'", "not a length"},
	{KindAngle, "45 F", "not a temperature"},
	{KindTemperature, "65 deg", `not an angle. Write "65 F" or "65 C".`},
	{KindArea, "48 in", `Write "48 sq in".`},
	{KindVolume, "6 ft", `Write "6 cu ft".`},
	{KindWire, "1.5 mm", `not a length. Write "1.5 mm2".`},
	{KindWire, "18 ga", `Write "18 AWG".`},
	{KindWire, "1.5 m2", "not an area"},
	{KindLength, "18 AWG", "not a conductor size"},
	{KindLength, "12 ft2", "not an area"},
	{KindDensity, "1.2 kg", `Write "1.2 kg/m3".`},
	{KindViscosity, "18 mPa s", `Write "18 cP".`},
	{KindResistance, "5 k", `Write "5 kohm".`},
	{KindResistance, "5 K", `Write "5 kohm".`},
	{KindInertia, "4 lb ft", `Write "4 lb ft2".`},

	// Unknown units, and letter case that would change the meaning.
	{KindFlow, "350 cfn", `Write "350 cfm".`},
	{KindFlow, "350 cf m", `Write "350 cfm".`},
	{KindFlow, "350 furlongs", "Use one of the units cfm, m3/h, m3/min, m3/s, L/s or L/min."},
	{KindPressure, "4 inwgg", `Write "4 inwg".`},
	{KindPressure, "4 psii", `Write "4 psi".`},
	{KindPressure, "4 MBAR", `Write "4 mbar".`},
	{KindLength, "4 inchs", `Write "4 inch".`},
	{KindLength, "4 Mm", `Write "4 mm".`},
	{KindLength, "4 M", `Write "4 m".`},
	{KindCurrent, "40 MA", `Write "40 mA".`},
	{KindVoltage, "4 MV", `Write "4 mV".`},
	{KindVoltage, "4 volt s", `Write "4 volts".`},
	{KindTime, "4 S", `Write "4 s".`},
	{KindTime, "4 MS", `Write "4 ms".`},
	{KindTime, "4 H", `Write "4 h".`},
	{KindResistance, "4 MOHM", `Write "4 mohm" or "4 Mohm".`},
	{KindTemperature, "300 k", `Write "300 K".`},
	{KindPower, "4 mW", `Write "4 W" or "4 kW".`},
	{KindSound, "92 dBC", `Write "92 dBA".`},
	{KindLength, "5 m s", "Use one of the units"},
	{KindAngle, "45 gon", "Use the unit deg."},

	// Brackets.
	{KindLength, "4 in (150 mm)", `"4 in" is 101.6 mm, the bracket says "150 mm".`},
	{KindLength, "4 in (150 mm)", "expected a bracket that says the same length within its figures"},
	{KindLength, "2.5 in (100 mm)", `"2.5 in" is 63.5 mm, the bracket says "100 mm".`},
	{KindLength, "4 in (100.0 mm)", `"4 in" is 101.6 mm, the bracket says "100.0 mm".`},
	{KindLength, "3 in (75 mm)", `"3 in" is 76.2 mm, the bracket says "75 mm".`},
	{KindLength, `1.78 m (5' 9")`, `"1.78 m" is 70.0787 in, the bracket says "5' 9\"".`},
	{KindTemperature, "65 F (20.0 C)", `"65 F" is 18.3333 C, the bracket says "20.0 C".`},
	{KindWire, "18 AWG (0.75 mm2)", `"18 AWG" is 0.823047 mm2, the bracket says "0.75 mm2".`},
	{KindWire, "0.75 mm2 (16 AWG)", `"0.75 mm2", the bracket says "16 AWG".`},
	{KindLength, "4." + strings.Repeat("0", 60) + " in (150 mm)", "Change one of the two."},
	{KindLength, "4 in (100)", "Write the bracket as a length with its unit"},
	{KindLength, "4 in (350 cfm)", "Write the bracket as a length with its unit"},
	{KindLength, "4 in (100 mm) (0.1 m)", "Close the bracket"},
	{KindLength, "4 in (100 mm", "Close the bracket"},
	{KindLength, "4 in 100 mm)", "Close the bracket"},
	{KindLength, "4 in (wg)", "Close the bracket"},
	{KindLength, "(100 mm)", "Write a number and a unit"},
	{KindLength, ")", "Write a number and a unit"},

	// Wire sizes.
	{KindWire, "18/2 AWG", `Write a wire size from "4/0 AWG" to "40 AWG".`},
	{KindWire, "18-2 AWG", "Write one number and its unit"},
	{KindWire, "18.5 AWG", "Write a wire size from"},
	{KindWire, "-1 AWG", "Write a wire size from"},
	{KindWire, "41 AWG", "Write a wire size from"},
	{KindWire, "5/0 AWG", "lower figure is not 0"},
	{KindWire, "00000 AWG", "Write a wire size from"},
	{KindWire, "1e1 AWG", "Write a wire size from"},

	// Numbers no shop has.
	{KindLength, "1e100 in", "its exponent is too long"},
	{KindLength, "1e-100 in", "its exponent is too long"},
	{KindLength, "1e99999999999999999999 in", "its exponent is too long"},
	{KindTemperature, "-500 F", "above absolute zero"},
	{KindTemperature, "-274 C", "above absolute zero"},
	{KindTemperature, "-1 K", "above absolute zero"},
	{KindLength, strings.Repeat("1", 98) + " in", "Write no more than 100 characters"},
	{KindLength, strings.Repeat("µ", 5000), "Write no more than 100 characters"},
}

var quoted = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)

func TestReadKindRefuses(t *testing.T) {
	for _, c := range badTexts {
		x, err := ReadKind(c.kind, c.text)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%q as %s: read %v, error %v", c.text, c.kind, x, err)
			continue
		}
		if x != 0 || !strings.Contains(e.Error(), c.hint) {
			t.Errorf("%q as %s: %v: want it to say %s", c.text, c.kind, err, c.hint)
		}
		checkError(t, c.kind, e)
	}
	if len(badTexts) < 60 {
		t.Errorf("only %d bad texts", len(badTexts))
	}
}

// checkError holds an error to what every one keeps: three parts, one line,
// no long repetition, and nothing proposed that would be refused in turn.
func checkError(t *testing.T, k Kind, e *Error) {
	t.Helper()
	if e.Read == "" || e.Expected == "" || e.Do == "" {
		t.Errorf("an empty part: %#v", e)
	}
	if !strings.HasSuffix(e.Do, ".") || strings.ContainsAny(e.Error(), "\n\r") || len(e.Error()) > 1000 {
		t.Errorf("not one short line ending in a point: %q", e.Error())
	}
	for _, q := range quoted.FindAllString(e.Do, -1) {
		text, err := strconv.Unquote(q)
		if err != nil {
			t.Errorf("%v: cannot unquote %s", e, q)
		} else if _, err := ReadKind(k, text); err != nil {
			t.Errorf("%v\n\tbut what it proposes is refused: %v", e, err)
		}
	}
}

// Each bad text turned right is read, so that the line between the two is
// where the tests above say.
func TestReadKindFarSide(t *testing.T) {
	for _, c := range []struct {
		kind      Kind
		bad, good string
	}{
		{KindLength, "1e100 in", "1e99 in"},
		{KindLength, strings.Repeat("1", 98) + " in", strings.Repeat("1", 97) + " in"},
		{KindTemperature, "-459.68 F", "-459.67 F"},
		{KindLength, `5' 12"`, `5' 11-15/16"`},
		{KindLength, "1 2/2 in", "1 1/2 in"},
		{KindWire, "5/0 AWG", "4/0 AWG"},
		{KindWire, "41 AWG", "40 AWG"},
		{KindLength, "4 in (101.4 mm)", "4 in (101.6 mm)"},
		{KindLength, "4 in (110 mm)", "4 in (100 mm)"},
		{KindLength, "14 in (400 mm)", "16 in (400 mm)"},
		{KindLength, "1,20 ft", "1,200 ft"},
		{KindCurrent, "5 MA", "5 mA"},
		{KindLength, "5 Mm", "5 MM"},
	} {
		if _, err := ReadKind(c.kind, c.bad); err == nil {
			t.Errorf("%q was read", c.bad)
		}
		if _, err := ReadKind(c.kind, c.good); err != nil {
			t.Errorf("%q: %v", c.good, err)
		}
	}
}
