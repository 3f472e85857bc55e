package unit

// SixOf is Six for a quantity.
func SixOf[Q ~float64](x Q) Q { return Q(Six(float64(x))) }

// Percent is a share of one in whole percent, without the sign; one that falls
// short of all is never printed as all of it.
func Percent(share float64) string {
	if whole := Fixed(100*share, 0); whole != "100" || share >= 1 {
		return whole
	}
	return Fixed(100*share, 1)
}
