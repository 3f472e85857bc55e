package content

import (
	"strings"
	"testing"
)

func TestFillKeepsNamesWhole(t *testing.T) {
	same := func(s string) string { return s }
	for _, c := range []struct {
		text  string
		about []string
		want  string
	}{
		{"Put {1} on {2}.", []string{"a hose", "the {1}"}, "Put a hose on the {1}."},
		{"{2} before {1}", []string{"first", "second"}, "second before first"},
		{"{3} {x} {1", []string{"a"}, "{3} {x} {1"},
		{"plain", nil, "plain"},
	} {
		if got := fill(c.text, c.about, same); got != c.want {
			t.Errorf("fill(%q, %q) = %q, want %q", c.text, c.about, got, c.want)
		}
	}
}

func TestHTMLEscapesNames(t *testing.T) {
	for _, c := range []struct {
		text  string
		about []Piece
		want  string
	}{
		{"**Put** {1} & go", []Piece{{Name: "<b>**x"}}, "<b>Put</b> <bdi>&lt;b&gt;**x</bdi> &amp; go"},
		{"below *at the need* write `[[tap]]`", nil, "below <i>at the need</i> write <code>[[tap]]</code>"},
		{"see [the {2}]{1}, then {2}", []Piece{{Name: `a"b.html`}, {Name: "plan"}}, `see <a href="a&#34;b.html">the <bdi>plan</bdi></a>, then <bdi>plan</bdi>`},
		{"[{1}]{2} is open", []Piece{{Name: "[x]{2}"}, {}}, "<bdi>[x]{2}</bdi> is open"},
		{"{1}, {2}.", []Piece{{HTML: "<i>{2}</i>"}, {Name: "b"}}, "<i>{2}</i>, <bdi>b</bdi>."},
		{"[no]{3} {1", []Piece{{Name: "a"}}, "[no]{3} {1"},
		{"3 * 4", nil, "3 * 4"},
	} {
		if got := marked(c.text, c.about); got != c.want {
			t.Errorf("%q is %q, want %q", c.text, got, c.want)
		}
	}
	if got := WordsIn(English).HTML("frame.skip"); got != "To the sheet" {
		t.Errorf("%q", got)
	}
}

func TestTextHasNoMarkup(t *testing.T) {
	if got := bare("**Put** it in `[[tap]]`, *now*"); got != "Put it in [[tap]], now" {
		t.Errorf("%q", got)
	}
}

func TestSpanishFallsBackOnEnglish(t *testing.T) {
	for _, key := range Keys() {
		known, translated := Has(key, Spanish)
		if !known {
			t.Fatalf("%s is not known", key)
		}
		same := WordsIn(Spanish).Text(key) == WordsIn(English).Text(key)
		if !translated && !same {
			t.Errorf("%s: no Spanish, yet not the English text", key)
		}
	}
}

// Both languages of a text are about the same things.
func TestPlacesAgree(t *testing.T) {
	for _, key := range Keys() {
		if _, translated := Has(key, Spanish); !translated {
			continue
		}
		for _, place := range []string{"{1}", "{2}", "{3}", "{4}", "{5}"} {
			en, es := strings.Contains(WordsIn(English).row(key), place), strings.Contains(WordsIn(Spanish).row(key), place)
			if en != es {
				t.Errorf("%s: %s stands in one language only", key, place)
			}
		}
	}
}
