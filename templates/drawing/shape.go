package drawing

// line draws a run of lines.
func (p *pen) line(l look, title string, spots ...spot) {
	if len(spots) < 2 {
		return
	}
	p.trace(l, title, spots, false)
}

// area draws a closed outline.
func (p *pen) area(l look, title string, spots ...spot) { p.trace(l, title, spots, true) }

// trace draws a path of straight lines.
func (p *pen) trace(l look, title string, spots []spot, closed bool) {
	p.reach(boxOf(spots...).grown(l.weight / 2))
	p.shape("path", l)
	p.raw(` d="`)
	p.out = append(appendTrail(p.out, spots, closed), '"')
	p.close("path", title)
}

// lines draws many runs of one look as one shape.
func (p *pen) lines(l look, title string, runs ...path) {
	if len(runs) == 0 {
		return
	}
	p.shape("path", l)
	p.raw(` d="`)
	for _, run := range runs {
		p.reach(boxOf(run...).grown(l.weight / 2))
		p.out = appendTrail(p.out, run, false)
	}
	p.raw(`"`)
	p.close("path", title)
}

// curved draws a path written out.
func (p *pen) curved(l look, title, d string) {
	p.shape("path", l)
	p.raw(` d="`, d, `"`)
	p.close("path", title)
}

// rect draws a box.
func (p *pen) rect(l look, title string, b box) {
	p.reach(b.grown(l.weight / 2))
	p.shape("rect", l)
	p.number("x", b.left)
	p.number("y", b.top)
	p.number("width", b.width())
	p.number("height", b.height())
	p.close("rect", title)
}

// circle draws a circle.
func (p *pen) circle(l look, title string, at spot, radius int) {
	p.reach(around(at, radius, radius).grown(l.weight / 2))
	p.shape("circle", l)
	p.number("cx", at.x)
	p.number("cy", at.y)
	p.number("r", radius)
	p.close("circle", title)
}

// arc draws a part of a circle from a to b, bulging to the left or the right
// of the way from a to b.
func (p *pen) arc(l look, title string, a, b spot, radius int, left bool) {
	p.reach(boxOf(a, b).grown(radius / 4))
	sweep := "1"
	if !left {
		sweep = "0"
	}
	p.curved(l, title, trail([]spot{a}, false)+" A"+figure(radius)+" "+figure(radius)+" 0 0 "+sweep+" "+figure(b.x)+" "+figure(b.y))
}
