package templates

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/record"
)

// inLanguage is the school's book in a language of cards.
func inLanguage(t *testing.T, language string) *Book {
	t.Helper()
	return newBook(t, strings.Replace(string(content.Example()), "[shop]\n", "[shop]\nlanguage = \""+language+"\"\n", 1))
}

// Cards and signs come in the languages of the shop; in two, the Spanish ones
// stand beside the English.
func TestLanguagesOfCards(t *testing.T) {
	if strings.Contains(string(content.Example()), "\nlanguage =") {
		t.Fatal("the example says its language: this test sets it")
	}
	english := newBook(t, string(content.Example()))
	for _, c := range []struct {
		language string
		en, es   int
	}{{"en", 1, 0}, {"es", 0, 1}, {"both", 1, 1}} {
		b := inLanguage(t, c.language)
		one, en, es := 0, 0, 0
		for _, s := range english.Sheets {
			if s.Card != nil {
				one++
			}
		}
		for _, s := range b.Sheets {
			switch {
			case s.Card == nil:
			case s.language() == content.Spanish:
				es++
			default:
				en++
			}
		}
		if en != c.en*one || es != c.es*one {
			t.Errorf("%s: %d cards in English and %d in Spanish, of %d", c.language, en, es, one)
		}
	}
}

// A Spanish card says its language, opens with the order at smoke in Spanish,
// and asks for a fluent speaker until a record says that one read it.
func TestSpanishCard(t *testing.T) {
	b := inLanguage(t, "both")
	page := func(b *Book, path string) string {
		for _, s := range b.Sheets {
			if s.Path == path {
				data, err := b.Render(s)
				if err != nil {
					t.Fatal(err)
				}
				return string(data)
			}
		}
		t.Fatalf("there is no sheet %s", path)
		return ""
	}
	es, en := page(b, "es-card-planer.html"), page(b, "card-planer.html")
	for _, want := range []string{`<html lang="es">`, "Suelte la pieza", "fluent speaker", "Usted abre"} {
		if !strings.Contains(es, want) {
			t.Errorf("the Spanish card does not say %q", want)
		}
		if strings.Contains(en, want) {
			t.Errorf("the English card says %q", want)
		}
	}
	b.Plan.Records = append(b.Plan.Records, &record.Record{Readings: []record.Reading{{Of: "wording", At: "Planer"}}})
	checked, err := New(b.Plan, b.Findings)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(page(checked, "es-card-planer.html"), "fluent speaker") {
		t.Error("the card still asks for a fluent speaker")
	}
	if !strings.Contains(page(checked, "es-card-jointer.html"), "fluent speaker") {
		t.Error("the jointer's card no longer asks for a fluent speaker")
	}
}

// Every text of a card, a sign or the order at smoke is there in Spanish.
func TestCardsAreTranslated(t *testing.T) {
	for _, key := range content.Keys() {
		area, _, _ := strings.Cut(key, ".")
		switch area {
		case "smoke", "card", "never", "gear", "who", "gate", "sign", "block", "frame", "spanish":
			if _, translated := content.Has(key, content.Spanish); !translated {
				t.Errorf("%s is not translated", key)
			}
		}
	}
}

// Every text that a template asks for is a row.
func TestTemplatesAskForTexts(t *testing.T) {
	files, err := pageFiles.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	asked := 0
	for _, f := range files {
		data, err := pageFiles.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range strings.Split(string(data), `{{say "`)[1:] {
			key, _, _ := strings.Cut(part, `"`)
			asked++
			if known, _ := content.Has(key, content.English); !known {
				t.Errorf("%s asks for %q, which has no row", f.Name(), key)
			}
		}
	}
	if asked < 50 {
		t.Errorf("only %d texts are asked for", asked)
	}
}

// Every text that Go code of the sheets asks for by its name is a row.
func TestSheetsAskForTexts(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	asking := regexp.MustCompile(`\.(Text|HTML|Count)\("([a-z.-]+)"[,)]`)
	asked := 0
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range asking.FindAllStringSubmatch(string(data), -1) {
			keys := []string{m[2]}
			switch {
			case m[1] == "Count":
				keys = []string{m[2] + ".one", m[2] + ".many"}
			case !strings.Contains(m[2], "."):
				continue // a column of a data row
			}
			for _, key := range keys {
				asked++
				if known, _ := content.Has(key, content.English); !known {
					t.Errorf("%s asks for %q, which has no row", name, key)
				}
			}
		}
	}
	if asked < 50 {
		t.Errorf("only %d texts are asked for", asked)
	}
}
