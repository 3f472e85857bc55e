package drawing

import "dustbook/plan/shop"

// label is a block of text that has to find its place.
type label struct {
	block   block
	pad     int              // room between text and frame, or around the text
	frame   look             // drawn around it; the bare look draws none
	anchors []anchor         // what it may point at, the best first
	fixed   []option         // places to try beside those around the anchors
	near    int              // from this distance on a leader is drawn
	only    bool             // only the fixed places count, as long as one is free
	onWall  bool             // it may lie on walls
	mine    []*shop.Duct     // it may lie on these
	stay    func(option) int // what a place costs beside, in tenths

	box    box
	text   box // where in the box the text stands
	hang   hang
	leader []spot // from the anchor to the label; empty where it needs none
	dot    bool   // the leader starts at a dot
	light  bool   // nothing is bold, though it takes the room
	forms  []form // other ways to set it; the block is the first
	form   int    // the one taken
	bare   int    // how many forms, from the first, say less than the others
	cost   int
	taken  *taken // how it came to stand there; nil while it has no place
	seen   box    // what mattered when it looked for its place
	freed  bool   // something went away there since
}

// taken is the option a label took, what came on top for its form and its
// distance, and where its leader starts.
type taken struct {
	option
	base int
	from *spot
}

// form is a way to set a label: the block that takes the room, what is
// written there where that differs, and what it costs.
type form struct {
	block, shown block
	cost         int
	most         int // the width it was set to
}

// short reports whether a label stands in a form that says less than others.
func (l *label) short() bool { return l.form < l.bare }

// anchor is a spot a label may stand for: how far labels keep from it, and
// what it costs to take it.
type anchor struct {
	at          spot
	clear, cost int
}

// option is a place for a label.
type option struct {
	box  box
	cost int
	hang hang
	text box // where in the box the text stands; left out: inside its pad
}

// never is the distance for a label that needs no leader wherever it stands.
const never = 1 << 30

// width and height of the label with its pad, in tenths.
func (l *label) width() int  { return l.block.width() + 2*l.pad }
func (l *label) height() int { return l.block.height() + 2*l.pad }

// rings are the distances from an anchor at which places are tried, in
// tenths: close together near it, then ever farther apart, so that a free
// place is always found.
var rings = func() []int {
	var list []int
	for d := 0; d < 100000; d += max(70, d/6) {
		list = append(list, d)
	}
	return list
}()

// lead finds where the leader from an anchor meets the label's box: straight up or
// down where the anchor lies over or under it, else to the side that faces
// it. Text without a frame is led to at the middle of its sides.
func (l *label) lead(b box, from spot) spot {
	const in = 60 // kept from the corners
	bare := l.frame == (look{})
	inner := box{b.left + in, b.top + in, b.right - in, b.bottom - in}
	if inner.left > inner.right || inner.top > inner.bottom || bare {
		inner.top, inner.bottom = b.centre().y, b.centre().y
		inner.left, inner.right = min(inner.left, b.centre().x), max(inner.right, b.centre().x)
	}
	at := inner.nearest(from)
	ends := [4]spot{{b.left, at.y}, {b.right, at.y}, {at.x, b.top}, {at.x, b.bottom}}
	best, least := 0, 0.0
	for i, end := range ends {
		far := distance(end, from)
		if over := from.x > b.left-in && from.x < b.right+in; i > 1 && bare && !over {
			far += 80
		} else if i < 2 && bare && over {
			far += 80
		}
		if i == 0 || far < least {
			best, least = i, far
		}
	}
	return ends[best]
}

// drawLabels writes labels, with their leaders and frames under all that is
// written. A label that lies on a line breaks the line.
func (f *field) drawLabels(p *pen, labels []*label) {
	for _, l := range labels {
		if len(l.leader) > 1 {
			p.line(look{line: dark, weight: 9}, "", l.leader...)
		}
	}
	for _, l := range labels {
		if len(l.leader) > 1 && l.dot {
			p.circle(look{fill: dark}, "", l.leader[0], 24)
		}
	}
	for _, l := range labels {
		if l.frame != (look{}) {
			p.rect(l.frame, "", l.box)
		} else if f.lie(l.box, l, never) > 0 {
			p.rect(look{fill: paper}, "", l.box)
		}
	}
	for _, l := range labels {
		l.write(p)
	}
}

// write writes what the label says.
func (l *label) write(p *pen) {
	h := l.hang
	if l.frame != (look{}) {
		h = fromStart
	}
	b := l.block
	if len(l.forms) > 0 {
		b = l.forms[l.form].shown
	}
	if l.light {
		b = b.light()
	}
	p.write(&b, l.text, h)
}
