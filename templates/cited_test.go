package templates

import (
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/source"
)

// Every document behind a finding has its row, and each source is cited once.
func TestFindingsAreCited(t *testing.T) {
	b := newBook(t, string(content.Example()))
	page := pageOf(t, b, "sources.html")
	linked := 0
	for _, f := range b.Findings {
		seen := map[string]bool{}
		for _, c := range b.cited(append(f.Basis, f.Basis...)) {
			if seen[c.Text] {
				t.Errorf("%s of %s cites %q twice", f.Check, f.About, c.Text)
			}
			seen[c.Text] = true
			if _, id, found := strings.Cut(c.Path, "#"); found {
				linked++
				if strings.Count(page, `id="`+id+`"`) != 1 {
					t.Errorf("%s of %s: no row %s", f.Check, f.About, id)
				}
			}
		}
	}
	if linked < 5 {
		t.Errorf("only %d findings lead to a document", linked)
	}
}

// What the shop file gives is no source, and common practice has no document.
func TestWhatIsNotCited(t *testing.T) {
	got := (&Book{words: content.WordsIn(content.English)}).cited([]source.Basis{{Mark: source.Given, Clause: "manual"}, {}, {Mark: source.Practice}})
	if len(got) != 1 || got[0].Path != "" || got[0].Text != "common practice, no source" {
		t.Errorf("%+v", got)
	}
}
