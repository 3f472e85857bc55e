package drawing

import "strings"

// Font sizes, in tenths of a unit. None is under 13.
const (
	smallText   = 130 // dimensions, key, notes
	plainText   = 140 // gates, tags, exits
	machineText = 150
)

// run is a piece of a line in one weight; it may lead to another sheet.
type run struct {
	text string
	bold bool
	path string
}

// block is a few lines of text set together.
type block struct {
	lines [][]run
	size  int
	ink   ink
	full  string // the whole text where the block shows it shortened
}

// writing makes a block of one weight, wrapped.
func writing(text string, bold bool, size, most, lines int) block {
	b := block{size: size, ink: dark}
	set, short := wrap(text, bold, size, most, lines)
	if short {
		b.full = drawable(text)
	}
	for _, line := range set {
		b.lines = append(b.lines, []run{{line, bold, ""}})
	}
	return b
}

// add puts a word behind the last line where the longest that may stand there
// fits within most, else on a line of its own.
func (b *block) add(r run, longest string, most int) {
	last := len(b.lines) - 1
	if b.runWidth(b.lines[last])+b.runWidth([]run{{" " + longest, r.bold, ""}}) <= most {
		b.lines[last] = append(b.lines[last], run{" " + r.text, r.bold, r.path})
		return
	}
	b.lines = append(b.lines, []run{r})
}

// follow puts a number behind the last with a comma, on the same line where it
// fits within most.
func (b *block) follow(r run, most int) {
	last := len(b.lines) - 1
	comma := run{",", r.bold, ""}
	b.lines[last] = append(b.lines[last], comma)
	if gap := (run{" ", r.bold, ""}); b.runWidth(b.lines[last])+b.runWidth([]run{gap, r}) <= most {
		b.lines[last] = append(b.lines[last], gap, r)
		return
	}
	b.lines = append(b.lines, []run{r})
}

// under adds a line.
func (b *block) under(text string, bold bool) {
	b.lines = append(b.lines, []run{{text, bold, ""}})
}

// light is the block with nothing bold, set as it was.
func (b block) light() block {
	lines := b.lines
	b.lines = nil
	for _, line := range lines {
		var thin []run
		for _, r := range line {
			thin = append(thin, run{r.text, false, r.path})
		}
		b.lines = append(b.lines, thin)
	}
	return b
}

func (b *block) runWidth(line []run) int {
	w := 0
	for _, r := range line {
		w += textWidth(r.text, r.bold, b.size)
	}
	return w
}

// width and height of the block, in tenths.
func (b *block) width() int {
	w := 0
	for _, line := range b.lines {
		w = max(w, b.runWidth(line))
	}
	return w
}

func (b *block) leading() int { return b.size * 12 / 10 }

func (b *block) height() int { return b.leading() * len(b.lines) }

// text is all that the block says, on one line.
func (b *block) text() string {
	out := ""
	for i, line := range b.lines {
		if i > 0 {
			out += " "
		}
		for _, r := range line {
			out += r.text
		}
	}
	return out
}

// hang says at which end lines of a block line up.
type hang string

const (
	fromStart hang = "start"
	fromEnd   hang = "end"
	centred   hang = "middle"
)

// write sets a block into a box: vertically in its middle, lines at the
// given end.
func (p *pen) write(b *block, in box, h hang) {
	x := in.left
	switch h {
	case fromEnd:
		x = in.right
	case centred:
		x = (in.left + in.right) / 2
	}
	top := (in.top+in.bottom)/2 - b.height()/2
	p.reach(in)
	if b.full != "" {
		p.begin("g")
		p.raw("<title>", escaped(b.full), "</title>")
	}
	for i, line := range b.lines {
		p.textLine(b, line, spot{x, top + b.leading()*i + b.size*95/100}, h)
	}
	if b.full != "" {
		p.end("g")
	}
}

// textLine writes one line at its baseline.
func (p *pen) textLine(b *block, line []run, at spot, h hang) {
	allBold := true
	for _, r := range line {
		allBold = allBold && r.bold
	}
	var room [160]byte
	p.start("text", b.append(room[:0], h, allBold))
	p.number("x", at.x)
	p.number("y", at.y)
	p.styled()
	p.raw(">")
	for _, r := range line {
		if r.path != "" {
			p.linked = true
			p.tag("a", "href", r.path)
		}
		says, short, marked := strings.Cut(r.text, slowMark)
		p.span(says, r.bold && !allBold, bare)
		if marked {
			p.span(slowMark+short, r.bold && !allBold, stop)
		}
		if r.path != "" {
			p.raw("</a>")
		}
	}
	p.raw("</text>")
}

// append adds the attributes of a line of the block.
func (b *block) append(out []byte, h hang, bold bool) []byte {
	if b.size != smallText {
		out = append(appendFigure(append(out, ` font-size="`...), b.size), '"')
	}
	if h != fromStart {
		out = append(append(append(out, ` text-anchor="`...), h...), '"')
	}
	if bold {
		out = append(out, ` font-weight="700"`...)
	}
	if b.ink != dark {
		out = look{fill: b.ink}.append(out)
	}
	return out
}

// span writes a part of a line, in bold or in another colour where asked.
func (p *pen) span(text string, bold bool, i ink) {
	if text == "" {
		return
	}
	plain := !bold && i == bare
	if !plain {
		p.raw("<tspan")
	}
	if bold {
		p.raw(` font-weight="700"`)
	}
	if i != bare {
		p.out = look{fill: i}.append(p.out)
	}
	if plain {
		p.raw(escaped(text))
		return
	}
	p.raw(">", escaped(text), "</tspan>")
}
