package templates

import (
	"html/template"
	"strings"

	"dustbook/plan/shop"
)

// passage is one head of the narrative: what the file says, a sentence each,
// and what it does not say.
type passage struct {
	Head  template.HTML
	Says  []template.HTML
	Lacks []template.HTML
	See   []aboutLink // where the figures stand

	b *Book
}

// story is the narrative of the packet, made from the shop alone.
func (b *Book) story() []*passage {
	list := []*passage{b.tellShop(), b.tellBuilding(), b.tellDust(), b.tellCapture(), b.tellDucts()}
	for _, c := range b.Plan.Shop.Collectors {
		list = append(list, b.tellCollector(c))
	}
	return append(list, b.tellGates(), b.tellFollowing(), b.tellStops(), b.tellUpkeep(), b.tellReckoning())
}

// passage starts a head of the narrative.
func (b *Book) passage(key string, about ...any) *passage {
	return &passage{b: b, Head: b.sentence(key, about...)}
}

// sentence is a text of a row as HTML: what is HTML stands as it is, all else
// is a name.
func (b *Book) sentence(key string, about ...any) template.HTML {
	return trusted(b.words.Markup(key, pieces(about)...))
}

// say adds a sentence.
func (p *passage) say(key string, about ...any) { p.Says = append(p.Says, p.b.sentence(key, about...)) }

// count adds the sentence for a number of things, {1}.
func (p *passage) count(key string, n int, about ...any) {
	p.say(one(key, n), append([]any{n}, about...)...)
}

// one is the key of the text for one thing, or for many.
func one(key string, n int) string {
	if n == 1 {
		return key + ".one"
	}
	return key + ".many"
}

// lack adds what the file does not say.
func (p *passage) lack(key string, about ...any) {
	p.Lacks = append(p.Lacks, p.b.sentence(key, about...))
}

// lackOf adds what the file does not say of some things; nothing for none.
func (p *passage) lackOf(key string, names []string) {
	if len(names) > 0 {
		p.lack(key, p.b.named(names))
	}
}

// sayOf adds a sentence about some things; nothing for none.
func (p *passage) sayOf(key string, names []string) {
	if len(names) > 0 {
		p.say(key, p.b.named(names))
	}
}

// see adds a sheet with the figures.
func (p *passage) see(key, path string) {
	p.See = append(p.See, aboutLink{p.b.words.Text(key), path})
}

// known adds a sentence with a value that the file gives, else what it lacks.
func known[T any](p *passage, f shop.Field[T], says, lacks string, print func(T) string) {
	if !f.Stated() {
		p.lack(lacks)
		return
	}
	p.say(says, print(f.V))
}

// named are names as a sentence joins them, each set apart from the direction
// of the line.
func (b *Book) named(names []string) template.HTML {
	last := len(names) - 1
	if last < 1 {
		return listed(names, "")
	}
	return listed(names[:last], ", ") + trusted(" "+template.HTMLEscapeString(b.words.Text("card.and"))+" ") + listed(names[last:], "")
}

// clausesOf are clauses of a sentence, which are HTML already, joined as named
// are.
func (b *Book) clausesOf(list []template.HTML) template.HTML {
	var out strings.Builder
	for i, clause := range list {
		switch {
		case i > 0 && i == len(list)-1:
			out.WriteString(" " + template.HTMLEscapeString(b.words.Text("card.and")) + " ")
		case i > 0:
			out.WriteString(", ")
		}
		out.WriteString(string(clause))
	}
	return trusted(out.String())
}

// LacksSay are the things that the file does not say, as one sentence.
func (p *passage) LacksSay() template.HTML {
	var out strings.Builder
	for i, lack := range p.Lacks {
		if i > 0 {
			out.WriteString("; ")
		}
		out.WriteString(string(lack))
	}
	return trusted(out.String())
}
