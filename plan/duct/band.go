package duct

import (
	_ "embed"
	"math"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed proof.csv
var proofData []byte

var proofRows = source.MustRows("proof.csv", proofData, "figure", "value", "unit", "about")

// ProofRows are the figures of commissioning, for the page of sources.
func ProofRows() []source.Row { return proofRows }

// ProofFigure is a figure of commissioning by its name, with where it stands.
// A share is in per cent, a length in bores. A name that the data does not
// have is a fault of the program.
func ProofFigure(name string) (float64, source.Basis) {
	for _, r := range proofRows {
		if r.Text("figure") == name {
			return r.Number("value"), r.Basis
		}
	}
	panic("duct: proof.csv has no row " + name)
}

// Band is where a measured value is expected: between two values in SI units,
// which are alike where one value is expected.
type Band struct{ Low, High float64 }

// Add widens the band to hold another value.
func (b Band) Add(x float64) Band { return Band{math.Min(b.Low, x), math.Max(b.High, x)} }

// Off is how far a value lies above the band, below nought under it, and
// nought within it.
func (b Band) Off(x float64) float64 {
	switch {
	case unit.Compare(x, b.High) > 0:
		return unit.Six(x - b.High)
	case unit.Compare(x, b.Low) < 0:
		return unit.Six(x - b.Low)
	}
	return 0
}

// Share is Off as a share of the end of the band it is reckoned from. It is
// infinite where that end is nought.
func (b Band) Share(x float64) float64 {
	off := b.Off(x)
	switch {
	case off > 0:
		return unit.Six(off / math.Abs(b.High))
	case off < 0:
		return unit.Six(off / math.Abs(b.Low))
	}
	return 0
}

// Agrees reports whether a value agrees with the band: within the share that
// the data of commissioning gives.
func (b Band) Agrees(x float64) bool {
	share, _ := ProofFigure("agree")
	return unit.AtLeast(share/100, math.Abs(b.Share(x)))
}

// Within is the band widened by the share within which a value agrees.
func (b Band) Within() Band {
	share, _ := ProofFigure("agree")
	wide := func(x, sign float64) float64 { return unit.Six(x + sign*math.Abs(x)*share/100) }
	return Band{wide(b.Low, -1), wide(b.High, 1)}
}
