package unit

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// sixDigits is the count of significant digits that decide.
const sixDigits = 6

// none is printed for a value that is not a number.
const none = "—"

// Six rounds to six significant digits. It is the one rounding: whatever is
// printed, compared or ranked goes through it, so that every machine prints
// and ranks the same. -0 becomes 0; NaN and infinities stay.
func Six(x float64) float64 {
	if x == 0 {
		return 0
	}
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', sixDigits-1, 64), 64)
	return y
}

// Compare orders two numbers after Six: -1, 0 or 1. NaN comes first.
func Compare(a, b float64) int { return cmp.Compare(Six(a), Six(b)) }

// AtLeast reports whether a reaches b after Six. NaN reaches nothing.
func AtLeast(a, b float64) bool { return Six(a) >= Six(b) }

// Short is the shortest form of six significant digits, a number of JSON:
// 2310, 0.19, 1.8e-5. What is not a number is null.
func Short(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "null"
	}
	x = Six(x)
	if size := math.Abs(x); size != 0 && (size < 1e-4 || size >= 1e21) {
		mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(x, 'e', -1, 64), "e")
		sign := strings.TrimLeft(exponent[:1], "+")
		return mantissa + "e" + sign + strings.TrimLeft(exponent[1:], "0")
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// Fixed prints with a count of decimals, after Six. A half rounds away from
// nought, as by hand. What is not a number is a dash.
func Fixed(x float64, decimals int) string {
	return printed(x, sixDigits, format{decimals: decimals})
}

// Significant prints with a count of significant digits in plain notation,
// after Six: 1037.2 with three is 1040, 12.04 is 12.0.
func Significant(x float64, digits int) string {
	return printed(x, sixDigits, format{digits: max(digits, 1), decimals: maxDecimals})
}

// maxDecimals stands for no limit on the decimals.
const maxDecimals = 400

// format says how a number is printed: at most this many significant digits
// (0: no limit) and at most this many decimals; trim leaves out noughts at
// the end of the decimals.
type format struct {
	digits, decimals int
	trim             bool
}

// printed prints a number rounded first to the digits that decide, then as
// the format says.
func printed(x float64, deciding int, f format) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return none
	}
	n := f.rounded(x, deciding)
	return n.print(f.decimalsOf(n), f.trim)
}

// rounded is a finite number as the format prints it, rounded first to the
// digits that decide.
func (f format) rounded(x float64, deciding int) figures {
	n := figuresOf(x, deciding)
	if f.digits > 0 {
		n = n.round(min(f.decimals, f.digits-n.size()))
	}
	return n.round(f.decimalsOf(n))
}

// decimalsOf is how many decimals a rounded number may have.
func (f format) decimalsOf(n figures) int {
	if f.digits > 0 {
		return max(0, min(f.decimals, f.digits-n.size()))
	}
	return max(0, f.decimals)
}
