package content

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// The texts of the pages, a row each: its key, and the text in each language.
// A text may hold {1}, {2} … for what it is about, and the signs of Markup.
//
//go:embed words/*.csv
var wordFiles embed.FS

// The languages a page can be in.
const (
	English = "en"
	Spanish = "es"
)

// Words are the texts of the pages in one language.
type Words struct{ language string }

// WordsIn are the texts in a language; where a text has not been translated it
// stays English.
func WordsIn(language string) Words { return Words{language} }

// Language is the language of the texts, as HTML names it.
func (w Words) Language() string { return w.language }

// Text is a text with its places filled. An unknown key is a fault of the
// program: a test walks every key that is asked for.
func (w Words) Text(key string, about ...string) string {
	return fill(bare(w.row(key)), about, Settled)
}

// HTML is a text as HTML: what it is about is set apart from the direction of
// the line, and the signs of its markup count.
func (w Words) HTML(key string, about ...string) string {
	var pieces []Piece
	for _, name := range about {
		pieces = append(pieces, Piece{Name: name})
	}
	return w.Markup(key, pieces...)
}

// Count is the text of a number of things: that of key.one for 1, else that of
// key.many, with {1} for the number.
func (w Words) Count(key string, n int) string {
	if n == 1 {
		return w.Text(key+".one", "1")
	}
	return w.Text(key+".many", strconv.Itoa(n))
}

// row is the text of a key as it stands in its row.
func (w Words) row(key string) string {
	texts, ok := allWords()[key]
	if !ok {
		panic("content: there is no text " + strconv.Quote(key))
	}
	if text := texts[w.language]; text != "" {
		return text
	}
	return texts[English]
}

// Has reports whether there is a text with a key, and whether it has been
// translated into a language.
func Has(key, language string) (known, translated bool) {
	texts, ok := allWords()[key]
	return ok, texts[language] != ""
}

// Keys lists the keys of every text in order.
func Keys() []string {
	var list []string
	for key := range allWords() {
		list = append(list, key)
	}
	slices.Sort(list)
	return list
}

// fill puts what a text is about in its places, in one pass: what is put in is
// never looked at for places again.
func fill(text string, about []string, dress func(string) string) string {
	if len(about) == 0 {
		return text
	}
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(text, "{")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		digits, after, closed := strings.Cut(rest, "}")
		n, err := strconv.Atoi(digits)
		if !closed || err != nil || n < 1 || n > len(about) {
			out.WriteString("{")
			text = rest
			continue
		}
		out.WriteString(dress(about[n-1]))
		text = after
	}
}

// allWords is every text by key and language.
var allWords = sync.OnceValue(func() map[string]map[string]string {
	all := map[string]map[string]string{}
	names, err := fs.Glob(wordFiles, "words/*.csv")
	if err != nil {
		panic(fmt.Sprintf("content: %v", err))
	}
	for _, name := range names {
		if err := readWords(all, name); err != nil {
			panic(fmt.Sprintf("content: %s: %v", name, err))
		}
	}
	return all
})

// readWords adds the texts of one file.
func readWords(all map[string]map[string]string, name string) error {
	file, err := wordFiles.Open(name)
	if err != nil {
		return err
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], []string{"key", English, Spanish}) {
		return fmt.Errorf("the first row is not key,%s,%s", English, Spanish)
	}
	for _, row := range rows[1:] {
		switch {
		case row[0] == "" || row[1] == "":
			return fmt.Errorf("a row without a key or an English text: %q", row)
		case all[row[0]] != nil:
			return fmt.Errorf("the key %q stands twice", row[0])
		}
		all[row[0]] = map[string]string{English: row[1], Spanish: row[2]}
	}
	return nil
}
