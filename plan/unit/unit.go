// Package unit knows quantities: typed values in SI base units, how people
// write them with their units, how a sheet prints them, and the one rounding
// that everything printed, compared or ranked goes through.
//
// # Reading
//
// A quantity is a number and its unit in one text; US and SI mix freely:
//
//	number    1200  1,200  1 200  0.55  1.8e-5  1/2  1-1/2  1 1/2  1½
//	quantity  number unit, with or without a space between them
//	length    also feet and inches: 12' 6"  12'-6"  12 ft 6 in
//	bracket   a quantity may say itself again: 4 in (100 mm)
//	wire      also a gauge: 18 AWG  2/0 AWG
//
// The table units.csv holds every unit with its spellings and its definition.
// Letter case is free where it says nothing and binding where it does: mA,
// Mohm and mohm, m, s, h, K. Numbers are read as exact fractions, so that a
// reading is the nearest number there is, on every machine.
//
// A text that cannot be read is refused with an *Error. It never proposes a
// text that would be refused in its turn.
//
// # Printing
//
// A Scale prints one column: a unit and a count of figures for each system.
// Six is the one rounding behind all printing and comparing; halves round
// away from nought, on the six decimal digits.
//
// It knows no machine, no duct and no document.
package unit

// The quantities of the trade. Each is a number in the SI unit named here, so
// that mixing two of them does not compile.
type (
	Length      float64 // metres
	Area        float64 // square metres
	Volume      float64 // cubic metres
	Flow        float64 // cubic metres a second
	Velocity    float64 // metres a second
	Pressure    float64 // pascals
	Density     float64 // kilograms a cubic metre
	Viscosity   float64 // pascal seconds, dynamic
	Temperature float64 // kelvins
	Power       float64 // watts
	Current     float64 // amperes
	Voltage     float64 // volts
	Resistance  float64 // ohms
	Time        float64 // seconds
	Angle       float64 // degrees: the one quantity kept in the unit people draw with
	Sound       float64 // decibels, A-weighted
	Inertia     float64 // kilogram square metres
	Wire        float64 // square metres of conductor
)

// Measure is any quantity of this package.
type Measure interface {
	~float64
	Kind() Kind
}
