package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"dustbook/templates/book"
)

// What tells this test how to go about it:
//
//	DUSTBOOK_BROWSER=required   no browser is a failure; so it is in CI
//	DUSTBOOK_BROWSER=skip       not now
//	DUSTBOOK_SHEETS=all         every sheet, not one of each kind
//	DUSTBOOK_LOOK=FOLDER        keep a picture of every sheet looked at

// widths are those of a phone and of a desk, in pixels.
var widths = []int64{360, 1280}

func TestSheetsInABrowser(t *testing.T) {
	ctx := browser(t)
	sheets := publishedSheets(t, "example")
	for _, at := range sample(sheets, os.Getenv("DUSTBOOK_SHEETS") == "all") {
		lookAtWidths(t, ctx, "example", at)
	}
	// the sheets of proof, with records that they show
	for _, at := range publishedSheets(t, filepath.Join("testdata", "proof")) {
		if strings.HasPrefix(at.name, "commissioning") || strings.HasPrefix(at.name, "records") || at.name == "use-planer.html" || at.name == "collector-cyclone.html" {
			lookAtWidths(t, ctx, "proof", at)
		}
	}
}

// published is a sheet of a published book.
type published struct{ folder, name string }

// publishedSheets publishes the book of a shop and lists its sheets.
func publishedSheets(t *testing.T, shop string) []published {
	t.Helper()
	folder := t.TempDir()
	args := []string{"publish", "--to", folder}
	if shop != "example" {
		args = append(args, shop)
	}
	p, said := quiet(&bytes.Buffer{})
	p.book = book.Make
	if status := p.run(args); status != statusDone {
		t.Fatalf("publish ended with status %d: %s", status, said)
	}
	var list []published
	for _, name := range htmlFiles(t, folder) {
		list = append(list, published{folder, name})
	}
	if len(list) == 0 {
		t.Fatal("no sheets")
	}
	return list
}

// lookAtWidths looks at a sheet as on a phone and as on a desk.
func lookAtWidths(t *testing.T, ctx context.Context, called string, at published) {
	t.Helper()
	for _, width := range widths {
		shot, faults := lookAt(ctx, filepath.Join(at.folder, at.name), width)
		for _, fault := range faults {
			t.Errorf("%s, %s at %d px: %s", called, at.name, width, fault)
		}
		name := strings.ReplaceAll(strings.TrimSuffix(at.name, ".html"), "/", "-")
		if called != "example" {
			name = called + "-" + name
		}
		keep(t, fmt.Sprintf("%s-%d.png", name, width), shot)
	}
}

// The look at a sheet finds what it is there to find.
func TestALookFindsFaults(t *testing.T) {
	ctx := browser(t)
	const head = `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><link rel="icon" href="data:,"><title>t</title>`
	for name, c := range map[string]struct{ body, want string }{
		"sound":     {`<h1>Sheet</h1><p>words`, ""},
		"console":   {`<h1>Sheet</h1><script>console.error("broken")</script>`, "broken"},
		"exception": {`<h1>Sheet</h1><script>nothing.at.all()</script>`, "nothing is not defined"},
		"missing":   {`<h1>Sheet</h1><img src="gone.png" alt="">`, "gone.png"},
		"request":   {`<h1>Sheet</h1><img src="http://127.0.0.1:9/x.png" alt="">`, "asks for http://127.0.0.1:9/x.png"},
		"wide":      {`<h1>Sheet</h1><div id="broad" style="width:1500px">wide</div>`, "sideways scroll"},
		"headless":  {`<h2>Sheet</h2>`, "h1"},
	} {
		path := filepath.Join(t.TempDir(), name+".html")
		if err := os.WriteFile(path, []byte(head+c.body), 0o666); err != nil {
			t.Fatal(err)
		}
		for _, width := range widths {
			_, faults := lookAt(ctx, path, width)
			said := strings.Join(faults, "; ")
			if c.want == "" && said != "" || !strings.Contains(said, c.want) {
				t.Errorf("%s at %d px: %q, want %q", name, width, said, c.want)
			}
		}
	}
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

// state is what a script finds out about a sheet.
type state struct {
	Heads    int    `json:"heads"`
	Scroll   int    `json:"scroll"`
	Inner    int    `json:"inner"`
	Widest   string `json:"widest"`
	Viewport bool   `json:"viewport"`
}

const stateScript = `(() => {
	const inner = window.innerWidth;
	let widest = "", most = inner + 0.5;
	for (const e of document.body.querySelectorAll("*")) {
		const right = e.getBoundingClientRect().right;
		if (right > most) { most = right; widest = e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + (e.getAttribute("class") ? "." + e.getAttribute("class") : ""); }
	}
	return {heads: document.querySelectorAll("h1").length, scroll: document.documentElement.scrollWidth, inner, widest,
		viewport: document.querySelector('meta[name="viewport"]') !== null};
})()`

// lookAt opens a sheet from the disk at a width, as from a memory stick, and
// says what is wrong with it.
func lookAt(parent context.Context, path string, width int64) (shot []byte, faults []string) {
	ctx, stop := chromedp.NewContext(parent)
	defer stop()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 900)); err != nil {
		return nil, []string{err.Error()}
	}
	var lock sync.Mutex
	var seen []string
	listen := func(event any) {
		if fault := faultOf(event); fault != "" {
			lock.Lock()
			seen = append(seen, fault)
			lock.Unlock()
		}
	}
	if err := chromedp.Listen(ctx, listen); err != nil {
		return nil, []string{err.Error()}
	}
	within, done := context.WithTimeout(ctx, 30*time.Second)
	defer done()
	address := url.URL{Scheme: "file", Path: filepath.ToSlash(path)}
	if err := chromedp.Do(within, chromedp.Navigate(address.String())); err != nil {
		return nil, []string{err.Error()}
	}
	at, err := chromedp.Run(within, chromedp.Evaluate[state](stateScript))
	if err == nil && os.Getenv("DUSTBOOK_LOOK") != "" {
		shot, err = chromedp.Run(within, chromedp.FullScreenshot(100))
	}
	lock.Lock()
	defer lock.Unlock()
	faults = append(seen, at.faults()...)
	if err != nil {
		faults = append(faults, err.Error())
	}
	return shot, faults
}

func (at state) faults() (list []string) {
	if at.Heads != 1 {
		list = append(list, fmt.Sprintf("%d h1, want one", at.Heads))
	}
	if at.Scroll > at.Inner {
		list = append(list, fmt.Sprintf("sideways scroll: %d px wide in a window of %d, the widest is %s", at.Scroll, at.Inner, at.Widest))
	}
	if !at.Viewport {
		list = append(list, "no viewport for phones")
	}
	return list
}

// faultOf says what an event of the browser tells against a sheet.
func faultOf(event any) string {
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if !strings.HasPrefix(e.Request.URL, "file:") && !strings.HasPrefix(e.Request.URL, "data:") {
			return "asks for " + e.Request.URL
		}
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeAssert {
			var words []string
			for _, arg := range e.Args {
				words = append(words, string(arg.Value)+arg.Description)
			}
			return "console: " + strings.Join(words, " ")
		}
	case *runtime.EventExceptionThrown:
		d := e.ExceptionDetails
		if d.Exception != nil {
			return "exception: " + d.Exception.Description
		}
		return "exception: " + d.Text
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			return "log: " + e.Entry.Text + " " + e.Entry.URL
		}
	}
	return ""
}

// keep keeps a picture where one is asked for.
func keep(t *testing.T, name string, shot []byte) {
	t.Helper()
	folder := os.Getenv("DUSTBOOK_LOOK")
	if folder == "" || shot == nil {
		return
	}
	err := errors.Join(os.MkdirAll(folder, 0o777), os.WriteFile(filepath.Join(folder, name), shot, 0o666))
	if err != nil {
		t.Error(err)
	}
}
