package content

import (
	"bufio"
	"bytes"
	"html"
	"net/url"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extended "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	markup "github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// ownMarkdown reads notes: more than the prose of the checks needs, but no
// quotes or dashes changed for others, since 6' is six feet.
var ownMarkdown = goldmark.New(
	goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone)), extension.DefinitionList, extension.Footnote, extension.TaskList),
	goldmark.WithParserOptions(parser.WithASTTransformers(util.Prioritized(unnamed{}, 500))),
)

// noteKey carries the note through its parse.
var noteKey = parser.NewContextKey()

// named is a parse in which the names of the shop's things stand for links,
// unless the note defines them for itself.
type named struct {
	parser.Context
	links map[string]string
}

// Reference finds what a label stands for.
func (c named) Reference(label string) (parser.Reference, bool) {
	if own, ok := c.Context.Reference(label); ok {
		return own, true
	}
	link, ok := c.links[label]
	if !ok {
		return nil, false
	}
	return parser.NewReference([]byte(label), []byte(link), nil), true
}

// bareNames lists the links that names alone stand for.
func (g Guide) bareNames() map[string]string {
	links := map[string]string{}
	if g.Names == nil {
		return links
	}
	for _, kind := range bareKinds {
		for _, name := range g.Names(kind) {
			label := util.ToLinkReference([]byte(name))
			if _, taken := links[label]; !taken {
				links[label] = kind + ":" + url.PathEscape(name)
			}
		}
	}
	return links
}

// parse reads the note's text.
func (n *Note) parse(names map[string]string) {
	if !n.bounded() {
		n.doc = ast.NewDocument()
		return
	}
	ctx := named{parser.NewContext(), names}
	ctx.Set(noteKey, n)
	n.doc = ownMarkdown.Parser().Parse(text.NewReader(n.source), parser.WithContext(ctx))
}

// unnamed reports footnotes that the text never names, before the reader of
// Markdown drops them.
type unnamed struct{}

// Transform looks at the footnotes of a parsed text.
func (unnamed) Transform(doc *ast.Document, _ text.Reader, ctx parser.Context) {
	n, _ := ctx.Get(noteKey).(*Note)
	_ = ast.Walk(doc, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		note, ok := node.(*extended.Footnote)
		if ok && entering && n != nil && note.Index < 0 {
			n.wrong(n.footnoteAt(note), "the footnote "+quoted("[^"+string(note.Ref)+"]"), "the text to name it, and one footnote of that name", "put [^"+string(note.Ref)+"] where it belongs in the text, or take it away")
		}
		return ast.WalkContinue, nil
	})
}

// footnoteAt is where a footnote that is named nowhere stands: the last of its
// name.
func (n *Note) footnoteAt(note *extended.Footnote) int {
	return max(bytes.LastIndex(n.source, []byte("[^"+string(note.Ref)+"]:")), 0)
}

// outline finds the title and the ids and levels of the headings. The first
// heading is the title; where nothing stands before it, it is not repeated on
// the sheet.
func (n *Note) outline(slug func(string) string) {
	n.headings, n.ids = map[*ast.Heading]heading{}, map[string]bool{}
	n.Title = fileTitle(n.File)
	first := n.takeTitle(slug)
	taken := map[string]int{}
	var above []int // the levels that the one at hand lies below
	_ = ast.Walk(n.doc, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		h, ok := node.(*ast.Heading)
		if !ok || !entering {
			return ast.WalkContinue, nil
		}
		words := n.words(h)
		if strings.TrimSpace(words) == "" {
			n.wrong(n.start(h), "a heading without words", "words", "write them, or take the # away")
		}
		for len(above) > 0 && above[len(above)-1] >= h.Level {
			above = above[:len(above)-1]
		}
		above = append(above, h.Level)
		id := n.newID("h-"+slug(words), taken)
		n.headings[h] = heading{min(len(above)+1, 6), id}
		if h == first {
			n.titleID = id
		}
		return ast.WalkContinue, nil
	})
}

// newID makes an id that no other heading has.
func (n *Note) newID(id string, taken map[string]int) string {
	unique := id
	for n.ids[unique] {
		taken[id]++
		unique = id + "-" + strconv.Itoa(taken[id]+1)
	}
	n.ids[unique] = true
	return unique
}

// takeTitle takes the title from the first heading. It returns that heading
// where it stays on the sheet, below words that stand before it.
func (n *Note) takeTitle(slug func(string) string) *ast.Heading {
	before := false // something stands before it
	for node := n.doc.FirstChild(); node != nil; node = node.NextSibling() {
		h, ok := node.(*ast.Heading)
		if !ok {
			before = before || node.Kind() != ast.KindLinkReferenceDefinition
			continue
		}
		title := strings.Join(strings.Fields(n.words(h)), " ")
		if title == "" {
			return nil // told as a heading without words
		}
		if long := []rune(title); len(long) > longestNoteTitle {
			n.wrong(n.start(h), "a title of "+strconv.Itoa(len(long))+" characters", "at most "+strconv.Itoa(longestNoteTitle), "shorten the first heading")
			title = string(long[:longestNoteTitle])
		}
		n.Title = title
		if before {
			return h
		}
		n.lookAtTitle(h)
		n.titleID = "h-" + slug(title)
		n.doc.RemoveChild(n.doc, h)
		return nil
	}
	return nil
}

// lookAtTitle refuses in a title what would be lost in it.
func (n *Note) lookAtTitle(h *ast.Heading) {
	_ = ast.Walk(h, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch node.(type) {
		case *ast.Link, *ast.AutoLink, *ast.Image, *extended.FootnoteLink, *ast.RawHTML:
			n.wrong(n.start(h), "a title with more than words in it", "words alone", "put the link, picture or footnote below the title")
			return ast.WalkStop, nil
		}
		return ast.WalkContinue, nil
	})
}

// start is the byte at which the text of a block begins.
func (n *Note) start(block ast.Node) int {
	if lines := block.Lines(); lines != nil && lines.Len() > 0 {
		return lines.At(0).Start
	}
	return max(block.Pos(), 0)
}

// words are the words of a node, as people read them.
func (n *Note) words(node ast.Node) string {
	var out bytes.Buffer
	w := bufio.NewWriter(&out)
	_ = ast.Walk(node, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch node := node.(type) {
		case *ast.Text:
			value := node.Segment.Value(n.source)
			if node.IsRaw() || node.Parent().Kind() == ast.KindCodeSpan {
				markup.DefaultWriter.RawWrite(w, value)
			} else {
				markup.DefaultWriter.Write(w, value)
			}
			if node.SoftLineBreak() || node.HardLineBreak() {
				_ = w.WriteByte(' ')
			}
		case *ast.AutoLink:
			markup.DefaultWriter.RawWrite(w, node.Label(n.source))
		}
		return ast.WalkContinue, nil
	})
	_ = w.Flush()
	return printable(html.UnescapeString(out.String()))
}

// printable puts the sign for an unreadable character in the place of those
// that no page may hold; they come in as &#1;.
func printable(s string) string {
	return strings.Map(func(c rune) rune {
		if sound(c) {
			return c
		}
		return '\ufffd'
	}, s)
}
