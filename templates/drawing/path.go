package drawing

// path is a run of straight lines; neighbouring spots differ.
type path []spot

// tidy leaves out spots that repeat the one before.
func tidy(spots []spot) path {
	var p path
	for _, s := range spots {
		if len(p) == 0 || p[len(p)-1] != s {
			p = append(p, s)
		}
	}
	return p
}

// long is the path's length in tenths.
func (p path) long() int {
	sum := 0
	for i := 1; i < len(p); i++ {
		sum += span(p[i-1], p[i])
	}
	return sum
}

// at is the spot at a distance along the path, and the direction there.
func (p path) at(along int) (spot, way) {
	if len(p) == 1 {
		return p[0], way{1, 0}
	}
	for i := 1; i < len(p); i++ {
		l := span(p[i-1], p[i])
		if along <= l || i == len(p)-1 {
			w := towards(p[i-1], p[i])
			if along >= l {
				return p[i], w
			}
			return p[i-1].step(w, max(along, 0), 0), w
		}
		along -= l
	}
	return p[0], way{1, 0}
}

// part is the path between two distances along it.
func (p path) part(from, to int) path {
	start, _ := p.at(from)
	end, _ := p.at(to)
	part := []spot{start}
	walked := 0
	for i := 1; i < len(p); i++ {
		walked += span(p[i-1], p[i])
		if walked > from && walked < to {
			part = append(part, p[i])
		}
	}
	return tidy(append(part, end))
}

// corners are the distances along the path at which it turns.
func (p path) corners() []int {
	var list []int
	walked := 0
	for i := 1; i+1 < len(p); i++ {
		walked += span(p[i-1], p[i])
		list = append(list, walked)
	}
	return list
}

// steps are spots along the path, this far apart.
func (p path) steps(apart int) []spot {
	var list []spot
	for at, long := 0, p.long(); at <= long; at += apart {
		here, _ := p.at(at)
		list = append(list, here)
	}
	return list
}

// first and last direction of the path.
func (p path) first() way {
	if len(p) < 2 {
		return way{1, 0}
	}
	return towards(p[0], p[1])
}

func (p path) last() way {
	if len(p) < 2 {
		return way{1, 0}
	}
	return towards(p[len(p)-2], p[len(p)-1])
}

// end is the last spot of the path.
func (p path) end() spot { return p[len(p)-1] }
