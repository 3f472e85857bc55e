package main

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"dustbook/templates/book"
)

// What tells this test how to go about it:
//
//	DUSTBOOK_BROWSER=required   no browser is a failure; so it is in CI
//	DUSTBOOK_BROWSER=skip       not now
//	DUSTBOOK_SHEETS=all         every sheet, not one of each kind
//	DUSTBOOK_LOOK=FOLDER        keep a picture of every sheet looked at
//	DUSTBOOK_AXE=FILE           axe.min.js of axe-core, for the barriers a sheet may hold

// widths are those of a phone, of a tablet and of a desk, in pixels.
var widths = []int64{360, 768, 1280}

// No sheet says anything on the console, asks for anything outside its book or
// has to be scrolled sideways, in light and in dark, from the disk and from a
// server that has the book in a folder.
func TestSheetsInABrowser(t *testing.T) {
	ctx := browser(t)
	for _, at := range lookedAt(t) {
		for v := range at.views(t) {
			shot, faults := lookAt(ctx, v)
			for _, fault := range faults {
				t.Errorf("%s: %s", v, fault)
			}
			keep(t, v, shot)
		}
	}
}

// lookedAt lists the sheets to look at: of the example one of each kind, or
// all, and of a shop with records those that show them.
func lookedAt(t *testing.T) []published {
	t.Helper()
	list := sample(publishedSheets(t, "example"), os.Getenv("DUSTBOOK_SHEETS") == "all")
	for _, at := range publishedSheets(t, filepath.Join("testdata", "proof")) {
		if strings.HasPrefix(at.name, "commissioning") || strings.HasPrefix(at.name, "records") || at.name == "use-planer.html" || at.name == "collector-cyclone.html" {
			list = append(list, at)
		}
	}
	return list
}

// published is a sheet of a published book.
type published struct{ shop, folder, name string }

// publishedSheets publishes the book of a shop and lists its sheets.
func publishedSheets(t *testing.T, shop string) []published {
	t.Helper()
	folder := t.TempDir()
	args := []string{"publish", "--to", folder}
	if shop != "example" {
		args = append(args, shop)
	}
	p, said := quiet(&bytes.Buffer{})
	p.book = book.Order.Make
	if status := p.run(args); status != statusDone {
		t.Fatalf("publish ended with status %d: %s", status, said)
	}
	var list []published
	for _, name := range htmlFiles(t, folder) {
		list = append(list, published{filepath.Base(shop), folder, name})
	}
	if len(list) == 0 {
		t.Fatal("no sheets")
	}
	return list
}

// browser starts a browser, or skips the test where there is none and none is
// asked for.
func browser(t *testing.T) context.Context {
	t.Helper()
	wish := os.Getenv("DUSTBOOK_BROWSER")
	if wish == "skip" {
		t.Skip("DUSTBOOK_BROWSER=skip")
	}
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if found, err := exec.LookPath(name); err == nil && path == "" {
			path = found
		}
	}
	switch {
	case path != "":
	case wish == "required" || os.Getenv("CI") != "":
		t.Fatal("no chromium on this machine, and one is required")
	default:
		t.Skip("no chromium on this machine")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(func() {
		_ = chromedp.Cancel(ctx)
		stop()
	})
	if err := chromedp.Do(ctx); err != nil {
		t.Fatalf("the browser does not start: %v", err)
	}
	return ctx
}

// htmlFiles lists the sheets of a book, sorted.
func htmlFiles(t *testing.T, folder string) []string {
	t.Helper()
	var list []string
	err := fs.WalkDir(os.DirFS(folder), ".", func(name string, d fs.DirEntry, err error) error {
		if strings.HasSuffix(name, ".html") {
			list = append(list, name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// sample takes the first sheet of each kind: those whose names begin with the
// same folder and word are of one kind.
func sample(sheets []published, all bool) []published {
	seen := map[string]bool{}
	return slices.DeleteFunc(slices.Clone(sheets), func(at published) bool {
		kind, _, _ := strings.Cut(strings.TrimSuffix(at.name, ".html"), "-")
		again := seen[kind] && !all
		seen[kind] = true
		return again
	})
}
