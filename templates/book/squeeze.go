package book

import (
	"bytes"
	"errors"
	"sync"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/html"
)

// squeezer takes superfluous space out of pages and styles. Drawings are not
// registered with it: their text would lose spaces.
var squeezer = newSqueezer()

func newSqueezer() *minify.M {
	m := minify.New()
	m.Add("text/html", &html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true})
	m.AddFunc("text/css", css.Minify)
	return m
}

func squeezeStyle(style []byte) ([]byte, error) {
	var out bytes.Buffer
	if err := squeezer.Minify("text/css", &out, bytes.NewReader(style)); err != nil {
		return nil, err
	}
	return append(out.Bytes(), '\n'), nil
}

var drawingStart, drawingEnd, noDrawing = []byte("<svg"), []byte("</svg>"), []byte("<svg></svg>")

// squeezing is room for a page without its drawings, before and after.
type squeezing struct {
	text     []byte
	small    bytes.Buffer
	drawings [][]byte
}

var squeezings = sync.Pool{New: func() any { return new(squeezing) }}

// squeezePage squeezes a page. Its drawings, which have no space to spare, are
// taken out before and put back after, so that nobody reads them for that.
func squeezePage(page []byte) ([]byte, error) {
	s := squeezings.Get().(*squeezing)
	defer squeezings.Put(s)
	s.takeOut(page)
	s.small.Reset()
	if err := squeezer.Minify("text/html", &s.small, bytes.NewBuffer(s.text)); err != nil {
		return nil, err
	}
	whole, small := make([]byte, 0, len(page)+1), s.small.Bytes()
	for _, one := range s.drawings {
		before, after, found := bytes.Cut(small, noDrawing)
		if !found {
			return nil, errors.New("a drawing was lost while the page was squeezed")
		}
		whole, small = append(append(whole, before...), one...), after
	}
	return append(append(whole, small...), '\n'), nil
}

// takeOut takes the drawings out of a page.
func (s *squeezing) takeOut(page []byte) {
	s.text, s.drawings = s.text[:0], s.drawings[:0]
	for {
		start := bytes.Index(page, drawingStart)
		end := -1
		if start >= 0 {
			end = bytes.Index(page[start:], drawingEnd)
		}
		if end < 0 {
			s.text = append(s.text, page...)
			return
		}
		end += start + len(drawingEnd)
		s.text = append(append(s.text, page[:start]...), noDrawing...)
		s.drawings = append(s.drawings, page[start:end])
		page = page[end:]
	}
}
