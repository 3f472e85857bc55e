package drawing

import (
	"cmp"
	"slices"

	"dustbook/plan/shop"
)

// drawDucts draws all ducts: what is off the open way first, then the open
// way over it, each as edges and then their inside, so that joins run
// together; then the places where one passes over another.
func (s *sheet) drawDucts() {
	byWidth := slices.Clone(s.pipes) // pipes drawn alike stand together
	slices.SortStableFunc(byWidth, func(p, q *pipe) int { return cmp.Compare(p.width, q.width) })
	var runs []ductRun
	for _, p := range byWidth {
		runs = append(runs, s.runsOf(p)...)
	}
	for _, open := range [2]bool{false, true} {
		for _, inside := range [2]bool{false, true} {
			for _, r := range runs {
				if r.open == open {
					s.drawRun(r, inside)
				}
			}
		}
	}
	s.drawPasses()
}

// drawRisers marks the runs that are a point in plan.
func (s *sheet) drawRisers() {
	var list []riser
	for _, p := range s.pipes {
		list = append(list, p.risers...)
	}
	s.pen.drawRisers(list)
}

// ductRun is a part of a pipe's path on or off the open way.
type ductRun struct {
	pipe     *pipe
	from, to int // tenths along the path; before nought: beyond its start
	open     bool
}

// runsOf are the runs of a pipe: its stretches, those alike taken together.
func (s *sheet) runsOf(p *pipe) []ductRun {
	var list []ductRun
	for i := range p.pieces {
		piece := &p.pieces[i]
		if n := len(list); n > 0 && list[n-1].open == s.open[piece.stretch] {
			list[n-1].to = piece.to
			continue
		}
		r := ductRun{p, piece.from, piece.to, s.open[piece.stretch]}
		if r.open {
			r.from -= s.wyeBody(p, piece)
		}
		if i == 0 {
			r.from -= s.cornerBody(p)
		}
		list = append(list, r)
	}
	return list
}

// looks of a duct's edge and inside.
func pipeLook(width int, open, inside bool) look {
	l := look{line: soft, weight: width + 2*edge}
	switch {
	case open && inside:
		l.line, l.weight = airSoft, width
	case open:
		l.line, l.weight = air, width+2*openEdge
	case inside:
		l.line, l.weight = paper, width
	}
	return l
}

// drawRun draws the edges of one run, closed at its upstream end, or the
// inside of it.
func (s *sheet) drawRun(r ductRun, inside bool) {
	p := r.pipe
	l := pipeLook(p.width, r.open, inside)
	title := ""
	if inside {
		title = p.duct.Name + ", " + s.sizeOf(p.duct)
	} else {
		r.from -= (l.weight - p.width) / 2
	}
	run := p.path.part(max(r.from, 0), r.to)
	if r.from < 0 && len(run) > 1 {
		run[0] = run[0].step(run.first(), r.from, 0)
	}
	s.line(l, title, run...)
}

// cornerBody is how far a pipe begins before its first spot, so that it
// covers the ends of the ducts that go on into it there.
func (s *sheet) cornerBody(p *pipe) int {
	body := 0
	for _, d := range p.duct.Joined {
		if child := s.pipeOf(d); child != nil && d.JoinNode == 0 && len(child.path) > 1 && len(p.path) > 1 {
			sin := sineOf(child.path.last().dot(p.path.first()))
			body = max(body, int(float64(child.width/2)*sin))
		}
	}
	return body
}

// wyeBody is how far upstream of its start an open stretch begins, where the
// stretch before it is not open and an open duct comes in at an angle.
func (s *sheet) wyeBody(p *pipe, piece *stretchPiece) int {
	number := piece.stretch.Number
	if number == 1 || s.open[p.duct.Stretches[number-2]] {
		return 0
	}
	before := p.pieces[number-2]
	body := 0
	_, w := p.path.at(piece.from)
	for _, d := range p.duct.Joined {
		child := s.pipeOf(d)
		if child == nil || d.JoinNode != number-1 || !s.open[d.Stretches[len(d.Stretches)-1]] || len(child.path) < 2 {
			continue
		}
		cos := child.path.last().dot(w)
		sin := sineOf(cos)
		reach := child.width / 2
		if sin > 0.2 {
			reach = int((float64(p.width)/2*cos + float64(child.width)/2) / sin)
		}
		body = max(body, reach+openEdge+10)
	}
	return min(body, (before.to-before.from)*7/10)
}

// drawRisers marks runs straight up by a cross in a circle, down by a dot.
func (p *pen) drawRisers(list []riser) {
	for _, r := range list {
		p.circle(look{fill: paper, line: dark, weight: 13}, "", r.at, r.radius)
	}
	for _, r := range list {
		if !r.up {
			p.circle(look{fill: dark}, "", r.at, r.radius*35/100)
		}
	}
	for _, r := range list {
		if d := r.radius * 7 / 10; r.up {
			p.lines(look{line: dark, weight: 13}, "", path{r.at.moved(-d, -d), r.at.moved(d, d)}, path{r.at.moved(-d, d), r.at.moved(d, -d)})
		}
	}
}

// drawPasses draws the upper of two ducts that cross without joining over the
// lower one, with a gap at either side.
func (s *sheet) drawPasses() {
	for i, p := range s.pipes {
		for _, q := range s.pipes[i+1:] {
			s.passesOf(p, q)
		}
	}
}

func (s *sheet) passesOf(p, q *pipe) {
	walkP := 0
	for i := 1; i < len(p.path); i++ {
		walkQ := 0
		for j := 1; j < len(q.path); j++ {
			if cross(p.path[i-1], p.path[i], q.path[j-1], q.path[j]) {
				at := crossing(p.path[i-1], p.path[i], q.path[j-1], q.path[j])
				alongP, alongQ := walkP+span(p.path[i-1], at), walkQ+span(q.path[j-1], at)
				if joinsNear(p, q, alongP) || joinsNear(q, p, alongQ) {
					walkQ += span(q.path[j-1], q.path[j])
					continue
				}
				if p.heightAt(alongP) >= q.heightAt(alongQ) {
					s.drawPass(p, alongP, q.width)
				} else {
					s.drawPass(q, alongQ, p.width)
				}
			}
			walkQ += span(q.path[j-1], q.path[j])
		}
		walkP += span(p.path[i-1], p.path[i])
	}
}

// joinsNear reports whether a pipe ends in another near a place along it.
func joinsNear(p, into *pipe, along int) bool {
	return p.duct.Into == into.duct && along > p.path.long()-into.width-p.width
}

// drawPass draws a bit of a pipe once more over what it passes.
func (s *sheet) drawPass(p *pipe, along, under int) {
	reach := under/2 + openEdge + 50
	bit := p.path.part(max(along-reach, 0), min(along+reach, p.path.long()))
	open := false
	for _, piece := range p.pieces {
		open = open || s.open[piece.stretch] && along >= piece.from && along <= piece.to
	}
	s.line(look{line: paper, weight: p.width + 2*openEdge + 60}, "", bit...)
	s.line(pipeLook(p.width, open, false), "", bit...)
	s.line(pipeLook(p.width, open, true), "", p.path.part(max(along-reach-10, 0), min(along+reach+10, p.path.long()))...)
}

// drawArrows puts arrows on the open way, in the direction of the air.
func (s *sheet) drawArrows() {
	const apart, least = 750, 220
	for _, p := range s.pipes {
		for _, piece := range p.pieces {
			long := piece.to - piece.from
			if !s.open[piece.stretch] || long < least {
				continue
			}
			n := max(1, (long-100)/apart)
			for i := range n {
				s.drawArrow(p, piece.from+long*(2*i+1)/(2*n), s.tooSlow(piece.stretch))
			}
		}
	}
}

// drawArrow draws one arrow as near to a place as it can be seen whole.
func (s *sheet) drawArrow(p *pipe, want int, slow bool) {
	for _, off := range [9]int{0, 60, -60, 120, -120, 180, -180, 240, -240} {
		at, w := p.path.at(want + off)
		if want+off < 60 || want+off > p.path.long()-60 || !s.clearFor(p, at, want+off) {
			continue
		}
		half := min(max(34, p.width*30/100), 60)
		tip := at.step(w, half+10, 0)
		s.arrow(tip, w, half, slow)
		return
	}
}

// arrow draws an arrow: filled, or hollow where the air is too slow.
func (p *pen) arrow(tip spot, w way, half int, slow bool) {
	l := look{fill: air}
	if slow {
		l = look{fill: paper, line: stop, weight: 12}
	}
	p.area(l, "", tip, tip.step(w, -2*half, half), tip.step(w, -2*half, -half))
}

// tooSlow reports whether dust settles in a stretch.
func (s *sheet) tooSlow(stretch *shop.Stretch) bool {
	if r := s.resultOf(stretch.Duct.Collector); r != nil && r.OnCurve {
		if v := stretchOf(r, stretch); v != nil && !v.Carries {
			s.known.slow = true
			return true
		}
	}
	return false
}

// clearFor reports whether an arrow at a place touches nothing.
func (s *sheet) clearFor(p *pipe, at spot, along int) bool {
	for _, b := range s.solids {
		if b.grown(70).holds(at) {
			return false
		}
	}
	for _, l := range s.labels {
		if l.box.grown(70).holds(at) {
			return false
		}
		if len(l.leader) > 1 && closer(l.leader[0], at, 110) {
			return false
		}
	}
	for _, corner := range p.path.corners() {
		if max(corner-along, along-corner) < 80 {
			return false
		}
	}
	return true
}
