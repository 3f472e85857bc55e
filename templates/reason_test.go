package templates

import (
	"slices"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/shop"
	"dustbook/plan/source"
)

// Every reason of the plan has its row, in English and in Spanish, and the book
// says in English what the terminal says.
func TestReasonsHaveRows(t *testing.T) {
	english, names := content.WordsIn(content.English), []string{"Main 1", "Main 2"}
	for _, name := range source.Reasons() {
		key := "reason." + name
		if known, translated := content.Has(key, content.Spanish); !known || !translated {
			t.Errorf("%s: known %v, in Spanish %v", key, known, translated)
			continue
		}
		places := strings.Count(english.Text(key), "{")
		r := source.Because(name, names[:places]...)
		if got, want := english.Because(r), r.String(); got != want {
			t.Errorf("%s: the book says %q, the terminal %q", name, got, want)
		}
		if spanish := content.WordsIn(content.Spanish).Because(r); spanish == english.Because(r) || places > 0 && !strings.Contains(spanish, names[places-1]) {
			t.Errorf("%s in Spanish: %q", name, spanish)
		}
	}
	for _, key := range content.Keys() {
		if name, is := strings.CutPrefix(key, "reason."); is && !slices.Contains(source.Reasons(), name) {
			t.Errorf("%s is no reason of the plan", key)
		}
	}
}

// The book says of a source in English what the terminal says, whatever its mark.
func TestMarksHaveRows(t *testing.T) {
	english, spanish := content.WordsIn(content.English), content.WordsIn(content.Spanish)
	for mark := source.Mark(0); mark <= source.Given; mark++ {
		for _, document := range []string{"", "vent-manual"} {
			b := source.Basis{Document: document, Clause: "round elbows", Mark: mark}
			if got, want := b.In(english.Mark), b.String(); got != want {
				t.Errorf("the book says %q, the terminal %q", got, want)
			}
			if got, want := b.TitleIn(english.Mark), b.Title(); got != want {
				t.Errorf("the book names %q, the terminal %q", got, want)
			}
			if document == "" && (b.BriefIn(english.Mark) != mark.String() || b.BriefIn(spanish.Mark) == mark.String()) {
				t.Errorf("%s in brief: %q, in Spanish %q", mark, b.BriefIn(english.Mark), b.BriefIn(spanish.Mark))
			}
		}
	}
}

// A state has the word in the book that JSON has, and no state has none.
func TestStatesHaveRows(t *testing.T) {
	for _, s := range []checks.State{checks.Met, checks.NotMet, checks.Thin, checks.InPlay, checks.Ask, checks.NotGiven, checks.Advice, ""} {
		if got := stateWord(s); got.Text != string(s) || got.Class != classOf(s) {
			t.Errorf("%q: %+v", s, got)
		}
	}
}

// Every table on the sheet of sources has a heading of its own.
func TestSourceTablesHaveRows(t *testing.T) {
	b, heads := &Book{words: content.WordsIn(content.English)}, map[string]bool{}
	for _, table := range b.reckoningTables(map[string]bool{}) {
		if heads[table.About] || len(table.Rows) == 0 {
			t.Errorf("the table %q stands twice or is empty", table.About)
		}
		heads[table.About] = true
	}
	if len(heads) < 20 {
		t.Errorf("only %d tables", len(heads))
	}
}

// The shop itself is named in the words of the page, every other thing by its
// own name.
func TestWithWhole(t *testing.T) {
	got := withWhole(content.WordsIn(content.English), []string{"Saw", shop.Whole})
	if !slices.Equal(got, []string{"Saw", "the shop"}) {
		t.Errorf("%q", got)
	}
}

// A reason that is the cause of another is said within it, and a thing that
// waits with what it waits for.
func TestReasonsWithin(t *testing.T) {
	w := content.WordsIn(content.English)
	r := source.Because("size-open", "Main")
	for _, c := range []struct{ got, want string }{
		{w.Because(source.Reason{}), ""},
		{w.Because(r.Causing("off-in-use")), "the plan has none in this use: the size of Main is still to be chosen"},
		{w.Missing("Hall", "room.height", source.Reason{}), "room.height of Hall"},
		{w.Missing("", "shop.envelope", source.Reason{}), "shop.envelope"},
		{w.Missing("Hall", "", source.Because("no-opening")), "Hall: the file says that no opening lets air in"},
		{w.Missing("", "", source.Because("whole-envelope")), "the shop: the envelope's figure is of the whole building, and its rooms do not share one air"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
