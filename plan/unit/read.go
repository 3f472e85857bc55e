package unit

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestText bounds a text that is read, in characters.
const longestText = 100

const tooLong = "Write no more than 100 characters: a number and its unit."

// Read reads a quantity: a number with its unit, as "4 in", "1,200 cfm",
// "12' 6\"" or "4 in (100 mm)". The error is an *Error.
func Read[Q Measure](text string) (Q, error) {
	var q Q
	x, err := ReadKind(q.Kind(), text)
	return Q(x), err
}

// Must is Read for tests and constants; it panics where Read returns an error.
func Must[Q Measure](text string) Q {
	q, err := Read[Q](text)
	if err != nil {
		panic("unit: " + err.Error())
	}
	return q
}

// ReadKind reads a quantity of a kind and returns it in the SI unit of its
// type. The error is an *Error.
func ReadKind(k Kind, text string) (float64, error) {
	x, fault := read(k, text)
	if fault != nil {
		return 0, fault.about(k, text)
	}
	return x, nil
}

// read reads a quantity, and the bracket behind it if there is one.
func read(k Kind, text string) (float64, *complaint) {
	if utf8.RuneCountInString(text) > longestText {
		return 0, &complaint{do: tooLong}
	}
	text = strings.TrimSpace(text)
	if strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) && !isSpace(r) }) {
		return 0, &complaint{do: "Write it anew: a character stands in it that cannot be seen."}
	}
	main, bracket := splitBracket(text)
	a, fault := readAmount(k, main)
	if fault == nil && bracket != "" {
		fault = agree(k, a, main, bracket)
	}
	if fault != nil {
		return 0, fault
	}
	x, _ := a.si().Float64() // finite: text and exponent are bounded
	if k == KindTemperature && x < 0 {
		return 0, &complaint{do: "Write a temperature above absolute zero, -273.15 C."}
	}
	return x, nil
}

// amount is a number of a unit.
type amount struct {
	number
	unit *Definition
}

// si is the amount in the SI unit of its kind, exact but for wire gauges.
func (a amount) si() *big.Rat { return a.unit.si(a.value) }

func (d *Definition) si(x *big.Rat) *big.Rat {
	if d.factor == nil {
		return gaugeArea(x)
	}
	y := new(big.Rat).Add(x, d.offset)
	return y.Mul(y, d.factor)
}

// readAmount reads a number and a unit of the kind.
func readAmount(k Kind, text string) (amount, *complaint) {
	s := newScanner(text)
	s.skipSpace()
	n, fault := s.number()
	if fault != nil {
		if n.text == "" {
			fault = plain(k)
		}
		return amount{}, fault
	}
	if a, found, fault := s.feetAndInches(n); found {
		if k != KindLength {
			fault = notA(k, KindLength)
		}
		return a, fault
	}
	return n.of(k, s.rest())
}

// of joins a number with the unit written behind it.
func (n number) of(k Kind, unit string) (amount, *complaint) {
	d := units.find(unit)
	switch {
	case strings.TrimSpace(tidyUnit(unit)) == "":
		return amount{}, noUnit(k, n)
	case d == nil:
		return amount{}, unknownUnit(k, n, unit)
	case d.Kind != k:
		return amount{}, otherKind(k, n, d, unit)
	case d.factor == nil:
		return n.gauge(d)
	case n.aught > 0:
		return amount{}, &complaint{do: "Write a fraction whose lower figure is not 0."}
	}
	return amount{n, d}, nil
}

// feetAndInches reads what follows the feet of 12' 6", 12'-6" or 12 ft 6 in.
// Where the text is not of that form it reads nothing.
func (s *scanner) feetAndInches(feet number) (a amount, found bool, fault *complaint) {
	start := s.at
	inches, inch, ok := s.inches()
	if !ok {
		s.at = start
		return a, false, nil
	}
	twelve := big.NewRat(12, 1)
	if feet.value == nil || !feet.value.IsInt() || inches.value.Cmp(twelve) >= 0 {
		return amount{unit: inch}, true, &complaint{do: `Write whole feet and less than twelve inches, such as "12 ft 6 in".`}
	}
	total := new(big.Rat).Mul(feet.value, twelve)
	if strings.TrimLeft(feet.text, "-−–\u2010\u2011") != feet.text {
		total.Sub(total, inches.value)
	} else {
		total.Add(total, inches.value)
	}
	return amount{number{value: total, place: inches.place, text: feet.text}, inch}, true, nil
}

// inches reads a unit of feet, a number, and a unit of inches up to the end.
func (s *scanner) inches() (number, *Definition, bool) {
	foot, inch := units.find("ft"), units.find("in")
	from := s.at
	for c := s.peek(0); c != 0 && !isDigit(c) && !isHalf(c) && !isMinus(c); c = s.peek(0) {
		s.at++
	}
	if units.find(string(s.text[from:s.at])) != foot {
		return number{}, nil, false
	}
	if isMinus(s.peek(0)) {
		s.at++
		s.skipSpace()
	}
	n, fault := s.unsigned()
	if fault != nil || n.value == nil || units.find(s.rest()) != inch {
		return number{}, nil, false
	}
	return n, inch, true
}
