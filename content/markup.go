package content

import (
	"html"
	"strconv"
	"strings"
)

// Piece is what a text is about, for a text that becomes HTML: a name, which
// is set apart from the direction of the line and can be the address of a
// link, or HTML that stands as it is.
type Piece struct {
	Name string
	HTML string
}

// dress is a piece as HTML.
func (p Piece) dress() string {
	if p.HTML != "" {
		return p.HTML
	}
	if p.Name == "" {
		return ""
	}
	return "<bdi>" + html.EscapeString(Settled(p.Name)) + "</bdi>"
}

// Markup is a text as HTML. It may hold **bold** and *slanted* words, `typed`
// ones, and links, [words]{1}, to the address in their place, which the program
// makes; without an address the words stand alone.
func (w Words) Markup(key string, about ...Piece) string { return marked(w.row(key), about) }

// marked is the text of a row as HTML.
func marked(text string, about []Piece) string {
	text = html.EscapeString(text)
	for _, m := range marks {
		text = paired(text, m.sign, m.element)
	}
	return linked(text, about)
}

// marks are the signs that stand before and behind words, the longer first.
var marks = []struct{ sign, element string }{{"**", "b"}, {"*", "i"}, {"`", "code"}}

// paired turns pairs of a sign into elements.
func paired(text, sign, element string) string {
	for {
		before, rest, found := strings.Cut(text, sign)
		inside, after, closed := strings.Cut(rest, sign)
		if !found || !closed {
			return text
		}
		text = before + "<" + element + ">" + inside + "</" + element + ">" + after
	}
}

// linked fills the places of a text and makes its links, in one pass.
func linked(text string, about []Piece) string {
	var out strings.Builder
	for {
		before, words, address, after, found := cutLink(text, about)
		out.WriteString(filled(before, about))
		if !found {
			return out.String()
		}
		if address == "" {
			out.WriteString(filled(words, about))
		} else {
			out.WriteString(`<a href="` + html.EscapeString(address) + `">` + filled(words, about) + "</a>")
		}
		text = after
	}
}

// cutLink cuts a text around its first link.
func cutLink(text string, about []Piece) (before, words, address, after string, found bool) {
	head, rest, has := strings.Cut(text, "]{")
	digits, after, closed := strings.Cut(rest, "}")
	start := strings.LastIndex(head, "[")
	n, err := strconv.Atoi(digits)
	if !has || !closed || start < 0 || err != nil || n < 1 || n > len(about) {
		return text, "", "", "", false
	}
	return head[:start], head[start+1:], about[n-1].Name, after, true
}

// filled puts pieces in their places.
func filled(text string, about []Piece) string {
	var dressed []string
	for _, p := range about {
		dressed = append(dressed, p.dress())
	}
	return fill(text, dressed, func(s string) string { return s })
}

// bare is a text without the signs of its markup.
func bare(text string) string {
	for _, m := range marks {
		text = strings.ReplaceAll(text, m.sign, "")
	}
	return text
}
