// Package air knows how air behaves in ducts: its density and viscosity, what
// a straight run, a fitting, a size change, a junction, a hood and an opening
// cost, and the trade's rounded hand formulas that stand beside the exact ones.
//
// It knows no duct tree, no fan curve and no shop. Every function is pure: SI
// quantities in, SI quantities out. Loss coefficients are plain numbers; each
// says on whose velocity pressure it stands. Losses come out positive for flow
// in the positive direction. A size must be greater than zero: the caller sees
// to that, and nothing here panics on a number.
//
// The flow is steady and incompressible. Figures come from the data tables
// beside the code; Tables lists them with their sources.
package air
