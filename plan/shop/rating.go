package shop

import (
	"embed"
	"math"

	"dustbook/plan/source"
	"dustbook/plan/unit"
)

//go:embed motor.csv
var motorFiles embed.FS

var motorTable = source.MustTable(motorFiles, "shop", "motor", "name", "value", "unit", "about")

// MotorTable is what the tables of motors are read by, for a page of sources.
func MotorTable() source.Table { return motorTable }

// SameRating reports whether a motor's power counts as that of a row of a
// table of motors: a rating in kilowatts stands for the nearest in
// horsepower. It is common practice, no source.
func SameRating(power, row unit.Power) bool {
	apart := math.Abs(float64(power-row)) / float64(row)
	return unit.Compare(apart, motorTable.Figure("rating apart")) <= 0
}
