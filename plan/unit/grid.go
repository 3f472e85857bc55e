package unit

import (
	"math"
	"strconv"
	"strings"
)

// Grid rounds to the place of the sixth digit of a size. Figures rounded by
// one grid add up as they stand: a sum of them, printed with six digits, is
// the sum of what is printed. Where the size is zero or unknown everything
// rounds to zero.
func Grid(size float64) func(x float64) float64 {
	if size == 0 || math.IsNaN(size) || math.IsInf(size, 0) {
		return func(float64) float64 { return 0 }
	}
	// the place comes from the printed form: a logarithm may fall on either
	// side of a power of ten
	_, exponent, _ := strings.Cut(strconv.FormatFloat(size, 'e', sixDigits-1, 64), "e")
	power, _ := strconv.Atoi(exponent)
	decimals := sixDigits - 1 - power
	return func(x float64) float64 {
		if decimals < 0 {
			step, _ := strconv.ParseFloat("1e"+strconv.Itoa(-decimals), 64)
			return Six(math.Round(x/step)) * step
		}
		y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'f', decimals, 64), 64)
		if err != nil || y == 0 {
			return 0 // never minus zero
		}
		return y
	}
}
