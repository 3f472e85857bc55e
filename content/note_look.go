package content

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	extended "github.com/yuin/goldmark/extension/ast"
)

// look follows every link and picture of a note and reports what cannot be
// shown.
func (r *noteReader) look(n *Note) {
	n.hrefs, n.pictures = map[ast.Node]string{}, map[ast.Node]*picture{}
	_ = ast.Walk(n.doc, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch node := node.(type) {
		case *ast.HTMLBlock:
			at := node.ClosureLine
			if node.Lines().Len() > 0 {
				at = node.Lines().At(0)
			}
			n.rawMarkup(at.Start, at.Value(n.source))
		case *ast.RawHTML:
			at := node.Segments.At(0)
			n.rawMarkup(at.Start, at.Value(n.source))
		case *ast.Link:
			r.follow(n, node, node.Pos(), readLink(node.Destination))
		case *ast.AutoLink:
			r.followAddress(n, node)
		case *ast.Image:
			r.lookAtPicture(n, node)
		case *extended.FootnoteLink:
			if within(node, ast.KindLink) || within(node, ast.KindImage) {
				n.wrong(n.lineOf(node), "a footnote within a link or a picture", "a footnote in the text", "put it behind the link or the picture")
			}
		}
		if child := node.FirstChild(); child != nil && child.Type() == ast.TypeInline && node.Kind() != ast.KindCodeSpan {
			n.lookForSlips(node)
		}
		return ast.WalkContinue, nil
	})
}

// rawMarkup reports markup, which a note may not hold.
func (n *Note) rawMarkup(at int, text []byte) {
	do := `write it in Markdown; for the sign itself, write \<`
	if bytes.HasPrefix(bytes.TrimSpace(text), []byte("<!--")) {
		do = "take the remark away: it would not be shown"
	}
	n.wrong(at+len(text)-len(bytes.TrimLeft(text, " \t")), quoted(strings.TrimSpace(string(text))), "Markdown without HTML", do)
}

// within reports whether a node lies in one of a kind.
func within(node ast.Node, kind ast.NodeKind) bool {
	for up := node.Parent(); up != nil; up = up.Parent() {
		if up.Kind() == kind {
			return true
		}
	}
	return false
}

// lineOf is about where an inline node stands: where it is known to, or where
// its block begins.
func (n *Note) lineOf(node ast.Node) int {
	if at := node.Pos(); at >= 0 {
		return at
	}
	for up := node; up != nil; up = up.Parent() {
		if before, ok := up.PreviousSibling().(*ast.Text); ok {
			return before.Segment.Stop
		}
		if up.Type() == ast.TypeBlock {
			return n.start(up)
		}
	}
	return 0
}

// What stays in the text as it was typed, when it was meant to be something.
var slips = []struct {
	form               *regexp.Regexp
	read, expected, do string
}{
	{regexp.MustCompile(`\]\(`), "a link or picture that is none", "an address without spaces, or in angle brackets, and a closed bracket", `write [the gate](<gate:Saw gate>); for the brackets themselves, write \](`},
	{regexp.MustCompile(`\]\[[^\[\]\x00]+\]`), "a link by a name that nothing has", "the name of one thing of the shop, or one that the note defines", `write [the saw][Table saw] with the name as in the shop file; for the brackets themselves, write \][`},
	{regexp.MustCompile(`\[\^[^\[\]\x00\s]+\]`), "a footnote that is not there", "a line of its own that begins [^name]: and says it", `write that line; for the brackets themselves, write \[^`},
}

// lookForSlips looks through the text right below a node.
func (n *Note) lookForSlips(node ast.Node) {
	var joined []byte
	var starts, offsets []int // of each piece, in the joined text and in the note
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		t, ok := child.(*ast.Text)
		if !ok {
			joined = append(joined, 0)
			continue
		}
		starts, offsets = append(starts, len(joined)), append(offsets, t.Segment.Start)
		joined = append(joined, t.Segment.Value(n.source)...)
		if t.SoftLineBreak() || t.HardLineBreak() {
			joined = append(joined, '\n')
		}
	}
	if bytes.IndexByte(joined, ']') < 0 {
		return
	}
	for _, slip := range slips {
		for _, found := range slip.form.FindAllIndex(joined, mostFlaws) {
			if at := found[0]; at == 0 || joined[at-1] != '\\' {
				i := len(starts) - 1
				for starts[i] > at {
					i--
				}
				n.wrong(offsets[i]+at-starts[i], slip.read, slip.expected, slip.do)
			}
		}
	}
}
