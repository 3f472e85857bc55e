package templates

import (
	"strings"
	"testing"
	"testing/fstest"

	"dustbook/content"
)

// A note says before all else that it is the shop's own and that the plan has
// not checked it; no other sheet says so.
func TestNotesSayThatNobodyChecked(t *testing.T) {
	b := newBook(t, string(content.Example()))
	if err := b.AddNotes(fstest.MapFS{"emptying.md": {Data: []byte("# Emptying\n\nWear a mask.\n")}}); err != nil {
		t.Fatal(err)
	}
	notes := 0
	for _, s := range b.Sheets {
		page, says := pageOf(t, b, s.Path), b.words.Text("note.not-checked")
		head, _, _ := strings.Cut(page, "Wear a mask.")
		if s.Part == partNotes {
			notes++
			if !strings.Contains(head, says) || !strings.Contains(head, b.words.Text("note.own")) {
				t.Errorf("%s does not open with whose it is", s.Path)
			}
		} else if strings.Contains(page, says) {
			t.Errorf("%s says %q", s.Path, says)
		}
	}
	if notes != 1 {
		t.Errorf("%d notes, want one", notes)
	}
}
