package main

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"dustbook/templates/book"
)

// Three books, made up so that between them a sheet is new, changed, gone and
// the same, at the top and in folders.
var (
	firstBook  = pages("index.html", "one", "book.css", "style", "air/saw.html", "saw", "air/old.html", "old", "gone/deep/x.html", "x")
	secondBook = pages("index.html", "two", "book.css", "style", "air/saw.html", "sharper saw", "parts/list.html", "list", "air/new.html", "new")
	thirdBook  = pages("index.html", "three", "book.css", "style", "air/old.html", "back again", "parts/other.html", "other")
)

func pages(pairs ...string) map[string][]byte {
	m := map[string][]byte{}
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i]] = []byte(pairs[i+1])
	}
	return m
}

// bring brings a folder to a book, as publish does.
func bring(t *testing.T, folder string, made map[string][]byte, d *frail) error {
	t.Helper()
	root, err := openDisk(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	d.disk = root
	f, err := look(root.Tree(), made)
	if err != nil {
		t.Fatal(err)
	}
	if len(f.foreign) > 0 {
		t.Fatalf("foreign: %v", f.foreign)
	}
	return f.update(d, watch{})
}

// sound is a disk that does not fail.
func sound() *frail { return &frail{room: 1 << 30} }

// onDisk reads a folder whole.
func onDisk(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	files, err := readPages(folder)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// finished is a book with its manifest.
func finished(made map[string][]byte) map[string][]byte {
	all := maps.Clone(made)
	all[book.Manifest] = list(made).lines()
	return all
}

func mustBring(t *testing.T, folder string, made map[string][]byte) *frail {
	t.Helper()
	d := sound()
	if err := bring(t, folder, made, d); err != nil {
		t.Fatal(err)
	}
	if name := difference(onDisk(t, folder), finished(made)); name != "" {
		t.Fatalf("%s is not as in the book", name)
	}
	return d
}

func TestUpdateBringsAnyBookToAnyOther(t *testing.T) {
	books := []map[string][]byte{firstBook, secondBook, thirdBook, pages("a.html", "a")}
	for _, from := range books {
		for _, to := range books {
			folder := t.TempDir()
			mustBring(t, folder, from)
			mustBring(t, folder, to)
		}
	}
}

func TestUpdateTouchesOnlyWhatDiffers(t *testing.T) {
	folder := t.TempDir()
	mustBring(t, folder, firstBook)
	d := mustBring(t, folder, secondBook)
	for _, step := range d.steps {
		if strings.Contains(step, "book.css") {
			t.Errorf("the sheet that stayed the same was touched: %s", step)
		}
	}
	last := slices.Index(d.steps, "rename "+temporary+book.Manifest+" "+book.Manifest)
	if last != len(d.steps)-2 || d.steps[len(d.steps)-1] != "remove "+journal {
		t.Errorf("the manifest does not come last:\n%s", strings.Join(d.steps, "\n"))
	}
	if again := mustBring(t, folder, secondBook); len(again.steps) > 0 {
		t.Errorf("nothing differs, and still: %v", again.steps)
	}
	if _, err := os.Stat(filepath.Join(folder, "gone")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the folder that is empty now stayed: %v", err)
	}
}

// whole asks that every file of a folder is one that a run may leave behind:
// a sheet of either book with all its bytes, or a file of the tool's own.
func whole(t *testing.T, folder string, old, made map[string][]byte) {
	t.Helper()
	files := onDisk(t, folder)
	for name, data := range files {
		base := filepath.Base(name)
		switch {
		case strings.HasPrefix(base, temporary), name == journal:
		case name == book.Manifest:
			if string(data) != string(list(old).lines()) && string(data) != string(list(made).lines()) {
				t.Errorf("the manifest is neither the old nor the new one:\n%s", data)
			}
		case old[name] != nil && string(data) == string(old[name]), made[name] != nil && string(data) == string(made[name]):
		default:
			t.Errorf("%s is neither old nor new: %q", name, data)
		}
	}
	for name := range old {
		if made[name] != nil && files[name] == nil {
			t.Errorf("%s is in both books and is gone", name)
		}
	}
}

func TestARunKilledAtAnyStepLeavesWholeFilesAndIsRepaired(t *testing.T) {
	for _, from := range []map[string][]byte{nil, firstBook} {
		probe := t.TempDir()
		if from != nil {
			mustBring(t, probe, from)
		}
		steps := len(mustBring(t, probe, secondBook).steps)
		if steps < 10 {
			t.Fatalf("only %d steps", steps)
		}
		for room := range steps {
			for _, half := range []bool{false, true} {
				// the next run may make the same book, or the shop was changed meanwhile
				for _, next := range []map[string][]byte{secondBook, thirdBook} {
					folder := t.TempDir()
					if from != nil {
						mustBring(t, folder, from)
					}
					err := bring(t, folder, secondBook, &frail{room: room, killed: true, half: half, fault: errKilled})
					if !errors.Is(err, errKilled) {
						t.Fatalf("killed at step %d: %v", room, err)
					}
					whole(t, folder, from, secondBook)
					// killed again, half way through the repair
					_ = bring(t, folder, next, &frail{room: room / 2, killed: true, half: half, fault: errKilled})
					mustBring(t, folder, next)
				}
			}
		}
	}
}

func TestAFullDiskAtAnyStepIsSaidAndLeavesNoPart(t *testing.T) {
	for room := range 20 {
		folder := t.TempDir()
		mustBring(t, folder, firstBook)
		d := &frail{room: room, half: true, fault: syscall.ENOSPC}
		err := bring(t, folder, secondBook, d)
		if err == nil && len(d.steps) <= room {
			if room < 10 {
				t.Fatalf("only %d steps", room)
			}
			break
		}
		if err != nil && (!errors.Is(err, syscall.ENOSPC) || !strings.HasPrefix(err.Error(), "cannot ")) {
			t.Errorf("step %d: %v", room, err)
		}
		whole(t, folder, firstBook, secondBook)
		for name := range onDisk(t, folder) {
			if strings.HasPrefix(filepath.Base(name), temporary) {
				t.Errorf("step %d: %s was left behind", room, name)
			}
		}
		mustBring(t, folder, secondBook)
	}
}

func TestAKilledRunDoesNotTakeWhatSomebodyChangedMeanwhile(t *testing.T) {
	folder := t.TempDir()
	mustBring(t, folder, firstBook)
	_ = bring(t, folder, secondBook, &frail{room: 6, killed: true, fault: errKilled})
	mine := filepath.Join(folder, "air", "old.html")
	if err := os.WriteFile(mine, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := bring(t, folder, secondBook, sound()); err != nil {
		t.Fatal(err)
	}
	if data, err := os.ReadFile(mine); string(data) != "mine" {
		t.Errorf("what somebody wrote is gone: %q %v", data, err)
	}
}

func TestABookWhoseManifestLiesIsNotWritten(t *testing.T) {
	made := finished(firstBook)
	if f, err := look(os.DirFS(t.TempDir()), made); err != nil || len(f.missing) != len(firstBook) {
		t.Errorf("the true manifest: %v", err)
	}
	made[book.Manifest] = list(secondBook).lines()
	if _, err := look(os.DirFS(t.TempDir()), made); err == nil {
		t.Error("a manifest that lists another book is taken")
	}
}
