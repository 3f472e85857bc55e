package templates

import (
	"bytes"
	"embed"
	"html/template"
	"strings"

	"dustbook/checks"
	"dustbook/plan/source"
)

//go:embed *.html
var pageFiles embed.FS

//go:embed book.css
var stylesheet []byte

// Stylesheet is the book's one stylesheet.
func Stylesheet() []byte { return bytes.Clone(stylesheet) }

var pages = template.Must(template.New("").Funcs(template.FuncMap{
	"state":  func(w Word) Word { return w },
	"word":   func(class, text string) Word { return Word{class, text} },
	"status": stateWord,
	"class":  func(s checks.State) string { return classOf(s) },
	"basis":  func(b source.Basis) string { return b.String() },
	"join":   strings.Join,
}).ParseFS(pageFiles, "*.html"))

// frame is what the layout shows around a sheet's own part.
type frame struct {
	*Sheet
	Shop     string
	Revision string
	AsOf     string
	Total    int
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
	var body bytes.Buffer
	if err := pages.ExecuteTemplate(&body, s.name, s.view()); err != nil {
		return nil, err
	}
	f := frame{Sheet: s, Shop: b.Plan.Shop.Name, Revision: b.revision(), AsOf: b.asOf(), Total: len(b.Sheets), Tabs: b.tabs(s), Body: template.HTML(body.String())}
	for i, other := range b.Sheets {
		if other != s {
			continue
		}
		f.Home = i == 0
		if i > 0 {
			f.Previous = b.Sheets[i-1]
		}
		if i+1 < len(b.Sheets) {
			f.Next = b.Sheets[i+1]
		}
	}
	var page bytes.Buffer
	if err := pages.ExecuteTemplate(&page, "layout.html", f); err != nil {
		return nil, err
	}
	return page.Bytes(), nil
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

// revision is the newest revision and its date, or a dash.
func (b *Book) revision() string {
	if r, ok := b.Plan.Revision(); ok {
		return r.Mark + " · " + r.Date.String()
	}
	return "—"
}

// asOf is the day the book is reckoned as of, or a dash.
func (b *Book) asOf() string {
	if b.Plan.AsOf.Year == 0 {
		return "no date given"
	}
	return b.Plan.AsOf.String()
}
