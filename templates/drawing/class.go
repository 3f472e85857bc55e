package drawing

// Class is a class name that drawings use, with what it means.
type Class struct{ Name, Means string }

// Classes are all class names in drawings. Each sets one property, fill or
// stroke; the style sheet gives the colour. Everything else is an attribute.
//
// A style sheet of the book needs these and no more:
//
//	.fill-ink { fill: var(--ink) }  .line-ink { stroke: var(--ink) }  and so on
//
// On the svg element: class "drawn", for its size in the page.
var Classes = classes(
	"drawn",
	"fill-ink", "fill-soft", "fill-paper", "fill-tint", "fill-air", "fill-air-soft", "fill-stop",
	"line-ink", "line-soft", "line-rule", "line-paper", "line-air", "line-air-soft", "line-stop",
)

// classes are class names with what each means.
func classes(names ...string) []Class {
	var list []Class
	for _, name := range names {
		list = append(list, Class{name, wording.Text("class." + name)})
	}
	return list
}

// ink is a colour of the sheet. The empty ink draws nothing.
type ink string

const (
	bare    ink = ""
	dark    ink = "ink"
	soft    ink = "soft"
	rule    ink = "rule"
	paper   ink = "paper"
	tint    ink = "tint"
	air     ink = "air"
	airSoft ink = "air-soft"
	stop    ink = "stop"
)

// plain is what an ink is where no style sheet says otherwise.
func (i ink) plain() string {
	switch i {
	case bare:
		return "none"
	case soft:
		return "#444"
	case rule:
		return "#bbb"
	case paper:
		return "#fff"
	case tint:
		return "#f2f2f2"
	case airSoft:
		return "#ddd"
	}
	return "#000"
}

// look is how a shape is drawn: what fills it, what edges it, how heavily in
// tenths, and with which dashes.
type look struct {
	fill, line ink
	weight     int
	dash       string
	round      bool // corners are round
}

// append adds the attributes of a look.
func (l look) append(out []byte) []byte {
	add := func(parts ...string) {
		for _, part := range parts {
			out = append(out, part...)
		}
	}
	add(` class="`)
	if l.fill != bare {
		add("fill-", string(l.fill))
	}
	if l.line != bare {
		if l.fill != bare {
			add(" ")
		}
		add("line-", string(l.line))
	}
	add(`" fill="`, l.fill.plain(), `"`)
	if l.line != bare {
		add(` stroke="`, l.line.plain(), `" stroke-width="`)
		out = append(appendFigure(out, l.weight), '"')
		if l.round {
			add(` stroke-linejoin="round"`)
		}
		if l.dash != "" {
			add(` stroke-dasharray="`, l.dash, `"`)
		}
	}
	return out
}
