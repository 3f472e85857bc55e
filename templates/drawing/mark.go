package drawing

import "dustbook/plan/shop"

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
	{"rise", func(p *pen, at spot) { p.drawRiser(riser{at.moved(sampleWide/2, 0), true, 70}) }},
	{"drop", func(p *pen, at spot) { p.drawRiser(riser{at.moved(sampleWide/2, 0), false, 70}) }},
	{"end-here", func(p *pen, at spot) {
		p.line(look{line: dark, weight: 38, dash: "7 4"}, "", at, at.moved(sampleWide, 0))
	}},
	{"end-elsewhere", sampleThin},
	{"end-can", sampleThin},
	{"hose", sampleHose},
	{"machine", func(p *pen, at spot) { sampleBox(p, at, look{fill: tint, line: dark, weight: 13}) }},
	{"machine-on", func(p *pen, at spot) { sampleBox(p, at, look{fill: airSoft, line: dark, weight: 26}) }},
	{"collector", sampleCollector},
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
	{"plus", func(p *pen, at spot) { p.line(plusLook, "", at, at.moved(sampleWide, 0)) }},
	{"minus", func(p *pen, at spot) { p.line(minusLook, "", at, at.moved(sampleWide, 0)) }},
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

// Key is the visual language of plans, isometrics and chains: every mark and line
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
