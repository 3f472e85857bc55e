package drawing

import "strings"

// Sizes of a starter's drawing, in tenths.
const (
	rungLong    = 8600 // from rail to rail
	sealDrop    = 900  // from the rung to the contact that holds the coil
	linkDrop    = 500  // from the rung to the line that joins what moves together
	spareDrop   = 2350 // from the rung to the spare contact
	contactHalf = 130  // from the middle of a contact to each of its bars
	contactTall = 210  // half of a bar
	coilRound   = 230
)

// The lines of a circuit: what is wired, and what moves together.
var (
	strandLook = look{line: dark, weight: 14}
	barLook    = look{line: dark, weight: 26}
	linkedLook = look{line: soft, weight: 9, dash: "3 4"}
)

// Starter draws the control circuit of a three-wire magnetic starter, to no
// scale: its own stop, start, holding contact, coil and overload contact as
// they are, and apart from them the spare contact that a trigger may watch.
// The names are of the triggers that watch such a contact.
func Starter(watching []string, id string) SVG {
	p := &pen{}
	at := func(share int) spot { return spot{rungLong * share / 100, 0} }
	stop, start, coil, overload := at(12), at(34), at(68), at(86)
	before, behind := at(23), at(46)
	drawRung(p, stop, start, coil, overload)
	seal := spot{start.x, sealDrop}
	p.line(strandLook, "", before, spot{before.x, sealDrop}, seal.moved(-contactHalf, 0))
	p.line(strandLook, "", seal.moved(contactHalf, 0), spot{behind.x, sealDrop}, behind)
	drawContact(p, seal, false)
	spare := spot{coil.x, spareDrop}
	p.line(linkedLook, "", coil.moved(0, coilRound), spare.moved(0, -contactTall))
	p.line(linkedLook, "", spot{coil.x, linkDrop}, spot{seal.x, linkDrop}, seal.moved(0, -contactTall))
	drawContact(p, spare, false)
	for _, c := range [...]struct {
		key  string
		at   spot
		over bool
	}{{"stop", stop, true}, {"start", start, true}, {"coil", coil, true}, {"overload", overload, true}, {"holding", seal, false}, {"spare", spare, false}} {
		drawCaption(p, wording.Text("starter.part."+c.key), c.at, c.over)
	}
	drawWatcher(p, spare, watching)
	p.foot(starterKey(), []string{wording.Text("starter.drawn")})
	return p.frame(id, wording.Text("starter.drawing"), wording.Text("starter.desc", strings.Join(drawables(watching), ", ")), margin)
}

// starterKey is what the marks of a circuit mean.
func starterKey() []sign {
	return signsOf([]string{"contact-open", "contact-shut", "coil", "linked"})
}

// drawRung draws the rails and what stands between them in series.
func drawRung(p *pen, stop, start, coil, overload spot) {
	for _, x := range [2]int{0, rungLong} {
		p.line(barLook, "", spot{x, -500}, spot{x, sealDrop + 350})
	}
	left := spot{0, 0}
	for _, c := range [...]spot{stop, start} {
		p.line(strandLook, "", left, c.moved(-contactHalf, 0))
		left = c.moved(contactHalf, 0)
	}
	p.line(strandLook, "", left, coil.moved(-coilRound, 0))
	p.line(strandLook, "", coil.moved(coilRound, 0), overload.moved(-contactHalf, 0))
	p.line(strandLook, "", overload.moved(contactHalf, 0), spot{rungLong, 0})
	drawContact(p, stop, true)
	drawContact(p, start, false)
	drawCoil(p, coil)
	drawContact(p, overload, true)
}

// drawContact draws a contact: two bars, with a stroke across where it is
// closed at rest.
func drawContact(p *pen, at spot, closed bool) {
	for _, x := range [2]int{-contactHalf, contactHalf} {
		p.line(barLook, "", at.moved(x, -contactTall), at.moved(x, contactTall))
	}
	if closed {
		p.line(strandLook, "", at.moved(-contactHalf-70, contactTall), at.moved(contactHalf+70, -contactTall))
	}
}

// sampleContact is a small contact with its wires, for a key.
func sampleContact(p *pen, at spot, closed bool) {
	middle := at.moved(sampleWide/2, 0)
	p.line(strandLook, "", at, middle.moved(-70, 0))
	p.line(strandLook, "", middle.moved(70, 0), at.moved(sampleWide, 0))
	for _, x := range [2]int{-70, 70} {
		p.line(barLook, "", middle.moved(x, -95), middle.moved(x, 95))
	}
	if closed {
		p.line(strandLook, "", middle.moved(-110, 95), middle.moved(110, -95))
	}
}

func drawCoil(p *pen, at spot) {
	p.circle(look{fill: paper, line: dark, weight: 22}, "", at, coilRound)
}

// drawCaption names a part above or below it.
func drawCaption(p *pen, text string, at spot, over bool) {
	b := writing(text, false, smallText, 1500, 3)
	y := contactTall + 60 + b.height()/2
	if over {
		y = -y
	}
	p.write(&b, around(at.moved(0, y), b.width()/2, b.height()/2), centred)
}

// drawWatcher draws the control box that reads the spare contact.
func drawWatcher(p *pen, spare spot, watching []string) {
	says := writing(wording.Text("starter.box"), true, plainText, 2700, 2)
	names := writing(strings.Join(watching, ", "), false, smallText, 2700, 4)
	tall := says.height() + names.height() + 240
	middle := spot{rungLong * 22 / 100, spare.y}
	in := around(middle, 1600, tall/2)
	p.rect(look{fill: tint, line: dark, weight: 20}, "", in)
	p.write(&says, box{in.left, in.top + 80, in.right, in.top + 80 + says.height()}, centred)
	p.write(&names, box{in.left, in.bottom - 100 - names.height(), in.right, in.bottom - 100}, centred)
	high, low := spare.y-110, spare.y+110
	p.line(strandLook, "", spot{in.right, high}, spot{spare.x - contactHalf - 400, high}, spot{spare.x - contactHalf - 400, spare.y}, spare.moved(-contactHalf, 0))
	p.line(strandLook, "", spot{in.right, low}, spot{spare.x - contactHalf - 700, low}, spot{spare.x - contactHalf - 700, spare.y + 700}, spot{spare.x + 700, spare.y + 700}, spot{spare.x + 700, spare.y}, spare.moved(contactHalf, 0))
}

func drawables(texts []string) []string {
	var list []string
	for _, text := range texts {
		list = append(list, drawable(text))
	}
	return list
}
