package drawing

import "dustbook/plan/shop"

// The lines of the charts.
var (
	fanLook      = look{line: air, weight: 26}
	parabolaLook = look{line: air, weight: 26, dash: "10 5"}
	runLook      = look{line: air, weight: 24}
	partLook     = look{line: air, weight: 24, dash: "8 4"}
	inletLook    = look{line: dark, weight: 9, dash: "4 4"}
	gridLook     = look{line: rule, weight: 8}
	axisLook     = look{line: dark, weight: 16}
)

// sampleWire is a line of the single-line diagram.
func sampleWire(p *pen, at spot, open, slow bool) {
	p.line(wireLook(open), "", at, at.moved(sampleWide, 0))
	if open {
		p.arrow(at.moved(sampleWide/2+60, 0), way{1, 0}, 60, slow)
	}
}

// sampleJoin is where lines of the single-line diagram join: the larger dot
// where air comes in.
func sampleJoin(p *pen, at spot) {
	p.line(wireLook(true), "", at, at.moved(sampleWide, 0))
	p.circle(look{fill: dark}, "", at.moved(sampleWide/3, 0), openNode)
	p.circle(look{fill: dark}, "", at.moved(sampleWide*2/3, 0), shutNode)
}

func sampleWireGate(p *pen, at spot, state gateState) {
	p.line(wireLook(state == openGate), "", at, at.moved(sampleWide, 0))
	p.gateShape(&gateMark{gate: &shop.Gate{}, state: state, at: at.moved(sampleWide/2, 0), along: way{1, 0}, half: singleHalf + frameOver, left: true, onWay: true})
}

// samplePoint is an operating point on its system curve.
func samplePoint(p *pen, at spot, filter string) {
	p.line(systemLook(filter), "", at, at.moved(sampleWide, 0))
	drawMark(p, at.moved(sampleWide/2, 0), filter)
}

// sampleAxis is an axis with its strokes and a line of the grid.
func sampleAxis(p *pen, at spot) {
	p.line(gridLook, "", at.moved(sampleWide/2, -90), at.moved(sampleWide/2, 40))
	p.line(axisLook, "", at.moved(0, 40), at.moved(sampleWide, 40))
	p.line(look{line: dark, weight: 10}, "", at.moved(sampleWide/2, 40), at.moved(sampleWide/2, 90))
}
