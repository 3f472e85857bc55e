package content

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// A Resolver turns a link of a text into a link of the book. It reports false
// where the link means nothing.
type Resolver func(link string) (href string, ok bool)

// resolverKey carries the resolver, and what it refused, through one parse.
var (
	resolverKey = parser.NewContextKey()
	brokenKey   = parser.NewContextKey()
)

var markdown = goldmark.New(
	goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone)), extension.DefinitionList),
	goldmark.WithParserOptions(parser.WithASTTransformers(util.Prioritized(links{}, 100))),
)

// HTML turns Markdown into HTML. Raw HTML in it is left out. Links go through
// the resolver; one it refuses is an error that names its line.
func HTML(source []byte, resolve Resolver) (string, error) {
	ctx := parser.NewContext()
	ctx.Set(resolverKey, resolve)
	doc := markdown.Parser().Parse(text.NewReader(source), parser.WithContext(ctx))
	if broken, ok := ctx.Get(brokenKey).([]string); ok {
		return "", fmt.Errorf("links that mean nothing: %s", strings.Join(broken, ", "))
	}
	var out bytes.Buffer
	if err := markdown.Renderer().Render(&out, source, doc); err != nil {
		return "", err
	}
	return out.String(), nil
}

// links sends every link of a text through the resolver.
type links struct{}

// Transform rewrites the links of a parsed text.
func (links) Transform(doc *ast.Document, reader text.Reader, ctx parser.Context) {
	resolve, _ := ctx.Get(resolverKey).(Resolver)
	var broken []string
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		link, ok := n.(*ast.Link)
		if !ok || !entering || resolve == nil {
			return ast.WalkContinue, nil
		}
		href, ok := resolve(string(link.Destination))
		if !ok {
			line := 1 + bytes.Count(reader.Source()[:max(n.Pos(), 0)], []byte("\n"))
			broken = append(broken, fmt.Sprintf("%q (line %d)", link.Destination, line))
			return ast.WalkContinue, nil
		}
		link.Destination = []byte(href)
		return ast.WalkContinue, nil
	})
	if broken != nil {
		ctx.Set(brokenKey, broken)
	}
}
