package unit

import (
	"math"
	"math/big"
	"strconv"
	"unicode/utf8"
)

// Gauge is a number of the sheet-metal gauge. What thickness it stands for
// depends on the metal and its coating, and is not known here.
type Gauge int

// Sheet gauges run from 3, thick, to 38, thin: the span of the manufacturers'
// standard gauge for sheet steel, from memory.
const (
	thickestGauge Gauge = 3
	thinnestGauge Gauge = 38
)

const wantsGauge = `a sheet gauge, such as "26 ga" or "26 gauge"`

// String is the gauge as it is written: "26 ga".
func (g Gauge) String() string { return strconv.Itoa(int(g)) + " ga" }

// ReadGauge reads a sheet gauge, as "26 ga" or "26 gauge". The error is an
// *Error.
func ReadGauge(text string) (Gauge, error) {
	fail := func(not, do string) (Gauge, error) {
		return 0, &Error{Read: quote(text), Expected: wantsGauge + not, Do: do}
	}
	if utf8.RuneCountInString(text) > longestText {
		return fail("", `Write the gauge alone, such as "26 ga".`)
	}
	s := newScanner(text)
	s.skipSpace()
	n, fault := s.number()
	if fault != nil || n.whole == "" {
		return fail("", `Write a whole number and "ga", such as "26 ga".`)
	}
	switch fold(tidyUnit(s.rest())) {
	case "":
		return fail("", "Write the unit: "+quote(n.whole+" ga")+".")
	case "ga", "gauge", "gage":
	default:
		if d := units.find(s.rest()); d != nil {
			return fail(", not "+d.Kind.phrase(), `Write the gauge, such as "26 ga".`)
		}
		return fail("", "Write "+quote(n.whole+" ga")+".")
	}
	g, err := strconv.Atoi(n.whole)
	if err != nil || Gauge(g) < thickestGauge || Gauge(g) > thinnestGauge {
		return fail("", "Write a gauge from "+thickestGauge.String()+" to "+thinnestGauge.String()+".")
	}
	return Gauge(g), nil
}

// The American Wire Gauge starts at 4/0 (ASTM B258, from memory); past 40 no
// cable is made of it.
const (
	thickestWire = -3
	thinnestWire = 40
)

// gauge reads a number as a wire gauge: 18, 0 or 00, 2/0.
func (n number) gauge(d *Definition) (amount, *complaint) {
	size, err := strconv.Atoi(n.whole)
	switch {
	case n.aught > 0:
		size, err = 1-n.aught, nil
	case err == nil && size == 0:
		size = 1 - len(n.whole)
	}
	if err != nil || size < thickestWire || size > thinnestWire {
		return amount{}, &complaint{do: `Write a wire size from "4/0 AWG" to "40 AWG".`}
	}
	n.value, n.place = big.NewRat(int64(size), 1), big.NewRat(1, 1)
	n.zeros = 0
	return amount{n, d}, nil
}

// Number is the number of the wire gauge that a conductor has, "12" or "4/0";
// false for an area that is none of the gauge.
func (w Wire) Number() (string, bool) {
	area := Six(float64(w))
	for _, g := range wireGauges {
		if g.area == area {
			return g.number, true
		}
	}
	return "", false
}

// wireGauges are all sizes of the wire gauge, the thickest first.
var wireGauges = loadWireGauges()

type wireGauge struct {
	number string
	area   float64 // to six figures
}

func loadWireGauges() []wireGauge {
	var list []wireGauge
	for n := thickestWire; n <= thinnestWire; n++ {
		number := strconv.Itoa(n)
		if n < 0 {
			number = strconv.Itoa(1-n) + "/0"
		}
		area, _ := gaugeArea(big.NewRat(int64(n), 1)).Float64()
		list = append(list, wireGauge{number, Six(area)})
	}
	return list
}

// gaugeArea is the conductor area of a wire gauge, square metres.
//
//	d = 0.127 mm × 92^((36 − n)/39)    (ASTM B258)
//
// It is kept to ten figures, so that every machine reads the same.
func gaugeArea(gauge *big.Rat) *big.Rat {
	n, _ := gauge.Float64()
	d := 0.127e-3 * math.Pow(92, (36-n)/39)
	area, _ := new(big.Rat).SetString(strconv.FormatFloat(math.Pi/4*d*d, 'e', 9, 64))
	return area
}
