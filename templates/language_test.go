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

// pageOf is a sheet of a book as a page.
func pageOf(t *testing.T, b *Book, path string) string {
	t.Helper()
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
	page := func(b *Book, path string) string { return pageOf(t, b, path) }
	es, en := page(b, "es-card-planer.html"), page(b, "card-planer.html")
	for _, want := range []string{`<html lang="es">`, "Suelte la pieza", "fluent speaker", "Usted abre"} {
		if !strings.Contains(es, want) {
			t.Errorf("the Spanish card does not say %q", want)
		}
		if strings.Contains(en, want) {
			t.Errorf("the English card says %q", want)
		}
	}
	for _, c := range []struct {
		says []string // records about the planer, in their order
		asks bool
	}{
		{[]string{"read by a fluent speaker"}, false},
		{[]string{"two words are wrong"}, true},
		{[]string{"read by a fluent speaker", "the new text is not read"}, true},
		{[]string{"two words are wrong", "read by a fluent speaker"}, false},
	} {
		b.Plan.Records = nil
		for _, says := range c.says {
			b.Plan.Records = append(b.Plan.Records, &record.Record{Readings: []record.Reading{{Of: "wording", At: "Planer", Value: record.Quantity{Text: says}}}})
		}
		again, err := New(b.Plan, b.Findings)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(page(again, "es-card-planer.html"), "fluent speaker"); got != c.asks {
			t.Errorf("records %q: the card asks for a fluent speaker: %v", c.says, got)
		}
		if !strings.Contains(page(again, "es-card-jointer.html"), "fluent speaker") {
			t.Errorf("records %q: the jointer's card no longer asks", c.says)
		}
	}
}

// What is said in English on a Spanish card is marked so, on the sheet of all
// cards too, where each card keeps its own language.
func TestLanguageIsMarked(t *testing.T) {
	for _, c := range []struct{ language, path string }{{"both", "es-card-planer.html"}, {"es", "card-planer.html"}, {"es", "cards.html"}} {
		page := pageOf(t, inLanguage(t, c.language), c.path)
		if !strings.Contains(page, `<p lang="en">`) {
			t.Errorf("%s, %s: the finding is not marked as English", c.language, c.path)
		}
		if !strings.Contains(page, "Taller") || strings.Contains(c.path, "cards") && !strings.Contains(page, `<article class="sheet card one" lang="es">`) {
			t.Errorf("%s, %s: the card is not in Spanish throughout", c.language, c.path)
		}
	}
	if page := pageOf(t, inLanguage(t, "en"), "card-planer.html"); strings.Contains(page, `<p lang=`) {
		t.Error("the English card marks a language")
	}
}

// A powered gate that some trigger forgets does not say that it may be left
// to itself.
func TestGateCardOfAForgottenGate(t *testing.T) {
	b := newBook(t, string(content.Example()))
	verdict := func(gate string) Verdict {
		for _, g := range b.Plan.Shop.Gates {
			if g.Name == gate {
				return b.gateCardView(g).Verdict
			}
		}
		t.Fatalf("there is no %s", gate)
		return Verdict{}
	}
	if v := verdict("South zone gate"); v.Words[0].Class != "notmet" || !strings.Contains(v.Says, "Mitre saw") {
		t.Errorf("the gate that the mitre saw's trigger forgets: %+v", v)
	}
	if v := verdict("Planer gate"); v.Words[0].Class != "advice" || v.Says != b.words.Text("gate.leave-it") {
		t.Errorf("the gate that its trigger opens: %+v", v)
	}
}

// Every text of a card, a sign or the order at smoke is there in Spanish.
func TestCardsAreTranslated(t *testing.T) {
	for _, key := range content.Keys() {
		area, _, _ := strings.Cut(key, ".")
		switch area {
		case "smoke", "part", "common", "card", "never", "gear", "who", "gate", "sign", "block", "frame", "spanish":
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
	asking := regexp.MustCompile(`\b(say|count) "([^"]+)"`)
	asked := 0
	for _, f := range files {
		data, err := pageFiles.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range asking.FindAllStringSubmatch(string(data), -1) {
			keys := []string{m[2]}
			if m[1] == "count" {
				keys = []string{m[2] + ".one", m[2] + ".many"}
			}
			for _, key := range keys {
				asked++
				if known, _ := content.Has(key, content.English); !known {
					t.Errorf("%s asks for %q, which has no row", f.Name(), key)
				}
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

// Every place of every text is filled: no page shows one that is open.
func TestNoPlaceStaysOpen(t *testing.T) {
	open := regexp.MustCompile(`.{0,60}\{[0-9]\}.{0,20}`)
	for name, b := range map[string]*Book{"school": inLanguage(t, "both"), "proof": proofBook(t, nil)} {
		for _, s := range b.Sheets {
			page, err := b.Render(s)
			if err != nil {
				t.Fatal(err)
			}
			if found := open.Find(page); found != nil {
				t.Errorf("%s: %s shows %q", name, s.Path, found)
			}
		}
	}
}
