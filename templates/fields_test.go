package templates

import (
	"bytes"
	"html"
	"regexp"
	"strings"
	"testing"

	"dustbook/content"
	"dustbook/plan/shop"
)

var markup = regexp.MustCompile(`<[^>]*>`)

// fieldsBody is the sheet of fields without its frame, as markup and as text.
func fieldsBody(t *testing.T) (body, text string) {
	var out bytes.Buffer
	if err := pages[content.English].ExecuteTemplate(&out, "fields.html", (&Book{words: content.WordsIn(content.English)}).viewOfFields()); err != nil {
		t.Fatal(err)
	}
	return out.String(), html.UnescapeString(markup.ReplaceAllString(out.String(), ""))
}

// Every table, field and word of the shop file stands on the sheet once, with
// what it means.
func TestFieldsSheet(t *testing.T) {
	body, text := fieldsBody(t)
	once := func(id string) {
		if n := strings.Count(body, `id="`+id+`"`); n != 1 {
			t.Errorf("the id %s stands %d times", id, n)
		}
	}
	said := func(what, words string) {
		if !strings.Contains(text, words) {
			t.Errorf("%s: the sheet does not say %q", what, words)
		}
	}
	for _, table := range shop.Tables() {
		once("table-" + strings.ReplaceAll(table.Name, " ", "-"))
		said(table.Name, table.Means)
		said(table.Name, table.Place())
	}
	for _, r := range shop.Rows() {
		name := r.Table + "." + r.Field
		once("field-" + strings.ReplaceAll(r.Table, " ", "-") + "-" + r.Field)
		said(name, r.Field+r.Written())
		said(name, r.Needed()+r.Default)
		said(name, r.Bounds()+r.Means)
		for _, example := range r.Examples() {
			if !r.TakesWords() {
				said(name, example)
			}
		}
	}
	words := 0
	for _, group := range shop.WordGroups() {
		once("words-" + strings.ReplaceAll(group, " ", "-"))
		for _, w := range shop.Words(group) {
			said(group, w.Word+w.Means)
			words++
		}
	}
	if words < 120 || len(shop.Rows()) < 200 {
		t.Errorf("%d words, %d fields", words, len(shop.Rows()))
	}
}

// Whatever an assumption names leads to its field, or to its table; what is
// neither leads nowhere.
func TestAssumptionsLeadToFields(t *testing.T) {
	body, _ := fieldsBody(t)
	for _, file := range [][]byte{content.Example(), content.Small(), content.Starter()} {
		s, problems := shop.Read("shop.toml", file)
		if s == nil {
			t.Fatal(problems)
		}
		for _, a := range s.Assumed {
			_, id, found := strings.Cut(fieldPath(a.Field), "#")
			if !found || !strings.Contains(body, `id="`+id+`"`) {
				t.Errorf("%s leads to %q", a.Field, id)
			}
		}
	}
	for name, want := range map[string]string{"hose.size": "fields.html#field-hose-size", "hose.roughness": "fields.html#table-hose", "house.size": "", "": ""} {
		if path := fieldPath(name); path != want {
			t.Errorf("%s leads to %q, want %q", name, path, want)
		}
	}
}
