package templates

import (
	"fmt"
	"strings"
	"testing"

	goqr "github.com/piglig/go-qr"

	"dustbook/content"
	"dustbook/plan/shop"
)

// The drawn code has just the dark modules of the symbol, inside its quiet
// zone.
func TestCodeIsTheSymbol(t *testing.T) {
	for _, text := range []string{"https://a.example/b/card-planer.html", "https://a.example/" + strings.Repeat("long/", 60)} {
		symbol, err := goqr.EncodeText(text, goqr.Medium)
		if err != nil {
			t.Fatal(err)
		}
		dark := map[[2]int]bool{}
		x, y := 0, 0
		for _, part := range strings.FieldsFunc(strings.NewReplacer("M", "|M", "m", "|m", "h", "|h").Replace(modules(symbol)), func(r rune) bool { return r == '|' }) {
			var a, b int
			switch part[0] {
			case 'M':
				if _, err := fmt.Sscanf(part, "M%d %d.5", &a, &b); err != nil {
					t.Fatal(part, err)
				}
				x, y = a, b
			case 'm':
				if _, err := fmt.Sscanf(part, "m%d 0", &a); err != nil {
					t.Fatal(part, err)
				}
				x += a
			case 'h':
				if _, err := fmt.Sscanf(part, "h%d", &a); err != nil {
					t.Fatal(part, err)
				}
				for i := range a {
					dark[[2]int{x + i, y}] = true
				}
				x += a
			}
		}
		for y := range symbol.Size() {
			for x := range symbol.Size() {
				if dark[[2]int{x + quiet, y + quiet}] != symbol.Module(x, y) {
					t.Fatalf("module %d, %d of %d is wrong", x, y, symbol.Size())
				}
				delete(dark, [2]int{x + quiet, y + quiet})
			}
		}
		if len(dark) > 0 {
			t.Errorf("%d modules lie outside", len(dark))
		}
	}
}

// A code leads to the sheet under the shop's address, and there is none where
// a phone could not open it.
func TestCodeAddress(t *testing.T) {
	for address, want := range map[string]string{
		"https://shop.example/dust":            "https://shop.example/dust/card-planer.html",
		"https://shop.example/dust/":           "https://shop.example/dust/card-planer.html",
		"https://shop.example/dust/index.html": "https://shop.example/dust/card-planer.html",
		"http://10.0.0.5:8000":                 "http://10.0.0.5:8000/card-planer.html",
		"":                                     "",
		"ftp://shop.example":                   "",
		"javascript:alert(1)":                  "",
	} {
		b := &Book{Plan: newBook(t, string(content.Example())).Plan}
		b.Plan.Shop.Address.V = address
		if b.Plan.Shop.Address.How = shop.Stated; address == "" {
			b.Plan.Shop.Address.How = shop.NotGiven
		}
		got := ""
		if c := b.codeFor("card-planer.html"); c != nil {
			got = c.Address
		}
		if got != want {
			t.Errorf("%q: %q, want %q", address, got, want)
		}
	}
}
