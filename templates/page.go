package templates

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"dustbook/checks"
	"dustbook/content"
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
		"say":    func(key string, about ...any) template.HTML { return trusted(words.HTML(key, texts(about)...)) },
		"lang":   words.Language,
		"state":  func(w Word) Word { return w },
		"word":   func(class, text string) Word { return Word{class, text} },
		"status": stateWord,
		"class":  func(s checks.State) string { return classOf(s) },
		"basis":  func(b source.Basis) string { return b.String() },
		"join":   strings.Join,
	}).ParseFS(pageFiles, "*.html"))
}

// texts are values as a template prints them.
func texts(about []any) []string {
	var list []string
	for _, a := range about {
		list = append(list, fmt.Sprint(a))
	}
	return list
}

// frame is what the layout shows around a sheet's own part.
type frame struct {
	*Sheet
	Block    block
	Tabs     []tab
	Previous *Sheet
	Next     *Sheet
	Body     template.HTML
	Home     bool
}

type tab struct {
	Part Part
	Path string
	Here bool
}

// Render makes a sheet's page.
func (b *Book) Render(s *Sheet) ([]byte, error) {
	pages := pages[s.language()]
	var body bytes.Buffer
	if err := pages.ExecuteTemplate(&body, s.name, s.view()); err != nil {
		return nil, err
	}
	at := slices.Index(b.Sheets, s)
	f := frame{Sheet: s, Block: b.block(s, at), Tabs: b.tabs(s), Body: template.HTML(body.String()), Home: at == 0}
	if at > 0 {
		f.Previous = b.Sheets[at-1]
	}
	if at+1 < len(b.Sheets) {
		f.Next = b.Sheets[at+1]
	}
	var page bytes.Buffer
	if err := pages.ExecuteTemplate(&page, "layout.html", f); err != nil {
		return nil, err
	}
	return page.Bytes(), nil
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
