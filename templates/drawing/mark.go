package drawing

import (
	"dustbook/plan/duct"
	"dustbook/plan/shop"
)

// KeyRow is one row of the visual language: a mark or a line with a sample, or
// a class of the style sheet.
type KeyRow struct {
	Name, Means string
	Sample      SVG  // none for a class
	Class       bool // a class, not a mark
}

// mark is a sign that drawings use, by its name.
type mark struct {
	name string
	draw func(p *pen, at spot) // at the middle of the sample's left edge
}

// marks are all of them, in the order of a key.
var marks = []mark{
	{"way", func(p *pen, at spot) { samplePipe(p, at, true) }},
	{"slow", sampleSlow},
	{"off", func(p *pen, at spot) { samplePipe(p, at, false) }},
	{"gate-open", func(p *pen, at spot) { sampleGate(p, at, openGate) }},
	{"gate-shut", func(p *pen, at spot) { sampleGate(p, at, shutGate) }},
	{"gate", func(p *pen, at spot) { sampleGate(p, at, notSaid) }},
	{"rise", func(p *pen, at spot) { p.drawRisers([]riser{{at.moved(sampleWide/2, 0), true, 70}}) }},
	{"drop", func(p *pen, at spot) { p.drawRisers([]riser{{at.moved(sampleWide/2, 0), false, 70}}) }},
	{"end-here", func(p *pen, at spot) {
		p.line(look{line: dark, weight: 38, dash: "7 4"}, "", at, at.moved(sampleWide, 0))
	}},
	{"end-elsewhere", sampleThin},
	{"end-can", sampleThin},
	{"hose", sampleHose},
	{"machine", func(p *pen, at spot) { sampleBox(p, at, look{fill: tint, line: dark, weight: 13}) }},
	{"machine-on", func(p *pen, at spot) { sampleBox(p, at, look{fill: airSoft, line: dark, weight: 26}) }},
	{"collector", func(p *pen, at spot) { sampleCollector(p, at, look{fill: tint, line: dark, weight: 13}) }},
	{"collector-on", func(p *pen, at spot) { sampleCollector(p, at, look{fill: airSoft, line: dark, weight: 24}) }},
	{"wall", func(p *pen, at spot) {
		p.line(look{line: dark, weight: wallThick}, "", at, at.moved(sampleWide, 0))
	}},
	{"rated-wall", sampleBand},
	{"exit", sampleExit},
	{"stop", func(p *pen, at spot) {
		p.drawFixture(&fixtureMark{at: at.moved(sampleWide/2, 0), stop: &shop.StopButton{}})
	}},
	{"extinguisher", func(p *pen, at spot) { p.drawFixture(&fixtureMark{at: at.moved(sampleWide/2, 0)}) }},
	{"tap", sampleTap},
	{"leak", func(p *pen, at spot) {
		p.drawLeak(&leakMark{tip: at.moved(300, 0), tail: at.moved(120, 0)})
	}},
	{"dimension", sampleDimension},
	{"scale", func(p *pen, at spot) { p.scaleBar(at.moved(0, -22), sampleWide) }},
	{"trunk", func(p *pen, at spot) { sampleTrunk(p, at, openEdge) }},
	{"branch", func(p *pen, at spot) { sampleTrunk(p, at, lightEdge) }},
	{"end", func(p *pen, at spot) {
		p.line(look{line: soft, weight: 7, dash: "3 3"}, "", at.moved(sampleWide/2, 0), at.moved(sampleWide/2, 135))
		p.rect(look{fill: tint, line: dark, weight: 13}, "", around(at.moved(sampleWide/2, 0), 150, 50))
	}},
	{"can", func(p *pen, at spot) {
		p.canShape(&canMark{top: at.moved(sampleWide/2, -50), foot: at.moved(sampleWide/2, 60), wide: 90}, "")
	}},
	{"floor", func(p *pen, at spot) { p.line(look{line: rule, weight: 9}, "", at, at.moved(sampleWide, 0)) }},
	{"single-way", func(p *pen, at spot) { sampleWire(p, at, true, false) }},
	{"single-slow", func(p *pen, at spot) { sampleWire(p, at, true, true) }},
	{"single-off", func(p *pen, at spot) { sampleWire(p, at, false, false) }},
	{"single-join", sampleJoin},
	{"single-open", func(p *pen, at spot) { sampleWireGate(p, at, openGate) }},
	{"single-shut", func(p *pen, at spot) { sampleWireGate(p, at, shutGate) }},
	{"fan-curve", func(p *pen, at spot) { p.line(fanLook, "", at, at.moved(sampleWide, 0)) }},
	{"fan-parabola", func(p *pen, at spot) { p.line(parabolaLook, "", at, at.moved(sampleWide, 0)) }},
	{"fan-use", func(p *pen, at spot) { samplePoint(p, at, duct.NoFilter) }},
	{"fan-clean", func(p *pen, at spot) { samplePoint(p, at, duct.Clean) }},
	{"fan-due", func(p *pen, at spot) { samplePoint(p, at, duct.ChangeOut) }},
	{"fan-crossing", func(p *pen, at spot) { drawCrossing(p, at.moved(sampleWide/2, 0)) }},
	{"fan-claim", func(p *pen, at spot) { drawClaim(p, at.moved(sampleWide/2, 55), way{0, -1}) }},
	{"run-way", func(p *pen, at spot) { p.line(runLook, "", at, at.moved(sampleWide, 0)) }},
	{"run-end", func(p *pen, at spot) { drawRunEnd(p, at.moved(sampleWide/2, 0)) }},
	{"run-inlet", func(p *pen, at spot) {
		p.line(inletLook, "", at.moved(sampleWide/2, -80), at.moved(sampleWide/2, 80))
	}},
	{"run-part", func(p *pen, at spot) { p.line(partLook, "", at, at.moved(sampleWide, 0)) }},
	{"run-fan", func(p *pen, at spot) { drawRunFan(p, at.moved(sampleWide/2, 0)) }},
	{"chart-axis", sampleAxis},
	{"plus", func(p *pen, at spot) { p.line(plusLook, "", at, at.moved(sampleWide, 0)) }},
	{"minus", func(p *pen, at spot) { p.line(minusLook, "", at, at.moved(sampleWide, 0)) }},
	{"contact-open", func(p *pen, at spot) { sampleContact(p, at, false) }},
	{"contact-shut", func(p *pen, at spot) { sampleContact(p, at, true) }},
	{"coil", func(p *pen, at spot) {
		p.line(strandLook, "", at, at.moved(sampleWide, 0))
		p.circle(look{fill: paper, line: dark, weight: 22}, "", at.moved(sampleWide/2, 0), 90)
	}},
	{"lane-on", func(p *pen, at spot) {
		p.line(laneLook, "", at.moved(0, 90), at.moved(130, 90), at.moved(130, -90), at.moved(290, -90), at.moved(290, 90), at.moved(sampleWide, 90))
	}},
	{"lane-moves", func(p *pen, at spot) {
		p.line(laneLook, "", at.moved(0, 90), at.moved(100, 90), at.moved(320, -90), at.moved(sampleWide, -90))
	}},
	{"lane-guide", func(p *pen, at spot) {
		p.line(guideLook, "", at.moved(sampleWide/2, -100), at.moved(sampleWide/2, 100))
	}},
	{"lane-unproven", func(p *pen, at spot) {
		p.line(laneLook, "", at, at.moved(sampleWide, 0))
		p.circle(look{fill: paper, line: dark, weight: 14}, "", at, 55)
	}},
	{"lane-coasts", func(p *pen, at spot) { p.line(strandLook, "", at.moved(0, -90), at.moved(sampleWide, 90)) }},
	{"lane-waits", func(p *pen, at spot) { p.line(waitLook, "", at, at.moved(sampleWide, 0)) }},
	{"lane-break", func(p *pen, at spot) {
		p.line(restLook, "", at, at.moved(sampleWide, 0))
		drawBreak(p, at.moved(sampleWide/2, 0))
	}},
	{"linked", func(p *pen, at spot) { p.line(linkedLook, "", at, at.moved(sampleWide, 0)) }},
}

// signOf is the entry of a mark in a drawing's own key. An unknown name is a
// fault of the program, found by the test of the key.
func signOf(name string) sign {
	for _, m := range marks {
		if m.name == name {
			return sign{wording.Text("drawing.means." + name), m.draw}
		}
	}
	panic("drawing: there is no mark " + name)
}

// signsOf are the entries of some marks.
func signsOf(names []string) []sign {
	var list []sign
	for _, name := range names {
		list = append(list, signOf(name))
	}
	return list
}

// Key is the visual language of all drawings: every mark and line
// with its sample, then every class. The id is the start of every id in the
// samples.
func Key(id string) []KeyRow {
	var list []KeyRow
	for _, m := range marks {
		row := KeyRow{Name: wording.Text("drawing.mark." + m.name), Means: wording.Text("drawing.means." + m.name)}
		p := &pen{}
		p.reach(box{0, -100, sampleWide, 100})
		m.draw(p, spot{})
		row.Sample = p.frame(id+"-"+m.name, row.Name, row.Means, 20)
		list = append(list, row)
	}
	for _, c := range Classes {
		list = append(list, KeyRow{Name: c.Name, Means: c.Means, Class: true})
	}
	return list
}
