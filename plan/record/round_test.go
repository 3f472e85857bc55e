package record

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"dustbook/plan/entry"
	"dustbook/plan/unit"
)

// hostile are the pieces that random texts are made of.
var hostile = []string{
	`"`, `'`, `"""`, `'''`, `\`, `\"`, `\u0000`, "\n", "\r", "\r\n", "\t", "\x00", "\x01", "\x1b", "\x7f", "\u0085", "\u00a0",
	"\u2028", "\u2029", "\ufeff", "\ufffd", "\u200b", "\u200d", "\u200e", "\u202e", "\u2066", "مرحبا", "שלום", "é", "e\u0301", "日本",
	"👩‍👩‍👧", "🏴\U000e0067\U000e0062\U000e007f", "\U0010ffff", "# no remark", "[[item]]", "date = 2026-11-24", "=", "{", "}", "]", ",", " ", "a", "0",
}

// maker makes random records.
type maker struct{ *rand.Rand }

// text is a random text; sometimes none, unless it must say something.
func (m maker) text(longest int, must bool) string {
	var b strings.Builder
	for range m.IntN(12) {
		b.WriteString(hostile[m.IntN(len(hostile))])
	}
	runes := []rune(b.String())
	text := string(runes[:min(len(runes), longest)])
	if must && strings.TrimSpace(text) == "" {
		return "x"
	}
	return text
}

func (m maker) date() entry.Date { return day(m.IntN(9999)+1, m.IntN(12)+1, m.IntN(28)+1) }

func (m maker) word(group string, must bool) string {
	list := wordsOf(group)
	if !must && m.IntN(3) == 0 {
		return ""
	}
	return list[m.IntN(len(list))]
}

// words are some words of a group, each once.
func (m maker) words(group string) []string {
	var list []string
	for _, word := range wordsOf(group) {
		if m.IntN(8) == 0 {
			list = append(list, word)
		}
	}
	return list
}

// quantity is a value of what is measured, written in one of its units.
func (m maker) quantity(t *testing.T, of Measure) Quantity {
	if of.Kind == 0 {
		return Quantity{Text: m.text(longestQuantity, true)}
	}
	example := strings.Split(of.Kind.Example(), `"`)[1+2*m.IntN(2)]
	_, name, _ := strings.Cut(example, " ")
	text := example
	if name != "" {
		text = fmt.Sprintf("%d.%d %s", m.IntN(3000), m.IntN(100), name)
	}
	q, err := of.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

func (m maker) record(t *testing.T) *Record {
	r := &Record{Kind: m.word("record kind", true), Date: m.date(), Role: m.text(200, false), Note: m.text(8000, false), Done: m.words("service")}
	for range m.IntN(4) {
		of := measures[m.IntN(len(measures))]
		reading := Reading{Of: of.Word, At: m.text(200, true), Value: m.quantity(t, of), Use: m.text(200, false),
			Filter: m.word("filter state", false), With: m.text(200, false)}
		if m.IntN(2) == 0 {
			reading.Expected = m.quantity(t, of)
		}
		if calibrated := m.date(); !after(calibrated, r.Date) {
			reading.Calibrated = calibrated
		}
		r.Readings = append(r.Readings, reading)
	}
	if r.Kind != kindWithItems {
		return r
	}
	for range m.IntN(4) {
		item := Item{Asks: m.text(4000, true), Rule: m.text(1000, false), State: m.word("item state", false), Gap: m.text(4000, false), Evidence: m.text(4000, false)}
		switch m.IntN(3) {
		case 0:
			item.Answered.Date = m.date()
		case 1:
			item.Answered.Text = "on the " + m.text(900, false)
		}
		r.Items = append(r.Items, item)
	}
	return r
}

// A record that is written and read again is the same record, whatever its
// texts hold, and its text is the same text.
func TestRoundTrip(t *testing.T) {
	m := maker{rand.New(rand.NewPCG(7, 11))}
	for i := range 3000 {
		r := m.record(t)
		text := r.TOML()
		got, problems := Read("", text)
		if len(problems) > 0 {
			t.Fatalf("record %d: %v\n%s", i, problems, text)
		}
		if !reflect.DeepEqual(plain(got), plain(r)) {
			t.Fatalf("record %d\nread  %+v\nwrote %+v\n%s", i, got, r, text)
		}
		if again := got.TOML(); !bytes.Equal(again, text) {
			t.Fatalf("record %d\n%s\nbecomes\n%s", i, text, again)
		}
	}
}

// Nothing that hides, or turns the direction of the line, stands in the file
// as it is; what people type does.
func TestQuote(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"plain", `"plain"`},
		{`say "4 in" \ now`, `"say \"4 in\" \\ now"`},
		{"a\nb\r\tc\b\f", `"a\nb\r\tc\b\f"`},
		{"\x00\x1b\x7f\u0085", `"\u0000\u001B\u007F\u0085"`},
		{"a\u202eb\u2066\ufeff\u2028", `"a\u202Eb\u2066\uFEFF\u2028"`},
		{"\U000e0067", `"\U000E0067"`},
		{"é 日本 שלום 👩‍👧 \ufffd", `"é 日本 שלום 👩‍👧 ` + "\ufffd" + `"`},
		{"a\xffb", "\"a\xffb\""},
	} {
		if got := quote(c.text); got != c.want {
			t.Errorf("%q becomes %s, want %s", c.text, got, c.want)
		}
	}
}

// The text of a record is checked against the TOML rules by reading it with
// entry; here its shape is checked by eye, once.
func TestTOML(t *testing.T) {
	r := &Record{Kind: "service", Date: day(2026, 11, 24), Readings: []Reading{{Of: "filter pressure", At: "Cyclone",
		Value: Quantity{300, unit.KindPressure, "300 Pa"}, Calibrated: day(2026, 1, 2)}}}
	const want = "kind = \"service\"\ndate = 2026-11-24\n\n[[reading]]\nof = \"filter pressure\"\nat = \"Cyclone\"\nvalue = \"300 Pa\"\ncalibrated = 2026-01-02\n"
	if got := string(r.TOML()); got != want {
		t.Errorf("%s", got)
	}
}
