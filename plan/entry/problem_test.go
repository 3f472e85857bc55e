package entry

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

func TestProblemIsOneLine(t *testing.T) {
	whole := Problem{"shop.toml", Place{12, 8}, `"800 cfn"`, "a flow", `write "800 cfm"`}
	for _, c := range []struct {
		change func(p *Problem)
		want   string
	}{
		{func(p *Problem) {}, `shop.toml:12:8: read "800 cfn"; expected a flow; do: write "800 cfm"`},
		{func(p *Problem) { p.Column = 0 }, `shop.toml:12: read "800 cfn"; expected a flow; do: write "800 cfm"`},
		{func(p *Problem) { p.Place = Place{} }, `shop.toml: read "800 cfn"; expected a flow; do: write "800 cfm"`},
		{func(p *Problem) { p.Expected, p.Do = "", "" }, `shop.toml:12:8: read "800 cfn"`},
		{func(p *Problem) { p.File, p.Place, p.Read = "", Place{}, "" }, `expected a flow; do: write "800 cfm"`},
		{func(p *Problem) { p.Do = "one\n\ttwo\u202e" }, `shop.toml:12:8: read "800 cfn"; expected a flow; do: one two\u202e`},
	} {
		p := whole
		c.change(&p)
		if got := p.Error(); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}

func TestProblemsAreSorted(t *testing.T) {
	list := Problems{
		{File: "b", Place: Place{9, 1}, Read: "1"},
		{File: "a", Place: Place{2, 5}, Read: "2"},
		{File: "b", Place: Place{2, 7}, Read: "3"},
		{File: "b", Place: Place{2, 7}, Read: "4"},
		{File: "b", Place: Place{2, 3}, Read: "5"},
		{File: "a", Place: Place{1, 9}, Read: "6"},
		{File: "b", Read: "7"},
		{File: "b", Place: Place{2, 7}, Read: "0"},
	}
	list.Sort()
	order := ""
	for _, p := range list {
		order += p.Read
	}
	if order != "75340162" {
		t.Errorf("order %s", order)
	}
	if got := list[:2].Error(); got != "b: read 7\nb:2:3: read 5" {
		t.Errorf("%q", got)
	}
}

func TestProblemsAtOnePlaceKeepTheirOrder(t *testing.T) {
	var list Problems
	for i := range 200 {
		list = append(list, Problem{Place: Place{2 - i%2, 3}, Do: fmt.Sprint(i)})
	}
	list.Sort()
	for i, p := range list {
		if want := fmt.Sprint(i*2 + 1); i < 100 && p.Do != want {
			t.Fatalf("%d comes before %s", i, p.Do)
		}
	}
}

func TestErrIsNilForNoProblems(t *testing.T) {
	if err := (Problems{}).Err(); err != nil {
		t.Errorf("%v", err)
	}
	var found Problems
	if err := (Problems{{Read: "x"}}).Err(); !errors.As(err, &found) || len(found) != 1 {
		t.Errorf("%v", err)
	}
}

func TestPlaceIsKnown(t *testing.T) {
	if (Place{}).Known() || !(Place{1, 1}).Known() {
		t.Error("the zero place alone is unknown")
	}
}

// TestRefusalOfTheDecoder hands decode what the outline would have stopped, to
// see that the decoder's own refusals are told at the right place too.
func TestRefusalOfTheDecoder(t *testing.T) {
	for body, want := range map[string]string{
		"a = 1\r\n  b = 2 x":              "f:2:8: read b = 2 x; expected what the TOML rules allow here (expected a top-level item to end with a newline, comment, or EOF, but got 'x' i…); do: write the line again, more simply",
		"# é\na = [1 2]":                  "f:2:8: read a = [1 2]; expected what the TOML rules allow here (expected a comma (',') or array terminator (']'), but got '2'); do: write the line again, more simply",
		"a = 1\n\na = 99":                 "f:3:1: read a = 99; expected each name once; do: take the name away here, or where it is given first",
		"a = 99999999999999999999":        "f:1:5: read a = 99999999999999999999; expected what the TOML rules allow here (99999999999999999999 is out of range for int64); do: write the line again, more simply",
		"[[m]]\na = 1\n[[m]]\na = \"x":    "f:4:6: read a = \"x; expected what the TOML rules allow here (unexpected EOF; expected '\"'); do: write the line again, more simply",
		"a = 1\n\"\xc3\xa9\" = 01 # \xc3": "f:2:7: read \"é\" = 01 # \ufffd; expected what the TOML rules allow here (Invalid integer \"01\": cannot have leading zeroes); do: write the line again, more simply",
	} {
		_, _, problems := decode(newText("f", body), len(body))
		if got := problems.Error(); got != want {
			t.Errorf("%q\ngot  %s\nwant %s", body, got, want)
		}
	}
	if p := refusal(newText("f", "a"), errors.New("a\nfault")); p.Error() != "f: read a fault; expected what the TOML rules allow here; do: write the line again, more simply" {
		t.Error(p.Error())
	}
	for _, start := range []int{-5, 0, 1, 900} {
		if p := refusal(newText("f", "a"), toml.ParseError{Position: toml.Position{Start: start}}); p.Line != 1 || p.Column < 1 || p.Column > 2 {
			t.Errorf("byte %d: %v", start, p.Place)
		}
	}
}

// TestFailureOfTheDecoderIsAProblem makes the decoder fail by itself.
func TestFailureOfTheDecoderIsAProblem(t *testing.T) {
	_, _, problems := decode(newText("f", "a = 1"), 99)
	if len(problems) != 1 || !strings.HasPrefix(problems[0].Error(), "f: read a text that cannot be decoded;") {
		t.Errorf("%v", problems)
	}
}
