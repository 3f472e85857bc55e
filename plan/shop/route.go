package shop

import (
	"math"

	"dustbook/plan/unit"
)

// The rules of routes, from factor.csv.
var (
	leastElbow = factor("least elbow").Number("value") // degrees
	riserSlope = math.Sin(factor("riser slope").Number("value") * math.Pi / 180)
	leastRiser = factor("least riser").Number("value") / 1000
	samePlace  = factor("same place").Number("value") / 1000
)

// distance between two spots, in metres.
func distance(a, b Spot) float64 {
	return math.Sqrt((b.X-a.X)*(b.X-a.X) + (b.Y-a.Y)*(b.Y-a.Y) + (b.Z-a.Z)*(b.Z-a.Z))
}

// between is the spot a share of the way from one to another.
func between(a, b Spot, share float64) Spot {
	return Spot{a.X + share*(b.X-a.X), a.Y + share*(b.Y-a.Y), a.Z + share*(b.Z-a.Z)}
}

// Turned is the angle between two directions, each from one spot to another,
// in degrees.
func Turned(a, b, c, d Spot) unit.Angle {
	la, lb := distance(a, b), distance(c, d)
	if la == 0 || lb == 0 {
		return 0
	}
	dot := (b.X-a.X)*(d.X-c.X) + (b.Y-a.Y)*(d.Y-c.Y) + (b.Z-a.Z)*(d.Z-c.Z)
	cos := math.Max(-1, math.Min(1, dot/(la*lb)))
	return unit.Angle(unit.Six(math.Acos(cos) * 180 / math.Pi))
}

// IsElbow reports whether a turn is as much as the least elbow.
func IsElbow(turn unit.Angle) bool { return unit.AtLeast(float64(turn), leastElbow) }

// measureRoute is the length of a route and its elbows: turns of less than
// the least elbow are none.
func measureRoute(route []Spot) (unit.Length, []Turn) {
	length := 0.0
	var turns []Turn
	for i := 1; i < len(route); i++ {
		length += distance(route[i-1], route[i])
		if i+1 < len(route) {
			if angle := Turned(route[i-1], route[i], route[i], route[i+1]); IsElbow(angle) {
				turns = append(turns, Turn{Angle: angle, At: unit.Length(length)})
			}
		}
	}
	return unit.Length(length), turns
}

// nearestOn finds the place on a route nearest to a spot: how far off it is
// and how far along, in metres. Of places equally near, the first counts.
func nearestOn(route []Spot, spot Spot) (off, along float64) {
	off = math.Inf(1)
	walked := 0.0
	for i := 1; i < len(route); i++ {
		a, b := route[i-1], route[i]
		l := distance(a, b)
		share := ((spot.X-a.X)*(b.X-a.X) + (spot.Y-a.Y)*(b.Y-a.Y) + (spot.Z-a.Z)*(b.Z-a.Z)) / (l * l)
		share = math.Max(0, math.Min(1, share))
		if d := distance(between(a, b, share), spot); d < off-1e-9 {
			off, along = d, walked+share*l
		}
		walked += l
	}
	return off, along
}

// runAt is the run of a route that a place lies on, as the index of the run's
// end; at a corner, the run that goes on from there.
func runAt(route []Spot, at unit.Length) int {
	walked := 0.0
	for i := 1; i < len(route)-1; i++ {
		walked += distance(route[i-1], route[i])
		if float64(at) < walked-samePlace {
			return i
		}
	}
	return len(route) - 1
}

// Along is the spot at a distance from the upstream end of a route.
func Along(route []Spot, at unit.Length) Spot {
	left := float64(at)
	for i := 1; i < len(route); i++ {
		l := distance(route[i-1], route[i])
		if left <= l || i == len(route)-1 {
			return between(route[i-1], route[i], math.Max(0, math.Min(1, left/l)))
		}
		left -= l
	}
	return Spot{}
}

// Part is the piece of a route between two distances from its upstream end.
func Part(route []Spot, from, to unit.Length) []Spot {
	part := []Spot{Along(route, from)}
	walked := 0.0
	for i := 1; i < len(route); i++ {
		walked += distance(route[i-1], route[i])
		if walked > float64(from)+1e-9 && walked < float64(to)-1e-9 {
			part = append(part, route[i])
		}
	}
	return append(part, Along(route, to))
}

// rises reports whether a piece of route has a run that goes up steeply and
// far enough to be a riser.
func rises(part []Spot) bool {
	for i := 1; i < len(part); i++ {
		up := part[i].Z - part[i-1].Z
		if unit.AtLeast(up, leastRiser) && unit.AtLeast(up, riserSlope*distance(part[i-1], part[i])) {
			return true
		}
	}
	return false
}
