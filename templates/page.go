package templates

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"slices"
	"strings"
	"sync"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

//go:embed *.html
var pageFiles embed.FS

//go:embed book.css
var stylesheet []byte

// Stylesheet is the book's one stylesheet.
func Stylesheet() []byte { return bytes.Clone(stylesheet) }

// pages are the templates, in each language.
var pages = map[string]*template.Template{content.English: parsed(content.English), content.Spanish: parsed(content.Spanish)}

// parsed reads the templates with the words of a language: say gives a text
// of a row, with what it is about in its places.
func parsed(language string) *template.Template {
	words := content.WordsIn(language)
	return template.Must(template.New("").Funcs(template.FuncMap{
		"say":     func(key string, about ...any) template.HTML { return trusted(words.Markup(key, pieces(about)...)) },
		"count":   words.Count,
		"names":   func(list []string) template.HTML { return listed(list, ", ") },
		"things":  func(list []string) template.HTML { return listed(withWhole(words, list), ", ") },
		"clauses": func(list []string) template.HTML { return listed(list, "; ") },
		"lang":    words.Language,
		"state":   func(w Word) Word { return w },
		"word":    func(class, text string) Word { return Word{class, text} },
		"status":  stateWord,
		"class":   func(s checks.State) string { return classOf(s) },
		"basis":   func(b source.Basis) string { return b.In(words.Mark) },
		"join":    strings.Join,
	}).ParseFS(pageFiles, "*.html"))
}

// withWhole are things by their names, and the shop itself in the words of the
// page.
func withWhole(words content.Words, things []string) []string {
	var list []string
	for _, thing := range things {
		if thing == shop.Whole {
			thing = words.Text("assumed.whole")
		}
		list = append(list, thing)
	}
	return list
}

// pieces are what a template says a text is about: HTML of a template stands
// as it is, all else is a name.
func pieces(about []any) []content.Piece {
	var list []content.Piece
	for _, a := range about {
		if markup, ok := a.(template.HTML); ok {
			list = append(list, content.Piece{HTML: string(markup)})
		} else {
			list = append(list, content.Piece{Name: fmt.Sprint(a)})
		}
	}
	return list
}

// listed are names one behind the other, each set apart from the direction of
// the line.
func listed(list []string, between string) template.HTML {
	var out []string
	for _, name := range list {
		out = append(out, "<bdi>"+template.HTMLEscapeString(content.Settled(name))+"</bdi>")
	}
	return trusted(strings.Join(out, between))
}

// frame is what the layout shows around a sheet's own part.
type frame struct {
	*Sheet
	Lede     string // what the sheet's own part makes of it
	Block    block
	Tabs     []tab
	Previous *Sheet
	Next     *Sheet
	Body     template.HTML
	Home     bool
}

// leading is a sheet's own part that alone knows what its lede may promise.
type leading interface{ lede() string }

type tab struct {
	Part Part
	Path string
	Here bool
}

// buffers are for parts of pages, used again and again.
var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// buffer is an empty buffer; it goes back to buffers.
func buffer() *bytes.Buffer {
	b := buffers.Get().(*bytes.Buffer)
	b.Reset()
	return b
}

// ownPart stands in the layout for a sheet's own part until both are made, so
// that the layout need not copy it. No name can look like it: names are escaped.
const ownPart = "<!--own part-->"

// Render makes a sheet's page.
func (b *Book) Render(s *Sheet) ([]byte, error) {
	pages := pages[s.language()]
	own, around := buffer(), buffer()
	defer buffers.Put(own)
	defer buffers.Put(around)
	view := s.view()
	if err := pages.ExecuteTemplate(own, s.name, view); err != nil {
		return nil, err
	}
	at, lede := slices.Index(b.Sheets, s), s.Lede
	if v, ok := view.(leading); ok {
		lede = v.lede()
	}
	f := frame{Sheet: s, Lede: lede, Block: b.block(s, at), Tabs: b.tabs(s), Body: ownPart, Home: at == 0}
	if at > 0 {
		f.Previous = b.Sheets[at-1]
	}
	if at+1 < len(b.Sheets) {
		f.Next = b.Sheets[at+1]
	}
	if err := pages.ExecuteTemplate(around, "layout.html", f); err != nil {
		return nil, err
	}
	before, after, found := bytes.Cut(around.Bytes(), []byte(ownPart))
	if !found {
		return nil, fmt.Errorf("the layout has no place for the sheet's own part")
	}
	return slices.Concat(before, own.Bytes(), after), nil
}

// language is that of a sheet's words; English where it does not say.
func (s *Sheet) language() string {
	if s.Language == "" {
		return content.English
	}
	return s.Language
}

func (b *Book) tabs(s *Sheet) []tab {
	var list []tab
	for _, other := range b.Sheets {
		if other.Place == 1 {
			list = append(list, tab{other.Part, other.Path, other.Part == s.Part})
		}
	}
	return list
}
