package templates

import (
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// citation is where a figure comes from, with the row of the document on the
// sheet of sources; without one where there is no document.
type citation struct{ Text, Path string }

// cited lists where figures come from, each once, and leaves out what the shop
// file itself gives.
func (b *Book) cited(list []source.Basis) []citation {
	var out []citation
	seen := map[string]bool{}
	for _, basis := range list {
		text := basis.In(b.words.Mark)
		if basis.Mark == source.Given || basis.Mark == 0 || seen[text] {
			continue
		}
		seen[text] = true
		c := citation{Text: text}
		if basis.Document != "" {
			c.Path = "sources.html#" + documentID(basis.Document)
		}
		out = append(out, c)
	}
	return out
}

// documentID is the name of a document's row.
func documentID(document string) string { return "document-" + shop.Slug(document) }
