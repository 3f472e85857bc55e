package drawing

import (
	"encoding/xml"
	"strconv"
	"strings"
)

// figure prints tenths as a number with at most one decimal.
func figure(n int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	if n%10 == 0 {
		return sign + strconv.Itoa(n/10)
	}
	return sign + strconv.Itoa(n/10) + "." + strconv.Itoa(n%10)
}

// escaped makes a text harmless in an element or a quoted attribute.
func escaped(text string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(text)) // a strings.Builder never fails
	return b.String()
}

// pen writes shapes and keeps the box around all of them.
type pen struct {
	strings.Builder
	extent box
	drawn  bool
	linked bool // something leads to another sheet
}

// reach makes the pen's extent hold a box.
func (p *pen) reach(b box) {
	if !p.drawn {
		p.extent, p.drawn = b, true
		return
	}
	p.extent = p.extent.with(b)
}

// begin opens an element with its attributes in pairs of name and value.
func (p *pen) begin(name string, pairs ...string) {
	p.WriteString("<" + name)
	for i := 0; i+1 < len(pairs); i += 2 {
		p.WriteString(" " + pairs[i] + `="` + escaped(pairs[i+1]) + `"`)
	}
	p.WriteString(">")
}

func (p *pen) end(name string) { p.WriteString("</" + name + ">") }

// shape writes an element that holds at most a title.
func (p *pen) shape(name, title string, pairs []string) {
	p.begin(name, pairs...)
	if title != "" {
		p.WriteString("<title>" + escaped(title) + "</title>")
	}
	p.end(name)
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
func trail(spots []spot, closed bool) string {
	var b strings.Builder
	for i, s := range spots {
		if i == 0 {
			b.WriteString("M")
		} else {
			b.WriteString("L")
		}
		b.WriteString(figure(s.x) + " " + figure(s.y))
	}
	if closed {
		b.WriteString("Z")
	}
	return b.String()
}

// line draws a run of lines.
func (p *pen) line(l look, title string, spots ...spot) {
	if len(spots) < 2 {
		return
	}
	p.reach(boxOf(spots...).grown(l.weight / 2))
	p.shape("path", title, append([]string{"d", trail(spots, false)}, l.pairs()...))
}

// lines draws many runs of one look as one shape.
func (p *pen) lines(l look, title string, runs ...path) {
	d := ""
	for _, run := range runs {
		p.reach(boxOf(run...).grown(l.weight / 2))
		d += trail(run, false)
	}
	if d != "" {
		p.shape("path", title, append([]string{"d", d}, l.pairs()...))
	}
}

// area draws a closed outline.
func (p *pen) area(l look, title string, spots ...spot) {
	p.reach(boxOf(spots...).grown(l.weight / 2))
	p.shape("path", title, append([]string{"d", trail(spots, true)}, l.pairs()...))
}

// rect draws a box.
func (p *pen) rect(l look, title string, b box) {
	p.reach(b.grown(l.weight / 2))
	p.shape("rect", title, append([]string{"x", figure(b.left), "y", figure(b.top), "width", figure(b.width()), "height", figure(b.height())}, l.pairs()...))
}

// circle draws a circle.
func (p *pen) circle(l look, title string, at spot, radius int) {
	p.reach(around(at, radius, radius).grown(l.weight / 2))
	p.shape("circle", title, append([]string{"cx", figure(at.x), "cy", figure(at.y), "r", figure(radius)}, l.pairs()...))
}

// arc draws a part of a circle from a to b, bulging to the left or the right
// of the way from a to b.
func (p *pen) arc(l look, title string, a, b spot, radius int, left bool) {
	p.reach(boxOf(a, b).grown(radius / 4))
	sweep := "1"
	if !left {
		sweep = "0"
	}
	d := trail([]spot{a}, false) + " A" + figure(radius) + " " + figure(radius) + " 0 0 " + sweep + " " + figure(b.x) + " " + figure(b.y)
	p.shape("path", title, append([]string{"d", d}, l.pairs()...))
}

// frame wraps what was drawn into the svg element, with a margin. Text is of
// the small size and black unless it says otherwise. A drawing with links is
// a group of them to those who do not see it, any other a picture.
func (p *pen) frame(id, title, desc string, margin int) SVG {
	b := p.extent.grown(margin)
	role := "img"
	if p.linked {
		role = "group"
	}
	var out pen
	out.begin("svg", "class", "drawn fill-ink", "viewBox", figure(b.left)+" "+figure(b.top)+" "+figure(b.width())+" "+figure(b.height()),
		"width", figure(b.width()), "height", figure(b.height()), "role", role, "aria-labelledby", id+"-title "+id+"-desc",
		"fill", dark.plain(), "font-size", figure(smallText), "font-family", "Arial, 'Liberation Sans', Helvetica, sans-serif")
	out.begin("title", "id", id+"-title")
	out.WriteString(escaped(title))
	out.end("title")
	out.begin("desc", "id", id+"-desc")
	out.WriteString(escaped(desc))
	out.end("desc")
	out.WriteString(p.String())
	out.end("svg")
	return SVG(out.String())
}
