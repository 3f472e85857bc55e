package shop

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestBase: the file that the cases below spoil is sound.
func TestBase(t *testing.T) {
	sound(t, file(t, "testdata/base.toml"))
}

// TestWrong spoils a sound file in one place at a time. One cause gives one
// message, with the place, what was read, what was expected and what to do.
func TestWrong(t *testing.T) {
	count := checkEdits(t, "testdata/wrong", func(t *testing.T, c edit) {
		if len(c.want) != 1 {
			t.Errorf("%d problems are wanted of one cause", len(c.want))
		}
	})
	if count < 200 {
		t.Errorf("%d cases, want 200 at least", count)
	}
}

// TestSeveral spoils it in several places: all are reported, in the order of
// the file.
func TestSeveral(t *testing.T) {
	count := checkEdits(t, "testdata/several", func(t *testing.T, c edit) {
		if len(c.want) < 2 {
			t.Errorf("%d problems are wanted of several causes", len(c.want))
		}
	})
	if count < 10 {
		t.Errorf("%d cases, want 10 at least", count)
	}
}

// checkEdits runs the cases of a folder.
func checkEdits(t *testing.T, folder string, also func(*testing.T, edit)) (count int) {
	base := file(t, "testdata/base.toml")
	for _, path := range editFiles(t, folder) {
		names := map[string]bool{}
		for _, c := range edits(t, path, base) {
			count++
			t.Run(strings.TrimSuffix(filepath.Base(path), ".txt")+"/"+c.name, func(t *testing.T) {
				if names[c.name] {
					t.Error("two cases of this name")
				}
				names[c.name] = true
				also(t, c)
				if got, want := refused(t, c.text), strings.Join(c.want, "\n"); got != want {
					t.Errorf("got\n%s\nwant\n%s", got, want)
				}
				checkProblems(t, c.text)
			})
		}
	}
	return count
}

// checkProblems holds of any file with problems: each has a place in the
// file, says all it should, and they are sorted.
func checkProblems(t *testing.T, text string) {
	t.Helper()
	_, problems := Read("shop.toml", []byte(text))
	lines := strings.Split(text, "\n")
	for i, p := range problems {
		switch {
		case p.Line < 1 || p.Line > len(lines) || p.Column < 1 || p.Column > len([]rune(lines[p.Line-1]))+1:
			t.Errorf("no place in the file: %v", p)
		case p.Read == "" || p.Expected == "" || p.Do == "" || p.File != "shop.toml":
			t.Errorf("it does not say all: %+v", p)
		case i > 0 && (p.Line < problems[i-1].Line || p.Line == problems[i-1].Line && p.Column < problems[i-1].Column):
			t.Errorf("before the one above it: %v", p)
		}
	}
}
