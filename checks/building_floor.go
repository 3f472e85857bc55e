package checks

import (
	"math"

	"dustbook/plan/shop"
)

// straight is how far two places lie apart as the crow flies, and roundCorners
// how far along two walls that stand square: nobody walks less than the first,
// and in an open room nobody has to walk more than the second.
func straight(a, b shop.Point) float64     { return math.Hypot(a.X-b.X, a.Y-b.Y) }
func roundCorners(a, b shop.Point) float64 { return math.Abs(a.X-b.X) + math.Abs(a.Y-b.Y) }

// fineness is how near a farthest distance is found, as a share of it.
const fineness = 1.0 / 2000

// farthest is how far the place of a floor that lies farthest from every one of
// some points lies from the nearest of them. Corners are exact; inside, squares
// are cut into quarters as long as they can hold a place that lies farther.
func farthest(r *shop.Room, points []shop.Point, far func(a, b shop.Point) float64) float64 {
	near := func(p shop.Point) float64 {
		least := math.Inf(1)
		for _, q := range points {
			least = math.Min(least, far(p, q))
		}
		return least
	}
	low, high, best := r.Outline[0], r.Outline[0], 0.0
	for _, p := range r.Outline {
		low = shop.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
		high = shop.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
		best = math.Max(best, near(p))
	}
	type box struct {
		middle     shop.Point
		wide, deep float64 // from the middle to the sides
	}
	left := []box{{shop.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}, (high.X - low.X) / 2, (high.Y - low.Y) / 2}}
	for len(left) > 0 {
		b := left[len(left)-1]
		left = left[:len(left)-1]
		here, inside := near(b.middle), r.Holds(b.middle)
		if inside {
			best = math.Max(best, here)
		}
		reach := b.wide + b.deep
		if here+reach <= best*(1+fineness) || !inside && toOutline(r, b.middle) > math.Hypot(b.wide, b.deep) {
			continue
		}
		for _, dx := range []float64{-1, 1} {
			for _, dy := range []float64{-1, 1} {
				left = append(left, box{shop.Point{X: b.middle.X + dx*b.wide/2, Y: b.middle.Y + dy*b.deep/2}, b.wide / 2, b.deep / 2})
			}
		}
	}
	return best
}

// toOutline is how far a place lies from the outline of a room.
func toOutline(r *shop.Room, p shop.Point) float64 {
	least := math.Inf(1)
	for i, a := range r.Outline {
		b := r.Outline[(i+1)%len(r.Outline)]
		along := ((p.X-a.X)*(b.X-a.X) + (p.Y-a.Y)*(b.Y-a.Y)) / math.Max(math.Pow(straight(a, b), 2), math.SmallestNonzeroFloat64)
		along = math.Min(1, math.Max(0, along))
		least = math.Min(least, straight(p, shop.Point{X: a.X + (b.X-a.X)*along, Y: a.Y + (b.Y-a.Y)*along}))
	}
	return least
}
