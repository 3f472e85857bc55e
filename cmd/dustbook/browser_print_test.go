package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"dustbook/content"
)

// papers are the sheets people have in a printer.
var papers = map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter}

// A card is one page of paper, so that it can hang on its machine; so is a
// plan with its verdict: its tables follow on the next. The guide for a first
// day is two sides of one sheet.
func TestCardsAndPlansPrintOnOnePage(t *testing.T) { printAll(t, publishedSheets(t, "example")) }

// So it is where names are as long as people make them, six gates stand on one
// machine's way, a hose is shared and everything is in two languages.
func TestLongNamesPrintOnOnePage(t *testing.T) {
	var sheets []published
	spanish := 0
	for _, at := range publishedSheets(t, filepath.Join("testdata", "long")) {
		kind, _, _ := strings.Cut(strings.TrimPrefix(at.name, "es-"), "-")
		if slices.Contains([]string{"card", "gate", "switch", "cards.html", "first", "use", "plan.html"}, kind) {
			sheets = append(sheets, at)
		}
		if strings.HasPrefix(at.name, "es-") {
			spanish++
		}
	}
	if spanish < 10 {
		t.Fatalf("only %d sheets in Spanish", spanish)
	}
	printAll(t, sheets)
}

// The guide stays two sides for a shop of many machines, stops and uses, in
// two languages.
func TestGuideOfManyPrintsOnTwoSides(t *testing.T) {
	text := strings.Replace(string(content.Example()), "[shop]\n", "[shop]\nlanguage = \"both\"\n", 1)
	for i := range 40 {
		makes := []string{"wood", "metal"}[i%2]
		text += fmt.Sprintf("[[machine]]\nname = \"Sander %d with a name of some length\"\nkind = \"disc sander\"\nmakes = \"%s\"\n[[stop]]\nname = \"Stop %d with a name of some length\"\nstops = [\"Cyclone\"]\n", i, makes, i)
		text += fmt.Sprintf("[[use]]\nname = \"Use %d with a name of some length\"\nmachines = [\"Planer\", \"Sander %d with a name of some length\"]\n", i, i)
	}
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, shopFile), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	ctx, looked := browser(t), 0
	for _, at := range publishedSheets(t, folder) {
		if !strings.HasSuffix(at.name, "first-day.html") {
			continue
		}
		for paper := range papers {
			p, err := printed(ctx, at, paper)
			if err != nil || p.fault() != "" {
				t.Errorf("%s on %s: %s %v", at.name, paper, p.fault(), err)
			}
			looked += p.Guides
		}
	}
	if looked != 4 {
		t.Errorf("printed %d guides, want two languages on two papers", looked)
	}
}

// printAll prints sheets on every paper.
func printAll(t *testing.T, sheets []published) {
	t.Helper()
	ctx := browser(t)
	cards, plans, guides := 0, 0, 0
	for _, at := range sheets {
		for paper := range papers {
			p, err := printed(ctx, at, paper)
			switch {
			case err != nil:
				t.Errorf("%s: %v", at.name, err)
			case p.fault() != "":
				t.Errorf("%s on %s: %s", at.name, paper, p.fault())
			}
			cards += p.Cards
			plans += p.Plans
			guides += p.Guides
		}
	}
	if cards == 0 || plans == 0 || guides == 0 {
		t.Errorf("printed %d cards, %d plans and %d guides, want some of each", cards, plans, guides)
	}
}

// A count of pages sees a card that runs over, and two that share a page.
func TestPagesAreCounted(t *testing.T) {
	ctx := browser(t)
	const style = `<style>@page { size: 148mm 210mm } .tall { height: 300mm } .own { break-after: page }</style><h1>Sheet</h1>`
	for name, c := range map[string]struct{ body, want string }{
		"one":    {`<div class="sheet kind-card">short</div>`, ""},
		"tall":   {`<div class="sheet kind-card"><div class="tall">long</div></div>`, "2 pages for 1 cards"},
		"each":   {`<div class="sheet kind-cards"><article class="card own">a</article><article class="card">b</article></div>`, ""},
		"shared": {`<div class="sheet kind-cards"><article class="card">a</article><article class="card">b</article></div>`, "1 pages for 2 cards"},
		"plan":   {`<div class="sheet kind-plan"><main><figure class="drawing tall">long</figure></main></div>`, "2 pages for a plan"},
		"tables": {`<div class="sheet kind-plan"><main><figure class="drawing">short</figure><div class="tall">long</div></main></div>`, ""},
		"guide":  {`<div class="sheet kind-first-day"><div class="tall">long</div></div>`, ""},
		"longer": {`<div class="sheet kind-first-day"><div class="tall">long</div><div class="tall">long</div></div>`, "4 pages for a guide"},
		"table":  {`<div class="sheet kind-table"><div class="tall">long</div></div>`, ""},
	} {
		p, err := printed(ctx, page(t, name, style+c.body), "A4")
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if got := p.fault(); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// paged is what a sheet holds and how many pages of paper it takes.
type paged struct {
	Cards  int `json:"cards"`
	Plans  int `json:"plans"`
	Guides int `json:"guides"`
	pages  int
}

// A sheet of all cards holds each in an article; else the sheet is the card.
const pagedScript = `(() => {
	const count = list => document.querySelectorAll(list).length;
	return {cards: count("article.card") || count(".sheet.kind-card"), plans: count(".sheet.kind-plan"), guides: count(".sheet.kind-first-day")};
})()`

// drawingAlone takes away what follows the drawing of a plan sheet.
const drawingAlone = `(() => {
	const drawing = document.querySelector("main > .drawing");
	if (!drawing) return false;
	while (drawing.nextElementSibling) drawing.nextElementSibling.remove();
	for (const e of document.querySelectorAll(".turn, .block")) e.remove();
	return true;
})()`

func (p paged) fault() string {
	switch {
	case p.Cards > 0 && p.pages != p.Cards:
		return fmt.Sprintf("%d pages for %d cards", p.pages, p.Cards)
	case p.Plans > 0 && p.pages != 1:
		return fmt.Sprintf("%d pages for a plan", p.pages)
	case p.Guides > 0 && p.pages > 2:
		return fmt.Sprintf("%d pages for a guide", p.pages)
	}
	return ""
}

// printed prints a sheet of cards, a plan or a guide, and counts the
// pages. The browser writes its page objects uncompressed, each with a box.
func printed(parent context.Context, at published, paper string) (paged, error) {
	var p paged
	v := view{shop: at.shop, name: at.name, home: diskHome(at.folder), width: 1280}
	said, err := open(parent, v, func(ctx context.Context) ([]string, error) {
		var err error
		p, err = chromedp.Run(ctx, chromedp.Evaluate[paged](pagedScript))
		if err != nil || p.Cards+p.Plans+p.Guides == 0 {
			return nil, err
		}
		if p.Plans > 0 {
			if _, err := chromedp.Run(ctx, chromedp.Evaluate[bool](drawingAlone)); err != nil {
				return nil, err
			}
		}
		pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(papers[paper]), chromedp.PDFPreferCSSPageSize()))
		p.pages = bytes.Count(pdf, []byte("/MediaBox"))
		return nil, err
	})
	if err == nil && len(said) > 0 {
		err = fmt.Errorf("%s", strings.Join(said, "; "))
	}
	return p, err
}
