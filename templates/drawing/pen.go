package drawing

import (
	"bytes"
	"encoding/xml"
	"strconv"
	"strings"
	"unicode/utf8"
)

// appendFigure adds tenths as a number with at most one decimal.
func appendFigure(out []byte, n int) []byte {
	if n < 0 {
		out, n = append(out, '-'), -n
	}
	out = strconv.AppendInt(out, int64(n/10), 10)
	if n%10 != 0 {
		out = append(out, '.', byte('0'+n%10))
	}
	return out
}

// figure prints tenths as a number with at most one decimal.
func figure(n int) string { return string(appendFigure(nil, n)) }

// escaped makes a text harmless in an element or a quoted attribute.
func escaped(text string) string {
	if harmless(text) {
		return text
	}
	var b strings.Builder
	xml.EscapeText(&b, []byte(text)) // a strings.Builder never fails
	return b.String()
}

// harmless reports whether nothing in a text has to be escaped.
func harmless(text string) bool {
	for _, r := range text {
		if r < ' ' || r == '&' || r == '<' || r == '>' || r == '"' || r == '\'' || r >= 0xfffd && r <= 0xffff {
			return false
		}
	}
	return utf8.ValidString(text)
}

// pen writes shapes and keeps the box around all of them. Elements behind each
// other that are drawn alike stand in a group that says once how.
type pen struct {
	out    []byte
	extent box
	drawn  bool
	linked bool // something leads to another sheet
	alike  alike
}

// alike is what the elements written last are drawn with, as attributes, and
// where in what is written the last one stands.
type alike struct {
	style           []byte
	grouped, joins  bool // a group is open; the element being written goes into it
	start, from, to int  // of the element, of its style
}

// reach makes the pen's extent hold a box.
func (p *pen) reach(b box) {
	if !p.drawn {
		p.extent, p.drawn = b, true
		return
	}
	p.extent = p.extent.with(b)
}

// raw writes text as it is.
func (p *pen) raw(texts ...string) {
	for _, text := range texts {
		p.out = append(p.out, text...)
	}
}

// tag opens an element with its attributes in pairs of name and value.
func (p *pen) tag(name string, pairs ...string) {
	p.raw("<", name)
	for i := 0; i+1 < len(pairs); i += 2 {
		p.raw(" ", pairs[i], `="`, escaped(pairs[i+1]), `"`)
	}
	p.raw(">")
}

// begin opens an element that is drawn like no other.
func (p *pen) begin(name string, pairs ...string) {
	p.apart()
	p.tag(name, pairs...)
}

func (p *pen) end(name string) {
	p.apart()
	p.raw("</", name, ">")
}

// apart ends a group: what follows is drawn otherwise. Where none has begun it
// changes nothing, so that several may frame what is drawn at a time.
func (p *pen) apart() {
	if len(p.alike.style) == 0 {
		return
	}
	if p.alike.grouped {
		p.raw("</g>")
	}
	p.alike.grouped, p.alike.style = false, p.alike.style[:0]
}

// start begins an element drawn in a style, written as attributes: into the
// group of the elements before it where they are drawn alike.
func (p *pen) start(name string, style []byte) {
	a := &p.alike
	if a.joins = len(style) > 0 && bytes.Equal(style, a.style); a.joins && !a.grouped {
		last := append([]byte{}, p.out[a.start:a.from]...)
		last = append(last, p.out[a.to:]...)
		p.out = append(p.out[:a.start], "<g"...)
		p.out = append(append(append(p.out, style...), '>'), last...)
		a.grouped = true
	}
	if !a.joins {
		p.apart()
		a.style, a.start = append(a.style, style...), len(p.out)
	}
	p.raw("<", name)
}

// styled writes the style of the element begun, unless its group says it.
func (p *pen) styled() {
	if a := &p.alike; !a.joins {
		a.from = len(p.out)
		p.out = append(p.out, a.style...)
		a.to = len(p.out)
	}
}

// number writes an attribute that is a number of tenths.
func (p *pen) number(name string, n int) {
	p.raw(" ", name, `="`)
	p.out = append(appendFigure(p.out, n), '"')
}

// close ends a shape that holds at most a title.
func (p *pen) close(name, title string) {
	p.styled()
	if title == "" {
		p.raw("/>")
		return
	}
	p.raw("><title>", escaped(title), "</title></", name, ">")
}

// shape starts a shape with a look.
func (p *pen) shape(name string, l look) {
	var room [160]byte
	p.start(name, l.append(room[:0]))
}

// link draws what leads to another sheet; with an empty path it leads nowhere.
func (p *pen) link(path string, draw func()) {
	if path == "" {
		draw()
		return
	}
	p.linked = true
	p.begin("a", "href", path)
	draw()
	p.end("a")
}

// trail writes the path of some spots for the d attribute.
func trail(spots []spot, closed bool) string { return string(appendTrail(nil, spots, closed)) }

// appendTrail adds the path: from its start each spot is told by how far it
// lies from the one before, which is shorter than its place.
func appendTrail(out []byte, spots []spot, closed bool) []byte {
	for i, s := range spots {
		if i == 0 {
			out = appendPair(append(out, 'M'), s.x, s.y)
			continue
		}
		switch dx, dy := s.x-spots[i-1].x, s.y-spots[i-1].y; {
		case dy == 0:
			out = appendFigure(append(out, 'h'), dx)
		case dx == 0:
			out = appendFigure(append(out, 'v'), dy)
		default:
			out = appendPair(append(out, 'l'), dx, dy)
		}
	}
	if closed {
		out = append(out, 'Z')
	}
	return out
}

// appendPair adds two figures, apart from each other.
func appendPair(out []byte, x, y int) []byte {
	if out = appendFigure(out, x); y >= 0 {
		out = append(out, ' ')
	}
	return appendFigure(out, y)
}

// frame wraps what was drawn into the svg element, with a margin. Text is of
// the small size and black unless it says otherwise, and corners up to a
// right angle run out to a point. A drawing with links is a group of them to
// those who do not see it, any other a picture.
func (p *pen) frame(id, title, desc string, margin int) SVG {
	p.apart()
	b := p.extent.grown(margin)
	role := "img"
	if p.linked {
		role = "group"
	}
	var out pen
	out.begin("svg", "class", "drawn fill-ink", "viewBox", figure(b.left)+" "+figure(b.top)+" "+figure(b.width())+" "+figure(b.height()),
		"width", figure(b.width()), "height", figure(b.height()), "role", role, "aria-labelledby", id+"-title "+id+"-desc",
		"fill", dark.plain(), "font-size", figure(smallText), "font-family", "Arial, 'Liberation Sans', Helvetica, sans-serif", "stroke-miterlimit", "1.5")
	out.begin("title", "id", id+"-title")
	out.raw(escaped(title))
	out.end("title")
	out.begin("desc", "id", id+"-desc")
	out.raw(escaped(desc))
	out.end("desc")
	var whole strings.Builder
	whole.Grow(len(out.out) + len(p.out) + len("</svg>"))
	whole.Write(out.out)
	whole.Write(p.out)
	whole.WriteString("</svg>")
	return SVG(whole.String())
}
