package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"dustbook/templates/book"
)

// asProcess makes the test a process of the program; nil where the system
// has no way to limit one.
var asProcess func()

// interruptible makes a stand-in that is stopped where INTERRUPT says: in the
// book, with another signal in the book (term), or at a step of the disk.
var interruptible func(*program)

func TestMain(m *testing.M) {
	if os.Getenv("DUSTBOOK_TEST_RUN") != "" && asProcess != nil {
		asProcess()
	}
	testscript.Main(m, map[string]func(){"dustbook": standIn})
}

// standIn is the program as scripts run it. Variables of the script put
// something in the place of what is outside the program:
//
//	PAGES    a folder whose files are the book
//	NOW      the day by the clock
//	FULL     how many times the disk takes something before it is full
//	BROKEN   the book panics
//	TERMINAL half a second has passed; pretended: standard error is taken for a terminal
//	INTERRUPT  where somebody stops the run, see interruptible
func standIn() {
	p := &program{out: os.Stdout, err: os.Stderr, env: os.Getenv, now: time.Now, home: os.UserHomeDir, book: book.Order.Make, open: openDisk}
	if folder := os.Getenv("PAGES"); folder != "" {
		p.book = func(book.Order) (map[string][]byte, error) { return readPages(folder) }
	}
	if day := os.Getenv("NOW"); day != "" {
		p.now = func() time.Time { t, _ := time.Parse("2006-01-02", day); return t }
	}
	if text := os.Getenv("FULL"); text != "" {
		room, _ := strconv.Atoi(text)
		p.open = func(folder string) (disk, error) {
			d, err := openDisk(folder)
			return &frail{disk: d, room: room, fault: syscall.ENOSPC}, err
		}
	}
	if os.Getenv("BROKEN") != "" {
		p.book = func(book.Order) (map[string][]byte, error) {
			panic("a fault\nof the book")
		}
	}
	p.onTerminal(os.Stderr)
	if os.Getenv("TERMINAL") == "pretended" {
		p.progress = newProgress(os.Stderr, time.Now)
		p.out, p.err = p.progress.over(p.out), p.progress.over(p.err)
	}
	if os.Getenv("TERMINAL") != "" && p.progress != nil {
		p.progress.began = time.Now().Add(-patience)
	}
	if interruptible != nil {
		interruptible(p)
	}
	asked, release := signals()
	os.Exit(p.runUntil(asked, release, os.Args[1:]))
}

// readPages reads a folder as a book.
func readPages(folder string) (map[string][]byte, error) {
	pages := map[string][]byte{}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(folder, path)
		if err != nil {
			return err
		}
		pages[filepath.ToSlash(name)], err = os.ReadFile(path)
		return err
	})
	return pages, err
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("HOME", filepath.Join(env.WorkDir, "home"))
			env.Setenv("ESCAPE", "\x1b[31m")
			return os.Mkdir(filepath.Join(env.WorkDir, "home"), 0o777)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"status": status, "same": same, "json": isJSON},
	})
}

// status runs a command and asks for its exit status: status 2 dustbook size.
func status(ts *testscript.TestScript, negated bool, args []string) {
	if negated || len(args) < 2 {
		ts.Fatalf("usage: status NUMBER COMMAND…")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("%v ended with status %d, want %d", args[1:], got, want)
	}
}

// isJSON asks whether a file, or stdout or stderr, is one JSON document.
func isJSON(ts *testscript.TestScript, negated bool, args []string) {
	if len(args) != 1 {
		ts.Fatalf("usage: json FILE")
	}
	if json.Valid([]byte(ts.ReadFile(args[0]))) == negated {
		ts.Fatalf("%s is JSON: %v", args[0], negated)
	}
}

// same asks whether two folders hold the same files with the same bytes.
func same(ts *testscript.TestScript, negated bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("usage: same FOLDER FOLDER")
	}
	a, err := readPages(ts.MkAbs(args[0]))
	ts.Check(err)
	b, err := readPages(ts.MkAbs(args[1]))
	ts.Check(err)
	if differ := difference(a, b); (differ == "") == negated {
		ts.Fatalf("%s and %s: %q", args[0], args[1], differ)
	}
}

// difference names the first file in which two books differ.
func difference(a, b map[string][]byte) string {
	for name := range a {
		if other, ok := b[name]; !ok || string(other) != string(a[name]) {
			return name
		}
	}
	for name := range b {
		if _, ok := a[name]; !ok {
			return name
		}
	}
	return ""
}

// frail is a disk that fails once it has taken so many steps. Killed, it
// takes no step at all after that, as when the machine stops; else it goes on
// refusing only what needs room.
type frail struct {
	disk
	room   int
	killed bool
	half   bool // what it writes as its last step is cut in the middle
	fault  error
	steps  []string // what it was asked
	passed func(steps int)
}

var errKilled = errors.New("killed")

// step takes one step, or refuses it.
func (d *frail) step(needsRoom bool, format string, names ...any) error {
	d.steps = append(d.steps, fmt.Sprintf(format, names...))
	if d.passed != nil {
		d.passed(len(d.steps))
	}
	if len(d.steps) <= d.room || !needsRoom && !d.killed {
		return nil
	}
	return d.fault
}

func (d *frail) Create(name string) (io.WriteCloser, error) {
	if err := d.step(true, "create %s", name); err != nil {
		return nil, err
	}
	file, err := d.disk.Create(name)
	return &frailFile{file, d, name}, err
}

func (d *frail) Rename(from, to string) error {
	if err := d.step(false, "rename %s %s", from, to); err != nil {
		return err
	}
	return d.disk.Rename(from, to)
}

func (d *frail) Place(from, to string) error {
	if err := d.step(true, "place %s %s", from, to); err != nil {
		return err
	}
	return d.disk.Place(from, to)
}

func (d *frail) Folder(name string) error {
	if err := d.step(true, "folder %s", name); err != nil {
		return err
	}
	return d.disk.Folder(name)
}

func (d *frail) Remove(name string) error {
	if err := d.step(false, "remove %s", name); err != nil {
		return err
	}
	return d.disk.Remove(name)
}

type frailFile struct {
	io.WriteCloser
	disk *frail
	name string
}

func (f *frailFile) Write(data []byte) (int, error) {
	if err := f.disk.step(true, "write %s", f.name); err != nil {
		n := 0
		if f.disk.half {
			n, _ = f.WriteCloser.Write(data[:len(data)/2])
		}
		return n, err
	}
	return f.WriteCloser.Write(data)
}
