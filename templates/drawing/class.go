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
var Classes = []Class{
	{"drawn", "the svg element of every drawing"},
	{"fill-ink", "text, walls and whatever is filled black"},
	{"fill-soft", "text of lesser weight: the figures of dimensions"},
	{"fill-paper", "the sheet's own ground: hollow ducts, frames of tags, breaks in a wall"},
	{"fill-tint", "a machine at rest"},
	{"fill-air", "arrows of moving air"},
	{"fill-air-soft", "where air moves: machines and collectors in use"},
	{"fill-stop", "the words that say a figure falls short, behind their mark ▲, and the middle of a stop"},
	{"line-ink", "outlines, gates, leaders"},
	{"line-soft", "edges of ducts off the open way, hoses, dimension lines, and lines down to a floor"},
	{"line-rule", "the grid of a chart, and the edges of floors"},
	{"line-paper", "the inside of a hollow duct, and gaps where one thing passes over another"},
	{"line-air", "edges of the open way, and curves of a chart"},
	{"line-air-soft", "the inside of the open way"},
	{"line-stop", "hollow arrows: air too slow for its dust"},
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
	mitre      bool // corners up to a right angle run out to a point
	round      bool // corners are round
}

// pairs are the attributes of a look.
func (l look) pairs() []string {
	class := ""
	if l.fill != bare {
		class = "fill-" + string(l.fill)
	}
	if l.line != bare {
		if class != "" {
			class += " "
		}
		class += "line-" + string(l.line)
	}
	out := []string{"class", class, "fill", l.fill.plain()}
	if l.line != bare {
		out = append(out, "stroke", l.line.plain(), "stroke-width", figure(l.weight))
		if l.mitre {
			out = append(out, "stroke-linejoin", "miter", "stroke-miterlimit", "1.5")
		}
		if l.round {
			out = append(out, "stroke-linejoin", "round")
		}
		if l.dash != "" {
			out = append(out, "stroke-dasharray", l.dash)
		}
	}
	return out
}
