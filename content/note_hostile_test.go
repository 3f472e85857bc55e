package content

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// allowed are the elements that a note's HTML may hold, each with the
// attributes it may have beside id and class. Nothing of them runs.
var allowed = map[string][]string{
	"a": {"href", "rel", "title", "role", "aria-label"}, "img": {"src", "alt", "width", "height", "title"}, "span": {"role", "aria-label"},
	"div": {"role", "aria-label", "tabindex"}, "section": {"role", "aria-label"}, "pre": {"tabindex"}, "th": {"scope"}, "ol": {"start"},
	"p": nil, "h2": nil, "h3": nil, "h4": nil, "h5": nil, "h6": nil, "ul": nil, "li": nil, "dl": nil, "dt": nil, "dd": nil, "table": nil, "thead": nil, "tbody": nil, "tr": nil,
	"td": nil, "code": nil, "em": nil, "strong": nil, "blockquote": nil, "hr": nil, "br": nil, "sup": nil, "figure": nil, "figcaption": nil,
}

// harmless says what in a note's HTML could run or ask for something, or is
// not well formed; empty where nothing is.
func harmless(page string) string {
	if strings.ContainsRune(page, 0) {
		return "a zero byte"
	}
	var open []string
	ids := map[string]bool{}
	tokens := html.NewTokenizer(strings.NewReader(page))
	for {
		kind := tokens.Next()
		token := tokens.Token()
		switch kind {
		case html.ErrorToken:
			if len(open) > 0 {
				return "never closed: " + strings.Join(open, " ")
			}
			return ""
		case html.CommentToken, html.DoctypeToken:
			return "a remark: " + token.Data
		case html.EndTagToken:
			if len(open) == 0 || open[len(open)-1] != token.Data {
				return "</" + token.Data + "> closes nothing"
			}
			open = open[:len(open)-1]
		case html.StartTagToken, html.SelfClosingTagToken:
			own, ok := allowed[token.Data]
			if !ok {
				return "the element <" + token.Data + ">"
			}
			if kind == html.StartTagToken && !slices.Contains([]string{"img", "br", "hr"}, token.Data) {
				open = append(open, token.Data)
			}
			for _, a := range token.Attr {
				if why := harmful(a, own, ids); why != "" {
					return "<" + token.Data + ">: " + why
				}
			}
		}
	}
}

// harmful says what is wrong with an attribute.
func harmful(a html.Attribute, own []string, ids map[string]bool) string {
	switch {
	case a.Key == "id" && ids[a.Val]:
		return "the id " + a.Val + " twice"
	case a.Key == "id":
		ids[a.Val] = true
	case a.Key == "class":
	case !slices.Contains(own, a.Key):
		return "the attribute " + a.Key
	case a.Key == "src" && (strings.ContainsAny(a.Val, ":/\\") || !strings.HasPrefix(a.Val, "note-")):
		return "it shows " + a.Val
	case a.Key == "href":
		// as a browser reads it: spaces and control characters count for nothing
		plain := strings.Map(func(c rune) rune {
			if c <= ' ' || c == 0x7f {
				return -1
			}
			return c
		}, strings.ToLower(a.Val))
		colon := strings.IndexByte(plain, ':')
		if colon >= 0 && !slices.Contains([]string{"http", "https", "mailto", "tel"}, plain[:colon]) {
			return "it leads to " + a.Val
		}
		if strings.HasPrefix(plain, "/") || strings.HasPrefix(plain, "\\") || strings.HasPrefix(plain, "..") {
			return "it leads to " + a.Val
		}
	}
	return ""
}

// The judge itself finds what runs.
func TestHarmlessFinds(t *testing.T) {
	for _, page := range []string{"<script>x</script>", `<a href="javascript:x">a</a>`, "<a href=\"java\tscript:x\">a</a>", `<img src="https://example.org/p.png" alt="">`, `<p onclick="x">a</p>`, `<p style="x">a</p>`,
		"<p>a", "<p>a</em></p>", "<!-- a -->", `<p id="a">a</p><p id="a">b</p>`, `<a href="//example.org">a</a>`, `<a href="../x">a</a>`, "<svg></svg>"} {
		if harmless(page) == "" {
			t.Errorf("%q passes", page)
		}
	}
	if why := harmless(`<p id="a"><a href="https://example.org" rel="noreferrer">a</a><br></p>`); why != "" {
		t.Error(why)
	}
}

// hostile are texts that do what people may do, by mistake or not.
var hostile = []string{
	"`<script>alert(1)</script>`", "\\<script>alert(1)\\</script>", "&lt;script&gt;alert(1)&lt;/script&gt;", "&#60;script&#62;", "\t<script>alert(1)</script>",
	"```html\n<script>alert(1)</script>\n```", "```\"onload=\"x\n```", "javascript:alert(1)", "`[a](javascript:x)`",
	"[Planer]: javascript:alert(1)\n\ntext", "[\"onmouseover=\"x](machine:Planer '\"onmouseover=\"x')", "[a](machine:Planer \"\\\"><b\")", "[a](https://example.org/\"onmouseover=\"x)",
	"\u202etxt.exe\u202c \u2066a\u2069 \u200f\u200e", "# \u202eevil", "مرحبا [Planer] שלום", "🪚🔥👩🏽‍🔧 e\u0301\u0301\u0301\u0301", strings.Repeat("W", 10000), "# A\n\n" + strings.Repeat("🔥", 10000),
	"| " + strings.Repeat("W", 10000) + " |\n|---|\n| " + strings.Repeat("W", 10000) + " |", "a/b\\c ../../etc/passwd C:\\temp %2e%2e%2f", "{{.}} {{template \"x\"}} ${x}", "&#1; &#0; &#xfffe; &#x202e;",
	"text ![\"](q.svg) text", "![\"onerror=\"x](p.png \"\\\"><b\")", "![a](r.jpg '</figcaption><script>')", "x[^\"><a]\n\n[^\"><a]: y", "- [ ] `<b>`\n- [x]\n- [ ]  \n", "Term\n: a\n\n  - [ ] b\n\n: c",
	"a  \nb\\\nc", "***a**b*c _d_ __e__ ~~f~~", "1. a\n7) b\n- c\n+ d", "> - 1. # a\n>   ---\n", "a\n===\nb\n---", "---\na: <b\n---", "\ufeff# BOM", "a\r\nb\r\n", "#\u00a0a", "| a | b\n|-|-\n|`|`|\\||",
	"<", "<<>>", "a<b", "a < b > c", "&", "&nbsp;&copy;", "[", "]", "[]", "![", "[[Planer]]", "[Planer][]", "[^", ":", ": a", "|", "|-", "-", "- -", "`", "``` ", "\\", "*", "0.", "0. a",
}

// Whatever is not refused gives a page in which nothing runs.
func TestHostileNotes(t *testing.T) {
	for _, text := range hostile {
		page := shownAs(t, text, "p.png", "q.svg", "r.jpg")
		if why := harmless(page); why != "" {
			t.Errorf("%.80q: %s in %.200q", text, why, page)
		}
	}
	for _, text := range []string{"# \"><img src=x>\n", "\\[a](javascript:alert(1))", "[a]\n\n[a]: javascript:alert(1)", "![<script>\"onerror=\"x](p.png)", "<svg onload=x>", "<ScRiPt>", "</p><script>", "<!DOCTYPE x>", "<![CDATA[x]]>", "<?x?>", "<style>", "[a](<https://example.org/ x\"><script>>)"} {
		if got := faultsOf(map[string]string{"a.md": text, "p.png": pictureOf("p.png")}); len(got) == 0 {
			t.Errorf("%q is not refused", text)
		}
	}
}

// A text just within each bound is read, and one just beyond it is refused.
func TestNoteBounds(t *testing.T) {
	lines := func(n int) string { return strings.Repeat("a\n", n) }
	for name, c := range map[string]struct{ within, beyond, said string }{
		"lines":    {lines(mostLines), lines(mostLines + 1), "more than 5000 lines"},
		"brackets": {strings.Repeat("\\[", mostBrackets), strings.Repeat("\\[", mostBrackets+1), "more than 4000 brackets"},
		"stars":    {strings.Repeat("a*", mostStars), strings.Repeat("a*", mostStars+1), "more than 10000 asterisks"},
		"depth":    {strings.Repeat("> ", mostNested) + "a", strings.Repeat("> ", mostNested+1) + "a", "lists or quotes"},
		"columns":  {"|" + strings.Repeat("a|", mostColumns) + "\n|" + strings.Repeat("-|", mostColumns), "|" + strings.Repeat("a|", mostColumns+1) + "\n|" + strings.Repeat("-|", mostColumns+1), "a table of many columns"},
		"bytes":    {strings.Repeat("a", mostNoteBytes), strings.Repeat("a", mostNoteBytes+1), "more than 256 KiB"},
	} {
		if got := faultsOf(map[string]string{"a.md": c.within}); len(got) > 0 {
			t.Errorf("%s, within: %q", name, got)
		}
		if got := faultsOf(map[string]string{"a.md": c.beyond}); len(got) != 1 || !strings.Contains(got[0], c.said) {
			t.Errorf("%s, beyond: %q", name, got)
		}
	}
	if got := faultsOf(map[string]string{"a.md": strings.Repeat("<b>\n\n", 400)}); len(got) != mostFlaws {
		t.Errorf("%d faults of one note", len(got))
	}
	many := map[string]string{}
	for i := range mostNotes {
		many["n"+strconv.Itoa(i)+".md"] = "a"
	}
	if got := faultsOf(many); len(got) > 0 {
		t.Errorf("%d notes: %q", len(many), got)
	}
	many["one-more.md"] = "a"
	if got := faultsOf(many); len(got) != 1 || !strings.Contains(got[0], "201 notes; at most 200") {
		t.Errorf("%d notes: %q", len(many), got)
	}
}

// Links, folders and hidden files are not read, on a real disk either.
func TestNotesOnDisk(t *testing.T) {
	folder, outside := t.TempDir(), t.TempDir()
	write := func(path, text string) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write(filepath.Join(outside, "secret.md"), "secret")
	write(filepath.Join(outside, "secret.png"), pictureOf("x.png"))
	write(filepath.Join(folder, "a.md"), "![a](p.png) ![b](.h.png)")
	write(filepath.Join(folder, ".hidden.md"), "<b>")
	write(filepath.Join(folder, ".h.png"), pictureOf("x.png"))
	for from, to := range map[string]string{"secret.md": "s.md", "secret.png": "p.png"} {
		if err := os.Symlink(filepath.Join(outside, from), filepath.Join(folder, to)); err != nil {
			t.Skip(err)
		}
	}
	if err := os.Mkdir(filepath.Join(folder, "d.md"), 0o777); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	for name, tree := range map[string]fs.FS{"folder": os.DirFS(folder), "root": root.FS()} {
		_, faults := ReadNotes(tree, testGuide())
		var got []string
		for _, f := range faults {
			got = append(got, f.File+": "+f.Read)
		}
		slices.Sort(got)
		if want := []string{"a.md: the picture \".h.png\", a hidden file", "d.md: a folder", "p.png: a link", "s.md: a link"}; !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	if notes, faults := ReadNotes(os.DirFS(filepath.Join(folder, "none")), testGuide()); len(faults) > 0 || len(notes.Pages) > 0 {
		t.Errorf("no folder: %+v", faults)
	}
}

// FuzzNote: whatever a note holds, it is refused with its faults at places
// inside it, or gives the same harmless page every time.
func FuzzNote(f *testing.F) {
	for _, text := range hostile {
		f.Add(text)
	}
	f.Add("[a](machine:Plane) ![a](p.png) <b> [^1]\n\n[^1]: x\n\n- [ ] [Planer]\n\na|b\n-|-\n1|2\n\nT\n: d")
	files := map[string]string{"p.png": pictureOf("p.png")}
	f.Fuzz(func(t *testing.T, text string) {
		files["a.md"] = text
		folder := folderOf(files)
		notes, faults := ReadNotes(folder, testGuide())
		for _, fault := range faults {
			if fault.Read == "" || fault.Expected == "" || fault.Do == "" || fault.Line > 1+strings.Count(text, "\n") || fault.Column > 1+len(text) {
				t.Fatalf("%+v", fault)
			}
		}
		if len(faults) > 0 {
			return
		}
		page, err := notes.Pages[0].HTML()
		if err != nil {
			t.Fatal(err)
		}
		if why := harmless(page); why != "" {
			t.Fatalf("%s in %q", why, page)
		}
		again, _ := ReadNotes(folder, testGuide())
		if second, _ := again.Pages[0].HTML(); second != page {
			t.Fatalf("%q, then %q", page, second)
		}
	})
}
