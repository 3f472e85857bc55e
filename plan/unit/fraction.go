package unit

import (
	"math/big"
	"strings"
)

// half reads one of the characters that stand for a fraction.
func (s *scanner) half() (value, place *big.Rat) {
	f := halves[s.peek(0)]
	s.at++
	return big.NewRat(f[0], f[1]), big.NewRat(1, f[1])
}

// fraction reads the slash and the figures under it. The figure 0 under 1 to
// 4 is a wire size, as 2/0.
func (s *scanner) fraction(over string) (number, *complaint) {
	count := s.digits(1)
	if count == 0 {
		return number{}, &complaint{do: "Write a number before the unit: a fraction needs figures under its line."}
	}
	s.at++
	under := s.take(count)
	if under == "0" && len(over) == 1 && "1" <= over && over <= "4" {
		return number{aught: int(over[0] - '0')}, nil
	}
	if strings.Trim(under, "0") == "" {
		return number{}, &complaint{do: "Write a fraction whose lower figure is not 0."}
	}
	value, _ := new(big.Rat).SetString(over + "/" + under)
	place, _ := new(big.Rat).SetString("1/" + under)
	return number{value: value, place: place}, nil
}

// fractionFollows reports whether a fraction stands behind a whole number: at
// once as one character, or behind a hyphen or spaces.
func (s *scanner) fractionFollows() bool {
	n := s.gap()
	if isHalf(s.peek(n)) {
		return true
	}
	count := s.digits(n)
	return n > 0 && count > 0 && isSlash(s.peek(n+count)) && isDigit(s.peek(n+count+1))
}

// gap counts the characters that join a whole number to its fraction: one
// hyphen, or spaces.
func (s *scanner) gap() int {
	if isMinus(s.peek(0)) {
		return 1
	}
	n := 0
	for isSpace(s.peek(n)) {
		n++
	}
	return n
}

// mixed reads the fraction behind a whole number; it must be less than one.
func (s *scanner) mixed(whole string) (number, *complaint) {
	s.at += s.gap()
	var part number
	if isHalf(s.peek(0)) {
		part.value, part.place = s.half()
	} else {
		var fault *complaint
		if part, fault = s.fraction(s.take(s.digits(0))); fault != nil {
			return part, fault
		}
	}
	if part.value == nil || part.value.Cmp(big.NewRat(1, 1)) >= 0 {
		return number{}, &complaint{do: "Write a fraction of less than one behind the whole number, or write decimals."}
	}
	value, _ := new(big.Rat).SetString(whole)
	return number{value: value.Add(value, part.value), place: part.place}, nil
}
