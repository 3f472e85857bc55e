package drawing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// pipe is a duct as the plan shows it: seen from above.
type pipe struct {
	duct   *shop.Duct
	path   path // in flow order; one spot where the duct only rises or drops
	legs   []leg
	risers []riser
	width  int // tenths, between the edges
	pieces []stretchPiece
}

// leg is one straight run of the route.
type leg struct {
	from, to   spot
	low, high  float64 // heights of its two ends, in metres
	start      float64 // metres from the duct's upstream end
	length     float64 // metres
	planStart  int     // tenths along the path
	planLength int
}

// stretchPiece is the part of the path that a stretch takes.
type stretchPiece struct {
	stretch  *shop.Stretch
	from, to int // tenths along the path
}

// riser is a run straight up or down, a point in plan.
type riser struct {
	at     spot
	up     bool // in the direction of the air
	radius int
}

// The least rise that is marked, in metres, and how far a run may lean and
// still be a point in plan, in tenths.
const (
	leastRise = 0.15
	lean      = 25
)

// The widths ducts are drawn with, in units: the narrowest at least this,
// the widest no more than that unless it is so to scale.
const (
	narrowPipe = 5.5
	widePipe   = 22
	edge       = 14 // tenths: weight of a duct's edge
	openEdge   = 20 // the same on the open way
)

// widening is by how much ducts are drawn wider than to scale.
func widening(s *shop.Shop, k scale) float64 {
	least, most := 0.0, 0.0
	for _, d := range s.Ducts {
		if w := float64(bore(d)); len(d.Route) > 0 {
			if least == 0 || w < least {
				least = w
			}
			most = max(most, w)
		}
	}
	if least == 0 {
		return 1
	}
	factor := max(1, min(narrowPipe/(least*k.units), max(1, widePipe/(most*k.units))))
	return float64(tenths(factor)) / 10
}

// unchosen stands in for the bore of a duct whose size is to be chosen.
const unchosen = unit.Length(0.125)

func bore(d *shop.Duct) unit.Length {
	switch {
	case d.Bore > 0:
		return d.Bore
	case d.Size > 0:
		return d.Size
	}
	return unchosen
}

// newPipe lays a duct with a route on the drawing.
func newPipe(d *shop.Duct, k scale, wider float64) *pipe {
	p := &pipe{duct: d, width: max(k.long(float64(bore(d))*wider), 45)}
	var spots []spot
	start, plan := 0.0, 0
	for i := 1; i < len(d.Route); i++ {
		a, b := d.Route[i-1], d.Route[i]
		v := leg{from: k.spot(a), to: k.spot(b), low: a.Z, high: b.Z, start: start, length: routeLength(a, b), planStart: plan}
		if v.planLength = span(v.from, v.to); v.planLength <= lean && math.Abs(b.Z-a.Z) > leastRise {
			v.to, v.planLength = v.from, 0
			if len(spots) > 0 {
				v.from, v.to = spots[len(spots)-1], spots[len(spots)-1]
			}
			p.rise(v.from, b.Z > a.Z)
		}
		if len(spots) == 0 {
			spots = append(spots, v.from)
		} else if v.from != spots[len(spots)-1] { // a run that leans was drawn as a point
			v.from = spots[len(spots)-1]
			v.planLength = span(v.from, v.to)
		}
		spots = append(spots, v.to)
		start, plan = start+v.length, plan+v.planLength
		p.legs = append(p.legs, v)
	}
	p.path = tidy(spots)
	for _, s := range d.Stretches {
		p.pieces = append(p.pieces, stretchPiece{stretch: s, from: p.planAt(s.From), to: p.planAt(s.To)})
	}
	return p
}

// rise marks a rise or drop; runs one above the other make one mark.
func (p *pipe) rise(at spot, up bool) {
	if n := len(p.risers); n > 0 && p.risers[n-1].at == at {
		p.risers[n-1].up = up
		return
	}
	p.risers = append(p.risers, riser{at: at, up: up, radius: max(p.width/2+10, 60)})
}

func routeLength(a, b shop.Spot) float64 {
	return math.Hypot(math.Hypot(b.X-a.X, b.Y-a.Y), b.Z-a.Z)
}

// planAt is how far along the path a place lies that is measured along the
// duct itself.
func (p *pipe) planAt(at unit.Length) int {
	for i, v := range p.legs {
		if float64(at) <= v.start+v.length || i == len(p.legs)-1 {
			share := min(1, max(0, unit.Six((float64(at)-v.start)/v.length)))
			return v.planStart + int(unit.Six(float64(v.planLength)*share)+0.5)
		}
	}
	return 0
}

// heightAt is the height of the pipe, in metres, at a distance along its path.
func (p *pipe) heightAt(along int) float64 {
	for _, v := range p.legs {
		if v.planLength > 0 && along <= v.planStart+v.planLength {
			return v.low + (v.high-v.low)*float64(along-v.planStart)/float64(v.planLength)
		}
	}
	return p.legs[len(p.legs)-1].high
}

// pieceOf is the piece of a stretch.
func (p *pipe) pieceOf(s *shop.Stretch) *stretchPiece {
	for i := range p.pieces {
		if p.pieces[i].stretch == s {
			return &p.pieces[i]
		}
	}
	return nil
}
