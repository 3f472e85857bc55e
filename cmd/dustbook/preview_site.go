package main

import (
	"embed"
	"fmt"
	"mime"
	"net"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"
)

// site is the book as a preview serves it. It answers only requests that name
// this machine as their host, so that no page from elsewhere can read it
// through a name that leads here.
type site struct {
	hosts []string // with the port

	mu      sync.Mutex
	pages   map[string][]byte // the last good book; nil before there is one
	faults  error             // of the files as they are now; nil where the book is theirs
	version int64
	changed chan struct{} // closed with every change, and at the end
	over    bool
}

// newSite is an empty site at a port; its versions count on from one that no
// earlier run had.
func newSite(port int, first int64) *site {
	s := &site{version: first, changed: make(chan struct{})}
	for _, name := range []string{loopback, "localhost"} {
		s.hosts = append(s.hosts, net.JoinHostPort(name, strconv.Itoa(port)))
	}
	return s
}

// address is where a browser finds the first sheet.
func (s *site) address() string { return "http://" + s.hosts[0] + "/" }

// put takes a new book, or what is wrong with its files; the last good book
// stays then.
func (s *site) put(pages map[string][]byte, faults error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if faults == nil {
		s.pages = pages
	}
	s.faults = faults
	s.version++
	s.wake()
}

// wake tells whoever waits; the lock is held.
func (s *site) wake() {
	close(s.changed)
	s.changed = make(chan struct{})
}

// end lets go whoever waits for a change.
func (s *site) end() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.over = true
	s.wake()
}

// now is the book, the version of it and its faults, and what is wrong with the
// files.
func (s *site) now() (pages map[string][]byte, version int64, faults error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.pages, s.version, s.faults
}

// What the preview adds lies in a folder that no sheet can have.
const (
	addedFolder = "/.preview/"
	changesPath = addedFolder + "changes"
)

//go:embed preview.js preview.css
var added embed.FS

// ServeHTTP answers one request.
func (s *site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	head := w.Header()
	head.Set("Cache-Control", "no-store")
	head.Set("X-Content-Type-Options", "nosniff")
	head.Set("Cross-Origin-Resource-Policy", "same-origin")
	head.Set("Referrer-Policy", "no-referrer")
	switch {
	case !s.knows(r.Host):
		http.Error(w, "this preview answers only at "+s.address(), http.StatusForbidden)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		head.Set("Allow", "GET, HEAD")
		http.Error(w, "this preview is only for reading", http.StatusMethodNotAllowed)
	case r.URL.Path == changesPath:
		s.tell(w, r)
	case strings.HasPrefix(r.URL.Path, addedFolder):
		data, err := added.ReadFile(strings.TrimPrefix(r.URL.Path, addedFolder))
		if err != nil {
			http.NotFound(w, r)
			return
		}
		send(w, r.URL.Path, http.StatusOK, data)
	default:
		s.sheet(w, r)
	}
}

// knows reports whether a request names this machine as its host.
func (s *site) knows(host string) bool {
	for _, known := range s.hosts {
		if strings.EqualFold(host, known) {
			return true
		}
	}
	return false
}

// sheet answers with a file of the book; a page with what the preview adds.
func (s *site) sheet(w http.ResponseWriter, r *http.Request) {
	pages, version, faults := s.now()
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" {
		name = "index.html"
	}
	data, found := pages[name]
	switch {
	case !found && (path.Ext(name) == ".html" || pages == nil):
		send(w, "missing.html", http.StatusNotFound, missingPage(name, pages != nil, faults, version))
	case !found:
		http.NotFound(w, r)
	case path.Ext(name) == ".html":
		send(w, name, http.StatusOK, withPreview(data, faults, version))
	default:
		send(w, name, http.StatusOK, data)
	}
}

// send sends a file with the type that its name tells.
func send(w http.ResponseWriter, name string, status int, data []byte) {
	kind := mime.TypeByExtension(path.Ext(name))
	switch path.Ext(name) { // the same on every machine
	case ".html":
		kind = "text/html; charset=utf-8"
	case ".css":
		kind = "text/css; charset=utf-8"
	case ".js":
		kind = "text/javascript; charset=utf-8"
	case ".csv":
		kind = "text/csv; charset=utf-8"
	}
	if kind == "" {
		kind = "text/plain; charset=utf-8"
	}
	w.Header().Set("Content-Type", kind)
	w.WriteHeader(status)
	_, _ = w.Write(data)
}

// tell sends the version now and with every change, as a stream of events.
func (s *site) tell(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream; charset=utf-8")
	control := http.NewResponseController(w)
	for {
		s.mu.Lock()
		version, changed, over := s.version, s.changed, s.over
		s.mu.Unlock()
		if over {
			return
		}
		if _, err := fmt.Fprintf(w, "data: %d\n\n", version); err != nil || control.Flush() != nil {
			return
		}
		select {
		case <-changed:
		case <-r.Context().Done():
			return
		}
	}
}
