package content

import (
	"bytes"
	"cmp"
	"slices"
	"strconv"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
)

// Notes are the shop's own pages, read and checked, in their order.
type Notes struct {
	Pages    []*Note
	Pictures map[string][]byte // those that the notes show, by their path in the book
}

// Note is one page of the shop's own. Its sheet is Path; its text becomes
// HTML only where no fault was found in any note.
type Note struct {
	File    string // the file's name in the folder of notes
	Path    string
	Title   string   // the first heading, or the file's name
	Outside []string // the addresses outside the book that it links to, as they are written in its HTML

	source   []byte
	doc      ast.Node
	headings map[*ast.Heading]heading
	ids      map[string]bool // of its headings
	titleID  string          // what a link to the title asks for
	hrefs    map[ast.Node]string
	pictures map[ast.Node]*picture
	faults   []flaw
}

// heading is what a heading becomes.
type heading struct {
	level int
	id    string
}

// Fault is one thing in the notes that has to be changed before they can be
// shown. Line and column count from 1, columns in characters; they are 0 where
// it is about a whole file. The file is named as it lies in the folder of
// notes, and is empty where it is about the folder.
type Fault struct {
	File               string
	Line, Column       int
	Read, Expected, Do string
}

// Kinds are the words before the colon of a link to something of the shop or
// of the book: [the planer](machine:Planer).
var Kinds = []string{"machine", "card", "gate", "duct", "collector", "room", "use", "trigger", "chain", "check", sheetKind}

const sheetKind = "sheet"

// bareKinds are those whose names stand for a link by themselves: [Planer].
// Their names are unique together, but that a machine alone is a use as well.
var bareKinds = []string{"machine", "collector", "duct", "gate", "trigger", "chain", "room", "use"}

// Guide answers what the notes ask of whoever knows the shop and its book.
// Without Path, as where the shop file has errors and no sheets are laid out,
// a thing has to have its name in Names and nothing more; links to sheets are
// not asked for. Without Names too, neither are links to things.
type Guide struct {
	Slug  func(name string) string                             // a name as part of a file name or an id
	Near  func(word string, among []string, most int) []string // the words nearest to one
	Names func(kind string) []string                           // the names of a kind
	Path  func(kind, name string) (path string)                // where a thing is shown; empty where nowhere
}

// flaw is a fault at a byte of its note.
type flaw struct {
	at                 int
	read, expected, do string
}

const (
	mostFlaws  = 50  // told of one note: whoever has mended that many reads it again
	mostFaults = 200 // told of all notes
	moreFlaws  = 4 * mostFlaws
)

// wrong notes a fault at a byte of the note.
func (n *Note) wrong(at int, read, expected, do string) {
	if len(n.faults) < moreFlaws {
		n.faults = append(n.faults, flaw{at, read, expected, do})
	}
}

// told lists the note's faults in the order of the text.
func (n *Note) told() []Fault {
	slices.SortStableFunc(n.faults, func(a, b flaw) int { return cmp.Compare(a.at, b.at) })
	var list []Fault
	for _, f := range n.faults[:min(len(n.faults), mostFlaws)] {
		line, column := place(n.source, f.at)
		list = append(list, Fault{n.File, line, column, f.read, f.expected, f.do})
	}
	return list
}

// place is the line and column of a byte.
func place(source []byte, at int) (line, column int) {
	before := source[:max(0, min(at, len(source)))]
	start := bytes.LastIndexByte(before, '\n') + 1
	return 1 + bytes.Count(before, []byte("\n")), 1 + utf8.RuneCount(before[start:])
}

// quoted is a text in quotes for a message, shortened.
func quoted(text string) string { return strconv.Quote(shortened(text, 60)) }

// shortened cuts a text to so many characters, the last of them … when
// something was cut.
func shortened(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most-1]) + "…"
}
