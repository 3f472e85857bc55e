package main

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// view is one way to look at a sheet.
type view struct {
	shop, name string
	home       string // the address of the book's folder, with the last slash
	width      int64
	dark       bool
}

func (v view) scheme() string {
	if v.dark {
		return "dark"
	}
	return "light"
}

func (v view) String() string {
	way, _, _ := strings.Cut(v.home, ":")
	return fmt.Sprintf("%s, %s by %s at %d px, %s", v.shop, v.name, way, v.width, v.scheme())
}

// views are the ways to look at a sheet: from the disk and from a server, at
// every width, in light and in dark. A plain run takes every second of them:
// each width, each light and each home, and each two of these together.
func (at published) views(t *testing.T) iter.Seq[view] {
	t.Helper()
	homes := []string{diskHome(at.folder), served(t, at.folder)}
	all := os.Getenv("DUSTBOOK_SHEETS") == "all"
	return func(yield func(view) bool) {
		for h, home := range homes {
			for w, width := range widths {
				for d, dark := range []bool{false, true} {
					if !all && (h+w+d)%2 != 0 {
						continue
					}
					if !yield(view{at.shop, at.name, home, width, dark}) {
						return
					}
				}
			}
		}
	}
}

// diskHome is the address of a folder on the disk, as of a memory stick.
func diskHome(folder string) string {
	address := url.URL{Scheme: "file", Path: filepath.ToSlash(folder) + "/"}
	return address.String()
}

// served serves a folder below a path of this machine's own server, as people
// who have a site put a book into it.
func served(t *testing.T, folder string) string {
	t.Helper()
	const below = "/shop/dust/"
	server := httptest.NewServer(http.StripPrefix(path.Clean(below), http.FileServer(http.Dir(folder))))
	t.Cleanup(server.Close)
	return server.URL + below
}

// lookAt looks at a sheet one way and says what is wrong with it.
func lookAt(parent context.Context, v view) (shot []byte, faults []string) {
	faults, err := open(parent, v, func(ctx context.Context) ([]string, error) {
		at, err := chromedp.Run(ctx, chromedp.Evaluate[state](stateScript))
		if err == nil && pictured(v) {
			shot, err = chromedp.Run(ctx, chromedp.FullScreenshot(100))
		}
		return at.faults(), err
	})
	if err != nil {
		faults = append(faults, err.Error())
	}
	return shot, faults
}

// open opens a sheet in a tab of its own, asks it, and adds what the browser
// had to say against it.
func open(parent context.Context, v view, ask func(context.Context) ([]string, error)) ([]string, error) {
	ctx, stop := chromedp.NewContext(parent)
	defer stop()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(v.width, 900), prefers(v.scheme())); err != nil {
		return nil, err
	}
	var lock sync.Mutex
	var seen []string
	listen := func(event any) {
		if fault := faultOf(event, v.home); fault != "" {
			lock.Lock()
			seen = append(seen, fault)
			lock.Unlock()
		}
	}
	if err := chromedp.Listen(ctx, listen); err != nil {
		return nil, err
	}
	within, done := context.WithTimeout(ctx, 30*time.Second)
	defer done()
	if err := chromedp.Do(within, chromedp.Navigate(v.home+v.name)); err != nil {
		return nil, err
	}
	found, err := ask(within)
	lock.Lock()
	defer lock.Unlock()
	return append(seen, found...), err
}

// prefers makes the browser ask for the light or the dark colours.
func prefers(scheme string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
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

// faultOf says what an event of the browser tells against a sheet of the book
// at home.
func faultOf(event any, home string) string {
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if !strings.HasPrefix(e.Request.URL, home) && !strings.HasPrefix(e.Request.URL, "data:") {
			return "asks for " + e.Request.URL
		}
	case *runtime.EventConsoleAPICalled:
		var words []string
		for _, arg := range e.Args {
			words = append(words, string(arg.Value)+arg.Description)
		}
		return "console: " + strings.Join(words, " ")
	case *runtime.EventExceptionThrown:
		d := e.ExceptionDetails
		if d.Exception != nil {
			return "exception: " + d.Exception.Description
		}
		return "exception: " + d.Text
	case *log.EventEntryAdded:
		return "log: " + e.Entry.Text + " " + e.Entry.URL
	}
	return ""
}

// pictured says whether a picture of a view is asked for: the sheet as it
// comes from the disk.
func pictured(v view) bool {
	return os.Getenv("DUSTBOOK_LOOK") != "" && strings.HasPrefix(v.home, "file:")
}

// keep keeps a picture where one is asked for.
func keep(t *testing.T, v view, shot []byte) {
	t.Helper()
	if shot == nil {
		return
	}
	folder := os.Getenv("DUSTBOOK_LOOK")
	name := strings.ReplaceAll(strings.TrimSuffix(v.name, ".html"), "/", "-")
	name = fmt.Sprintf("%s-%s-%d-%s.png", v.shop, name, v.width, v.scheme())
	err := errors.Join(os.MkdirAll(folder, 0o777), os.WriteFile(filepath.Join(folder, name), shot, 0o666))
	if err != nil {
		t.Error(err)
	}
}
