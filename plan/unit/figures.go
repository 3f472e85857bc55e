package unit

import (
	"strconv"
	"strings"
)

// figures is a decimal number: 0.figs × 10^point. No figures are nought.
// Rounding it is done on the figures, so that it is the same everywhere.
type figures struct {
	negative bool
	figs     string // without noughts at either end
	point    int
}

// figuresOf takes the given count of significant digits of a finite number.
func figuresOf(x float64, digits int) figures {
	text := strconv.FormatFloat(x, 'e', digits-1, 64)
	text, negative := strings.CutPrefix(text, "-")
	mantissa, exponent, _ := strings.Cut(text, "e")
	power, _ := strconv.Atoi(exponent)
	return figures{negative, strings.Replace(mantissa, ".", "", 1), power + 1}.tidy()
}

// tidy leaves out noughts at either end; nought has no sign.
func (n figures) tidy() figures {
	short := strings.TrimLeft(n.figs, "0")
	n.point -= len(n.figs) - len(short)
	n.figs = strings.TrimRight(short, "0")
	if n.figs == "" {
		return figures{}
	}
	return n
}

// size is the count of digits before the point: 4 for 1037.2, 0 for 0.305,
// -1 for 0.0305, and 1 for nought.
func (n figures) size() int {
	if n.figs == "" {
		return 1
	}
	return n.point
}

// round keeps this many decimals; fewer than none rounds to tens, hundreds.
func (n figures) round(decimals int) figures {
	keep := n.point + decimals
	if n.figs == "" || keep >= len(n.figs) {
		return n
	}
	if keep < 0 {
		return figures{}
	}
	up := n.figs[keep] >= '5'
	kept := []byte("0" + n.figs[:keep])
	for i := len(kept) - 1; up && i >= 0; i-- {
		if kept[i]++; kept[i] <= '9' {
			break
		}
		kept[i] = '0'
	}
	return figures{n.negative, string(kept), n.point + 1}.tidy()
}

// print writes the number with this many decimals, or with as many of them
// as say something.
func (n figures) print(decimals int, trim bool) string {
	figs, point := n.figs, n.point
	if point < 0 {
		figs, point = strings.Repeat("0", -point)+figs, 0
	}
	if len(figs) < point {
		figs += strings.Repeat("0", point-len(figs))
	}
	whole, part := figs[:point], figs[point:]
	if whole == "" {
		whole = "0"
	}
	if !trim && len(part) < decimals {
		part += strings.Repeat("0", decimals-len(part))
	}
	if part != "" {
		whole += "." + part
	}
	if n.negative {
		return "-" + whole
	}
	return whole
}
