package book_test

import (
	"bytes"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"dustbook/content"
	"dustbook/plan/shop"
)

// active are the elements that run something, fetch another page, or change
// where links lead; no sheet has one.
var active = map[string]bool{"script": true, "style": true, "iframe": true, "frame": true, "object": true, "embed": true, "base": true, "form": true, "foreignobject": true, "animate": true, "set": true}

// addresses are the attributes that a browser follows.
var addresses = map[string]bool{"href": true, "src": true, "action": true, "formaction": true, "data": true, "poster": true, "content": true, "to": true, "values": true}

// liveParts lists what of a page could act: active elements, attributes that
// hold a program, and addresses that are one. It reads the page the way a
// browser does, into a tree.
func liveParts(data []byte) []string {
	root, err := html.Parse(bytes.NewReader(data))
	if err != nil {
		return []string{err.Error()}
	}
	var parts []string
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		if active[strings.ToLower(n.Data)] {
			parts = append(parts, "<"+n.Data+">")
		}
		for _, a := range n.Attr {
			if key := strings.ToLower(a.Key); strings.HasPrefix(key, "on") || key == "srcdoc" || key == "style" || addresses[key] && isProgram(a.Val) {
				parts = append(parts, fmt.Sprintf("<%s %s=%q>", n.Data, a.Key, a.Val))
			}
		}
	}
	return parts
}

// isProgram reports an address that runs. Browsers drop the white space in
// front of a scheme, and tabs and line ends within it.
func isProgram(address string) bool {
	plain := strings.ToLower(strings.TrimLeft(strings.NewReplacer("\t", "", "\n", "", "\r", "").Replace(address), "\x00\x01 \f"))
	return strings.HasPrefix(plain, "javascript:") || strings.HasPrefix(plain, "vbscript:") || strings.HasPrefix(plain, "data:text")
}

// unplanned compares the elements a page writes with those a browser makes of
// it. They differ where markup is not valid: an element closed by another one,
// moved out of a table, or added.
func unplanned(data []byte) []string {
	counts := map[string]int{}
	tokens := html.NewTokenizer(bytes.NewReader(data))
	for kind := tokens.Next(); kind != html.ErrorToken; kind = tokens.Next() {
		if kind == html.StartTagToken || kind == html.SelfClosingTagToken {
			name, _ := tokens.TagName()
			counts[string(name)]++
		}
	}
	root, err := html.Parse(bytes.NewReader(data))
	if err != nil {
		return []string{err.Error()}
	}
	for n := range root.Descendants() {
		if n.Type == html.ElementNode {
			counts[strings.ToLower(n.Data)]--
		}
	}
	var out []string
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		if counts[name] != 0 {
			out = append(out, fmt.Sprintf("%s %+d", name, counts[name]))
		}
	}
	return out
}

// The two readers find what they are for, and nothing in a quiet page.
func TestPageReaders(t *testing.T) {
	page := func(body string) []byte {
		return []byte("<!doctype html><html><head><title>x</title></head><body>" + body + "</body></html>")
	}
	for _, quiet := range []string{`<p>&lt;script&gt; onload="x" javascript:x</p>`, `<a href="javascript.html" id="on-stop">a</a>`, `<svg><path d="M0 0"/></svg>`} {
		if parts := append(liveParts(page(quiet)), unplanned(page(quiet))...); len(parts) > 0 {
			t.Errorf("%s: found %v", quiet, parts)
		}
	}
	for _, live := range []string{`<script>x</script>`, `<SCRIPT src=x></SCRIPT>`, `<p onclick="x">a</p>`, `<svg onload="x"></svg>`, `<svg><script>x</script></svg>`,
		`<a href="javascript:x">a</a>`, `<a href=" jAva&#9;script:x">a</a>`, `<svg><a xlink:href="javascript:x"></a></svg>`, `<iframe srcdoc="x"></iframe>`, `<p style="x">a</p>`} {
		if len(liveParts(page(live))) == 0 {
			t.Errorf("%s: found nothing", live)
		}
	}
	for _, odd := range []string{`<p><p></p>` + `<table><tr><td>a</td></tr></table>`, `<table><tbody><tr><td>a</td></tr></tbody><img></image></table></p>`, `<p><div></div></p>`} {
		if len(unplanned(page(odd))) == 0 {
			t.Errorf("%s: found nothing", odd)
		}
	}
}

// filePath is the form of every path of a book: one folder, small letters,
// digits and single dashes.
var filePath = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*\.(html|css|csv|js|json|ics|manifest)$`)

// checkHostile checks a page of a shop that gives its things a hostile name.
func checkHostile(t *testing.T, name, path string, data []byte) {
	t.Helper()
	data = withoutItsScript(path, data)
	text, headings := readText(t, path, data)
	if headings["script"] > 0 || headings["img"] > 0 || strings.Contains(string(data), "ZgotmplZ") {
		t.Errorf("%q: %s holds markup of the name", name, path)
	}
	if parts := liveParts(data); len(parts) > 0 {
		t.Errorf("%q: %s can act: %v", name, path, parts)
	}
	if odd := unplanned(data); len(odd) > 0 {
		t.Errorf("%q: %s is not valid: %v", name, path, odd)
	}
	if strings.Contains(name, "{{") && strings.Contains(text, "<no value>") {
		t.Errorf("%q: %s took the name for a template", name, path)
	}
	if !filePath.MatchString(path) {
		t.Errorf("%q: the path %q", name, path)
	}
}

// hostile are the names that TestHostileNames gives to things.
var hostile = []string{
	`<script>alert(1)`, `<script>alert(1)<⁄script>`, `<svg onload=x>`, `<!--`, `]]>`, `<title>`, `"onload="x`, `' onclick='x`, `'><img src=x>`, `javascript:alert(1)`,
	"\u202eevil", "a\u200fb\u2067c", "نشارة", `🪚🔥 saw`, `👩🏽‍🔧`, `C:\temp`, `..`, `..\..\x`, `con.html`,
	strings.Repeat("W", 80), `{{.}}`, `&amp;`, `日本のこぎり`, `a  b`, `%s%d`, "`x`",
}

// renamed is the smallest shop with its machine, duct, gate, room and itself
// named so.
func renamed(name string) string {
	quoted := strings.ReplaceAll(strings.ReplaceAll(name, `\`, `\\`), `"`, `\"`)
	text := strings.NewReplacer(`"Table saw"`, `"`+quoted+`"`, `"Saw pipe"`, `"`+quoted+` pipe"`, `"Saw gate"`, `"`+quoted+` gate"`, `"Three machines in a garage"`, `"`+quoted+` shop"`, `"Garage"`, `"`+quoted+` room"`, `"Collector"`, `"`+quoted+` fan"`).Replace(string(content.Small()))
	text = strings.ReplaceAll(text, `kind = "`+quoted+`"`, `kind = "table saw"`)
	long := strings.Repeat("W", 80)
	for _, word := range []string{" pipe", " gate", " shop", " room", " fan"} {
		text = strings.ReplaceAll(text, long+word, long[:80-len(word)]+word)
	}
	return text
}

// Whatever people call their things, it appears as text and does nothing.
func TestHostileNames(t *testing.T) {
	for i, name := range hostile {
		if testing.Short() && i%5 != 0 {
			continue // a short run takes a few of each sort
		}
		seen := false
		for path, data := range bookOf(t, []byte(renamed(name)), 2) {
			if !filePath.MatchString(path) {
				t.Errorf("%q: the path %q", name, path)
			}
			if strings.HasSuffix(path, ".html") {
				checkHostile(t, name, path, data)
				seen = seen || strings.Contains(html.UnescapeString(string(data)), name)
			}
		}
		if !seen && name != `a  b` { // the second space goes
			t.Errorf("%q stands on no page", name)
		}
	}
}

// A name with a slash is refused, save the shop's own, which names no file; so
// is one that is too long, and one with control characters.
func TestRefusedNames(t *testing.T) {
	for _, name := range []string{`a/b`, `../../x`, `</script>`, strings.Repeat("W", 81), "a\u0085b"} {
		for _, thing := range []string{`"Saw gate"`, `"Saw pipe"`, `"Garage"`, `"Table saw"`, `"Collector"`} {
			text := strings.ReplaceAll(string(content.Small()), "name = "+thing, `name = "`+name+`"`)
			if _, problems := shop.Read("shop.toml", []byte(text)); len(problems) == 0 {
				t.Errorf("%s may be named %q", thing, name)
			}
		}
	}
	name := `</title><script>alert(1)</script>`
	text := strings.ReplaceAll(string(content.Small()), "Three machines in a garage", name)
	for path, data := range bookOf(t, []byte(text), 2) {
		if strings.HasSuffix(path, ".html") {
			checkHostile(t, name, path, data)
		}
	}
}
