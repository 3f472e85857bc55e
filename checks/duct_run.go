package checks

import (
	"math"
	"slices"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// levelSlope is the sine of the steepest slope that counts as level.
var levelSlope = math.Sin(float64(unit.Must[unit.Angle](figure("level run").Text("value"))) * math.Pi / 180)

// levelRun is a piece of a duct that runs level, from its upstream end.
type levelRun struct{ from, to unit.Length }

// levelRuns are the level pieces of a duct's route; a duct without a route may be
// level all along.
func levelRuns(d *shop.Duct) []levelRun {
	if len(d.Route) < 2 {
		return []levelRun{{0, d.Length}}
	}
	var list []levelRun
	walked := 0.0
	for i := 1; i < len(d.Route); i++ {
		a, b := d.Route[i-1], d.Route[i]
		length := math.Sqrt((b.X-a.X)*(b.X-a.X) + (b.Y-a.Y)*(b.Y-a.Y) + (b.Z-a.Z)*(b.Z-a.Z))
		from := walked
		walked += length
		if unit.AtLeast(math.Abs(b.Z-a.Z), levelSlope*length) {
			continue
		}
		if n := len(list); n > 0 && list[n-1].to == unit.Length(from) {
			list[n-1].to = unit.Length(walked)
			continue
		}
		list = append(list, levelRun{unit.Length(from), unit.Length(walked)})
	}
	return list
}

// longestLevel is the longest level piece of a duct by itself.
func longestLevel(d *shop.Duct) unit.Length {
	var most unit.Length
	for _, r := range levelRuns(d) {
		most = max(most, r.to-r.from)
	}
	return most
}

// withoutCleanOut is the longest way that ends on a duct, level and without a
// clean-out, counted through the ducts that end where it begins; end is what of that
// still stands where the duct ends.
func withoutCleanOut(d *shop.Duct, cleanOuts func(*shop.Duct) []unit.Length) (most, end unit.Length) {
	var before unit.Length
	for _, other := range d.Joined {
		if other.JoinNode == 0 {
			_, tail := withoutCleanOut(other, cleanOuts)
			before = max(before, tail)
		}
	}
	for _, r := range levelRuns(d) {
		way := unit.Length(0)
		if r.from == 0 {
			way = before
		}
		last := r.from
		for _, at := range slices.Sorted(slices.Values(cleanOuts(d))) {
			if at < last || at > r.to {
				continue
			}
			if at > 0 { // one where the duct begins ends the way before it
				most = max(most, way+at-last)
			}
			way, last = 0, at
		}
		way += r.to - last
		most = max(most, way)
		if end = 0; unit.AtLeast(float64(r.to), float64(d.Length)) {
			end = way
		}
	}
	return most, end
}

// noCleanOuts leaves every clean-out out of account.
func noCleanOuts(*shop.Duct) []unit.Length { return nil }
