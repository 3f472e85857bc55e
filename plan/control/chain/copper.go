package chain

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

// Conductor is a size of conductor that chains are made of.
type Conductor struct {
	Size   string // as a person writes it: "18 AWG"
	Area   unit.Wire
	Metric bool

	perMetre float64      // ohm a metre at 20 °C
	basis    source.Basis // of perMetre
}

// conductors are the gauges of pull.csv from the thinnest, then the sizes of
// metric.csv from the thinnest. Those are flexible conductors, which have more
// resistance than solid ones of their size.
var conductors = loadConductors()

func loadConductors() []Conductor {
	var list []Conductor
	for _, r := range pullTable.Rows {
		area := unit.Must[unit.Wire](r.Text("size"))
		list = append(list, Conductor{r.Text("size"), area, false, figures.resistivity / float64(area), copper})
	}
	for _, r := range metricTable.Rows {
		list = append(list, Conductor{r.Text("size"), unit.Must[unit.Wire](r.Text("size")), true, r.Number("value") / kilometre, r.Basis})
	}
	return list
}

// copper is where the resistance of a gauge comes from: worked out from its
// formula.
var copper = source.Basis{Document: "astm-b258", Mark: source.Computed}

// Force is in newtons, with the same in pounds-force as its source prints it.
type Force struct {
	Newtons float64
	Pounds  string // "20 lbf"
}

// PerMetre is the resistance of one conductor, ohm a metre, at a temperature,
// and where it comes from. A metric size has the greatest resistance that the
// standard allows a flexible conductor of it; a metric size between two rows
// has that of the next thinner row, in proportion to the areas; any other area
// is solid copper.
//
//	R(T) = R20 (1 + 0.00393 (T − 20))
func PerMetre(area unit.Wire, at unit.Temperature) (ohms float64, basis source.Basis) {
	ohms, basis = atReference(area)
	return ohms * warm(at), basis
}

// warm is the factor of a temperature.
func warm(at unit.Temperature) float64 {
	return 1 + figures.coefficient*float64(at-figures.reference)
}

func atReference(area unit.Wire) (float64, source.Basis) {
	if _, gauge := area.Number(); gauge {
		return figures.resistivity / float64(area), copper
	}
	var under *Conductor
	for i, c := range conductors {
		if c.Metric && unit.AtLeast(float64(area), float64(c.Area)) {
			under = &conductors[i]
		}
	}
	if under == nil {
		return figures.resistivity / float64(area), copper
	}
	return under.perMetre * float64(under.Area) / float64(area), under.basis
}

// Loop is the resistance of a run of cable out and back with its contacts.
func Loop(area unit.Wire, at unit.Temperature, length unit.Length) unit.Resistance {
	ohms, _ := PerMetre(area, at)
	return unit.Resistance(figures.conductors*ohms*float64(length)) + Contacts()
}

// ContactsOfRun is how many contacts a run of cable has; common practice, no
// source.
func ContactsOfRun() int { return int(figures.contacts) }

// Contacts is the resistance of the contacts of one run.
func Contacts() unit.Resistance { return unit.Resistance(figures.contacts) * figures.contact }

// Larger are the conductors that are thicker than an area, of the same series,
// the next one first.
func Larger(area unit.Wire) []Conductor {
	_, gauge := area.Number()
	var list []Conductor
	for _, c := range conductors {
		if c.Metric == !gauge && unit.Compare(float64(c.Area), float64(area)) > 0 {
			list = append(list, c)
		}
	}
	return list
}

// Carries is the current that a conductor carries: that of the thickest row
// which is no thicker. Not known for what is thinner than all of them.
func Carries(area unit.Wire) (amps unit.Current, basis source.Basis, known bool) {
	r, known := thickest(ampacityTable, area)
	if !known {
		return 0, source.Basis{}, false
	}
	return unit.Must[unit.Current](r.Measure()), r.Basis, true
}

// Pull is the force that a crimp on a conductor has to stand: that of the
// thickest row which is no thicker.
func Pull(area unit.Wire) (force Force, basis source.Basis, known bool) {
	r, known := thickest(pullTable, area)
	if !known {
		return Force{}, source.Basis{}, false
	}
	return Force{r.Number("value"), r.Text("pounds")}, r.Basis, true
}

// thickest is the row of the thickest size that is no thicker than an area.
func thickest(table source.Table, area unit.Wire) (found source.Row, known bool) {
	under := unit.Wire(0)
	for _, r := range table.Rows {
		if size := unit.Must[unit.Wire](r.Text("size")); size > under && unit.AtLeast(float64(area), float64(size)) {
			found, under, known = r, size, true
		}
	}
	return found, known
}
