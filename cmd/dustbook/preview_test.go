package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"dustbook/plan/entry"
	"dustbook/templates/book"
)

const goodPage = `<!doctype html><html lang="en"><head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'"><title>A</title></head><body><p>the last good one</p></body></html>`

// siteOf is a site with one page in its book.
func siteOf() *site {
	s := newSite(8000, 7)
	s.put(map[string][]byte{"index.html": []byte(goodPage), "book.css": []byte("p{}"), "list.csv": []byte("a,b\r\n")}, nil)
	return s
}

func ask(s *site, method, host, path string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "http://"+host+path, nil)
	r.Host = host
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	return w
}

// Only who names this machine is answered, and only for reading.
func TestPreviewAnswersThisMachineOnly(t *testing.T) {
	s := siteOf()
	for host, want := range map[string]int{
		"127.0.0.1:8000": 200, "localhost:8000": 200, "LOCALHOST:8000": 200,
		"127.0.0.1": 403, "127.0.0.1:8001": 403, "shop.example:8000": 403, "127.0.0.1.shop.example:8000": 403, "localhost": 403, "": 403,
	} {
		w := ask(s, "GET", host, "/")
		if w.Code != want || strings.Contains(w.Body.String(), "last good") != (want == 200) {
			t.Errorf("host %q: %d %s", host, w.Code, w.Body)
		}
	}
	for method, want := range map[string]int{"GET": 200, "HEAD": 200, "POST": 405, "PUT": 405, "DELETE": 405, "OPTIONS": 405} {
		if w := ask(s, method, "localhost:8000", "/"); w.Code != want || want == 405 && w.Header().Get("Allow") != "GET, HEAD" {
			t.Errorf("%s: %d", method, w.Code)
		}
	}
}

func TestPreviewFiles(t *testing.T) {
	s := siteOf()
	for path, want := range map[string]struct {
		code int
		kind string
	}{
		"/": {200, "text/html; charset=utf-8"}, "/index.html": {200, "text/html; charset=utf-8"}, "/book.css": {200, "text/css; charset=utf-8"}, "/list.csv": {200, "text/csv; charset=utf-8"},
		"/.preview/preview.js": {200, "text/javascript; charset=utf-8"}, "/.preview/preview.css": {200, "text/css; charset=utf-8"}, "/.preview/other": {404, "text/plain; charset=utf-8"},
		"/gone.html": {404, "text/html; charset=utf-8"}, "/gone.css": {404, "text/plain; charset=utf-8"}, "/../preview.go": {404, "text/plain; charset=utf-8"}, "/.preview/../preview.go": {404, "text/plain; charset=utf-8"},
	} {
		w := ask(s, "GET", "127.0.0.1:8000", path)
		if w.Code != want.code || w.Header().Get("Content-Type") != want.kind || w.Header().Get("Cache-Control") != "no-store" || w.Header().Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: %d %v", path, w.Code, w.Header())
		}
		if strings.Contains(w.Body.String(), "package main") {
			t.Errorf("%s gives the source", path)
		}
	}
}

// The preview adds its script and its rule to what it serves, and touches the
// book not at all.
func TestPreviewAddsItsScript(t *testing.T) {
	s := siteOf()
	body := ask(s, "GET", "127.0.0.1:8000", "/").Body.String()
	for _, want := range []string{`content="default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self'"`, `<script src="/.preview/preview.js" data-version="8" defer></script></head>`, "the last good one"} {
		if !strings.Contains(body, want) {
			t.Errorf("no %s in\n%s", want, body)
		}
	}
	if strings.Contains(body, "preview-faults") || string(s.pages["index.html"]) != goodPage {
		t.Errorf("faults without any, or the book was touched:\n%s", body)
	}
	for rule, want := range map[string]string{
		"default-src 'none'":                   "default-src 'none'; script-src 'self'; connect-src 'self'",
		"script-src 'sha256-x'; img-src data:": "script-src 'sha256-x' 'self'; img-src data:; connect-src 'self'",
		"script-src 'self'":                    "script-src 'self'; connect-src 'self'",
		"connect-src 'none'; ":                 "connect-src 'self'; script-src 'self'",
	} {
		if got := allowed(rule); got != want {
			t.Errorf("%q: %q, want %q", rule, got, want)
		}
	}
}

// While the files have errors the last good sheet stays, with every error above
// it; a sheet that is gone, and a book that never was, say so.
func TestPreviewKeepsTheLastGoodBook(t *testing.T) {
	s := siteOf()
	s.put(nil, entry.Problems{{File: "shop.toml", Place: entry.Place{Line: 3, Column: 5}, Read: `size = "<4>"`, Expected: "a length", Do: "write 4 in"}, {File: "records/a.toml", Read: "x", Expected: "y", Do: "z"}})
	body := ask(s, "GET", "127.0.0.1:8000", "/").Body.String()
	for _, want := range []string{"the last good one", "The files have 2 errors", "shop.toml:3:5: read size = &#34;&lt;4&gt;&#34;", "records/a.toml", `data-version="9"`} {
		if !strings.Contains(body, want) {
			t.Errorf("no %s in\n%s", want, body)
		}
	}
	if body := ask(s, "GET", "127.0.0.1:8000", "/gone.html").Body.String(); !strings.Contains(body, "No such sheet") || !strings.Contains(body, "2 errors") || !strings.Contains(body, "preview.js") {
		t.Error(body)
	}
	s.put(nil, errors.New("the disk is gone"))
	if body := ask(s, "GET", "127.0.0.1:8000", "/").Body.String(); !strings.Contains(body, "The files have an error") || !strings.Contains(body, "the disk is gone") || !strings.Contains(body, "the last good one") {
		t.Error(body)
	}
	s.put(map[string][]byte{"index.html": []byte(goodPage)}, nil)
	if body := ask(s, "GET", "127.0.0.1:8000", "/").Body.String(); strings.Contains(body, "preview-faults") {
		t.Error(body)
	}
	none := newSite(8000, 0)
	none.put(nil, errors.New("no file"))
	if w := ask(none, "GET", "127.0.0.1:8000", "/"); w.Code != 404 || !strings.Contains(w.Body.String(), "No book yet") || !strings.Contains(w.Body.String(), "no file") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

// Every file that is written, comes or goes changes the fingerprint; nothing
// else does.
func TestFingerprint(t *testing.T) {
	folder := t.TempDir()
	files := []string{filepath.Join(folder, "shop.toml"), filepath.Join(folder, "records")}
	seen := map[string]string{}
	step := func(what string) {
		t.Helper()
		mark := fingerprint(files)
		if before, twice := seen[mark]; twice {
			t.Errorf("%s is not told from %s", what, before)
		}
		if seen[mark] = what; fingerprint(files) != mark {
			t.Errorf("%s: it changes by itself", what)
		}
	}
	step("nothing")
	writeText(t, files[0], "a")
	step("a shop file")
	writeText(t, files[0], "ab")
	step("a longer one")
	if err := os.Mkdir(files[1], 0o777); err != nil {
		t.Fatal(err)
	}
	step("a folder of records")
	writeText(t, filepath.Join(files[1], "a.toml"), "x")
	step("a record")
	if err := os.Remove(filepath.Join(files[1], "a.toml")); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(files[1], time.Unix(1, 0), time.Unix(1, 0)); err != nil {
		t.Fatal(err)
	}
	step("no record any more")
}

func writeText(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

var addressSaid = regexp.MustCompile(`http://127\.0\.0\.1:\d+/`)

// preview starts a preview of a shop of its own, and gives its folder, its
// address, and what ends it and waits for its exit status.
func preview(t *testing.T) (folder, address string, end func() int) {
	t.Helper()
	folder = ownShop(t)
	read, write := io.Pipe()
	p, _ := quiet(&bytes.Buffer{})
	p.err, p.book = write, book.Order.Make
	status := make(chan int, 1)
	go func() { status <- p.run([]string{"preview", folder}) }()
	lines := bufio.NewScanner(read)
	for address == "" && lines.Scan() {
		address = addressSaid.FindString(lines.Text())
	}
	go func() { _, _ = io.Copy(io.Discard, read) }()
	if address == "" {
		t.Fatal("no address was said")
	}
	return folder, address, func() int { p.halt.ask(); return <-status }
}

// A change of the file is told to whoever waits, and ends with the preview.
func TestPreviewFollowsTheFile(t *testing.T) {
	folder, address, end := preview(t)
	r, err := http.Get(address + ".preview/changes")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	events := bufio.NewScanner(r.Body)
	next := func() string {
		for events.Scan() {
			if text, found := strings.CutPrefix(events.Text(), "data: "); found {
				return text
			}
		}
		return ""
	}
	first := next()
	file := filepath.Join(folder, shopFile)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	writeText(t, file, string(text)+"\n[wrong\n")
	second := next()
	if first == "" || second == "" || first == second {
		t.Errorf("versions %q, %q", first, second)
	}
	if body := get(t, address); !strings.Contains(body, "preview-faults") {
		t.Errorf("the error is not shown:\n%s", body)
	}
	writeText(t, file, string(text))
	if third := next(); third == "" || third == second {
		t.Errorf("versions %q, %q", second, third)
	}
	if body := get(t, address); strings.Contains(body, "preview-faults") {
		t.Error("the error stays")
	}
	if status := end(); status != statusDone {
		t.Errorf("it ends with status %d", status)
	}
	if more := next(); more != "" {
		t.Errorf("after the end: %q", more)
	}
	if _, err := os.Stat(filepath.Join(folder, "book")); err == nil {
		t.Error("it wrote a book")
	}
}

func get(t *testing.T, address string) string {
	t.Helper()
	r, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	data, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// In a browser the page is made anew by itself when the file changes.
func TestPreviewInABrowser(t *testing.T) {
	ctx := browser(t)
	folder, address, end := preview(t)
	defer end()
	if _, err := chromedp.Run(ctx, chromedp.Navigate(address)); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(folder, shopFile)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	name := regexp.MustCompile(`(?m)^name = ".*"$`)
	first := true
	writeText(t, file, name.ReplaceAllStringFunc(string(text), func(old string) string {
		if first {
			first = false
			return `name = "Renamed Shop"`
		}
		return old
	}))
	if !becomes(ctx, `document.title.includes("Renamed Shop")`) {
		t.Error("the page does not follow")
	}
	writeText(t, file, "[wrong")
	if !becomes(ctx, `document.querySelector(".preview-faults li") && document.title.includes("Renamed Shop")`) {
		t.Error("the error is not shown on the last good page")
	}
}

// becomes waits until something is so in the page, and reports whether it came.
func becomes(ctx context.Context, so string) bool {
	for range 200 {
		if is, err := chromedp.Run(ctx, chromedp.Evaluate[bool]("!!("+so+")")); err == nil && is {
			return true
		}
		time.Sleep(100 * time.Millisecond)
	}
	return false
}

func TestPreviewRefusesWrongUse(t *testing.T) {
	for text, says := range map[string]string{"0": "is no port", "65536": "is no port", "web": "is no port"} {
		p, said := quiet(&bytes.Buffer{})
		if status := p.run([]string{"preview", ownShop(t), "--port", text}); status != statusWrong || !strings.Contains(said.String(), says) {
			t.Errorf("--port %s: status %d, %s", text, status, said)
		}
	}
	_, address, end := preview(t)
	defer end()
	var port int
	if _, err := fmt.Sscanf(address, "http://127.0.0.1:%d/", &port); err != nil {
		t.Fatal(err)
	}
	p, said := quiet(&bytes.Buffer{})
	if status := p.run([]string{"preview", ownShop(t), "--port", fmt.Sprint(port)}); status != statusWrong || !strings.Contains(said.String(), "cannot be had") {
		t.Errorf("a port that is taken: status %d, %s", status, said)
	}
}
