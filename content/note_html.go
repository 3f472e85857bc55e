package content

import (
	"bytes"
	"fmt"
	"html"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extended "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	markup "github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// HTML is the note's text below its title.
func (n *Note) HTML() (string, error) {
	p := &page{note: n, texts: WordsIn(English)}
	r := renderer.NewRenderer(renderer.WithNodeRenderers(
		util.Prioritized(p, 100),
		util.Prioritized(extension.NewTableHTMLRenderer(), 500),
		util.Prioritized(extension.NewDefinitionListHTMLRenderer(), 500),
		util.Prioritized(markup.NewRenderer(), 1000),
	))
	var out bytes.Buffer
	if err := r.Render(&out, n.source, n.doc); err != nil {
		return "", err
	}
	return printable(out.String()), nil
}

// page writes what a note's sheet needs otherwise than Markdown's own: safe
// links, headings below the sheet's, boxes to tick with a pen.
type page struct {
	note   *Note
	texts  Words
	tables int
}

// RegisterFuncs names what the page writes itself.
func (p *page) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	for kind, write := range map[ast.NodeKind]func(util.BufWriter, ast.Node, bool) ast.WalkStatus{
		ast.KindHeading: p.heading, ast.KindLink: p.link, ast.KindAutoLink: p.address, ast.KindImage: p.image, ast.KindParagraph: p.paragraph,
		ast.KindCodeBlock: p.code, ast.KindFencedCodeBlock: p.code, ast.KindRawHTML: p.nothing, ast.KindHTMLBlock: p.nothing, ast.KindListItem: p.item,
		extended.KindTable: p.table, extended.KindTableCell: p.cell, extended.KindTaskCheckBox: p.box,
		extended.KindFootnoteLink: p.footnoteLink, extended.KindFootnoteBacklink: p.footnoteBack, extended.KindFootnote: p.footnote, extended.KindFootnoteList: p.footnotes,
	} {
		reg.Register(kind, func(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
			return write(w, node, entering), nil
		})
	}
}

// numbered is a text with a number in it, for an attribute.
func (p *page) numbered(key string, n int) string {
	return html.EscapeString(p.texts.Text(key, strconv.Itoa(n)))
}

func (p *page) nothing(util.BufWriter, ast.Node, bool) ast.WalkStatus { return ast.WalkSkipChildren }

// tag writes a start tag with attributes, or the end tag.
func tag(w util.BufWriter, entering bool, name, attributes string) ast.WalkStatus {
	if entering {
		fmt.Fprintf(w, "<%s%s>", name, attributes)
	} else {
		fmt.Fprintf(w, "</%s>", name)
	}
	return ast.WalkContinue
}

func (p *page) heading(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	h := p.note.headings[node.(*ast.Heading)]
	return tag(w, entering, fmt.Sprintf("h%d", h.level), fmt.Sprintf(` id="%s"`, html.EscapeString(h.id)))
}

func (p *page) link(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	return tag(w, entering, "a", p.hrefOf(node)+titled(node.(*ast.Link).Title))
}

// hrefOf is where a link leads. One with a fault leads nowhere: it is not
// shown.
func (p *page) hrefOf(node ast.Node) string {
	href := p.note.hrefs[node]
	out := fmt.Sprintf(` href="%s"`, html.EscapeString(href))
	if strings.HasPrefix(href, "http:") || strings.HasPrefix(href, "https:") {
		out += ` rel="noreferrer"`
	}
	return out
}

// titled is the title of a link or a picture as an attribute.
func titled(title []byte) string {
	if len(title) == 0 {
		return ""
	}
	return ` title="` + html.EscapeString(readLink(title)) + `"`
}

func (p *page) address(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	if entering {
		fmt.Fprintf(w, "<a%s>%s</a>", p.hrefOf(node), html.EscapeString(string(node.(*ast.AutoLink).Label(p.note.source))))
	}
	return ast.WalkSkipChildren
}

func (p *page) image(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	shown := p.note.pictures[node]
	if !entering || shown == nil {
		return ast.WalkSkipChildren
	}
	title := titled(node.(*ast.Image).Title)
	if captioned(node.Parent()) != nil {
		title = ""
	}
	fmt.Fprintf(w, `<img src="%s" alt="%s" width="%d" height="%d"%s>`, shown.path, html.EscapeString(strings.TrimSpace(p.note.words(node))), shown.width, shown.height, title)
	return ast.WalkSkipChildren
}

// captioned is the picture of a paragraph that holds nothing else, where it
// has a title: that stands below it.
func captioned(node ast.Node) *ast.Image {
	if node == nil || node.Kind() != ast.KindParagraph || node.ChildCount() != 1 {
		return nil
	}
	if shown, ok := node.FirstChild().(*ast.Image); ok && len(shown.Title) > 0 {
		return shown
	}
	return nil
}

func (p *page) paragraph(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	shown := captioned(node)
	switch {
	case shown == nil:
		return tag(w, entering, "p", "")
	case !entering:
		fmt.Fprintf(w, "<figcaption>%s</figcaption>", html.EscapeString(readLink(shown.Title)))
	}
	return tag(w, entering, "figure", "")
}

// code can be reached with the keyboard, since a long line scrolls.
func (p *page) code(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		return ast.WalkContinue
	}
	w.WriteString(`<pre tabindex="0"><code>`)
	for i := range node.Lines().Len() {
		line := node.Lines().At(i)
		markup.DefaultWriter.RawWrite(w, line.Value(p.note.source))
	}
	w.WriteString("</code></pre>")
	return ast.WalkContinue
}

func (p *page) item(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	class := ""
	if first := node.FirstChild(); first != nil && first.FirstChild() != nil && first.FirstChild().Kind() == extended.KindTaskCheckBox {
		class = ` class="task"`
	}
	return tag(w, entering, "li", class)
}

// box is to be ticked with a pen on paper.
func (p *page) box(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	class, label := "box", p.texts.Text("note.todo")
	if node.(*extended.TaskCheckBox).IsChecked {
		class, label = "box done", p.texts.Text("note.done")
	}
	if entering {
		fmt.Fprintf(w, `<span class="%s" role="img" aria-label="%s"></span> `, class, label)
	}
	return ast.WalkContinue
}

func (p *page) table(w util.BufWriter, _ ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		w.WriteString("</table></div>")
		return ast.WalkContinue
	}
	p.tables++
	fmt.Fprintf(w, `<div class="scroll" role="region" aria-label="%s" tabindex="0"><table>`, p.numbered("note.table", p.tables))
	return ast.WalkContinue
}

func (p *page) cell(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	name, attributes := "td", ""
	if node.Parent().Kind() == extended.KindTableHeader && node.HasChildren() {
		name, attributes = "th", ` scope="col"`
	}
	switch node.(*extended.TableCell).Alignment {
	case extended.AlignRight:
		attributes += ` class="right"`
	case extended.AlignCenter:
		attributes += ` class="centre"`
	}
	return tag(w, entering, name, attributes)
}

// footnoteID is the place in the text that names a footnote, for the first
// time or again.
func footnoteID(index, again int) string {
	if again == 0 {
		return fmt.Sprintf("fnref-%d", index)
	}
	return fmt.Sprintf("fnref-%d-%d", index, again+1)
}

func (p *page) footnoteLink(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	if f := node.(*extended.FootnoteLink); entering {
		fmt.Fprintf(w, `<sup><a id="%s" href="#fn-%d" role="doc-noteref" aria-label="%s">%d</a></sup>`, footnoteID(f.Index, f.RefIndex), f.Index, p.numbered("note.footnote", f.Index), f.Index)
	}
	return ast.WalkContinue
}

func (p *page) footnoteBack(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	if f := node.(*extended.FootnoteBacklink); entering {
		fmt.Fprintf(w, ` <a class="back" href="#%s" role="doc-backlink" aria-label="%s">↩</a>`, footnoteID(f.Index, f.RefIndex), p.numbered("note.back", f.Index))
	}
	return ast.WalkContinue
}

func (p *page) footnote(w util.BufWriter, node ast.Node, entering bool) ast.WalkStatus {
	return tag(w, entering, "li", fmt.Sprintf(` id="fn-%d"`, node.(*extended.Footnote).Index))
}

func (p *page) footnotes(w util.BufWriter, _ ast.Node, entering bool) ast.WalkStatus {
	if entering {
		fmt.Fprintf(w, `<section class="footnotes" role="doc-endnotes" aria-label="%s"><ol>`, html.EscapeString(p.texts.Text("note.footnotes")))
	} else {
		w.WriteString("</ol></section>")
	}
	return ast.WalkContinue
}
