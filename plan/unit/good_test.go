package unit

import "testing"

// The definitions the good texts are checked against, written out here apart
// from the table of units: NIST Special Publication 811 (2008), appendix B,
// from memory; every one but the horsepower and the pressures of water and
// mercury is exact by definition. Go reckons constants exactly, so a reading
// must be the nearest number there is.
const (
	inch    = 0.0254
	foot    = 12 * inch
	pound   = 0.45359237
	gravity = 9.80665
	gallon  = 231 * inch * inch * inch
	imp     = 0.00454609
	cfm     = foot * foot * foot / 60
	inwg    = inch * 1000 * gravity    // conventional water, 1000 kg/m3
	inhg    = inch * 13595.1 * gravity // conventional mercury, 13595.1 kg/m3
	psi     = pound * gravity / inch / inch
	hp      = 745.7
)

type goodText struct {
	kind Kind
	text string
	want float64
}

var goodTexts = []goodText{
	// Plain lengths, in each unit and spelling.
	{KindLength, "4 in", 4 * inch},
	{KindLength, "4in", 4 * inch},
	{KindLength, "4 in.", 4 * inch},
	{KindLength, "4-inch", 4 * inch},
	{KindLength, "1 inch", inch},
	{KindLength, "6 inches", 6 * inch},
	{KindLength, "6 INCHES", 6 * inch},
	{KindLength, `4"`, 4 * inch},
	{KindLength, `4 "`, 4 * inch},
	{KindLength, "4″", 4 * inch},
	{KindLength, "4”", 4 * inch},
	{KindLength, "12 ft", 12 * foot},
	{KindLength, "12'", 12 * foot},
	{KindLength, "12′", 12 * foot},
	{KindLength, "12’", 12 * foot},
	{KindLength, "1 foot", foot},
	{KindLength, "30 feet", 30 * foot},
	{KindLength, "30 FT", 30 * foot},
	{KindLength, "2 yd", 2 * 3 * foot},
	{KindLength, "2 yards", 6 * foot},
	{KindLength, "100 mm", 0.1},
	{KindLength, "100MM", 0.1},
	{KindLength, "100 millimetres", 0.1},
	{KindLength, "10 cm", 0.1},
	{KindLength, "10 CM", 0.1},
	{KindLength, "3 m", 3},
	{KindLength, "3 metres", 3},
	{KindLength, "3 Meters", 3},
	{KindLength, "46 um", 46e-6},
	{KindLength, "46 µm", 46e-6},
	{KindLength, "46 μm", 46e-6}, // the Greek letter
	{KindLength, "46 microns", 46e-6},
	{KindLength, "0.15 mm", 0.00015},
	{KindLength, ".5 in", 0.5 * inch},
	{KindLength, "0 ft", 0},
	{KindLength, "-0 ft", 0},
	{KindLength, "-500 m", -500},
	{KindLength, "−2 in", -2 * inch},
	{KindLength, "+2 in", 2 * inch},
	{KindLength, "  4   in  ", 4 * inch},
	{KindLength, "4\u00a0in", 4 * inch},
	{KindLength, "4\u2009mm", 0.004},
	{KindLength, "4\u202fmm", 0.004},
	{KindLength, "4\tmm", 0.004},
	{KindLength, "\n4 mm\n", 0.004},
	{KindLength, "1e3 mm", 1},
	{KindLength, "1.5E+2 mm", 0.15},
	{KindLength, "2e-3 m", 0.002},

	// Fractions and mixed numbers.
	{KindLength, "1/2 in", inch / 2},
	{KindLength, "1/16 in", inch / 16},
	{KindLength, "1⁄2 in", inch / 2},
	{KindLength, "½ in", inch / 2},
	{KindLength, "¾\"", inch * 3 / 4},
	{KindLength, "⅝ in", inch * 5 / 8},
	{KindLength, "⅓ ft", foot / 3},
	{KindLength, "-1/2 in", -inch / 2},
	{KindLength, "1-1/2 in", 1.5 * inch},
	{KindLength, "1 1/2 in", 1.5 * inch},
	{KindLength, "1\u00a01/2 in", 1.5 * inch},
	{KindLength, "1–1/2 in", 1.5 * inch},
	{KindLength, "1½ in", 1.5 * inch},
	{KindLength, "1 ½ in", 1.5 * inch},
	{KindLength, "1-½\"", 1.5 * inch},
	{KindLength, "-1-1/2 in", -1.5 * inch},
	{KindLength, "2-3/4\"", 2.75 * inch},
	{KindLength, "1 100/200 in", 1.5 * inch},
	{KindLength, "10 1/2 ft", 10.5 * foot},
	{KindLength, "7/8ft", foot * 7 / 8},

	// Feet and inches.
	{KindLength, `12' 6"`, 12.5 * foot},
	{KindLength, `12'6"`, 12.5 * foot},
	{KindLength, `12'-6"`, 12.5 * foot},
	{KindLength, `12' - 6"`, 12.5 * foot},
	{KindLength, `12′ 6″`, 12.5 * foot},
	{KindLength, "12’ 6”", 12.5 * foot},
	{KindLength, "12 ft 6 in", 12.5 * foot},
	{KindLength, "12ft6in", 12.5 * foot},
	{KindLength, "12 ft. 6 in.", 12.5 * foot},
	{KindLength, "12 ft-6 in", 12.5 * foot},
	{KindLength, "12 feet 6 inches", 12.5 * foot},
	{KindLength, `5' 3-1/2"`, 63.5 * inch},
	{KindLength, `5' 3 1/2"`, 63.5 * inch},
	{KindLength, `5'-3½"`, 63.5 * inch},
	{KindLength, `5' ½"`, 60.5 * inch},
	{KindLength, `0' 6"`, 6 * inch},
	{KindLength, `8' 0"`, 8 * foot},
	{KindLength, `8' 11.75"`, 107.75 * inch},
	{KindLength, `-5' 6"`, -5.5 * foot},
	{KindLength, `1,000' 6"`, 1000.5 * foot},

	// Thousands.
	{KindLength, "1,250 ft", 1250 * foot},
	{KindLength, "12,345 ft", 12345 * foot},
	{KindLength, "1,200,000 mm", 1200},
	{KindLength, "1 200 mm", 1.2},
	{KindLength, "1\u2009200 mm", 1.2},
	{KindLength, "1\u00a0200 mm", 1.2},
	{KindLength, "1\u202f200 mm", 1.2},
	{KindLength, "1 200 000 mm", 1200},
	{KindLength, "1,200.5 mm", 1.2005},
	{KindLength, "1 200.5 mm", 1.2005},
	{KindLength, "1,200 1/2 in", 1200.5 * inch},
	{KindLength, "1.200 m", 1.2},

	// Brackets that agree within their own figures.
	{KindLength, "4 in (100 mm)", 4 * inch},
	{KindLength, "4 in (102 mm)", 4 * inch},
	{KindLength, "4 in (101.6 mm)", 4 * inch},
	{KindLength, "4 in(10 cm)", 4 * inch},
	{KindLength, "4 in ( 0.1 m )", 4 * inch},
	{KindLength, "6 in (150 mm)", 6 * inch},
	{KindLength, "100 mm (4 in)", 0.1},
	{KindLength, "100 mm (3-15/16 in)", 0.1},
	{KindLength, `5' 10" (1.78 m)`, 70 * inch},
	{KindLength, `1.78 m (5' 10")`, 1.78},
	{KindFlow, "350 cfm (595 m3/h)", 350 * cfm},
	{KindFlow, "350 cfm (600 m³/h)", 350 * cfm},
	{KindPressure, "1 in wg (250 Pa)", inwg},
	{KindPressure, "1 inwg (249 Pa)", inwg},
	{KindTemperature, "65 F (18 C)", (65 + 459.67) * 5 / 9},
	{KindTemperature, "32 F (0 C)", 273.15},
	{KindPower, "5 hp (3.7 kW)", 5 * hp},
	{KindSound, "92 dB(A) (92 dB)", 92},
	{KindSound, "92 dB (92 dB(A))", 92},
	{KindLength, "1016 mm (4e1 in)", 1.016},
	{KindWire, "18 AWG (0.82 mm2)", 8.230468337e-7},
	{KindWire, "0.82 mm2 (18 AWG)", 0.82e-6},

	// Areas and volumes.
	{KindArea, "260 sq ft", 260 * foot * foot},
	{KindArea, "1.5 sq. ft.", 1.5 * foot * foot},
	{KindArea, "1.5 sqft", 1.5 * foot * foot},
	{KindArea, "2 ft2", 2 * foot * foot},
	{KindArea, "2 ft²", 2 * foot * foot},
	{KindArea, "2 ft^2", 2 * foot * foot},
	{KindArea, "2 square feet", 2 * foot * foot},
	{KindArea, "48 sq in", 48 * inch * inch},
	{KindArea, "48 in2", 48 * inch * inch},
	{KindArea, "24 m2", 24},
	{KindArea, "24 m²", 24},
	{KindArea, "24 sq m", 24},
	{KindArea, "500 cm2", 0.05},
	{KindVolume, "6 cu ft", 6 * foot * foot * foot},
	{KindVolume, "6 ft3", 6 * foot * foot * foot},
	{KindVolume, "6 ft³", 6 * foot * foot * foot},
	{KindVolume, "100 cu in", 100 * inch * inch * inch},
	{KindVolume, "55 gal", 55 * gallon},
	{KindVolume, "55 gallons", 55 * gallon},
	{KindVolume, "55 US gal", 55 * gallon},
	{KindVolume, "55 imp gal", 55 * imp},
	{KindVolume, "55 imp. gal.", 55 * imp},
	{KindVolume, "200 L", 0.2},
	{KindVolume, "200 l", 0.2},
	{KindVolume, "200 litres", 0.2},
	{KindVolume, "1 liter", 0.001},
	{KindVolume, "250 mL", 0.00025},
	{KindVolume, "0.2 m3", 0.2},
	{KindVolume, "0.2 m³", 0.2},

	// Flows and velocities.
	{KindFlow, "350 cfm", 350 * cfm},
	{KindFlow, "350 CFM", 350 * cfm},
	{KindFlow, "350 Cfm", 350 * cfm},
	{KindFlow, "350 ft3/min", 350 * cfm},
	{KindFlow, "350 ft³ / min", 350 * cfm},
	{KindFlow, "1,200 cfm", 1200 * cfm},
	{KindFlow, "820 m3/h", 820.0 / 3600},
	{KindFlow, "820 m³/h", 820.0 / 3600},
	{KindFlow, "820 m^3/h", 820.0 / 3600},
	{KindFlow, "820 M3/H", 820.0 / 3600},
	{KindFlow, "0.2 m3/s", 0.2},
	{KindFlow, "12 m3/min", 12.0 / 60},
	{KindFlow, "165 L/s", 0.165},
	{KindFlow, "165 l/s", 0.165},
	{KindFlow, "600 L/min", 0.6 / 60},
	{KindVelocity, "4000 fpm", 4000 * foot / 60},
	{KindVelocity, "20 ft/min", 20 * foot / 60},
	{KindVelocity, "66 ft/s", 66 * foot},
	{KindVelocity, "20 m/s", 20},
	{KindVelocity, "6 m/min", 6.0 / 60},

	// Pressures.
	{KindPressure, "11.5 inwg", 11.5 * inwg},
	{KindPressure, "11.5 INWG", 11.5 * inwg},
	{KindPressure, "11.5 in wg", 11.5 * inwg},
	{KindPressure, "11.5 in. wg", 11.5 * inwg},
	{KindPressure, "11.5 in w.g.", 11.5 * inwg},
	{KindPressure, "11.5 in. w.g.", 11.5 * inwg},
	{KindPressure, "11.5 inH2O", 11.5 * inwg},
	{KindPressure, "11.5 inH₂O", 11.5 * inwg},
	{KindPressure, "11.5 in H2O", 11.5 * inwg},
	{KindPressure, "11.5 in wc", 11.5 * inwg},
	{KindPressure, "11.5 in. w.c.", 11.5 * inwg},
	{KindPressure, `11.5" wg`, 11.5 * inwg},
	{KindPressure, "50 Pa", 50},
	{KindPressure, "50 pa", 50},
	{KindPressure, "5 hPa", 500},
	{KindPressure, "2.5 kPa", 2500},
	{KindPressure, "2.5 KPA", 2500},
	{KindPressure, "5 mbar", 500},
	{KindPressure, "6 bar", 600000},
	{KindPressure, "90 psi", 90 * psi},
	{KindPressure, "90 PSI", 90 * psi},
	{KindPressure, "100 mmH2O", 100 * gravity},
	{KindPressure, "100 mm wg", 100 * gravity},
	{KindPressure, "100 mm w.g.", 100 * gravity},
	{KindPressure, "29.92 inHg", 29.92 * inhg},
	{KindPressure, "29.92 in. Hg", 29.92 * inhg},
	{KindPressure, "-0.02 inwg", -0.02 * inwg},

	// Air and heat.
	{KindDensity, "1.14 kg/m3", 1.14},
	{KindDensity, "1.14 kg/m³", 1.14},
	{KindDensity, "0.075 lb/ft3", 0.075 * pound / foot / foot / foot},
	{KindDensity, "0.075 lb/cu ft", 0.075 * pound / foot / foot / foot},
	{KindViscosity, "1.8e-5 Pa s", 1.8e-5},
	{KindViscosity, "1.8e−5 Pa·s", 1.8e-5},
	{KindViscosity, "1.8e-5 Pa.s", 1.8e-5},
	{KindViscosity, "1.8E-5 Pa*s", 1.8e-5},
	{KindViscosity, "0.018 cP", 0.018 / 1000},
	{KindTemperature, "65 F", (65 + 459.67) * 5 / 9},
	{KindTemperature, "65 °F", (65 + 459.67) * 5 / 9},
	{KindTemperature, "65°F", (65 + 459.67) * 5 / 9},
	{KindTemperature, "65 ° F", (65 + 459.67) * 5 / 9},
	{KindTemperature, "65 deg F", (65 + 459.67) * 5 / 9},
	{KindTemperature, "65 deg. F", (65 + 459.67) * 5 / 9},
	{KindTemperature, "65 ℉", (65 + 459.67) * 5 / 9},
	{KindTemperature, "-40 F", 233.15},
	{KindTemperature, "-40 C", 233.15},
	{KindTemperature, "75 C", 348.15},
	{KindTemperature, "75 °C", 348.15},
	{KindTemperature, "75 deg C", 348.15},
	{KindTemperature, "300 K", 300},
	{KindTemperature, "-459.67 F", 0},

	// Electricity.
	{KindPower, "3 hp", 3 * hp},
	{KindPower, "3 HP", 3 * hp},
	{KindPower, "3 Hp", 3 * hp},
	{KindPower, "1/2 hp", hp / 2},
	{KindPower, "1-1/2 hp", 1.5 * hp},
	{KindPower, "60 W", 60},
	{KindPower, "2.2 kW", 2200},
	{KindPower, "2.2 KW", 2200},
	{KindCurrent, "17 A", 17},
	{KindCurrent, "17 amps", 17},
	{KindCurrent, "40 mA", 0.04},
	{KindVoltage, "230 V", 230},
	{KindVoltage, "24 VDC", 24},
	{KindVoltage, "24 v", 24},
	{KindVoltage, "60 mV", 0.06},
	{KindVoltage, "1 kV", 1000},
	{KindResistance, "3 ohm", 3},
	{KindResistance, "3 ohms", 3},
	{KindResistance, "3 Ω", 3},
	{KindResistance, "3 \u2126", 3}, // the ohm sign
	{KindResistance, "1 kohm", 1000},
	{KindResistance, "1 kΩ", 1000},
	{KindResistance, "1 Mohm", 1e6},
	{KindResistance, "1 MΩ", 1e6},
	{KindResistance, "1 mohm", 0.001},
	{KindResistance, "1 mΩ", 0.001},
	{KindWire, "0.75 mm2", 0.75e-6},
	{KindWire, "0.75 mm²", 0.75e-6},
	{KindWire, "0.75 sq mm", 0.75e-6},

	// Time, angle, sound, inertia.
	{KindTime, "0.8 s", 0.8},
	{KindTime, "12 sec", 12},
	{KindTime, "150 ms", 0.15},
	{KindTime, "14 min", 840},
	{KindTime, "14 minutes", 840},
	{KindTime, "14 MIN", 840},
	{KindTime, "2 h", 7200},
	{KindTime, "2 hours", 7200},
	{KindTime, "1 1/2 h", 5400},
	{KindAngle, "45 deg", 45},
	{KindAngle, "45°", 45},
	{KindAngle, "45º", 45}, // the ordinal sign
	{KindAngle, "22.5 degrees", 22.5},
	{KindSound, "92 dBA", 92},
	{KindSound, "92 dB(A)", 92},
	{KindSound, "92 db(a)", 92},
	{KindSound, "92 dB", 92},
	{KindInertia, "4 lb ft2", 4 * pound * foot * foot},
	{KindInertia, "4 lb·ft²", 4 * pound * foot * foot},
	{KindInertia, "4 lb-ft2", 4 * pound * foot * foot},
	{KindInertia, "4 lb.ft2", 4 * pound * foot * foot},
	{KindInertia, "100 lb in2", 100 * pound * inch * inch},
	{KindInertia, "0.17 kg m2", 0.17},
	{KindInertia, "0.17 kg·m²", 0.17},
}

func TestReadKind(t *testing.T) {
	for _, c := range goodTexts {
		got, err := ReadKind(c.kind, c.text)
		if err != nil {
			t.Errorf("%q as %s: %v", c.text, c.kind, err)
		} else if got != c.want {
			t.Errorf("%q as %s: read %v, want %v", c.text, c.kind, got, c.want)
		}
	}
	if len(goodTexts) < 150 {
		t.Errorf("only %d good texts", len(goodTexts))
	}
}

// Every good text is refused, and no worse, by every other kind.
func TestReadKindOther(t *testing.T) {
	for _, c := range goodTexts {
		for _, k := range Kinds() {
			if k == c.kind {
				continue
			}
			if x, err := ReadKind(k, c.text); err == nil {
				t.Errorf("%q is %s, but read as %s: %v", c.text, c.kind.phrase(), k.phrase(), x)
			}
		}
	}
}
