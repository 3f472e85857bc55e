package record

import (
	"fmt"
	"strings"
	"unicode"

	"dustbook/plan/entry"
)

// TOML is the record as the text of its file: the fields in the order of the
// contract, those that say nothing left out. Reading it gives the record
// again.
func (r *Record) TOML() []byte {
	w := &writer{}
	w.text("kind", r.Kind)
	w.date("date", r.Date)
	w.text("role", r.Role)
	w.text("note", r.Note)
	w.words("done", r.Done)
	for _, reading := range r.Readings {
		w.reading(reading)
	}
	for _, item := range r.Items {
		w.item(item)
	}
	return []byte(w.String())
}

// writer puts down one line after the other.
type writer struct{ strings.Builder }

func (w *writer) header(name string) { w.WriteString("\n[[" + name + "]]\n") }

func (w *writer) text(field, value string) {
	if value != "" {
		w.WriteString(field + " = " + quote(value) + "\n")
	}
}

// words writes one word alone, and several as a list.
func (w *writer) words(field string, list []string) {
	if len(list) == 1 {
		w.text(field, list[0])
		return
	}
	var quoted []string
	for _, word := range list {
		quoted = append(quoted, quote(word))
	}
	if len(list) > 0 {
		w.WriteString(field + " = [" + strings.Join(quoted, ", ") + "]\n")
	}
}

func (w *writer) date(field string, day entry.Date) {
	if day != (entry.Date{}) {
		w.WriteString(field + " = " + day.String() + "\n")
	}
}

func (w *writer) reading(r Reading) {
	w.header("reading")
	w.text("of", r.Of)
	w.text("at", r.At)
	w.text("value", r.Value.Text)
	w.text("expected", r.Expected.Text)
	w.text("use", r.Use)
	w.text("filter", r.Filter)
	w.text("with", r.With)
	w.date("calibrated", r.Calibrated)
}

func (w *writer) item(i Item) {
	w.header("item")
	w.text("asks", i.Asks)
	w.text("rule", i.Rule)
	w.text("state", i.State)
	w.text("gap", i.Gap)
	w.date("answered", i.Answered.Date)
	w.text("answered", i.Answered.Text)
	w.text("evidence", i.Evidence)
}

// escapes are the characters that TOML writes with a letter.
var escapes = map[rune]string{'"': `\"`, '\\': `\\`, '\b': `\b`, '\t': `\t`, '\n': `\n`, '\f': `\f`, '\r': `\r`}

// quote writes a text as a TOML string on one line. What cannot be seen, or
// turns the direction of what is seen, stands as its code. A byte that is not
// UTF-8 stays, so that reading refuses it.
func quote(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for i, c := range text {
		short, escaped := escapes[c]
		switch {
		case escaped:
			b.WriteString(short)
		case c == unicode.ReplacementChar && !strings.HasPrefix(text[i:], string(c)):
			b.WriteByte(text[i])
		case !hidden(c):
			b.WriteRune(c)
		case c <= 0xffff:
			fmt.Fprintf(&b, `\u%04X`, c)
		default:
			fmt.Fprintf(&b, `\U%08X`, c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// The two joiners that shape letters and pictures stay as they are.
const (
	nonJoiner = '\u200c'
	joiner    = '\u200d'
)

// hidden reports whether a character has no shape of its own.
func hidden(c rune) bool {
	return c != joiner && c != nonJoiner && unicode.In(c, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
}
