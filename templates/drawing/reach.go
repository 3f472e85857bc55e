package drawing

import "dustbook/plan/shop"

// ductsOf are the ducts of a collector's tree, in file order.
func ductsOf(s *shop.Shop, c *shop.Collector) []*shop.Duct {
	var list []*shop.Duct
	for _, d := range s.Ducts {
		if d.Collector == c {
			list = append(list, d)
		}
	}
	return list
}

// holdsAny reports whether a point of a collector's routes lies over a room.
func holdsAny(r *shop.Room, s *shop.Shop, c *shop.Collector) bool {
	const finely = 10000 // spots are tenths of a millimetre here
	var o path
	for _, p := range r.Outline {
		o = append(o, spot{tenths(p.X * finely / 10), tenths(p.Y * finely / 10)})
	}
	if len(o) < 3 {
		return false
	}
	for _, at := range spotsOf(s, c) {
		if inside(o, spot{tenths(at.X * finely / 10), tenths(at.Y * finely / 10)}) {
			return true
		}
	}
	return false
}

// spotsOf are the points of a collector's routes, and where it stands.
func spotsOf(s *shop.Shop, c *shop.Collector) []shop.Spot {
	var list []shop.Spot
	for _, d := range ductsOf(s, c) {
		list = append(list, d.Route...)
	}
	if c.Place.Known() && len(list) > 0 {
		list = append(list, shop.Spot{X: c.Place.V.X, Y: c.Place.V.Y})
	}
	return list
}
