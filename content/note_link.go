package content

import (
	"fmt"
	"net/url"
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"
)

// A link of a note leads to a thing (machine:Planer), to another note
// (20-filter.md), to a heading (#emptying) or outside (https, mailto, tel).
// Nothing else is a link, and nothing that a browser would run.

// scheme is what stands before the colon of a link.
var scheme = regexp.MustCompile(`^([A-Za-z][A-Za-z0-9+.-]*):`)

// readLink is a link as it was meant: escapes and entities read.
func readLink(written []byte) string {
	return string(util.ResolveEntityNames(util.ResolveNumericReferences(util.UnescapePunctuations(written))))
}

// follow finds where a link leads.
func (r *noteReader) follow(n *Note, node ast.Node, at int, link string) {
	prefix := scheme.FindString(link)
	word := strings.ToLower(strings.TrimSuffix(prefix, ":"))
	rest := link[len(prefix):]
	switch {
	case link == "":
		n.wrong(at, "a link to nothing", "where it leads", "write it between the brackets")
	case strings.ContainsFunc(link, func(c rune) bool { return !sound(c) || c == '\t' || c == '\n' }):
		n.wrong(at, "a link with a control character: "+quoted(link), "a link without", "take the character away")
	case slices.Contains(Kinds, word):
		r.followThing(n, node, at, word, decoded(rest))
	case word == "http" || word == "https" || word == "mailto" || word == "tel":
		n.followOutside(node, at, word, link)
	case word != "":
		do := "lead to a thing, as machine:Planer, to a note, or to an address that begins with https:"
		if near := r.near(word, Kinds); near != "" {
			do = "write " + near + ":" + rest
		}
		n.wrong(at, "the link "+quoted(link), "a thing, a note or an address outside", do)
	default:
		r.followNote(n, node, at, link)
	}
}

// decoded reads %20 and its like, where they can be read.
func decoded(text string) string {
	if plain, err := url.PathUnescape(text); err == nil {
		text = plain
	}
	return strings.TrimSpace(text)
}

// near is the word nearest to one; empty where none is near.
func (r *noteReader) near(word string, among []string) string {
	if r.guide.Near == nil {
		return ""
	}
	if list := r.guide.Near(word, among, 1); len(list) > 0 {
		return list[0]
	}
	return ""
}

// followThing finds where a thing is shown.
func (r *noteReader) followThing(n *Note, node ast.Node, at int, kind, name string) {
	if r.guide.Names == nil || r.guide.Path == nil && kind == sheetKind {
		return
	}
	names := r.guide.Names(kind)
	if !slices.Contains(names, name) {
		do := "the shop has none"
		if len(names) > 0 {
			do = "write one that there is, as " + asLink(kind, names[0])
		}
		if near := r.near(name, names); near != "" {
			do = "write " + asLink(kind, near)
		} else if other := r.kindOf(name); other != "" {
			do = "write " + asLink(other, name)
		}
		n.wrong(at, asLink(kind, name), expectedOf[kind], do)
		return
	}
	if r.guide.Path == nil {
		return
	}
	href := r.guide.Path(kind, name)
	if href == "" {
		n.wrong(at, asLink(kind, name), "something that the book has a sheet of", "take the link away")
		return
	}
	n.hrefs[node] = href
}

// expectedOf says what a link of a kind has to name.
var expectedOf = map[string]string{
	"machine": "a machine of the shop", "card": "a machine of the shop", "gate": "a gate of the shop", "duct": "a duct of the shop", "collector": "a collector of the shop",
	"room": "a room of the shop", "use": "a use of the shop", "trigger": "a trigger of the shop", "chain": "a chain of the shop", "check": "the id of a check", "sheet": "a sheet of the book, as its file is called",
}

// kindOf is the kind of the thing with just this name.
func (r *noteReader) kindOf(name string) string {
	for _, kind := range bareKinds {
		if slices.Contains(r.guide.Names(kind), name) {
			return kind
		}
	}
	return ""
}

// asLink writes a link to a thing as it is typed.
func asLink(kind, name string) string {
	name = shortened(name, 80)
	if strings.ContainsAny(name, " ()<>\\") {
		return "<" + kind + ":" + strings.NewReplacer("<", `\<`, ">", `\>`, `\`, `\\`).Replace(name) + ">"
	}
	return kind + ":" + name
}

// The forms of a telephone number and of an electronic address.
var (
	telephone = regexp.MustCompile(`^\+?[0-9][0-9().-]{1,29}$`)
	mailbox   = regexp.MustCompile(`^[^\s<>"@,;]+@[^\s<>"@,;]+$`)
)

// followOutside takes an address outside the book as it stands.
func (n *Note) followOutside(node ast.Node, at int, word, link string) {
	u, err := url.Parse(link)
	sound := err == nil
	switch {
	case !sound:
	case word == "mailto":
		sound = mailbox.MatchString(u.Opaque)
	case word == "tel":
		sound = telephone.MatchString(u.Opaque)
	default:
		sound = u.Hostname() != "" && u.User == nil
	}
	if !sound {
		n.wrong(at, "the address "+quoted(link), "a whole address, as https and the rest", "copy it anew from where it works")
		return
	}
	href := escaped(u.String())
	n.hrefs[node] = href
	if !slices.Contains(n.Outside, href) {
		n.Outside = append(n.Outside, href)
	}
}

// escaped writes what may not stand in an address as its code.
func escaped(address string) string {
	var out strings.Builder
	for _, c := range []byte(address) {
		if c <= ' ' || c >= 0x7f || strings.IndexByte("\"<>\\^`{|}", c) >= 0 {
			fmt.Fprintf(&out, "%%%02X", c)
			continue
		}
		out.WriteByte(c)
	}
	return out.String()
}

// followAddress takes an address in angle brackets.
func (r *noteReader) followAddress(n *Note, node *ast.AutoLink) {
	address := string(node.URL(n.source))
	if node.AutoLinkType == ast.AutoLinkEmail && !strings.HasPrefix(strings.ToLower(address), "mailto:") {
		address = "mailto:" + address
	}
	at := n.lineOf(node)
	word := strings.ToLower(strings.TrimSuffix(scheme.FindString(address), ":"))
	switch {
	case within(node, ast.KindLink):
		n.wrong(at, "the address "+quoted(address)+" within a link", "one link in one place", "take one of the two away")
	case slices.Contains(Kinds, word):
		n.wrong(at, "<"+address+">", "words before the link", "write ["+address[len(word)+1:]+"]("+address+")")
	default:
		r.follow(n, node, at, address)
	}
}

// followNote finds another note, or a heading.
func (r *noteReader) followNote(n *Note, node ast.Node, at int, link string) {
	file, place, _ := strings.Cut(link, "#")
	to, href := n, ""
	if file = decoded(file); file != "" {
		if to = r.byFile[file]; to == nil {
			r.lost(n, at, link, file)
			return
		}
		href = to.Path
	}
	if place == "" {
		n.hrefs[node] = to.Path
		return
	}
	id := "h-" + r.guide.Slug(decoded(place))
	switch {
	case to.ids[id]:
		n.hrefs[node] = href + "#" + id
	case id == to.titleID:
		n.hrefs[node] = href + "#main"
	default:
		n.wrong(at, "the link "+quoted(link), "a heading of "+to.File, "write # and the words of a heading, with dashes for the spaces")
	}
}

// lost reports a link to a file that is no note.
func (r *noteReader) lost(n *Note, at int, link, file string) {
	var files []string
	for _, other := range r.notes {
		files = append(files, other.File)
	}
	expected, do := "another note, by the name of its file", "put the note there, or take the link away"
	switch {
	case strings.ContainsAny(file, `/\`):
		expected, do = "a note beside this one, without a folder", "write the name of its file alone; an address outside begins with https:"
	case r.near(file, files) != "":
		do = "write " + r.near(file, files)
	case path.Ext(file) != noteEnding:
		do = "lead to a thing, as machine:Planer, to a note, or to an address that begins with https:"
		if kind := ""; r.guide.Names != nil {
			if kind = r.kindOf(decoded(link)); kind != "" {
				do = "write " + asLink(kind, decoded(link))
			}
		}
	}
	n.wrong(at, "the link "+quoted(link), expected, do)
}
