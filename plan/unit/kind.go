package unit

import "fmt"

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

// kindWords are what messages say about a kind: its name, the name with its
// article, and two examples, each a number and a unit.
var kindWords = [...]struct {
	name, a  string
	examples [2]string
}{
	{"quantity", "a quantity", [2]string{"4 in", "100 mm"}},
	KindLength:      {"length", "a length", [2]string{"4 in", "100 mm"}},
	KindArea:        {"area", "an area", [2]string{"260 sq ft", "24 m2"}},
	KindVolume:      {"volume", "a volume", [2]string{"55 gal", "200 L"}},
	KindFlow:        {"air flow", "an air flow", [2]string{"350 cfm", "820 m3/h"}},
	KindVelocity:    {"velocity", "a velocity", [2]string{"4000 fpm", "20 m/s"}},
	KindPressure:    {"pressure", "a pressure", [2]string{"2.5 inwg", "600 Pa"}},
	KindDensity:     {"density", "a density", [2]string{"0.075 lb/ft3", "1.2 kg/m3"}},
	KindViscosity:   {"viscosity", "a viscosity", [2]string{"1.8e-5 Pa s", "0.018 cP"}},
	KindTemperature: {"temperature", "a temperature", [2]string{"65 F", "18 C"}},
	KindPower:       {"power", "a power", [2]string{"3 hp", "2.2 kW"}},
	KindCurrent:     {"current", "a current", [2]string{"17 A", "40 mA"}},
	KindVoltage:     {"voltage", "a voltage", [2]string{"230 V", "24 V"}},
	KindResistance:  {"resistance", "a resistance", [2]string{"3 ohm", "1 kohm"}},
	KindTime:        {"time", "a time", [2]string{"4 s", "14 min"}},
	KindAngle:       {"angle", "an angle", [2]string{"45 deg", "45°"}},
	KindSound:       {"sound level", "a sound level", [2]string{"92 dBA", "92 dB(A)"}},
	KindInertia:     {"moment of inertia", "a moment of inertia", [2]string{"4 lb ft2", "0.17 kg m2"}},
	KindWire:        {"conductor size", "a conductor size", [2]string{"18 AWG", "0.75 mm2"}},
}

// Kinds lists every kind, in the order of their constants.
func Kinds() []Kind {
	kinds := make([]Kind, 0, len(kindWords)-1)
	for k := KindLength; int(k) < len(kindWords); k++ {
		kinds = append(kinds, k)
	}
	return kinds
}

// String is the kind's name in plain words: "length", "air flow".
func (k Kind) String() string {
	if int(k) >= len(kindWords) {
		k = 0
	}
	return kindWords[k].name
}

// Example is two quantities of the kind, as a message shows them:
// "4 in" or "100 mm", quotes included.
func (k Kind) Example() string {
	e := k.examples()
	return fmt.Sprintf(`"%s" or "%s"`, e[0], e[1])
}

func (k Kind) examples() [2]string {
	if int(k) >= len(kindWords) {
		k = 0
	}
	return kindWords[k].examples
}

// phrase is the name with its article: "an air flow".
func (k Kind) phrase() string {
	if int(k) >= len(kindWords) {
		k = 0
	}
	return kindWords[k].a
}

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
