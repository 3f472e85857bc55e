package main

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"
	"time"
)

// clock is a clock that a test turns.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

func (c *clock) pass(d time.Duration) { c.at = c.at.Add(d) }

// onScreen is a progress on a pretended terminal.
func onScreen() (*progress, *clock, *bytes.Buffer) {
	at, screen := &clock{time.Unix(1e9, 0)}, &bytes.Buffer{}
	return newProgress(screen, at.now), at, screen
}

// seen is what stands on the line of a terminal after some bytes.
func seen(t *testing.T, bytes string) string {
	t.Helper()
	var line []rune
	at := 0
	for _, r := range bytes {
		switch {
		case r == '\r':
			at = 0
		case r == '\n':
			line, at = nil, 0
		case at < len(line):
			line[at], at = r, at+1
		default:
			line, at = append(line, r), at+1
		}
	}
	return strings.TrimRight(string(line), " ")
}

func TestNothingIsSaidInTheFirstHalfSecond(t *testing.T) {
	g, at, screen := onScreen()
	g.step("reading")
	at.pass(patience - time.Millisecond)
	g.count("sheets")(1, 148)
	g.look()
	g.done()
	if screen.Len() > 0 {
		t.Errorf("said %q", screen)
	}
}

func TestFromHalfASecondOnTheLineFollowsTheWork(t *testing.T) {
	g, at, screen := onScreen()
	g.step("reading")
	at.pass(patience)
	g.look()
	if got := seen(t, screen.String()); got != "reading the shop and reckoning its air" {
		t.Errorf("a long step: %q", got)
	}
	told := g.count("sheets")
	told(33, 148)
	told(34, 148)
	told(32, 148) // two workers, out of order
	if got := seen(t, screen.String()); got != "drawing sheets: 33 of 148" {
		t.Errorf("a count is written too often: %q", got)
	}
	at.pass(beat)
	g.look()
	before := screen.Len()
	g.look()
	if screen.Len() != before {
		t.Error("the same line is written again")
	}
	if got := seen(t, screen.String()); got != "drawing sheets: 34 of 148" {
		t.Errorf("the line is %q", got)
	}
	g.step("reading")
	g.step("checking")
	if got := seen(t, screen.String()); got != "asking the checks" {
		t.Errorf("the rest of a longer line stays: %q", got)
	}
	if strings.Contains(screen.String(), "\n") {
		t.Errorf("more than one line: %q", screen)
	}
	g.done()
	if got := seen(t, screen.String()); got != "" {
		t.Errorf("left on the line: %q", got)
	}
	before = screen.Len()
	g.look()
	if screen.Len() != before {
		t.Error("it says more after its end")
	}
}

func TestTheLineIsWipedBeforeAnythingElse(t *testing.T) {
	g, at, screen := onScreen()
	out := &bytes.Buffer{}
	g.step("reading")
	at.pass(time.Second)
	g.look()
	before := screen.Len()
	if _, err := io.WriteString(g.over(out), "a result\n"); err != nil {
		t.Fatal(err)
	}
	if got := seen(t, screen.String()); got != "" || screen.Len() == before {
		t.Errorf("the line still says %q", got)
	}
	if out.String() != "a result\n" {
		t.Errorf("printed %q", out)
	}
	g.look()
	if got := seen(t, screen.String()); got == "" {
		t.Error("the step goes on, and nothing says so")
	}
}

func TestALongLineIsCutAndCleaned(t *testing.T) {
	g, at, screen := onScreen()
	at.pass(time.Second)
	g.step("comparing", strings.Repeat("long/", 40)+"\x1b[31m")
	got := seen(t, screen.String())
	if n := len([]rune(got)); n != mostRunes || !strings.HasSuffix(got, "…") {
		t.Errorf("%d runes: %q", n, got)
	}
	g.step("comparing", "\x1b[31m")
	if strings.ContainsRune(screen.String(), '\x1b') {
		t.Errorf("a control sign reaches the terminal: %q", screen)
	}
}

// A run whose messages go to a file or a pipe says nothing of its progress.
func TestOnlyATerminalIsTold(t *testing.T) {
	file, err := os.Create(t.TempDir() + "/messages")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	defer write.Close()
	for _, to := range []*os.File{file, write} {
		p, said := quiet(io.Discard)
		p.onTerminal(to)
		if p.progress != nil {
			t.Errorf("%s is taken for a terminal", to.Name())
		}
		p.progress.step("reading")
		p.progress.count("sheets")(1, 2)
		p.progress.run()
		p.progress.done()
		if said.Len() > 0 {
			t.Errorf("said %q", said)
		}
	}
	if null, err := os.OpenFile("/dev/tty", os.O_WRONLY, 0); err == nil {
		defer null.Close()
		if !isTerminal(null) {
			t.Error("a terminal is not taken for one")
		}
	}
}
