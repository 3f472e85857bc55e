//go:build unix

package main

import (
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"dustbook/templates/book"
)

func init() {
	interruptible = func(p *program) {
		switch at := os.Getenv("INTERRUPT"); at {
		case "":
		case "book":
			p.book = func(book.Order) (map[string][]byte, error) {
				interrupt(syscall.SIGINT)
				select {} // until the process is gone
			}
		case "term":
			p.book = func(book.Order) (map[string][]byte, error) {
				interrupt(syscall.SIGTERM)
				select {}
			}
		default:
			step, _ := strconv.Atoi(at)
			open := p.open
			p.open = func(folder string) (disk, error) {
				d, err := open(folder)
				return &frail{disk: d, room: 1 << 30, passed: func(steps int) {
					if steps == step {
						p.interruptHere()
					}
				}}, err
			}
		}
	}
}

func interrupt(s syscall.Signal) { _ = syscall.Kill(os.Getpid(), s) }

// interruptHere stops the process, and goes on when the run has heard of it.
func (p *program) interruptHere() {
	interrupt(syscall.SIGINT)
	for !p.halt.stopping() {
		time.Sleep(time.Millisecond)
	}
}

// oldAndNew are the folder of a shop with a book in it, and the folders of
// pages that make an old book and a new one.
func oldAndNew(t *testing.T) (shop, old, made string) {
	t.Helper()
	shop, old, made = ownShop(t), t.TempDir(), t.TempDir()
	for folder, pages := range map[string]map[string][]byte{old: firstBook, made: secondBook} {
		for name, data := range pages {
			writeFile(t, filepath.Join(folder, filepath.FromSlash(name)), data)
		}
	}
	return shop, old, made
}

func writeFile(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, data, 0o666); err != nil {
		t.Fatal(err)
	}
}

// shopBefore is all that the folder of a shop holds beside its book.
func shopBefore(t *testing.T, shop string) map[string][]byte {
	t.Helper()
	files := onDisk(t, shop)
	for name := range files {
		if strings.HasPrefix(name, "book/") {
			delete(files, name)
		}
	}
	return files
}

func TestAnInterruptedPublishLeavesTheOldBookOrTheNew(t *testing.T) {
	for _, first := range []bool{true, false} {
		stopped, finished := 0, 0
		for step := 1; finished < 3; step++ {
			if step > 60 {
				t.Fatalf("after %d steps no book was finished", step)
			}
			shop, old, made := oldAndNew(t)
			writeFile(t, filepath.Join(shop, "mine.txt"), []byte("mine"))
			if !first {
				if out, status := process(t, []string{"PAGES=" + old}, "publish", shop); status != statusDone {
					t.Fatalf("status %d: %s", status, out)
				}
			}
			before, book := shopBefore(t, shop), bookOf(t, shop)
			out, status := process(t, []string{"PAGES=" + made, "INTERRUPT=" + strconv.Itoa(step)}, "publish", shop)
			if name := difference(shopBefore(t, shop), before); name != "" {
				t.Errorf("step %d: %s beside the book was touched", step, name)
			}
			switch status {
			case statusFailed:
				stopped++
				want := "dustbook: stopped; the book that was there stands as it was\n"
				if first {
					want = "dustbook: stopped; nothing was written\n"
				}
				if out != want {
					t.Errorf("step %d says %q, want %q", step, out, want)
				}
				if name := difference(bookOf(t, shop), book); name != "" {
					t.Errorf("step %d: %s is not as it was", step, name)
				}
				if _, err := os.Lstat(filepath.Join(shop, "book")); first && !os.IsNotExist(err) {
					t.Errorf("step %d: the folder of the book stayed: %v", step, err)
				}
				if finished > 0 {
					t.Errorf("step %d comes after the book was finished, and is stopped", step)
				}
			case statusDone:
				finished++
				if name := difference(bookOf(t, shop), finishedBook()); name != "" {
					t.Errorf("step %d: %s is not as in the new book", step, name)
				}
			default:
				t.Errorf("step %d ended with status %d: %s", step, status, out)
			}
		}
		if stopped < 5 {
			t.Errorf("only %d steps were stopped", stopped)
		}
	}
}

func finishedBook() map[string][]byte { return finished(secondBook) }

// bookOf is the book in the folder of a shop; empty where there is none.
func bookOf(t *testing.T, shop string) map[string][]byte {
	t.Helper()
	folder := filepath.Join(shop, "book")
	if _, err := os.Lstat(folder); os.IsNotExist(err) {
		return map[string][]byte{}
	}
	return onDisk(t, folder)
}

func TestAnInterruptWhileTheBookIsMadeEndsAtOnce(t *testing.T) {
	for _, how := range []string{"book", "term"} {
		shop, old, _ := oldAndNew(t)
		if out, status := process(t, []string{"PAGES=" + old}, "publish", shop); status != statusDone {
			t.Fatalf("status %d: %s", status, out)
		}
		before := onDisk(t, shop)
		out, status := process(t, []string{"INTERRUPT=" + how}, "publish", shop)
		if status != statusFailed || out != "dustbook: stopped; the book that was there stands as it was\n" {
			t.Errorf("%s: status %d, %q", how, status, out)
		}
		if name := difference(onDisk(t, shop), before); name != "" {
			t.Errorf("%s: %s was touched", how, name)
		}
		out, status = process(t, []string{"INTERRUPT=" + how}, "publish", "--check", shop)
		if status != statusFailed || out != "dustbook: stopped; nothing was written\n" {
			t.Errorf("%s, --check: status %d, %q", how, status, out)
		}
	}
}

// What is written in one step is finished: the file is there, and said to be.
func TestAnInterruptedStartIsWhole(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "my-shop")
	for step := 1; step <= 3; step++ {
		at := dir + strconv.Itoa(step)
		out, status := process(t, []string{"INTERRUPT=" + strconv.Itoa(step)}, "start", at)
		if status != statusDone || !strings.Contains(out, "is written") {
			t.Errorf("step %d: status %d, %q", step, status, out)
		}
		if data, err := os.ReadFile(filepath.Join(at, shopFile)); err != nil || len(data) < 100 {
			t.Errorf("step %d: %d bytes, %v", step, len(data), err)
		}
		if _, err := os.Lstat(filepath.Join(at, temporary+shopFile)); !os.IsNotExist(err) {
			t.Errorf("step %d: a part was left behind", step)
		}
	}
}

func TestHalt(t *testing.T) {
	var h halt
	if !h.ask() || h.begin() == nil || !h.stopping() {
		t.Error("asked before it begins, a run goes on")
	}
	if h.word() != "stopped; nothing was written" || h.word() != "" {
		t.Error("the stop is not said, or said twice")
	}
	h = halt{}
	if h.stopping() || h.begin() != nil || h.ask() || h.begin() != nil || !h.stopping() {
		t.Error("asked while it writes, a run ends at once, or does not hear of it")
	}
}

// skipUnlessCI skips a test for want of a tool; CI has them all, and there it is
// a failure.
func skipUnlessCI(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(why)
	}
	t.Skip(why)
}

// On a terminal of the system's own a run says what it does, and a stop stands
// on a clean line.
func TestARealTerminalIsTold(t *testing.T) {
	script, err := exec.LookPath("script")
	if err != nil {
		skipUnlessCI(t, "there is no script(1) here to make a terminal")
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	shop := ownShop(t)
	for _, c := range []struct{ stop, want, end string }{
		{"", "\rreading the shop", "index.html\r\n"},
		{"book", "\rlaying out the book", " \rdustbook: stopped; nothing was written\r\n"},
	} {
		run := exec.Command(script, "-qec", "'"+self+"' publish '"+shop+"'", "/dev/null")
		run.Env = append(os.Environ(), "DUSTBOOK_TEST_RUN=1", "TERMINAL=real", "INTERRUPT="+c.stop)
		out, err := run.CombinedOutput()
		if run.ProcessState == nil {
			skipUnlessCI(t, "script(1) does not run here: "+err.Error())
		}
		if text := string(out); !strings.Contains(text, c.want) || !strings.HasSuffix(text, c.end) {
			t.Errorf("%q: %q", c.stop, text)
		}
		_ = os.RemoveAll(filepath.Join(shop, "book"))
	}
}

// A signal that is turned off where the run was started stays so.
func TestAnIgnoredSignalStaysIgnored(t *testing.T) {
	signal.Ignore(syscall.SIGTERM)
	defer signal.Reset(syscall.SIGTERM)
	_, release := signals()
	defer release()
	if !signal.Ignored(syscall.SIGTERM) {
		t.Error("it is listened to")
	}
}
