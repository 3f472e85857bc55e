package unit

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// Factors of NIST Special Publication 811 (2008), appendix B.8, as its table
// prints them: seven digits, or fewer where exact. From memory.
func TestFactorsAgainstSP811(t *testing.T) {
	for _, c := range []struct {
		kind   Kind
		unit   string
		factor float64
	}{
		{KindLength, "in", 2.54e-2},
		{KindLength, "ft", 3.048e-1},
		{KindLength, "yd", 9.144e-1},
		{KindArea, "ft2", 9.290304e-2},
		{KindArea, "in2", 6.4516e-4},
		{KindVolume, "ft3", 2.831685e-2},
		{KindVolume, "in3", 1.638706e-5},
		{KindVolume, "gal", 3.785412e-3},
		{KindVolume, "imp gal", 4.54609e-3},
		{KindFlow, "cfm", 4.719474e-4},
		{KindVelocity, "ft/min", 5.08e-3},
		{KindPressure, "inH2O", 2.490889e2},
		{KindPressure, "mmH2O", 9.80665},
		{KindPressure, "inHg", 3.386389e3},
		{KindPressure, "psi", 6.894757e3},
		{KindPressure, "bar", 1e5},
		{KindPressure, "mbar", 1e2},
		{KindDensity, "lb/ft3", 1.601846e1},
		{KindViscosity, "cP", 1e-3},
		{KindInertia, "lb ft2", 4.214011e-2},
		{KindInertia, "lb in2", 2.926397e-4},
		{KindWire, "kcmil", 5.067075e-7},
	} {
		got, err := ReadKind(c.kind, "1 "+c.unit)
		if err != nil || math.Abs(got/c.factor-1) > 5e-7 {
			t.Errorf("1 %s is %v (%v), SP 811 says %v", c.unit, got, err, c.factor)
		}
	}
	// The horsepower is 745.6999 W there; the plan reckons with 745.7 W.
	if got := Must[Power]("1 hp"); got != 745.7 || math.Abs(float64(got)/745.6999-1) > 1e-6 {
		t.Errorf("1 hp is %v W", got)
	}
}

// The same texts were read by Pint 0.19.2, an open library of units; the file
// keeps what it said. It counts the horsepower as 550 ft lbf/s.
func TestReadAgainstLibrary(t *testing.T) {
	f, err := os.Open("testdata/library.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 40 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	names := map[string]Kind{}
	for _, k := range Kinds() {
		names[tableName(k)] = k
	}
	for _, r := range rows[1:] {
		want, err := strconv.ParseFloat(r[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		got, err := ReadKind(names[r[0]], r[1])
		within := 1e-12
		if strings.HasSuffix(r[1], " hp") {
			within = 1e-6
		}
		if err != nil || math.Abs(got-want) > within*math.Abs(want) {
			t.Errorf("%s: %v (%v), the library says %v", r[1], got, err, want)
		}
	}
}

func TestDefinitions(t *testing.T) {
	count := map[Kind]int{}
	for _, d := range Definitions() {
		count[d.Kind]++
		if d.Text == "" || d.Mark == "" || d.Document == "" && d.Mark != "P" || d.Document != "" && d.Clause == "" {
			t.Errorf("%s: no definition, or none that says where it stands: %+v", d.Spellings[0], d)
		}
		for _, s := range d.Spellings {
			number := "2 "
			if d.Kind == KindWire {
				number = "18 "
			}
			if _, err := ReadKind(d.Kind, number+s); err != nil {
				t.Errorf("the table's own spelling is refused: %v", err)
			}
		}
	}
	for _, k := range Kinds() {
		if count[k] == 0 {
			t.Errorf("no unit for %s", k.phrase())
		}
	}
}

// Where a unit is spelled in small letters, no other unit may hide.
func TestLetterCase(t *testing.T) {
	for spelling, d := range units.exact {
		if other := units.folded[fold(spelling)]; other != nil && other != d {
			t.Errorf("%q is %s, but in another letter case it would be read as %s", spelling, d.Spellings[0], other.Spellings[0])
		}
	}
	for _, exact := range []string{"m", "mm", "mA", "mV", "ms", "s", "h", "K", "mohm", "Mohm", "mbar", "mm2", "um"} {
		if units.exact[exact] == nil || units.folded[fold(exact)] != nil {
			t.Errorf("%q is read in any letter case", exact)
		}
	}
}

func TestHintsAreOfUse(t *testing.T) {
	for key, instead := range hints {
		if d := units.find(key.written); d != nil && d.Kind == key.wanted {
			t.Errorf("%q is read where %s is wanted: the hint never shows", key.written, key.wanted.phrase())
		}
		for _, s := range instead {
			if d := units.find(s); d == nil || d.Kind != key.wanted {
				t.Errorf("the hint %q is no unit of %s", s, key.wanted)
			}
		}
	}
}

func TestReadUnitsRefuses(t *testing.T) {
	head := "kind,factor,offset,spellings,document,clause,mark,definition\n"
	for rows, want := range map[string]string{
		"mass,1,,kg,,,,":                       "unknown kind",
		"length,x,,in,,,,":                     "factor",
		"length,-1,,in,,,,":                    "factor",
		"length,1/0,,in,,,,":                   "divides",
		"length,1,y,in,,,,":                    "offset",
		"length,1,,,,,,":                       "never be found",
		"length,1,,sq  ft,,,,":                 "never be found",
		"length,1,,in|in,,,,":                  "stands twice",
		"length,1,,in,,,,\nlength,2,,IN,,,,":   "by case alone",
		"length,1,,in,,,,\nlength,2,,in,,,,":   "stands twice",
		"length,1,,in,,,,\nlength,2,,ft,,,,,,": "wrong number of fields",
	} {
		if _, err := readUnits([]byte(head + rows)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v: want it to say %s", rows, err, want)
		}
	}
	if _, err := readUnits([]byte(head + "length,1,,=in,,,,\nlength,2,,=IN,,,,")); err != nil {
		t.Errorf("two spellings that both mind their letter case: %v", err)
	}
}
