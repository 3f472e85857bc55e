package book

import (
	"bytes"
	"testing"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/html"
)

// A page squeezed without its drawings is, byte for byte, what the library
// makes of the page with them.
func TestSqueezePage(t *testing.T) {
	plain := minify.New()
	plain.Add("text/html", &html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true})
	for _, page := range []string{
		"<p>  a   b </p>\n\n<p>c</p>",
		`<p>a <svg class="x"><text>a  b</text></svg> b</p>`,
		"<div>\n <svg><a href=\"b\"><title>t  t</title></a></svg>\n  <svg><path d=\"M0 0\"/></svg>  text</div>",
		"<p>one</p>\n<svg></svg>\n<figure> <svg>a</svg> </figure>",
		"<dl><dt><svg>a</svg> name</dt> <dd> b </dd></dl>",
		"<pre> <svg>a</svg>  b\n c</pre>",
		"<p>&lt;svg&gt; is   text</p>",
	} {
		got, err := squeezePage([]byte(page))
		if err != nil {
			t.Fatal(err)
		}
		want, err := plain.Bytes("text/html", []byte(page))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, append(want, '\n')) {
			t.Errorf("%q: %q, want %q", page, got, want)
		}
	}
	if page, err := squeezePage([]byte("<p><svg>not closed</p>")); err != nil || len(page) == 0 {
		t.Errorf("a drawing that is not closed: %q, %v", page, err)
	}
}
