package circuit

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Terminals is the column of the ampacity table that terminals stand for.
type Terminals unit.Temperature

// The columns of the table that a circuit may use: conductors of 90 °C ending
// on terminals of 75 count as 75.
var (
	Cool = Terminals(unit.Must[unit.Temperature]("60 C"))
	Warm = Terminals(unit.Must[unit.Temperature]("75 C"))
)

// Rated is the column for terminals of a rating; false below the first.
func Rated(t unit.Temperature) (Terminals, bool) {
	switch {
	case unit.AtLeast(float64(t), float64(Warm)):
		return Warm, true
	case unit.AtLeast(float64(t), float64(Cool)):
		return Cool, true
	}
	return 0, false
}

// Unrated is the column for terminals that do not say what they are rated,
// with the current that the conductors have to carry.
func Unrated(carry unit.Current) Terminals {
	most := unit.Must[unit.Current](figureTable.Measure("terminals up to"))
	if unit.Compare(float64(carry), float64(most)) <= 0 {
		return Cool
	}
	return Warm
}

// Carries is what a copper conductor may carry.
type Carries struct {
	Current unit.Current
	Basis   source.Basis
}

// Ambient is the factor of conductors of 75 °C in air of a temperature; air
// cooler than that of the table gives no more. Hotter air than the table
// knows is told, with its last factor: the conductor carries less than that.
func Ambient(t unit.Temperature) (factor float64, told bool) {
	for _, r := range ambientTable.Rows {
		factor = r.Number("value")
		if unit.AtLeast(float64(cell[unit.Temperature](r, "up_to")), float64(t)) {
			return factor, true
		}
	}
	return factor, false
}

// Ampacity is what a conductor may carry on terminals, in air with a factor:
// no more than its column says at 30 °C, and no more than the column of 75 °C
// says times the factor. A gauge between two of the table counts as the
// thinner one; false where it is thinner than the first, or no gauge.
func Ampacity(w unit.Wire, on Terminals, factor float64) (Carries, bool) {
	if _, ok := w.Number(); !ok {
		return Carries{}, false
	}
	best, found := Carries{}, false
	for _, r := range ampacityTable.Rows {
		size := cell[unit.Wire](r, "size")
		if unit.Compare(float64(size), float64(w)) > 0 {
			continue
		}
		if at := Terminals(cell[unit.Temperature](r, "terminals")); at == on {
			best, found = Carries{min(value[unit.Current](r), derated(size, factor)), r.Basis}, true
		}
	}
	return best, found
}

// derated is what a size of the table carries in warm air.
func derated(size unit.Wire, factor float64) unit.Current {
	for _, r := range ampacityTable.Rows {
		if cell[unit.Wire](r, "size") == size && Terminals(cell[unit.Temperature](r, "terminals")) == Warm {
			return unit.SixOf(unit.Current(factor * float64(value[unit.Current](r))))
		}
	}
	return 0
}

// Least is the thinnest conductor of the table that carries a current on
// terminals, in air with a factor; false where none does.
func Least(carry unit.Current, on Terminals, factor float64) (w unit.Wire, basis source.Basis, ok bool) {
	for _, r := range ampacityTable.Rows {
		size := cell[unit.Wire](r, "size")
		if c, _ := Ampacity(size, on, factor); unit.AtLeast(float64(c.Current), float64(carry)) {
			return size, c.Basis, true
		}
	}
	return 0, source.Basis{}, false
}

// Small is the largest breaker that protects a conductor by itself, where no
// overload does: what it carries, and no more than the limit of the small
// conductors.
func Small(w unit.Wire, c Carries) unit.Current {
	for _, r := range smallTable.Rows {
		if unit.Compare(float64(cell[unit.Wire](r, "size")), float64(w)) >= 0 {
			return min(value[unit.Current](r), c.Current)
		}
	}
	return c.Current
}
