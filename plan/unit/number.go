package unit

import (
	"math/big"
	"strings"
)

// number is a number as it was written: its exact value, the size of its last
// figure, and its text.
type number struct {
	value *big.Rat
	place *big.Rat // the size of its last figure: 0.01 for 1.25, 1/16 for 3/16
	zeros int      // figures 0 at the end of a whole number, which may not count
	text  string
	whole string // the figures of a plain whole number without a sign, else empty
	aught int    // 2 for the wire size written 2/0; the value is then unset
}

// longest exponent that is read; beyond it no quantity of a shop lies.
const longestExponent = 99

// groupSpaces are the spaces that may part thousands.
const groupSpaces = " \u00a0\u2009\u202f\u2007"

// halves are the characters that stand for a fraction.
var halves = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅐': {1, 7}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8}, '⅑': {1, 9}, '⅒': {1, 10},
}

// scanner walks over the characters of a text.
type scanner struct {
	text []rune
	at   int
}

func newScanner(text string) *scanner { return &scanner{text: []rune(text)} }

// peek is the character n places on, 0 past the end.
func (s *scanner) peek(n int) rune {
	if s.at+n < len(s.text) {
		return s.text[s.at+n]
	}
	return 0
}

func (s *scanner) rest() string { return string(s.text[s.at:]) }

func (s *scanner) skipSpace() {
	for isSpace(s.peek(0)) {
		s.at++
	}
}

func isSpace(r rune) bool { return r == '\t' || r != 0 && strings.ContainsRune(groupSpaces, r) }
func isDigit(r rune) bool { return '0' <= r && r <= '9' }
func isSlash(r rune) bool { return r == '/' || r == '⁄' }
func isMinus(r rune) bool {
	return r == '-' || r == '−' || r == '\u2010' || r == '\u2011' || r == '–'
}
func isHalf(r rune) bool { _, ok := halves[r]; return ok }

// digits counts the figures that start n places on.
func (s *scanner) digits(n int) int {
	count := 0
	for isDigit(s.peek(n + count)) {
		count++
	}
	return count
}

// take is the next n characters.
func (s *scanner) take(n int) string {
	text := string(s.text[s.at : s.at+n])
	s.at += n
	return text
}

// number reads a number with its sign.
func (s *scanner) number() (number, *complaint) {
	start, negative := s.at, false
	if r := s.peek(0); isMinus(r) || r == '+' {
		negative = isMinus(r)
		s.at++
		s.skipSpace()
	}
	n, fault := s.unsigned()
	n.text = string(s.text[start:s.at])
	if fault != nil {
		return n, fault
	}
	if s.at != start && (negative || s.text[start] == '+') {
		n.whole, n.aught = "", 0
	}
	if n.value == nil && n.aught == 0 {
		return n, &complaint{do: "Write a number before the unit."}
	}
	if negative {
		n.value.Neg(n.value)
	}
	return n, nil
}

// unsigned reads digits, thousands, a point, an exponent, a fraction or a
// mixed number.
func (s *scanner) unsigned() (number, *complaint) {
	var n number
	start := s.at
	if isHalf(s.peek(0)) {
		n.value, n.place = s.half()
		return n, nil
	}
	whole, fault := s.wholePart()
	if fault != nil {
		return n, fault
	}
	if whole != "" && isSlash(s.peek(0)) {
		return s.fraction(whole)
	}
	if whole != "" && s.fractionFollows() {
		return s.mixed(whole)
	}
	return s.decimal(start, whole)
}

// wholePart reads the figures before any point, with their thousands parted
// by commas or by one kind of space.
func (s *scanner) wholePart() (string, *complaint) {
	start := s.at
	whole := s.take(s.digits(0))
	parted := len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0'
	for part := s.peek(0); parted && s.groupFollows(part); {
		s.at++
		whole += s.take(3)
	}
	if s.peek(0) == ',' && isDigit(s.peek(1)) {
		return "", s.decimalComma(start)
	}
	return whole, nil
}

// groupFollows reports whether the separator and just three figures come
// next, and the figures are not the top of a fraction.
func (s *scanner) groupFollows(part rune) bool {
	if part == 0 || part != ',' && !strings.ContainsRune(groupSpaces, part) || s.peek(0) != part {
		return false
	}
	return s.digits(1) == 3 && !isSlash(s.peek(4))
}

// badComma is what to do about commas that can be read more than one way.
const badComma = "Write a point before decimals, and commas only between groups of three figures."

// decimalComma complains of a comma that is no thousands comma, and shows the
// text with a point in its place where there is only one way to read it.
func (s *scanner) decimalComma(start int) *complaint {
	end := start
	for end < len(s.text) && (isDigit(s.text[end]) || strings.ContainsRune(".,"+groupSpaces, s.text[end])) {
		end++
	}
	figures := strings.TrimRight(string(s.text[start:end]), ".,"+groupSpaces)
	parts := strings.FieldsFunc(figures, func(r rune) bool { return !isDigit(r) })
	last := len(parts) - 1
	if strings.Count(figures, ",") != 1 || !strings.HasSuffix(figures, ","+parts[last]) {
		return &complaint{do: badComma}
	}
	for i, part := range parts[:last] {
		if i > 0 && len(part) != 3 || last > 1 && len(part) > 3 {
			return &complaint{do: badComma}
		}
	}
	before := string(s.text[:start]) + strings.Join(parts[:last], "")
	after := string(s.text[start+len([]rune(figures)):])
	return &complaint{
		do:     badComma,
		lead:   "Write a point for the comma:",
		offers: []string{before + "." + parts[last] + after},
		most:   1,
	}
}

// decimal reads the point and exponent behind the whole part.
func (s *scanner) decimal(start int, whole string) (number, *complaint) {
	text, decimals := whole, 0
	if s.peek(0) == '.' && isDigit(s.peek(1)) {
		s.at++
		decimals = s.digits(0)
		text += "." + s.take(decimals)
		if s.peek(0) == ',' && isDigit(s.peek(1)) {
			return number{}, s.decimalComma(start)
		}
	}
	if text == "" {
		return number{}, nil
	}
	exponent, fault := s.exponent()
	if fault != nil {
		return number{}, fault
	}
	n := number{value: new(big.Rat), place: tenTo(exponent - decimals)}
	n.value.SetString(text)
	n.value.Mul(n.value, tenTo(exponent))
	if decimals == 0 {
		n.zeros = len(whole) - len(strings.TrimRight(whole, "0"))
		if exponent == 0 {
			n.whole = whole
		}
	}
	return n, nil
}

// exponent reads e-5 and the like; 0 where none stands.
func (s *scanner) exponent() (int, *complaint) {
	if r := s.peek(0); r != 'e' && r != 'E' {
		return 0, nil
	}
	skip, sign := 1, 1
	if r := s.peek(1); r == '+' || isMinus(r) {
		skip = 2
		if r != '+' {
			sign = -1
		}
	}
	count := s.digits(skip)
	if count == 0 {
		return 0, nil
	}
	s.at += skip
	exponent := 0
	for _, r := range s.take(count) {
		if exponent = exponent*10 + int(r-'0'); exponent > longestExponent {
			return 0, &complaint{do: "Write a number that a shop can have: its exponent is too long."}
		}
	}
	return sign * exponent, nil
}

// tenTo is a power of ten.
func tenTo(n int) *big.Rat {
	if n < 0 {
		return new(big.Rat).Inv(tenTo(-n))
	}
	return new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil))
}
