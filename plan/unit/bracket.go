package unit

import (
	"math/big"
	"strings"
)

// splitBracket parts a text that ends in a bracket with a figure in it, as
// "4 in (100 mm)". A bracket without a figure, as in "92 dB(A)", is part of
// the unit.
func splitBracket(text string) (main, bracket string) {
	text = strings.TrimSpace(text)
	inner, closed := strings.CutSuffix(text, ")")
	if !closed {
		return text, ""
	}
	for i, depth := len(inner)-1, 1; i >= 0; i-- {
		switch inner[i] {
		case ')':
			depth++
		case '(':
			depth--
		}
		if depth > 0 {
			continue
		}
		if !strings.ContainsFunc(inner[i+1:], func(r rune) bool { return isDigit(r) || isHalf(r) }) {
			break
		}
		return inner[:i], inner[i+1:]
	}
	return text, ""
}

// agree complains unless the bracket says the same as the amount before it,
// within the bracket's own figures.
func agree(k Kind, a amount, main, bracket string) *complaint {
	b, fault := readAmount(k, bracket)
	if fault != nil {
		return &complaint{do: "Write the bracket as " + k.phrase() + " with its unit, or leave it out."}
	}
	half := b.half()
	low, high := b.unit.si(new(big.Rat).Sub(b.value, half)), b.unit.si(new(big.Rat).Add(b.value, half))
	if low.Cmp(high) > 0 {
		low, high = high, low
	}
	if x := a.si(); x.Cmp(low) >= 0 && x.Cmp(high) <= 0 {
		return nil
	}
	return &complaint{
		wanted: "a bracket that says the same " + k.String() + " within its figures",
		do:     changeOne(a, b, strings.TrimSpace(main), strings.TrimSpace(bracket)),
	}
}

// changeOne shows both values where they are short enough to show.
func changeOne(a, b amount, main, bracket string) string {
	if len(main) > shownText || len(bracket) > shownText {
		return "Change one of the two."
	}
	is := ""
	if b.unit.factor != nil {
		is = " is " + b.unit.says(a.si())
	}
	return "Change one of the two: " + quote(main) + is + ", the bracket says " + quote(bracket) + "."
}

// half is how far a figure may be from what it stands for: half of its last
// place. Noughts at the end of a whole number may not count, so that 100 may
// stand for a rounding to tens or hundreds; but then it is no further off
// than a tenth.
func (n number) half() *big.Rat {
	half := new(big.Rat).Mul(n.place, big.NewRat(1, 2))
	if n.zeros == 0 || n.value.Sign() == 0 {
		return half
	}
	loose := new(big.Rat).Mul(half, tenTo(n.zeros))
	tenth := new(big.Rat).Mul(new(big.Rat).Abs(n.value), big.NewRat(1, 10))
	if loose.Cmp(tenth) > 0 {
		return tenth
	}
	return loose
}

// says is an SI value as a plain figure of the unit.
func (d *Definition) says(si *big.Rat) string {
	x := new(big.Rat).Quo(si, d.factor)
	f, _ := x.Sub(x, d.offset).Float64()
	return Short(f) + " " + d.Spellings[0]
}
