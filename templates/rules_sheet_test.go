package templates

import (
	"cmp"
	"strings"
	"testing"

	"dustbook/checks"
	"dustbook/content"
	"dustbook/plan/unit"
)

// The sheet of the rules shows every row of every pack, with its text, edition,
// clause and mark.
func TestRulesSheet(t *testing.T) {
	b := newBook(t, string(content.Example()))
	page, words := b.sheet(t, rulesPath)
	rows := 0
	for _, figure := range b.rulesView().Figures {
		at := words[strings.Index(words, figure.Means):]
		for _, r := range figure.Rows {
			rows++
			if !strings.Contains(at, r.Value) || !strings.Contains(at, r.Mark) {
				t.Errorf("%s: %+v is left out", figure.ID, r)
			}
		}
	}
	if rows != len(checks.Rules()) {
		t.Errorf("%d rows of %d", rows, len(checks.Rules()))
	}
	for _, r := range checks.Rules() {
		want := strings.Join(strings.Fields(cmp.Or(r.Basis.Edition(), "—")+"; "+cmp.Or(r.Basis.Clause, "—")), " ")
		if !strings.Contains(page, `id="figure-`+r.Figure+`"`) || !strings.Contains(words, want) || !strings.Contains(words, r.Basis.Title()) {
			t.Errorf("%s of %s: no %q", r.Figure, r.Rules, want)
		}
	}
	if !strings.Contains(words, "texts used in the United States") || !strings.Contains(words, "IMC : 2018") {
		t.Error("the pack or the editions of the shop are left out")
	}
}

// The rows of the shop's own pack are told apart, and a shop without a pack
// has none.
func TestRulesOfTheShop(t *testing.T) {
	for pack, want := range map[string]bool{"us": true, "none": false} {
		b := newBook(t, strings.Replace(string(content.Example()), "rules = \"us\"", "rules = \""+pack+"\"", 1))
		own := 0
		for _, figure := range b.rulesView().Figures {
			for _, r := range figure.Rows {
				if r.Own != (r.Pack == pack) {
					t.Errorf("%s: %+v", pack, r)
				}
				if r.Own {
					own++
				}
			}
		}
		if (own > 0) != want {
			t.Errorf("%s: %d rows of its own", pack, own)
		}
	}
	b := newBook(t, strings.Replace(string(content.Example()), "rules = \"us\"", "rules = \"none\"", 1))
	if v := b.rulesVerdict(); v.Words[0].Class != "blank" {
		t.Errorf("%+v", v)
	}
}

// Texts that say another figure are told side by side.
func TestRulesAgree(t *testing.T) {
	b := newBook(t, string(content.Small()))
	row := func(kind unit.Kind, value string) ruleRow {
		return b.ruleRow(checks.Rule{Rules: "us", Value: value, Kind: kind})
	}
	for _, c := range []struct {
		class string
		rows  []ruleRow
	}{
		{"blank", []ruleRow{row(unit.KindLength, "1 m")}},
		{"advice", []ruleRow{row(unit.KindLength, "1 m"), row(unit.KindLength, "1000 mm")}},
		{"thin", []ruleRow{row(unit.KindLength, "1 m"), row(unit.KindLength, "2 m")}},
		{"thin", []ruleRow{row(0, "sander"), row(0, "")}},
		{"blank", []ruleRow{row(0, ""), row(0, "")}},
	} {
		if got := b.agree(c.rows).Class; got != c.class {
			t.Errorf("%v: %s, want %s", c.rows, got, c.class)
		}
	}
}

// A figure that the owner has had confirmed stands on the sheet and in the
// packet, with who said so; without one neither speaks of it.
func TestRulesConfirmed(t *testing.T) {
	line := "\n[[confirmed]]\nfigure = \"open-bag-distance\"\nvalue = \"7 m\"\nby = \"letter of the marshal\"\n"
	for _, path := range []string{rulesPath, packetPath} {
		_, words := newBook(t, string(content.Example())+line).sheet(t, path)
		if !strings.Contains(words, "7 m , by letter of the marshal") {
			t.Errorf("%s: what was confirmed is left out", path)
		}
		if _, words = newBook(t, string(content.Example())).sheet(t, path); strings.Contains(words, "had confirmed") {
			t.Errorf("%s: something is confirmed", path)
		}
	}
}

// Every figure that the checks compare with has words of its own on the sheet.
func TestRuleFiguresAreNamed(t *testing.T) {
	b := newBook(t, string(content.Example()))
	looked := map[string]string{}
	for _, r := range checks.Rules() {
		means := b.figureMeans(r.Figure)
		if len(strings.Fields(means)) < 4 {
			t.Errorf("%s has no words: %q", r.Figure, means)
		}
		if other, again := looked[means]; again && other != r.Figure {
			t.Errorf("%s and %s are both called %q", other, r.Figure, means)
		}
		looked[means] = r.Figure
	}
	if len(looked) < 40 {
		t.Errorf("only %d figures", len(looked))
	}
}
