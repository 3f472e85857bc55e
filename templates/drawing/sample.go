package drawing

import "dustbook/plan/shop"

func samplePipe(p *pen, at spot, open bool) {
	for _, inside := range [2]bool{false, true} {
		p.line(pipeLook(90, open, inside), "", at, at.moved(sampleWide, 0))
	}
	if open {
		p.arrow(at.moved(sampleWide/2+34, 0), way{1, 0}, 34, false)
	}
}

func sampleSlow(p *pen, at spot) {
	samplePipe(p, at, true)
	p.rect(look{fill: airSoft}, "", around(at.moved(sampleWide/2, 0), 60, 43))
	p.arrow(at.moved(sampleWide/2+34, 0), way{1, 0}, 34, true)
}

func sampleGate(p *pen, at spot, state gateState) {
	middle := at.moved(sampleWide/2, 0)
	for _, inside := range [2]bool{false, true} {
		p.line(pipeLook(70, false, inside), "", at.moved(60, 0), at.moved(sampleWide-60, 0))
	}
	p.gateShape(&gateMark{gate: &shop.Gate{}, state: state, at: middle, along: way{1, 0}, half: 35 + frameOver, left: true})
}

func sampleHose(p *pen, at spot) {
	p.line(look{line: soft, weight: 80 + 2*edge}, "", at, at.moved(sampleWide, 0))
	p.line(look{line: paper, weight: 80}, "", at, at.moved(sampleWide, 0))
	var ribs []path
	for x := 30; x < sampleWide; x += 40 {
		ribs = append(ribs, path{at.moved(x, -40), at.moved(x, 40)})
	}
	p.lines(look{line: dark, weight: 8}, "", ribs...)
}

func sampleBand(p *pen, at spot) {
	half := wallThick / 2
	p.area(look{fill: paper, line: dark, weight: 16}, "", at.moved(0, -half), at.moved(sampleWide, -half), at.moved(sampleWide, half), at.moved(0, half))
	var hatch []path
	for x := hatchStep / 2; x+wallThick < sampleWide; x += hatchStep {
		hatch = append(hatch, path{at.moved(x, half), at.moved(x+wallThick, -half)})
	}
	p.lines(look{line: dark, weight: 9}, "", hatch...)
}

func sampleThin(p *pen, at spot) {
	p.line(look{line: dark, weight: 9, dash: "4 4"}, "", at, at.moved(sampleWide, 0))
}

func sampleBox(p *pen, at spot, l look) {
	p.rect(l, "", around(at.moved(sampleWide/2, 0), 150, 70))
}

func sampleCollector(p *pen, at spot, body look) {
	middle := at.moved(sampleWide/2, 0)
	p.circle(body, "", middle, 95)
	p.circle(look{fill: paper, line: dark, weight: 13}, "", middle, 43)
}

func sampleExit(p *pen, at spot) {
	hinge, jamb := at.moved(130, 60), at.moved(290, 60)
	for _, end := range [2][2]spot{{at.moved(0, 60), hinge}, {jamb, at.moved(sampleWide, 60)}} {
		p.line(look{line: dark, weight: wallThick / 2}, "", end[0], end[1])
	}
	tip := hinge.moved(0, -160)
	p.line(look{line: dark, weight: 16}, "", hinge, tip)
	p.arc(look{line: dark, weight: 9}, "", tip, jamb, span(hinge, jamb), true)
}

func sampleTap(p *pen, at spot) {
	samplePipe(p, at.moved(0, 40), false)
	p.drawTap(&tapMark{foot: at.moved(sampleWide/2, -5), end: at.moved(sampleWide/2, -75)})
}

func sampleDimension(p *pen, at spot) {
	thin := look{line: soft, weight: 9}
	p.line(thin, "", at, at.moved(sampleWide, 0))
	for _, x := range [2]int{0, sampleWide} {
		end := at.moved(x, 0)
		p.line(thin, "", end.moved(0, -60), end.moved(0, 60))
		p.line(look{line: dark, weight: 14}, "", end.moved(-40, 40), end.moved(40, -40))
	}
}

func sampleTrunk(p *pen, at spot, edge int) {
	p.line(look{line: dark, weight: 90 + 2*edge}, "", at, at.moved(sampleWide, 0))
	p.line(look{line: paper, weight: 90}, "", at, at.moved(sampleWide, 0))
	p.arrow(at.moved(sampleWide/2+34, 0), way{1, 0}, 34, false)
}
