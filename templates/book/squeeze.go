package book

import (
	"bytes"

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

func squeezePage(page []byte) ([]byte, error) { return squeeze("text/html", page) }

func squeezeStyle(style []byte) ([]byte, error) { return squeeze("text/css", style) }

// squeeze reads from a reader of its own: the library overwrites the slice it
// is given.
func squeeze(kind string, in []byte) ([]byte, error) {
	var out bytes.Buffer
	out.Grow(len(in))
	if err := squeezer.Minify(kind, &out, bytes.NewReader(bytes.Clone(in))); err != nil {
		return nil, err
	}
	return append(out.Bytes(), '\n'), nil
}
