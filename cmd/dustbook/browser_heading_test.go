package main

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// No heading stands alone at the foot of a printed page: what it is the
// heading of begins on the same page.
func TestNoHeadingAtAPagesFoot(t *testing.T) {
	ctx := browser(t)
	looked := 0
	sheets := sample(publishedSheets(t, "example"), false)
	for _, at := range publishedSheets(t, "testdata/proof") {
		if strings.HasPrefix(at.name, "records") {
			sheets = append(sheets, at)
		}
	}
	for _, at := range sheets {
		for paper := range papers {
			heads, err := headingsOf(ctx, at, paper)
			if err != nil {
				t.Errorf("%s on %s: %v", at.name, paper, err)
			}
			looked += len(heads)
			for _, h := range heads {
				if h.fault() != "" {
					t.Errorf("%s on %s: %s", at.name, paper, h.fault())
				}
			}
		}
	}
	if looked < 100 {
		t.Errorf("only %d headings were looked at", looked)
	}
}

// A look at the headings sees one that is left behind, above a paragraph, a
// drawing or a table, and none where the page is kept together.
func TestHeadingsLeftBehindAreSeen(t *testing.T) {
	ctx := browser(t)
	const style = `<style>@page { size: 148mm 210mm; margin: 10mm } * { margin: 0 } .tall { height: 165mm } .whole { break-inside: avoid; height: 60mm } h2, h3 { break-after: auto } .kept h2 { break-after: avoid }</style><h1>Sheet</h1><p>Text.</p><div class="tall"></div>`
	const picture = `<figure class="whole"><svg width="200" height="200"><rect width="200" height="200"/></svg></figure>`
	for name, c := range map[string]struct{ body, want string }{
		"text":       {`<section><h2>Left</h2><p class="whole">next</p></section>`, `"Left" stands on page 1, what follows it on 2`},
		"drawing":    {`<section><h2>Left</h2>` + picture + `</section>`, `"Left" stands on page 1, what follows it on 2`},
		"table":      {`<section><h2>Left</h2><table class="whole"><thead><tr><th>head</th></tr></thead><tbody><tr><td>cell</td></tr></tbody></table></section>`, `"Left" stands on page 1, what follows it on 2`},
		"heads":      {`<section><h2>Left</h2><h3 class="whole">next</h3><p>text</p></section>`, `"Left" stands on page 1, what follows it on 2`},
		"kept":       {`<section class="kept"><h2>Left</h2><p class="whole">next</p></section>`, ""},
		"unseen":     {`<section class="kept"><h2>Left</h2><p style="display: none">not printed</p><p class="whole">next</p></section>`, ""},
		"long":       {`<style>.tall { height: 150mm }</style><section><h2>Left</h2><p>` + strings.Repeat("many words ", 200) + `</p></section>`, ""},
		"not-shown":  {`<section style="display: none"><h2>Left</h2></section><section><p class="whole">next</p></section>`, ""},
		"with-links": {`<section><h2>Left</h2><p class="whole"><a href="https://example.org/">next</a></p></section>`, `"Left" stands on page 1, what follows it on 2`},
	} {
		heads, err := headingsOf(ctx, page(t, name, style+c.body), "A4")
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		got := ""
		for _, h := range heads {
			got += h.fault()
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// heading is a heading of a printed sheet, with the pages of its own text and
// of what follows it, from 1.
type heading struct {
	text      string
	own, next []int
}

func (h heading) fault() string {
	if len(h.own) == 0 || len(h.next) == 0 || slices.Contains(h.next, slices.Max(h.own)) {
		return ""
	}
	return fmt.Sprintf("%q stands on page %d, what follows it on %d", h.text, slices.Max(h.own), slices.Min(h.next))
}

// marking puts a link of its own around the text of every heading and around
// the first thing that is printed after it: text, or a drawing; in a table the
// first cell of its rows, since its head alone is little. The browser says of
// a link on which page it stands.
const marking = `(() => {
	const printed = e => e.checkVisibility({visibilityProperty: true}) && e.getClientRects().length > 0;
	const wrap = (node, address) => {
		const link = document.createElement("a");
		link.href = address;
		link.style.all = "unset";
		node.replaceWith(link);
		link.append(node);
	};
	const all = [...document.querySelectorAll("h1, h2, h3, h4")].filter(printed);
	const follows = head => {
		const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
		walk.currentNode = head;
		for (let node = walk.nextNode(); node; node = walk.nextNode()) {
			if (head.contains(node)) continue;
			const e = node.nodeType === Node.TEXT_NODE ? node.parentElement : node;
			if (!printed(e) || e.closest("thead, style, script, svg svg")) continue;
			if (node.localName === "svg" && node.namespaceURI.endsWith("svg")) return node;
			if (node.nodeType === Node.TEXT_NODE && node.data.trim() && !e.closest("svg")) return node;
		}
		return null;
	};
	const pairs = all.map(head => [head, follows(head)]);
	pairs.forEach(([head, next], i) => {
		if (next) wrap(next, "https://next.invalid/" + i);
	});
	pairs.forEach(([head], i) => {
		const walk = document.createTreeWalker(head, NodeFilter.SHOW_TEXT);
		const texts = [];
		while (walk.nextNode()) if (walk.currentNode.data.trim()) texts.push(walk.currentNode);
		if (texts.length) wrap(texts[0], "https://own.invalid/" + i);
	});
	return all.map(head => head.textContent.trim());
})()`

// headingsOf prints a sheet and tells where its headings came to stand.
func headingsOf(parent context.Context, at published, paper string) ([]heading, error) {
	var heads []heading
	v := view{shop: at.shop, name: at.name, home: diskHome(at.folder), width: 1280}
	said, err := open(parent, v, func(ctx context.Context) ([]string, error) {
		if err := chromedp.Do(ctx, onPaper); err != nil {
			return nil, err
		}
		texts, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](marking))
		if err != nil {
			return nil, err
		}
		pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(papers[paper]), chromedp.PDFPreferCSSPageSize()))
		if err != nil {
			return nil, err
		}
		own, next := linksByPage(pdf)
		for i, text := range texts {
			heads = append(heads, heading{text, own[i], next[i]})
		}
		return nil, nil
	})
	if err == nil && len(said) > 0 {
		err = fmt.Errorf("%s", strings.Join(said, "; "))
	}
	return heads, err
}

var (
	pdfObject = regexp.MustCompile(`(?s)(\d+) 0 obj\s*(<<.*?)endobj`)
	pdfAnnots = regexp.MustCompile(`/Annots \[([^\]]*)\]`)
	pdfRef    = regexp.MustCompile(`(\d+) 0 R`)
	pdfMark   = regexp.MustCompile(`/URI \(https://(own|next)\.invalid/(\d+)\)`)
)

// linksByPage tells the pages of the marks of headings and of what follows
// them. The browser writes pages and links uncompressed, pages in their order.
func linksByPage(pdf []byte) (own, next map[int][]int) {
	own, next = map[int][]int{}, map[int][]int{}
	marks := map[string][]string{} // by the number of the object
	var pages [][]string           // the numbers of their links
	for _, m := range pdfObject.FindAllSubmatch(pdf, -1) {
		if strings.Contains(string(m[2]), "/MediaBox") {
			var refs []string
			if annots := pdfAnnots.FindSubmatch(m[2]); annots != nil {
				for _, ref := range pdfRef.FindAllSubmatch(annots[1], -1) {
					refs = append(refs, string(ref[1]))
				}
			}
			pages = append(pages, refs)
		}
		if mark := pdfMark.FindSubmatch(m[2]); mark != nil {
			marks[string(m[1])] = []string{string(mark[1]), string(mark[2])}
		}
	}
	for i, refs := range pages {
		for _, ref := range refs {
			mark := marks[ref]
			if mark == nil {
				continue
			}
			n, _ := strconv.Atoi(mark[1])
			if mark[0] == "own" {
				own[n] = append(own[n], i+1)
			} else {
				next[n] = append(next[n], i+1)
			}
		}
	}
	return own, next
}

// onPaper makes the browser lay a sheet out as on paper.
var onPaper = chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
	_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	return err
})
