package checks_test

import (
	"strings"
	"testing"

	"dustbook/checks"
)

// editions names the editions of the whole shop.
func editions(text string) change {
	return change{`rules = "us"`, "rules = \"us\"\neditions = " + text}
}

// californian names the text of California that the figures of the US are beside.
var californian = editions(`{ "California T8 5143" = "Register 2024" }`)

// A text that the checks do not know and an edition that is none are told with
// those that there are, on their lines; an edition that is known is not.
func TestProblemsOfEditions(t *testing.T) {
	for _, c := range []struct{ text, read, do string }{
		{`{ "IMC" = "2018", "NFPA 664" = "2012" }`, "", ""},
		{`{ "IMC" = "2019" }`, `"IMC" = "2019"`, `write one of "2018", "2021", "2024"`},
		{`{ "IMK" = "2018" }`, `the text "IMK"`, `"IMC"`},
		{`{ "Fire book" = "2018" }`, `the text "Fire book"`, `use one of "NFPA 664"`},
	} {
		problems := checks.Problems(planOf(t, editions(c.text)))
		if c.read == "" {
			if len(problems) > 0 {
				t.Errorf("%s: %v", c.text, problems)
			}
			continue
		}
		if len(problems) != 1 || problems[0].Place.Line != 6 || problems[0].Place.Column < 10 || problems[0].Read != c.read || !strings.Contains(problems[0].Do, c.do) {
			t.Errorf("%s: %+v, want read %s, do %s", c.text, problems, c.read, c.do)
		}
	}
}

// An edition that was not read decides nothing: its figure is that of another
// edition, shown and asked; the edition that was read decides.
func TestEditionNotRead(t *testing.T) {
	thin := drop("gauge = \"28 ga\"\n")
	for text, want := range map[string]checks.State{`{ "IRC" = "2018" }`: checks.NotMet, `{ "IRC" = "2009" }`: checks.NotMet, `{ "IRC" = "2003" }`: checks.NotMet, `{ "IRC" = "2021" }`: checks.Ask, `{ "IMC" = "2021" }`: checks.NotMet} {
		f := only(t, checks.Run(planOf(t, through, thin, editions(text))), "garage-separation", "Lathe drop")
		if f.State != want {
			t.Errorf("%s: %s, want %s: %s", text, f.State, want, f.Says)
		}
		if other := strings.Contains(f.Says, "another edition"); other != (want == checks.Ask) {
			t.Errorf("%s: %s", text, f.Says)
		}
	}
	if len(checks.Editions("IRC")) < 2 || checks.Editions("Fire book") != nil {
		t.Errorf("%q, %q", checks.Editions("IRC"), checks.Editions("Fire book"))
	}
}
