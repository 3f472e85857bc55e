package main

import (
	"io"
	"os"
	"strconv"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"dustbook/content"
)

// progress says on a terminal what a run is doing and how far that has come:
// one line, written over and over, from half a second on. It is wiped before
// anything else is printed, and never stands in a file or a pipe. A nil one
// says nothing.
type progress struct {
	to  io.Writer
	now func() time.Time

	mu    sync.Mutex
	began time.Time
	key   string // of the step that is under way; empty between steps
	text  string // of it
	shown struct {
		key, text string
		at        time.Time
		wide      int // runes on the terminal now
	}
	quit chan struct{}
}

const (
	patience  = 500 * time.Millisecond // before that nothing is said
	beat      = 100 * time.Millisecond // how often the line is looked at, and the most often a count is written
	mostRunes = 72                     // a longer line would break, and could not be written over
)

// newProgress makes one that writes to a terminal.
func newProgress(to io.Writer, now func() time.Time) *progress {
	return &progress{to: to, now: now, began: now()}
}

// onTerminal lets a run say how far it has come, where its messages go to a
// terminal.
func (p *program) onTerminal(messages *os.File) {
	if isTerminal(messages) {
		p.progress = newProgress(messages, p.now)
		p.out, p.err = p.progress.over(p.out), p.progress.over(p.err)
	}
}

// isTerminal reports whether a file is a terminal.
func isTerminal(file *os.File) bool {
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// step says what is done from now on; a text of the rows, and what it is
// about.
func (g *progress) step(key string, about ...string) {
	if g == nil {
		return
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	g.key, g.text = key, clean(content.WordsIn(content.English).Text("progress."+key, about...))
	g.show()
}

// count is a step that says how much of it is done. Its calls may come out of
// order.
func (g *progress) count(key string) func(done, all int) {
	most := 0
	var mu sync.Mutex
	return func(done, all int) {
		mu.Lock()
		defer mu.Unlock()
		if done > most {
			most = done
			g.step(key, strconv.Itoa(done), strconv.Itoa(all))
		}
	}
}

// run looks at the line until the end, so that a long step is shown too.
func (g *progress) run() {
	if g == nil {
		return
	}
	quit := make(chan struct{})
	g.mu.Lock()
	g.quit = quit
	g.mu.Unlock()
	go func() {
		tick := time.NewTicker(beat)
		defer tick.Stop()
		for {
			select {
			case <-quit:
				return
			case <-tick.C:
				g.look()
			}
		}
	}()
}

// look shows the step that is under way, where it is time to.
func (g *progress) look() {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.show()
}

// show writes the line where it is time to and it is not there yet. The lock
// is held.
func (g *progress) show() {
	now := g.now()
	switch {
	case g.key == "", now.Sub(g.began) < patience, g.text == g.shown.text:
		return
	case g.key == g.shown.key && now.Sub(g.shown.at) < beat:
		return
	}
	text := g.text
	if utf8.RuneCountInString(text) > mostRunes {
		text = string([]rune(text)[:mostRunes-1]) + "…"
	}
	wide := utf8.RuneCountInString(text)
	_, _ = io.WriteString(g.to, "\r"+text+strings.Repeat(" ", max(g.shown.wide-wide, 0)))
	g.shown.key, g.shown.text, g.shown.at, g.shown.wide = g.key, g.text, now, wide
}

// wipe takes the line away.
func (g *progress) wipe() {
	if g.shown.wide > 0 {
		_, _ = io.WriteString(g.to, "\r"+strings.Repeat(" ", g.shown.wide)+"\r")
		g.shown.key, g.shown.text, g.shown.wide = "", "", 0
	}
}

// done ends the steps and takes the line away.
func (g *progress) done() {
	if g == nil {
		return
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	g.wipe()
	g.key, g.text = "", ""
	if g.quit != nil {
		close(g.quit)
		g.quit = nil
	}
}

// over is a writer before whose every word the line is wiped.
func (g *progress) over(to io.Writer) io.Writer {
	if g == nil {
		return to
	}
	return wiping{g, to}
}

type wiping struct {
	line *progress
	to   io.Writer
}

// Write wipes the line and writes.
func (w wiping) Write(data []byte) (int, error) {
	w.line.mu.Lock()
	defer w.line.mu.Unlock()
	w.line.wipe()
	return w.to.Write(data)
}
