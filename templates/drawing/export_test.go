package drawing

// TextWidth is the room a text takes at a size, both in units, without the
// slack, for tests outside the package.
func TextWidth(text string, bold bool, size float64) float64 {
	sum := 0
	for _, r := range text {
		sum += signWidth(r, bold)
	}
	return float64(sum) * size / 1000
}
