package unit

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// Error is a text that is not the quantity a field wants.
type Error struct {
	Read     string // the text as it stands, in quotes
	Expected string // what was wanted, with an example
	Do       string // the nearest fix, one short sentence
}

// Error is the three parts in one plain line.
func (e *Error) Error() string {
	return "read " + e.Read + ", expected " + e.Expected + ". " + e.Do
}

// shownText bounds how much of a long text a message repeats, in characters.
const shownText = 60

// quote puts a text in quotes as the shop file would write it, and cuts a
// long one short.
func quote(text string) string {
	if utf8.RuneCountInString(text) > shownText {
		text = string([]rune(text)[:shownText]) + "…"
	}
	return strconv.Quote(text)
}

// wants is what a message expects of a field of this kind.
func wants(k Kind) string {
	return k.phrase() + " with its unit, such as " + k.Example()
}

// complaint is why a text cannot be read. Whoever knows the whole text and
// what was wanted makes an Error of it.
type complaint struct {
	found  string // the kind that was read instead, with its article; empty otherwise
	wanted string // what was expected, where that is not simply the kind
	do     string // what to do where nothing below can be offered

	lead   string   // what to do with one of the offers
	offers []string // texts that are likely meant
	most   int      // of how many to show
}

func (c *complaint) about(k Kind, text string) *Error {
	e := &Error{Read: quote(text), Expected: wants(k), Do: c.fix(k)}
	if c.wanted != "" {
		e.Expected = c.wanted
	}
	if c.found != "" {
		e.Expected += ", not " + c.found
	}
	return e
}

// fix is what to do. It offers no text that would be refused in its turn.
func (c *complaint) fix(k Kind) string {
	var shown []string
	for _, text := range c.offers {
		if len(shown) == c.most || utf8.RuneCountInString(text) > shownText {
			break
		}
		if _, fault := read(k, text); fault == nil {
			shown = append(shown, quote(text))
		}
	}
	if shown == nil {
		return c.do
	}
	return c.lead + " " + listed(shown) + "."
}

// listed joins words into a choice: a, b or c.
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// write is what to do where a quantity is to be written anew.
func write(k Kind) string {
	return "Write " + k.phrase() + `, such as "` + k.examples()[0] + `".`
}

// plain is the complaint for a text that is no quantity at all.
func plain(k Kind) *complaint {
	return &complaint{do: `Write a number and a unit, such as "` + k.examples()[0] + `".`}
}
