package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/chromedp/chromedp"

	"dustbook/templates/book"
)

var hiddenBox = regexp.MustCompile(`<div id="?find"?[^>]* hidden`)

// In a browser the list of names shows what holds all the words that are
// written, from the disk; without a script it is whole and has no box.
func TestFindInABrowser(t *testing.T) {
	ctx := browser(t)
	sheets := publishedSheets(t, "example")
	at := "file://" + filepath.ToSlash(filepath.Join(sheets[0].folder, "find.html"))
	if err := chromedp.Do(ctx, chromedp.Navigate(at)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ words, so string }{
		{"", `document.querySelectorAll(".found > div:not([hidden])").length > 100`},
		{"BANDSAW gate", `document.querySelectorAll(".found > div:not([hidden])").length > 0 && [...document.querySelectorAll(".found > div:not([hidden])")].every(e => /bandsaw/i.test(e.textContent) && /gate/i.test(e.textContent))`},
		{"qqqq", `document.querySelectorAll(".found > div:not([hidden]), .letter:not([hidden])").length === 0 && /Nothing/.test(document.getElementById("find-count").textContent)`},
	} {
		write := `(() => { const w = document.getElementById("find-words"); w.value = ` + "`" + c.words + "`" + `; w.dispatchEvent(new Event("input")); return !document.getElementById("find").hidden; })()`
		if shown, err := chromedp.Run(ctx, chromedp.Evaluate[bool](write)); err != nil || !shown {
			t.Fatalf("%q: the box is shown: %v, %v", c.words, shown, err)
		}
		if is, err := chromedp.Run(ctx, chromedp.Evaluate[bool](c.so)); err != nil || !is {
			t.Errorf("%q: not so: %s, %v", c.words, c.so, err)
		}
	}
	page, err := os.ReadFile(filepath.Join(sheets[0].folder, "find.html"))
	if err != nil || !hiddenBox.Match(page) {
		t.Errorf("the box is not hidden where no script runs: %v", err)
	}
}

// By the clock of the browser, and only with its script, a job whose day has
// passed is overdue; one whose day is to come is not.
func TestOverdueInABrowser(t *testing.T) {
	ctx := browser(t)
	folder := t.TempDir()
	shop := ownShop(t)
	writeFile(t, filepath.Join(shop, "records", "2020-01-02-service-1.toml"), []byte("kind = \"service\"\ndate = 2020-01-02\ndone = [\"gates\"]\n"))
	writeFile(t, filepath.Join(shop, "records", "2100-01-02-service-1.toml"), []byte("kind = \"service\"\ndate = 2100-01-02\ndone = [\"fan\"]\n"))
	p, said := quiet(&bytes.Buffer{})
	p.book = book.Order.Make
	if status := p.run([]string{"publish", shop, "--to", folder}); status != statusDone {
		t.Fatalf("status %d: %s", status, said)
	}
	if err := chromedp.Do(ctx, chromedp.Navigate("file://"+filepath.ToSlash(filepath.Join(folder, "upkeep.html")))); err != nil {
		t.Fatal(err)
	}
	for so, want := range map[string]bool{
		`/overdue/.test(document.querySelector("[data-due='2020-02-02']").textContent)`: true,
		`/overdue/.test(document.querySelector("[data-due='2100-07-02']").textContent)`: false,
	} {
		if is, err := chromedp.Run(ctx, chromedp.Evaluate[bool](so)); err != nil || is != want {
			t.Errorf("%s: %v, %v", so, is, err)
		}
	}
	if page, err := os.ReadFile(filepath.Join(folder, "upkeep.html")); err != nil || bytes.Contains(page, []byte("class=overdue")) || bytes.Contains(page, []byte(`class="overdue"`)) {
		t.Errorf("the book itself says overdue: %v", err)
	}
}
