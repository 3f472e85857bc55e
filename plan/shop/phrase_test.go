package shop

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

func TestPhrase(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{phrase("needed"), "needed"},
		{phrase("between", "1 in", "2 in"), "from 1 in to 2 in"},
		{phrase("needed where", "{1}"), "needed: {1}"},
		{phrase("kind more ports", "guard"), " (where it has one: guard)"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("an unknown phrase is no fault")
		}
	}()
	phrase("weather")
}

// Every row of phrases.csv is asked for by some code of this package.
func TestPhrasesAreUsed(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	code := ""
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		code += string(text)
	}
	for name := range phrases {
		if !strings.Contains(code, strconv.Quote(name)) {
			t.Errorf("nothing asks for %q: take its row out of phrases.csv", name)
		}
	}
	if len(phrases) < 15 || strings.Contains(code, strconv.Quote("weather")) {
		t.Errorf("%d phrases", len(phrases))
	}
}
