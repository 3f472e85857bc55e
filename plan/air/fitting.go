package air

import (
	"dustbook/plan/source"
	"dustbook/plan/unit"
)

var (
	elbowShare = curveOf(elbowTable, "turn_deg", "share")
	entryLoss  = curveOf(entryTable, "angle_deg", "k")
)

// Elbow is the loss coefficient K of an elbow that turns by less or more than
// 90°, on the duct's own velocity pressure, from its 90° coefficient: the share
// tabled at 30, 45, 60 and 90°, straight between; below 30 in proportion down
// to nothing, past 90 in proportion on. Range: 0 to 180°. Source: text of a
// calculation sheet.
func Elbow(k90 float64, turn unit.Angle) float64 {
	x := float64(turn)
	if at, share := elbowShare.first(); x < at {
		return k90 * share * x / at
	}
	if at, share := elbowShare.last(); x > at {
		return k90 * share * x / at
	}
	return k90 * elbowShare.read(x)
}

// Entry is the loss coefficient K of a duct that enters another at an angle to
// its flow, on the entering duct's own velocity pressure: 0 straight on, 1 at a
// right angle, straight between the tabled angles. Range: 0 to 90°; an entry
// against the flow has no figure and is given that of 90°, which is too little.
// Source: ventilation manual, from memory.
func Entry(angle unit.Angle) float64 { return entryLoss.read(float64(angle)) }

// EntryBasis is where the coefficient of an entry at an angle comes from.
func EntryBasis() source.Basis { return entryTable.Rows[len(entryTable.Rows)-1].Basis }
