package record

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"dustbook/plan/entry"
)

func openRoot(t testing.TB, dir string) *os.Root {
	t.Helper()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root
}

// event is a record to write.
func event(note string) *Record {
	return &Record{Kind: "service", Date: day(2026, 11, 24), Role: "steward", Note: note}
}

// contents is every file of a folder.
func contents(t testing.TB, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name()] = string(data)
	}
	return files
}

// Every record gets the number after the highest of its kind and day, and no
// file is changed.
func TestWrite(t *testing.T) {
	dir := t.TempDir()
	root := openRoot(t, dir)
	other := event("x")
	other.Kind = "change"
	for i, c := range []struct {
		r    *Record
		name string
	}{
		{event("first"), "2026-11-24-service-1.toml"}, {event("second"), "2026-11-24-service-2.toml"}, {other, "2026-11-24-change-1.toml"},
		{event("third"), "2026-11-24-service-3.toml"},
	} {
		before := contents(t, dir)
		name, err := Write(root, c.r)
		if err != nil || name != c.name {
			t.Fatalf("%d: %s, %v", i, name, err)
		}
		before[name] = string(c.r.TOML())
		if after := contents(t, dir); !reflect.DeepEqual(after, before) {
			t.Fatalf("%d: the folder holds %v", i, after)
		}
	}
	if err := root.Remove("2026-11-24-service-2.toml"); err != nil {
		t.Fatal(err)
	}
	if name, err := Write(root, event("fourth")); err != nil || name != "2026-11-24-service-4.toml" {
		t.Errorf("a number is used again: %s, %v", name, err)
	}
	records, problems := ReadFolder(root.FS())
	if len(records) != 4 || len(problems) > 0 {
		t.Errorf("%d records, %v", len(records), problems)
	}
}

// What reading would refuse is not written.
func TestWriteRefuses(t *testing.T) {
	dir := t.TempDir()
	root := openRoot(t, dir)
	for name, spoil := range map[string]func(*Record){
		"no kind":            func(r *Record) { r.Kind = "" },
		"a kind with a path": func(r *Record) { r.Kind = "../service" },
		"no date":            func(r *Record) { r.Date = entry.Date{} },
		"no such date":       func(r *Record) { r.Date = day(2026, 2, 29) },
		"a year of five":     func(r *Record) { r.Date = day(12026, 2, 1) },
		"no UTF-8":           func(r *Record) { r.Note = "a\xffb" },
		"points":             func(r *Record) { r.Items = []Item{{Asks: "x"}} },
		"a value unread":     func(r *Record) { r.Readings = []Reading{{Of: "flow", At: "X", Value: Quantity{SI: 1}}} },
		"an answer in form":  func(r *Record) { r.Kind, r.Items = "letter", []Item{{Asks: "x", Answered: Answer{Text: "2026-11-24"}}} },
	} {
		r := event("x")
		spoil(r)
		got, err := Write(root, r)
		problems, ok := err.(entry.Problems)
		if got != "" || !ok || len(problems) == 0 {
			t.Errorf("%s: %q, %v", name, got, err)
			continue
		}
		for _, p := range problems {
			if p.Known() || p.File != "" || p.Read == "" || p.Do == "" {
				t.Errorf("%s: %v", name, p)
			}
		}
	}
	if files := contents(t, dir); len(files) > 0 {
		t.Errorf("left %v", files)
	}
}

func TestWriteNumbersTaken(t *testing.T) {
	dir := t.TempDir()
	root := openRoot(t, dir)
	for _, number := range []int{9998, 3} {
		if err := root.WriteFile(fileName(day(2026, 11, 24), "service", number), []byte(service), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if name, err := Write(root, event("last")); err != nil || name != "2026-11-24-service-9999.toml" {
		t.Fatalf("%s, %v", name, err)
	}
	name, err := Write(root, event("one more"))
	if name != "" || err == nil || !strings.Contains(err.Error(), "every number up to 9999 is taken; nothing was written; see whether the date is right") {
		t.Errorf("%s, %v", name, err)
	}
	if files := contents(t, dir); len(files) != 3 {
		t.Errorf("the folder holds %d files", len(files))
	}
}

// crowd checks that many writers got one whole file each.
func crowd(t *testing.T, dir string, writers int) {
	t.Helper()
	var want, got, notes []string
	for i := range writers {
		want = append(want, fileName(day(2026, 11, 24), "service", i+1))
	}
	for name := range contents(t, dir) {
		got = append(got, name)
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("the folder holds %v", got)
	}
	records, problems := ReadFolder(os.DirFS(dir))
	if len(problems) > 0 {
		t.Error(problems)
	}
	for _, r := range records {
		notes = append(notes, r.Note)
	}
	slices.Sort(notes)
	if unlike := len(slices.Compact(notes)); unlike != writers {
		t.Errorf("%d writers, %d notes", writers, unlike)
	}
}

func TestWriteTogether(t *testing.T) {
	for _, links := range []bool{true, false} {
		dir := t.TempDir()
		root := openRoot(t, dir)
		var all sync.WaitGroup
		for i := range 20 {
			all.Go(func() {
				d := &testDisk{disk: rootDisk{root}, noLinks: !links}
				if _, err := write(d, event(fmt.Sprint("writer ", i))); err != nil {
					t.Error(err)
				}
			})
		}
		all.Wait()
		crowd(t, dir, 20)
	}
}

// The folder and the note that a process of TestWriteProcesses writes.
const folderVariable, noteVariable = "DUSTBOOK_TEST_RECORDS", "DUSTBOOK_TEST_NOTE"

func TestMain(m *testing.M) {
	dir := os.Getenv(folderVariable)
	if dir == "" {
		os.Exit(m.Run())
	}
	root, err := os.OpenRoot(dir)
	if err == nil {
		_, err = Write(root, event(os.Getenv(noteVariable)))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func TestWriteProcesses(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	var all sync.WaitGroup
	for i := range 20 {
		all.Go(func() {
			c := exec.Command(self)
			c.Env = append(os.Environ(), folderVariable+"="+dir, fmt.Sprintf("%s=process %d", noteVariable, i))
			if out, err := c.CombinedOutput(); err != nil {
				t.Errorf("%v: %s", err, out)
			}
		})
	}
	all.Wait()
	crowd(t, dir, 20)
}

func TestWriteReadOnly(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("root may write everywhere")
	}
	dir := t.TempDir()
	root := openRoot(t, dir)
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(dir, 0o777) })
	name, err := Write(root, event("x"))
	if name != "" || !errors.Is(err, os.ErrPermission) || strings.Contains(err.Error(), dir) {
		t.Errorf("%s, %v", name, err)
	}
}
