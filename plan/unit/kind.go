package unit

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
)

// Kind names a quantity: what a field of the shop file wants.
type Kind uint8

// One kind for each type of quantity. The zero Kind is no quantity.
const (
	KindLength Kind = iota + 1
	KindArea
	KindVolume
	KindFlow
	KindVelocity
	KindPressure
	KindDensity
	KindViscosity
	KindTemperature
	KindPower
	KindCurrent
	KindVoltage
	KindResistance
	KindTime
	KindAngle
	KindSound
	KindInertia
	KindWire
)

// kindRow is what the data say of a kind: its name, the name with its
// article, and two examples, each a number and a unit.
type kindRow struct {
	name, phrase string
	examples     [2]string
}

//go:embed kinds.csv
var kindsData []byte

// kindRows are the rows of the kinds, in the order of their constants; the
// first is that of no kind.
var kindRows = mustKinds(kindsData)

func mustKinds(data []byte) []kindRow {
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(records) != int(KindWire)+2 {
		panic(fmt.Sprintf("unit: kinds.csv: %d rows, %v", len(records), err))
	}
	var list []kindRow
	for _, r := range records[1:] {
		list = append(list, kindRow{r[0], r[1], [2]string{r[2], r[3]}})
	}
	return list
}

// row is the row of a kind.
func (k Kind) row() kindRow {
	if int(k) >= len(kindRows) {
		k = 0
	}
	return kindRows[k]
}

// Kinds lists every kind, in the order of their constants.
func Kinds() []Kind {
	kinds := make([]Kind, 0, len(kindRows)-1)
	for k := KindLength; int(k) < len(kindRows); k++ {
		kinds = append(kinds, k)
	}
	return kinds
}

// String is the kind's name in plain words: "length", "air flow".
func (k Kind) String() string { return k.row().name }

// Example is two quantities of the kind, as a message shows them:
// "4 in" or "100 mm", quotes included.
func (k Kind) Example() string {
	e := k.examples()
	return fmt.Sprintf(`"%s" or "%s"`, e[0], e[1])
}

func (k Kind) examples() [2]string { return k.row().examples }

// phrase is the name with its article: "an air flow".
func (k Kind) phrase() string { return k.row().phrase }

// Kind of a length.
func (Length) Kind() Kind { return KindLength }

// Kind of an area.
func (Area) Kind() Kind { return KindArea }

// Kind of a volume.
func (Volume) Kind() Kind { return KindVolume }

// Kind of an air flow.
func (Flow) Kind() Kind { return KindFlow }

// Kind of a velocity.
func (Velocity) Kind() Kind { return KindVelocity }

// Kind of a pressure.
func (Pressure) Kind() Kind { return KindPressure }

// Kind of a density.
func (Density) Kind() Kind { return KindDensity }

// Kind of a viscosity.
func (Viscosity) Kind() Kind { return KindViscosity }

// Kind of a temperature.
func (Temperature) Kind() Kind { return KindTemperature }

// Kind of a power.
func (Power) Kind() Kind { return KindPower }

// Kind of a current.
func (Current) Kind() Kind { return KindCurrent }

// Kind of a voltage.
func (Voltage) Kind() Kind { return KindVoltage }

// Kind of a resistance.
func (Resistance) Kind() Kind { return KindResistance }

// Kind of a time.
func (Time) Kind() Kind { return KindTime }

// Kind of an angle.
func (Angle) Kind() Kind { return KindAngle }

// Kind of a sound level.
func (Sound) Kind() Kind { return KindSound }

// Kind of a moment of inertia.
func (Inertia) Kind() Kind { return KindInertia }

// Kind of a conductor size.
func (Wire) Kind() Kind { return KindWire }
