package drawing

import (
	"math"

	"dustbook/plan/shop"
	"dustbook/plan/unit"
)

// eye looks at the shop in true isometric: along the three axes lengths are
// to one scale, the two level ones at 30 degrees to the sheet. It looks from
// one of the four corners, so many quarters round from the file's far corner
// in x and y.
type eye struct {
	quarter int
	units   float64 // drawing units in a metre
}

// cos30 is the cosine of 30 degrees; its sine is a half.
const cos30 = 0.8660254037844386

// turned are the level coordinates as the eye has them.
func (e eye) turned(s shop.Spot) (x, y float64) {
	switch e.quarter {
	case 1:
		return s.Y, -s.X
	case 2:
		return -s.X, -s.Y
	case 3:
		return -s.Y, s.X
	}
	return s.X, s.Y
}

// spot is where a point of the shop appears.
func (e eye) spot(s shop.Spot) spot {
	x, y := e.turned(s)
	return spot{tenths((x - y) * cos30 * e.units), tenths(((x+y)/2 - s.Z) * e.units)}
}

// near is how near a point is to the eye: more is nearer.
func (e eye) near(s shop.Spot) float64 {
	x, y := e.turned(s)
	return unit.Six(x + y + s.Z)
}

// fit sets the size at which everything of a collector fits the sheet.
func (e *eye) fit(s *shop.Shop, c *shop.Collector, growth float64) {
	e.units = 100
	var spots []spot
	for _, at := range spotsOf(s, c) {
		spots = append(spots, e.spot(at), e.spot(shop.Spot{X: at.X, Y: at.Y}))
	}
	for _, r := range s.Rooms {
		if holdsAny(r, s, c) {
			for _, p := range r.Outline {
				spots = append(spots, e.spot(shop.Spot{X: p.X, Y: p.Y}))
			}
		}
	}
	if len(spots) == 0 {
		return
	}
	b := boxOf(spots...)
	wide, deep := math.Max(float64(b.width()), 1000)/1000, math.Max(float64(b.height()), 1000)/1000 // metres
	e.units = unit.Six(math.Min(mostUnits, math.Min(sheetWidth/wide, sheetDepth/deep)) * growth)
}

// What a view costs, in tenths of duct hidden behind another: an end that lies
// at another duct, and a run that lies on the run before it.
const (
	endHidden = 900
	foldedRun = 900
)

// bestEye is the corner from which least of the ducts is hidden behind others,
// the fewest ends are, and the fewest runs fold back on themselves; and whether
// plans of the shop are turned.
func bestEye(s *shop.Shop, c *shop.Collector) (best eye, turned bool) {
	k, _ := scaleFor(s, 1)
	least := -1
	for quarter := range 4 {
		e := eye{quarter: quarter}
		e.fit(s, c, 1)
		wider := widening(s, scale{units: e.units})
		var pipes []*pipe
		for _, d := range ductsOf(s, c) {
			if len(d.Route) > 1 {
				pipes = append(pipes, e.pipe(d, wider))
			}
		}
		n := endHidden*hiddenEnds(pipes) + foldedRun*folds(pipes)
		for _, one := range e.passes(pipes) {
			n += one.to - one.from
		}
		if least < 0 || n < least {
			best, least = eye{quarter: quarter}, n
		}
	}
	return best, k.turned
}

// hiddenEnds counts the hood ends that lie at another duct in the drawing.
func hiddenEnds(pipes []*pipe) int {
	const clear = 150 // tenths
	count := 0
	for _, p := range pipes {
		hidden := false
		for _, q := range pipes {
			for i := 1; i < len(q.path) && q != p; i++ {
				hidden = hidden || span(onLine(q.path[i-1], q.path[i], p.path[0]), p.path[0]) < clear && len(p.duct.Serves) > 0
			}
		}
		if hidden {
			count++
		}
	}
	return count
}

// folds counts the runs that lie on the run before them in the drawing, or
// are seen end on.
func folds(pipes []*pipe) int {
	count := 0
	for _, p := range pipes {
		for i, v := range p.legs {
			if v.planLength < 20 {
				count++
			} else if i > 0 && towards(v.from, v.to).dot(towards(p.legs[i-1].from, p.legs[i-1].to)) < -0.999 {
				count++
			}
		}
	}
	return count
}

// from names the corner of a plan, which may be turned, that the eye is at.
func (e eye) from(turned bool) string {
	right, down := true, true // quarter nought: from the far corner in x and y
	for range e.quarter {     // each quarter: the far x becomes the near y
		right, down = !down, right
	}
	if turned {
		right, down = down, !right
	}
	word := map[bool]string{true: "lower", false: "upper"}[down]
	if right {
		return word + "-right"
	}
	return word + "-left"
}

// pipe lays a duct with a route as the eye sees it.
func (e eye) pipe(d *shop.Duct, wider float64) *pipe {
	p := &pipe{duct: d, width: max(tenths(float64(bore(d))*wider*e.units), 45)}
	spots := []spot{e.spot(d.Route[0])}
	start, along := 0.0, 0
	for i := 1; i < len(d.Route); i++ {
		a, b := d.Route[i-1], d.Route[i]
		v := leg{from: spots[len(spots)-1], to: e.spot(b), low: e.near(a), high: e.near(b), start: start, length: routeLength(a, b), planStart: along}
		v.planLength = span(v.from, v.to)
		spots = append(spots, v.to)
		start, along = start+v.length, along+v.planLength
		p.legs = append(p.legs, v)
	}
	p.path = tidy(spots)
	for _, s := range d.Stretches {
		p.pieces = append(p.pieces, stretchPiece{stretch: s, from: p.planAt(s.From), to: p.planAt(s.To)})
	}
	return p
}
