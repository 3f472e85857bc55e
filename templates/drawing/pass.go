package drawing

import (
	"cmp"
	"math"
	"slices"

	"dustbook/plan/unit"
)

// passing is a bit of a pipe that passes before another, nearer to the eye.
type passing struct {
	pipe     *pipe
	from, to int // tenths along it
	near     float64
}

// touching is how much nearer one duct may be than another and still touch it,
// in metres along the three axes together.
const touching = 0.45

// passes finds where ducts cross or cover each other without joining, the
// farthest first, so that the nearer is drawn last.
func (e eye) passes(pipes []*pipe) []passing {
	var list []passing
	for i, p := range pipes {
		for j := range p.legs {
			for k := j + 2; k < len(p.legs); k++ {
				list = append(list, passesOf(p, p, p.legs[j], p.legs[k])...)
			}
			for _, q := range pipes[i+1:] {
				for k := range q.legs {
					list = append(list, passesOf(p, q, p.legs[j], q.legs[k])...)
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b passing) int { return cmp.Compare(a.near, b.near) })
	return list
}

// nearAt is how near a leg is to the eye at a distance from its start.
func (v leg) nearAt(along int) float64 {
	if v.planLength == 0 {
		return v.high
	}
	share := float64(min(along, v.planLength)) / float64(v.planLength)
	return unit.Six(v.low + float64((v.high-v.low)*share))
}

// passesOf finds where one leg of p passes one of q.
func passesOf(p, q *pipe, v, w leg) []passing {
	if cross(v.from, v.to, w.from, w.to) {
		at := crossing(v.from, v.to, w.from, w.to)
		a, b := span(v.from, at), span(w.from, at)
		over := passed(p, q, v.planStart+a, w.planStart+b, v.nearAt(a), w.nearAt(b))
		if over == nil {
			return nil
		}
		sin := math.Max(sineOf(towards(v.from, v.to).dot(towards(w.from, w.to))), 0.3)
		reach := int(float64(over.to)/2/sin) + openEdge + 50 // to holds the other's width
		return []passing{{over.pipe, over.from - reach, over.from + reach, over.near}}
	}
	return covers(p, q, v, w)
}

// passed says which of two pipes is nearer at a place they share in the
// drawing, with the width of the other; nil where they touch.
func passed(p, q *pipe, alongP, alongQ int, nearP, nearQ float64) *passing {
	if math.Abs(nearP-nearQ) < touching {
		return nil
	}
	if nearP > nearQ {
		return &passing{p, alongP, q.width, nearP}
	}
	return &passing{q, alongQ, p.width, nearQ}
}

// covers finds the bit of a leg that lies right before another that runs the
// same way.
func covers(p, q *pipe, v, w leg) []passing {
	if v.planLength == 0 || w.planLength == 0 {
		return nil
	}
	way := towards(v.from, v.to)
	if cos := way.dot(towards(w.from, w.to)); math.Abs(cos) < 0.999 {
		return nil
	}
	if off := span(onEndless(v, w.from), w.from); off >= (p.width+q.width)/2+edge {
		return nil
	}
	ahead := func(s spot) int {
		return tenths((float64(float64(s.x-v.from.x)*way.x) + float64(float64(s.y-v.from.y)*way.y)) / 10)
	}
	a, b := ahead(w.from), ahead(w.to)
	low, high := max(0, min(a, b)), min(v.planLength, max(a, b))
	if high-low < 60 {
		return nil
	}
	middle := (low + high) / 2
	there, _ := path{v.from, v.to}.at(middle)
	alongW := span(w.from, there)
	over := passed(p, q, v.planStart+middle, w.planStart+alongW, v.nearAt(middle), w.nearAt(alongW))
	if over == nil {
		return nil
	}
	half := (high - low) / 2
	return []passing{{over.pipe, over.from - half, over.from + half, over.near}}
}

// onEndless is the spot nearest to another on the line a leg lies on.
func onEndless(v leg, at spot) spot {
	w := towards(v.from, v.to)
	ahead := float64(float64(at.x-v.from.x)*w.x) + float64(float64(at.y-v.from.y)*w.y)
	return v.from.step(w, tenths(ahead/10), 0)
}
